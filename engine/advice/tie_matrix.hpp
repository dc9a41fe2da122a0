#pragma once
#include "engine/advice/take_up.hpp"
#include "engine/equilibrium/solve.hpp"

namespace guywright {

/// A number for every guy taken in and every guy that feels it: [taken in][felt by].
using GuyPairs = std::array<std::array<double, k_max_guys>, k_max_guys>;

/// What taking in each guy does to all of them in one state, to first order.
struct TieMatrix {
    bool computed = false;  ///< only in a state at rest that stands
    std::size_t guys = 0;
    GuyPairs change_N_per_m{};            ///< of the tension; 0 where either guy is slack
    Bounded<double, k_max_guys> slack_m;  ///< that must be taken in before the guy does anything
};

namespace detail {

/// A guy that acts in the energy (add_member): what is loose by less than can be seen does not pull either.
inline bool pulls(const Equilibrium& e, std::size_t guy) { return e.guy_loose_m[guy] == 0.0; }

}  // namespace detail

/// Change of every guy's signed tension per metre of take-up of each guy, N/m, from the plain Hessian at the resting place.
/// A guy is EA / L0, so at a fixed head its own tension EA (l / L0 - 1) changes by k l / L0; the head then gives way until
/// the forces balance again, and all feel that. False where the state does not stand: `change` is then not set.
inline bool signed_tension_change(const Model& m, const Equilibrium& e, GuyPairs& change) {
    if (!is_stable(e)) return false;
    for (std::size_t i = 0; i < m.guys.size(); ++i) {
        const Guy& taken = m.guys[i];
        const Vec3 span_m = e.head_m - taken.anchor_m;
        const double own_N_m = taken.stiffness_N_m * glm::length(span_m) / taken.rest_length_m;
        Vec3 moved{0.0};  // of the head, per metre
        if (detail::pulls(e, i) && !solve_positive(e.stiffness_N_m, -own_N_m * glm::normalize(span_m), moved)) return false;
        for (std::size_t j = 0; j < m.guys.size(); ++j) {
            const Guy& felt = m.guys[j];
            change[i][j] = felt.stiffness_N_m * glm::dot(glm::normalize(e.head_m - felt.anchor_m), moved) + (i == j ? own_N_m : 0.0);
        }
    }
    return true;
}

/// The tie matrix of one state at rest. A slack guy feels nothing, and taking it in does nothing until its slack is in.
inline TieMatrix tie_matrix(const Model& m, const Equilibrium& e) {
    TieMatrix t;
    t.guys = m.guys.size();
    t.computed = signed_tension_change(m, e, t.change_N_per_m);
    if (!t.computed) return t;
    t.slack_m = e.guy_loose_m;
    for (std::size_t i = 0; i < t.guys; ++i)
        for (std::size_t j = 0; j < t.guys; ++j)
            if (!detail::pulls(e, i) || !detail::pulls(e, j)) t.change_N_per_m[i][j] = 0.0;
    return t;
}

}  // namespace guywright
