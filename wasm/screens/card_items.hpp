#pragma once
#include <vector>

#include "wasm/screens/items.hpp"

namespace guywright::screens {

/// Everything that has a margin, the closest first, as bars.
void add_margin_items(std::vector<Item>& items, const widgets::Ui& ui, const app::State& state, float width);

/// The card: verdict, governing check, the three closest margins, what is missing, cautions, forces, check code, what it is not.
void add_card_items(std::vector<Item>& items, const widgets::Ui& ui, const app::State& state, float width);

}  // namespace guywright::screens
