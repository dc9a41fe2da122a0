#pragma once
#include "engine/cases/case.hpp"

namespace guywright {

/// Tension factor over the edge: exp(friction * wrap), the capstan equation.
inline double edge_factor(double friction, double wrap_rad) { return std::exp(friction * wrap_rad); }

namespace detail {

/// What a case changes on a rope.
struct RopeAction {
    Motion motion = Motion::Still;
    double tension_factor = 1.0;
    double swing_rad = 0.0;
    double outward_rad = 0.0;
};

using RopePaths = Bounded<RopePath, k_max_ropes>;

inline RopePaths paths_of(const Model& m, double swing_rad, double outward_rad) {
    RopePaths paths;
    for (const Rope& rope : m.ropes) paths.push_back(rope_path(m, rope, swing_rad, outward_rad));
    return paths;
}

inline RopeState rope_state(const Model& m, const Rope& rope, const RopePath& path, double load_N, const RopeAction& action) {
    RopeState s;
    s.loaded = true;
    s.path = path;
    const double load_side_N = load_N * action.tension_factor;
    const bool edge_adds = action.motion == Motion::Up || action.motion == Motion::UpThenEased;
    const bool pulley_adds = action.motion == Motion::Up || action.motion == Motion::DownThenTaken;
    s.head_side_N = s.haul_side_N = load_side_N;
    if (action.motion != Motion::Still) {
        const double edge = edge_factor(m.edge_friction, path.wrap_rad);
        s.head_side_N = edge_adds ? load_side_N * edge : load_side_N / edge;
        s.haul_side_N = pulley_adds ? s.head_side_N / rope.pulley_efficiency : s.head_side_N * rope.pulley_efficiency;
    }
    if (!rope.has_haul) s.haul_side_N = 0.0;
    return s;
}

inline void add_pulls(Pulls& pulls, const Rope& rope, const RopeState& s) {
    pulls.push_back({s.head_side_N, !s.path.clear_of_edge, s.path.clear_of_edge ? s.path.below_edge : s.path.edge_point_m});
    if (rope.has_haul) pulls.push_back({s.haul_side_N, true, rope.haul_m});
}

/// Appends a case in which `load_N(i)` says what rope i carries; 0 leaves it off the head.
template <class LoadN>
Case& add_case(Cases& cases, const Model& m, const RopePaths& paths, CaseId id, const RopeAction& action, LoadN load_N) {
    cases.push_back({});
    Case& c = cases[cases.size() - 1];
    c.id = id;
    for (std::size_t i = 0; i < m.ropes.size(); ++i) {
        const double carried_N = load_N(i);
        if (!(carried_N > 0.0)) {
            c.ropes.push_back({});
            continue;
        }
        c.ropes.push_back(rope_state(m, m.ropes[i], paths[i], carried_N, action));
        add_pulls(c.pulls, m.ropes[i], c.ropes[i]);
    }
    return c;
}

/// Every rope with its own share.
inline Case& add_plain_case(Cases& cases, const Model& m, const RopePaths& paths, CaseId id, const RopeAction& action) {
    return add_case(cases, m, paths, id, action, [&](std::size_t i) { return m.ropes[i].weight_N; });
}

inline void add_arrest(Cases& cases, const Model& m, const RopePaths& paths, CaseId id, const Actions& actions, Motion motion = Motion::Still) {
    add_plain_case(cases, m, paths, id, {.motion = motion, .tension_factor = actions.dynamic_factor}).arrest = true;
}

inline void add_swings(Cases& cases, const Model& m, const Actions& actions) {
    const double swing_rad = radians(actions.swing_deg);
    if (swing_rad > 0.0) {
        const RopePaths left = paths_of(m, -swing_rad, 0.0), right = paths_of(m, swing_rad, 0.0);
        add_arrest(cases, m, left, CaseId::ArrestSwingLeft, actions);
        add_arrest(cases, m, right, CaseId::ArrestSwingRight, actions);
        add_plain_case(cases, m, left, CaseId::SwingLeft, {});
        add_plain_case(cases, m, right, CaseId::SwingRight, {});
    }
    if (actions.outward_deg > 0.0) add_plain_case(cases, m, paths_of(m, 0.0, radians(actions.outward_deg)), CaseId::Outward, {});
}

/// One rope carries every share: its tension is their sum.
inline void add_one_rope(Cases& cases, const Model& m, const RopePaths& paths, std::size_t rope) {
    double all_N = 0.0;
    for (const Rope& r : m.ropes) all_N += r.weight_N;
    add_case(cases, m, paths, CaseId::OneRopeTakesAll, {}, [&](std::size_t i) { return i == rope ? all_N : 0.0; }).part = rope;
}

inline void add_haul_released(Cases& cases, const Model& m, const RopePaths& paths, std::size_t rope) {
    Case& c = add_case(cases, m, paths, CaseId::HaulReleased, {}, [&](std::size_t i) { return i == rope ? 0.0 : m.ropes[i].weight_N; });
    c.part = rope;
    c.starts_held = true;
}

}  // namespace detail

/// Every case of the plan, as rigged and holding first. Held with friction, each side of edge and pulley can be at either end
/// of what friction allows: raising, lowering, held high and held low are the four corners. Arrest comes without friction,
/// and with the rope running out.
inline Cases build_cases(const Model& m, const Actions& actions) {
    const detail::RopePaths paths = detail::paths_of(m, 0.0, 0.0);
    Cases cases;
    detail::add_case(cases, m, paths, CaseId::Rigged, {}, [](std::size_t) { return 0.0; });
    detail::add_plain_case(cases, m, paths, CaseId::Holding, {});
    detail::add_plain_case(cases, m, paths, CaseId::Raising, {.motion = Motion::Up});
    detail::add_plain_case(cases, m, paths, CaseId::Lowering, {.motion = Motion::Down});
    detail::add_plain_case(cases, m, paths, CaseId::HeldHigh, {.motion = Motion::UpThenEased});
    detail::add_plain_case(cases, m, paths, CaseId::HeldLow, {.motion = Motion::DownThenTaken});
    detail::add_arrest(cases, m, paths, CaseId::Arrest, actions);
    detail::add_arrest(cases, m, paths, CaseId::ArrestRunning, actions, Motion::Down);
    detail::add_swings(cases, m, actions);
    for (std::size_t i = 0; i < m.ropes.size(); ++i) {
        if (m.ropes.size() > 1) detail::add_one_rope(cases, m, paths, i);
        if (m.ropes[i].has_haul) detail::add_haul_released(cases, m, paths, i);
    }
    return cases;
}

/// Holding with guy `guy` gone.
inline Case guy_lost_case(const Case& holding, std::size_t guy) {
    Case c = holding;
    c.id = CaseId::GuyLost;
    c.part = guy;
    c.starts_held = true;
    c.arrest = true;  // an accident: what is left may be used up to the arrest factors
    return c;
}

/// The model without guy `guy`: it keeps its place in the list and carries nothing.
inline Model without_guy(Model m, std::size_t guy) {
    m.guys[guy].stiffness_N_m = 0.0;
    m.guys[guy].rest_length_m = 1e9;
    return m;
}

}  // namespace guywright
