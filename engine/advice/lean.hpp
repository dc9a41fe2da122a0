#pragma once
#include "engine/model/build_model.hpp"
#include "engine/plan/ranges.hpp"

namespace guywright {

/// How a leg, or the plane of two legs, leans: as in a plan.
struct Lean {
    double deg = 0.0, bearing_deg = 0.0;
};

namespace detail {

/// Measures an anchor that stays where it is from a head that has moved: by bearing and inclination as before, or, where a plan
/// cannot hold those, as a point.
inline void measure_again(GuyPlan& g, Vec3 anchor_m, Vec3 head_m) {
    if (g.anchor_m) return;
    const Vec3 offset_m = anchor_m - head_m;
    const double inclination_deg = degrees(std::atan2(-offset_m.z, std::hypot(offset_m.x, offset_m.y)));
    if (!range::inclination_deg.holds(inclination_deg)) {
        g.anchor_m = anchor_m;
        return;
    }
    g.inclination_deg = inclination_deg;
    g.bearing_deg = bearing_deg_of(offset_m);
}

inline void measure_again(Haul& h, Vec3 haul_m, Vec3 head_m) {
    const Vec3 offset_m = haul_m - plumb_point(head_m);
    h.distance_m = std::hypot(offset_m.x, offset_m.y);
    if (h.distance_m > 0.0) h.bearing_deg = bearing_deg_of(offset_m);
}

}  // namespace detail

/// The plan as it reads once the frame leans so: feet, anchors and haul points stay where `drawn`, the plan's model, has them, and
/// every guy keeps its pretension, so it is shorter or longer than before. False: the frame cannot lean so.
inline bool lean_to(Plan& plan, const Model& drawn, Lean lean) {
    plan.frame.lean_deg = lean.deg;
    plan.frame.lean_bearing_deg = lean.bearing_deg;
    const HeadPlace place = detail::drawn_head(plan.frame);
    if (!place.exists) return false;
    for (std::size_t i = 0; i < plan.guys.size(); ++i) detail::measure_again(plan.guys[i], drawn.guys[i].anchor_m, place.head_m);
    for (std::size_t i = 0; i < plan.ropes.size(); ++i)
        if (plan.ropes[i].haul) detail::measure_again(*plan.ropes[i].haul, drawn.ropes[i].haul_m, place.head_m);
    return true;
}

}  // namespace guywright
