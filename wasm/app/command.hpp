#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "engine/advice/change.hpp"
#include "engine/advice/direction_map.hpp"
#include "engine/advice/lean.hpp"
#include "wasm/app/device.hpp"
#include "wasm/app/lock.hpp"
#include "wasm/app/shelf.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/scene/camera.hpp"
#include "wasm/widgets/theme_table.hpp"

namespace guywright {
enum class LessonId : unsigned char;  // engine/practice/lesson.hpp
}

namespace guywright::app {

/// From Edge to Card they follow one another; Advice leads to those after it, which answer one question each (advisor.hpp).
/// From Practice on, plans that are nobody's rig (practice.hpp).
enum class Step : unsigned char {
    Edge,
    Frame,
    Rope,
    Guys,
    Feet,
    Margins,
    Card,
    Advice,
    Change,
    Ties,
    LineUp,
    Pretension,
    Order,
    Anchors,
    Directions,
    Practice,
    Score,
    Site,
    SayVerdict,
    SayGuy,
    SayAngle,
    Answer,
    Why,
    WhatIf,
    Course,
    Lesson
};
inline constexpr int k_step_count = 7;  ///< of those that follow one another
inline constexpr bool is_practice(Step step) { return step >= Step::Practice; }
inline constexpr bool is_advice(Step step) { return step >= Step::Advice && !is_practice(step); }

// What a screen may wish for. apply() is the one place that carries wishes out, after all drawing.

// Wishes that change the make-up of the plan; plan_edits.hpp carries them out.
// clang-format off
struct SetKind { FrameKind kind; };
struct SetPole { std::size_t leg; bool pole; };
struct SetHeldDown { std::size_t leg; bool held; };
struct AddHobble { int from, to; };
struct RemoveHobble { std::size_t hobble; };
struct SetOpening { bool there; };                          ///< ground begins again beyond the edge
struct AddRope {};
struct RemoveRope { std::size_t rope; };
struct SetHaul { std::size_t rope; bool hauled; };
struct SetRopeStrength { std::size_t rope; bool known; };
struct AddGuy {};
struct RemoveGuy { std::size_t guy; };
struct SetAnchorByPosition { std::size_t guy; bool by_position; };   ///< the anchor stays where it is
struct AddFootTie { std::size_t foot; };
struct RemoveFootTie { std::size_t foot, tie; };
struct SetGuyLossJudged { bool judged; };
struct SetCompass { bool known; };                          ///< the compass bearing of straight out
struct SetText { std::string path, value; };                 ///< title of the plan, name of a guy or rope
struct MoveGuy { std::size_t guy; bool up; };               ///< changes places with its neighbour on the list
struct MoveRope { std::size_t rope; bool up; };

// What advice changes in the plan; advice_edits.hpp carries them out.
struct TakeAdvice { Advice advice; };
struct TakeLean { Lean from, to; };                         ///< anchors, hauls and pretensions stay
struct TakePretensions { std::vector<double> pretensions_kN; };   ///< one for each guy
struct TakeAnchors { std::vector<GuyPlan> guys; };          ///< instead of those of the plan
struct AddFoundAnchor {};
struct RemoveFoundAnchor { std::size_t anchor; };
struct GradeFoundAnchors {};                                ///< their strengths are entered

// What of an answer is looked at.
struct ShowGuy { std::size_t guy; };
struct ShowTies { bool holding; };                          ///< else as rigged
struct LookToward { Heading way; };
struct ShowAnchorSet { std::size_t place; };                ///< on the list of the best

struct SetNumber { std::string path; double value; };       ///< plan unit; out of range is refused with a message
struct ConfirmShown { std::vector<std::string> paths; };    ///< starting values that are right as they stand
struct GoTo { Step step; std::size_t item; };               ///< shows the page on which the item stands
struct GoToItem { Step step; std::string id; };             ///< the same, by what the item is called
struct ShowMore { std::string group, id; };                 ///< opens what few need of a group, at the item `id`
struct ShowParts { std::string path; };                      ///< parts by published strength for this strength; again: closes the list
struct Undo {};
struct Redo {};
struct NewPlan {};
struct OpenExample { std::string name; };
struct OpenFile {};
struct SaveFile {};
struct ToggleMenu {};
struct NextMenuPage {};
struct ShowPlans {};                                        ///< the list of the plans kept
struct ClosePlans {};
struct NextPlansPage {};
struct ChoosePlan { std::string id; };                      ///< what can be done with it; none: back to the list
struct AskShelf { ShelfAct act; std::string id; };
struct AskForText { std::string path; };                    ///< the page lets the person type it
struct NextTheme {};
struct NextLanguage {};
struct NextUnits {};
struct SetSettings { Speech speech; widgets::ThemeName theme; };   ///< as the device has kept them
struct DragScene { scene::ImageBox room; scene::Vec2 by_px; };   ///< one finger; `room` as of scene::room_of
struct PinchScene { scene::ImageBox room; scene::Vec2 from_px, to_px; double factor; };
struct ResetView {};
struct ToggleLargeSite {};                                 ///< the picture alone, or beside the sliders
struct NextView {};
struct SetView { scene::View view; };
struct NextCase {};
struct ShowCase { std::size_t index; };                    ///< the last one where there are fewer
struct OpenKeypad { std::string path; };
struct PressKey { char key; };                              ///< digits, '.' or ',', '-', '<' deletes
struct TakeKeypad {};
struct CloseKeypad {};
struct CloseMessage {};
struct ShowAbout {};                                        ///< pages of the page itself, over the drawing
struct ShowText {};
enum class Page : unsigned char { ShareCode, ReadCode, RigSheet, SecondCheck, Log };
struct ShowPage { Page page; };
struct EnterPractice {};
struct LeavePractice {};                                    ///< the person's own plan is back as it was
struct SetSite { std::uint32_t seed; int level; };          ///< which site is to be drawn; held within what there is
struct AskSiteNumber {};                                    ///< the page lets the person type it
struct DrawSite {};
struct NextSite {};
struct SayGo { bool go; };
struct SayHardest { std::size_t guy; };
struct SayAngle { double deg; };
struct ShowAnswer {};
struct SpeakOf { std::size_t sentence; };                   ///< of the explanation
struct ShowCourse {};
struct OpenLesson { LessonId id; };                         ///< from its start, also where it is open already
struct AnswerLesson { std::size_t option; };                ///< of what its question offers
struct ChooseRig { std::size_t choice; };                   ///< of the rigs of a lesson; what was moved stays
struct TieGuy { std::size_t guy; };                         ///< next, in the order of work
struct TakeOffGuy {};                                       ///< the one that was wrong
struct LockScreen {};
struct LookAtLock { Lock::Touched touched; double now_s; };
struct PressLock { Lock::Touched place; double now_s; };    ///< by the text view
// clang-format on

using Command =
    std::variant<SetKind, SetPole, SetHeldDown, AddHobble, RemoveHobble, SetOpening, AddRope, RemoveRope, SetHaul, SetRopeStrength, AddGuy, RemoveGuy,
                 SetAnchorByPosition, AddFootTie, RemoveFootTie, SetGuyLossJudged, SetCompass, SetText, MoveGuy, MoveRope, TakeAdvice, TakeLean,
                 TakePretensions, TakeAnchors, AddFoundAnchor, RemoveFoundAnchor, GradeFoundAnchors, ShowGuy, ShowTies, LookToward, ShowAnchorSet, SetNumber,
                 ConfirmShown, GoTo, GoToItem, ShowMore, ShowParts, Undo, Redo, NewPlan, OpenExample, OpenFile, SaveFile, ToggleMenu, NextMenuPage, ShowPlans,
                 ClosePlans, NextPlansPage, ChoosePlan, AskShelf, AskForText, NextTheme, NextLanguage, NextUnits, SetSettings, DragScene, PinchScene, ResetView,
                 ToggleLargeSite, NextView, SetView, NextCase, ShowCase, OpenKeypad, PressKey, TakeKeypad, CloseKeypad, CloseMessage, ShowAbout, ShowText,
                 ShowPage, EnterPractice, LeavePractice, SetSite, AskSiteNumber, DrawSite, NextSite, SayGo, SayHardest, SayAngle, ShowAnswer, SpeakOf,
                 ShowCourse, OpenLesson, AnswerLesson, ChooseRig, TieGuy, TakeOffGuy, LockScreen, LookAtLock, PressLock, ToggleAwake, AwakeIs, DeviceHas,
                 StartReading, DeviceIsHeld, DeviceRefuses, TakeReading, CloseReading>;

}  // namespace guywright::app
