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

inline void practise(State& s, const EnterPractice&) { enter_practice(s); }
inline void practise(State& s, const LeavePractice&) { leave_practice(s); }

}  // namespace guywright::app
