#pragma once
#include <array>
#include <string_view>

namespace guywright {

/// What people read and type. Plans and reports are always kept in metric units.
enum class UnitSystem : unsigned char { Metric, Imperial };

/// How a quantity kept in a unit of the plan is shown: shown = kept * per_kept.
struct ShownUnit {
    std::string_view name;
    double per_kept = 1.0;
    int decimals = 2;  ///< that a person on site can use
};

// Exact (NIST SP 811, appendix B.8; MEMORY, arithmetic verified).
inline constexpr double k_m_per_foot = 0.3048;
inline constexpr double k_mm_per_inch = 25.4;
inline constexpr double k_kg_per_pound = 0.45359237;
inline constexpr double k_kN_per_pound_force = 0.0044482216152605;

namespace detail {

struct UnitPair {
    std::string_view kept;
    ShownUnit metric, imperial;
};

inline constexpr std::array k_unit_pairs{
    UnitPair{"m", {"m", 1.0, 2}, {"ft", 1.0 / k_m_per_foot, 2}},
    UnitPair{"mm", {"mm", 1.0, 0}, {"in", 1.0 / k_mm_per_inch, 2}},
    UnitPair{"kg", {"kg", 1.0, 0}, {"lb", 1.0 / k_kg_per_pound, 0}},
    UnitPair{"kN", {"kN", 1.0, 2}, {"lbf", 1.0 / k_kN_per_pound_force, 0}},
    UnitPair{"N", {"N", 1.0, 0}, {"lbf", 0.001 / k_kN_per_pound_force, 0}},
    UnitPair{"kN/m", {"kN/m", 1.0, 1}, {"lbf/ft", k_m_per_foot / k_kN_per_pound_force, 0}},
    UnitPair{"deg", {"deg", 1.0, 0}, {"deg", 1.0, 0}},
    UnitPair{"%", {"%", 1.0, 1}, {"%", 1.0, 1}},
};

}  // namespace detail

/// A unit the plan is kept in, as shown. One that has no other is shown as it is.
constexpr ShownUnit shown_unit(std::string_view kept, UnitSystem system) {
    for (const detail::UnitPair& pair : detail::k_unit_pairs)
        if (pair.kept == kept) return system == UnitSystem::Imperial ? pair.imperial : pair.metric;
    return {kept, 1.0, 2};
}

/// The unit in which a plan keeps the number at `path`: "m" for "guys[1].anchor_m[0]"; nothing for a plain number.
constexpr std::string_view unit_of_path(std::string_view path) {
    const std::size_t dot = path.rfind('.');
    std::string_view key = dot == std::string_view::npos ? path : path.substr(dot + 1);
    key = key.substr(0, key.find('['));
    const std::size_t under = key.rfind('_');
    if (under == std::string_view::npos) return {};
    const std::string_view last = key.substr(under + 1);
    if (last == "percent") return "%";
    for (const std::string_view unit : {"m", "mm", "kg", "kN", "deg", "GPa"})
        if (last == unit) return unit;
    return {};
}

}  // namespace guywright
