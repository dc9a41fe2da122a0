#pragma once
#include "engine/verdict/evaluate.hpp"

namespace guywright::scene {

/// The way the head would go if it went.
struct WayItGoes {
    bool known = false;
    bool stands = true;       ///< false: it goes in the case shown
    bool either = false;      ///< as easily to the other side
    bool has_factor = false;  ///< holding: by how many times the ropes' tension may grow until it goes
    bool capped = false;      ///< it still stood at the largest factor tried
    double factor = 0.0;
    Vec3 toward{0.0};  ///< unit
};

namespace detail {

/// Energy it takes to swing the head so far, joules.
inline double energy_of_way_J(const Model& m, const Pulls& pulls, Vec3 head_m, Vec3 step_m) {
    return energy_change(m, pulls, head_m, turn_about_feet(m, head_m, step_m) - head_m).change_J;
}

/// The softest way is a line; the side of it that the head goes to is the one that takes less energy.
inline void choose_side(WayItGoes& way, const Model& m, const Pulls& pulls, Vec3 head_m) {
    constexpr double k_step_share = 0.1;  // of the leg: the springs of either side have told by then
    constexpr double k_alike = 0.15;      // of the energy: what is measured is not known better
    const Vec3 step_m = k_step_share * m.shortest_leg_m * way.toward;
    const double there_J = energy_of_way_J(m, pulls, head_m, step_m), back_J = energy_of_way_J(m, pulls, head_m, -step_m);
    if (back_J < there_J) way.toward = -way.toward;
    way.either = std::abs(there_J - back_J) <= k_alike * std::max(std::abs(there_J), std::abs(back_J));
}

}  // namespace detail

/// For the case shown: where it went, if it did not stand; of holding, the way of least stiffness when the load has grown as far
/// as it stands; of others the way of least stiffness.
inline WayItGoes way_it_goes(const Evaluation& e, std::size_t shown) {
    WayItGoes way;
    if (shown >= e.outcomes.size() || e.model.legs.empty()) return way;
    const Outcome& o = e.outcomes[shown];
    const Vec3 gone_m = o.equilibrium.head_m - e.model.drawn_head_m;
    way.stands = o.stable;
    if (o.equilibrium.status == SolveStatus::Collapsed && glm::length(gone_m) > 0.0) {
        way.known = true;
        way.toward = glm::normalize(gone_m);
        return way;
    }
    if (o.equilibrium.status != SolveStatus::Solved) return way;
    const bool limit = shown == k_holding && glm::length(e.load_limit.goes_toward) > 0.5;
    way.toward = limit ? e.load_limit.goes_toward : softest_way(o.equilibrium);
    way.known = glm::length(way.toward) > 0.5;
    if (!way.known) return way;
    way.has_factor = limit;
    way.capped = e.load_limit.capped;
    way.factor = e.load_limit.collapse_factor;
    Pulls pulls = o.setup.pulls;
    if (limit) pulls = guywright::detail::scaled(pulls, std::max(1.0, way.factor));
    detail::choose_side(way, e.model, pulls, o.equilibrium.head_m);
    return way;
}

/// Points of the way from `head_m`, about the feet, metres.
inline std::vector<Vec3> path_of_way(const Model& m, Vec3 head_m, Vec3 toward) {
    constexpr int k_steps = 10;
    constexpr double k_reach_share = 0.45;  // of the leg
    std::vector<Vec3> path{head_m};
    const double step_m = k_reach_share * m.shortest_leg_m / k_steps;
    for (int i = 0; i < k_steps; ++i) {
        const Vec3 next = turn_about_feet(m, path.back(), step_m * toward);
        const double gone_m = glm::length(next - path.back());
        if (!(gone_m > 1e-9)) break;
        const Vec3 chord = (next - path.back()) / gone_m;
        toward = 2.0 * glm::dot(toward, chord) * chord - toward;  // along the arc where the chord ends
        path.push_back(next);
    }
    return path;
}

}  // namespace guywright::scene
