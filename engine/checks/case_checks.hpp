#pragma once
#include "engine/cases/outcome.hpp"
#include "engine/checks/check.hpp"
#include "engine/checks/foot_hold.hpp"

namespace guywright {

/// Safety factors of one case: static, or arrest where the dynamic factor is already in the load.
struct Factors {
    double soft, metal, anchor;
};
inline Factors factors_for(const Limits& l, bool arrest) {
    if (arrest) return {l.arrest_factor_soft, l.arrest_factor_metal, l.arrest_factor_anchor};
    return {l.factor_soft, l.factor_metal, l.factor_anchor};
}

/// Force at which the guy's cord breaks, kN: all parts, weakened by its knots.
inline double guy_strength_kN(const GuyPlan& g) { return g.strength_kN * g.parts * g.knot_efficiency; }

namespace detail {

/// Everything the checks of one case look at.
struct CaseView {
    const Plan& plan;
    const Model& model;
    const Outcome& outcome;
    Factors factors;
    int case_index;
};

inline void check_strength(CheckTable& table, const CaseView& v, CheckId id, std::size_t i, double force_N, double strength_kN, double factor) {
    table.add(limit_check(id, i, kilonewtons(force_N), strength_kN / factor, v.case_index));
}

inline void check_guys(CheckTable& table, const CaseView& v) {
    const double over_deg = degrees(v.outcome.applied_force_angle_rad);
    const bool loaded = glm::length(v.outcome.resultant_N) > 0.0;
    for (std::size_t i = 0; i < v.model.guys.size(); ++i) {
        const GuyPlan& g = v.plan.guys[i];
        const double tension_N = v.outcome.equilibrium.guy_tension_N[i];
        check_strength(table, v, CheckId::GuyStrength, i, tension_N, guy_strength_kN(g), v.factors.soft);
        check_strength(table, v, CheckId::AnchorStrength, i, tension_N, g.anchor_strength_kN, v.factors.anchor);
        const double loose_m = v.outcome.equilibrium.guy_loose_m[i];
        const CheckStatus slack = loose_m > k_slack_m ? CheckStatus::Caution : CheckStatus::Pass;
        table.add(yes_no_check(CheckId::GuySlack, i, slack, loose_m * 1000.0, 0.0, v.case_index));
        if (!loaded) continue;
        Check c = limit_check(CheckId::GuyAngleOverForce, i, degrees(v.outcome.guy_angle_rad[i]), over_deg, v.case_index);
        if (c.value <= c.limit) c.status = CheckStatus::Fail;
        table.add(c);
    }
}

inline void check_ropes(CheckTable& table, const CaseView& v) {
    for (std::size_t i = 0; i < v.model.ropes.size(); ++i) {
        const RopePlan& r = v.plan.ropes[i];
        check_strength(table, v, CheckId::PulleyStrength, i, v.outcome.pulley_N[i], r.pulley_strength_kN, v.factors.metal);
        check_strength(table, v, CheckId::ConnectorStrength, i, v.outcome.pulley_N[i], r.connector_strength_kN, v.factors.metal);
    }
}

/// Of the ways to hold a foot - friction alone, a pin, ties - the one with most to spare speaks.
inline Check foot_check(const CaseView& v, std::size_t i) {
    const FootPlan& foot = v.plan.feet[i];
    const Vec3 reaction_N = v.outcome.foot_reaction_N[i];
    const Vec3 push_N{-reaction_N.x, -reaction_N.y, 0.0};
    const double friction_N = std::max(0.0, reaction_N.z) * foot.friction;
    const double size_N = glm::length(push_N);
    Check best = limit_check(CheckId::FootFriction, i, kilonewtons(size_N), kilonewtons(friction_N), v.case_index);
    if (foot.pin_shear_kN > 0.0) {
        const double rest_kN = kilonewtons(std::max(0.0, size_N - friction_N));
        const Check pin = limit_check(CheckId::FootPin, i, rest_kN, foot.pin_shear_kN / v.factors.metal, v.case_index);
        if (pin.margin > best.margin || best.status == CheckStatus::Fail) best = pin;
    }
    const FootTies ties = smallest_foot_ties(push_N, friction_N, foot);
    if (foot.ties.empty() || !ties.holds) return best;
    Check worst = limit_check(CheckId::FootTies, i, 0.0, foot.ties[0].strength_kN / v.factors.soft, v.case_index);
    for (std::size_t t = 0; t < foot.ties.size(); ++t) {
        const Check tie = limit_check(CheckId::FootTies, i, kilonewtons(ties.tension_N[t]), foot.ties[t].strength_kN / v.factors.soft, v.case_index);
        if (tie.margin < worst.margin) worst = tie;
    }
    return worst.margin > best.margin || best.status == CheckStatus::Fail ? worst : best;
}

inline void check_legs(CheckTable& table, const CaseView& v) {
    for (std::size_t i = 0; i < v.model.legs.size(); ++i) {
        const double compression_N = v.outcome.equilibrium.leg_compression_N[i];
        check_strength(table, v, CheckId::LegStrength, i, std::abs(compression_N), v.plan.frame.legs[i].rating_kN, v.factors.metal);
        const double gap_m = v.outcome.equilibrium.leg_gap_m[i];
        const CheckStatus lifts = gap_m > k_slack_m ? CheckStatus::Fail : CheckStatus::Pass;
        table.add(yes_no_check(CheckId::FootLifts, i, lifts, gap_m, 0.0, v.case_index));
        if (lifts == CheckStatus::Pass) table.add(foot_check(v, i));
    }
}

/// Stiffness left, as a share of what it would be without the leg's own push sideways.
inline void check_standing(CheckTable& table, const CaseView& v) {
    const Equilibrium& e = v.outcome.equilibrium;
    double push_N_m = 0.0;
    for (std::size_t i = 0; i < v.model.legs.size(); ++i)
        push_N_m = std::max(push_N_m, e.leg_compression_N[i] / v.model.legs[i].rest_length_m);
    Check c{CheckId::Standing, 0, v.outcome.stable ? CheckStatus::Pass : CheckStatus::Fail,
            kilonewtons(e.min_stiffness_N_m), 0.0, true, -1.0, v.case_index};
    if (v.outcome.stable) c.margin = e.min_stiffness_N_m / (e.min_stiffness_N_m + push_N_m);
    table.add(c);
}

inline void check_head(CheckTable& table, const CaseView& v) {
    const Limits& l = v.plan.limits;
    const double shift_percent = 100.0 * v.outcome.head_shift_m / v.model.shortest_leg_m;
    table.add(limit_check(CheckId::HeadShift, 0, shift_percent, l.head_shift_max_percent, l.head_shift_good_percent, v.case_index));
    if (!(glm::length(v.outcome.resultant_N) > 0.0)) return;
    const double angle_deg = degrees(v.outcome.applied_force_angle_rad);
    const bool good = angle_deg <= l.applied_force_angle_good_deg;
    table.add(yes_no_check(CheckId::AppliedForceAngle, 0, good ? CheckStatus::Pass : CheckStatus::Caution, angle_deg,
                           l.applied_force_angle_good_deg, v.case_index));
}

}  // namespace detail

/// Adds every row of one case. Where there is no answer, that is the only thing said: nothing is judged on numbers that
/// are not an equilibrium.
inline void check_case(CheckTable& table, const Plan& plan, const Model& m, const Outcome& o, int case_index) {
    const SolveStatus status = o.equilibrium.status;
    const bool answered = status == SolveStatus::Solved || status == SolveStatus::Collapsed;
    table.add(yes_no_check(CheckId::Solved, 0, answered ? CheckStatus::Pass : CheckStatus::Fail, 0.0, 0.0, case_index));
    if (!answered) return;
    if (status == SolveStatus::Collapsed) {
        table.add({CheckId::Standing, 0, CheckStatus::Fail, 0.0, 0.0, true, -1.0, case_index});
        return;
    }
    const detail::CaseView v{plan, m, o, factors_for(plan.limits, o.setup.arrest), case_index};
    detail::check_standing(table, v);
    detail::check_head(table, v);
    detail::check_guys(table, v);
    detail::check_legs(table, v);
    detail::check_ropes(table, v);
}

}  // namespace guywright
