#include <algorithm>
#include <cmath>

#include "engine/codec/plan_codec.hpp"
#include "wasm/platform/assets.hpp"
#include "wasm/screens/items.hpp"
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

constexpr float k_between_px = 12.0F;
constexpr float k_narrowest_key_px = 118.0F;
constexpr float k_widest_column_px = 380.0F;

void add_steps(std::vector<MenuEntry>& entries, const app::State& s) {
    for (int i = 0; i < app::k_step_count; ++i) {
        const auto step = static_cast<app::Step>(i);
        const std::string title(title_of(step));
        entries.push_back({"step " + title, std::to_string(i + 1) + "  " + title, app::GoTo{step, 0}, s.step == step ? ButtonLook::Chosen : ButtonLook::Plain});
    }
}

void add_examples(std::vector<MenuEntry>& entries) {
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

}  // namespace

std::vector<MenuEntry> menu_entries(const app::State& s) {
    std::vector<MenuEntry> entries;
    add_steps(entries, s);
    entries.push_back({"lock", "Lock the screen", app::LockScreen{}});
    entries.push_back({"new", "New plan", app::NewPlan{}});
    add_examples(entries);
    entries.push_back({"open", "Open a plan file", app::OpenFile{}});
    entries.push_back({"save", "Save plan file", app::SaveFile{}});
    entries.push_back({"redo", "Redo", app::Redo{}, ButtonLook::Plain, !s.history.future.empty()});
    entries.push_back({"theme", std::string(theme_label(s.theme)), app::NextTheme{}});
    if (s.device.awake != app::Awake::Impossible)
        entries.push_back({"awake", std::string(awake_label(s.device.awake)), app::ToggleAwake{}, s.device.awake == app::Awake::On ? ButtonLook::Chosen : ButtonLook::Plain});
    entries.push_back({"text", "Read as text", app::ShowText{}});
    entries.push_back({"about", "About", app::ShowAbout{}});
    entries.push_back({"close menu", "Back to the plan", app::ToggleMenu{}, ButtonLook::Action});
    return entries;
}

namespace {

struct Grid {
    std::size_t rows = 1, columns = 1;
    [[nodiscard]] std::size_t cells() const { return rows * columns; }
};

/// As few columns as hold all, in keys no smaller than a glove needs; as many as fit where not all can be held.
Grid grid_for(const Box& box, std::size_t count) {
    const auto most = [](float room, float key) { return static_cast<std::size_t>(std::max(1.0F, std::floor((room + k_between_px) / (key + k_between_px)))); };
    const std::size_t rows = most(box.h, widgets::k_target_px), columns = most(box.w, k_narrowest_key_px);
    const std::size_t needed = std::max(std::min<std::size_t>(2, columns), (count + rows - 1) / rows);
    return {rows, std::min(columns, needed)};
}

/// What does not fit stands on further pages, reached by a key of its own.
std::vector<MenuEntry> on_this_page(std::vector<MenuEntry> entries, const Grid& grid, std::size_t page) {
    if (entries.size() <= grid.cells()) return entries;
    const std::size_t each = std::max<std::size_t>(1, grid.cells() - 1), pages = (entries.size() + each - 1) / each;
    const std::size_t first = page % pages * each, last = std::min(first + each, entries.size());
    std::vector<MenuEntry> shown(entries.begin() + static_cast<std::ptrdiff_t>(first), entries.begin() + static_cast<std::ptrdiff_t>(last));
    shown.push_back({"more menu", "More", app::NextMenuPage{}, ButtonLook::Action});
    return shown;
}

void draw_grid(Ui& ui, Box box, const std::vector<MenuEntry>& entries, const Grid& grid) {
    const auto columns = static_cast<float>(grid.columns);
    const float wide = std::min(k_widest_column_px, (box.w - (columns - 1.0F) * k_between_px) / columns);
    const std::size_t rows = (entries.size() + grid.columns - 1) / grid.columns;
    for (std::size_t at = 0; at < entries.size();) {
        Box column = box.cut_left(wide, k_between_px);
        for (std::size_t row = 0; row < rows && at < entries.size(); ++row, ++at) {
            const MenuEntry& e = entries[at];
            if (widgets::button(ui, column.cut_top(widgets::k_target_px, k_between_px), {e.id, e.label, e.look, e.enabled})) ui.wish(e.command);
        }
    }
}

}  // namespace

void draw_menu(Ui& ui, const app::State& state, Box box) {
    constexpr float k_room_for_title_px = 420.0F;
    if (box.h >= k_room_for_title_px) write_line(ui, ui.fonts.large, box.cut_top(36.0F, 10.0F), state.plan.title, ui.theme.ink);
    std::vector<MenuEntry> entries = menu_entries(state);
    const Grid grid = grid_for(box, entries.size());
    draw_grid(ui, box, on_this_page(std::move(entries), grid, state.menu_page), grid);
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
