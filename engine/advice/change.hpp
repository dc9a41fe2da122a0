#pragma once
#include "engine/advice/lever.hpp"
#include "engine/plan/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace guywright {

/// One number of a plan that a change sets, by its path, in the plan's unit.
struct NumberEdit {
    std::string path;
    double from = 0.0, to = 0.0;
};

/// One thing changed, with all it takes in the plan.
struct Change {
    Input input = Input::Load;
    std::size_t subject = 0;                    ///< guy, rope or leg
    double from = 0.0, to = 0.0;                ///< what it is about, in info(input).unit; of things added how many there are
    double away_from_m = 0.0, away_to_m = 0.0;  ///< of the anchor from the plumb point, where one is moved
    double effort = 0.0;                        ///< as InputInfo::effort
    std::vector<NumberEdit> edits;
    std::optional<GuyPlan> new_guy;  ///< joins at the end of the list
    std::optional<FootTie> new_tie;  ///< joins at the end of the list of foot `subject`
};

/// One or two changes that together give GO over the whole box of measuring errors.
struct Advice {
    std::vector<Change> changes;  ///< to be made in this order
    double effort = 0.0;
    double margin = 0.0;  ///< least margin of the changed plan over the box, as Check::margin
};

namespace detail {

inline void apply(const Change& c, Plan& plan) {
    for (const NumberEdit& edit : c.edits) find_number(plan, edit.path).set(edit.to);
    if (c.new_guy) plan.guys.push_back(*c.new_guy);
    if (c.new_tie) plan.feet[c.subject].ties.push_back(*c.new_tie);
}

inline void undo(const Change& c, Plan& plan) {
    if (c.new_tie) plan.feet[c.subject].ties.pop_back();
    if (c.new_guy) plan.guys.pop_back();
    for (const NumberEdit& edit : c.edits) find_number(plan, edit.path).set(edit.from);
}

/// Every number of two plans of the same make-up that differs.
inline std::vector<NumberEdit> differences(const Plan& from, const Plan& to) {
    std::vector<NumberEdit> out;
    for_each_number(from, [&](const std::string& path, double value, const Range&) { out.push_back({path, value, value}); });
    std::size_t next = 0;
    for_each_number(to, [&](const std::string&, double value, const Range&) { out[next++].to = value; });
    std::erase_if(out, [](const NumberEdit& edit) { return edit.from == edit.to; });
    return out;
}

inline Vec3 anchor_offset_m(const Plan& plan, std::size_t guy) {
    const auto head_m = drawn_head_of(plan);
    return head_m ? anchor_of(plan.guys[guy], *head_m) - *head_m : Vec3{0.0};
}

/// What a lever is about, as it stands in a plan, in the lever's unit.
inline double reading(const Lever& lever, const Plan& plan) {
    const std::size_t i = lever.subject;
    switch (lever.input) {
        case Input::Pretension: return plan.guys[i].pretension_kN;
        case Input::AllPretensions: return least_pretension_kN(plan);
        case Input::Parts: return plan.guys[i].parts;
        case Input::AllParts: return fewest_parts(plan);
        case Input::Cord: return plan.guys[i].strength_kN;
        case Input::AllCords: return weakest_cord_kN(plan);
        case Input::LeanAnchorsStay:
        case Input::LeanAnew: return plan.frame.lean_deg;
        case Input::HaulBearing: return plan.ropes[i].haul->bearing_deg;
        case Input::HaulDistance: return plan.ropes[i].haul->distance_m;
        case Input::HaulHeight: return plan.ropes[i].haul->height_m;
        case Input::AddFootTie: return static_cast<double>(plan.feet[i].ties.size());
        case Input::GuyBearing: return plan.guys[i].anchor_m ? tidy(bearing_deg_of(anchor_offset_m(plan, i))) : plan.guys[i].bearing_deg;
        case Input::GuyInclination: return plan.guys[i].inclination_deg;
        case Input::GuyDistance: return tidy(std::hypot(anchor_offset_m(plan, i).x, anchor_offset_m(plan, i).y));
        case Input::AddGuy: return static_cast<double>(plan.guys.size());
        case Input::Load: return plan.ropes[0].load_kg;
        case Input::FootOutAnchorsStay:
        case Input::FootOutAnew: return plan.frame.legs[0].foot_m.x;
        case Input::FootSideAnchorsStay:
        case Input::FootSideAnew: return plan.frame.legs[0].foot_m.y;
    }
    return 0.0;
}

/// Effort of a change of this size, of at most `reach`.
inline double effort_of(const Lever& lever, double by) {
    const InputInfo& in = info(lever.input);
    if (lever.is_choice()) return in.effort;
    const std::vector<double>& sizes = by < 0.0 ? lever.down : lever.up;
    return in.effort + (sizes.empty() ? 0.0 : in.more_effort * std::abs(by) / sizes.back());
}

}  // namespace detail

/// What pulling a lever by `by` changes in a plan; pull() must be possible.
inline Change change_of(const Plan& plan, const Lever& lever, double by) {
    Plan after = plan;
    pull(lever, by, after);
    Change c;
    c.input = lever.input;
    c.subject = lever.subject;
    c.from = detail::reading(lever, plan);
    c.to = detail::reading(lever, after);
    c.effort = detail::effort_of(lever, by);
    if (!lever.new_guys.empty()) c.new_guy = after.guys.back();
    else if (!lever.new_ties.empty()) c.new_tie = after.feet[lever.subject].ties.back();
    else c.edits = detail::differences(plan, after);
    if (lever.input == Input::GuyInclination || lever.input == Input::GuyDistance) {
        const Vec3 was = detail::anchor_offset_m(plan, lever.subject), is = detail::anchor_offset_m(after, lever.subject);
        c.away_from_m = std::hypot(was.x, was.y);
        c.away_to_m = std::hypot(is.x, is.y);
    }
    return c;
}

/// The plan with the advice taken.
inline Plan applied(Plan plan, const Advice& advice) {
    for (const Change& c : advice.changes) detail::apply(c, plan);
    return plan;
}

/// The plan as it was before the advice was taken.
inline Plan undone(Plan plan, const Advice& advice) {
    for (std::size_t i = advice.changes.size(); i > 0; --i) detail::undo(advice.changes[i - 1], plan);
    return plan;
}

}  // namespace guywright
