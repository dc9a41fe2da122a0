#pragma once
#include "engine/codec/sentences.hpp"

#include <string>
#include <vector>

namespace guywright {

using Sentences = std::vector<std::string>;

/// Take-up by which the tie matrix is told, metres.
inline constexpr double k_told_take_up_m = 0.01;

namespace detail {

/// What the sentences are made from.
struct TuningView {
    const Telling& t;
    const Plan& plan;
    const Evaluation& e;
    const Tuning& tuning;

    [[nodiscard]] std::string_view of(TuningText id) const { return t.words.tuning.of(id); }
    [[nodiscard]] const std::string& guy(std::size_t i) const { return plan.guys[i].name; }
    [[nodiscard]] std::string newtons_told(double force_N) const { return quantity(t, force_N, "N"); }
    [[nodiscard]] std::string way_told(double way_m) const { return quantity(t, 1000.0 * way_m, "mm"); }
    [[nodiscard]] std::string when(std::size_t case_index) const { return case_phrase(t.words, plan, e, {.case_index = static_cast<int>(case_index)}); }
};

inline std::string joined(const Sentences& parts) {
    std::string out;
    for (const std::string& part : parts) out += (out.empty() ? "" : ", ") + part;
    return out;
}

inline std::string with_sign(const std::string& text) { return text.starts_with('-') ? text : "+" + text; }

/// "left +60 N", and when it would go slack before the take-up is done, after how much.
inline std::string felt_text(const TuningView& v, const Equilibrium& at, std::size_t felt, double per_m) {
    const double change_N = per_m * k_told_take_up_m;
    const std::string force = with_sign(v.newtons_told(change_N));
    if (at.guy_tension_N[felt] + change_N >= 0.0) return filled(v.of(TuningText::Felt), {{"{name}", v.guy(felt)}, {"{force}", force}});
    return filled(v.of(TuningText::FeltUntilSlack), {{"{name}", v.guy(felt)}, {"{force}", force}, {"{way}", v.way_told(-at.guy_tension_N[felt] / per_m)}});
}

inline std::string lean_told(const TuningView& v, Lean lean) {
    const double bearing_deg = std::round(lean.bearing_deg) >= 360.0 ? 0.0 : lean.bearing_deg;
    return filled(v.of(TuningText::LeanToward), {{"{angle}", quantity(v.t, lean.deg, "deg")}, {"{way}", quantity(v.t, bearing_deg, "deg")}});
}

}  // namespace detail

/// One sentence for every guy: "Take in back 10 mm: back +110 N, left +60 N, right -40 N."
[[nodiscard]] inline Sentences tie_sentences(const detail::TuningView& v, const TieMatrix& ties, std::size_t state) {
    Sentences out;
    if (!ties.computed) {
        if (!v.plan.guys.empty()) out.push_back(detail::filled(v.of(TuningText::NoTies), {{"{when}", v.when(state)}}));
        return out;
    }
    const Equilibrium& at = v.e.outcomes[state].equilibrium;
    for (std::size_t i = 0; i < ties.guys; ++i) {
        if (ties.slack_m[i] > 0.0) {
            out.push_back(detail::filled(v.of(TuningText::SlackFirst), {{"{name}", v.guy(i)}, {"{slack}", v.way_told(ties.slack_m[i])}}));
            continue;
        }
        Sentences felt{detail::felt_text(v, at, i, ties.change_N_per_m[i][i])};
        for (std::size_t j = 0; j < ties.guys; ++j)
            if (j != i && !(ties.slack_m[j] > 0.0)) felt.push_back(detail::felt_text(v, at, j, ties.change_N_per_m[i][j]));
        out.push_back(
            detail::filled(v.of(TuningText::TakeIn), {{"{name}", v.guy(i)}, {"{way}", v.way_told(k_told_take_up_m)}, {"{list}", detail::joined(felt)}}));
    }
    return out;
}

namespace detail {

inline std::string lined_up_text(const TuningView& v) {
    const LineUp& l = v.tuning.line_up;
    return filled(v.of(l.stands_before ? TuningText::LinedUpFrom : TuningText::LinedUp), {{"{after}", lean_told(v, l.after)},
                                                                                          {"{before}", lean_told(v, l.before)},
                                                                                          {"{angle}", quantity(v.t, degrees(l.angle_after_rad), "deg")},
                                                                                          {"{limit}", quantity(v.t, degrees(l.angle_before_rad), "deg")}});
}

inline std::string stop_text(const TuningView& v) {
    const LineUp& l = v.tuning.line_up;
    if (!l.rule_stops) return std::string(v.of(TuningText::LeanEnds));
    return filled(v.of(TuningText::StoppedBy), {{"{rule}", sentence(v.t, v.plan, v.e, l.stopped_by)}});
}

inline void add_take_ups(const TuningView& v, Sentences& out) {
    const LineUp& l = v.tuning.line_up;
    for (std::size_t i = 0; i < l.take_up_m.size(); ++i) {
        const double way_m = std::abs(l.take_up_m[i]);
        const int parts = v.plan.guys[i].parts;
        std::string text =
            filled(v.of(l.take_up_m[i] < 0.0 ? TuningText::PayOutBy : TuningText::TakeInBy), {{"{name}", v.guy(i)}, {"{way}", v.way_told(way_m)}});
        if (parts > 1)
            text += " " + filled(v.of(TuningText::OfCord), {{"{name}", v.guy(i)}, {"{list}", std::to_string(parts)}, {"{way}", v.way_told(parts * way_m)}});
        out.push_back(std::move(text));
    }
}

inline std::string order_text(const TuningView& v) {
    const LineUpOrder& o = v.tuning.order;
    if (o.status == OrderStatus::SlackAtStart) return filled(v.of(TuningText::OrderSlackAtStart), {{"{name}", v.guy(o.slack_guy)}});
    if (o.status == OrderStatus::FallsAtStart) return std::string(v.of(TuningText::OrderFallsAtStart));
    if (o.status != OrderStatus::Found) return std::string(v.of(TuningText::OrderNotFound));
    Sentences steps;
    for (const TakeUpStep& s : o.steps)
        steps.push_back(filled(v.of(s.take_up_m < 0.0 ? TuningText::OrderOut : TuningText::OrderIn),
                               {{"{name}", v.guy(s.guy)}, {"{way}", v.way_told(std::abs(s.take_up_m))}}));
    return filled(v.of(TuningText::Order), {{"{list}", joined(steps)}});
}

}  // namespace detail

/// Where to lean, what stops it, each guy's take-up, and the order of steps.
[[nodiscard]] inline Sentences line_up_sentences(const detail::TuningView& v) {
    const LineUp& l = v.tuning.line_up;
    switch (l.status) {
        case LineUpStatus::NotComputed: return {std::string(v.of(TuningText::NoPlace))};
        case LineUpStatus::ThreeLegs: return {std::string(v.of(TuningText::ThreeLegs))};
        case LineUpStatus::InLine: return {detail::filled(v.of(TuningText::InLine), {{"{before}", quantity(v.t, degrees(l.angle_before_rad), "deg")}})};
        case LineUpStatus::LinedUp:
        case LineUpStatus::Stopped: break;
    }
    if (l.take_up_m.empty()) return {std::string(v.of(TuningText::NotMoved)), detail::stop_text(v)};
    Sentences out{detail::lined_up_text(v)};
    if (l.status == LineUpStatus::Stopped) out.push_back(detail::stop_text(v));
    detail::add_take_ups(v, out);
    out.push_back(detail::order_text(v));
    return out;
}

namespace detail {

inline std::string least_text(const TuningView& v, std::size_t guy) {
    const LeastPretension& least = v.tuning.least_pretension;
    const GuyPretension& g = least.guys[guy];
    const std::string force = quantity(v.t, kilonewtons(g.force_N), "kN");
    if (least.status == PretensionStatus::NotInRange)
        return filled(v.of(g.least_N < 0.0 ? TuningText::LeastSlack : TuningText::LeastTight),
                      {{"{name}", v.guy(guy)}, {"{force}", force}, {"{when}", v.when(g.case_index)}});
    return filled(v.of(g.by_hand ? TuningText::LeastByHand : TuningText::LeastMechanical),
                  {{"{name}", v.guy(guy)},
                   {"{force}", force},
                   {"{limit}", quantity(v.t, v.plan.guys[guy].pretension_kN, "kN")},
                   {"{way}", quantity(v.t, kilonewtons(g.pull_N), "kN")},
                   {"{slack}", quantity(v.t, kilonewtons(k_typical_hand_pull_N), "kN")}});
}

}  // namespace detail

/// The pretension of every guy; or what stays slack whatever the pretension.
[[nodiscard]] inline Sentences pretension_sentences(const detail::TuningView& v) {
    const LeastPretension& least = v.tuning.least_pretension;
    switch (least.status) {
        case PretensionStatus::NotComputed: return {std::string(v.of(TuningText::LeastUnknown))};
        case PretensionStatus::NoGuys: return {};
        case PretensionStatus::NoBalance: return {std::string(v.of(TuningText::LeastNoBalance))};
        case PretensionStatus::NotInRange:
        case PretensionStatus::Found: break;
    }
    if (least.falls) return {detail::filled(v.of(TuningText::LeastFalls), {{"{when}", v.when(least.falls_in)}})};
    Sentences out;
    for (std::size_t i = 0; i < least.guys.size(); ++i) out.push_back(detail::least_text(v, i));
    return out;
}

namespace detail {

/// What to hold while a step is done.
inline std::string holding_text(const TuningView& v, const SequenceStep& s) {
    constexpr double next_to_nothing_N = 1.0;
    if (!s.hold) return std::string(v.of(TuningText::StandsNow));
    const bool stands = s.computed && s.after.by_itself;
    if (s.hold_N < next_to_nothing_N && !stands) return std::string(v.of(TuningText::Steady));
    std::string out = filled(v.of(stands ? TuningText::HoldStands : TuningText::Hold), {{"{force}", v.newtons_told(s.hold_N)}});
    if (s.hold_N > k_typical_hand_pull_N) out += " " + filled(v.of(TuningText::ManyHands), {{"{limit}", v.newtons_told(k_typical_hand_pull_N)}});
    return out;
}

inline std::string way_of(const TuningView& v, const SequenceStep& s) {
    return filled(s.behind_edge_m < 0.0 ? v.t.words.past_edge : v.t.words.behind_edge, {{"{d}", quantity(v.t, std::abs(s.behind_edge_m), "m")}});
}

}  // namespace detail

/// One step: what to do, what to hold.
[[nodiscard]] inline std::string step_sentence(const detail::TuningView& v, const SequenceStep& s) {
    const bool of_guy = s.part < v.plan.guys.size();
    const double force_N = s.computed && of_guy ? s.after.guy_tension_N[s.part] : 0.0;
    std::string out = detail::filled(v.t.words.tuning.of(s.kind),
                                     {{"{name}", of_guy ? v.guy(s.part) : ""}, {"{force}", v.newtons_told(force_N)}, {"{way}", detail::way_of(v, s)}});
    if (s.eases < v.plan.guys.size()) out += " " + detail::filled(v.t.words.tuning.eases, {{"{other}", v.guy(s.eases)}});
    if (s.kind == StepKind::Check && v.plan.frame.legs.size() < 3)
        out += " " + detail::filled(v.t.words.tuning.lean, {{"{way}", detail::lean_told(v, {v.plan.frame.lean_deg, v.plan.frame.lean_bearing_deg})}});
    if (s.computed || s.hold) out += " " + detail::holding_text(v, s);
    if (s.computed && s.after.foot_slides) out += " " + std::string(v.of(TuningText::HoldFoot));
    return out;
}

[[nodiscard]] inline Sentences sequence_sentences(const detail::TuningView& v, const SequenceSteps& steps) {
    Sentences out;
    for (const SequenceStep& s : steps) out.push_back(step_sentence(v, s));
    return out;
}

}  // namespace guywright
