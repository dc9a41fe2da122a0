#pragma once
#include <string_view>

#include "engine/verdict/evaluate.hpp"
#include "wasm/scene/head_movement.hpp"
#include "wasm/scene/rock.hpp"

namespace guywright::scene {

// What there is to draw, in metres and newtons, taken from the plan and from the answer where there is one.

struct GuyLine {
    bool placed = false;  ///< false: its inputs give no anchor
    Vec3 anchor_m{0.0};
    std::string_view name;
    bool hangs = false;  ///< the anchor has nothing under it
    bool has_tension = false;
    bool slack = false;
    double tension_N = 0.0;
};

struct RopeLine {
    std::size_t index = 0;   ///< in the plan
    bool over_edge = false;  ///< touches the edge at edge_m
    Vec3 edge_m{0.0};
    Vec3 load_m{0.0};          ///< where the load hangs in the picture; the true rope may be longer
    Vec3 load_pull{0, 0, -1};  ///< unit
    bool same_load = false;    ///< hangs on the load of an earlier rope
    double load_kg = 0.0;
    bool has_haul = false;
    Vec3 haul_m{0.0};
    bool pulls = false;                           ///< has tensions, in the case shown
    double load_side_N = 0.0, haul_side_N = 0.0;  ///< at the head
};

struct Rig {
    bool has_head = false;
    Vec3 head_m{0.0};             ///< where it is drawn: moved_head_m, or as measured
    Vec3 moved_head_m{0.0};       ///< where it came to rest in the case shown, the movement enlarged; else as measured
    std::vector<Vec3> reached_m;  ///< moved heads of all cases, so that one picture holds them all
    Vec3 drawn_head_m{0.0};
    std::vector<Vec3> feet_m;
    std::vector<GuyLine> guys;    ///< one for each of the plan, if there is a head
    std::vector<RopeLine> ropes;  ///< those that can be drawn
    bool has_forces = false;
    Vec3 resultant_N{0.0};
    double largest_resultant_N = 0.0;  ///< of all cases, so that one scale serves them all
    double applied_force_angle_rad = 0.0;
    double slope_m = 2.6;  ///< how far down the face the picture goes
};

/// False for NaN, and for a distance that only a slip of the finger can have entered.
inline bool can_be_drawn(Vec3 at_m) { return glm::length(at_m) < 1000.0; }

/// The case to be shown, or null where it has no forces to show.
inline const Outcome* solved_outcome(const Evaluation& e, std::size_t shown) {
    if (shown >= e.outcomes.size() || e.outcomes[shown].equilibrium.status != SolveStatus::Solved) return nullptr;
    return &e.outcomes[shown];
}

namespace detail {

inline bool legs_can_be_drawn(const Plan& plan) {
    return std::all_of(plan.frame.legs.begin(), plan.frame.legs.end(),
                       [](const LegPlan& leg) { return can_be_drawn(leg.foot_m) && leg.length_m > k_same_point_m; });
}

inline bool fits_model(const Plan& plan) {
    return !plan.frame.legs.empty() && plan.frame.legs.size() <= k_max_legs && plan.guys.size() <= k_max_guys && plan.ropes.size() <= k_max_ropes;
}

inline Model model_to_draw(const Plan& plan, const Evaluation& e) {
    if (!e.model.legs.empty()) return e.model;
    return fits_model(plan) ? build_model(plan).model : Model{};
}

inline GuyLine guy_line(const Plan& plan, std::size_t i, Vec3 head_m, const Outcome* outcome) {
    const GuyPlan& g = plan.guys[i];
    GuyLine line;
    line.name = g.name;
    line.placed = g.anchor_m || g.anchor_height_m < head_m.z - k_same_point_m;
    if (!line.placed) return line;
    line.anchor_m = g.anchor_m ? *g.anchor_m : anchor_from_head(head_m, radians(g.bearing_deg), radians(g.inclination_deg), g.anchor_height_m);
    line.placed = can_be_drawn(line.anchor_m);
    line.hangs = hangs_in_air(line.anchor_m, plan.edge);
    line.has_tension = outcome && i < outcome->equilibrium.guy_tension_N.size();
    if (!line.has_tension) return line;
    line.tension_N = outcome->equilibrium.guy_tension_N[i];
    line.slack = !(line.tension_N > 0.0);
    return line;
}

/// Far enough along the load's pull to be a share of the slope below the edge.
inline Vec3 load_place(const Model& m, const RopePath& path, Vec3 head_m, double below_m) {
    const Vec3 fall{std::cos(m.face_rad), 0.0, -std::sin(m.face_rad)};
    const Vec3 start = path.clear_of_edge ? head_m : path.edge_point_m;
    const double along = std::max(0.3, glm::dot(path.below_edge, fall));
    return start + std::max(0.4, (below_m - glm::dot(start, fall)) / along) * path.below_edge;
}

inline RopeLine rope_line(const Rig& rig, const Plan& plan, const Model& m, std::size_t i, const Outcome* outcome) {
    const Rope& rope = m.ropes[i];
    const bool in_case = outcome && i < outcome->setup.ropes.size() && outcome->setup.ropes[i].loaded;
    const RopePath path = in_case ? outcome->setup.ropes[i].path : rope_path(m, rope, 0.0, 0.0);
    RopeLine line{.index = i,
                  .over_edge = !path.clear_of_edge,
                  .edge_m = path.edge_point_m,
                  .load_m = load_place(m, path, rig.head_m, 0.62 * rig.slope_m),
                  .load_pull = path.below_edge,
                  .load_kg = plan.ropes[i].load_kg,
                  .has_haul = rope.has_haul && can_be_drawn(rope.haul_m),
                  .haul_m = rope.haul_m,
                  .pulls = in_case};
    if (!in_case) return line;
    line.load_side_N = outcome->setup.ropes[i].head_side_N;
    line.haul_side_N = outcome->setup.ropes[i].haul_side_N;
    return line;
}

inline void add_ropes(Rig& rig, const Plan& plan, const Model& m, const Outcome* outcome) {
    for (std::size_t i = 0; i < std::min(m.ropes.size(), plan.ropes.size()); ++i) {
        RopeLine line = rope_line(rig, plan, m, i, outcome);
        if (!can_be_drawn(line.load_m)) continue;
        for (const RopeLine& other : rig.ropes) line.same_load = line.same_load || glm::length(other.load_m - line.load_m) < 0.3;
        rig.ropes.push_back(line);
    }
}

}  // namespace detail

/// `enlarge`: of the head's movement.
inline Rig rig_of(const Plan& plan, const Evaluation& e, std::size_t shown, double enlarge = 1.0) {
    Rig rig;
    if (!detail::legs_can_be_drawn(plan)) return rig;
    for (const LegPlan& leg : plan.frame.legs) rig.feet_m.push_back(leg.foot_m);
    const Model m = detail::model_to_draw(plan, e);
    if (m.legs.empty() || !can_be_drawn(m.drawn_head_m)) return rig;
    const Outcome* outcome = solved_outcome(e, shown);
    rig.has_head = true;
    rig.drawn_head_m = m.drawn_head_m;
    rig.head_m = rig.moved_head_m = outcome ? enlarged_head_m(m, *outcome, enlarge) : m.drawn_head_m;
    for (const Outcome& o : e.outcomes)
        if (o.equilibrium.status == SolveStatus::Solved) rig.reached_m.push_back(enlarged_head_m(m, o, enlarge));
    rig.slope_m = std::clamp(rig.drawn_head_m.z, 1.8, 4.0);
    for (std::size_t i = 0; i < plan.guys.size(); ++i) rig.guys.push_back(detail::guy_line(plan, i, rig.drawn_head_m, outcome));
    detail::add_ropes(rig, plan, m, outcome);
    if (!outcome) return rig;
    rig.has_forces = true;
    rig.resultant_N = outcome->resultant_N;
    rig.applied_force_angle_rad = outcome->applied_force_angle_rad;
    for (const Outcome& o : e.outcomes) rig.largest_resultant_N = std::max(rig.largest_resultant_N, glm::length(o.resultant_N));
    return rig;
}

}  // namespace guywright::scene
