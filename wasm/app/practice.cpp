#include "wasm/app/practice.hpp"

#include <type_traits>

namespace guywright::app {
namespace {

template <class T, class... Of>
constexpr bool is_one_of = (std::is_same_v<T, Of> || ...);

template <class T>
constexpr bool changes_numbers = is_one_of<T, SetNumber, OpenKeypad, PressKey, TakeKeypad, Undo, Redo>;

template <class T>
constexpr bool only_looks =
    is_one_of<T, GoTo, GoToItem, ShowMore, ToggleMenu, NextMenuPage, NextTheme, NextLanguage, NextUnits, SetSettings, DragScene, PinchScene, ResetView,
              ToggleLargeSite, NextView, SetView, NextCase, ShowCase, CloseKeypad, CloseMessage, ShowAbout, ShowText, ToggleAwake, AwakeIs, DeviceHas>;

template <class T>
constexpr bool is_of_practice = is_one_of<T, EnterPractice, LeavePractice, SetSite, AskSiteNumber, DrawSite, NextSite, SayGo, SayHardest, SayAngle, ShowAnswer,
                                          SpeakOf, ShowCourse, OpenLesson, AnswerLesson, ChooseRig, TieGuy, TakeOffGuy>;

}  // namespace

bool reaches(Practising stage, Step step) {
    switch (step) {
        case Step::Practice:
        case Step::Course:
        case Step::Score: return stage == Practising::Choosing;
        case Step::Site: return stage != Practising::Choosing;
        case Step::Lesson: return stage == Practising::Predicting || stage == Practising::Changing;
        case Step::SayVerdict:
        case Step::SayGuy:
        case Step::SayAngle: return stage == Practising::Predicting;
        case Step::Answer:
        case Step::Why:
        case Step::WhatIf: return stage >= Practising::Answered;
        default: return false;
    }
}

bool passes_practice(const Command& wish, Practising stage) {
    return std::visit([&]<class T>(const T&) { return only_looks<T> || is_of_practice<T> || (changes_numbers<T> && stage == Practising::Changing); }, wish);
}

}  // namespace guywright::app
