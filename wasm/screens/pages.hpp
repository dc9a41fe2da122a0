#pragma once
#include <cstddef>
#include <vector>

#include "wasm/screens/items.hpp"

namespace guywright::screens {

/// Items [first, last) of a step that stand on one page.
struct Page {
    std::size_t first = 0, last = 0;
};

/// Fills pages from the top; an item that does not fit starts the next one, and a heading goes with what stands under it. At least one page, at least one item on it.
[[nodiscard]] std::vector<Page> paginate(const std::vector<Item>& items, float height_px, float gap_px);

/// Index of the page on which an item stands; the last one where there is no such item any more.
[[nodiscard]] std::size_t page_of(const std::vector<Page>& pages, std::size_t item);

}  // namespace guywright::screens
