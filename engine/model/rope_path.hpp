#pragma once
#include "engine/model/model.hpp"

namespace guywright {

/// The load side of one rope at one head position.
struct RopePath {
    Vec3 below_edge{};           ///< unit, the way the load pulls
    bool clear_of_edge = false;  ///< leaves the head along below_edge and touches nothing
    Vec3 edge_point_m{};         ///< contact, if not clear
    double clearance_m = 0.0;    ///< of the rope's line from the edge; > 0 is clear
    double wrap_rad = 0.0;       ///< turn over the edge, 0 if clear
};

/// Unit vector of the load side below the edge: `fall_rad` below horizontal, `swing_rad` to the right.
inline Vec3 load_direction(double fall_rad, double swing_rad) {
    const double along = std::cos(swing_rad);
    return {std::cos(fall_rad) * along, -std::sin(swing_rad), -std::sin(fall_rad) * along};
}

/// How steeply the load side falls with an outward pull: never above horizontal.
inline double fall_rad(double face_rad, double outward_rad) { return std::max(0.0, std::min(face_rad, k_pi / 2.0) - outward_rad); }

/// The load side of `rope` at the drawn head, with the case's swing and outward pull added to its own.
/// The edge is the line x = 0, z = 0; it is touched where the straight line from the head along the load would pass below it.
/// A swing of the load drags the contact along the edge to where a rope without friction would lie (the same angle to the
/// edge on both sides): friction would hold it somewhere in between, nearer, which loads the head less sideways. So the head
/// feels a swing alike just clear of the edge and just touching it.
inline RopePath rope_path(const Model& model, const Rope& rope, double added_swing_rad, double added_outward_rad) {
    const double swing_rad = rope.swing_rad + added_swing_rad;
    const double fall = fall_rad(model.face_rad, rope.outward_rad + added_outward_rad);
    const Vec3 head_m = model.drawn_head_m;
    const double reach_m = std::hypot(head_m.x, head_m.z);
    RopePath path;
    path.below_edge = load_direction(fall, swing_rad);
    path.edge_point_m = {0.0, rope.edge_y_m - reach_m * (std::tan(swing_rad) - std::tan(rope.swing_rad)), 0.0};
    path.clearance_m = head_m.x * std::sin(fall) + head_m.z * std::cos(fall);
    const Vec3 to_edge = path.edge_point_m - head_m;
    path.clear_of_edge = path.clearance_m > 0.0 || glm::length(to_edge) < 1e-6;
    if (!path.clear_of_edge) path.wrap_rad = angle_between(to_edge, path.below_edge);
    return path;
}

}  // namespace guywright
