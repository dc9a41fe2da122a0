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

inline RopeState rope_state(const Model& m, const Rope& rope, double load_N, const RopeAction& action) {
    RopeState s;
    s.loaded = true;
    s.path = rope_path(m, rope, action.swing_rad, action.outward_rad);
    const double edge = edge_factor(m.edge_friction, s.path.wrap_rad);
    const double load_side_N = load_N * action.tension_factor;
    switch (action.motion) {
        case Motion::Still: s.head_side_N = s.haul_side_N = load_side_N; break;
        case Motion::Up:
            s.head_side_N = load_side_N * edge;
            s.haul_side_N = s.head_side_N / rope.pulley_efficiency;
            break;
        case Motion::Down:
            s.head_side_N = load_side_N / edge;
            s.haul_side_N = s.head_side_N * rope.pulley_efficiency;
            break;
    }
    if (!rope.has_haul) s.haul_side_N = 0.0;
    return s;
}

inline void add_pulls(Pulls& pulls, const Rope& rope, const RopeState& s) {
    pulls.push_back({s.head_side_N, !s.path.clear_of_edge, s.path.clear_of_edge ? s.path.below_edge : s.path.edge_point_m});
    if (rope.has_haul) pulls.push_back({s.haul_side_N, true, rope.haul_m});
}

/// All ropes under the same action; `share_N(i)` says what rope i carries, 0 leaves it off the head.
template <class ShareN>
Case make_case(const Model& m, CaseId id, const RopeAction& action, ShareN share_N) {
    Case c;
    c.id = id;
    for (std::size_t i = 0; i < m.ropes.size(); ++i) {
        const double load_N = share_N(i);
        if (!(load_N > 0.0)) {
            c.ropes.push_back({});
            continue;
        }
        c.ropes.push_back(rope_state(m, m.ropes[i], load_N, action));
        add_pulls(c.pulls, m.ropes[i], c.ropes[i]);
    }
    return c;
}

inline Case plain_case(const Model& m, CaseId id, const RopeAction& action) {
    return make_case(m, id, action, [&](std::size_t i) { return m.ropes[i].weight_N; });
}

/// One rope carries every share. The load is the same one, so its tension is the sum of the shares.
inline Case one_rope_case(const Model& m, std::size_t rope) {
    double all_N = 0.0;
    for (const Rope& r : m.ropes) all_N += r.weight_N;
    Case c = make_case(m, CaseId::OneRopeTakesAll, {}, [&](std::size_t i) { return i == rope ? all_N : 0.0; });
    c.rope = rope;
    return c;
}

inline Case haul_released_case(const Model& m, std::size_t rope) {
    Case c = make_case(m, CaseId::HaulReleased, {}, [&](std::size_t i) { return i == rope ? 0.0 : m.ropes[i].weight_N; });
    c.rope = rope;
    c.starts_held = true;
    return c;
}

inline Case arrest_case(const Model& m, const Actions& actions) {
    Case c = plain_case(m, CaseId::Arrest, {.tension_factor = actions.dynamic_factor});
    c.arrest = true;
    return c;
}

inline void add_swings(Cases& cases, const Model& m, const Actions& actions) {
    const double swing_rad = radians(actions.swing_deg);
    if (swing_rad > 0.0) {
        cases.push_back(plain_case(m, CaseId::SwingLeft, {.swing_rad = -swing_rad}));
        cases.push_back(plain_case(m, CaseId::SwingRight, {.swing_rad = swing_rad}));
    }
    if (actions.outward_deg > 0.0)
        cases.push_back(plain_case(m, CaseId::Outward, {.outward_rad = radians(actions.outward_deg)}));
}

}  // namespace detail

/// Every case of the plan, as rigged and holding first. Holding with friction lies between raising and lowering, which are
/// both there. Arrest takes no relief from friction.
inline Cases build_cases(const Model& m, const Actions& actions) {
    Cases cases;
    cases.push_back(detail::make_case(m, CaseId::Rigged, {}, [](std::size_t) { return 0.0; }));
    cases.push_back(detail::plain_case(m, CaseId::Holding, {}));
    cases.push_back(detail::plain_case(m, CaseId::Raising, {.motion = Motion::Up}));
    cases.push_back(detail::plain_case(m, CaseId::Lowering, {.motion = Motion::Down}));
    cases.push_back(detail::arrest_case(m, actions));
    detail::add_swings(cases, m, actions);
    for (std::size_t i = 0; i < m.ropes.size(); ++i) {
        if (m.ropes.size() > 1) cases.push_back(detail::one_rope_case(m, i));
        if (m.ropes[i].has_haul) cases.push_back(detail::haul_released_case(m, i));
    }
    return cases;
}

}  // namespace guywright
