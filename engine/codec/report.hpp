#pragma once
#include "engine/codec/change_report.hpp"
#include "engine/codec/check_code.hpp"
#include "engine/codec/english.hpp"
#include "engine/codec/sentences.hpp"
#include "engine/codec/tuning_report.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace guywright {

namespace detail {

inline std::string_view status_key(CheckStatus s) {
    switch (s) {
        case CheckStatus::Pass: return "pass";
        case CheckStatus::Caution: return "caution";
        case CheckStatus::Fail: return "fail";
    }
    return "";
}

inline OrderedJson vector_kN(Vec3 v_N) { return json_point({kilonewtons(v_N.x), kilonewtons(v_N.y), kilonewtons(v_N.z)}); }

/// Share of what the weaker of cord and anchor may carry in this case.
inline double guy_utilisation(const GuyPlan& g, double tension_kN, const Factors& f) {
    return std::max(tension_kN * f.soft / guy_strength_kN(g), tension_kN * f.anchor / g.anchor_strength_kN);
}

inline OrderedJson guys_json(const Plan& plan, const Evaluation& e, const Outcome& o, const Factors& factors) {
    OrderedJson out = OrderedJson::array();
    for (std::size_t i = 0; i < e.model.guys.size(); ++i) {
        const double tension_kN = kilonewtons(o.equilibrium.guy_tension_N[i]);
        OrderedJson guy;
        guy["name"] = plan.guys[i].name;
        guy["tension_kN"] = json_number(tension_kN);
        guy["slack"] = o.equilibrium.guy_loose_m[i] > k_slack_m;
        guy["angle_to_leg_deg"] = json_number(degrees(o.guy_angle_rad[i]));
        guy["length_m"] = json_number(glm::length(o.equilibrium.head_m - e.model.guys[i].anchor_m));
        guy["utilisation"] = json_number(guy_utilisation(plan.guys[i], tension_kN, factors));
        out.push_back(std::move(guy));
    }
    return out;
}

inline OrderedJson legs_json(const Plan& plan, const Outcome& o, const Factors& factors) {
    OrderedJson out = OrderedJson::array();
    for (std::size_t i = 0; i < plan.frame.legs.size(); ++i) {
        const double compression_kN = kilonewtons(o.equilibrium.leg_compression_N[i]);
        OrderedJson leg;
        leg["compression_kN"] = json_number(compression_kN);
        leg["utilisation"] = json_number(std::abs(compression_kN) * factors.metal / plan.frame.legs[i].rating_kN);
        leg["foot_reaction_kN"] = vector_kN(o.foot_reaction_N[i]);
        out.push_back(std::move(leg));
    }
    return out;
}

inline OrderedJson ropes_json(const Plan& plan, const Outcome& o) {
    OrderedJson out = OrderedJson::array();
    for (std::size_t i = 0; i < plan.ropes.size(); ++i) {
        const RopeState& state = o.setup.ropes[i];
        OrderedJson rope;
        rope["name"] = plan.ropes[i].name;
        rope["head_side_kN"] = json_number(kilonewtons(state.head_side_N));
        rope["haul_side_kN"] = json_number(kilonewtons(state.haul_side_N));
        if (state.loaded) {
            rope["wrap_deg"] = json_number(degrees(state.path.wrap_rad));
            rope["clear_of_edge"] = state.path.clear_of_edge;
        }
        out.push_back(std::move(rope));
    }
    return out;
}

/// One case. Where no equilibrium was found there is only `stable: false`: no number of it means anything.
inline OrderedJson outcome_json(const Plan& plan, const Evaluation& e, const Outcome& o) {
    OrderedJson out;
    out["name"] = case_name(k_english, plan, o.setup);
    out["stable"] = o.stable;
    if (o.equilibrium.status != SolveStatus::Solved) return out;
    const Factors factors = factors_for(plan.limits, o.setup.arrest);
    out["head_m"] = json_point(o.equilibrium.head_m);
    out["min_stiffness_kN_per_m"] = json_number(kilonewtons(o.equilibrium.min_stiffness_N_m));
    out["head_shift_m"] = json_number(o.head_shift_m);
    out["resultant_kN"] = vector_kN(o.resultant_N);
    if (glm::length(o.resultant_N) > 0.0) out["applied_force_angle_deg"] = json_number(degrees(o.applied_force_angle_rad));
    out["guys"] = guys_json(plan, e, o, factors);
    out["legs"] = legs_json(plan, o, factors);
    out["ropes"] = ropes_json(plan, o);
    return out;
}

inline OrderedJson check_json(const Plan& plan, const Evaluation& e, const Check& c) {
    OrderedJson out;
    const std::string subject = subject_name(k_english, plan, c);
    out["id"] = std::string(info(c.id).key);
    if (!subject.empty()) out["subject"] = subject;
    out["what"] = sentence({k_english}, plan, e, c);
    out["value"] = json_number(c.value);
    const Check* measured = e.checks.find(c.id, c.subject);
    if (c.at_worst && measured != nullptr) out["value_as_measured"] = json_number(measured->value);
    if (c.at_worst && c.spoiler != k_no_spoiler) out["spoiled_most_by"] = e.spoilers[static_cast<std::size_t>(c.spoiler)];
    out["limit"] = json_number(c.limit);
    out["unit"] = std::string(info(c.id).unit);
    if (c.has_margin) out["margin"] = json_number(c.margin);
    out["status"] = std::string(status_key(c.status));
    if (c.case_index != k_no_case) out["case"] = case_name(k_english, plan, e.outcomes[static_cast<std::size_t>(c.case_index)].setup);
    out["source"] = std::string(info(c.id).source);
    return out;
}

/// What each rule is judged by: forces, stability, feet and strength at the worst of measuring error.
inline OrderedJson checks_json(const Plan& plan, const Evaluation& e) {
    OrderedJson out = OrderedJson::array();
    e.worst.for_each([&](const Check& c) { out.push_back(check_json(plan, e, c)); });
    return out;
}

/// The row with least to spare of those that measuring error touches.
inline OrderedJson worst_json(const Evaluation& e) {
    OrderedJson out = nullptr;
    for (const Check& c : e.closest) {
        if (!c.at_worst) continue;
        out = OrderedJson::object();
        out["check_id"] = std::string(info(c.id).key);
        out["value"] = json_number(c.value);
        if (c.spoiler != k_no_spoiler) out["measurement"] = e.spoilers[static_cast<std::size_t>(c.spoiler)];
        break;
    }
    return out;
}

inline OrderedJson edge_saving_json(const Plan& plan, const Evaluation& e) {
    OrderedJson out = OrderedJson::array();
    for (std::size_t i = 0; i < plan.ropes.size(); ++i) {
        const EdgeSaving s = edge_saving(e.model, e.model.ropes[i]);
        OrderedJson rope;
        rope["rope"] = plan.ropes[i].name;
        rope["raising_factor"] = json_number(s.as_rigged);
        rope["raising_factor_on_ground"] = json_number(s.on_ground);
        out.push_back(std::move(rope));
    }
    return out;
}

inline OrderedJson redundancy_json(const Plan& plan, const Evaluation& e) {
    OrderedJson out = OrderedJson::array();
    for (const Outcome& o : e.guys_lost) out.push_back(outcome_json(plan, e, o));
    return out;
}

}  // namespace detail

