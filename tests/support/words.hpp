#pragma once
#include <set>
#include <string>
#include <string_view>

namespace support {

inline bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

/// The marks of a sentence: "{name}", "{value}".
inline std::set<std::string> marks(std::string_view words) {
    std::set<std::string> out;
    for (std::size_t from = words.find('{'); from != std::string_view::npos; from = words.find('{', from + 1))
        out.emplace(words.substr(from, words.find('}', from) - from + 1));
    return out;
}

}  // namespace support
