#include "wasm/screens/pages.hpp"

namespace guywright::screens {

std::vector<Page> paginate(const std::vector<Item>& items, float height_px, float gap_px) {
    std::vector<Page> pages{{}};
    float used_px = 0.0F;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const bool empty = pages.back().first == i;
        const bool other_group = i > 0 && items[i].group != items[i - 1].group;
        if (!empty && (other_group || used_px + items[i].height_px > height_px)) {
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
