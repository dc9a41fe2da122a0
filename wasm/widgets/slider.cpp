#include "wasm/widgets/slider.hpp"

#include <cmath>

#include "wasm/widgets/hold_drawing.hpp"
#include "wasm/words/keys.hpp"

namespace guywright::widgets {
namespace {

constexpr float k_head_px = 44.0F;
constexpr float k_thumb_px = 30.0F;
constexpr float k_rail_px = 8.0F;
constexpr float k_ends_px = 20.0F;  ///< line with the range, below the rail

/// Ends that lie on whole steps within what is allowed.
app::Scale scale_of(const SliderText& t) {
    app::Scale scale = app::scale_of(t.input, t.speech);
    if (!t.ends) return scale;
    constexpr double k_dust = 1e-9;
    const double a = scale.shown(t.ends->min), b = scale.shown(t.ends->max), step = scale.slide.step;
    scale.slide.from = std::ceil(std::min(a, b) / step - k_dust) * step;
    scale.slide.to = std::floor(std::max(a, b) / step + k_dust) * step;
    return scale;
}
double shown(const SliderText& t) { return scale_of(t).shown(t.value); }
std::string label_of(const SliderText& t) { return t.label.empty() ? std::string(say(t.speech, t.input.label)) : t.label; }
std::string how_of(const SliderText& t) { return t.brief ? std::string() : app::how_text(t.input, t.speech); }
std::string when_not_entered(const SliderText& t) { return t.measured ? std::string() : std::string(say(t.speech, words::k_comma_not_entered)); }

/// The nearest whole number of steps.
double stepped(const app::Slide& slide, double value) { return std::round(value / slide.step) * slide.step; }

/// Nudging a bearing past north goes round; everything else stops at the ends of its slider, unless it is past them already.
double nudged(const app::Slide& slide, double from, double steps) {
    double to = stepped(slide, from + steps * slide.step);
    const bool turns = slide.from == 0.0 && slide.to == 360.0;
    if (turns) return to < 0.0 ? to + 360.0 : to >= 360.0 ? to - 360.0 : to;
    if (steps > 0.0) return from > slide.to ? from : std::min(to, slide.to);
    return from < slide.from ? from : std::max(to, slide.from);
}

/// What shows as before stays as it was to the last digit, whatever the units.
void wish_value(Ui& ui, const SliderText& t, double to) { ui.wish(app::SetNumber{t.path, to == shown(t) ? t.value : scale_of(t).kept(to)}); }

void nudge(Ui& ui, const SliderText& t, double steps) { wish_value(ui, t, nudged(scale_of(t).slide, shown(t), steps)); }

std::string value_text(const SliderText& t) { return app::shown_value(t.input, t.speech, t.value) + (t.measured ? "" : " ?"); }

float value_width(const Ui& ui, const SliderText& t) { return std::max(96.0F, text_width(ui.fonts.large, value_text(t)) + 24.0F); }

void draw_value(Ui& ui, const Box& value_box, const Box& reach, const SliderText& t) {
    const std::string value = value_text(t);
    if (touch(ui, reach, "value " + t.path)) ui.wish(app::OpenKeypad{t.path});
    ui.draw.AddRectFilled(value_box.min(), value_box.max(), t.measured ? ui.theme.raised : ui.theme.field, 6.0F);
    ui.draw.AddRect(value_box.min(), value_box.max(), ui.theme.ink, 6.0F, 0, 2.0F);
    write_line(ui, ui.fonts.large, value_box.inner(6.0F), value, ui.theme.ink, Align::Centre);
    ui.mirror.push_back({"value " + t.path, "button", label_of(t), app::shown_value(t.input, t.speech, t.value) + when_not_entered(t), reach});
}

/// Label, and beside it the tolerance where there is room.
void draw_label(Ui& ui, Box row, const SliderText& t) {
    const std::string label = label_of(t), beside = t.measured ? t.error : std::string(say(t.speech, words::k_not_entered));
    const float beside_wide = text_width(ui.fonts.text, beside) + 1.0F;
    const bool room = row.w - beside_wide - 8.0F >= text_width(ui.fonts.strong, label);
    if (!beside.empty() && room) write_line(ui, ui.fonts.text, row.cut_right(beside_wide, 8.0F), beside, ui.theme.ink);
    write_line(ui, ui.fonts.strong, row, label, ui.theme.ink);
}

void draw_head(Ui& ui, Box row, const SliderText& t) {
    const float above_px = t.brief ? 0.5F * (k_target_px - k_head_px) : 0.0F;
    row = {row.x, row.y + above_px, row.w, k_head_px};
    const Box value_box = row.cut_right(value_width(ui, t), 8.0F);
    draw_value(ui, value_box, {value_box.x, value_box.y - 14.0F, value_box.w, k_target_px}, t);
    draw_label(ui, row, t);
}

/// Where the device can measure it, label and how stand beside the key for that and the value.
float words_width(const Ui& ui, const SliderText& t, float width) { return width - value_width(ui, t) - k_target_px - 16.0F; }

float head_height(const Ui& ui, const SliderText& t, float width) {
    if (t.brief) return k_target_px;  // nothing below the value to lend it height
    if (!t.device) return k_head_px + text_height(ui.fonts.text, how_of(t), width) + 4.0F;
    return std::max(k_target_px, k_line_px + text_height(ui.fonts.text, app::how_text(t.input, t.speech), words_width(ui, t, width))) + 8.0F;
}

void draw_take_key(Ui& ui, const Box& box, const SliderText& t) {
    const std::string id = "take " + t.path;
    if (touch(ui, box, id)) ui.wish(app::StartReading{t.path});
    ui.draw.AddRectFilled(box.min(), box.max(), ui.theme.raised, 8.0F);
    ui.draw.AddRect(box.min(), box.max(), ui.theme.ink, 8.0F, 0, 3.0F);
    Box inside = box.inner(8.0F);
    write_line(ui, ui.fonts.strong, inside.cut_bottom(20.0F, 4.0F), say(t.speech, words::k_take_short), ui.theme.ink, Align::Centre);
    draw_device_sign(ui, inside, *t.device);
    ui.mirror.push_back({id, "button", std::string(say(t.speech, words::k_take_from_device)), "", box});
}

void draw_head_with_device(Ui& ui, Box box, const SliderText& t) {
    const Box value_box = box.cut_right(value_width(ui, t), 8.0F);
    const Box reach{value_box.x, value_box.y, value_box.w, k_target_px};
    draw_value(ui, {value_box.x, value_box.y + 14.0F, value_box.w, k_head_px}, reach, t);
    const Box key = box.cut_right(k_target_px, 8.0F);
    draw_take_key(ui, {key.x, key.y, key.w, k_target_px}, t);
    draw_label(ui, box.cut_top(k_line_px), t);
    write(ui, ui.fonts.text, box, app::how_text(t.input, t.speech), ui.theme.ink);
}

void draw_rail(Ui& ui, const Box& track, const SliderText& t, bool held) {
    const app::Slide slide = scale_of(t).slide;
    const float share = static_cast<float>(std::clamp((shown(t) - slide.from) / (slide.to - slide.from), 0.0, 1.0));
    const float y = track.y + (track.h - k_ends_px) / 2.0F;
    const float left = track.x + k_thumb_px / 2.0F, right = track.x + track.w - k_thumb_px / 2.0F;
    const float x = left + share * (right - left);
    const ImU32 ink = ui.theme.ink;
    ui.draw.AddRectFilled({left, y - k_rail_px / 2.0F}, {right, y + k_rail_px / 2.0F}, ui.theme.raised, 4.0F);
    ui.draw.AddRect({left, y - k_rail_px / 2.0F}, {right, y + k_rail_px / 2.0F}, ink, 4.0F, 0, 2.0F);
    if (t.measured) ui.draw.AddRectFilled({left, y - k_rail_px / 2.0F}, {x, y + k_rail_px / 2.0F}, ink, 4.0F);
    if (t.drawn) {
        const float drawn_share = static_cast<float>(std::clamp((scale_of(t).shown(*t.drawn) - slide.from) / (slide.to - slide.from), 0.0, 1.0));
        const float at = left + drawn_share * (right - left);
        ui.draw.AddTriangleFilled({at - 9.0F, y - 24.0F}, {at + 9.0F, y - 24.0F}, {at, y - 11.0F}, ink);
        ui.draw.AddLine({at, y - 12.0F}, {at, y + 14.0F}, ink, 3.0F);
    }
    const ImVec2 from{x - k_thumb_px / 2.0F, y - 22.0F}, to{x + k_thumb_px / 2.0F, y + 22.0F};
    ui.draw.AddRectFilled(from, to, !t.measured ? ui.theme.field : held ? ui.theme.action : ink, 7.0F);
    ui.draw.AddRect(from, to, ink, 7.0F, 0, 3.0F);
    for (const float shift : {-5.0F, 5.0F}) ui.draw.AddLine({x + shift, y - 10.0F}, {x + shift, y + 10.0F}, t.measured ? ui.theme.field : ink, 2.0F);
    Box ends{track.x, track.y + track.h - k_ends_px, track.w, k_ends_px};
    write_line(ui, ui.fonts.text, ends, number(t.speech, slide.from, slide.decimals), ink);
    write_line(ui, ui.fonts.text, ends, number(t.speech, slide.to, slide.decimals), ink, Align::Right);
}

/// How far the value goes, as shown, when the finger has gone `px` along a rail of `rail_px`. The first finger's width is for
/// single steps, however long the slider's range is; beyond it the value runs ahead.
double travelled(const app::Slide& slide, float px, float rail_px) {
    constexpr float wander_px = 8.0F;  // a finger that rests wanders so far
    constexpr float fine_px = 48.0F;
    constexpr double px_per_step = 4.0, run_ahead = 1.3;
    const double range_per_px = (slide.to - slide.from) / rail_px;
    const double fine = std::min(range_per_px, slide.step / px_per_step);
    const double gone = std::max(0.0F, std::abs(px) - wander_px);
    const double by = std::min<double>(gone, fine_px) * fine + std::max(0.0, gone - fine_px) * range_per_px * run_ahead;
    return std::copysign(by, static_cast<double>(px));
}

void drag(Ui& ui, const Box& track, const SliderText& t) {
    if (ImGui::IsItemActivated()) ui.hand = {t.path, t.value};
    if (!ImGui::IsItemActive() || ui.hand.path != t.path || !ImGui::IsMouseDown(ImGuiMouseButton_Left)) return;
    const ImGuiIO& io = ImGui::GetIO();
    const app::Scale scale = scale_of(t);
    const double by = travelled(scale.slide, io.MousePos.x - io.MouseClickedPos[0].x, track.w - k_thumb_px);
    if (by == 0.0 && ui.hand.from_value == t.value) return;  // a tap enters nothing
    const double from = scale.shown(ui.hand.from_value), low = std::min(scale.slide.from, from), high = std::max(scale.slide.to, from);
    const double to = by == 0.0 ? from : std::clamp(stepped(scale.slide, from + by), low, high);
    const double kept = to == from ? ui.hand.from_value : scale.kept(to);  // there and back is as if nothing had been
    if (kept != t.value || !t.measured) ui.wish(app::SetNumber{t.path, kept});
}

}  // namespace

float slider_height(const Ui& ui, const SliderText& text, float width) { return head_height(ui, text, width) + k_target_px; }

void slider(Ui& ui, Box box, const SliderText& t) {
    const std::string& path = t.path;
    Box row = box.cut_bottom(k_target_px);
    if (t.device) {
        draw_head_with_device(ui, box, t);
    } else {
        draw_head(ui, box.cut_top(k_head_px), t);
        if (!t.brief) write(ui, ui.fonts.text, box, how_of(t), ui.theme.ink);
    }
    if (button(ui, row.cut_left(k_target_px, 10.0F), {"less " + path, "\u2212", ButtonLook::Plain, true, true})) nudge(ui, t, -1.0);
    if (button(ui, row.cut_right(k_target_px, 10.0F), {"more " + path, "+", ButtonLook::Plain, true, true})) nudge(ui, t, 1.0);
    touch(ui, row, "slide " + path);
    if (const int steps = widgets::arrow_pressed(); steps != 0) nudge(ui, t, steps);
    drag(ui, row, t);
    draw_rail(ui, row, t, ImGui::IsItemActive());
    ui.mirror.push_back({"slide " + path, "slider", label_of(t), app::shown_number(t.input, t.speech, t.value) + when_not_entered(t), row});
}

}  // namespace guywright::widgets
