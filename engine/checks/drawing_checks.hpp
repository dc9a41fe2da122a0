#pragma once
#include "engine/base/tolerances.hpp"
#include "engine/cases/outcome.hpp"
#include "engine/checks/check.hpp"
#include "engine/model/geometry.hpp"

namespace guywright {

// The trade's rules that need no forces: judged on the rig as measured (a rule of thumb has its margin in it).

/// Angles this close to a limit are on it, degrees.
inline constexpr double k_angle_rounding_deg = 1e-9;

using Bearings = Bounded<double, k_max_guys>;

/// Largest gap between neighbours all round, degrees in [0, 360); 360 with one or none.
inline double largest_gap_deg(const Bearings& bearings_deg) {
    double largest_deg = bearings_deg.empty() ? 360.0 : 0.0;
    for (std::size_t i = 0; i < bearings_deg.size(); ++i) {
        double next_deg = 360.0;  // clockwise to the nearest other; of equal ones only the last has a gap before it
        for (std::size_t j = 0; j < bearings_deg.size(); ++j) {
            const double apart_deg = bearings_deg[j] - bearings_deg[i];
            const bool ahead = apart_deg > 0.0 || (apart_deg == 0.0 && j > i);
            if (j != i) next_deg = std::min(next_deg, ahead ? apart_deg : 360.0 + apart_deg);
        }
        largest_deg = std::max(largest_deg, next_deg);
    }
    return largest_deg;
}

/// Largest gap between neighbouring guy bearings seen from the plumb point, degrees; 360 with one guy or none. An anchor
/// straight under the head lies on no bearing.
inline double largest_bearing_gap_deg(const Model& m) {
    Bearings bearings_deg;
    for (const Guy& g : m.guys) {
        const Vec3 offset_m = g.anchor_m - m.drawn_head_m;
        if (std::hypot(offset_m.x, offset_m.y) > k_same_point_m) bearings_deg.push_back(bearing_deg_of(offset_m));
    }
    return largest_gap_deg(bearings_deg);
}

/// True where the head is so near the edge, or past it, that it needs a guy anchored ahead of it, and has none. Three legs need none.
inline bool lacks_front_tie(const Model& m, const Limits& limits) {
    if (m.legs.size() == 3 || -m.drawn_head_m.x >= limits.head_to_edge_m) return false;
    return std::none_of(m.guys.begin(), m.guys.end(), [&](const Guy& g) { return g.anchor_m.x > m.drawn_head_m.x + k_same_point_m; });
}

/// True where whoever works at the foot must be tied in: near the edge or past it.
inline bool is_in_edge_zone(Vec3 foot_m, const Limits& limits) { return -foot_m.x < limits.edge_zone_m; }

/// True where there is nothing under the point: beyond the edge, short of where ground begins again, off the face.
inline bool hangs_in_air(Vec3 at_m, const Edge& edge) {
    if (at_m.x <= 0.0 || (edge.opening_m && at_m.x >= *edge.opening_m)) return false;
    return height_above_face_m(at_m, edge.face_deg) > k_rough_rock_m;
}

namespace detail {

/// One leg: every guy holds it, so every guy needs its angle. Two legs: a guy along their plane steadies nothing across it,
/// which is worth a caution; whether each side has one that does is asked by check_sides. Three legs stand without.
inline void check_guy_angles(CheckTable& table, const Model& m, const Limits& limits) {
    if (m.legs.size() == 3) return;
    for (std::size_t i = 0; i < m.guys.size(); ++i) {
        const double angle_deg = degrees(angle_off_legs_rad(m, m.drawn_head_m, m.guys[i].anchor_m - m.drawn_head_m));
        Check c = limit_check(CheckId::GuyAngle, i, angle_deg + k_angle_rounding_deg, limits.guy_angle_min_deg, limits.guy_angle_good_deg, k_no_case);
        if (m.legs.size() == 2) c = yes_no_check(c.id, i, std::min(c.status, CheckStatus::Caution), c.value, c.limit, k_no_case);
        if (m.legs.size() == 2 && angle_deg < limits.guy_angle_good_deg) c.status = CheckStatus::Caution;
        table.add(c);
    }
}

/// Two legs: on each side of their plane a guy at the least angle.
inline void check_sides(CheckTable& table, const Model& m, const Limits& limits) {
    if (m.legs.size() != 2) return;
    for (std::size_t side = 0; side < 2; ++side) {
        const double best_deg = degrees(best_guy_on_side(m, m.drawn_head_m, side).angle_rad);
        table.add(limit_check(CheckId::SideTie, side, best_deg + k_angle_rounding_deg, limits.guy_angle_min_deg, k_no_case));
    }
}

inline void check_bearing_gap(CheckTable& table, const Model& m, const Limits& limits) {
    if (m.legs.size() != 1) return;
    const double gap_deg = largest_bearing_gap_deg(m);
    Check c = limit_check(CheckId::BearingGap, 0, gap_deg, limits.bearing_gap_max_deg, limits.bearing_gap_good_deg, k_no_case);
    if (gap_deg >= limits.bearing_gap_max_deg - k_angle_rounding_deg) c.status = CheckStatus::Fail;
    table.add(c);
}

inline void check_front_tie(CheckTable& table, const Model& m, const Limits& limits) {
    if (m.legs.size() == 3) return;
    const CheckStatus status = lacks_front_tie(m, limits) ? CheckStatus::Fail : CheckStatus::Pass;
    table.add(yes_no_check(CheckId::FrontTie, 0, status, -m.drawn_head_m.x, limits.head_to_edge_m, k_no_case));
}

inline void check_hanging(CheckTable& table, CheckId id, std::size_t i, Vec3 at_m, const Edge& edge) {
    const CheckStatus status = hangs_in_air(at_m, edge) ? CheckStatus::Fail : CheckStatus::Pass;
    table.add(yes_no_check(id, i, status, at_m.x, 0.0, k_no_case));
}

struct LimitRule {
    std::string_view key;
    double Limits::*value;
    bool lower_is_looser;
};

}  // namespace detail

/// Which way each limit may be moved without loosening it.
inline constexpr std::array<detail::LimitRule, 15> k_limit_rules{{
    {"guy_angle_min_deg", &Limits::guy_angle_min_deg, true},
    {"guy_angle_good_deg", &Limits::guy_angle_good_deg, true},
    {"bearing_gap_max_deg", &Limits::bearing_gap_max_deg, false},
    {"bearing_gap_good_deg", &Limits::bearing_gap_good_deg, false},
    {"applied_force_angle_good_deg", &Limits::applied_force_angle_good_deg, false},
    {"head_to_edge_m", &Limits::head_to_edge_m, true},
    {"edge_zone_m", &Limits::edge_zone_m, true},
    {"head_shift_good_percent", &Limits::head_shift_good_percent, false},
    {"head_shift_max_percent", &Limits::head_shift_max_percent, false},
    {"factor_soft", &Limits::factor_soft, true},
    {"factor_metal", &Limits::factor_metal, true},
    {"factor_anchor", &Limits::factor_anchor, true},
    {"arrest_factor_soft", &Limits::arrest_factor_soft, true},
    {"arrest_factor_metal", &Limits::arrest_factor_metal, true},
    {"arrest_factor_anchor", &Limits::arrest_factor_anchor, true},
}};
static_assert(k_limit_rules.size() <= k_most_subjects);

namespace detail {

inline void check_limits(CheckTable& table, const Limits& limits) {
    const Limits usual;
    for (std::size_t i = 0; i < k_limit_rules.size(); ++i) {
        const LimitRule& rule = k_limit_rules[i];
        const double here = limits.*rule.value, common = usual.*rule.value;
        if (rule.lower_is_looser ? here < common : here > common)
            table.add(yes_no_check(CheckId::LimitLoosened, i, CheckStatus::Caution, here, common, k_no_case));
    }
}

/// What the plan is told not to look at: a GO that leaves it out must say so.
inline void check_left_out(CheckTable& table, const Actions& a, const Tolerances& t) {
    const auto caution_at = [&](CheckId id, double value, double nothing) {
        if (!(value > nothing)) table.add(yes_no_check(id, 0, CheckStatus::Caution, value, nothing, k_no_case));
    };
    caution_at(CheckId::ArrestLeftOut, a.dynamic_factor, 1.0);
    caution_at(CheckId::SwingLeftOut, a.swing_deg, 0.0);
    caution_at(CheckId::ErrorLeftOut, std::min({t.bearing_deg, t.inclination_deg, t.lean_deg, t.face_deg, t.distance_m, t.load_percent, t.pretension_percent}),
               0.0);
}

}  // namespace detail

/// Adds the rows that depend on the drawing alone.
inline void check_drawing(CheckTable& table, const Plan& plan, const Model& m) {
    detail::check_guy_angles(table, m, plan.limits);
    detail::check_sides(table, m, plan.limits);
    detail::check_bearing_gap(table, m, plan.limits);
    detail::check_front_tie(table, m, plan.limits);
    for (std::size_t i = 0; i < m.guys.size(); ++i) detail::check_hanging(table, CheckId::AnchorHangs, i, m.guys[i].anchor_m, plan.edge);
    for (std::size_t i = 0; i < m.legs.size(); ++i) {
        const Vec3 foot_m = m.legs[i].foot_m;
        detail::check_hanging(table, CheckId::FootHangs, i, foot_m, plan.edge);
        table.add(yes_no_check(CheckId::EdgeZone, i, is_in_edge_zone(foot_m, plan.limits) ? CheckStatus::Caution : CheckStatus::Pass, -foot_m.x,
                               plan.limits.edge_zone_m, k_no_case));
    }
    detail::check_limits(table, plan.limits);
    detail::check_left_out(table, plan.actions, plan.tolerances);
}

}  // namespace guywright
