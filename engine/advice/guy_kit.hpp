#pragma once
#include "engine/model/build_model.hpp"
#include "engine/plan/plan.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

namespace guywright {

/// Angle between two bearings, degrees, 0 to 180.
inline double between_bearings_deg(double a_deg, double b_deg) {
    const double turn_deg = std::fmod(std::abs(a_deg - b_deg), 360.0);
    return std::min(turn_deg, 360.0 - turn_deg);
}

/// The bearing in 0 to 360 degrees.
inline double wrapped_deg(double bearing_deg) {
    const double turn_deg = std::fmod(bearing_deg, 360.0);
    return turn_deg < 0.0 ? turn_deg + 360.0 : turn_deg;
}

/// Head of the plan as drawn; none where its legs do not meet. The plan must have no range faults.
inline std::optional<Vec3> drawn_head_of(const Plan& plan) {
    const HeadPlace place = detail::drawn_head(plan.frame);
    return place.exists ? std::optional(place.head_m) : std::nullopt;
}

/// Where the anchor of a guy is, site frame, metres.
inline Vec3 anchor_of(const GuyPlan& g, Vec3 head_m) {
    if (g.anchor_m) return *g.anchor_m;
    return anchor_from_head(head_m, radians(g.bearing_deg), radians(g.inclination_deg), g.anchor_height_m);
}

/// What a new guy on a bearing is made of: cord, parts and pretension of the plan's guy nearest in bearing; the usual kit where
/// there is none. An anchor nobody has graded is trusted no more than the weakest in the plan.
inline GuyPlan kit_for_bearing(const Plan& plan, Vec3 head_m, double bearing_deg) {
    GuyPlan kit;
    double nearest_deg = 360.0;
    for (const GuyPlan& g : plan.guys) {
        const double away_deg = between_bearings_deg(bearing_deg_of(anchor_of(g, head_m) - head_m), bearing_deg);
        if (!(away_deg < nearest_deg)) continue;
        nearest_deg = away_deg;
        kit = g;
    }
    for (const GuyPlan& g : plan.guys) kit.anchor_strength_kN = std::min(kit.anchor_strength_kN, g.anchor_strength_kN);
    return kit;
}

/// "guy 4": a name that no guy of the plan has.
inline std::string free_guy_name(const Plan& plan) {
    for (std::size_t n = plan.guys.size() + 1;; ++n) {
        std::string name = "guy " + std::to_string(n);
        if (std::none_of(plan.guys.begin(), plan.guys.end(), [&](const GuyPlan& g) { return g.name == name; })) return name;
    }
}

}  // namespace guywright
