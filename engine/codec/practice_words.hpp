#pragma once
#include "engine/practice/explain.hpp"

#include <array>
#include <string_view>

namespace guywright {

/// One sentence of the explanation of a drawn site. Marks: {name} of rope or guy, {leg} "Leg 2" or "The leg", {force} {other} {angle}
/// quantities with their unit.
struct SiteLine {
    SiteText id;
    std::string_view text;
};
/// Why a rule is one, and what mends it, in general terms.
struct RuleReason {
    CheckId id;
    std::string_view why, mend;
};

struct PracticeWords {
    std::array<SiteLine, k_site_text_count> lines;  ///< of Rule, Why and Mend what stands before them
    std::array<RuleReason, k_check_count> reasons;
    std::string_view the_leg, leg_of_several;  ///< {n}

    [[nodiscard]] constexpr std::string_view of(SiteText id) const { return lines[static_cast<std::size_t>(id)].text; }
    [[nodiscard]] constexpr const RuleReason& of(CheckId id) const { return reasons[static_cast<std::size_t>(id)]; }
    [[nodiscard]] constexpr bool in_order() const {
        for (std::size_t i = 0; i < lines.size(); ++i)
            if (lines[i].id != static_cast<SiteText>(i) || lines[i].text.empty()) return false;
        for (std::size_t i = 0; i < reasons.size(); ++i)
            if (reasons[i].id != static_cast<CheckId>(i) || reasons[i].why.empty() || reasons[i].mend.empty()) return false;
        return !the_leg.empty() && !leg_of_several.empty();
    }
};

}  // namespace guywright
