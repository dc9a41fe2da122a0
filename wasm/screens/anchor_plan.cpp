#include <cmath>

#include "engine/advice/guy_kit.hpp"
#include "wasm/screens/advice_drawings.hpp"
#include "wasm/screens/advice_items.hpp"
#include "wasm/words/advice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

/// From above, to scale: out is up, right is right.
struct Map {
    ImVec2 middle{};
    Vec3 middle_m{};
    double px_per_m = 1.0;

    [[nodiscard]] ImVec2 at(Vec3 m) const {
        return {middle.x - static_cast<float>((m.y - middle_m.y) * px_per_m), middle.y - static_cast<float>((m.x - middle_m.x) * px_per_m)};
    }
};

Map map_of(const std::vector<Vec3>& points_m, const Box& box) {
    Vec3 low = points_m.front(), high = low;
    for (const Vec3& p : points_m) {
        low = glm::min(low, p);
        high = glm::max(high, p);
    }
    constexpr float rim_px = 34.0F;
    constexpr double least_m = 1.0;
    const double wide = std::max(least_m, high.y - low.y), tall = std::max(least_m, high.x - low.x);
    const double scale = std::min(static_cast<double>(box.w - 2.0F * rim_px) / wide, static_cast<double>(box.h - 2.0F * rim_px) / tall);
    return {box.centre(), 0.5 * (low + high), std::max(1.0, scale)};
}

void draw_edge(Ui& ui, const Map& map, const Box& box) {
    const float y = map.at({0.0, 0.0, 0.0}).y;
    ui.draw.AddLine({box.x, y}, {box.x + box.w, y}, ui.theme.ink, 3.0F);
    for (float x = box.x + 8.0F; x < box.x + box.w; x += 16.0F) ui.draw.AddLine({x, y}, {x + 8.0F, y - 9.0F}, ui.theme.ink, 2.0F);
}

void draw_found(Ui& ui, const Map& map, Vec3 at_m, std::size_t i, bool used) {
    const ImVec2 at = map.at(at_m);
    constexpr float radius_px = 16.0F;
    ui.draw.AddCircleFilled(at, radius_px, used ? ui.theme.ink : ui.theme.field);
    ui.draw.AddCircle(at, radius_px, ui.theme.ink, 0, 3.0F);
    const std::string number = std::to_string(i + 1);
    write_line(ui, ui.fonts.strong, {at.x - radius_px, at.y - radius_px, 2.0F * radius_px, 2.0F * radius_px}, number, used ? ui.theme.field : ui.theme.ink,
               widgets::Align::Centre);
}

}  // namespace

void draw_anchor_plan(Ui& ui, const app::State& s, const Box& box) {
    const auto head_m = drawn_head_of(s.plan);
    if (!head_m) return;
    std::vector<Vec3> points_m = s.plan.candidate_anchors_m;
    points_m.push_back(*head_m);
    points_m.push_back({0.0, head_m->y, 0.0});  // the edge is always seen
    for (const LegPlan& leg : s.plan.frame.legs) points_m.push_back(leg.foot_m);
    const Map map = map_of(points_m, box);
    const std::vector<const AnchorSet*> sets = anchor_sets(s);
    const AnchorSet* shown = sets.empty() ? nullptr : sets[std::min(s.advice_shown.anchor_set, sets.size() - 1)];
    draw_edge(ui, map, box);
    for (const LegPlan& leg : s.plan.frame.legs) ui.draw.AddLine(map.at(leg.foot_m), map.at(*head_m), ui.theme.scene.leg, 8.0F);
    std::vector<bool> used(s.plan.candidate_anchors_m.size());
    std::string names;
    if (shown != nullptr)
        for (const std::size_t i : shown->anchors) {
            used[i] = true;
            names += (names.empty() ? "" : ", ") + std::to_string(i + 1);
            ui.draw.AddLine(map.at(*head_m), map.at(s.plan.candidate_anchors_m[i]), ui.theme.scene.guy, 5.0F);
        }
    ui.draw.AddCircleFilled(map.at(*head_m), 10.0F, ui.theme.field);
    ui.draw.AddCircle(map.at(*head_m), 10.0F, ui.theme.ink, 0, 4.0F);
    for (std::size_t i = 0; i < used.size(); ++i) draw_found(ui, map, s.plan.candidate_anchors_m[i], i, used[i]);
    draw_out_mark(ui, s, {box.x, box.y + box.h - 44.0F, box.w, 44.0F});  // the edge is mostly at the top
    ui.mirror.push_back({"anchors", "image", std::string(advice_title(s.speech, app::Step::Anchors)), names, box});
}

Box write_label(Ui& ui, ImFont* font, ImVec2 middle, const std::string& words, const Box& within) {
    const float wide = widgets::text_width(font, words) + 8.0F;
    constexpr float tall = widgets::k_line_px;
    Box room{middle.x - wide / 2.0F, middle.y - tall / 2.0F, wide, tall};
    room.x = std::clamp(room.x, within.x, std::max(within.x, within.x + within.w - wide));
    room.y = std::clamp(room.y, within.y, std::max(within.y, within.y + within.h - tall));
    ui.draw.AddRectFilled(room.min(), room.max(), ui.theme.field, 4.0F);
    write_line(ui, font, {room.x + 3.0F, room.y, wide - 6.0F, tall}, words, ui.theme.ink, widgets::Align::Centre);
    return room;
}

void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 colour, float width_px) {
    constexpr float dash_px = 9.0F;
    const float long_px = std::hypot(to.x - from.x, to.y - from.y);
    for (float at = 0.0F; at < long_px; at += 2.0F * dash_px) {
        const float a = at / long_px, b = std::min(1.0F, (at + dash_px) / long_px);
        list.AddLine({from.x + a * (to.x - from.x), from.y + a * (to.y - from.y)}, {from.x + b * (to.x - from.x), from.y + b * (to.y - from.y)}, colour,
                     width_px);
    }
}

void draw_out_mark(Ui& ui, const app::State& s, const Box& box) {
    const std::string words(app::say(s.speech, words::advice::k_out));
    const float x = box.x + 14.0F, y = box.y + 10.0F;
    ui.draw.AddTriangleFilled({x + 7.0F, y}, {x, y + 14.0F}, {x + 14.0F, y + 14.0F}, ui.theme.ink);
    ui.draw.AddLine({x + 7.0F, y + 12.0F}, {x + 7.0F, y + 26.0F}, ui.theme.ink, 4.0F);
    write_label(ui, ui.fonts.text, {x + 20.0F + widgets::text_width(ui.fonts.text, words) / 2.0F + 6.0F, y + 14.0F}, words, box);
}

}  // namespace guywright::screens
