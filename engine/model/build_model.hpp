#pragma once
#include "engine/base/tolerances.hpp"
#include "engine/base/units.hpp"
#include "engine/model/geometry.hpp"
#include "engine/plan/fault.hpp"

#include <cstdio>

namespace guywright {

struct BuiltModel {
    InputFaults faults;  ///< empty, or the model must not be used
    Model model;
};

namespace detail {

inline std::string in_m(double v) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f m", v);
    return text;
}

inline std::string path_of(std::string_view list, std::size_t i, std::string_view key) {
    return std::string(list) + "[" + std::to_string(i) + "]." + std::string(key);
}

inline HeadPlace drawn_head(const Frame& f) {
    const double lean = radians(f.lean_deg), bearing = radians(f.lean_bearing_deg);
    const auto& legs = f.legs;
    switch (f.kind) {
        case FrameKind::Monopod: return {true, head_of_leaning_leg(legs[0].foot_m, legs[0].length_m, lean, bearing)};
        case FrameKind::AFrame: return head_of_a_frame(legs[0].foot_m, legs[1].foot_m, legs[0].length_m, legs[1].length_m, lean, bearing);
        case FrameKind::Tripod: return head_of_tripod({legs[0].foot_m, legs[1].foot_m, legs[2].foot_m}, {legs[0].length_m, legs[1].length_m, legs[2].length_m});
    }
    return {};
}

inline void place_head(BuiltModel& b, const Frame& frame) {
    const HeadPlace place = drawn_head(frame);
    b.model.drawn_head_m = place.head_m;
    if (place.exists) return;
    std::string lengths;
    for (const LegPlan& leg : frame.legs) lengths += (lengths.empty() ? "" : ", ") + in_m(leg.length_m);
    b.faults.push_back({"frame.leg_length_m", lengths,
                        frame.kind == FrameKind::AFrame ? "legs that meet above the line between their feet, feet side by side, and a lean across that line"
                                                        : "legs that meet above their feet, and feet that do not stand in one line"});
}

/// Ties lie along the ground, on bearings seen from above.
inline TieWays ways_of(const std::vector<FootTie>& ties, double slope_rad) {
    TieWays ways;
    for (const FootTie& t : ties) {
        const Vec3 from_above = along_bearing(radians(t.bearing_deg));
        ways.push_back(slope_rad > 0.0 ? glm::normalize(Vec3{from_above.x, std::cos(slope_rad) * from_above.y, 0.0}) : from_above);
    }
    return ways;
}

inline void add_legs(BuiltModel& b, const Plan& plan) {
    Model& m = b.model;
    m.shortest_leg_m = HUGE_VAL;
    for (std::size_t i = 0; i < plan.frame.legs.size(); ++i) {
        const LegPlan& leg = plan.frame.legs[i];
        const double weight_N = leg.mass_kg * k_gravity;
        const double slope_rad = ground_slope_rad(leg.foot_m, plan.edge);
        m.legs.push_back(
            {leg.foot_m, leg.length_m, newtons(leg.EA_kN) / leg.length_m, weight_N, leg.held_down, ways_of(plan.feet[i].ties, slope_rad), slope_rad});
        m.head_weight_N += weight_N / 2.0;
        m.shortest_leg_m = std::min(m.shortest_leg_m, leg.length_m);
    }
}

/// False, with the fault said, where the guy has no usable anchor.
inline bool place_anchor(BuiltModel& b, const GuyPlan& g, std::size_t i, Vec3& anchor_m) {
    const Vec3 head_m = b.model.drawn_head_m;
    if (g.anchor_m) {
        anchor_m = *g.anchor_m;
    } else if (g.anchor_height_m < head_m.z - k_same_point_m) {
        anchor_m = anchor_from_head(head_m, radians(g.bearing_deg), radians(g.inclination_deg), g.anchor_height_m);
    } else {
        b.faults.push_back({path_of("guys", i, "anchor_height_m"), in_m(g.anchor_height_m),
                            "below the head, which is at " + in_m(head_m.z) + "; for a higher anchor enter its position as anchor_m"});
        return false;
    }
    if (glm::length(anchor_m - head_m) > k_same_point_m) return true;
    b.faults.push_back({path_of("guys", i, "anchor_m"), "at the head", "away from the head, so that the guy has a length"});
    return false;
}

/// Guys whose anchors lie together hang on one; what they share bears the number of the first of them.
inline void share_anchors(Model& m) {
    for (std::size_t i = 1; i < m.guys.size(); ++i)
        for (std::size_t first = 0; first < i && m.guys[i].shared_anchor < 0; ++first)
            if (glm::length(m.guys[i].anchor_m - m.guys[first].anchor_m) <= k_same_anchor_m) {
                if (m.guys[first].shared_anchor < 0) m.guys[first].shared_anchor = static_cast<int>(first);
                m.guys[i].shared_anchor = m.guys[first].shared_anchor;
            }
}

inline void add_guys(BuiltModel& b, const std::vector<GuyPlan>& guys) {
    for (std::size_t i = 0; i < guys.size(); ++i) {
        const GuyPlan& g = guys[i];
        Vec3 anchor_m;
        if (!place_anchor(b, g, i, anchor_m)) continue;
        const double EA_N = newtons(g.EA_kN) * g.parts;
        const double rest_m = glm::length(anchor_m - b.model.drawn_head_m) / (1.0 + newtons(g.pretension_kN) / EA_N);
        b.model.guys.push_back({anchor_m, rest_m, EA_N / rest_m});
    }
    share_anchors(b.model);
}

/// Where a rope crosses the edge with the head at `head_m`: as measured, or where it lies by itself.
inline double edge_y_m(const RopePlan& r, Vec3 head_m) {
    return r.edge_y_m.value_or(head_m.y - std::hypot(head_m.x, head_m.z) * std::tan(radians(r.swing_deg)));
}

inline void add_ropes(BuiltModel& b, const std::vector<RopePlan>& ropes) {
    const Vec3 head_m = b.model.drawn_head_m;
    for (std::size_t i = 0; i < ropes.size(); ++i) {
        const RopePlan& r = ropes[i];
        Rope rope{.weight_N = r.load_kg * r.share * k_gravity,
                  .swing_rad = radians(r.swing_deg),
                  .outward_rad = radians(r.outward_deg),
                  .edge_y_m = edge_y_m(r, head_m),
                  .has_haul = r.haul.has_value(),
                  .haul_m = {},
                  .pulley_efficiency = r.pulley_efficiency};
        if (r.haul) {
            const Vec3 at = plumb_point(head_m) + r.haul->distance_m * along_bearing(radians(r.haul->bearing_deg));
            rope.haul_m = {at.x, at.y, r.haul->height_m};
            if (glm::length(rope.haul_m - head_m) < k_same_point_m)
                b.faults.push_back({path_of("ropes", i, "haul.height_m"), in_m(r.haul->height_m), "not at the head itself"});
        }
        b.model.ropes.push_back(rope);
    }
}

}  // namespace detail

/// The model seen anew with its head drawn at `head_m`; nothing on the ground moves, no guy is taken in or paid out.
inline void draw_head_at(Model& m, const Plan& plan, Vec3 head_m) {
    m.drawn_head_m = head_m;
    for (std::size_t i = 0; i < m.ropes.size(); ++i) m.ropes[i].edge_y_m = detail::edge_y_m(plan.ropes[i], head_m);
}

/// Turns a plan without range faults (find_faults) into what the solver sees. The one place, with the rope path, that
/// knows angles. Faults: a structure not computed, an anchor above the head where an inclination is given, a zero length.
inline BuiltModel build_model(const Plan& plan) {
    BuiltModel b;
    detail::place_head(b, plan.frame);
    if (!b.faults.empty()) return b;
    b.model.face_rad = std::min(radians(plan.edge.face_deg), k_pi / 2.0);
    b.model.edge_friction = plan.edge.rope_friction;
    detail::add_legs(b, plan);
    detail::add_guys(b, plan.guys);
    detail::add_ropes(b, plan.ropes);
    return b;
}

}  // namespace guywright
