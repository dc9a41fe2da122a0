#pragma once
#include "engine/advice/guy_kit.hpp"
#include "engine/advice/input.hpp"
#include "engine/base/tolerances.hpp"
#include "engine/plan/catalogue.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace guywright {

/// One thing that can be changed in one plan, and the sizes of change worth looking at.
struct Lever {
    Input input = Input::Load;
    std::size_t subject = 0;        ///< index of the guy, rope or leg; 0 where all are meant
    std::vector<double> up, down;   ///< in info(input).unit, > 0, the smallest first
    std::vector<GuyPlan> new_guys;  ///< what AddGuy can add
    std::vector<FootTie> new_ties;  ///< what AddFootTie can add

    /// One of several things to add, not a number to change.
    [[nodiscard]] bool is_choice() const { return !new_guys.empty() || !new_ties.empty(); }
    [[nodiscard]] std::size_t choices() const { return new_guys.size() + new_ties.size(); }
    /// Whether sizes between those listed are possible.
    [[nodiscard]] bool is_smooth() const { return info(input).steps > 0; }
};

namespace detail {

/// Without the last digits of an addition: 0.3 + 0.15 is 0.45.
inline double tidy(double v) { return std::round(v * 1e6) / 1e6; }

inline bool change_to(double& v, double to, const Range& r) {
    v = tidy(to);
    return r.holds(v);
}

inline bool change_parts(GuyPlan& g, double to) {
    if (!range::parts.holds(to)) return false;
    g.parts = static_cast<int>(std::lround(to));
    return true;
}

/// Anchors and hauls given from the plumb point of `before` stay on their spot of the ground in `after`.
inline bool keep_ground(const Plan& before, Plan& after) {
    const auto from = drawn_head_of(before), to = drawn_head_of(after);
    if (!from || !to) return false;
    for (std::size_t i = 0; i < after.guys.size(); ++i) {
        GuyPlan& g = after.guys[i];
        if (g.anchor_m) continue;
        const Vec3 offset_m = anchor_of(before.guys[i], *from) - *to;
        const double away_m = std::hypot(offset_m.x, offset_m.y);
        if (!(offset_m.z < -k_same_point_m) || !(away_m > k_same_point_m)) return false;
        g.bearing_deg = tidy(bearing_deg_of(offset_m));
        if (!change_to(g.inclination_deg, degrees(std::atan2(-offset_m.z, away_m)), range::inclination_deg)) return false;
    }
    for (std::size_t i = 0; i < after.ropes.size(); ++i) {
        if (!after.ropes[i].haul) continue;
        const Haul& was = *before.ropes[i].haul;
        const Vec3 offset_m = plumb_point(*from) + was.distance_m * along_bearing(radians(was.bearing_deg)) - plumb_point(*to);
        after.ropes[i].haul->bearing_deg = tidy(bearing_deg_of(offset_m));
        if (!change_to(after.ropes[i].haul->distance_m, std::hypot(offset_m.x, offset_m.y), range::haul_distance_m)) return false;
    }
    return true;
}

inline bool move_feet(Plan& plan, Vec3 by_m) {
    for (LegPlan& leg : plan.frame.legs) {
        if (!change_to(leg.foot_m.x, leg.foot_m.x + by_m.x, range::coordinate_m)) return false;
        if (!change_to(leg.foot_m.y, leg.foot_m.y + by_m.y, range::coordinate_m)) return false;
    }
    return true;
}

/// An anchor given by its position: turned about the plumb point, or moved away from it.
inline bool move_anchor(const Plan& plan, GuyPlan& g, double turn_deg, double away_m) {
    const auto head_m = drawn_head_of(plan);
    if (!head_m) return false;
    const Vec3 offset_m = *g.anchor_m - *head_m;
    const double far_m = std::hypot(offset_m.x, offset_m.y) + away_m;
    if (!(far_m > 0.1)) return false;
    const Vec3 at_m = plumb_point(*head_m) + far_m * along_bearing(radians(bearing_deg_of(offset_m) + turn_deg));
    return change_to(g.anchor_m->x, at_m.x, range::coordinate_m) && change_to(g.anchor_m->y, at_m.y, range::coordinate_m);
}

inline bool turn_guy(Plan& plan, GuyPlan& g, double by_deg) {
    if (g.anchor_m) return move_anchor(plan, g, by_deg, 0.0);
    g.bearing_deg = tidy(wrapped_deg(g.bearing_deg + by_deg));
    return true;
}

inline double least_pretension_kN(const Plan& plan) {
    double least_kN = HUGE_VAL;
    for (const GuyPlan& g : plan.guys) least_kN = std::min(least_kN, g.pretension_kN);
    return least_kN;
}

inline int fewest_parts(const Plan& plan) {
    int fewest = 9;
    for (const GuyPlan& g : plan.guys) fewest = std::min(fewest, g.parts);
    return fewest;
}

inline double weakest_cord_kN(const Plan& plan) {
    double weakest_kN = HUGE_VAL;
    for (const GuyPlan& g : plan.guys) weakest_kN = std::min(weakest_kN, g.strength_kN);
    return weakest_kN;
}

/// Brings every guy that is below `to` up to it.
inline bool raise_all(std::vector<GuyPlan>& guys, double GuyPlan::*what, double to, const Range& r) {
    for (GuyPlan& g : guys) g.*what = std::max(g.*what, tidy(to));
    return r.holds(to);
}

inline bool raise_all_parts(std::vector<GuyPlan>& guys, double to) {
    return std::all_of(guys.begin(), guys.end(), [&](GuyPlan& g) { return change_parts(g, std::max<double>(g.parts, to)); });
}

inline bool change_load(Plan& plan, double by_kg) {
    for (RopePlan& r : plan.ropes)
        if (!change_to(r.load_kg, r.load_kg + by_kg, range::load_kg)) return false;
    return true;
}

inline bool change_haul(Haul& haul, Input input, double by) {
    switch (input) {
        case Input::HaulBearing: return change_to(haul.bearing_deg, wrapped_deg(haul.bearing_deg + by), range::bearing_deg);
        case Input::HaulDistance: return change_to(haul.distance_m, haul.distance_m + by, range::haul_distance_m);
        // a haul on the ground does not go into it
        default: return (haul.height_m < 0.0 || haul.height_m + by >= 0.0) && change_to(haul.height_m, haul.height_m + by, range::height_m);
    }
}

}  // namespace detail

