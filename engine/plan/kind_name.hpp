#pragma once
#include "engine/plan/plan.hpp"

#include <array>
#include <string_view>

namespace guywright {

struct KindName {
    FrameKind kind;
    std::string_view name;  ///< in the plan file
};
inline constexpr std::array<KindName, 3> k_kind_names{{
    {FrameKind::Monopod, "monopod"},
    {FrameKind::AFrame, "a_frame"},
    {FrameKind::Tripod, "tripod"},
}};

[[nodiscard]] constexpr std::string_view name_of(FrameKind kind) {
    for (const KindName& k : k_kind_names)
        if (k.kind == kind) return k.name;
    return "";
}

/// "A-frame", "a_frame" and "AFrame" are the same word: case, hyphens, underscores and spaces do not count.
[[nodiscard]] constexpr bool names_kind(std::string_view text, std::string_view name) {
    constexpr auto counts = [](char c) { return c != '-' && c != '_' && c != ' '; };
    constexpr auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    std::size_t at = 0;
    for (const char c : text) {
        if (!counts(c)) continue;
        while (at < name.size() && !counts(name[at])) ++at;
        if (at == name.size() || lower(c) != name[at]) return false;
        ++at;
    }
    return at == name.size();
}

}  // namespace guywright
