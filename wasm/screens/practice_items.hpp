#pragma once
#include <string>

#include "wasm/screens/builder.hpp"

namespace guywright::screens {

/// What a step of practice shows.
void add_practice_items(Builder& b, app::Step step);

[[nodiscard]] std::string practice_title(const app::State& state, app::Step step);

}  // namespace guywright::screens
