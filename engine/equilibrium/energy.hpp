#pragma once
#include "engine/base/sym3.hpp"
#include "engine/model/model.hpp"

namespace guywright {

/// One rope side pulling at the head with constant tension: toward a fixed point, or (a free hang) along a fixed direction.
struct Pull {
    double tension_N = 0.0;
    bool toward_point = false;
    Vec3 at{};  ///< the point, metres, or the unit direction
};

/// Both sides of every rope.
using Pulls = Bounded<Pull, 2 * k_max_ropes>;

/// Energy of the head at one position, with its exact derivatives.
struct Local {
    double energy_J = 0.0;
    Vec3 gradient_N{};  ///< the negative of the force on the head
    Sym3 hessian_N_m;   ///< material and geometric stiffness together
};

/// Adds an elastic member from `fixed_m` to `head_m` that acts only while `sign * (length - rest)` is not negative:
/// sign +1 pulls (guy), -1 pushes (leg), 0 both (a leg whose foot is held down). On the boundary it counts as acting, so that
/// a leg drawn at its own length is felt from the first step on.
inline void add_member(Local& here, Vec3 head_m, Vec3 fixed_m, double rest_m, double k_N_m, double sign) {
    const Vec3 span_m = head_m - fixed_m;
    const double length_m = glm::length(span_m);
    const double stretch_m = length_m - rest_m;
    if (sign * stretch_m < 0.0 || !(length_m > 0.0)) return;
    const Vec3 n = (1.0 / length_m) * span_m;
    const double force_N = k_N_m * stretch_m;
    here.energy_J += 0.5 * force_N * stretch_m;
    here.gradient_N += force_N * n;
    add_axial(here.hessian_N_m, n, k_N_m, force_N / length_m);
}

/// Adds a constant-tension pull: energy T * distance toward a point, -T d.p along a direction.
inline void add_pull(Local& here, Vec3 head_m, const Pull& pull) {
    if (!pull.toward_point) {
        here.energy_J -= pull.tension_N * glm::dot(pull.at, head_m);
        here.gradient_N -= pull.tension_N * pull.at;
        return;
    }
    const Vec3 span_m = head_m - pull.at;
    const double length_m = glm::length(span_m);
    if (!(length_m > 0.0)) return;
    const Vec3 n = (1.0 / length_m) * span_m;
    here.energy_J += pull.tension_N * length_m;
    here.gradient_N += pull.tension_N * n;
    add_axial(here.hessian_N_m, n, 0.0, pull.tension_N / length_m);
}

/// Legs, guys and weight alone, without any rope.
inline Local structure_at(const Model& model, Vec3 head_m) {
    Local here;
    for (const Leg& leg : model.legs) add_member(here, head_m, leg.foot_m, leg.rest_length_m, leg.stiffness_N_m, leg.held_down ? 0.0 : -1.0);
    for (const Guy& guy : model.guys) add_member(here, head_m, guy.anchor_m, guy.rest_length_m, guy.stiffness_N_m, 1.0);
    here.energy_J += model.head_weight_N * head_m.z;
    here.gradient_N.z += model.head_weight_N;
    return here;
}

/// Adds every rope side to what structure_at() found at the same place.
inline Local with_pulls(Local here, const Pulls& pulls, Vec3 head_m) {
    for (const Pull& pull : pulls) add_pull(here, head_m, pull);
    return here;
}

/// Energy, gradient and Hessian of the whole head. Pure; allocates nothing.
inline Local local_at(const Model& model, const Pulls& pulls, Vec3 head_m) { return with_pulls(structure_at(model, head_m), pulls, head_m); }

/// Change of the energy along a short step, with what rounding may have made of it.
struct EnergyChange {
    double change_J = 0.0;
    double rounding_J = 0.0;

    void add(double term_J, double slope_rounding_J = 0.0) {
        change_J += term_J;
        rounding_J += std::abs(term_J) * 1e-15 + slope_rounding_J;
    }
};

namespace detail {

/// Length of the way from `fixed` to the head after the step, minus before: no difference of two long lengths.
inline double longer_by_m(Vec3 before, Vec3 after, Vec3 step_m) {
    const double lengths_m = glm::length(before) + glm::length(after);
    return lengths_m > 0.0 ? glm::dot(step_m, before + after) / lengths_m : 0.0;
}

inline void add_member_change(EnergyChange& c, Vec3 head_m, Vec3 step_m, Vec3 fixed_m, double rest_m, double k_N_m, double sign) {
    const Vec3 before = head_m - fixed_m, after = before + step_m;
    const double from_m = glm::length(before) - rest_m;
    const double longer_m = longer_by_m(before, after, step_m);
    const double to_m = from_m + longer_m;
    const bool acts_before = sign * from_m >= 0.0, acts_after = sign * to_m >= 0.0;
    const double a = acts_before ? from_m : 0.0, b = acts_after ? to_m : 0.0;
    const double grows_m = acts_before && acts_after ? longer_m : b - a;
    // the stretch is a small difference of two lengths, and a stiff leg multiplies what rounding leaves in it
    c.add(0.5 * k_N_m * grows_m * (a + b), k_N_m * std::abs(grows_m) * 1e-15 * rest_m);
}

}  // namespace detail

/// Energy at head_m + step_m less the energy at head_m, term by term, so that rounding is a share of the change and not of the
/// energy: ten thousand joules of rope would drown the millionth that a head gains as it rolls from one slack guy to the next.
inline EnergyChange energy_change(const Model& model, const Pulls& pulls, Vec3 head_m, Vec3 step_m) {
    EnergyChange c;
    for (const Leg& leg : model.legs)
        detail::add_member_change(c, head_m, step_m, leg.foot_m, leg.rest_length_m, leg.stiffness_N_m, leg.held_down ? 0.0 : -1.0);
    for (const Guy& guy : model.guys) detail::add_member_change(c, head_m, step_m, guy.anchor_m, guy.rest_length_m, guy.stiffness_N_m, 1.0);
    for (const Pull& pull : pulls) {
        const Vec3 before = head_m - pull.at;
        if (pull.toward_point) c.add(pull.tension_N * detail::longer_by_m(before, before + step_m, step_m));
        else c.add(-pull.tension_N * glm::dot(pull.at, step_m));
    }
    c.add(model.head_weight_N * step_m.z);
    return c;
}

}  // namespace guywright
