#include "wasm/app/advice_edits.hpp"

#include <algorithm>
#include <cmath>

#include "engine/advice/guy_kit.hpp"
#include "engine/advice/lean.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/words/advice.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

constexpr double k_first_away_m = 4.0;

const std::string k_points = "candidate_anchors_m", k_strengths = "candidate_anchor_strengths_kN";

Edited changed_since(const Speech& speech) { return {std::string(say(speech, words::advice::k_changed_since)), {}, {}}; }

std::string axis_path(std::size_t anchor, int axis) { return k_points + "[" + std::to_string(anchor) + "][" + std::to_string(axis) + "]"; }
std::string strength_path(std::size_t anchor) { return k_strengths + "[" + std::to_string(anchor) + "]"; }

/// The numbers that the change starts from are those of the plan.
bool starts_here(Plan& plan, const Change& change) {
    return std::all_of(change.edits.begin(), change.edits.end(), [&](const NumberEdit& e) {
        const NumberRef number = find_number(plan, e.path);
        return number && number.get() == e.from;
    });
}

/// What an anchor nobody has graded is trusted with.
double weakest_anchor_kN(const Plan& plan) {
    double weakest_kN = GuyPlan{}.anchor_strength_kN;
    for (const GuyPlan& g : plan.guys) weakest_kN = std::min(weakest_kN, g.anchor_strength_kN);
    return weakest_kN;
}

/// A guy to be rigged where nobody has looked yet: what its anchor carries was only supposed. Of an anchor found and graded it is known.
void ask_for_new_anchor(Plan& plan, const GuyPlan& guy, std::size_t place) {
    if (guy.anchor_m && !plan.candidate_anchor_strengths_kN.empty()) return;
    mark_not_measured(plan, "guys[" + std::to_string(place) + "].anchor_strength_kN");
}

}  // namespace

Edited edit(Plan& plan, const TakeAdvice& wish, const Speech& speech) {
    Plan changed = plan;
    for (const Change& change : wish.advice.changes) {
        if (!starts_here(changed, change) || (change.new_guy && changed.guys.size() >= k_max_guys)) return changed_since(speech);
        if (change.new_tie && (change.subject >= changed.feet.size() || changed.feet[change.subject].ties.size() >= k_max_foot_ties))
            return changed_since(speech);
        Advice one;
        one.changes.push_back(change);
        changed = applied(std::move(changed), one);
        if (change.new_guy) ask_for_new_anchor(changed, *change.new_guy, changed.guys.size() - 1);
    }
    plan = std::move(changed);
    return {};
}

Edited edit(Plan& plan, const TakeLean& wish, const Speech& speech) {
    const BuiltModel built = build_model(plan);
    const bool same = plan.frame.lean_deg == wish.from.deg && plan.frame.lean_bearing_deg == wish.from.bearing_deg;
    if (!same || !built.faults.empty()) return changed_since(speech);
    return lean_to(plan, built.model, wish.to) ? Edited{} : changed_since(speech);
}

Edited edit(Plan& plan, const TakePretensions& wish, const Speech& speech) {
    if (wish.pretensions_kN.size() != plan.guys.size()) return changed_since(speech);
    for (std::size_t i = 0; i < plan.guys.size(); ++i) plan.guys[i].pretension_kN = wish.pretensions_kN[i];
    return {};
}

Edited edit(Plan& plan, const TakeAnchors& wish, const Speech&) {
    plan.guys = wish.guys;
    forget_not_measured(plan, "guys[");
    return {};
}

Edited edit(Plan& plan, const AddFoundAnchor&, const Speech& speech) {
    const std::size_t count = plan.candidate_anchors_m.size();
    if (count >= k_max_candidate_anchors) return {say(speech, words::advice::k_most_anchors, {{"{most}", std::to_string(k_max_candidate_anchors)}}), {}, {}};
    const Vec3 below_m = plumb_point(drawn_head_of(plan).value_or(Vec3{0.0}));
    plan.candidate_anchors_m.push_back(below_m + Vec3{-k_first_away_m, 0.0, 0.0});
    plan.candidate_anchor_strengths_kN.resize(count + 1, weakest_anchor_kN(plan));
    for (int axis = 0; axis < 3; ++axis) mark_not_measured(plan, axis_path(count, axis));
    mark_not_measured(plan, strength_path(count));
    return {{}, axis_path(count, 0), {}};
}

Edited edit(Plan& plan, const RemoveFoundAnchor& wish, const Speech& speech) {
    if (wish.anchor >= plan.candidate_anchors_m.size()) return {std::string(say(speech, words::k_gone)), {}, {}};
    forget_not_measured(plan, k_points + "[" + std::to_string(wish.anchor) + "]");
    forget_not_measured(plan, strength_path(wish.anchor));
    remove_entry(plan, plan.candidate_anchors_m, k_points, wish.anchor);
    remove_entry(plan, plan.candidate_anchor_strengths_kN, k_strengths, wish.anchor);  // where there are any
    return {};
}

Edited edit(Plan& plan, const GradeFoundAnchors&, const Speech&) {
    plan.candidate_anchor_strengths_kN.resize(plan.candidate_anchors_m.size(), weakest_anchor_kN(plan));
    for (std::size_t i = 0; i < plan.candidate_anchors_m.size(); ++i) mark_not_measured(plan, strength_path(i));
    return {{}, plan.candidate_anchors_m.empty() ? std::string() : strength_path(0), {}};
}

std::vector<double> as_entered_kN(const LeastPretension& least) {
    constexpr double step_kN = range::pretension_kN.step, rounding = 1e-9;
    std::vector<double> out;
    for (const GuyPretension& g : least.guys) out.push_back(std::round(std::ceil(kilonewtons(g.force_N) / step_kN - rounding) * step_kN * 1e6) / 1e6);
    return out;
}

}  // namespace guywright::app
