#pragma once
#include "engine/plan/plan.hpp"
#include "wasm/app/speech.hpp"

namespace guywright::app {

/// The example to start with.
inline constexpr const char* k_first_example = "spillway-bench";

/// An empty walk: usual kit and an upright guess of the site to draw, every measurement still to be entered.
[[nodiscard]] Plan new_plan(const Speech& speech = {});

/// An example's title and names, as far as the app knows them, in the language of `speech`, whichever they are in. Nothing that is computed changes.
void name_in_language(Plan& example, const Speech& speech);

}  // namespace guywright::app
