#include <cmath>

#include "wasm/screens/advice_drawings.hpp"
#include "wasm/screens/advice_items.hpp"
#include "wasm/words/advice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

/// The chart: straight down in the middle, level at the rim.
struct Chart {
    ImVec2 middle{};
    float radius_px = 0.0F;

    [[nodiscard]] ImVec2 at(const Heading& h) const {
        const double off = std::min(h.off_down_deg, 100.0) / 90.0 * static_cast<double>(radius_px), bearing = radians(h.bearing_deg);
        return {middle.x + static_cast<float>(off * std::sin(bearing)), middle.y - static_cast<float>(off * std::cos(bearing))};
    }
    [[nodiscard]] Heading toward(ImVec2 p) const {
        const double right = static_cast<double>(p.x - middle.x), up = static_cast<double>(middle.y - p.y);
        return {wrapped_deg(degrees(std::atan2(right, up))), std::min(90.0, 90.0 * std::hypot(right, up) / static_cast<double>(radius_px))};
    }
};

bool keeps(const DirectionMap& map, const Heading& h) {
    const auto ring = static_cast<std::size_t>(std::lround(std::min(h.off_down_deg, 90.0) / 90.0 * static_cast<double>(map.rings())));
    return map.cell(ring, static_cast<std::size_t>(std::lround(h.bearing_deg / 360.0 * static_cast<double>(map.bearings())))).margin >= 0.0;
}

/// Slanting strokes over every direction in which the rig breaks.
void hatch_broken(Ui& ui, const Chart& c, const DirectionMap& map) {
    constexpr float apart_px = 11.0F, look_px = 4.0F;
    const float r = c.radius_px;
    for (float offset = -1.4F * r; offset < 1.4F * r; offset += apart_px) {
        float from = NAN;
        for (float along = -1.4F * r; along <= 1.4F * r + look_px; along += look_px) {
            const ImVec2 p{c.middle.x + 0.7071F * (along + offset), c.middle.y + 0.7071F * (along - offset)};
            const bool inside = std::hypot(p.x - c.middle.x, p.y - c.middle.y) <= r, broken = inside && !keeps(map, c.toward(p));
            if (broken && std::isnan(from)) from = along;
            if (broken || std::isnan(from)) continue;
            const ImVec2 a{c.middle.x + 0.7071F * (from + offset), c.middle.y + 0.7071F * (from - offset)};
            ui.draw.AddLine(a, {p.x - 0.7071F * look_px, p.y - 0.7071F * look_px}, ui.theme.no_go, 2.5F);
            from = NAN;
        }
    }
}

void draw_rings(Ui& ui, const Chart& c) {
    for (const float share : {1.0F / 3.0F, 2.0F / 3.0F}) ui.draw.AddCircle(c.middle, share * c.radius_px, ui.theme.ink, 0, 1.0F);
    ui.draw.AddLine({c.middle.x - c.radius_px, c.middle.y}, {c.middle.x + c.radius_px, c.middle.y}, ui.theme.ink, 1.0F);
    ui.draw.AddLine({c.middle.x, c.middle.y - c.radius_px}, {c.middle.x, c.middle.y + c.radius_px}, ui.theme.ink, 1.0F);
    ui.draw.AddCircle(c.middle, c.radius_px, ui.theme.ink, 0, 3.0F);
}

/// The part of the chart that the cases lie in, dashed.
void draw_sector(Ui& ui, const Chart& c, const WorkingSector& sector) {
    constexpr int pieces = 24;
    const double wide_deg = wrapped_deg(sector.to_bearing_deg - sector.from_bearing_deg);
    const auto arc = [&](double off_deg) {
        for (int i = 0; i < pieces; i += 2) {
            const double a = sector.from_bearing_deg + wide_deg * i / pieces, b = sector.from_bearing_deg + wide_deg * (i + 1) / pieces;
            ui.draw.AddLine(c.at({a, off_deg}), c.at({b, off_deg}), ui.theme.ink, 3.0F);
        }
    };
    arc(sector.least_off_deg);
    arc(sector.most_off_deg);
    for (const double bearing_deg : {sector.from_bearing_deg, sector.to_bearing_deg})
        dashed_line(ui.draw, c.at({bearing_deg, sector.least_off_deg}), c.at({bearing_deg, sector.most_off_deg}), ui.theme.ink, 3.0F);
}

