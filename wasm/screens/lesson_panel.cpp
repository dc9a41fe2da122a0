#include <algorithm>
#include <utility>

#include "wasm/screens/lesson_items.hpp"
#include "wasm/screens/pages.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr float k_title_px = 34.0F;
constexpr float k_after_title_px = 6.0F;
constexpr float k_gap_px = 10.0F;

/// The lesson cut into what is always in view, what it says and what may need several pages.
struct Panel {
    StepItems step;
    std::vector<Item> pinned, items;  ///< pinned: what is read and, where there is room, what the lesson says

    /// With less room than that what the lesson says has a page of its own.
    void make_room(float room_px) {
        float largest_px = 0.0F;
        for (const Item& item : items) largest_px = std::max(largest_px, item.height_px);
        if (pinned.size() < 2 || height(pinned) + largest_px <= room_px) return;
        items.insert(items.begin(), std::move(pinned.back()));
        pinned.pop_back();
    }
    static float height(const std::vector<Item>& items) {
        float sum = 0.0F;
        for (const Item& item : items) sum += item.height_px + k_gap_px;
        return sum;
    }
};

Panel panel_of(const Ui& ui, const app::State& s, float width) {
    Panel p;
    p.step = items_of(ui, s, app::Step::Lesson, width);
    for (Item& item : p.step.items) {
        const bool stays = item.id == "readout" || item.id == "sentence";
        (stays ? p.pinned : p.items).push_back(std::move(item));
    }
    return p;
}

/// Where there are several pages the last key leads through them, and from the last one to the next lesson.
std::vector<Key> ways_of(const app::State& s, const std::vector<Page>& pages, std::size_t page) {
    std::vector<Key> keys = lesson_ways(s);
    keys.insert(keys.begin() + 1, {"menu", said(s, words::practice::k_menu), app::ToggleMenu{}});
    if (page > 0) keys[0] = {"back", said(s, words::k_back), app::GoTo{app::Step::Lesson, pages[page - 1].first}};
    if (page + 1 < pages.size()) keys.back() = {"next", said(s, words::k_next), app::GoTo{app::Step::Lesson, pages[page + 1].first}, ButtonLook::Action};
    return keys;
}

}  // namespace

float lesson_height(const Ui& ui, const app::State& s, float width, float most_px) {
    const Panel p = panel_of(ui, s, width);
    const float fixed_px = k_title_px + k_after_title_px + Panel::height(p.pinned) + widgets::k_target_px, all_px = fixed_px + Panel::height(p.items);
    if (all_px <= most_px) return all_px;
    float largest_px = 0.0F;
    for (const Item& item : p.items) largest_px = std::max(largest_px, item.height_px + k_gap_px);
    return fixed_px + largest_px;
}

void draw_lesson(Ui& ui, const app::State& s, Box box) {
    Panel p = panel_of(ui, s, box.w);
    if (p.step.groups.empty()) return;
    const Box ways = box.cut_bottom(widgets::k_target_px, k_gap_px), title = box.cut_top(k_title_px, k_after_title_px);
    p.make_room(box.h);
    for (const Item& item : p.pinned) item.draw(ui, box.cut_top(item.height_px, k_gap_px));
    constexpr float k_rounding_px = 0.5F;
    const std::vector<Page> pages = paginate(p.items, box.h + k_rounding_px, k_gap_px);
    const std::size_t page = page_of(pages, s.item);
    for (std::size_t i = pages[page].last; i-- > pages[page].first;) {
        const bool at_top = i == pages[page].first && p.pinned.size() < 2;
        const float height = p.items[i].height_px;
        p.items[i].draw(ui, at_top ? box.cut_top(height) : box.cut_bottom(height, k_gap_px));
    }
    draw_page_title(ui, title, p.step.groups.front().title, page_told(s, page, pages.size()));
    draw_row(ui, ways, ways_of(s, pages, page));
}

}  // namespace guywright::screens
