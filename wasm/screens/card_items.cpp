#include "wasm/screens/card_items.hpp"

#include <algorithm>

#include "engine/codec/english.hpp"
#include "engine/codec/sentences.hpp"
#include "wasm/screens/inputs.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/widgets/verdict_mark.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

constexpr std::size_t k_closest_on_card = 3;
constexpr float k_bar_px = 22.0F;

struct CardBuilder {
    std::vector<Item>& items;
    const Ui& ui;
    const app::State& state;
    float width;

    void text(std::string words, ImFont* app::Fonts::*font, bool starts_group = false) {
        const float height = widgets::text_height(ui.fonts.*font, words, width);
        items.push_back({height, starts_group, {}, [words, font](Ui& u, const Box& box) {
                             widgets::write(u, u.fonts.*font, box, words, u.theme.ink);
                             u.mirror.push_back({"text", "text", words, "", box});
                         }});
    }
    void caution(std::string words) {
        constexpr float mark_px = 40.0F;
        const float height = std::max(36.0F, widgets::text_height(ui.fonts.text, words, width - mark_px));
        items.push_back({height, false, {}, [words](Ui& u, const Box& box) {
                             widgets::caution_shape(u, {box.x + 15.0F, box.y + 18.0F}, 15.0F);
                             widgets::write(u, u.fonts.text, {box.x + mark_px, box.y, box.w - mark_px, box.h}, words, u.theme.ink);
                             u.mirror.push_back({"caution", "text", words, "", box});
                         }});
    }
};

/// What is left of the limit, as words: "33 % to spare", "12 % over".
std::string spare_words(const Check& c) {
    if (!c.has_margin) return c.status == CheckStatus::Fail ? "broken" : "kept";
    const int percent = static_cast<int>(c.margin * 100.0);
    if (c.status == CheckStatus::Fail) return c.margin <= -1.0 || percent == 0 ? "broken" : std::to_string(-percent) + " % over";
    return std::to_string(percent) + " % to spare";
}

/// A bar from the left: how much of the limit is used; past the mark it is broken.
void draw_margin(Ui& u, Box box, const std::string& what, const Check& c) {
    Box head = box.cut_top(widgets::k_line_px, 4.0F);
    const std::string spare = spare_words(c);
    write_line(u, u.fonts.strong, head.cut_right(widgets::text_width(u.fonts.strong, spare), 8.0F), spare, u.theme.ink, widgets::Align::Right);
    write_line(u, u.fonts.text, head, what, u.theme.ink);
    const Box rail = box.cut_top(k_bar_px);
    const bool broken = c.status == CheckStatus::Fail;
    const float used = static_cast<float>(std::clamp(1.0 - c.margin, 0.0, 1.0));
    const float limit_x = rail.x + rail.w;
    if (!broken) u.draw.AddRectFilled(rail.min(), {rail.x + rail.w * (c.has_margin ? used : 0.0F), rail.y + rail.h}, u.theme.ink);
    if (broken) u.draw.AddRectFilled(rail.min(), rail.max(), u.theme.no_go);
    u.draw.AddRect(rail.min(), rail.max(), u.theme.ink, 0.0F, 0, 2.0F);
    if (broken) u.draw.AddRectFilled({limit_x - rail.w * 0.5F - 14.0F, rail.y + 8.0F}, {limit_x - rail.w * 0.5F + 14.0F, rail.y + 14.0F}, u.theme.no_go_ink);
    u.mirror.push_back({"margin", "meter", what, spare, box});
}

void add_margin(CardBuilder& b, const Check& c) {
    const std::string name = subject_name(k_english, b.state.plan, c);
    std::string what(k_english.of(c.id).what);
    what[0] = static_cast<char>(what[0] >= 'a' && what[0] <= 'z' ? what[0] - 'a' + 'A' : what[0]);
    if (!name.empty()) what += ": " + name;
    b.items.push_back({widgets::k_line_px + 4.0F + k_bar_px, false, {}, [what, c](Ui& u, const Box& box) { draw_margin(u, box, what, c); }});
}