/// Changes `plan` by `by`, in info(lever.input).unit; of a choice `by` is its index. False where that leaves a range, and
/// the plan is then not to be used.
inline bool pull(const Lever& lever, double by, Plan& plan) {
    const std::size_t i = lever.subject;
    const auto staying = [&](auto change) {
        const Plan before = plan;
        return change() && detail::keep_ground(before, plan);
    };
    const auto lean = [&] { return detail::change_to(plan.frame.lean_deg, plan.frame.lean_deg + by, range::lean_deg); };
    const auto out = [&] { return detail::move_feet(plan, {by, 0.0, 0.0}); };
    const auto side = [&] { return detail::move_feet(plan, {0.0, by, 0.0}); };
    switch (lever.input) {
        case Input::Pretension: return detail::change_to(plan.guys[i].pretension_kN, plan.guys[i].pretension_kN + by, range::pretension_kN);
        case Input::AllPretensions: return detail::raise_all(plan.guys, &GuyPlan::pretension_kN, detail::least_pretension_kN(plan) + by, range::pretension_kN);
        case Input::Parts: return detail::change_parts(plan.guys[i], plan.guys[i].parts + by);
        case Input::AllParts: return detail::raise_all_parts(plan.guys, detail::fewest_parts(plan) + by);
        case Input::Cord: return detail::change_to(plan.guys[i].strength_kN, plan.guys[i].strength_kN + by, range::strength_kN);
        case Input::AllCords: return detail::raise_all(plan.guys, &GuyPlan::strength_kN, detail::weakest_cord_kN(plan) + by, range::strength_kN);
        case Input::LeanAnchorsStay: return staying(lean);
        case Input::HaulBearing:
        case Input::HaulDistance:
        case Input::HaulHeight: return detail::change_haul(*plan.ropes[i].haul, lever.input, by);
        case Input::AddFootTie: plan.feet[i].ties.push_back(lever.new_ties[static_cast<std::size_t>(by)]); return true;
        case Input::GuyBearing: return detail::turn_guy(plan, plan.guys[i], by);
        case Input::GuyInclination: return detail::change_to(plan.guys[i].inclination_deg, plan.guys[i].inclination_deg + by, range::inclination_deg);
        case Input::GuyDistance: return detail::move_anchor(plan, plan.guys[i], 0.0, by);
        case Input::AddGuy: plan.guys.push_back(lever.new_guys[static_cast<std::size_t>(by)]); return true;
        case Input::Load: return detail::change_load(plan, by);
        case Input::FootOutAnchorsStay: return staying(out);
        case Input::FootSideAnchorsStay: return staying(side);
        case Input::LeanAnew: return lean();
        case Input::FootOutAnew: return out();
        case Input::FootSideAnew: return side();
    }
    return false;
}

