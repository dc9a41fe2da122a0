#pragma once
#include "engine/cases/solve_cases.hpp"

namespace guywright {

/// How far the ropes' tensions can grow, all together, from the rig without load.
struct LoadLimit {
    double collapse_factor = 0.0;     ///< of the case's tensions, at which no stable rest is left near the path; the cap if none
    bool capped = false;              ///< it still stood at k_collapse_factor_cap
    double first_slack_factor = 0.0;  ///< at which the first guy hangs loose
    bool goes_slack = false;          ///< false: none does before the collapse or the cap
    Vec3 goes_toward{};               ///< unit; the way of least stiffness where it last stood
};

namespace detail {

/// The factor is known to this.
inline constexpr double k_factor_step = 1e-3;

inline Pulls scaled(Pulls pulls, double factor) {
    for (Pull& p : pulls) p.tension_N *= factor;
    return pulls;
}

inline bool still_stands(const Equilibrium& e) {
    return is_stable(e) && std::none_of(e.leg_gap_m.begin(), e.leg_gap_m.end(), [](double gap_m) { return gap_m > k_slack_m; });
}

inline bool any_slack(const Equilibrium& e) {
    return std::any_of(e.guy_loose_m.begin(), e.guy_loose_m.end(), [](double loose_m) { return loose_m > k_slack_m; });
}

/// Least factor between `tight` and `slack` at which a guy is loose, by halving.
inline double slack_between(const Model& m, const Pulls& pulls, Vec3 start_m, double tight, double slack) {
    while (slack - tight > k_factor_step) {
        const double middle = 0.5 * (tight + slack);
        (any_slack(solve_equilibrium(m, scaled(pulls, middle), start_m)) ? slack : tight) = middle;
    }
    return slack;
}

}  // namespace detail

/// Follows the head as every rope tension of a case grows from nothing, in steps that lengthen while it goes well and are
/// halved where it does not. `rigged_m` is where the head rests without load.
inline LoadLimit find_load_limit(const Model& m, const Pulls& pulls, Vec3 rigged_m) {
    LoadLimit limit;
    Equilibrium here = solve_equilibrium(m, detail::scaled(pulls, 0.0), rigged_m);
    if (!detail::still_stands(here)) return limit;
    limit.goes_slack = detail::any_slack(here);
    double factor = 0.0, step = 0.25;
    while (step >= detail::k_factor_step && factor < k_collapse_factor_cap) {
        const double next_factor = std::min(factor + step, k_collapse_factor_cap);
        const Equilibrium next = solve_equilibrium(m, detail::scaled(pulls, next_factor), here.head_m);
        if (!detail::still_stands(next)) {
            step *= 0.5;
            continue;
        }
        if (!limit.goes_slack && detail::any_slack(next)) {
            limit.goes_slack = true;
            limit.first_slack_factor = detail::slack_between(m, pulls, here.head_m, factor, next_factor);
        }
        factor = next_factor;
        here = next;
        step *= 1.5;
    }
    limit.collapse_factor = factor;
    limit.capped = factor >= k_collapse_factor_cap;
    limit.goes_toward = softest_way(here);
    return limit;
}

}  // namespace guywright
