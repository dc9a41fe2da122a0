#pragma once
#include "engine/base/bounded.hpp"
#include "engine/base/vec.hpp"
#include "engine/plan/plan.hpp"

namespace guywright {

// What the solver sees. SI: metres, newtons, newtons per metre; site frame.

/// Unit, along the ground and seen from it (seen_from_ground): the way each tie of a foot pulls.
using TieWays = Bounded<Vec3, k_max_foot_ties>;

/// A bar from foot to head. It pushes; it pulls only where the foot is held down.
struct Leg {
    Vec3 foot_m{};
    double rest_length_m = 0.0;
    double stiffness_N_m = 0.0;  ///< EA / rest length
    double weight_N = 0.0;       ///< half of it acts at the head, half at the foot
    bool held_down = false;
    TieWays foot_ties{};
    double ground_slope_rad = 0.0;  ///< of what the foot stands on, down away from the edge
};

/// An elastic tie from an anchor to the head. It pulls, never pushes.
struct Guy {
    Vec3 anchor_m{};
    double rest_length_m = 0.0;  ///< unstretched; shorter than the drawn length by the pretension
    double stiffness_N_m = 0.0;  ///< EA / rest length, all parts
    int shared_anchor = -1;      ///< guys with the same number hang on one anchor; -1: on one of its own
};
using SharedAnchors = Bounded<int, k_max_guys>;  ///< that number of every guy

/// A rope over the head, without its tension: that is a matter of the case.
struct Rope {
    double weight_N = 0.0;   ///< its share of the load
    double swing_rad = 0.0;  ///< of the load side as entered, + to the right
    double outward_rad = 0.0;
    double edge_y_m = 0.0;  ///< where it crosses the edge if it touches, at its own swing
    bool has_haul = false;
    Vec3 haul_m{};  ///< first point of the hauling side
    double pulley_efficiency = 1.0;
};

struct Model {
    Bounded<Leg, k_max_legs> legs;
    Bounded<Guy, k_max_guys> guys;
    Bounded<Rope, k_max_ropes> ropes;
    Vec3 drawn_head_m{};         ///< as measured, before anything moves
    double head_weight_N = 0.0;  ///< the legs' upper halves
    double face_rad = 0.0;       ///< below horizontal, at most pi/2: past that a rope hangs free of the face
    double edge_friction = 0.0;
    double shortest_leg_m = 0.0;
};

}  // namespace guywright
