#include <algorithm>
#include <optional>

#include "wasm/app/not_measured.hpp"
#include "wasm/screens/items.hpp"
#include "wasm/screens/pages.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

using app::Step;
using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr float k_title_px = 36.0F;
constexpr float k_after_title_px = 8.0F;
constexpr float k_before_ways_px = 12.0F;
constexpr float k_between_ways_px = 10.0F;
constexpr float k_one_line_slider_px = 44.0F + widgets::k_line_px + 4.0F + widgets::k_target_px;
constexpr float k_foot_row_px = widgets::k_target_px + widgets::k_gap_px;

struct Place {
    StepItems step;
    std::vector<Page> pages;
    std::size_t page = 0;

    [[nodiscard]] const Page& here() const { return pages[page]; }
    [[nodiscard]] const Group& group() const { return step.groups[step.items[here().first].group]; }
};

/// Paths on the page that still show a starting value.
std::vector<std::string> unentered(const Place& at, const Plan& plan) {
    std::vector<std::string> paths;
    for (std::size_t i = at.here().first; i < at.here().last; ++i)
        if (!app::is_measured(plan, at.step.items[i].id)) paths.push_back(at.step.items[i].id);
    return paths;
}

/// Advice leads nowhere on, and back to where it was asked for.
bool is_last(Step s) { return s >= Step::Card; }
Step step_before(Step s) { return s == Step::Advice ? Step::Card : app::is_advice(s) ? Step::Advice : static_cast<Step>(static_cast<int>(s) - 1); }
/// Where "back" leads from the first page of a step; nowhere from where a walk begins.
std::optional<Step> step_back(const app::State& s) {
    switch (s.step) {
        case Step::Edge:
        case Step::Practice: return std::nullopt;
        case Step::Score:
        case Step::Course: return Step::Practice;
        case Step::SayVerdict: return Step::Site;
        case Step::SayGuy: return Step::SayVerdict;
        case Step::SayAngle: return Step::SayGuy;
        case Step::Answer: return Step::Site;
        case Step::Site: return is_blind(s.practice) ? std::nullopt : std::optional(Step::Answer);
        case Step::Why:
        case Step::WhatIf: return Step::Answer;
        default: return step_before(s.step);
    }
}

/// Cards and answers have nothing to enter, but for the anchors found.
bool has_foot_row(Step s) { return s < Step::Card || s == Step::Anchors; }

Step step_after(Step s) { return static_cast<Step>(static_cast<int>(s) + 1); }

void draw_title(Ui& ui, Box row, const app::State& state, const Place& at) {
    const std::string step = std::to_string(static_cast<int>(state.step) + 1) + "/" + std::to_string(app::k_step_count);
    const std::string where = at.pages.size() == 1 && state.step <= Step::Card ? step : page_told(state, at.page, at.pages.size());
    draw_page_title(ui, row, at.group().title, where);
}

/// Where "next" leads: the next page, else the next step; nowhere from the end of the card.
void go_on(Ui& ui, const app::State& state, const Place& at) {
    if (at.page + 1 < at.pages.size()) ui.wish(app::GoTo{state.step, at.pages[at.page + 1].first});
    else if (!is_last(state.step)) ui.wish(app::GoTo{step_after(state.step), 0});
}

void draw_ways(Ui& ui, Box row, const app::State& state, const Place& at) {
    const float wide = (row.w - 3.0F * k_between_ways_px) / 4.0F;
    const std::optional<Step> before = step_back(state);
    if (widgets::button(ui, row.cut_left(wide, k_between_ways_px), {"back", say(state.speech, words::k_back), ButtonLook::Plain, at.page > 0 || before})) {
        if (at.page > 0) ui.wish(app::GoTo{state.step, at.pages[at.page - 1].first});
        else if (before) ui.wish(app::GoTo{*before, state.step > Step::Card ? 0 : SIZE_MAX});
    }
    if (widgets::button(ui, row.cut_left(wide, k_between_ways_px), {"menu", say(state.speech, state.practice ? words::practice::k_menu : words::k_steps)}))
        ui.wish(app::ToggleMenu{});
    if (widgets::button(ui, row.cut_left(wide, k_between_ways_px), {"undo", say(state.speech, words::k_undo), ButtonLook::Plain, !state.history.past.empty()}))
        ui.wish(app::Undo{});
    const bool last = is_last(state.step) && at.page + 1 == at.pages.size();
    if (widgets::button(ui, row, {"next", say(state.speech, words::k_next), last ? ButtonLook::Plain : ButtonLook::Action, !last})) go_on(ui, state, at);
}