void draw_marks(Ui& ui, const app::State& s, const Chart& c, const DirectionMap& map, const Box& box) {
    for (const CasePull& pull : map.cases()) {
        const ImVec2 at = c.at(pull.heading);
        ui.draw.AddCircleFilled(at, pull.case_index == k_holding ? 8.0F : 5.0F, ui.theme.field);
        ui.draw.AddCircleFilled(at, pull.case_index == k_holding ? 6.0F : 3.5F, ui.theme.ink);
    }
    const std::vector<Heading> guys = map.guys();
    for (std::size_t i = 0; i < guys.size(); ++i) {
        const ImVec2 at = c.at(guys[i]);
        ui.draw.AddRectFilled({at.x - 8.0F, at.y - 8.0F}, {at.x + 8.0F, at.y + 8.0F}, ui.theme.field);
        ui.draw.AddRectFilled({at.x - 6.0F, at.y - 6.0F}, {at.x + 6.0F, at.y + 6.0F}, ui.theme.ink);
        write_label(ui, ui.fonts.text, {at.x, at.y + 20.0F}, s.plan.guys[i].name, box);
    }
}

/// The direction looked at.
void draw_cross(Ui& ui, const Chart& c, const Heading& way) {
    const ImVec2 at = c.at(way);
    ui.draw.AddCircle(at, 17.0F, ui.theme.field, 0, 9.0F);
    ui.draw.AddCircle(at, 17.0F, ui.theme.ink, 0, 5.0F);
    for (const auto& [x, y] : {std::pair{1.0F, 0.0F}, std::pair{-1.0F, 0.0F}, std::pair{0.0F, 1.0F}, std::pair{0.0F, -1.0F}})
        ui.draw.AddLine({at.x + 17.0F * x, at.y + 17.0F * y}, {at.x + 29.0F * x, at.y + 29.0F * y}, ui.theme.ink, 5.0F);
}

/// The finger may slide over the chart.
void touch_chart(Ui& ui, const app::State& s, const Chart& c, const Box& box) {
    widgets::touch(ui, box, "directions");
    const ImGuiIO& io = ImGui::GetIO();
    if (ImGui::IsItemActive() && io.MouseDown[0] && ImGui::IsMousePosValid() && (io.MouseClicked[0] || io.MouseDelta.x != 0.0F || io.MouseDelta.y != 0.0F))
        ui.wish(app::LookToward{c.toward(io.MousePos)});
    const Heading at = s.advice_shown.toward;
    if (const int steps = widgets::arrow_pressed(); steps != 0) ui.wish(app::LookToward{{wrapped_deg(at.bearing_deg + 5.0 * steps), at.off_down_deg}});
}

}  // namespace

void draw_direction_chart(Ui& ui, const app::State& s, const DirectionMap& map, const Box& box) {
    const Chart c{{box.x + box.w / 2.0F, box.y + box.h / 2.0F + 8.0F}, std::max(40.0F, std::min(box.w, box.h - 16.0F) / 2.0F - 14.0F)};
    touch_chart(ui, s, c, box);
    hatch_broken(ui, c, map);
    draw_rings(ui, c);
    for (const MapLine& line : map.go_line()) ui.draw.AddLine(c.at(line.from), c.at(line.to), ui.theme.ink, 5.0F);
    draw_sector(ui, c, map.working_sector());
    draw_out_mark(ui, s, box);
    draw_marks(ui, s, c, map, box.inner(4.0F));
    draw_cross(ui, c, s.advice_shown.toward);
    ui.mirror.push_back(
        {"directions", "image", std::string(advice_title(s.speech, app::Step::Directions)), direction_words(s, map, s.advice_shown.toward), box});
}

}  // namespace guywright::screens
