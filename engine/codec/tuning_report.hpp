#pragma once
#include "engine/codec/english.hpp"
#include "engine/codec/json_tree.hpp"
#include "engine/codec/tuning_sentences.hpp"

#include <string>
#include <string_view>
#include <utility>

namespace guywright::detail {

inline OrderedJson sentences_json(const Sentences& sentences) {
    OrderedJson out = OrderedJson::array();
    for (const std::string& s : sentences) out.push_back(s);
    return out;
}

/// A row for every guy taken in, in it a number for every guy that feels it: N per 10 mm.
inline OrderedJson ties_json(const TieMatrix& ties) {
    OrderedJson out = OrderedJson::array();
    for (std::size_t i = 0; i < ties.guys; ++i) {
        OrderedJson row = OrderedJson::array();
        for (std::size_t j = 0; j < ties.guys; ++j) row.push_back(json_number(ties.change_N_per_m[i][j] * k_told_take_up_m));
        out.push_back(std::move(row));
    }
    return out;
}

inline std::string_view key_of(LineUpStatus s) {
    switch (s) {
        case LineUpStatus::NotComputed: return "not_found";
        case LineUpStatus::ThreeLegs: return "three_legs";
        case LineUpStatus::InLine: return "in_line";
        case LineUpStatus::LinedUp: return "lined_up";
        case LineUpStatus::Stopped: return "stopped";
    }
    return "";
}

inline std::string_view key_of(OrderStatus s) {
    switch (s) {
        case OrderStatus::NotComputed: return "none_needed";
        case OrderStatus::Found: return "found";
        case OrderStatus::SlackAtStart: return "slack_at_start";
        case OrderStatus::FallsAtStart: return "falls_at_start";
        case OrderStatus::NotFound: return "not_found";
    }
    return "";
}

inline std::string_view key_of(PretensionStatus s) {
    switch (s) {
        case PretensionStatus::NotComputed: return "not_found";
        case PretensionStatus::NoGuys: return "no_guys";
        case PretensionStatus::NoBalance: return "no_balance";
        case PretensionStatus::NotInRange: return "not_in_range";
        case PretensionStatus::Found: return "found";
    }
    return "";
}

inline OrderedJson order_json(const Plan& plan, const LineUpOrder& order) {
    OrderedJson out;
    out["status"] = std::string(key_of(order.status));
    out["steps"] = OrderedJson::array();
    for (const TakeUpStep& s : order.steps) {
        OrderedJson step;
        step["guy"] = plan.guys[s.guy].name;
        step["take_up_m"] = json_number(s.take_up_m);
        step["applied_force_angle_deg"] = json_number(degrees(s.angle_rad));
        step["least_tension_kN"] = json_number(kilonewtons(s.least_tension_N));
        out["steps"].push_back(std::move(step));
    }
    return out;
}

/// Where nothing is to be moved it holds the status and the sentences alone.
inline OrderedJson line_up_json(const TuningView& v) {
    const LineUp& l = v.tuning.line_up;
    OrderedJson out;
    out["status"] = std::string(key_of(l.status));
    out["what"] = sentences_json(line_up_sentences(v));
    if (l.rule_stops) out["stopped_by"] = std::string(info(l.stopped_by.id).key);
    if (l.stands_before) out["applied_force_angle_before_deg"] = json_number(degrees(l.angle_before_rad));
    if (l.take_up_m.empty()) return out;
    out["applied_force_angle_after_deg"] = json_number(degrees(l.angle_after_rad));
    out["head_m"] = json_point(l.head_m);
    out["lean_before_deg"] = json_number(l.before.deg);
    out["lean_bearing_before_deg"] = json_number(l.before.bearing_deg);
    out["lean_after_deg"] = json_number(l.after.deg);
    out["lean_bearing_after_deg"] = json_number(l.after.bearing_deg);
    out["take_up_m"] = OrderedJson::array();
    for (const double take_up_m : l.take_up_m) out["take_up_m"].push_back(json_number(take_up_m));
    out["order"] = order_json(v.plan, v.tuning.order);
    return out;
}

inline OrderedJson pretension_json(const TuningView& v) {
    const LeastPretension& least = v.tuning.least_pretension;
    OrderedJson out;
    out["status"] = std::string(key_of(least.status));
    out["what"] = sentences_json(pretension_sentences(v));
    if (least.falls) out["falls_in"] = case_name(v.t.words, v.plan, v.e.outcomes[least.falls_in].setup);
    out["guys"] = OrderedJson::array();
    for (std::size_t i = 0; i < least.guys.size(); ++i) {
        const GuyPretension& g = least.guys[i];
        OrderedJson guy;
        guy["name"] = v.guy(i);
        guy["pretension_kN"] = json_number(kilonewtons(g.force_N));
        guy["pull_on_cord_kN"] = json_number(kilonewtons(g.pull_N));
        guy["by_hand"] = g.by_hand;
        guy["goes_slack"] = g.least_N < 0.0;
        guy["tightness_left_kN"] = json_number(kilonewtons(g.least_N));
        guy["slackest_case"] = case_name(v.t.words, v.plan, v.e.outcomes[g.case_index].setup);
        out["guys"].push_back(std::move(guy));
    }
    return out;
}

inline OrderedJson steps_json(const TuningView& v, const SequenceSteps& steps) {
    OrderedJson out = OrderedJson::array();
    for (const SequenceStep& s : steps) {
        OrderedJson step;
        step["what"] = step_sentence(v, s);
        step["hold"] = s.hold;
        if (s.hold) step["hold_kN"] = json_number(kilonewtons(s.hold_N));
        if (s.computed) {
            step["stands_by_itself"] = s.after.by_itself;
            step["guy_tension_kN"] = OrderedJson::array();
            for (const double tension_N : s.after.guy_tension_N) step["guy_tension_kN"].push_back(json_number(kilonewtons(tension_N)));
            step["leg_compression_kN"] = OrderedJson::array();
            for (const double push_N : s.after.leg_compression_N) step["leg_compression_kN"].push_back(json_number(kilonewtons(push_N)));
        }
        out.push_back(std::move(step));
    }
    return out;
}

/// Adds the keys of the tuning; of a state that does not stand there is no matrix, and no least pretension where none was found.
inline void add_tuning(OrderedJson& out, const Plan& plan, const Evaluation& e, const Tuning& tuning) {
    const Telling telling{k_english};
    const TuningView v{telling, plan, e, tuning};
    if (tuning.rigged.computed) out["tie_matrix_N_per_10mm"] = ties_json(tuning.rigged);
    if (tuning.holding.computed) out["tie_matrix_holding_N_per_10mm"] = ties_json(tuning.holding);
    out["line_up"] = line_up_json(v);
    if (tuning.least_pretension.status == PretensionStatus::Found) {
        out["least_pretension_kN"] = OrderedJson::array();
        for (const GuyPretension& g : tuning.least_pretension.guys) out["least_pretension_kN"].push_back(json_number(kilonewtons(g.force_N)));
    }
    out["pretension"] = pretension_json(v);
    out["sequence"]["front_tie_missing"] = tuning.sequence.front_tie_missing;
    out["sequence"]["up"] = steps_json(v, tuning.sequence.up);
    out["sequence"]["down"] = steps_json(v, tuning.sequence.down);
}

}  // namespace guywright::detail
