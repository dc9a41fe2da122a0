#include "wasm/app/practice_steps.hpp"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <utility>

#include "wasm/app/apply.hpp"
#include "wasm/app/starters.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::app {
namespace {

/// Nothing that was open over the plan before lies over the next.
void close_all(State& s) {
    s.menu_open = false;
    s.plans_screen.reset();
    s.keypad.reset();
    s.device.reading.reset();
    s.message.clear();
    s.last_touched.clear();
    s.wanted_id.clear();
    s.before_gesture.reset();
    s.site_large = false;
}

void go_to(State& s, Step step) {
    s.step = step;
    s.item = 0;
    s.open_group.clear();
}

bool is_predicting(const State& s) { return s.practice && s.practice->stage == Practising::Predicting; }

/// "back 2": the number of a name that stands twice stays.
void put_in_language(std::string& name, const Speech& speech) {
    const std::size_t bare = name.ends_with(" 2") ? name.size() - 2 : name.size();
    const std::string_view known_by = std::string_view(name).substr(0, bare);
    for (const Said& known : words::practice::k_site_names)
        if (known.english == known_by || known.french == known_by) return void(name = std::string(say(speech, known)) + name.substr(bare));
}

void name_site(Plan& site, const Speech& speech) {
    put_in_language(site.title, speech);
    for (GuyPlan& guy : site.guys) put_in_language(guy.name, speech);
    for (RopePlan& rope : site.ropes) put_in_language(rope.name, speech);
}

}  // namespace

void enter_practice(State& s) {
    if (!s.practice) {
        end_gesture(s);
        SetAside own{s.plan, std::move(s.history), s.untouched, s.step, s.item, s.open_group, s.advice_shown, s.camera, s.view, s.shown_case};
        s.practice.emplace();
        s.practice->own = std::move(own);
        s.check_code.clear();
        s.history = {};
    }
    s.practice->stage = Practising::Choosing;
    s.practice->drawing.reset();
    s.practice->none_found = false;
    s.practice->lesson.reset();
    close_all(s);
    go_to(s, Step::Practice);
}

void leave_practice(State& s) {
    if (!s.practice) return;
    SetAside own = std::move(s.practice->own);
    s.practice.reset();
    close_all(s);
    s.plan = std::move(own.plan);
    s.history = std::move(own.history);
    s.untouched = own.untouched;
    s.step = own.step;
    s.item = own.item;
    s.open_group = std::move(own.open_group);
    s.advice_shown = own.advice_shown;
    s.camera = own.camera;
    s.view = own.view;
    s.shown_case = own.shown_case;
}

void practise_on(State& s, Plan plan, Practising stage, Step step) {
    if (!s.practice) enter_practice(s);
    close_all(s);
    s.practice->lesson.reset();
    s.practice->drawn = plan;
    s.practice->unseen = {};
    s.practice->unseen.model = build_model(plan).model;
    s.plan = std::move(plan);
    s.history = {};
    s.shown_case = k_holding;
    s.camera = {};
    s.view = scene::View::Side;  // with its dimensions
    s.practice->stage = stage;
    go_to(s, step);
}

void practise_further(State& s, Practising stage, Step step) {
    if (!s.practice) return;
    close_all(s);
    s.plan = s.practice->drawn;
    s.history = {};
    s.practice->stage = stage;
    go_to(s, step);
}

void go_in_practice(State& s, Step step) {
    if (!s.practice || !reaches(s.practice->stage, step)) return;
    const bool changing = step == Step::WhatIf;
    if (s.practice->stage >= Practising::Answered && changing != (s.practice->stage == Practising::Changing))
        return practise_further(s, changing ? Practising::Changing : Practising::Answered, step);
    if (step != s.step) go_to(s, step);
}

void practise(State& s, const SetSite& wish) {
    if (!s.practice || s.practice->stage != Practising::Choosing) return;
    s.practice->site.seed = std::clamp(wish.seed, 1U, k_last_site_seed);
    s.practice->site.level = std::clamp(wish.level, k_first_site_level, k_last_site_level);
    s.practice->none_found = false;
}

void practise(State& s, const AskSiteNumber&) {
    if (!s.practice || s.practice->stage != Practising::Choosing) return;
    const std::string label = say(s.speech, words::practice::k_site_number_label, {{"{most}", std::to_string(k_last_site_seed)}});
    s.text_wish = TextWish{k_site_number_path, label, std::to_string(s.practice->site.seed)};
}

