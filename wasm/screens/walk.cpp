#include <algorithm>

#include "wasm/screens/items.hpp"
#include "wasm/screens/pages.hpp"
#include "wasm/screens/parts.hpp"

namespace guywright::screens {
namespace {

using app::Step;
using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr float k_title_px = 36.0F;

/// Paths on the page that still show a starting value.
std::vector<std::string> unentered(const std::vector<Item>& items, const Page& page, const Plan& plan) {
    std::vector<std::string> paths;
    for (std::size_t i = page.first; i < page.last; ++i)
        if (std::find(plan.not_measured.begin(), plan.not_measured.end(), items[i].path) != plan.not_measured.end()) paths.push_back(items[i].path);
    return paths;
}

struct Place {
    std::vector<Item> items;
    std::vector<Page> pages;
    std::size_t page = 0;
};

Step step_after(Step s, int by) { return static_cast<Step>(static_cast<int>(s) + by); }

void draw_title(Ui& ui, Box row, const app::State& state, const Place& at) {
    std::string where = std::to_string(static_cast<int>(state.step) + 1) + "/" + std::to_string(app::k_step_count);
    if (at.pages.size() > 1) where = "page " + std::to_string(at.page + 1) + " of " + std::to_string(at.pages.size());
    write_line(ui, ui.fonts.text, row.cut_right(widgets::text_width(ui.fonts.text, where), 10.0F), where, ui.theme.ink, widgets::Align::Right);
    write_line(ui, ui.fonts.large, row, title_of(state.step), ui.theme.ink);
    ui.mirror.push_back({"title", "heading", std::string(title_of(state.step)), where, row});
}

/// Where "next" leads: the next page, else the next step; nowhere from the end of the card.
void go_on(Ui& ui, const app::State& state, const Place& at) {
    if (at.page + 1 < at.pages.size()) ui.wish(app::GoTo{state.step, at.pages[at.page + 1].first});
    else if (state.step != Step::Card) ui.wish(app::GoTo{step_after(state.step, 1), 0});
}

void draw_ways(Ui& ui, Box row, const app::State& state, const Place& at) {
    const float wide = (row.w - 3.0F * 10.0F) / 4.0F;
    const bool first = state.step == Step::Edge && at.page == 0;
    if (widgets::button(ui, row.cut_left(wide, 10.0F), {"back", "Back", ButtonLook::Plain, !first})) {
        if (at.page > 0) ui.wish(app::GoTo{state.step, at.pages[at.page - 1].first});
        else ui.wish(app::GoTo{step_after(state.step, -1), SIZE_MAX});
    }
    if (widgets::button(ui, row.cut_left(wide, 10.0F), {"menu", "Steps"})) ui.wish(app::ToggleMenu{});
    if (widgets::button(ui, row.cut_left(wide, 10.0F), {"undo", "Undo", ButtonLook::Plain, !state.history.past.empty()})) ui.wish(app::Undo{});
    const bool last = state.step == Step::Card && at.page + 1 == at.pages.size();
    if (widgets::button(ui, row, {"next", "Next", last ? ButtonLook::Plain : ButtonLook::Action, !last})) go_on(ui, state, at);
}

/// One key that says "the starting values on this page are right" and goes on.
void draw_confirm(Ui& ui, const Box& row, const app::State& state, const Place& at, std::vector<std::string> paths) {
    const std::string label = paths.size() == 1 ? "The value with ? is right" : "The " + std::to_string(paths.size()) + " values with ? are right";
    if (!widgets::button(ui, row, {"confirm", label})) return;
    ui.wish(app::ConfirmShown{std::move(paths)});
    go_on(ui, state, at);
}

Place place_of(const Ui& ui, const app::State& state, const Box& body, bool with_confirm) {
    const float height = with_confirm ? body.h - widgets::k_target_px - widgets::k_gap_px : body.h;
    Place at{items_of(ui, state, state.step, body.w), {}, 0};
    at.pages = paginate(at.items, height, widgets::k_gap_px);
    at.page = page_of(at.pages, state.wanted_path.empty() ? state.item : item_with_path(at.items, state.wanted_path));
    return at;
}

}  // namespace

void draw_walk(Ui& ui, const app::State& state, Box box) {
    const Box ways = box.cut_bottom(widgets::k_target_px, 12.0F);
    const Box title = box.cut_top(k_title_px, 8.0F);
    // the page must not change under the finger when its last value is entered: room for the key as long as the step has a gap
    const bool with_confirm = std::any_of(state.plan.not_measured.begin(), state.plan.not_measured.end(),
                                          [&](const std::string& path) { return step_of(path) == state.step; });
    const Place at = place_of(ui, state, box, with_confirm);
    if (auto paths = unentered(at.items, at.pages[at.page], state.plan); !paths.empty())
        draw_confirm(ui, box.cut_bottom(widgets::k_target_px, widgets::k_gap_px), state, at, std::move(paths));
    for (std::size_t i = at.pages[at.page].first; i < at.pages[at.page].last; ++i)
        at.items[i].draw(ui, box.cut_top(at.items[i].height_px, widgets::k_gap_px));
    draw_title(ui, title, state, at);
    draw_ways(ui, ways, state, at);
}

}  // namespace guywright::screens
