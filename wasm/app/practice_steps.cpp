#include "wasm/app/practice_steps.hpp"

#include <utility>

#include "wasm/app/apply.hpp"

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
    s.practice->drawn = plan;
    s.practice->unseen = {};
    s.practice->unseen.model = build_model(plan).model;
    s.plan = std::move(plan);
    s.history = {};
    s.shown_case = k_holding;
    s.camera = {};
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

}  // namespace guywright::app
