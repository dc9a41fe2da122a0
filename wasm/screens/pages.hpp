#pragma once
#include <cstddef>
#include <vector>

#include "wasm/screens/items.hpp"

namespace guywright::screens {

/// Items [first, last) of a step that stand on one page. All of one group.
struct Page {
    std::size_t first = 0, last = 0;
};

/// Fills pages from the top; a new group, or an item that does not fit, starts the next one. At least one page.
[[nodiscard]] std::vector<Page> paginate(const std::vector<Item>& items, float height_px, float gap_px);

/// Index of the page on which an item stands; the last one where there is no such item any more.
[[nodiscard]] std::size_t page_of(const std::vector<Page>& pages, std::size_t item);

}  // namespace guywright::screens