/// The report of a plan that could be read, as JSON. Lengths in m, forces in kN, angles in degrees. `head_m` is the head as
/// drawn; `applied_force_angle_deg` is that of the holding case. While inputs are missing nothing computed is reported. What of the
/// tuning and the counsel was not computed has no keys.
[[nodiscard]] inline std::string write_report(const Plan& plan, const Evaluation& e, const Tuning& tuning = {}, const Counsel& counsel = {}) {
    OrderedJson out;
    out["verdict"] = std::string(k_english.of(e.verdict));
    out["check_code"] = check_code(plan);
    out["title"] = plan.title;
    if (e.verdict == Verdict::NotChecked) {
        out["not_measured"] = e.not_measured;
        return json_text(out, 2) + "\n";
    }
    const Outcome& holding = e.outcomes[k_holding];
    out["head_m"] = json_point(e.model.drawn_head_m);
    if (holding.equilibrium.status == SolveStatus::Solved) out["applied_force_angle_deg"] = json_number(degrees(holding.applied_force_angle_rad));
    out["states"]["rigged"] = detail::outcome_json(plan, e, e.outcomes[k_rigged]);
    out["states"]["loaded"] = detail::outcome_json(plan, e, holding);
    out["cases"] = OrderedJson::array();
    for (const Outcome& o : e.outcomes) out["cases"].push_back(detail::outcome_json(plan, e, o));
    out["collapse_factor"] = json_number(e.load_limit.collapse_factor);
    if (e.load_limit.goes_slack) out["first_slack_factor"] = json_number(e.load_limit.first_slack_factor);
    out["goes_toward"] = json_point(e.load_limit.goes_toward);
    out["edge_saving"] = detail::edge_saving_json(plan, e);
    out["redundancy"] = detail::redundancy_json(plan, e);
    if (OrderedJson worst = detail::worst_json(e); !worst.is_null()) out["worst"] = std::move(worst);
    out["checks"] = detail::checks_json(plan, e);
    if (tuning.computed) detail::add_tuning(out, plan, e, tuning);
    detail::add_counsel(out, plan, e, counsel);
    return json_text(out, 2) + "\n";
}

/// The report of a plan that cannot be used: every fault, nothing else.
[[nodiscard]] inline std::string write_fault_report(const InputFaults& faults, std::size_t not_listed) {
    OrderedJson out;
    out["verdict"] = std::string(k_english.of(Verdict::NotChecked));
    out["faults"] = OrderedJson::array();
    for (const InputFault& f : faults) {
        OrderedJson fault;
        fault["path"] = f.path;
        fault["value"] = f.value;
        fault["allowed"] = f.allowed;
        out["faults"].push_back(std::move(fault));
    }
    out["faults_not_listed"] = not_listed;
    return json_text(out, 2) + "\n";
}

}  // namespace guywright
