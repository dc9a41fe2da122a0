#include <array>

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

struct Entry {
    std::string id, label;
    app::Command command;
    ButtonLook look = ButtonLook::Plain;
    bool enabled = true;
};

std::vector<Entry> step_entries(const app::State& s) {
    std::vector<Entry> entries;
    for (int i = 0; i < app::k_step_count; ++i) {
        const auto step = static_cast<app::Step>(i);
        const std::string title(title_of(step));
        entries.push_back({"step " + title, std::to_string(i + 1) + "  " + title, app::GoTo{step, 0}, s.step == step ? ButtonLook::Chosen : ButtonLook::Plain});
    }
    return entries;
}

std::vector<Entry> other_entries(const app::State& s) {
    return {{"new", "New plan", app::NewPlan{}},
            {"example", "Example plan", app::OpenExample{}},
            {"open", "Open a plan file", app::OpenFile{}},
            {"save", "Save plan file", app::SaveFile{}},
            {"redo", "Redo", app::Redo{}, ButtonLook::Plain, !s.history.future.empty()},
            {"theme", std::string(theme_label(s.theme)), app::NextTheme{}},
            {"close menu", "Back to the plan", app::ToggleMenu{}, ButtonLook::Action}};
}

void draw_column(Ui& ui, Box column, const std::vector<Entry>& entries) {
    const float pitch = std::min(88.0F, (column.h + 12.0F) / static_cast<float>(entries.size()));
    for (const Entry& e : entries)
        if (widgets::button(ui, column.cut_top(pitch - 12.0F, 12.0F), {e.id, e.label, e.look, e.enabled})) ui.wish(e.command);
}

}  // namespace

void draw_menu(Ui& ui, const app::State& state, Box box) {
    const float wide = std::min(box.w, 760.0F);
    box = {box.x + (box.w - wide) / 2.0F, box.y, wide, box.h};
    write_line(ui, ui.fonts.large, box.cut_top(36.0F, 10.0F), state.plan.title, ui.theme.ink);
    const Box left = box.cut_left((box.w - widgets::k_gap_px) / 2.0F, widgets::k_gap_px);
    draw_column(ui, left, step_entries(state));
    draw_column(ui, box, other_entries(state));
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
