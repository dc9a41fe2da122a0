#pragma once
#include "engine/plan/ranges.hpp"
#include "engine/plan/utf8.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace guywright {

/// Longest piece of a value that a message repeats, characters.
inline constexpr std::size_t k_longest_quote = 40;

/// The fewest digits that give the same number back: 95, 2.7, 88.00000000000001.
inline std::string number_text(double v) {
    if (std::isnan(v)) return "NaN";
    if (std::isinf(v)) return v > 0 ? "Infinity" : "-Infinity";
    char text[32];
    for (int digits = 15; digits <= 17; ++digits) {
        std::snprintf(text, sizeof text, "%.*g", digits, v);
        if (std::strtod(text, nullptr) == v) break;
    }
    return text;
}

/// "2 to 88 deg"
inline std::string range_text(const Range& r) {
    std::string text = number_text(r.min) + " to " + number_text(r.max);
    if (!r.unit.empty()) text.append(" ").append(r.unit);
    return text;
}

/// "0 to 8 entries", "1 entry"
inline std::string count_text(std::size_t fewest, std::size_t most) {
    if (fewest == most) return std::to_string(most) + (most == 1 ? " entry" : " entries");
    return std::to_string(fewest) + " to " + std::to_string(most) + " entries";
}

inline std::string in_quotes(std::string_view text) { return '"' + printable(text, k_longest_quote) + '"'; }

}  // namespace guywright
