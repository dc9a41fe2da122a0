#include "wasm/screens/reading.hpp"

#include <cmath>

#include "engine/plan/fault_text.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/widgets/hold_drawing.hpp"

namespace guywright::screens {
namespace {

using app::Reading;
using app::ReadingKind;
using widgets::Box;
using widgets::Ui;

constexpr const char* k_hold_inclination = "Lay the long edge along the guy, near its anchor, and keep still.";
constexpr const char* k_hold_leg = "Lay the long edge along the leg, the screen facing away from the side it leans to.";
constexpr const char* k_hold_plane = "Lay the back flat across both legs, the screen facing away from the side they lean to.";
constexpr const char* k_hold_out = "First the line straight out: hold the device flat, away from steel, its upper edge pointing straight out.";
constexpr const char* k_hold_guy = "Stand below the head, hold the device flat, away from steel, its upper edge pointing at the anchor.";
constexpr const char* k_hold_haul = "Stand below the head, hold the device flat, away from steel, its upper edge pointing at the redirect.";
constexpr const char* k_hold_tie = "Stand at the foot, hold the device flat, away from steel, its upper edge pointing at the anchor of the tie.";
constexpr const char* k_take = "Take it";
constexpr const char* k_cancel = "Cancel";
constexpr const char* k_straight_out = "Straight out";
constexpr const char* k_waiting = "Waiting for a steady reading\u2026";
constexpr const char* k_moving = "It moves too much. Lean it on something.";
constexpr const char* k_flatter = "Hold it flatter: so steep, a compass does not tell where its edge points.";
constexpr const char* k_turn_screen = "Turn the screen to face away from the side it leans to; so it does not tell which side that is.";
constexpr const char* k_inaccurate = "The compass is not accurate enough. Go away from steel, move the device in a figure of eight, or enter the bearing by hand.";
constexpr const char* k_refused = "The browser may not read the sensors here. Allow it in its settings, or enter the number by hand.";
constexpr const char* k_spread = "Spread over two seconds ";
constexpr const char* k_compass = "Compass ";
constexpr const char* k_told = ", accuracy told ";
constexpr const char* k_not_told = ", accuracy not told";
constexpr const char* k_in_plan = ", as the plan says.";
constexpr const char* k_grows = "Counts as ";
constexpr const char* k_all_such = ": taking it sets all ";
constexpr const char* k_to_that = " of the plan from ";
constexpr const char* k_to = " to ";
constexpr const char* k_plus_minus = "\u00B1 ";
constexpr const char* k_degree = "\u00B0";

std::string one_decimal(double deg) { return number_text(std::round(deg * 10.0) / 10.0) + k_degree; }
std::string within(double deg) { return k_plus_minus + one_decimal(deg); }

const char* how_to_hold(ReadingKind kind, std::string_view path) {
    switch (kind) {
        case ReadingKind::Inclination: return k_hold_inclination;
        case ReadingKind::LegLean: return k_hold_leg;
        case ReadingKind::PlaneLean: return k_hold_plane;
        case ReadingKind::StraightOut: return k_hold_out;
        case ReadingKind::Bearing: return path.starts_with("ropes[") ? k_hold_haul : path.starts_with("feet[") ? k_hold_tie : k_hold_guy;
    }
    return "";
}

const char* kind_in_plan(ReadingKind kind) {
    switch (kind) {
        case ReadingKind::Inclination: return "inclinations";
        case ReadingKind::LegLean:
        case ReadingKind::PlaneLean: return "leans";
        case ReadingKind::Bearing:
        case ReadingKind::StraightOut: return "bearings";
    }
    return "";
}

std::string state_words(const Reading& r, ReadingKind kind) {
    switch (r.status) {
        case Reading::Status::Waiting: return k_waiting;
        case Reading::Status::HoldFlatter: return k_flatter;
        case Reading::Status::TurnScreen: return k_turn_screen;
        case Reading::Status::Inaccurate: return k_inaccurate;
        case Reading::Status::Moving: return k_moving;
        case Reading::Status::Steady: break;
    }
    std::string words = k_spread + within(r.spread_deg);
    if (app::needs_compass(kind)) words += std::string("\n") + k_compass + one_decimal(r.value_deg) + (std::isfinite(r.told_error_deg) ? k_told + within(r.told_error_deg) : k_not_told);
    return words;
}

/// What taking it does to the plan's tolerance: it never shrinks, and it never grows unsaid.
std::string effect_words(const app::Taken& t, ReadingKind kind) {
    if (t.error_deg <= *t.tolerance_deg) return k_grows + within(*t.tolerance_deg) + k_in_plan;
    return k_grows + within(t.error_deg) + k_all_such + kind_in_plan(kind) + k_to_that + within(*t.tolerance_deg) + k_to + within(t.error_deg) + ".";
}

std::string title_of_path(const app::State& s, const std::string& path, ReadingKind kind) {
    if (kind == ReadingKind::StraightOut) return k_straight_out;
    const app::Input* input = app::find_input(path);
    const std::string label(input != nullptr ? input->label : std::string_view(path));
    const std::size_t i = app::index_in(path);
    return path.starts_with("guys[") && i < s.plan.guys.size() ? label + ", guy " + s.plan.guys[i].name : label;
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
    ReadingWords words{.title = title_of_path(s, hand.path, kind), .how = how_to_hold(kind, hand.path), .value = {}, .state = k_refused, .effect = {}, .take = k_take, .cancel = k_cancel};
    if (s.device.refused) return words;
    const Reading r = hand.reader.read(kind, range::error_deg.max);
    Plan copy = s.plan;
    const app::Taken t = app::taken(copy, kind, r);
    words.can_take = r.status == Reading::Status::Steady;
    words.state = hand.fault.empty() ? state_words(r, kind) : hand.fault;
    if (r.shows_value()) words.value = number_text(t.value_deg) + k_degree;
    if (words.can_take) words.effect = effect_words(t, kind);
    return words;
}

void draw_reading(Ui& ui, const app::State& state, Box box) {
    const ReadingWords words = reading_words(state);
    draw_keys(ui, box.cut_bottom(widgets::k_target_px, 12.0F), words);
    write_line(ui, ui.fonts.large, box.cut_top(k_title_px, k_apart_px), words.title, ui.theme.ink);
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
