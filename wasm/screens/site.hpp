#pragma once
#include <string>
#include <string_view>

#include "wasm/app/state.hpp"
#include "wasm/widgets/ui.hpp"

// The picture of the site: beside the sliders, and large with its own keys.
namespace guywright::screens {

/// "free", "side", ... in every language, for ids.
[[nodiscard]] std::string_view view_name(scene::View view);
/// "holding"; empty where no case has been computed.
[[nodiscard]] std::string shown_case_name(const app::State& state);
/// What the picture shows of the case, in a sentence or two: how far the head moves and how much larger that is drawn.
[[nodiscard]] std::string caption(const app::State& state);

/// The part of the picture in `box` that the site just fills, for commands that move it.
[[nodiscard]] scene::ImageBox room_of_picture(const widgets::Box& box);

void draw_large_picture(widgets::Ui& ui, const app::State& state, widgets::Box box);
/// Views, the slider through the cases, and the way back.
void draw_picture_keys(widgets::Ui& ui, const app::State& state, widgets::Box box);
[[nodiscard]] float picture_keys_height(float width);

/// One finger walks through the cases; its name stands above it.
void case_slider(widgets::Ui& ui, const app::State& state, widgets::Box box);
[[nodiscard]] float case_slider_height();

}  // namespace guywright::screens
