#include "wasm/screens/parts.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/widgets/verdict_mark.hpp"
#include "wasm/words/card.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

/// Triangle with the number of cautions, at the left end of `box`.
void draw_caution_count(Ui& ui, const app::Speech& speech, Box& box, int count) {
    const Box place = box.cut_left(44.0F + widgets::text_width(ui.fonts.large, std::to_string(count)), 8.0F);
    widgets::caution_shape(ui, {place.x + 20.0F, place.y + place.h / 2.0F}, 19.0F);
    write_line(ui, ui.fonts.large, {place.x + 42.0F, place.y, place.w - 42.0F, place.h}, std::to_string(count), ui.theme.ink);
    ui.mirror.push_back({"cautions", "text", std::string(say(speech, words::k_caution_count)), std::to_string(count), place});
}

float widest_part(ImFont* font, std::string_view words) {
    float wide = 0.0F;
    for (std::size_t at = 0; at <= words.size();) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        wide = std::max(wide, widgets::text_width(font, words.substr(at, end - at)));
        at = end + 1;
    }
    return wide;
}

/// The largest face in which the word fits, on two lines if need be: it is never cut.
void draw_word(Ui& ui, Box& row, std::string_view word, ImU32 ink, bool alone) {
    for (ImFont* font : {ui.fonts.giant, ui.fonts.huge, ui.fonts.large}) {
        const float wide = widgets::text_width(font, word) + 2.0F;
        if (font == ui.fonts.giant && row.h < 100.0F) continue;
        if (wide <= row.w * (alone ? 1.0F : 0.46F)) return write_line(ui, font, row.cut_left(wide, 14.0F), word, ink);
    }
    const Box words = row.cut_left(std::max(row.w * (alone ? 1.0F : 0.46F), widest_part(ui.fonts.large, word) + 2.0F), 10.0F);
    const float tall = widgets::text_height(ui.fonts.large, word, words.w);
    widgets::write(ui, ui.fonts.large, {words.x, words.y + (words.h - tall) / 2.0F, words.w, tall}, word, ink);
}

/// As many words as fit; the rest is on the card.
void draw_reason(Ui& ui, const Box& box, const std::string& why, ImU32 ink) {
    std::string shown = why;
    while (!shown.empty() && widgets::text_height(ui.fonts.text, shown, box.w) > box.h + 4.0F) {
        const std::size_t space = shown.find_last_of(' ', shown.size() - 2);
        shown = space == std::string::npos ? std::string() : shown.substr(0, space) + "\u2026";
    }
    const float tall = widgets::text_height(ui.fonts.text, shown, box.w);
    widgets::write(ui, ui.fonts.text, {box.x, box.y + (box.h - tall) / 2.0F, box.w, tall}, shown, ink);
}

}  // namespace

void draw_strip(Ui& ui, const app::State& state, const Box& box) {
    const Headline headline = screens::headline(state);
    if (widgets::touch(ui, box, "strip")) ui.wish(app::GoTo{app::Step::Card, 0});
    if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible) ui.focus = box.inner(9.0F);  // it reaches the screen's edge
    headline.verdict ? widgets::verdict_ground(ui, box, *headline.verdict) : widgets::practice_ground(ui, box);
    const ImU32 ink = headline.verdict ? widgets::verdict_ink(ui.theme, *headline.verdict) : ui.theme.ink;
    Box row = box.inner(headline.verdict ? 10.0F : 14.0F);  // clear of the stripes of practice
    const float radius = std::min(40.0F, row.h * 0.42F);
    if (headline.verdict) widgets::verdict_shape(ui, row.cut_left(2.0F * radius + 4.0F, 10.0F).centre(), radius, *headline.verdict);
    const bool alone = row.h > 100.0F && row.w < 560.0F;  // on a phone's card the reason stands below
    draw_word(ui, row, headline.word, ink, alone);
    if (const int count = caution_count(state.evaluation); headline.verdict == Verdict::Go && count > 0 && row.w > 60.0F)
        draw_caution_count(ui, state.speech, row, count);
    if (!alone) draw_reason(ui, row, headline.why, ink);
    ui.mirror.push_back({"strip", "button", headline.word, headline.why, box});
}

}  // namespace guywright::screens
