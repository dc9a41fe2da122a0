#pragma once
#include "wasm/screens/builder.hpp"

namespace guywright::screens {

/// The ten lessons, with what is done.
void add_course_items(Builder& b);

/// What the lesson in hand says, shows and lets be moved; `all`: with the ways on, for who reads.
void add_lesson_items(Builder& b, bool all);

/// Back to the list, once more, and on.
[[nodiscard]] std::vector<Key> lesson_ways(const app::State& state);

/// Height of the panel, layout px: everything of the lesson on one page, or, where that is more than `most_px`, one thing to be moved a page.
[[nodiscard]] float lesson_height(const widgets::Ui& ui, const app::State& state, float width, float most_px);

/// The lesson in hand: what is read always in view and, where there is room, what it says; sliders at the bottom, so that none moves under the finger.
void draw_lesson(widgets::Ui& ui, const app::State& state, widgets::Box box);

/// What it is about in one line, for the strip.
[[nodiscard]] std::string lesson_line(const app::State& state);

}  // namespace guywright::screens
