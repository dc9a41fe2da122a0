#pragma once
#include "wasm/app/state.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::screens {

/// The head set free: all forces on it from one point, and beside it the same tail to tip, to one scale each. What the sentence of
/// the explanation speaks of is lit up.
void draw_head_forces(widgets::Ui& ui, const app::State& state, widgets::Box box);

}  // namespace guywright::screens
