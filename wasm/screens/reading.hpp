#pragma once
#include <string>

#include "wasm/app/state.hpp"

namespace guywright::screens {

/// What the screen of a reading says, drawn or read out.
struct ReadingWords {
    std::string title, how, value, state, effect, take, cancel;
    bool can_take = false;
};

/// There must be a reading in hand.
[[nodiscard]] ReadingWords reading_words(const app::State& state);

}  // namespace guywright::screens
