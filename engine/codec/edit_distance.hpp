#pragma once
#include <algorithm>
#include <cstddef>
#include <numeric>
#include <string_view>
#include <vector>

namespace guywright {

/// Letters to add, drop or change to turn one word into the other.
[[nodiscard]] inline std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t change = diagonal + (a[i] == b[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
        }
    }
    return row[b.size()];
}

/// The known word that was probably meant; empty when none is near.
[[nodiscard]] inline std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known) {
    constexpr std::size_t longest_looked_at = 60;
    if (word.size() > longest_looked_at) return {};
    std::string_view nearest;
    std::size_t best = std::max<std::size_t>(2, word.size() / 3) + 1;
    for (const std::string_view candidate : known) {
        const std::size_t distance = edit_distance(word, candidate);
        if (distance >= best) continue;
        best = distance;
        nearest = candidate;
    }
    return nearest;
}

}  // namespace guywright