namespace detail {

/// Ever larger first steps, so that a small change is not stepped over, and then even ones.
inline std::vector<double> steps_to(double reach, std::size_t count) {
    std::vector<double> out;
    if (!(reach > 0.0)) return out;
    const double step = reach / static_cast<double>(count);
    for (const double share : {0.125, 0.25, 0.5}) out.push_back(share * step);
    for (std::size_t i = 1; i <= count; ++i) out.push_back(step * static_cast<double>(i));
    return out;
}

class LeverList {
public:
    explicit LeverList(const Plan& plan) : plan_(plan) {}

    std::vector<Lever> take() {
        add_guys();
        add_all_guys();
        add_frame();
        for (std::size_t i = 0; i < plan_.ropes.size(); ++i)
            if (plan_.ropes[i].haul)
                for (const Input input : {Input::HaulBearing, Input::HaulDistance, Input::HaulHeight}) add(input, i);
        add_load();
        add_new_ties();
        add_new_guy();
        std::stable_sort(levers_.begin(), levers_.end(), [](const Lever& a, const Lever& b) { return info(a.input).effort < info(b.input).effort; });
        return std::move(levers_);
    }

private:
    Lever& add(Input input, std::size_t subject) {
        const InputInfo& in = info(input);
        Lever lever;
        lever.input = input;
        lever.subject = subject;
        if (in.steps > 0) {
            lever.up = steps_to(in.up, in.steps);
            lever.down = steps_to(in.down, in.steps);
        } else {
            for (double by = 1.0; by <= in.up; ++by) lever.up.push_back(by);
            for (double by = 1.0; by <= in.down; ++by) lever.down.push_back(by);
        }
        levers_.push_back(std::move(lever));
        return levers_.back();
    }

    /// Published cords stronger than `now_kN`.
    static std::vector<double> stronger_cords(double now_kN) {
        std::vector<double> out;
        for (const PublishedPart& part : k_published_parts)
            if (part.use == PartUse::Cord && part.strength_kN > now_kN) out.push_back(part.strength_kN - now_kN);
        std::sort(out.begin(), out.end());
        return out;
    }

    void add_guys() {
        for (std::size_t i = 0; i < plan_.guys.size(); ++i) {
            for (const Input input : {Input::Pretension, Input::Parts, Input::GuyBearing}) add(input, i);
            add(plan_.guys[i].anchor_m ? Input::GuyDistance : Input::GuyInclination, i);
            add(Input::Cord, i).up = stronger_cords(plan_.guys[i].strength_kN);
        }
    }

    void add_all_guys() {
        if (plan_.guys.size() < 2) return;
        add(Input::AllPretensions, 0);
        add(Input::AllParts, 0);
        add(Input::AllCords, 0).up = stronger_cords(weakest_cord_kN(plan_));
    }

    /// Whether moving the head moves something that the plan gives from below it.
    [[nodiscard]] bool something_follows_the_head() const {
        return std::any_of(plan_.guys.begin(), plan_.guys.end(), [](const GuyPlan& g) { return !g.anchor_m; }) ||
               std::any_of(plan_.ropes.begin(), plan_.ropes.end(), [](const RopePlan& r) { return r.haul.has_value(); });
    }