/// Faults first, then what is still missing with a way to it.
void add_gaps(CardBuilder& b) {
    const Evaluation& e = b.state.evaluation;
    for (const InputFault& f : e.faults) b.caution(to_string(f));
    if (e.not_measured.empty()) return;
    b.text("Not entered yet: " + std::to_string(e.not_measured.size()) + ". Nothing is judged before every one is.", &app::Fonts::text);
    const std::string path = e.not_measured.front();
    const Input* input = find_input(path);
    const std::string label = "Go to: " + (input != nullptr ? std::string(input->label) : path);
    b.items.push_back({widgets::k_target_px, false, {}, [path, label](Ui& u, const Box& box) {
                           if (widgets::button(u, box, {"to missing", label, widgets::ButtonLook::Action})) u.wish(app::GoToPath{path});
                       }});
}

void add_cautions(CardBuilder& b) {
    std::vector<std::string> found;
    b.state.evaluation.checks.for_each([&](const Check& c) {
        if (c.status == CheckStatus::Caution) found.push_back(check_sentence(b.state, c));
    });
    b.text(found.empty() ? "No cautions from the checks" : "Cautions", &app::Fonts::large, true);
    for (std::string& words : found) b.caution(std::move(words));
    b.caution(std::string(k_english.card.measured_values));
}

/// Two columns a row: the part and what it carries.
void add_row(CardBuilder& b, std::string left, std::string right) {
    b.items.push_back({widgets::k_line_px + 4.0F, false, {}, [left, right](Ui& u, const Box& box) {
                           Box row = box;
                           write_line(u, u.fonts.strong, row.cut_right(widgets::text_width(u.fonts.strong, right), 10.0F), right, u.theme.ink, widgets::Align::Right);
                           write_line(u, u.fonts.text, row, left, u.theme.ink);
                           u.draw.AddLine({box.x, box.y + box.h}, {box.x + box.w, box.y + box.h}, u.theme.ink, 1.0F);
                           u.mirror.push_back({"force", "text", left, right, box});
                       }});
}

void add_forces(CardBuilder& b) {
    const app::State& s = b.state;
    if (s.shown_case >= s.evaluation.outcomes.size()) return;
    const Outcome& o = s.evaluation.outcomes[s.shown_case];
    b.text("What carries how much, " + case_name(k_english, s.plan, o.setup), &app::Fonts::large, true);
    if (o.equilibrium.status != SolveStatus::Solved) return b.caution(std::string(k_english.card.no_answer));
    const auto kN = [](double force_N) { return fixed_text(kilonewtons(force_N), 2) + " kN"; };
    for (std::size_t i = 0; i < s.plan.guys.size(); ++i) add_row(b, "Guy " + s.plan.guys[i].name, kN(o.equilibrium.guy_tension_N[i]));
    for (std::size_t i = 0; i < s.plan.frame.legs.size(); ++i) {
        const Vec3 foot_N = o.foot_reaction_N[i];
        add_row(b, "Leg", kN(o.equilibrium.leg_compression_N[i]));
        add_row(b, "Foot sideways", kN(std::hypot(foot_N.x, foot_N.y)));
    }
    for (std::size_t i = 0; i < s.plan.ropes.size(); ++i) add_row(b, "Pulley, rope " + s.plan.ropes[i].name, kN(o.pulley_N[i]));
    if (o.applied_force_angle_rad > 0.0) add_row(b, "Applied-force angle", fixed_text(degrees(o.applied_force_angle_rad), 1) + "\u00B0");
    add_row(b, "Head moves", fixed_text(o.head_shift_m * 1000.0, 0) + " mm");
}

}  // namespace

void add_margin_items(std::vector<Item>& items, const Ui& ui, const app::State& state, float width) {
    CardBuilder b{items, ui, state, width};
    if (state.evaluation.closest.empty()) return;
    b.text("All margins, the closest first", &app::Fonts::large, true);
    for (const Check& c : state.evaluation.closest) add_margin(b, c);
}

void add_card_items(std::vector<Item>& items, const Ui& ui, const app::State& state, float width) {
    CardBuilder b{items, ui, state, width};
    const Evaluation& e = state.evaluation;
    add_gaps(b);
    const bool judged = e.verdict != Verdict::NotChecked && !e.closest.empty();
    if (judged) {
        b.text(check_sentence(state, e.closest.front()), &app::Fonts::strong);
        for (std::size_t i = 0; i < std::min(k_closest_on_card, e.closest.size()); ++i) add_margin(b, e.closest[i]);
        b.text("Check code  " + state.check_code, &app::Fonts::large);
        add_cautions(b);
        add_forces(b);
    }
    b.text("What this is not", &app::Fonts::large, true);
    for (const std::string_view note : k_english.card.notes) b.caution(std::string(note));
}

}  // namespace guywright::screens
