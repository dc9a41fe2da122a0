#pragma once
#include "engine/base/tolerances.hpp"
#include "engine/equilibrium/energy.hpp"
#include "engine/equilibrium/trust_step.hpp"
#include "engine/equilibrium/turn_about_feet.hpp"

namespace guywright {

enum class SolveStatus : unsigned char {
    NotRun,
    Solved,          ///< forces balance; says nothing of stability
    MaxIterations,   ///< no balance found
    Collapsed        ///< the head went farther than k_collapse_share of the shortest leg
};

/// Where the head comes to rest, with the quality of the answer. Nothing in it is to be used unless status is Solved.
struct Equilibrium {
    SolveStatus status = SolveStatus::NotRun;
    Vec3 head_m{};
    Bounded<double, k_max_guys> guy_tension_N;      ///< 0 = carries nothing
    Bounded<double, k_max_guys> guy_loose_m;        ///< how much longer the guy is than its span; > 0 hangs loose
    Bounded<double, k_max_legs> leg_compression_N;  ///< < 0: tension in a leg held down
    Bounded<double, k_max_legs> leg_gap_m;          ///< > 0: the foot has lifted by so much
    double residual_N = 0.0;                        ///< unbalanced force left
    double min_stiffness_N_m = 0.0;                 ///< smallest eigenvalue of the plain Hessian at head_m
    double max_stiffness_N_m = 0.0;
    Vec3 softest{};                                 ///< unit; the way it will go
    int iterations = 0;
};

/// True only for a solved state on which every small push is pushed back.
inline bool is_stable(const Equilibrium& e) {
    return e.status == SolveStatus::Solved && e.min_stiffness_N_m > k_stiffness_share * e.max_stiffness_N_m;
}

namespace detail {

/// Out-of-balance force that counts as none: a share of the largest force at work, but no less than what rounding the head's
/// position makes of the stiffest member. NaN, and so never reached, where any force or stiffness is not finite.
inline double balance_N(const Model& model, const Pulls& pulls) {
    double force_N = 1.0 + model.head_weight_N, stiffest_N_m = 0.0, sum = force_N;
    for (const Pull& p : pulls) {
        force_N = std::max(force_N, p.tension_N);
        sum += p.tension_N;
    }
    for (const Leg& leg : model.legs) {
        stiffest_N_m = std::max(stiffest_N_m, leg.stiffness_N_m);
        sum += leg.stiffness_N_m;
    }
    for (const Guy& g : model.guys) {
        const double stretch_m = glm::length(g.anchor_m - model.drawn_head_m) - g.rest_length_m;
        force_N = std::max(force_N, g.stiffness_N_m * stretch_m);
        stiffest_N_m = std::max(stiffest_N_m, g.stiffness_N_m);
        sum += g.stiffness_N_m;
    }
    const double rounding_N = k_position_rounding * stiffest_N_m * (glm::length(model.drawn_head_m) + model.shortest_leg_m);
    return std::isfinite(sum) ? std::max(k_residual_share * force_N, rounding_N) : std::nan("");
}

/// How well a step did: what the energy really lost, as a share of what the quadratic model promised. Where even the change by
/// itself drowns in rounding, the out-of-balance force decides.
inline double step_quality(const Local& here, const Local& next, double predicted_J, const EnergyChange& real) {
    if (predicted_J > real.rounding_J) return -real.change_J / predicted_J;
    return glm::dot(next.gradient_N, next.gradient_N) < glm::dot(here.gradient_N, here.gradient_N) ? 0.5 : 0.0;
}

inline double next_radius(double radius, double step, double quality) {
    if (quality < 0.25) return 0.25 * step;
    if (quality > 0.75) return std::max(radius, 2.0 * step);
    return radius;
}

inline void read_members(const Model& model, Equilibrium& e) {
    for (const Guy& g : model.guys) {
        const double stretch_m = glm::length(e.head_m - g.anchor_m) - g.rest_length_m;
        e.guy_tension_N.push_back(std::max(0.0, stretch_m) * g.stiffness_N_m);
        e.guy_loose_m.push_back(std::max(0.0, -stretch_m));
    }
    for (const Leg& leg : model.legs) {
        const double push_m = leg.rest_length_m - glm::length(e.head_m - leg.foot_m);
        e.leg_compression_N.push_back((leg.held_down ? push_m : std::max(0.0, push_m)) * leg.stiffness_N_m);
        e.leg_gap_m.push_back(leg.held_down ? 0.0 : std::max(0.0, -push_m));
    }
}

inline Equilibrium read_off(const Model& model, Vec3 head_m, const Local& here, SolveStatus status, int iterations) {
    Equilibrium e;
    e.status = status;
    e.head_m = head_m;
    e.iterations = iterations;
    e.residual_N = glm::length(here.gradient_N);
    read_members(model, e);
    const Eigen3 stiffness = eigen(here.hessian_N_m);
    e.min_stiffness_N_m = stiffness.value[0];
    e.max_stiffness_N_m = stiffness.value[2];
    e.softest = stiffness.vector[0];
    return e;
}

}  // namespace detail

/// Balanced but balanced on a point: any push tips it further.
inline bool is_saddle(const Local& here) {
    Vec3 unused;
    return !solve_positive(here.hessian_N_m, here.gradient_N, unused);
}

/// Local minimum of the energy reached downhill from `start_m`: trust-region Newton on the exact Hessian, large
/// displacement. Deterministic; allocates nothing. At a saddle it goes on downhill, so a leg that only balances is found
/// where it comes to rest, or Collapsed.
[[nodiscard]] inline Equilibrium solve_equilibrium(const Model& model, const Pulls& pulls, Vec3 start_m) {
    const double enough_N = detail::balance_N(model, pulls);
    const double farthest_m = k_collapse_share * model.shortest_leg_m;
    double radius_m = k_first_radius_share * model.shortest_leg_m;
    Vec3 head_m = start_m;
    Local here = local_at(model, pulls, head_m);
    for (int i = 0; i < k_max_iterations; ++i) {
        if (glm::length(here.gradient_N) <= enough_N && (!is_saddle(here) || radius_m < 1e-9))
            return detail::read_off(model, head_m, here, SolveStatus::Solved, i);
        const Vec3 step_m = trust_step(here.gradient_N, here.hessian_N_m, radius_m);
        const Vec3 next_m = turn_about_feet(model, head_m, step_m);
        const Local next = local_at(model, pulls, next_m);
        const double predicted_J = -(glm::dot(here.gradient_N, step_m) + 0.5 * glm::dot(step_m, here.hessian_N_m * step_m));
        const double quality = detail::step_quality(here, next, predicted_J, energy_change(model, pulls, head_m, next_m - head_m));
        radius_m = detail::next_radius(radius_m, glm::length(step_m), quality);
        if (!(quality > 0.0)) continue;
        head_m = next_m;
        here = next;
        if (!(glm::length(head_m - model.drawn_head_m) <= farthest_m))
            return detail::read_off(model, head_m, here, SolveStatus::Collapsed, i + 1);
    }
    return detail::read_off(model, head_m, here, SolveStatus::MaxIterations, k_max_iterations);
}

}  // namespace guywright
