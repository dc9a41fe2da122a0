#include "engine/codec/english.hpp"
#include "engine/codec/sentences.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/widgets/verdict_mark.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

std::string reason(const app::State& s) {
    const Evaluation& e = s.evaluation;
    if (!e.faults.empty()) return to_string(e.faults.front());
    if (!e.not_measured.empty()) return std::to_string(e.not_measured.size()) + " measurements still to enter";
    if (e.closest.empty()) return "";
    return sentence(k_english, s.plan, e, e.closest.front());
}

int caution_count(const Evaluation& e) {
    int count = 0;
    e.checks.for_each([&](const Check& c) { count += c.status == CheckStatus::Caution ? 1 : 0; });
    return count;
}

/// Triangle with the number of cautions, at the right end of a GO.
void draw_cautions(Ui& ui, Box& box, int count) {
    const Box place = box.cut_right(64.0F);
    widgets::caution_shape(ui, {place.x + 22.0F, place.y + place.h / 2.0F}, 20.0F);
    write_line(ui, ui.fonts.large, {place.x + 44.0F, place.y, 20.0F, place.h}, std::to_string(count), ui.theme.ink);
    ui.mirror.push_back({"cautions", "text", "cautions", std::to_string(count), place});
}

}  // namespace

void draw_strip(Ui& ui, const app::State& state, const Box& box) {
    const Verdict verdict = state.evaluation.verdict;
    if (widgets::touch(ui, box, "strip")) ui.wish(app::GoTo{app::Step::Card, 0});
    widgets::verdict_ground(ui, box, verdict);
    const ImU32 ink = widgets::verdict_ink(ui.theme, verdict);
    Box row = box.inner(10.0F);
    const Box mark = row.cut_left(60.0F, 8.0F);
    widgets::verdict_shape(ui, mark.centre(), 28.0F, verdict);
    const std::string_view word = widgets::verdict_word(verdict);
    const std::string why = reason(state);
    const bool roomy = row.w > 560.0F;
    ImFont* font = roomy || word.size() <= 6 ? ui.fonts.huge : ui.fonts.large;
    if (roomy) {
        write_line(ui, font, row.cut_left(widgets::text_width(font, word), 20.0F), word, ink);
        if (const int count = caution_count(state.evaluation); verdict == Verdict::Go && count > 0) draw_cautions(ui, row, count);
    } else {
        const float wide = std::max(132.0F, widgets::text_width(ui.fonts.large, word));
        Box words = row.cut_left(std::min(wide, row.w * 0.5F), 10.0F);
        const int count = caution_count(state.evaluation);
        if (verdict == Verdict::Go && count > 0) {
            write_line(ui, font, words.cut_left(widgets::text_width(font, word), 6.0F), word, ink);
            widgets::caution_shape(ui, {words.x + 16.0F, words.y + words.h / 2.0F}, 16.0F);
            write_line(ui, ui.fonts.strong, {words.x + 36.0F, words.y, 20.0F, words.h}, std::to_string(count), ink);
        } else {
            write_line(ui, verdict == Verdict::NoGo ? ui.fonts.large : font, words, word, ink);
        }
    }
    // three lines at the most, the rest is on the card
    std::string shown = why;
    const float most_px = row.h + 4.0F;
    while (!shown.empty() && widgets::text_height(ui.fonts.text, shown, row.w) > most_px) {
        const std::size_t space = shown.find_last_of(' ', shown.size() - 2);
        shown = space == std::string::npos ? std::string() : shown.substr(0, space) + "\u2026";
    }
    const float tall = widgets::text_height(ui.fonts.text, shown, row.w);
    widgets::write(ui, ui.fonts.text, {row.x, row.y + (row.h - tall) / 2.0F, row.w, tall}, shown, ink);
    ui.mirror.push_back({"strip", "button", std::string(word), why, box});
}

}  // namespace guywright::screens
