#pragma once
#include "engine/base/tolerances.hpp"
#include "engine/equilibrium/energy.hpp"
#include "engine/equilibrium/trust_step.hpp"
#include "engine/equilibrium/turn_about_feet.hpp"

namespace guywright {

enum class SolveStatus : unsigned char {
    NotRun,
    Solved,         ///< forces balance; says nothing of stability
    MaxIterations,  ///< no balance found
    Collapsed       ///< the head went farther than k_collapse_share of the shortest leg
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
    Sym3 stiffness_N_m;  ///< the plain Hessian at head_m
    int iterations = 0;
};

/// Unit vector along which the head gives way most easily: the way it will go.
inline Vec3 softest_way(const Equilibrium& e) { return eigen(e.stiffness_N_m).vector[0]; }

/// True only for a solved state on which every small push is pushed back.
inline bool is_stable(const Equilibrium& e) { return e.status == SolveStatus::Solved && e.min_stiffness_N_m > k_stiffness_share * e.max_stiffness_N_m; }

namespace detail {

/// The largest of what is at work in a rig; `sum` is finite only where all of it is.
struct Scale {
    double force_N = 0.0, stiffest_N_m = 0.0, sum = 0.0;

    void add_force(double size_N) {
        force_N = std::max(force_N, size_N);
        sum += size_N;
    }
    void add_stiffness(double size_N_m) {
        stiffest_N_m = std::max(stiffest_N_m, size_N_m);
        sum += size_N_m;
    }
};

inline Scale scale_of(const Model& model) {
    Scale scale;
    scale.add_force(1.0 + model.head_weight_N);
    for (const Leg& leg : model.legs) scale.add_stiffness(leg.stiffness_N_m);
    for (const Guy& g : model.guys) {
        scale.add_stiffness(g.stiffness_N_m);
        const double stretch_m = glm::length(g.anchor_m - model.drawn_head_m) - g.rest_length_m;
        scale.force_N = std::max(scale.force_N, g.stiffness_N_m * stretch_m);
    }
    return scale;
}

/// Out-of-balance force that counts as none: a share of the largest force at work, but no less than what rounding the head's
/// position makes of the stiffest member. NaN, and so never reached, where any force or stiffness is not finite.
inline double balance_N(const Model& model, Scale scale, const Pulls& pulls) {
    for (const Pull& p : pulls) scale.add_force(p.tension_N);
    const double rounding_N = k_position_rounding * scale.stiffest_N_m * (glm::length(model.drawn_head_m) + model.shortest_leg_m);
    return std::isfinite(scale.sum) ? std::max(k_residual_share * scale.force_N, rounding_N) : std::nan("");
}

/// Energy that the quadratic model says a step loses.
inline double predicted_J(const Local& here, Vec3 step_m) { return -(glm::dot(here.gradient_N, step_m) + 0.5 * glm::dot(step_m, here.hessian_N_m * step_m)); }

/// How well a step did: what the energy really lost, as a share of what the quadratic model promised. Where even the change by
/// itself drowns in rounding, the out-of-balance force decides.
inline double step_quality(const Local& here, const Local& next, double predicted_J, const EnergyChange& real) {
    if (predicted_J > real.rounding_J) return -real.change_J / predicted_J;
    return glm::dot(next.gradient_N, next.gradient_N) < glm::dot(here.gradient_N, here.gradient_N) ? 0.5 : 0.0;
}

/// The step took away nine tenths of the out-of-balance force: all is as the quadratic model says, and needs no second opinion.
inline bool clearly_good(const Local& here, const Local& next) {
    return glm::dot(next.gradient_N, next.gradient_N) < 0.01 * glm::dot(here.gradient_N, here.gradient_N);
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
    e.stiffness_N_m = here.hessian_N_m;
    const std::array<double, 3> stiffness_N_m = eigenvalues(here.hessian_N_m);
    e.min_stiffness_N_m = stiffness_N_m[0];
    e.max_stiffness_N_m = stiffness_N_m[2];
    return e;
}

}  // namespace detail

/// Balanced but balanced on a point: any push tips it further.
inline bool is_saddle(const Local& here) {
    Vec3 unused;
    return !solve_positive(here.hessian_N_m, here.gradient_N, unused);
}

/// Where a search starts, with what every case that starts there has in common.
struct Start {
    explicit Start(const Model& m, Vec3 at_m) : model(m), head_m(at_m), structure(structure_at(m, at_m)), scale(detail::scale_of(m)) {}

    void move_to(Vec3 at_m) {
        head_m = at_m;
        structure = structure_at(model, at_m);
    }

    const Model& model;
    Vec3 head_m;
    Local structure;  ///< at head_m, no rope
    detail::Scale scale;
};

/// Local minimum of the energy reached downhill from `start`: trust-region Newton on the exact Hessian, large
/// displacement. Deterministic; allocates nothing. At a saddle it goes on downhill, so a leg that only balances is found
/// where it comes to rest, or Collapsed.
[[nodiscard]] inline Equilibrium solve_equilibrium(const Start& start, const Pulls& pulls) {
    const Model& model = start.model;
    const double enough_N = detail::balance_N(model, start.scale, pulls);
    const double farthest_m = k_collapse_share * model.shortest_leg_m;
    double radius_m = k_first_radius_share * model.shortest_leg_m;
    Vec3 head_m = start.head_m;
    Local here = with_pulls(start.structure, pulls, head_m);
    for (int i = 0; i < k_max_iterations; ++i) {
        if (glm::length(here.gradient_N) <= enough_N && (!is_saddle(here) || radius_m < 1e-9))
            return detail::read_off(model, head_m, here, SolveStatus::Solved, i);
        const Vec3 step_m = trust_step(here.gradient_N, here.hessian_N_m, radius_m);
        const Vec3 next_m = turn_about_feet(model, head_m, step_m);
        const Local next = local_at(model, pulls, next_m);
        const double quality = detail::clearly_good(here, next)
                                   ? 1.0
                                   : detail::step_quality(here, next, detail::predicted_J(here, step_m), energy_change(model, pulls, head_m, next_m - head_m));
        radius_m = detail::next_radius(radius_m, glm::length(step_m), quality);
        if (!(quality > 0.0)) continue;
        head_m = next_m;
        here = next;
        if (!(glm::length(head_m - model.drawn_head_m) <= farthest_m)) return detail::read_off(model, head_m, here, SolveStatus::Collapsed, i + 1);
    }
    return detail::read_off(model, head_m, here, SolveStatus::MaxIterations, k_max_iterations);
}

[[nodiscard]] inline Equilibrium solve_equilibrium(const Model& model, const Pulls& pulls, Vec3 start_m) {
    return solve_equilibrium(Start(model, start_m), pulls);
}

}  // namespace guywright
