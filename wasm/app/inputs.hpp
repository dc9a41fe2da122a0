#pragma once
#include <string>
#include <string_view>

#include "engine/plan/ranges.hpp"
#include "wasm/scene/view.hpp"

namespace guywright::app {

/// How one number of the plan is shown and slid. `#` in the pattern stands for an index.
struct Input {
    std::string_view pattern;
    std::string_view label;
    std::string_view how;          ///< one sentence: what to measure and how
    std::string_view unit;         ///< as shown
    double from, to;               ///< ends of the slider, as shown; the keypad reaches the whole allowed range
    double step;                   ///< one nudge, as shown
    int decimals;
    double sign;                   ///< shown = sign * plan value
    scene::Highlight::Part part;   ///< what it moves in the scene
};

/// The entry for a path of the plan ("guys[1].bearing_deg"); null where there is no slider for it.
[[nodiscard]] const Input* find_input(std::string_view path);

/// First index in a path: 1 in "guys[1].bearing_deg"; 0 without one.
[[nodiscard]] std::size_t index_in(std::string_view path);

/// What of the scene the number at a path moves, or what is judged by it; nothing for a path without a slider.
[[nodiscard]] scene::Highlight highlight_of(std::string_view path);

/// Path for an index: path_at("guys[#].parts", 2).
[[nodiscard]] std::string path_at(std::string_view pattern, std::size_t index, std::size_t second = 0);

/// "12.5", with the input's decimals.
[[nodiscard]] std::string shown_number(const Input& input, double plan_value);
/// "12.5 m", "70°", "0.3".
[[nodiscard]] std::string with_unit(const Input& input, std::string number);
/// A value of the plan with its unit.
[[nodiscard]] std::string shown_value(const Input& input, double plan_value);

/// "allowed 2 to 88°", in the unit and with the sign shown.
[[nodiscard]] std::string allowed_text(const Input& input, const Range& range);

}  // namespace guywright::app
