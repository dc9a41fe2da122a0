#pragma once
#include "wasm/app/state.hpp"
#include "wasm/screens/key_grid.hpp"
#include "wasm/widgets/ui.hpp"

// The pieces of the screen; screen.cpp puts them together.
namespace guywright::screens {

/// Verdict and what governs it. Always in view; a tap leads to the card.
void draw_strip(widgets::Ui& ui, const app::State& state, const widgets::Box& box);
/// The site, turned by the finger, with keys for the view and the case shown. A tap makes it large.
void draw_site(widgets::Ui& ui, const app::State& state, const widgets::Box& box);
/// The step in hand: as many sliders as fit, and the way on and back.
void draw_walk(widgets::Ui& ui, const app::State& state, widgets::Box box);
/// "page 2 of 3"; empty where there is but one.
[[nodiscard]] std::string page_told(const app::State& state, std::size_t page, std::size_t pages);
/// Title of a page, and beside it where in the walk it is.
void draw_page_title(widgets::Ui& ui, widgets::Box row, const std::string& title, const std::string& where);
/// All keys of the menu but those that turn its pages and close it.
[[nodiscard]] std::vector<Key> menu_keys(const app::State& state);
/// Steps, plans, theme.
void draw_menu(widgets::Ui& ui, const app::State& state, widgets::Box box);
/// Exact entry of one number: what is typed, and the keys below it or, where that is too low, beside it in `aside`.
void draw_keypad(widgets::Ui& ui, const app::State& state, widgets::Box box, widgets::Box aside);
[[nodiscard]] bool keypad_fits(const widgets::Box& box);
/// The two places that open the lock. `fingers` are on the glass.
void draw_lock(widgets::Ui& ui, const app::State& state, const widgets::Box& box, int fingers);
/// A number being taken from the device.
void draw_reading(widgets::Ui& ui, const app::State& state, widgets::Box box);
/// The plans kept, and what can be done with one.
void draw_plans(widgets::Ui& ui, const app::State& state, widgets::Box box);
/// The same for somebody who reads, while that screen is open.
struct PlansWords {
    std::string title;
    std::vector<std::string> lines;
    std::vector<Key> keys;
};
[[nodiscard]] PlansWords plans_words(const app::State& state);
/// Something that has to be read and closed.
void draw_message(widgets::Ui& ui, const app::State& state, widgets::Box box);

/// Room for the longest group of the step's items on one page, `width` px wide, with title and ways.
[[nodiscard]] float told_height(const widgets::Ui& ui, const app::State& state, float width);
/// Room for `sliders` sliders with one line of how, the row of keys under them, title and ways.
[[nodiscard]] float walk_height(int sliders);

}  // namespace guywright::screens
