#pragma once
#include "wasm/screens/builder.hpp"

namespace guywright::screens {

/// The ten lessons, with what is done.
void add_course_items(Builder& b);

/// What the lesson in hand says, shows and lets be moved; `all`: with the ways on, for who reads.
void add_lesson_items(Builder& b, bool all);

/// Back to the list, once more, and on.
[[nodiscard]] std::vector<Key> lesson_ways(const app::State& state);

/// Height of the panel in which everything of the lesson stands on one page, layout px.
[[nodiscard]] float lesson_height(const widgets::Ui& ui, const app::State& state, float width);

/// The lesson in hand: what is read always in view, sliders at the bottom, so that none moves under the finger.
void draw_lesson(widgets::Ui& ui, const app::State& state, widgets::Box box);

/// What it is about in one line, for the strip.
[[nodiscard]] std::string lesson_line(const app::State& state);

}  // namespace guywright::screens
