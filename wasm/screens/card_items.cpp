#include "wasm/screens/card_items.hpp"

#include <algorithm>
#include <utility>

#include "wasm/app/inputs.hpp"
#include "wasm/screens/advice_items.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/widgets/verdict_mark.hpp"
#include "wasm/words/card.hpp"
#include "wasm/words/items.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

constexpr std::size_t k_closest_on_card = 3;
constexpr float k_bar_px = 22.0F;

/// What is left of the limit, as words: "33 % to spare", "12 % over".
std::string spare_words(const Builder& b, const Check& c) {
    const bool fails = c.status == CheckStatus::Fail;
    if (!c.has_margin) return b.said(fails ? words::k_broken : words::k_kept);
    const int percent = static_cast<int>(c.margin * 100.0);
    if (fails && (c.margin <= -1.0 || percent == 0)) return b.said(words::k_broken);
    return b.said(fails ? words::k_over : words::k_to_spare, {{"{n}", std::to_string(fails ? -percent : percent)}});
}

/// Name and what is left, on one line where they fit.
struct MarginHead {
    std::string what, spare;
    bool one_line = true;
    float name_height_px = widgets::k_line_px;
};

MarginHead margin_head(const Builder& b, const Check& c) {
    MarginHead h;
    const Language& language = language_of(b.state().speech);
    const std::string name = subject_name(language, b.plan(), c);
    h.what = language.of(c.id).what;
    guywright::detail::capitalise(h.what);
    if (!name.empty()) h.what = b.named(h.what, name);
    h.spare = spare_words(b, c);
    const app::Fonts& f = b.ui().fonts;
    h.one_line = widgets::text_width(f.text, h.what) + widgets::text_width(f.strong, h.spare) + 12.0F <= b.width();
    if (!h.one_line) h.name_height_px = widgets::text_height(f.text, h.what, b.width());
    return h;
}

/// A bar from the left: how much of the limit is used; solid with a bar cut out where it is broken.
void draw_margin(Ui& u, Box box, const MarginHead& h, const Check& c) {
    const Box whole = box;
    Box head = box.cut_top(h.name_height_px, h.one_line ? 4.0F : 0.0F);
    if (!h.one_line) {
        widgets::write(u, u.fonts.text, head, h.what, u.theme.ink);
        head = box.cut_top(widgets::k_line_px, 4.0F);
    }
    write_line(u, u.fonts.strong, head.cut_right(widgets::text_width(u.fonts.strong, h.spare) + 1.0F, 8.0F), h.spare, u.theme.ink, widgets::Align::Right);
    if (h.one_line) write_line(u, u.fonts.text, head, h.what, u.theme.ink);
    const Box rail = box.cut_top(k_bar_px);
    const bool broken = c.status == CheckStatus::Fail;
    const float used = c.has_margin ? static_cast<float>(std::clamp(1.0 - c.margin, 0.0, 1.0)) : 0.0F;
    u.draw.AddRectFilled(rail.min(), {rail.x + rail.w * (broken ? 1.0F : used), rail.y + rail.h}, broken ? u.theme.no_go : u.theme.ink);
    u.draw.AddRect(rail.min(), rail.max(), u.theme.ink, 0.0F, 0, 2.0F);
    const ImVec2 middle = rail.centre();
    if (broken) u.draw.AddRectFilled({middle.x - 14.0F, middle.y - 3.0F}, {middle.x + 14.0F, middle.y + 3.0F}, u.theme.no_go_ink);
    u.mirror.push_back({"margin", "meter", h.what, h.spare, whole});
}

void add_margin(Builder& b, const Check& c) {
    const MarginHead h = margin_head(b, c);
    const float height = h.name_height_px + (h.one_line ? 4.0F : widgets::k_line_px + 4.0F) + k_bar_px;
    b.push(height, "margin", [h, c](Ui& u, const Box& box) { draw_margin(u, box, h, c); },
           {{.kind = Spoken::Kind::Text, .id = "margin", .label = h.what, .value = h.spare}});
}

/// Faults first, then what is still missing with a way to it.
void add_gaps(Builder& b) {
    const Evaluation& e = b.state().evaluation;
    for (const InputFault& f : e.faults) b.caution(fault_told(language_of(b.state().speech), f));
    if (e.not_measured.empty()) return;
    b.text(say(b.state().speech, words::k_missing, e.not_measured.size()), &app::Fonts::text);
    const std::string path = e.not_measured.front();
    const app::Input* input = app::find_input(path);
    const std::string label = b.said(words::k_go_to, {{"{what}", input != nullptr ? b.said(input->label) : path}});
    b.push(widgets::k_target_px, "to missing", [path, label](Ui& u, const Box& box) {
        if (widgets::button(u, box, {"to missing", label, widgets::ButtonLook::Action})) u.wish(app::GoToItem{step_of(path), path});
    });
}

