#pragma once
#include "wasm/app/state.hpp"

namespace guywright::app {

/// Carries out wishes, in order. The only place that changes the state.
void apply(State& state, const std::vector<Command>& wishes);

/// The finger is up: what changed since it came down becomes one step of undo, and is to be saved.
void end_gesture(State& state);

/// The gesture was none: a palm, rain, a touch that the device has taken away. What it changed is taken back.
void cancel_gesture(State& state);

/// Enters a number as it is shown, in the unit and with the sign of its slider. Says why it was not taken, or nothing.
[[nodiscard]] std::string enter_shown(State& state, const std::string& path, const std::string& text);

/// Opens a plan file. A file that cannot be used leaves everything as it was and says why in `message`.
void open_plan(State& state, std::string_view text);

/// Goes on with a plan that was kept, with its history. Returns its number as a document; 0, with nothing changed, where it cannot be read.
unsigned resume(State& state, std::string_view text, History history, bool untouched);

/// Opens a copy of a kept plan as a plan of its own.
void open_copy(State& state, std::string_view text);

/// What the person typed for a text of the plan. Returns why it is refused; empty: taken, as one step of undo.
std::string enter_text(State& state, const SetText& wish);

/// A state to start with: the example plan.
[[nodiscard]] State first_state();

/// Judges the present plan at the measured values and begins the sweep over measuring error; after every change of the plan.
void refresh(State& state);

/// True while what the open screen asks is not answered yet and can be.
[[nodiscard]] bool is_advising(const State& state);

/// What the open screen asks; none where it asks nothing.
[[nodiscard]] std::optional<Question> asked(Step step);

/// Goes on with the answer for about `budget_ms`, at least one slice. True where there is more to show.
bool go_on_advising(State& state, double budget_ms);

/// Goes on with the sweep for about `budget_ms`, at least one slice. The verdict is NOT CHECKED, or NO-GO, until it is done.
void go_on_checking(State& state, double budget_ms);

}  // namespace guywright::app
