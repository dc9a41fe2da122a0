#include "wasm/screens/reading.hpp"

#include <cmath>

#include "wasm/app/inputs.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/widgets/hold_drawing.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/reading.hpp"

namespace guywright::screens {
namespace {

using app::Reading;
using app::ReadingKind;
using widgets::Box;
using widgets::Ui;

constexpr const char* k_degree = "\u00B0";

std::string one_decimal(const app::State& s, double deg) { return app::short_number(s.speech, std::round(deg * 10.0) / 10.0) + k_degree; }
std::string within(const app::State& s, double deg) { return "\u00B1 " + one_decimal(s, deg); }

const app::Said& how_to_hold(ReadingKind kind, std::string_view path) {
    switch (kind) {
        case ReadingKind::Inclination: return words::k_hold_inclination;
        case ReadingKind::LegLean: return words::k_hold_leg;
        case ReadingKind::PlaneLean: return words::k_hold_plane;
        case ReadingKind::StraightOut: return words::k_hold_out;
        case ReadingKind::Bearing: break;
    }
    return path.starts_with("ropes[") ? words::k_hold_haul : path.starts_with("feet[") ? words::k_hold_tie : words::k_hold_guy;
}

const app::Said& tolerance_grows(ReadingKind kind) {
    switch (kind) {
        case ReadingKind::Inclination: return words::k_inclinations_grow;
        case ReadingKind::LegLean:
        case ReadingKind::PlaneLean: return words::k_leans_grow;
        case ReadingKind::Bearing:
        case ReadingKind::StraightOut: break;
    }
    return words::k_bearings_grow;
}

std::string steady_words(const app::State& s, const Reading& r, ReadingKind kind) {
    const std::string spread = said(s, words::k_spread, {{"{within}", within(s, r.spread_deg)}});
    if (!app::needs_compass(kind)) return spread;
    const std::string heading = one_decimal(s, r.value_deg);
    if (!std::isfinite(r.told_error_deg)) return spread + "\n" + said(s, words::k_compass_not_told, {{"{heading}", heading}});
    return spread + "\n" + said(s, words::k_compass_told, {{"{heading}", heading}, {"{within}", within(s, r.told_error_deg)}});
}

std::string state_words(const app::State& s, const Reading& r, ReadingKind kind) {
    switch (r.status) {
        case Reading::Status::Waiting: return said(s, words::k_waiting);
        case Reading::Status::HoldFlatter: return said(s, words::k_flatter);
        case Reading::Status::TurnScreen: return said(s, words::k_turn_screen);
        case Reading::Status::Inaccurate: return said(s, words::k_inaccurate);
        case Reading::Status::Moving: return said(s, words::k_moving);
        case Reading::Status::Steady: break;
    }
    return steady_words(s, r, kind);
}

/// What taking it does to the plan's tolerance: it never shrinks, and it never grows unsaid.
std::string effect_words(const app::State& s, const app::Taken& t, ReadingKind kind) {
    const std::string before = within(s, *t.tolerance_deg);
    if (t.error_deg <= *t.tolerance_deg) return said(s, words::k_as_in_plan, {{"{within}", before}});
    return said(s, tolerance_grows(kind), {{"{within}", within(s, t.error_deg)}, {"{before}", before}});
}

std::string title_of_path(const app::State& s, const std::string& path, ReadingKind kind) {
    if (kind == ReadingKind::StraightOut) return said(s, words::k_straight_out);
    const app::Input* input = app::find_input(path);
    const std::string label = input != nullptr ? said(s, input->label) : path;
    const std::size_t i = app::index_in(path);
    return path.starts_with("guys[") && i < s.plan.guys.size() ? said(s, words::k_of_guy, {{"{what}", label}, {"{name}", s.plan.guys[i].name}}) : label;
}

constexpr float k_title_px = 36.0F, k_apart_px = 8.0F, k_value_px = 52.0F;

void draw_keys(Ui& ui, Box row, const ReadingWords& words) {
    const Box cancel = row.cut_left((row.w - widgets::k_gap_px) / 2.0F, widgets::k_gap_px);
    if (widgets::button(ui, cancel, {"reading cancel", words.cancel})) ui.wish(app::CloseReading{});
    if (widgets::button(ui, row, {"reading take", words.take, widgets::ButtonLook::Action, words.can_take})) ui.wish(app::TakeReading{});
}

}  // namespace

ReadingWords reading_words(const app::State& s) {
    const app::ReadingInHand& hand = *s.device.reading;
    const ReadingKind kind = app::reading_kind(s.plan, hand.path).value_or(ReadingKind::Inclination);
    ReadingWords words{.title = title_of_path(s, hand.path, kind),
                       .how = said(s, how_to_hold(kind, hand.path)),
                       .value = {},
                       .state = said(s, words::k_refused),
                       .effect = {},
                       .take = said(s, words::k_take),
                       .cancel = said(s, words::k_cancel)};
    if (s.device.refused) return words;
    const Reading r = hand.reader.read(kind, range::error_deg.max);
    Plan copy = s.plan;
    const app::Taken t = app::taken(copy, kind, r);
    words.can_take = r.status == Reading::Status::Steady;
    words.state = hand.fault.empty() ? state_words(s, r, kind) : hand.fault;
    if (r.shows_value()) words.value = app::short_number(s.speech, t.value_deg) + k_degree;
    if (words.can_take) words.effect = effect_words(s, t, kind);
    return words;
}

void draw_reading(Ui& ui, const app::State& state, Box box) {
    const ReadingWords words = reading_words(state);
    draw_keys(ui, box.cut_bottom(widgets::k_target_px, 12.0F), words);
    const Box title = box.cut_top(k_title_px, k_apart_px);  // as high as two lines of the smaller face
    if (widgets::text_width(ui.fonts.large, words.title) <= title.w) write_line(ui, ui.fonts.large, title, words.title, ui.theme.ink);
    else widgets::write(ui, ui.fonts.strong, title, words.title, ui.theme.ink);
    const Box how = box.cut_top(widgets::text_height(ui.fonts.text, words.how, box.w), k_apart_px);
    widgets::write(ui, ui.fonts.text, how, words.how, ui.theme.ink);
    const std::string below = words.effect.empty() ? words.state : words.state + "\n" + words.effect;
    const Box lines = box.cut_bottom(widgets::text_height(ui.fonts.text, below, box.w), k_apart_px);
    widgets::write(ui, ui.fonts.text, lines, below, ui.theme.ink);
    const Box value = box.cut_bottom(k_value_px, k_apart_px);
    write_line(ui, ui.fonts.huge, value, words.value, ui.theme.ink, widgets::Align::Centre);
    const auto kind = app::reading_kind(state.plan, state.device.reading->path);
    if (kind) widgets::draw_hold(ui, box, *kind);
    ui.mirror.push_back({"reading", "text", words.title, words.value, value});
    ui.mirror.push_back({"reading state", "text", words.state, words.effect, lines});
}

}  // namespace guywright::screens
