#include <algorithm>
#include <cmath>

#include "engine/codec/tuning_sentences.hpp"
#include "wasm/screens/advice_drawings.hpp"
#include "wasm/screens/advice_items.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/words/advice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

/// Upright, to scale: out, or right, is to the right.
struct Upright {
    bool from_behind = false;
    ImVec2 middle{};
    double across_m = 0.0, up_m = 0.0, px_per_m = 1.0;  ///< what is in the middle

    [[nodiscard]] double across(Vec3 m) const { return from_behind ? -m.y : m.x; }
    [[nodiscard]] ImVec2 at(Vec3 m) const {
        return {middle.x + static_cast<float>((across(m) - across_m) * px_per_m), middle.y - static_cast<float>((m.z - up_m) * px_per_m)};
    }
};

Upright fitted(const std::vector<Vec3>& points_m, bool from_behind, const Box& box) {
    Upright view{.from_behind = from_behind, .middle = box.centre()};
    double left = HUGE_VAL, right = -HUGE_VAL, low = HUGE_VAL, high = -HUGE_VAL;
    for (const Vec3& p : points_m) {
        left = std::min(left, view.across(p));
        right = std::max(right, view.across(p));
        low = std::min(low, p.z);
        high = std::max(high, p.z);
    }
    constexpr float rim_px = 40.0F;
    constexpr double least_m = 0.5;
    view.across_m = 0.5 * (left + right);
    view.up_m = 0.5 * (low + high);
    view.px_per_m = std::max(1.0, std::min(static_cast<double>(box.w - 2.0F * rim_px) / std::max(least_m, right - left),
                                           static_cast<double>(box.h - 2.0F * rim_px) / std::max(least_m, high - low)));
    return view;
}

/// Ground up to the edge and the beginning of the face; from behind the edge hides all below it.
void draw_ground(Ui& ui, const Upright& view, double face_rad, const Box& box) {
    const ImVec2 edge = view.at({0.0, 0.0, 0.0});
    const float right = view.from_behind ? box.x + box.w : edge.x;
    ui.draw.AddLine({box.x, edge.y}, {right, edge.y}, ui.theme.ink, 3.0F);
    for (float x = box.x + 12.0F; x < right; x += 22.0F) ui.draw.AddLine({x, edge.y}, {x - 9.0F, edge.y + 10.0F}, ui.theme.ink, 2.0F);
    if (view.from_behind) return;
    const float long_px = box.w + box.h;
    ui.draw.AddLine(edge, {edge.x + long_px * static_cast<float>(std::cos(face_rad)), edge.y + long_px * static_cast<float>(std::sin(face_rad))}, ui.theme.ink,
                    3.0F);
}

/// The legs with their head somewhere, and the force there.
struct Standing {
    Vec3 head_m{0.0}, force{0.0};  ///< `force`: in metres of the drawing
    std::string label;
    bool dashed = false;
};

void draw_arrow(Ui& ui, ImVec2 from, ImVec2 to, bool dashed) {
    const float long_px = std::hypot(to.x - from.x, to.y - from.y);
    if (long_px < 12.0F) return;
    const ImVec2 along{(to.x - from.x) / long_px, (to.y - from.y) / long_px}, base{to.x - 16.0F * along.x, to.y - 16.0F * along.y};
    if (dashed) dashed_line(ui.draw, from, base, ui.theme.scene.resultant, 4.0F);
    else ui.draw.AddLine(from, base, ui.theme.scene.resultant, 5.0F);
    ui.draw.AddTriangleFilled(to, {base.x - 8.0F * along.y, base.y + 8.0F * along.x}, {base.x + 8.0F * along.y, base.y - 8.0F * along.x},
                              ui.theme.scene.resultant);
}

void draw_standing(Ui& ui, const Upright& view, const Frame& frame, const Standing& s) {
    const ImVec2 head = view.at(s.head_m);
    for (const LegPlan& leg : frame.legs) {
        if (s.dashed) dashed_line(ui.draw, view.at(leg.foot_m), head, ui.theme.scene.leg, 5.0F);
        else ui.draw.AddLine(view.at(leg.foot_m), head, ui.theme.scene.leg, 10.0F);
    }
    if (glm::length(s.force) > 0.0) draw_arrow(ui, head, view.at(s.head_m + s.force), s.dashed);
    ui.draw.AddCircleFilled(head, 9.0F, ui.theme.field);
    ui.draw.AddCircle(head, 9.0F, ui.theme.ink, 0, s.dashed ? 2.0F : 4.0F);
}

std::string label_of(const app::State& s, const app::Said& words, double angle_rad) {
    return with_degree_signs(app::said(s, words, {{"{angle}", quantity(telling(s), degrees(angle_rad), "deg")}}));
}

Vec3 drawn_force(Vec3 force_N, double length_m) {
    const double size_N = glm::length(force_N);
    return size_N > 0.0 ? force_N * (length_m / size_N) : Vec3{0.0};
}

}  // namespace

void draw_line_up(Ui& ui, const app::State& s, const app::Advisor& a, const Box& box) {
    const LineUp& l = a.tuning().line_up;
    const Model& model = a.evaluation().model;
    const double arrow_m = 0.45 * model.shortest_leg_m;
    const Vec3 way_m = l.head_m - model.drawn_head_m;
    const std::string before = l.stands_before ? label_of(s, words::advice::k_leg_now, l.angle_before_rad) : std::string();
    const std::array<Standing, 2> places{
        Standing{model.drawn_head_m, drawn_force(l.resultant_before_N, arrow_m), before, true},
        Standing{l.head_m, drawn_force(l.resultant_after_N, arrow_m), label_of(s, words::advice::k_leg_then, l.angle_after_rad), false}};
    std::vector<Vec3> points_m{{0.0, l.head_m.y, 0.0}};
    for (const LegPlan& leg : a.plan().frame.legs) points_m.push_back(leg.foot_m);
    for (const Standing& each : places)
        for (const Vec3 p : {each.head_m, each.head_m + each.force}) points_m.push_back(p);
    const Upright view = fitted(points_m, std::abs(way_m.y) > std::abs(way_m.x), box);
    draw_ground(ui, view, radians(a.plan().edge.face_deg), box);
    for (const Standing& each : places) draw_standing(ui, view, a.plan().frame, each);
    const float side = view.across(way_m) < 0.0 ? 1.0F : -1.0F;  // of the head as it stands, away from where it goes
    for (const Standing& each : places) {
        if (each.label.empty()) continue;
        const ImVec2 head = view.at(each.head_m);
        const float aside_px = widgets::text_width(ui.fonts.strong, each.label) / 2.0F + 24.0F;
        write_label(ui, ui.fonts.strong, {head.x + (each.dashed ? side : -side) * aside_px, head.y}, each.label, box.inner(4.0F));
    }
    ui.mirror.push_back(
        {"line up", "image", std::string(advice_title(s.speech, app::Step::LineUp)), before.empty() ? places[1].label : before + ", " + places[1].label, box});
}

}  // namespace guywright::screens
