#pragma once
#include "engine/codec/change_sentences.hpp"
#include "engine/codec/english.hpp"
#include "engine/codec/plan_writer.hpp"

#include <cstddef>
#include <string>
#include <utility>

namespace guywright::detail {

/// What a change is called: the path of the number, where it sets just one, and else what all its edits are about.
inline std::string input_key(const Change& c) {
    const auto of = [&](std::string_view list, std::string_view key) { return path_of(list, c.subject, key); };
    switch (c.input) {
        case Input::AllPretensions: return "guys.pretension_kN";
        case Input::AllParts: return "guys.parts";
        case Input::AllCords: return "guys.strength_kN";
        case Input::LeanAnchorsStay: return c.edits.size() == 1 ? c.edits[0].path : "frame.lean_deg, anchors stay";
        case Input::AddFootTie: return of("feet", "ties");
        case Input::GuyBearing: return c.edits.size() == 1 ? c.edits[0].path : of("guys", "anchor_m, by bearing");
        case Input::GuyDistance: return of("guys", "anchor_m, by distance");
        case Input::AddGuy: return "guys";
        case Input::Load: return c.edits.size() == 1 ? c.edits[0].path : "ropes.load_kg";
        case Input::FootOutAnchorsStay:
        case Input::FootSideAnchorsStay: return c.edits.size() == 1 ? c.edits[0].path : "frame.foot_m, anchors stay";
        case Input::FootOutAnew:
        case Input::FootSideAnew: return c.edits.size() == 1 ? c.edits[0].path : "frame.foot_m";
        default: return c.edits.empty() ? "" : c.edits[0].path;
    }
}

inline OrderedJson edits_json(const Advice& a) {
    OrderedJson out = OrderedJson::array();
    for (const Change& c : a.changes) {
        for (const NumberEdit& edit : c.edits) out.push_back({{"path", edit.path}, {"from", json_number(edit.from)}, {"to", json_number(edit.to)}});
        if (c.new_guy) out.push_back({{"path", "guys"}, {"add", written_part(*c.new_guy)}});
        if (c.new_tie) out.push_back({{"path", "feet[" + std::to_string(c.subject) + "].ties"}, {"add", written_part(*c.new_tie)}});
    }
    return out;
}

/// One advice; of two changes together `input`, `from` and `to` are lists. `edits` is all that is to be done to the plan file.
inline OrderedJson advice_json(const Plan& plan, const Advice& a) {
    OrderedJson inputs = OrderedJson::array(), from = OrderedJson::array(), to = OrderedJson::array();
    for (const Change& c : a.changes) {
        inputs.push_back(input_key(c));
        from.push_back(json_number(c.from));
        to.push_back(json_number(c.to));
    }
    const bool single = a.changes.size() == 1;
    OrderedJson out;
    out["input"] = single ? inputs[0] : inputs;
    out["from"] = single ? from[0] : from;
    out["to"] = single ? to[0] : to;
    out["effort"] = json_number(a.effort);
    out["margin"] = json_number(a.margin);
    out["what"] = sentence({k_english}, plan, a);
    out["edits"] = edits_json(a);
    return out;
}

inline void add_change(OrderedJson& out, const Plan& plan, const SmallestChange& change) {
    out["advice"] = OrderedJson::array();
    for (const Advice& a : change.advice()) out["advice"].push_back(advice_json(plan, a));
    if (const OutOfReach* o = change.out_of_reach()) {
        const std::string subject = subject_name(k_english, o->nearest, o->check);
        OrderedJson reach;
        reach["id"] = std::string(info(o->check.id).key);
        if (!subject.empty()) reach["subject"] = subject;
        reach["what"] = sentence({k_english}, *o);
        out["out_of_reach"] = std::move(reach);
    }
}

inline OrderedJson anchor_sets_json(const std::vector<AnchorSet>& sets) {
    OrderedJson out = OrderedJson::array();
    for (const AnchorSet& s : sets) {
        OrderedJson set;
        set["anchors"] = s.anchors;
        set["pretension_kN"] = json_number(s.pretension_kN);
        set["verdict"] = std::string(k_english.of(s.verdict));
        set["margin"] = json_number(s.margin);
        set["governs"] = std::string(info(s.governing.id).key);
        out.push_back(std::move(set));
    }
    return out;
}

inline OrderedJson heading_json(const Heading& h) { return OrderedJson::array({json_number(h.bearing_deg), json_number(h.off_down_deg)}); }

inline OrderedJson map_cases_json(const Plan& plan, const Evaluation& e, const DirectionMap& map) {
    OrderedJson out = OrderedJson::array();
    for (const CasePull& c : map.cases()) {
        OrderedJson one;
        one["name"] = case_name(k_english, plan, e.outcomes[c.case_index].setup);
        one["at"] = heading_json(c.heading);
        one["resultant_kN"] = json_number(kilonewtons(c.size_N));
        out.push_back(std::move(one));
    }
    return out;
}

/// The margin of every direction, ring by ring, to three decimals, and what governs it.
inline void add_map_cells(OrderedJson& out, const Plan& plan, const DirectionMap& map) {
    out["margin"] = OrderedJson::array();
    out["governs"] = OrderedJson::array();
    for (std::size_t ring = 0; ring <= map.rings(); ++ring) {
        OrderedJson margins = OrderedJson::array(), governs = OrderedJson::array();
        for (std::size_t b = 0; b < (ring == 0 ? 1 : map.bearings()); ++b) {
            const MapCell& cell = map.cell(ring, b);
            Check row;
            row.id = cell.id;
            row.subject = cell.subject;
            const std::string subject = subject_name(k_english, plan, row);
            margins.push_back(json_number(std::round(1000.0 * cell.margin) / 1000.0));
            governs.push_back(std::string(info(cell.id).key) + (subject.empty() ? "" : ": " + subject));
        }
        out["margin"].push_back(std::move(margins));
        out["governs"].push_back(std::move(governs));
    }
}

/// Directions are [bearing, degrees off straight down].
inline OrderedJson map_json(const Plan& plan, const Evaluation& e, const DirectionMap& map) {
    const WorkingSector sector = map.working_sector();
    OrderedJson out;
    out["load_kN"] = json_number(kilonewtons(map.load_N()));
    out["off_down_step_deg"] = json_number(90.0 / static_cast<double>(map.rings()));
    out["bearing_step_deg"] = json_number(360.0 / static_cast<double>(map.bearings()));
    out["working_sector"] = {{"bearing_deg", {json_number(sector.from_bearing_deg), json_number(sector.to_bearing_deg)}},
                             {"off_down_deg", {json_number(sector.least_off_deg), json_number(sector.most_off_deg)}}};
    out["cases"] = map_cases_json(plan, e, map);
    out["guys"] = OrderedJson::array();
    const std::vector<Heading> guys = map.guys();
    for (std::size_t i = 0; i < guys.size(); ++i) out["guys"].push_back({{"name", plan.guys[i].name}, {"at", heading_json(guys[i])}});
    add_map_cells(out, plan, map);
    return out;
}

inline void add_counsel(OrderedJson& out, const Plan& plan, const Evaluation& e, const Counsel& counsel) {
    if (counsel.change) add_change(out, plan, *counsel.change);
    if (counsel.anchors)
        out["anchor_choice"] = {{"three", anchor_sets_json(counsel.anchors->best_three())}, {"four", anchor_sets_json(counsel.anchors->best_four())}};
    if (counsel.map) out["map"] = map_json(plan, e, *counsel.map);
}

}  // namespace guywright::detail
