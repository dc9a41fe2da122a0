#include <algorithm>

#include "engine/codec/plan_codec.hpp"
#include "wasm/platform/assets.hpp"
#include "wasm/screens/items.hpp"
#include "wasm/screens/key_grid.hpp"
#include "wasm/screens/parts.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

std::string_view theme_label(widgets::ThemeName name) {
    switch (name) {
        case widgets::ThemeName::Sun: return "Light: sun";
        case widgets::ThemeName::Dim: return "Light: dim";
        case widgets::ThemeName::Night: return "Light: red night";
    }
    return "";
}

void add_steps(std::vector<Key>& entries, const app::State& s) {
    for (int i = 0; i < app::k_step_count; ++i) {
        const auto step = static_cast<app::Step>(i);
        const std::string title(title_of(step));
        entries.push_back({"step " + title, std::to_string(i + 1) + "  " + title, app::GoTo{step, 0}, s.step == step ? ButtonLook::Chosen : ButtonLook::Plain});
    }
}

void add_examples(std::vector<Key>& entries) {
    for (const auto& example : assets::examples()) {
        const std::string name(example.name);
        entries.push_back({"example " + name, read_plan(example.text).plan.title, app::OpenExample{name}});
    }
}

std::string_view awake_label(app::Awake awake) {
    switch (awake) {
        case app::Awake::Impossible: return "";
        case app::Awake::Off: return "Screen may go dark";
        case app::Awake::Asked: return "Screen: asking\u2026";
        case app::Awake::On: return "\u2713 Screen stays on";
        case app::Awake::Refused: return "Screen: device refuses to stay on";
    }
    return "";
}

struct PageKey {
    std::string_view id;
    app::Page page;
    app::Said label;
};
constexpr PageKey k_page_keys[]{
    {"share", app::Page::ShareCode, {"Show as code", "Montrer en code"}},
    {"read code", app::Page::ReadCode, {"Read a code", "Lire un code"}},
    {"sheet", app::Page::RigSheet, {"Rig sheet", "Fiche de montage"}},
};

}  // namespace

std::vector<Key> menu_keys(const app::State& s) {
    std::vector<Key> entries;
    add_steps(entries, s);
    entries.push_back({"lock", "Lock the screen", app::LockScreen{}});
    entries.push_back({"plans", "Plans kept here", app::ShowPlans{}});
    entries.push_back({"new", "New plan", app::NewPlan{}});
    entries.push_back({"open", "Open a plan file", app::OpenFile{}});
    entries.push_back({"save", "Save plan file", app::SaveFile{}});
    for (const PageKey& page : k_page_keys) entries.push_back({std::string(page.id), std::string(say(s.speech, page.label)), app::ShowPage{page.page}});
    entries.push_back({"redo", "Redo", app::Redo{}, ButtonLook::Plain, !s.history.future.empty()});
    entries.push_back({"theme", std::string(theme_label(s.theme)), app::NextTheme{}});
    entries.push_back({"name plan", "Name this plan", app::AskForText{"title"}});
    if (s.device.awake != app::Awake::Impossible)
        entries.push_back({"awake", std::string(awake_label(s.device.awake)), app::ToggleAwake{}, s.device.awake == app::Awake::On ? ButtonLook::Chosen : ButtonLook::Plain});
    entries.push_back({"text", "Read as text", app::ShowText{}});
    entries.push_back({"about", "About", app::ShowAbout{}});
    add_examples(entries);
    return entries;
}

namespace {

/// What does not fit stands on further pages, reached by a key of its own. The way back is on all of them.
std::vector<Key> on_this_page(const std::vector<Key>& entries, const Grid& grid, std::size_t page) {
    const Key back{"close menu", "Back to the plan", app::ToggleMenu{}, ButtonLook::Action};
    const bool all = entries.size() < grid.cells();
    const std::size_t each = all ? entries.size() : std::max<std::size_t>(3, grid.cells()) - 2, pages = (entries.size() + each - 1) / each;
    const std::size_t first = page % pages * each, last = std::min(first + each, entries.size());
    std::vector<Key> shown(entries.begin() + static_cast<std::ptrdiff_t>(first), entries.begin() + static_cast<std::ptrdiff_t>(last));
    if (!all) shown.push_back({"more menu", "More", app::NextMenuPage{}});
    shown.push_back(back);
    return shown;
}

}  // namespace

void draw_menu(Ui& ui, const app::State& state, Box box) {
    constexpr float k_room_for_title_px = 420.0F;
    if (box.h >= k_room_for_title_px) write_line(ui, ui.fonts.large, box.cut_top(36.0F, 10.0F), state.plan.title, ui.theme.ink);
    const std::vector<Key> entries = menu_keys(state);
    const Grid grid = grid_for(box, entries.size() + 1);
    draw_grid(ui, box, on_this_page(entries, grid, state.menu_page), grid);
}

void draw_message(Ui& ui, const app::State& state, Box box) {
    const float wide = std::min(box.w, 760.0F);
    box = {box.x + (box.w - wide) / 2.0F, box.y, wide, box.h};
    if (widgets::button(ui, box.cut_bottom(widgets::k_target_px, widgets::k_gap_px), {"close message", "Back to my plan", ButtonLook::Action}))
        ui.wish(app::CloseMessage{});
    widgets::write(ui, ui.fonts.text, box, state.message, ui.theme.ink);
    ui.mirror.push_back({"message", "text", state.message, "", box});
}

}  // namespace guywright::screens
