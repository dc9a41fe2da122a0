#pragma once
#include "wasm/screens/builder.hpp"

namespace guywright::screens {

[[nodiscard]] std::string_view advice_title(const app::Speech& speech, app::Step step);

/// The key that leads to all advice.
[[nodiscard]] Key way_to_advice(const app::State& state);

/// On the card: what would make it go, where it is NO-GO, and the way to all advice.
void add_ways_to_advice(Builder& b);

/// What a step of advice shows.
void add_advice_items(Builder& b, app::Step step);

/// The answers about the plan as it stands; null where there are none yet.
[[nodiscard]] const app::Advisor* answers(const app::State& state);

/// The guy that is taken in.
[[nodiscard]] std::size_t guy_shown(const app::State& state);

/// The best threes and fours so far, in the order of the list.
[[nodiscard]] std::vector<const AnchorSet*> anchor_sets(const app::State& state);

/// What governs in one direction of pull, as a sentence.
[[nodiscard]] std::string direction_words(const app::State& state, const DirectionMap& map, const Heading& way);

}  // namespace guywright::screens