std::string enter_site_number(State& s, const std::string& typed) {
    std::uint32_t seed = 0;
    const auto [end, fault] = std::from_chars(typed.data(), typed.data() + typed.size(), seed);
    const bool whole = fault == std::errc{} && end == typed.data() + typed.size();
    if (!whole || seed < 1 || seed > k_last_site_seed)
        return say(s.speech, words::practice::k_site_number_refused, {{"{typed}", typed}, {"{most}", std::to_string(k_last_site_seed)}});
    if (s.practice) practise(s, SetSite{seed, s.practice->site.level});
    return {};
}

void practise(State& s, const DrawSite&) {
    if (!s.practice) return;
    const SiteInHand& chosen = s.practice->site;
    const std::uint32_t seed = chosen.seed;
    const int level = chosen.level;
    s.practice->site = {.seed = seed, .level = level};
    enter_practice(s);
    s.practice->drawing = std::make_unique<SiteDrawing>(seed, level);
}

void practise(State& s, const NextSite&) {
    if (!s.practice) return;
    s.practice->site.seed = s.practice->site.seed % k_last_site_seed + 1;
    practise(s, DrawSite{});
}

bool go_on_drawing(State& s, double budget_ms) {
    using Clock = std::chrono::steady_clock;
    if (!is_drawing(s)) return false;
    const auto end = Clock::now() + std::chrono::duration<double, std::milli>(budget_ms);
    SiteDrawing& drawing = *s.practice->drawing;
    do drawing.advance();
    while (!drawing.done() && Clock::now() < end);
    if (!drawing.done()) return false;
    const std::unique_ptr<SiteDrawing> done = std::move(s.practice->drawing);
    s.practice->none_found = done->site() == nullptr;
    if (s.practice->none_found) return true;
    Plan plan = done->site()->plan;
    name_site(plan, s.speech);
    practise_on(s, std::move(plan), Practising::Predicting, Step::Site);
    refresh(s);
    return true;
}

void practise(State& s, const SayGo& wish) {
    if (!is_predicting(s)) return;
    s.practice->site.said.go = wish.go;
    s.practice->site.said_go = true;
    go_to(s, Step::SayGuy);
}

void practise(State& s, const SayHardest& wish) {
    if (!is_predicting(s) || wish.guy >= s.plan.guys.size()) return;
    s.practice->site.said.guy = wish.guy;
    s.practice->site.said_guy = true;
    go_to(s, Step::SayAngle);
}

void practise(State& s, const SayAngle& wish) {
    constexpr double k_most_deg = 90.0;
    if (!is_predicting(s)) return;
    const double least_deg = s.plan.frame.kind == FrameKind::Tripod ? -k_most_deg : 0.0;  // outside the legs
    s.practice->site.said.angle_deg = std::clamp(wish.deg, least_deg, k_most_deg);
}

void practise(State& s, const ShowAnswer&) {
    if (!is_predicting(s) || !s.practice->site.said_go || !s.practice->site.said_guy) return;
    practise_further(s, Practising::Answered, Step::Answer);
    settle_answer(s);
}

void practise(State& s, const SpeakOf& wish) {
    if (!s.practice || s.practice->site.explanation.empty()) return;
    s.practice->site.spoken = std::min(wish.sentence, s.practice->site.explanation.size() - 1);
}

void settle_answer(State& s) {
    if (!s.practice || s.practice->lesson || s.practice->stage < Practising::Answered || s.practice->site.answer || s.sweep) return;
    SiteInHand& site = s.practice->site;
    site.answer = answer_of(s.evaluation);
    if (!site.answer) return;
    site.marks = marks_of(*site.answer, site.said);
    site.explanation = explain(s.plan, s.evaluation, *site.answer, site.said);
    s.progress.count(site.level, site.marks);
    s.progress_changed = true;
}

void name_what_is_practised_on(State& s) {
    if (!s.practice || s.practice->stage == Practising::Choosing) return;
    const auto name = s.practice->lesson ? name_in_language : name_site;
    name(s.plan, s.speech);
    name(s.practice->drawn, s.speech);
    if (s.practice->lesson) name(s.practice->lesson->whole, s.speech);
}

}  // namespace guywright::app
