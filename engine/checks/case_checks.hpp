#pragma once
#include "engine/base/tolerances.hpp"
#include "engine/cases/outcome.hpp"
#include "engine/checks/check.hpp"
#include "engine/checks/foot_hold.hpp"
#include "engine/checks/hobble_forces.hpp"
#include "engine/model/geometry.hpp"

namespace guywright {

/// Safety factors of one case: static, or arrest where the dynamic factor is already in the load.
struct Factors {
    double soft, metal, anchor;
};
/// The plan's own factors.
inline Factors factors_for(const Limits& l, bool arrest) {
    if (arrest) return {l.arrest_factor_soft, l.arrest_factor_metal, l.arrest_factor_anchor};
    return {l.factor_soft, l.factor_metal, l.factor_anchor};
}

/// Force at which the guy's cord breaks, kN: all parts, weakened by its knots.
inline double guy_strength_kN(const GuyPlan& g) { return g.strength_kN * g.parts * g.knot_efficiency; }

/// Axial force at which a pinned pole of round section bows out, kN: pi^2 E I / L^2 (Euler). Its diameter must be above 0.
inline double pole_buckling_kN(const LegPlan& leg) {
    const double outer_m = leg.pole_diameter_mm / 1000.0;
    const double inner_m = leg.pole_wall_mm > 0.0 ? outer_m - 2.0 * leg.pole_wall_mm / 1000.0 : 0.0;
    const double inertia_m4 = k_pi / 64.0 * (std::pow(outer_m, 4) - std::pow(inner_m, 4));
    return kilonewtons(k_pi * k_pi * leg.pole_E_GPa * 1e9 * inertia_m4 / (leg.length_m * leg.length_m));
}

/// Share of its stiffness that a head must keep, or it is said to stand barely: our own limit. It then leans on the next slack
/// guy, and what it leans on is a matter of millimetres.
inline constexpr double k_barely_standing = 0.1;

/// Least share of a foot's friction that must be free, or it is a caution: our own limit. Friction is an estimate that water lowers:
/// rubber on dry concrete 1.0, on wet 0.5 to 0.7 (OpenStax, University Physics 1, 6.2, table of friction coefficients, READ).
inline constexpr double k_friction_in_doubt = 1.0 / 3.0;

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

/// What the anchor of guy `guy` takes, newtons: all guys that hang on it pull the same way, from the head.
inline double anchor_force_N(const CaseView& v, std::size_t guy) {
    const int shared = v.model.guys[guy].shared_anchor;
    double sum_N = 0.0;
    for (std::size_t i = 0; i < v.model.guys.size(); ++i)
        if (i == guy || (shared >= 0 && v.model.guys[i].shared_anchor == shared)) sum_N += v.outcome.equilibrium.guy_tension_N[i];
    return sum_N;
}

inline void check_guys(CheckTable& table, const CaseView& v) {
    for (std::size_t i = 0; i < v.model.guys.size(); ++i) {
        const GuyPlan& g = v.plan.guys[i];
        const double tension_N = v.outcome.equilibrium.guy_tension_N[i];
        check_strength(table, v, CheckId::GuyStrength, i, tension_N, guy_strength_kN(g), v.factors.soft);
        check_strength(table, v, CheckId::AnchorStrength, i, anchor_force_N(v, i), g.anchor_strength_kN, v.factors.anchor);
        const double loose_m = v.outcome.equilibrium.guy_loose_m[i];
        const CheckStatus slack = loose_m > k_slack_m ? CheckStatus::Caution : CheckStatus::Pass;
        table.add(yes_no_check(CheckId::GuySlack, i, slack, loose_m * 1000.0, 0.0, v.case_index));
    }
}

inline void check_guy_over_force(CheckTable& table, const CaseView& v, std::size_t guy, double angle_rad) {
    Check c = limit_check(CheckId::GuyAngleOverForce, guy, degrees(angle_rad), degrees(v.outcome.applied_force_angle_rad), v.case_index);
    if (c.value <= c.limit) c.status = CheckStatus::Fail;
    table.add(c);
}

/// One leg: every guy stands farther off it than the force. Two legs: the best guy of each side does.
inline void check_guys_over_force(CheckTable& table, const CaseView& v) {
    if (v.model.legs.size() == 1)
        for (std::size_t i = 0; i < v.model.guys.size(); ++i) check_guy_over_force(table, v, i, v.outcome.guy_angle_rad[i]);
    if (v.model.legs.size() != 2) return;
    for (std::size_t side = 0; side < 2; ++side) {
        const SideGuy best = best_guy_on_side(v.model, v.outcome.equilibrium.head_m, side);
        if (best.exists) check_guy_over_force(table, v, best.guy, best.angle_rad);
    }
}

inline void check_ropes(CheckTable& table, const CaseView& v) {
    for (std::size_t i = 0; i < v.model.ropes.size(); ++i) {
        const RopePlan& r = v.plan.ropes[i];
        const RopeState& state = v.outcome.setup.ropes[i];
        const double rope_kN = kilonewtons(std::max(state.head_side_N, state.haul_side_N));
        if (r.strength_kN) table.add(limit_check(CheckId::RopeStrength, i, rope_kN, *r.strength_kN * r.knot_efficiency / v.factors.soft, v.case_index));
        else table.add(yes_no_check(CheckId::RopeStrength, i, CheckStatus::Caution, rope_kN, 0.0, v.case_index));
        check_strength(table, v, CheckId::PulleyStrength, i, v.outcome.pulley_N[i], r.pulley_strength_kN, v.factors.metal);
        check_strength(table, v, CheckId::ConnectorStrength, i, v.outcome.pulley_N[i], r.connector_strength_kN, v.factors.metal);
    }
}

/// The tie with least to spare.
inline Check worst_tie_check(const CaseView& v, std::size_t i, const FootTies& ties) {
    const FootPlan& foot = v.plan.feet[i];
    Check worst = limit_check(CheckId::FootTies, i, 0.0, foot.ties[0].strength_kN / v.factors.soft, v.case_index);
    for (std::size_t t = 0; t < foot.ties.size(); ++t) {
        const Check tie = limit_check(CheckId::FootTies, i, kilonewtons(ties.tension_N[t]), foot.ties[t].strength_kN / v.factors.soft, v.case_index);
        if (tie.margin < worst.margin) worst = tie;
    }
    return worst;
}

/// What holds one foot against `push_N` (along the ground).
struct FootHold {
    Check speaks;  ///< of friction alone, a pin, ties: the one with most to spare
    bool by_ties = false;
};

inline FootHold hold_foot(const CaseView& v, std::size_t i, Vec3 push_N, double friction_N) {
    const FootPlan& foot = v.plan.feet[i];
    const double size_N = glm::length(push_N);
    Check best = limit_check(CheckId::FootFriction, i, kilonewtons(size_N), kilonewtons(friction_N), v.case_index);
    if (foot.pin_shear_kN > 0.0) {
        const double rest_kN = kilonewtons(std::max(0.0, size_N - friction_N));
        const Check pin = limit_check(CheckId::FootPin, i, rest_kN, foot.pin_shear_kN / v.factors.metal, v.case_index);
        if (pin.margin > best.margin || best.status == CheckStatus::Fail) best = pin;
    }
    const FootTies ties = smallest_foot_ties(push_N, friction_N, v.model.legs[i].foot_ties);
    if (foot.ties.empty() || !ties.holds) return {best};
    const Check tie = worst_tie_check(v, i, ties);
    return tie.margin > best.margin || best.status == CheckStatus::Fail ? FootHold{tie, true} : FootHold{best};
}

/// What friction has to hold beside the ties, however strong they are: without this row nothing would show that a push is about to
/// leave the sector they pull in.
inline Check friction_beside_ties(const CaseView& v, std::size_t i, Vec3 push_N, double friction_N) {
    const double left_N = left_to_friction_N(push_N, v.model.legs[i].foot_ties);
    Check c = limit_check(CheckId::FootFriction, i, kilonewtons(left_N), kilonewtons(friction_N), v.case_index);
    if (left_N == 0.0) c.margin = 1.0;  // also on a foot that friction does not hold at all
    return c;
}

/// All feet as the ground sees them, each along the slope that it stands on.
struct FeetOnGround {
    Bounded<Vec3, k_max_legs> push_N, foot_m;
    Bounded<double, k_max_legs> friction_N;
};

inline FeetOnGround feet_on_ground(const CaseView& v) {
    FeetOnGround feet;
    for (std::size_t i = 0; i < v.model.legs.size(); ++i) {
        const Leg& leg = v.model.legs[i];
        const Vec3 reaction_N = seen_from_ground(v.outcome.foot_reaction_N[i], leg.ground_slope_rad);
        feet.push_N.push_back({-reaction_N.x, -reaction_N.y, 0.0});
        feet.friction_N.push_back(std::max(0.0, reaction_N.z) * v.plan.feet[i].friction);
        feet.foot_m.push_back(seen_from_ground(leg.foot_m, leg.ground_slope_rad));
    }
    return feet;
}

/// Takes from every foot's push what the hobbles, which lie on the ground, hold of it.
inline void check_hobbles(CheckTable& table, const CaseView& v, FeetOnGround& feet) {
    const std::vector<Hobble>& hobbles = v.plan.frame.hobbles;
    if (hobbles.empty()) return;
    const HobbleForces shared = share_by_hobbles(feet.push_N, feet.friction_N, feet.foot_m, hobbles);
    feet.push_N = shared.push_N;
    for (std::size_t i = 0; i < hobbles.size(); ++i)
        check_strength(table, v, CheckId::HobbleStrength, i, shared.tension_N[i], hobbles[i].strength_kN, v.factors.soft);
}

/// Nobody measures friction: a foot that has little of it to spare may slide on the same rock when wet.
inline Check doubt_friction(Check c) {
    if (c.id == CheckId::FootFriction && c.status == CheckStatus::Pass && c.margin < k_friction_in_doubt) c.status = CheckStatus::Caution;
    return c;
}

/// What the feet push along the ground and what friction gives; the hobbles take theirs first.
inline void check_feet(CheckTable& table, const CaseView& v) {
    const FeetOnGround unhobbled = feet_on_ground(v);
    FeetOnGround feet = unhobbled;
    check_hobbles(table, v, feet);
    const std::vector<Hobble>& hobbles = v.plan.frame.hobbles;
    const double spare = hobbles.empty() ? 1.0 : hobbled_friction_spare(unhobbled.push_N, unhobbled.friction_N, unhobbled.foot_m, hobbles);
    for (std::size_t i = 0; i < v.model.legs.size(); ++i) {
        if (v.outcome.equilibrium.leg_gap_m[i] > k_slack_m) continue;
        Vec3 push_N = feet.push_N[i];
        const bool hobbled = push_N != unhobbled.push_N[i];
        if (glm::length(push_N) < 1e-9 * glm::length(v.outcome.foot_reaction_N[i])) push_N = Vec3{0.0};  // taken up to the last digit
        FootHold hold = hold_foot(v, i, push_N, feet.friction_N[i]);
        // a hobble pulls just as much as friction lacks: what is to spare is then in all feet together
        const bool by_friction = hold.speaks.id == CheckId::FootFriction && hold.speaks.status == CheckStatus::Pass;
        if (hobbled && by_friction) hold.speaks.margin = std::clamp(spare, 0.0, 1.0);
        table.add(doubt_friction(hold.speaks));
        if (hold.by_ties) table.add(doubt_friction(friction_beside_ties(v, i, push_N, feet.friction_N[i])));
    }
}

/// Whether foot i lifts. Its margin is what the leg still presses, as a share of its part of all that pulls at the head: it falls
/// to nothing as the foot comes off the ground, so that the search of the box of errors sees it coming.
inline Check lift_check(const CaseView& v, std::size_t i) {
    const Equilibrium& e = v.outcome.equilibrium;
    const double gap_m = e.leg_gap_m[i];
    const CheckStatus lifts = gap_m > k_slack_m ? CheckStatus::Fail : CheckStatus::Pass;
    Check c = yes_no_check(CheckId::FootLifts, i, lifts, gap_m, 0.0, v.case_index);
    if (v.model.legs[i].held_down) return c;
    double pull_N = glm::length(v.outcome.resultant_N) + v.model.head_weight_N;
    for (const double tension_N : e.guy_tension_N) pull_N += tension_N;
    const double part_N = pull_N / static_cast<double>(v.model.legs.size());
    c.has_margin = part_N > 0.0;
    c.margin = lifts == CheckStatus::Fail ? -gap_m / v.model.legs[i].rest_length_m : std::min(1.0, e.leg_compression_N[i] / part_N);
    return c;
}

/// What holds a foot down is entered as a fact without a strength, so that nothing can judge it: a caution, with the pull it takes.
inline void check_held_down(CheckTable& table, const CaseView& v, std::size_t i) {
    if (!v.model.legs[i].held_down) return;
    const double up_kN = kilonewtons(std::max(0.0, -v.outcome.foot_reaction_N[i].z));
    table.add(yes_no_check(CheckId::FootHeldDown, i, up_kN > 0.0 ? CheckStatus::Caution : CheckStatus::Pass, up_kN, 0.0, v.case_index));
}

inline void check_legs(CheckTable& table, const CaseView& v) {
    for (std::size_t i = 0; i < v.model.legs.size(); ++i) {
        const double compression_N = v.outcome.equilibrium.leg_compression_N[i];
        const LegPlan& leg = v.plan.frame.legs[i];
        check_strength(table, v, CheckId::LegStrength, i, std::abs(compression_N), leg.rating_kN, v.factors.metal);
        if (leg.pole_diameter_mm > 0.0) check_strength(table, v, CheckId::LegBuckling, i, std::max(0.0, compression_N), pole_buckling_kN(leg), v.factors.metal);
        table.add(lift_check(v, i));
        check_held_down(table, v, i);
    }
}

/// Stiffness left, as a share of what it would be without the leg's own push sideways.
inline void check_standing(CheckTable& table, const CaseView& v) {
    const Equilibrium& e = v.outcome.equilibrium;
    double push_N_m = 0.0;
    for (std::size_t i = 0; i < v.model.legs.size(); ++i) push_N_m = std::max(push_N_m, e.leg_compression_N[i] / v.model.legs[i].rest_length_m);
    Check c{CheckId::Standing, 0, v.outcome.stable ? CheckStatus::Pass : CheckStatus::Fail, kilonewtons(e.min_stiffness_N_m), 0.0, true, -1.0, v.case_index};
    if (v.outcome.stable) {
        c.margin = e.min_stiffness_N_m / (e.min_stiffness_N_m + push_N_m);
        if (c.margin < k_barely_standing) c.status = CheckStatus::Caution;
    }
    table.add(c);
}

inline void check_head(CheckTable& table, const CaseView& v) {
    const Limits& l = v.plan.limits;
    const double shift_percent = 100.0 * v.outcome.head_shift_m / v.model.shortest_leg_m;
    table.add(limit_check(CheckId::HeadShift, 0, shift_percent, l.head_shift_max_percent, l.head_shift_good_percent, v.case_index));
}

inline void check_force_angle(CheckTable& table, const CaseView& v) {
    const double angle_deg = degrees(v.outcome.applied_force_angle_rad), good_deg = v.plan.limits.applied_force_angle_good_deg;
    const CheckStatus status = angle_deg <= good_deg ? CheckStatus::Pass : CheckStatus::Caution;
    table.add(yes_no_check(CheckId::AppliedForceAngle, 0, status, angle_deg, good_deg, v.case_index));
}

/// Two legs: a force outside them lifts a foot, unless it is held down. Three: a guy may hold it, and the equilibrium says so.
inline void check_force_inside(CheckTable& table, const CaseView& v) {
    if (v.model.legs.size() == 1) return;
    const double inside_deg = degrees(v.outcome.inside_legs_rad);
    const bool held = std::all_of(v.model.legs.begin(), v.model.legs.end(), [](const Leg& leg) { return leg.held_down; });
    const CheckStatus outside = v.model.legs.size() == 2 && !held ? CheckStatus::Fail : CheckStatus::Caution;
    table.add(yes_no_check(CheckId::ForceInside, 0, inside_deg >= 0.0 ? CheckStatus::Pass : outside, inside_deg, 0.0, v.case_index));
}

}  // namespace detail

