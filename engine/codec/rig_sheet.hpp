#pragma once
#include "engine/codec/check_code.hpp"
#include "engine/codec/sheet_drawing.hpp"

#include <string>
#include <string_view>
#include <utility>

// The sheet that goes to the edge on paper, as JSON for the page that prints it: what it says and where its lines run is settled
// here, the page only sets it. Texts come in the language and units asked for.

namespace guywright {

namespace detail {

inline OrderedJson point_json(PaperPoint p) {
    const auto hundredths = [](double v) { return json_number(std::round(100.0 * v) / 100.0); };
    return OrderedJson::array({hundredths(p.x), hundredths(p.y)});
}

inline OrderedJson drawing_json(const CardView& v, PaperView view, PaperPoint size_mm) {
    const PaperDrawing drawing = PaperDrawer(v, view, size_mm).draw();
    const std::string_view title = view == PaperView::Above ? v.words.sheet.plan_view : v.words.sheet.side_view;
    OrderedJson out;
    out["title"] = std::string(title) + ", " + filled(v.words.sheet.scale, {{"{scale}", std::to_string(drawing.scale)}});
    out["scale"] = drawing.scale;
    out["size_mm"] = point_json(drawing.size_mm);
    out["letter_mm"] = k_letter_mm;
    for (const char* key : {"lines", "dots", "texts"}) out[key] = OrderedJson::array();
    for (const PaperLine& l : drawing.lines) out["lines"].push_back({{"kind", std::string(l.kind)}, {"from", point_json(l.from)}, {"to", point_json(l.to)}});
    for (const PaperDot& d : drawing.dots) out["dots"].push_back({{"kind", std::string(d.kind)}, {"at", point_json(d.at)}});
    for (const PaperText& t : drawing.texts) out["texts"].push_back({{"text", t.text}, {"at", point_json(t.at)}});
    return out;
}

inline OrderedJson list_section(std::string_view title, std::string_view kind, const Sentences& items) {
    OrderedJson out;
    out["title"] = std::string(title);
    out["kind"] = std::string(kind);
    out["items"] = items;
    return out;
}

inline OrderedJson table_section(std::string_view title, const Table& table, std::string note = {}) {
    OrderedJson out;
    out["title"] = std::string(title);
    out["kind"] = "table";
    out["rows"] = table;
    out["note"] = std::move(note);
    return out;
}

inline Sentences rows_with(const CardView& v, CheckStatus status) {
    Sentences out;
    v.e.worst.for_each([&](const Check& c) {
        if (c.status == status) out.push_back(sentence(v.telling, v.plan, v.e, c));
    });
    return out;
}

inline OrderedJson preload_section(const SheetWords& w) {
    OrderedJson out;
    out["title"] = std::string(w.preload);
    out["kind"] = "preload";
    out["items"] = w.preload_list;
    out["note"] = std::string(w.preload_note);
    out["people"] = {std::string(w.rigger), std::string(w.officer)};
    out["signing"] = std::string(w.signing);
    return out;
}

inline Sentences steps_up(const TuningView& v) {
    Sentences up = sequence_sentences(v, v.tuning.sequence.up);
    if (v.tuning.sequence.front_tie_missing) up.insert(up.begin(), std::string(v.of(TuningText::FrontTieMissing)));
    return up;
}

/// In the order in which a rig is made: what is worked with first, numbers to look up last.
inline void add_judged_sections(OrderedJson& out, const CardView& v, const Tuning& tuning) {
    constexpr std::size_t k_most_margins = 8;
    const CardWords& card = v.words.card;
    const SheetWords& w = v.words.sheet;
    const TuningView tuned{v.telling, v.plan, v.e, tuning};
    const auto add = [&](OrderedJson section) { out["sections"].push_back(std::move(section)); };
    if (Sentences broken = rows_with(v, CheckStatus::Fail); broken.size() > 1) add(list_section(card.also_broken, "list", broken));
    add(table_section(w.rig, rig_table(v, tuned)));
    add(table_section(w.anchors, anchors_table(v), anchors_note(v)));
    if (Table cords = cords_table(v); cords.size() > 1) add(table_section(w.cords, cords, cords_note(v)));
    add(table_section(w.kit, kit_table(v)));
    if (tuning.computed) add(list_section(tuned.of(TuningText::UpHeading), "steps", steps_up(tuned)));
    const Sentences cautions = rows_with(v, CheckStatus::Caution);
    add(list_section(card.cautions, "list", cautions.empty() ? Sentences{std::string(card.none)} : cautions));
    if (v.e.verdict == Verdict::Go) add(preload_section(w));  // nobody signs for a load on a rig that does not stand
    if (tuning.computed) add(list_section(tuned.of(TuningText::DownHeading), "steps", sequence_sentences(tuned, tuning.sequence.down)));
    add(table_section(w.margins, margins_table(v, k_most_margins), std::string(card.measured_values)));
    if (!v.plan.guys.empty()) add(table_section(in_force_unit(v, card.guys_table), guys_table(v)));
    add(table_section(in_force_unit(v, card.legs_table), legs_table(v)));
    add(table_section(in_force_unit(v, card.ropes_table), ropes_table(v)));
}

inline OrderedJson sheet_notes(const CardView& v) {
    OrderedJson out = OrderedJson::array();
    for (const std::string_view note : v.words.card.notes) out.push_back(std::string(note));
    return out;
}

}  // namespace detail

/// {"heading", "title", "note", "verdict", "check_code", "check_code_label", "code_note", "governs_label", "governs", "drawings": [drawing],
///  "sections": [{"title", "kind": "table" | "list" | "steps" | "preload", "rows" | "items", "note"}], "notes"}.
/// While nothing is judged there are no drawings and no numbers: the only section lists what is missing.
[[nodiscard]] inline OrderedJson rig_sheet(const Telling& telling, const Plan& plan, const Evaluation& e, const Tuning& tuning) {
    constexpr detail::PaperPoint above_mm{102.0, 92.0}, side_mm{80.0, 92.0};  // side by side on A4 and Letter
    const detail::CardView v{telling, plan, e};
    const CardWords& card = v.words.card;
    OrderedJson out;
    out["heading"] = std::string(v.words.sheet.heading);
    out["title"] = plan.title;
    out["note"] = plan.note;
    out["verdict"] = std::string(v.words.of(e.verdict));
    out["check_code"] = check_code(plan);
    out["check_code_label"] = std::string(card.check_code);
    out["code_note"] = std::string(v.words.sheet.code_note);
    out["governs_label"] = std::string(card.governs);
    out["governs"] = e.closest.empty() ? std::string(card.nothing_governs) : sentence(telling, plan, e, e.closest[0]);
    out["drawings"] = OrderedJson::array();
    out["sections"] = OrderedJson::array();
    if (e.verdict == Verdict::NotChecked) {
        out["governs"] = "";
        Sentences missing;
        for (const std::string& path : e.not_measured) missing.push_back(telling.name_of(plan, path));
        if (!missing.empty()) out["sections"].push_back(detail::list_section(card.missing, "list", missing));
    } else {
        out["drawings"].push_back(detail::drawing_json(v, detail::PaperView::Above, above_mm));
        out["drawings"].push_back(detail::drawing_json(v, detail::PaperView::Side, side_mm));
        detail::add_judged_sections(out, v, tuning);
    }
    out["notes"] = detail::sheet_notes(v);
    return out;
}

}  // namespace guywright
