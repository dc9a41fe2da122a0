#include <algorithm>

#include "engine/codec/plan_codec.hpp"
#include "wasm/app/starters.hpp"
#include "wasm/platform/assets.hpp"
#include "wasm/screens/items.hpp"
#include "wasm/screens/key_grid.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/menu.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

const app::Said& theme_label(widgets::ThemeName name) {
    switch (name) {
        case widgets::ThemeName::Sun: return words::k_sun;
        case widgets::ThemeName::Dim: return words::k_dim;
        case widgets::ThemeName::Night: return words::k_night;
    }
    return words::k_sun;
}

void add_steps(std::vector<Key>& entries, const app::State& s) {
    for (int i = 0; i < app::k_step_count; ++i) {
        const auto step = static_cast<app::Step>(i);
        entries.push_back({"step " + std::string(key_of(step)), std::to_string(i + 1) + "  " + title_of(s, step), app::GoTo{step, 0},
                           s.step == step ? ButtonLook::Chosen : ButtonLook::Plain});
    }
}

void add_examples(std::vector<Key>& entries, const app::State& s) {
    for (const auto& example : assets::examples()) {
        const std::string name(example.name);
        Plan plan = read_plan(example.text).plan;
        app::name_in_language(plan, s.speech);
        entries.push_back({"example " + name, plan.title, app::OpenExample{name}});
    }
}

/// There must be a way to keep it awake.
const app::Said& awake_label(app::Awake awake) {
    switch (awake) {
        case app::Awake::Impossible:
        case app::Awake::Off: return words::k_may_go_dark;
        case app::Awake::Asked: return words::k_asking_awake;
        case app::Awake::On: return words::k_stays_on;
        case app::Awake::Refused: return words::k_awake_refused;
    }
    return words::k_may_go_dark;
}

/// Light, language, units and what else belongs to no plan.
void add_settings(std::vector<Key>& entries, const app::State& s) {
    entries.push_back({"theme", said(s, theme_label(s.theme)), app::NextTheme{}});
    entries.push_back({"language", said(s, words::k_language), app::NextLanguage{}});
    entries.push_back({"units", said(s, s.speech.units == UnitSystem::Metric ? words::k_metric : words::k_imperial), app::NextUnits{}});
}

void add_page_keys(std::vector<Key>& entries, const app::State& s) {
    if (s.device.awake != app::Awake::Impossible)
        entries.push_back(
            {"awake", said(s, awake_label(s.device.awake)), app::ToggleAwake{}, s.device.awake == app::Awake::On ? ButtonLook::Chosen : ButtonLook::Plain});
    entries.push_back({"text", said(s, words::k_text), app::ShowText{}});
    entries.push_back({"about", said(s, words::k_about), app::ShowAbout{}});
}

/// Nothing that keeps, hands on, opens or signs a plan.
std::vector<Key> practice_menu_keys(const app::State& s) {
    std::vector<Key> entries;
    entries.push_back({"practice", said(s, words::practice::k_other), app::EnterPractice{}});
    if (s.practice->stage == app::Practising::Changing)
        entries.push_back({"redo", said(s, words::k_redo), app::Redo{}, ButtonLook::Plain, !s.history.future.empty()});
    add_settings(entries, s);
    add_page_keys(entries, s);
    entries.push_back({"leave practice", said(s, words::practice::k_leave), app::LeavePractice{}});
    return entries;
}

}  // namespace

std::vector<Key> menu_keys(const app::State& s) {
    if (s.practice) return practice_menu_keys(s);
    std::vector<Key> entries;
    add_steps(entries, s);
    entries.push_back(
        {"advice", title_of(s, app::Step::Advice), app::GoTo{app::Step::Advice, 0}, app::is_advice(s.step) ? ButtonLook::Chosen : ButtonLook::Plain});
    entries.push_back({"redo", said(s, words::k_redo), app::Redo{}, ButtonLook::Plain, !s.history.future.empty()});
    entries.push_back({"lock", said(s, words::k_lock), app::LockScreen{}});
    entries.push_back({"read code", said(s, words::k_read_code), app::ShowPage{app::Page::ReadCode}});
    entries.push_back({"plans", said(s, words::k_plans), app::ShowPlans{}});
    entries.push_back({"new", said(s, words::k_new), app::NewPlan{}});
    entries.push_back({"open", said(s, words::k_open_file), app::OpenFile{}});
    entries.push_back({"save", said(s, words::k_save_file), app::SaveFile{}});
    entries.push_back({"share", said(s, words::k_share), app::ShowPage{app::Page::ShareCode}});
    entries.push_back({"sheet", said(s, words::k_sheet), app::ShowPage{app::Page::RigSheet}});
    entries.push_back({"second", said(s, words::k_second), app::ShowPage{app::Page::SecondCheck}});
    entries.push_back({"log", said(s, words::k_log), app::ShowPage{app::Page::Log}});
    add_settings(entries, s);
    entries.push_back({"name plan", said(s, words::k_name_plan), app::AskForText{"title"}});
    entries.push_back({"practice", said(s, words::practice::k_practice), app::EnterPractice{}});
    add_page_keys(entries, s);
    add_examples(entries, s);
    return entries;
}

namespace {

/// What does not fit stands on further pages, reached by a key of its own. The way back is on all of them.
std::vector<Key> on_this_page(const app::State& s, const std::vector<Key>& entries, const Grid& grid) {
    const Key back{"close menu", said(s, s.practice ? words::practice::k_back_to_practice : words::k_back_to_plan), app::ToggleMenu{}, ButtonLook::Action};
    const bool all = entries.size() < grid.cells();
    const std::size_t each = all ? entries.size() : std::max<std::size_t>(3, grid.cells()) - 2, pages = (entries.size() + each - 1) / each;
    const std::size_t first = s.menu_page % pages * each, last = std::min(first + each, entries.size());
    std::vector<Key> shown(entries.begin() + static_cast<std::ptrdiff_t>(first), entries.begin() + static_cast<std::ptrdiff_t>(last));
    if (!all) shown.push_back({"more menu", said(s, words::k_more), app::NextMenuPage{}});
    shown.push_back(back);
    return shown;
}

}  // namespace

void draw_menu(Ui& ui, const app::State& state, Box box) {
    constexpr float k_room_for_title_px = 420.0F;
    if (box.h >= k_room_for_title_px) write_line(ui, ui.fonts.large, box.cut_top(36.0F, 10.0F), state.plan.title, ui.theme.ink);
    const std::vector<Key> entries = menu_keys(state);
    const Grid grid = grid_for(box, entries.size() + 1);
    draw_grid(ui, box, on_this_page(state, entries, grid), grid);
}

void draw_message(Ui& ui, const app::State& state, Box box) {
    const float wide = std::min(box.w, 760.0F);
    box = {box.x + (box.w - wide) / 2.0F, box.y, wide, box.h};
    if (widgets::button(ui, box.cut_bottom(widgets::k_target_px, widgets::k_gap_px),
                        {"close message", say(state.speech, words::k_close_message), ButtonLook::Action}))
        ui.wish(app::CloseMessage{});
    widgets::write(ui, ui.fonts.text, box, state.message, ui.theme.ink);
    ui.mirror.push_back({"message", "text", state.message, "", box});
}

}  // namespace guywright::screens
