#include "wasm/screens/pages.hpp"

namespace guywright::screens {

namespace {

/// Height of item `from` and of what belongs to it: everything up to the next heading.
float group_height(const std::vector<Item>& items, std::size_t from, float gap_px) {
    float height_px = items[from].height_px;
    for (std::size_t i = from + 1; i < items.size() && !items[i].starts_group; ++i) height_px += gap_px + items[i].height_px;
    return height_px;
}

}  // namespace

std::vector<Page> paginate(const std::vector<Item>& items, float height_px, float gap_px) {
    std::vector<Page> pages{{}};
    float used_px = 0.0F;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const bool empty = pages.back().first == i;
        const float needed_px = items[i].starts_group ? group_height(items, i, gap_px) : items[i].height_px;
        if (!empty && used_px + needed_px > height_px) {
            pages.push_back({i, i});
            used_px = 0.0F;
        }
        used_px += items[i].height_px + gap_px;
        pages.back().last = i + 1;
    }
    return pages;
}

std::size_t page_of(const std::vector<Page>& pages, std::size_t item) {
    for (std::size_t p = 0; p < pages.size(); ++p)
        if (item < pages[p].last) return p;
    return pages.size() - 1;
}

}  // namespace guywright::screens
