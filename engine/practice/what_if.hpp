#pragma once
#include "engine/plan/numbers.hpp"
#include "engine/practice/site.hpp"

#include <string>
#include <vector>

namespace guywright {

inline constexpr std::size_t k_most_what_ifs = 4;

namespace detail {

inline std::string indexed(std::string_view list, std::size_t i, std::string_view key) {
    return std::string(list) + "[" + std::to_string(i) + "]" + std::string(key);
}

/// What the rule that decides looks at first; empty where no one number does.
inline std::string number_behind(const Check& c) {
    switch (c.id) {
        case CheckId::GuyAngle: return indexed("guys", c.subject, ".inclination_deg");
        case CheckId::BearingGap: return indexed("guys", 0, ".bearing_deg");
        case CheckId::AnchorHangs: return indexed("guys", c.subject, ".bearing_deg");
        case CheckId::FrontTie: return "frame.foot_m[0][0]";
        case CheckId::GuyStrength: return indexed("guys", c.subject, ".parts");
        case CheckId::AnchorStrength: return indexed("guys", c.subject, ".anchor_strength_kN");
        case CheckId::LegStrength: return indexed("frame.leg_rating_kN", c.subject, "");
        case CheckId::LegBuckling: return indexed("frame.pole_diameter_mm", c.subject, "");
        case CheckId::RopeStrength: return indexed("ropes", c.subject, ".strength_kN");
        case CheckId::PulleyStrength: return indexed("ropes", c.subject, ".pulley_strength_kN");
        case CheckId::ConnectorStrength: return indexed("ropes", c.subject, ".connector_strength_kN");
        case CheckId::FootFriction:
        case CheckId::FootTies: return indexed("feet", c.subject, ".friction");
        case CheckId::FootPin: return indexed("feet", c.subject, ".pin_shear_kN");
        case CheckId::HobbleStrength: return indexed("frame.hobbles", c.subject, ".strength_kN");
        default: return {};
    }
}

}  // namespace detail

/// Paths of the three or four numbers that are worth trying on a site: what the deciding rule looks at, lean, haul and load, and the guy
/// that works hardest.
[[nodiscard]] inline std::vector<std::string> what_if_paths(const Plan& plan, const SiteAnswer& answer) {
    std::vector<std::string> out;
    const auto add = [&](const std::string& path) {
        const bool there = !path.empty() && number_at(plan, path) && std::find(out.begin(), out.end(), path) == out.end();
        if (there && out.size() < k_most_what_ifs) out.push_back(path);
    };
    add(detail::number_behind(answer.governs));
    if (plan.frame.kind != FrameKind::Tripod) add("frame.lean_deg");
    add(detail::indexed("guys", answer.hardest_guy, ".inclination_deg"));
    add("ropes[0].haul.bearing_deg");
    add(detail::indexed("guys", answer.hardest_guy, ".pretension_kN"));
    add("ropes[0].load_kg");
    return out;
}

}  // namespace guywright
