#pragma once
#include "engine/plan/describe.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace guywright {

enum class PartUse : unsigned char { Cord, Rope, Pulley, Connector, Anchor };
inline constexpr std::size_t k_part_use_count = 5;

/// A part by its published least strength. It fills in a number that stays the user's own to change: the maker's sheet counts.
struct PublishedPart {
    std::string_view name;
    PartUse use;
    double strength_kN;         ///< breaking load, without knots; of an anchor what it gives way at
    std::string_view standard;  ///< as short as it is known
    std::string_view source;    ///< where the number was found
};

namespace detail {

inline constexpr std::string_view k_en_564 = "EN 564, d\u00B2/5 kN (encyclopaedia citing Schubert 2008; formula and 4 mm READ, others computed)";
inline constexpr std::string_view k_en_1891 = "EN 1891 (MEMORY)";
inline constexpr std::string_view k_nfpa_1983 = "NFPA 1983 (MEMORY)";
inline constexpr std::string_view k_en_12275 = "EN 12275:2013, closed gate (summary of a test laboratory, READ)";
inline constexpr std::string_view k_pickets = "US Navy NAVEDTRA 14251, undisturbed loam (READ); other manuals give less";

}  // namespace detail

/// Small on purpose: standards, not makers.
inline constexpr std::array k_published_parts{
    PublishedPart{"Cord 4 mm", PartUse::Cord, 3.2, "EN 564", detail::k_en_564},
    PublishedPart{"Cord 5 mm", PartUse::Cord, 5.0, "EN 564", detail::k_en_564},
    PublishedPart{"Cord 6 mm", PartUse::Cord, 7.2, "EN 564", detail::k_en_564},
    PublishedPart{"Cord 7 mm", PartUse::Cord, 9.8, "EN 564", detail::k_en_564},
    PublishedPart{"Cord 8 mm", PartUse::Cord, 12.8, "EN 564", detail::k_en_564},
    PublishedPart{"Rope type A", PartUse::Rope, 22.0, "EN 1891", detail::k_en_1891},
    PublishedPart{"Rope type B", PartUse::Rope, 18.0, "EN 1891", detail::k_en_1891},
    PublishedPart{"Rope, technical use", PartUse::Rope, 20.0, "NFPA 1983", detail::k_nfpa_1983},
    PublishedPart{"Rope, general use", PartUse::Rope, 40.0, "NFPA 1983", detail::k_nfpa_1983},
    PublishedPart{"Pulley, technical use", PartUse::Pulley, 22.0, "NFPA 1983", detail::k_nfpa_1983},
    PublishedPart{"Pulley, general use", PartUse::Pulley, 36.0, "NFPA 1983", detail::k_nfpa_1983},
    PublishedPart{"Connector B, H, A, T", PartUse::Connector, 20.0, "EN 12275", detail::k_en_12275},
    PublishedPart{"Connector K, Q", PartUse::Connector, 25.0, "EN 12275", detail::k_en_12275},
    PublishedPart{"Connector X", PartUse::Connector, 18.0, "EN 12275", detail::k_en_12275},
    PublishedPart{"Connector, technical use", PartUse::Connector, 27.0, "NFPA 1983", detail::k_nfpa_1983},
    PublishedPart{"Connector, general use", PartUse::Connector, 40.0, "NFPA 1983", detail::k_nfpa_1983},
    PublishedPart{"Picket, single", PartUse::Anchor, 3.11, "NAVEDTRA 14251", detail::k_pickets},
    PublishedPart{"Pickets 1-1-1", PartUse::Anchor, 8.0, "NAVEDTRA 14251", detail::k_pickets},
    PublishedPart{"Pickets 3-2-1", PartUse::Anchor, 17.7, "NAVEDTRA 14251", detail::k_pickets},
};

/// A cord or rope that a team put down by itself, from its label or sheet.
struct OwnCord {
    std::string name = "cord";
    double strength_kN = 9.8;  ///< of one strand, without knots
    double EA_kN = 30.0;       ///< of one strand
    std::string source;        ///< where the numbers are from, in the team's words
    bool operator==(const OwnCord&) const = default;
};

inline constexpr std::size_t k_most_own_cords = 40;

/// What a device keeps beside its plans.
struct Catalogue {
    std::vector<OwnCord> cords;
    bool operator==(const Catalogue&) const = default;
};

template <class V, Like<OwnCord> T>
void describe(V& v, T& c) {
    v.text("name", c.name, k_longest_name);
    v.number("strength_kN", c.strength_kN, range::strength_kN);
    v.number("EA_kN", c.EA_kN, range::guy_EA_kN);
    v.optional_text("source", c.source, k_longest_name * 2);
}

template <class V, Like<Catalogue> T>
void describe(V& v, T& c) {
    v.list("cords", c.cords, 0, k_most_own_cords);
}

}  // namespace guywright
