#pragma once
#include "wasm/app/state.hpp"
#include "wasm/widgets/ui.hpp"

// Drawings of answers, in the place of the site.
namespace guywright::screens {

/// The answer of the open screen has a drawing, and it is there.
[[nodiscard]] bool has_advice_picture(const app::State& state);

/// The screen that is open is mostly its drawing, answered or not.
[[nodiscard]] bool is_picture_step(app::Step step);

void draw_advice_picture(widgets::Ui& ui, const app::State& state, const widgets::Box& box);

}  // namespace guywright::screens