    void add_frame() {
        const bool leans = plan_.frame.kind != FrameKind::Tripod, two_ways = something_follows_the_head();
        if (leans) add(Input::LeanAnchorsStay, 0);
        if (leans && two_ways) add(Input::LeanAnew, 0);
        for (const Input input : {Input::FootOutAnchorsStay, Input::FootSideAnchorsStay}) add(input, 0);
        if (!two_ways) return;
        for (const Input input : {Input::FootOutAnew, Input::FootSideAnew}) add(input, 0);
    }

    void add_load() {
        double least_kg = HUGE_VAL;
        for (const RopePlan& r : plan_.ropes) least_kg = std::min(least_kg, r.load_kg);
        add(Input::Load, 0).down = steps_to((1.0 - k_least_load_share) * least_kg, info(Input::Load).steps);
    }

    void add_new_ties() {
        for (std::size_t i = 0; i < plan_.feet.size(); ++i) {
            if (plan_.feet[i].ties.size() >= k_max_foot_ties) continue;
            Lever& lever = add(Input::AddFootTie, i);
            for (double bearing_deg = 0.0; bearing_deg < 360.0; bearing_deg += k_compass_step_deg) {
                FootTie tie = plan_.feet[i].ties.empty() ? FootTie{} : plan_.feet[i].ties[0];
                tie.bearing_deg = bearing_deg;
                lever.new_ties.push_back(tie);
            }
        }
    }

    /// At the anchors found on site, and all round on level ground.
    void add_new_guy() {
        const auto head_m = drawn_head_of(plan_);
        if (plan_.guys.size() >= k_max_guys || !head_m) return;
        Lever lever;
        lever.input = Input::AddGuy;
        for (std::size_t i = 0; i < plan_.candidate_anchors_m.size(); ++i)
            if (!in_use(plan_.candidate_anchors_m[i], *head_m)) lever.new_guys.push_back(guy_at_candidate(i, *head_m));
        if (head_m->z > k_same_point_m)
            for (double bearing_deg = 0.0; bearing_deg < 360.0; bearing_deg += k_compass_step_deg) {
                GuyPlan g = new_guy(*head_m, bearing_deg);
                g.inclination_deg = k_new_guy_inclination_deg;
                lever.new_guys.push_back(std::move(g));
            }
        if (!lever.new_guys.empty()) levers_.push_back(std::move(lever));
    }

    /// Two guys may share an anchor, but a new one there holds the head no better.
    [[nodiscard]] bool in_use(Vec3 anchor_m, Vec3 head_m) const {
        return std::any_of(plan_.guys.begin(), plan_.guys.end(),
                           [&](const GuyPlan& g) { return glm::length(anchor_of(g, head_m) - anchor_m) < k_same_anchor_m; });
    }

    [[nodiscard]] GuyPlan guy_at_candidate(std::size_t i, Vec3 head_m) const {
        GuyPlan g = new_guy(head_m, bearing_deg_of(plan_.candidate_anchors_m[i] - head_m));
        g.anchor_m = plan_.candidate_anchors_m[i];
        if (!plan_.candidate_anchor_strengths_kN.empty()) g.anchor_strength_kN = plan_.candidate_anchor_strengths_kN[i];
        return g;
    }

    [[nodiscard]] GuyPlan new_guy(Vec3 head_m, double bearing_deg) const {
        GuyPlan g = kit_for_bearing(plan_, head_m, bearing_deg);
        g.name = free_guy_name(plan_);
        g.anchor_m.reset();
        g.bearing_deg = tidy(bearing_deg);
        g.anchor_height_m = 0.0;
        return g;
    }

    static constexpr double k_new_guy_inclination_deg = 30.0;  ///< flat enough to stand well off the leg. Common practice, no source

    const Plan& plan_;
    std::vector<Lever> levers_;
};

}  // namespace detail

/// Everything that can be changed in a plan without faults, the least effort first.
inline std::vector<Lever> levers_of(const Plan& plan) { return detail::LeverList(plan).take(); }

}  // namespace guywright