void add_cautions(Builder& b) {
    std::vector<std::string> found;
    b.state().evaluation.worst.for_each([&](const Check& c) {
        if (c.status == CheckStatus::Caution) found.push_back(check_sentence(b.state(), c));
    });
    b.group(b.said(found.empty() ? words::k_no_cautions : words::k_cautions));
    for (std::string& words : found) b.caution(std::move(words));
    b.caution(std::string(language_of(b.state().speech).card.measured_values));
}

/// The check code, and beside it the way to advice where none stands above: a key alone would need a page of its own.
void add_check_code(Builder& b, bool with_advice) {
    const std::string words = b.said(words::k_check_code, {{"{code}", b.state().check_code}});
    if (!with_advice) return b.text(words, &app::Fonts::large);
    const Key key = way_to_advice(b.state());
    b.push(widgets::k_target_px, "check code",
           [words, key](Ui& u, const Box& box) {
               Box row = box;
               draw_row(u, row.cut_right(row.w * 0.4F, widgets::k_gap_px), {key});
               const float tall = widgets::text_height(u.fonts.large, words, row.w);
               const Box place{row.x, row.y + (row.h - tall) / 2.0F, row.w, tall};
               widgets::write(u, u.fonts.large, place, words, u.theme.ink);
               u.mirror.push_back({"text", "text", words, "", place});
           },
           {{.kind = Spoken::Kind::Text, .id = "text", .label = words}, {Spoken::Kind::Key, key.id, key.label, {}, std::nullopt, key.command}});
}

/// Who has signed this very plan.
void add_signatures(Builder& b) {
    const app::Signatures* signatures = app::signatures_of(b.state().signatures, b.plan());
    if (signatures == nullptr) return;
    std::string both;
    for (const app::Signature& s : signatures->people)
        both += (both.empty() ? "" : "\n") + b.said(words::k_signed, {{"{name}", s.name}, {"{role}", s.role}, {"{time}", s.time}});
    b.text(both, &app::Fonts::text);
}

void add_forces(Builder& b) {
    const app::State& s = b.state();
    if (s.shown_case >= s.evaluation.outcomes.size()) return;
    const Outcome& o = s.evaluation.outcomes[s.shown_case];
    const Language& language = language_of(s.speech);
    b.group(b.said(words::k_forces_of, {{"{case}", case_name(language, s.plan, o.setup)}}));
    if (o.equilibrium.status != SolveStatus::Solved) return b.caution(std::string(language.card.no_answer));
    const auto kN = [&](double force_N) { return app::amount(s.speech, kilonewtons(force_N), "kN"); };
    std::vector<Row> rows;
    const auto add = [&rows](std::string what, std::string how_much) { rows.push_back({std::move(what), std::move(how_much)}); };
    for (std::size_t i = 0; i < s.plan.guys.size(); ++i)
        add(b.said(words::k_force_of_guy, {{"{name}", s.plan.guys[i].name}}), kN(o.equilibrium.guy_tension_N[i]));
    for (std::size_t i = 0; i < s.plan.frame.legs.size(); ++i) {
        const Vec3 foot_N = o.foot_reaction_N[i];
        const std::string number = s.plan.frame.legs.size() > 1 ? " " + std::to_string(i + 1) : "";
        add(b.said(words::k_force_of_leg, {{"{n}", number}}), kN(o.equilibrium.leg_compression_N[i]));
        add(b.said(words::k_foot_sideways, {{"{n}", number}}), kN(std::hypot(foot_N.x, foot_N.y)));
    }
    for (std::size_t i = 0; i < s.plan.ropes.size(); ++i) add(b.said(words::k_force_of_pulley, {{"{name}", s.plan.ropes[i].name}}), kN(o.pulley_N[i]));
    if (o.applied_force_angle_rad > 0.0) add(b.said(words::k_force_angle), app::number(s.speech, degrees(o.applied_force_angle_rad), 1) + "\u00B0");
    add(b.said(words::k_head_moves), app::amount(s.speech, o.head_shift_m * 1000.0, "mm"));
    b.rows(rows);
}

}  // namespace

void add_margin_items(Builder& b) {
    if (b.state().evaluation.closest.empty()) return;
    b.group(b.said(words::k_all_margins));
    for (const Check& c : b.state().evaluation.closest) add_margin(b, c);
}

void add_card_items(Builder& b) {
    const Evaluation& e = b.state().evaluation;
    b.group(b.said(words::k_card));
    add_gaps(b);
    if (e.verdict == Verdict::NoGo) add_ways_to_advice(b);
    if (e.verdict != Verdict::NotChecked && !e.closest.empty()) {
        b.text(check_sentence(b.state(), e.closest.front()), &app::Fonts::strong);
        for (std::size_t i = 0; i < std::min(k_closest_on_card, e.closest.size()); ++i) add_margin(b, e.closest[i]);
        add_check_code(b, e.verdict == Verdict::Go);
        add_signatures(b);
        add_cautions(b);
        add_forces(b);
    }
    b.group(b.said(words::k_what_this_is_not));
    for (const std::string_view note : language_of(b.state().speech).card.notes) b.caution(std::string(note));
}

}  // namespace guywright::screens
