#pragma once
#include "wasm/app/state.hpp"

namespace guywright::app {

/// Carries out one wish. The only place that changes the state.
void apply(State& state, const Command& command);

/// The finger is up: what changed since it came down becomes one step of undo, and is to be saved.
void end_gesture(State& state);

/// Opens a plan file. A file that cannot be used leaves everything as it was and says why in `message`.
void open_plan(State& state, std::string_view text);

/// A state to start with: the example plan.
[[nodiscard]] State first_state();

/// Computes the verdict of the present plan; to be called after every change of it.
void refresh(State& state);

}  // namespace guywright::app