/// One key that says "the starting values on this page are right" and goes on.
void draw_confirm(Ui& ui, const Box& row, const app::State& state, const Place& at, std::vector<std::string> paths) {
    const std::string label = say(state.speech, words::k_right, paths.size());
    if (!widgets::button(ui, row, {"confirm", label})) return;
    ui.wish(app::ConfirmShown{std::move(paths)});
    go_on(ui, state, at);
}

/// Under the sliders: what is entered by one word, and what few need.
void draw_foot_row(Ui& ui, Box row, const app::State& state, const Place& at) {
    std::vector<std::string> paths = unentered(at, state.plan);
    const Group& group = at.group();
    if (!group.more.empty()) {
        const Box key = paths.empty() ? row : row.cut_right((row.w - widgets::k_gap_px) / 3.0F, widgets::k_gap_px);
        const std::string label = paths.empty() ? said(state, words::k_more_what, {{"{what}", group.more}}) : said(state, words::k_more);
        if (widgets::button(ui, key, {"more", label})) ui.wish(app::ShowMore{group.id, group.more_id});
    }
    if (!paths.empty()) draw_confirm(ui, row, state, at, std::move(paths));
}

/// The page must not change under the finger when its last value is entered, so the row under the sliders always has its room
/// on steps that may need it.
Place place_of(const Ui& ui, const app::State& state, const Box& body) {
    Place at{items_of(ui, state, state.step, body.w), {}, 0};
    const float foot_px = has_foot_row(state.step) ? k_foot_row_px : 0.0F;
    at.pages = paginate(at.step.items, body.h - foot_px, widgets::k_gap_px);
    at.page = page_of(at.pages, item_called(at.step.items, state.wanted_id, state.item));
    return at;
}

}  // namespace

std::string page_told(const app::State& state, std::size_t page, std::size_t pages) {
    return pages > 1 ? said(state, words::k_page, {{"{n}", std::to_string(page + 1)}, {"{all}", std::to_string(pages)}}) : std::string();
}

void draw_page_title(Ui& ui, Box row, const std::string& title, const std::string& where) {
    write_line(ui, ui.fonts.text, row.cut_right(widgets::text_width(ui.fonts.text, where) + 1.0F, 10.0F), where, ui.theme.ink, widgets::Align::Right);
    write_line(ui, widgets::text_width(ui.fonts.large, title) <= row.w ? ui.fonts.large : ui.fonts.strong, row, title, ui.theme.ink);
    ui.mirror.push_back({"title", "heading", title, where, row});
}

float walk_height(int sliders) {
    const auto count = static_cast<float>(sliders);
    return k_title_px + k_after_title_px + count * k_one_line_slider_px + (count - 1.0F) * widgets::k_gap_px + k_foot_row_px + k_before_ways_px +
           widgets::k_target_px;
}

float told_height(const Ui& ui, const app::State& state, float width) {
    const StepItems step = items_of(ui, state, state.step, width);
    std::vector<float> groups_px(step.groups.size(), 0.0F);
    for (const Item& item : step.items) groups_px[item.group] += item.height_px + widgets::k_gap_px;
    const float tallest_px = groups_px.empty() ? 0.0F : *std::max_element(groups_px.begin(), groups_px.end());
    return k_title_px + k_after_title_px + tallest_px + k_before_ways_px + widgets::k_target_px;
}

void draw_walk(Ui& ui, const app::State& state, Box box) {
    const Box ways = box.cut_bottom(widgets::k_target_px, k_before_ways_px);
    const Box title = box.cut_top(k_title_px, k_after_title_px);
    const Place at = place_of(ui, state, box);
    if (has_foot_row(state.step)) draw_foot_row(ui, box.cut_bottom(widgets::k_target_px, widgets::k_gap_px), state, at);
    for (std::size_t i = at.here().first; i < at.here().last; ++i) at.step.items[i].draw(ui, box.cut_top(at.step.items[i].height_px, widgets::k_gap_px));
    draw_title(ui, title, state, at);
    draw_ways(ui, ways, state, at);
}

}  // namespace guywright::screens
