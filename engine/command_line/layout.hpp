#pragma once
#include "engine/plan/utf8.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace guywright {

/// Widest line of the card, characters.
inline constexpr std::size_t k_card_columns = 100;

[[nodiscard]] inline std::size_t characters(std::string_view text) { return look_at(text).characters; }

/// The first `width` characters.
[[nodiscard]] inline std::string cut(std::string_view text, std::size_t width) {
    std::size_t at = 0;
    for (std::size_t n = 0; n < width && at < text.size(); ++n) at += std::max<std::size_t>(decode_utf8(text, at).bytes, 1);
    return std::string(text.substr(0, at));
}
[[nodiscard]] inline std::string padded_right(std::string_view text, std::size_t width) {
    std::string out = cut(text, width);
    return out + std::string(width - characters(out), ' ');
}
[[nodiscard]] inline std::string padded_left(std::string_view text, std::size_t width) {
    const std::string out = cut(text, width);
    return std::string(width - characters(out), ' ') + out;
}

/// Breaks at spaces; the first line begins with `first`, the others with as many spaces. A word that is longer than a
/// line is broken.
[[nodiscard]] inline std::string wrapped(std::string_view text, std::string_view first) {
    const std::size_t room = k_card_columns - characters(first);
    std::string out, start(first);
    while (!text.empty()) {
        std::size_t end = cut(text, room).size();
        if (end < text.size() && text[end] != ' ') {
            const std::size_t space = text.rfind(' ', end);
            if (space != std::string_view::npos && space > 0) end = space;
        }
        out += start + std::string(text.substr(0, end)) + "\n";
        text.remove_prefix(end);
        text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
        start.assign(characters(first), ' ');
    }
    return out;
}

/// A table with a wide first column and equal narrow ones; numbers stand to the right. A row of one cell runs on freely.
struct TextTable {
    std::vector<std::vector<std::string>> rows;  ///< the first has as many cells as the widest

    [[nodiscard]] std::string text() const {
        std::string out;
        for (const auto& row : rows) {
            std::string line(2, ' ');
            line += row.size() == 1 ? row[0] : padded_right(row[0], k_first_width);
            for (std::size_t i = 1; i < row.size(); ++i) line.append(" ").append(padded_left(row[i], width()));
            line.erase(line.find_last_not_of(' ') + 1);
            out += line + "\n";
        }
        return out;
    }

private:
    static constexpr std::size_t k_first_width = 24, k_most_width = 8;

    [[nodiscard]] std::size_t width() const {
        const std::size_t columns = std::max<std::size_t>(rows.front().size(), 2) - 1;
        return std::min(k_most_width, (k_card_columns - 2 - k_first_width) / columns - 1);
    }
};

}  // namespace guywright
