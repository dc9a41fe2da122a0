#pragma once
#include "wasm/screens/builder.hpp"

namespace guywright::screens {

/// Everything that has a margin, the closest first, as bars.
void add_margin_items(Builder& b);

/// The card: verdict, governing check, the three closest margins, what is missing, cautions, forces, check code, what it is not.
void add_card_items(Builder& b);

}  // namespace guywright::screens
