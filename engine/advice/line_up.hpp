#pragma once
#include "engine/advice/lean.hpp"
#include "engine/plan/find_faults.hpp"
#include "engine/verdict/evaluate.hpp"

namespace guywright {

/// A leg nearer than this to the force stands along it: nobody sets a lean finer (an angle gauge at its best,
/// calibrated; common practice, no source).
inline constexpr double k_in_line_rad = radians(1.0);

enum class LineUpStatus : unsigned char {
    NotComputed,  ///< the plan has no model, or no place for the head was found that is any better
    ThreeLegs,    ///< a tripod's head cannot move
    InLine,       ///< the leg stands along the force already
    LinedUp,      ///< all the way
    Stopped       ///< as far along the way as the limits let it: `stopped_by`, or else the range of the lean
};

/// Where the head must go so that the holding resultant falls along the leg (into the plane of two legs).
struct LineUp {
    LineUpStatus status = LineUpStatus::NotComputed;
    Vec3 head_m{};  ///< as then drawn
    Lean before, after;
    bool stands_before = false;     ///< the holding case; else angle_before_rad means nothing
    double angle_before_rad = 0.0;  ///< applied-force angle of the holding case
    double angle_after_rad = 0.0;
    Vec3 resultant_before_N{0.0};           ///< of the ropes at the head in the holding case; zero where stands_before is not set
    Vec3 resultant_after_N{0.0};            ///< zero where there is no place to go to
    Bounded<double, k_max_guys> take_up_m;  ///< of each guy, + in, - out: it then has the plan's pretension at head_m
    bool rule_stops = false;
    Check stopped_by;  ///< the rule that would be broken next, where rule_stops
    Plan plan;         ///< as it then reads
};

namespace detail {

/// A head position by what can change about it, in metres: of one leg the offset of the head from the foot, seen from above; of
/// two the arc (x) through which the shorter leg has turned from upright.
using HeadOffset = Vec3;

inline std::size_t ways_to_lean(const Plan& plan) { return plan.frame.legs.size() == 1 ? 2 : 1; }

inline HeadOffset offset_of(const Plan& plan, const Model& m) {
    if (plan.frame.legs.size() == 2) return {radians(plan.frame.lean_deg) * m.shortest_leg_m, 0.0, 0.0};
    const Vec3 offset_m = m.drawn_head_m - m.legs[0].foot_m;
    return {offset_m.x, offset_m.y, 0.0};
}

/// NaN where a leg is too short to reach.
inline Lean lean_of(const Plan& plan, const Model& m, HeadOffset at) {
    const double bearing_deg = plan.frame.lean_bearing_deg;
    if (plan.frame.legs.size() == 2) return {degrees(at.x / m.shortest_leg_m), bearing_deg};
    const double aside_m = std::hypot(at.x, at.y);
    return {degrees(std::asin(aside_m / plan.frame.legs[0].length_m)), aside_m > 0.0 ? bearing_deg_of(at) : bearing_deg};
}

/// The rig with its head somewhere else.
struct MovedRig {
    bool usable = false;  ///< the frame can lean so and the plan can hold it
    Plan plan;
    Model model;
    Outcome rigged, holding;
};

/// Drawn anew, nothing solved.
inline MovedRig move_head(const Plan& plan, const Model& drawn, HeadOffset at) {
    MovedRig rig{.usable = false, .plan = plan, .model = {}, .rigged = {}, .holding = {}};
    const Lean lean = lean_of(plan, drawn, at);
    if (!range::lean_deg.holds(lean.deg) || !lean_to(rig.plan, drawn, lean)) return rig;
    BuiltModel built = build_model(rig.plan);
    rig.usable = built.faults.empty();
    rig.model = built.model;
    return rig;
}

inline void solve_moved(MovedRig& rig) {
    const Cases cases = build_cases(rig.model, rig.plan.actions);
    rig.rigged = solve_case(rig.model, cases[k_rigged], rig.model.drawn_head_m);
    const bool rests = rig.rigged.equilibrium.status == SolveStatus::Solved;
    rig.holding = solve_case(rig.model, cases[k_holding], rests ? rig.rigged.equilibrium.head_m : rig.model.drawn_head_m);
    read_angles(rig.model, rig.rigged);
    read_angles(rig.model, rig.holding);
}

/// How far the force is off the legs, as numbers that pass through zero: horizontal difference of the unit vectors of one leg,
/// sine of the angle to the plane of two.
inline Vec3 off_legs(const Model& m, Vec3 head_m, Vec3 force_N) {
    const Vec3 way = glm::normalize(force_N);
    if (m.legs.size() == 2) return {glm::dot(way, plane_of_legs(m, head_m)), 0.0, 0.0};
    const Vec3 miss = way - glm::normalize(m.legs[0].foot_m - head_m);
    return {miss.x, miss.y, 0.0};
}

inline constexpr Vec3 k_no_answer{HUGE_VAL, HUGE_VAL, 0.0};

/// With the head held where it is drawn.
inline Vec3 off_legs_as_drawn(const Plan& plan, const Model& drawn, HeadOffset at) {
    const MovedRig rig = move_head(plan, drawn, at);
    if (!rig.usable) return k_no_answer;
    const Vec3 force_N = sum_of_pulls_N(build_cases(rig.model, plan.actions)[k_holding].pulls, rig.model.drawn_head_m);
    return glm::length(force_N) > 0.0 ? off_legs(rig.model, rig.model.drawn_head_m, force_N) : k_no_answer;
}

/// Where the head comes to rest under the load.
inline Vec3 off_legs_holding(const Plan& plan, const Model& drawn, HeadOffset at) {
    MovedRig rig = move_head(plan, drawn, at);
    if (!rig.usable) return k_no_answer;
    solve_moved(rig);
    if (!rig.rigged.stable || !rig.holding.stable || !(glm::length(rig.holding.resultant_N) > 0.0)) return k_no_answer;
    return off_legs(rig.model, rig.holding.equilibrium.head_m, rig.holding.resultant_N);
}

struct Zero {
    HeadOffset at{};
    double left = HUGE_VAL;  ///< size of what is not zero yet
};

/// Change of the offset that Newton's method asks for, its slopes taken over a tenth of a millimetre.
template <class Miss>
HeadOffset newton_step(HeadOffset at, Vec3 here, std::size_t ways, Miss miss) {
    constexpr double slope_over_m = 1e-4;
    const Vec3 a = (miss(at + Vec3(slope_over_m, 0, 0)) - here) / slope_over_m;
    if (ways == 1) return {-here.x / a.x, 0.0, 0.0};
    const Vec3 b = (miss(at + Vec3(0, slope_over_m, 0)) - here) / slope_over_m;
    const double det = a.x * b.y - a.y * b.x;
    return {(-here.x * b.y + here.y * b.x) / det, (-here.y * a.x + here.x * a.y) / det, 0.0};
}

/// Takes the step, or a half of it, a quarter and so on, if that leaves less; `here` is then the miss there. False: none of them helps.
template <class Miss>
bool take_step(Zero& best, Vec3& here, Vec3 step_m, Miss miss) {
    for (int halving = 0; halving < 12; ++halving, step_m *= 0.5) {
        const Vec3 next = miss(best.at + step_m);
        if (!(glm::length(next) < best.left)) continue;
        best = {best.at + step_m, glm::length(next)};
        here = next;
        return true;
    }
    return false;
}

/// Brings `miss(offset)` to zero by Newton's method, halving each step until it helps. Stops where none does.
template <class Miss>
Zero find_zero(HeadOffset at, std::size_t ways, double longest_step_m, Miss miss) {
    constexpr double enough = 1e-9;
    Vec3 here = miss(at);
    Zero best{at, glm::length(here)};
    for (int round = 0; round < 40 && std::isfinite(best.left) && best.left > enough; ++round) {
        Vec3 step_m = newton_step(best.at, here, ways, miss);
        const double length_m = glm::length(step_m);
        if (!std::isfinite(length_m)) break;
        if (length_m > longest_step_m) step_m *= longest_step_m / length_m;
        if (!take_step(best, here, step_m, miss)) break;
    }
    return best;
}

/// All the way: first with the head where it is drawn, which needs no rig that stands, then where it rests under the load.
inline Zero find_in_line(const Plan& plan, const Model& drawn) {
    const std::size_t ways = ways_to_lean(plan);
    const double longest_step_m = 0.1 * drawn.shortest_leg_m;
    const Zero as_drawn = find_zero(offset_of(plan, drawn), ways, longest_step_m, [&](HeadOffset at) { return off_legs_as_drawn(plan, drawn, at); });
    const Zero loaded = find_zero(as_drawn.at, ways, longest_step_m, [&](HeadOffset at) { return off_legs_holding(plan, drawn, at); });
    return std::isfinite(loaded.left) ? loaded : as_drawn;
}

/// The rules that a moved head may break: of the drawing, and of the angles when holding.
inline CheckTable rules_of(const MovedRig& rig) {
    CheckTable table;
    check_drawing(table, rig.plan, rig.model);
    check_angles(table, rig.plan, rig.model, rig.holding, static_cast<int>(k_holding));
    return table;
}

/// Worse by more than rounding makes of a place that has not moved.
inline bool is_truly_worse(const Check& now, const Check& was) {
    constexpr double rounding = 1e-9;
    if (was.status != now.status) return now.status > was.status;
    const double moved = now.has_margin && was.has_margin ? now.margin - was.margin : now.value - was.value;
    return CheckTable::is_worse(now, was) && std::abs(moved) > rounding;
}

/// The first rule that the move breaks, or that was broken before and is now broken worse; none: returns false.
inline bool breaks_rule(const CheckTable& before, const CheckTable& after, Check& broken) {
    bool any = false;
    after.for_each([&](const Check& c) {
        if (any || c.status != CheckStatus::Fail) return;
        const Check* was = before.find(c.id, c.subject);
        if (was != nullptr && !is_truly_worse(c, *was)) return;
        any = true;
        broken = c;
    });
    return any;
}

/// Rigged and under load; a place where it does not is no place to go, whatever it did before.
inline bool stands_at_both(const MovedRig& rig, Check& broken) {
    for (const std::size_t state : {k_rigged, k_holding}) {
        if ((state == k_rigged ? rig.rigged : rig.holding).stable) continue;
        broken = fallen_check(static_cast<int>(state));
        return false;
    }
    return true;
}

/// Looks along the straight way, seen from above, from where the head is to where it would be in line.
class WayToLine {
public:
    WayToLine(const Plan& plan, const Model& drawn, HeadOffset to) : plan_(plan), drawn_(drawn), from_(offset_of(plan, drawn)), to_(to) {
        before_ = look(0.0);
        rules_before_ = rules_of(before_);
    }
    [[nodiscard]] const MovedRig& before() const { return before_; }
    [[nodiscard]] MovedRig look(double share) const {
        MovedRig rig = move_head(plan_, drawn_, from_ + share * (to_ - from_));
        if (rig.usable) solve_moved(rig);
        return rig;
    }
    /// Whether the head may stand at `share` of the way; else `rule` is what forbids it, where it is a rule.
    [[nodiscard]] bool may_stand(double share, bool& rule_stops, Check& rule) const {
        const MovedRig rig = look(share);
        rule_stops = false;
        if (!rig.usable || !find_faults(rig.plan).empty()) return false;
        rule_stops = !stands_at_both(rig, rule) || breaks_rule(rules_before_, rules_of(rig), rule);
        if (rule_stops) return false;
        return !before_.rigged.stable || !before_.holding.stable || rig.holding.applied_force_angle_rad <= before_.holding.applied_force_angle_rad;
    }

private:
    const Plan& plan_;
    const Model& drawn_;
    HeadOffset from_, to_;
    MovedRig before_;
    CheckTable rules_before_;
};

/// The farthest share of the way, to a five-hundredth, at which the head may stand.
inline double farthest_share(const WayToLine& way, LineUp& out) {
    constexpr int looks = 50;
    if (way.may_stand(1.0, out.rule_stops, out.stopped_by)) return 1.0;
    int at = looks;
    bool ignored = false;
    Check unused;
    while (at > 0 && !way.may_stand(static_cast<double>(at - 1) / looks, ignored, unused)) --at;
    double kept = std::max(0, at - 1) / static_cast<double>(looks), broken = kept + 1.0 / looks;
    while (broken - kept > 2e-3) {
        const double middle = 0.5 * (kept + broken);
        (way.may_stand(middle, ignored, unused) ? kept : broken) = middle;
    }
    // what forbids the next bit, told where it shows
    if (way.may_stand(std::min(1.0, kept + 1.0 / looks), out.rule_stops, out.stopped_by))
        static_cast<void>(way.may_stand(broken, out.rule_stops, out.stopped_by));
    return kept;
}

inline void take_up_to(LineUp& out, const Model& drawn, const Model& moved) {
    for (std::size_t i = 0; i < drawn.guys.size(); ++i) out.take_up_m.push_back(drawn.guys[i].rest_length_m - moved.guys[i].rest_length_m);
}

}  // namespace detail

/// Lines the legs up with the holding resultant: the rope's directions change with the head, so the place is found by a small
/// nonlinear solve. Where a limit of the guys or the drawing is broken there (and was not before, or less), it goes only as far along
/// the way as keeps them all. Nothing on the ground moves. `drawn` is the plan's model.
[[nodiscard]] inline LineUp find_line_up(const Plan& plan, const Model& drawn) {
    LineUp out;
    if (plan.frame.legs.size() > 2) {
        out.status = LineUpStatus::ThreeLegs;
        return out;
    }
    out.before = out.after = {plan.frame.lean_deg, plan.frame.lean_bearing_deg};
    out.head_m = drawn.drawn_head_m;
    const detail::Zero target = detail::find_in_line(plan, drawn);
    if (!std::isfinite(target.left)) return out;
    const detail::WayToLine way(plan, drawn, target.at);
    out.stands_before = way.before().rigged.stable && way.before().holding.stable;
    if (out.stands_before) {
        out.angle_before_rad = way.before().holding.applied_force_angle_rad;
        out.resultant_before_N = way.before().holding.resultant_N;
    }
    if (out.stands_before && out.angle_before_rad <= k_in_line_rad) {
        out.status = LineUpStatus::InLine;
        return out;
    }
    const double share = detail::farthest_share(way, out);
    if (!(share > 0.0)) {
        out.status = LineUpStatus::Stopped;
        out.angle_after_rad = out.angle_before_rad;
        return out;
    }
    const detail::MovedRig moved = way.look(share);
    out.status = share == 1.0 && target.left < 1e-6 ? LineUpStatus::LinedUp : LineUpStatus::Stopped;
    out.head_m = moved.model.drawn_head_m;
    out.after = {moved.plan.frame.lean_deg, moved.plan.frame.lean_bearing_deg};
    out.angle_after_rad = moved.holding.applied_force_angle_rad;
    out.resultant_after_N = moved.holding.resultant_N;
    out.plan = moved.plan;
    detail::take_up_to(out, drawn, moved.model);
    return out;
}

}  // namespace guywright
