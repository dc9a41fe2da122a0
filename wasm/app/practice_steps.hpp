#pragma once
#include "wasm/app/state.hpp"

// Into practice, from one plan practised on to the next, and back to one's own. apply() and what else puts a plan in hand call these, and judge the plan
// anew afterwards.
namespace guywright::app {

/// Sets the person's plan aside and shows the choice of what to practise on.
void enter_practice(State& state);

/// The person's own plan again, with its history, at the place where they left it.
void leave_practice(State& state);

/// Shows `plan` in place of the one practised on, at `step`.
void practise_on(State& state, Plan plan, Practising stage, Step step);

/// Shows more of the plan practised on, or allows its numbers to be changed. What was changed of it before is taken back.
void practise_further(State& state, Practising stage, Step step);

/// Goes to a step of practice, if it can be gone to by now. To WhatIf numbers may be changed; away from there they are as drawn.
void go_in_practice(State& state, Step step);

/// What the person typed for the number of the site; why it is refused, or nothing.
[[nodiscard]] std::string enter_site_number(State& state, const std::string& typed);

/// True while a site is being drawn.
[[nodiscard]] inline bool is_drawing(const State& s) { return s.practice && s.practice->drawing; }
/// Goes on with it for about `budget_ms`, at least one slice. True once there is something to show.
bool go_on_drawing(State& state, double budget_ms);

/// Where the answer is to be shown and the check has come to its end: marks the predictions and counts them, once.
void settle_answer(State& state);

/// The names of the site or lesson in hand in the language of the state, whichever they are in.
void name_what_is_practised_on(State& state);

inline void practise(State& s, const EnterPractice&) { enter_practice(s); }
inline void practise(State& s, const LeavePractice&) { leave_practice(s); }
void practise(State& state, const SetSite& wish);
void practise(State& state, const AskSiteNumber& wish);
void practise(State& state, const DrawSite& wish);
void practise(State& state, const NextSite& wish);
void practise(State& state, const SayGo& wish);
void practise(State& state, const SayHardest& wish);
void practise(State& state, const SayAngle& wish);
void practise(State& state, const ShowAnswer& wish);
void practise(State& state, const SpeakOf& wish);

}  // namespace guywright::app