/// Adds the rows of one case that rest on forces. Where there is no answer, that is the only thing said: nothing is judged
/// on numbers that are not an equilibrium.
inline void check_forces(CheckTable& table, const Plan& plan, const Model& m, const Outcome& o, int case_index) {
    const SolveStatus status = o.equilibrium.status;
    const bool answered = status == SolveStatus::Solved || status == SolveStatus::Collapsed;
    table.add(yes_no_check(CheckId::Solved, 0, answered ? CheckStatus::Pass : CheckStatus::Fail, 0.0, 0.0, case_index));
    if (!answered) return;
    if (status == SolveStatus::Collapsed) return table.add(fallen_check(case_index));
    const detail::CaseView v{plan, m, o, factors_for(plan.limits, o.setup.arrest), case_index};
    detail::check_standing(table, v);
    detail::check_head(table, v);
    detail::check_guys(table, v);
    detail::check_legs(table, v);
    detail::check_feet(table, v);
    detail::check_ropes(table, v);
}

/// Adds the rows of one case that are the trade's rules of angle; needs read_angles().
inline void check_angles(CheckTable& table, const Plan& plan, const Model& m, const Outcome& o, int case_index) {
    if (o.equilibrium.status != SolveStatus::Solved || !(glm::length(o.resultant_N) > 0.0)) return;
    const detail::CaseView v{plan, m, o, factors_for(plan.limits, o.setup.arrest), case_index};
    detail::check_guys_over_force(table, v);
    detail::check_force_angle(table, v);
    detail::check_force_inside(table, v);
}

}  // namespace guywright
