#pragma once
#include "engine/base/units.hpp"
#include "engine/cases/case.hpp"
#include "engine/cases/frame_angles.hpp"

namespace guywright {

/// What one case does to the rig. Forces and angles only where equilibrium.status is Solved.
struct Outcome {
    Case setup;
    Equilibrium equilibrium;
    bool stable = false;
    Vec3 resultant_N{};                         ///< of all rope sides at the head
    double applied_force_angle_rad = 0.0;       ///< resultant off the legs (frame_angles.hpp); 0 without a rope
    double inside_legs_rad = 0.0;               ///< of the resultant, two and three legs
    double head_shift_m = 0.0;                  ///< from the head as drawn
    Bounded<double, k_max_guys> guy_angle_rad;  ///< guy off the legs at the head
    Bounded<Vec3, k_max_legs> foot_reaction_N;  ///< of the ground on the foot
    Bounded<double, k_max_ropes> pulley_N;      ///< vector sum of both sides of each rope
};

/// Force of one pull on the head at `head_m`, newtons.
inline Vec3 pull_force_N(const Pull& pull, Vec3 head_m) {
    if (!pull.toward_point) return pull.tension_N * pull.at;
    const Vec3 to = pull.at - head_m;
    const double length_m = glm::length(to);
    return length_m > 0.0 ? (pull.tension_N / length_m) * to : Vec3{0.0};
}

/// Force of all pulls together on the head at `head_m`, newtons.
inline Vec3 sum_of_pulls_N(const Pulls& pulls, Vec3 head_m) {
    Vec3 sum_N{0.0};
    for (const Pull& pull : pulls) sum_N += pull_force_N(pull, head_m);
    return sum_N;
}

namespace detail {

inline void read_pulleys(const Model& m, Outcome& o) {
    std::size_t next = 0;
    for (std::size_t i = 0; i < m.ropes.size(); ++i) {
        Vec3 sum_N{0.0};
        if (o.setup.ropes[i].loaded) {
            sum_N += pull_force_N(o.setup.pulls[next++], o.equilibrium.head_m);
            if (m.ropes[i].has_haul) sum_N += pull_force_N(o.setup.pulls[next++], o.equilibrium.head_m);
        }
        o.pulley_N.push_back(glm::length(sum_N));
        o.resultant_N += sum_N;
    }
}

inline void read_feet(const Model& m, Outcome& o) {
    for (std::size_t i = 0; i < m.legs.size(); ++i) {
        const Leg& leg = m.legs[i];
        const Vec3 up = glm::normalize(o.equilibrium.head_m - leg.foot_m);
        o.foot_reaction_N.push_back(o.equilibrium.leg_compression_N[i] * up + Vec3{0.0, 0.0, leg.weight_N / 2.0});
    }
}

}  // namespace detail

/// Solves one case from `start` and reads off the forces. Allocates nothing.
inline Outcome solve_case(const Start& start, const Case& setup) {
    const Model& m = start.model;
    Outcome o;
    o.setup = setup;
    o.equilibrium = solve_equilibrium(start, setup.pulls);
    o.stable = is_stable(o.equilibrium);
    if (o.equilibrium.status != SolveStatus::Solved) return o;
    o.head_shift_m = glm::length(o.equilibrium.head_m - m.drawn_head_m);
    detail::read_pulleys(m, o);
    detail::read_feet(m, o);
    return o;
}

inline Outcome solve_case(const Model& m, const Case& setup, Vec3 start_m) { return solve_case(Start(m, start_m), setup); }

/// Adds the angles, which only the trade's rules and the report ask for.
inline void read_angles(const Model& m, Outcome& o) {
    if (o.equilibrium.status != SolveStatus::Solved) return;
    const Vec3 head_m = o.equilibrium.head_m;
    for (const Guy& g : m.guys) o.guy_angle_rad.push_back(angle_off_legs_rad(m, head_m, g.anchor_m - head_m));
    if (!(glm::length(o.resultant_N) > 0.0)) return;
    o.applied_force_angle_rad = angle_off_legs_rad(m, head_m, o.resultant_N);
    o.inside_legs_rad = inside_legs_rad(m, head_m, o.resultant_N);
}

}  // namespace guywright
