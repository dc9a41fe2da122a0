#pragma once
#include "wasm/app/state.hpp"
#include "wasm/app/view.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::screens {

/// Draws the whole screen for the present state and says what the person wants. Never changes the state.
void draw_screen(widgets::Ui& ui, const app::State& state, const app::View& view);

}  // namespace guywright::screens
