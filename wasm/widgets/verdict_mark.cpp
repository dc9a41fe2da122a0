#include "wasm/widgets/verdict_mark.hpp"

#include <array>
#include <cmath>

namespace guywright::widgets {
namespace {

void dashes(ImDrawList& draw, ImVec2 from, ImVec2 to, ImU32 colour, float thick) {
    const float dx = to.x - from.x, dy = to.y - from.y, length = std::hypot(dx, dy);
    constexpr float dash = 12.0F, gap = 8.0F;
    for (float at = 0.0F; at < length; at += dash + gap) {
        const float a = at / length, b = std::min(at + dash, length) / length;
        draw.AddLine({from.x + a * dx, from.y + a * dy}, {from.x + b * dx, from.y + b * dy}, colour, thick);
    }
}

void dashed_rect(ImDrawList& draw, ImVec2 a, ImVec2 b, ImU32 colour, float thick) {
    dashes(draw, a, {b.x, a.y}, colour, thick);
    dashes(draw, {b.x, a.y}, b, colour, thick);
    dashes(draw, b, {a.x, b.y}, colour, thick);
    dashes(draw, {a.x, b.y}, a, colour, thick);
}

void tick(Ui& ui, ImVec2 c, float r) {
    ui.draw.AddCircle(c, r * 0.86F, ui.theme.go, 40, r * 0.26F);
    const std::array<ImVec2, 3> line{{{c.x - 0.40F * r, c.y + 0.04F * r}, {c.x - 0.10F * r, c.y + 0.34F * r}, {c.x + 0.42F * r, c.y - 0.32F * r}}};
    ui.draw.AddPolyline(line.data(), static_cast<int>(line.size()), ui.theme.go, 0, r * 0.24F);
}

/// Light on the solid ground, so the octagon is the ground's ink with the bar cut out.
void barred_octagon(Ui& ui, ImVec2 c, float r) {
    std::array<ImVec2, 8> corners{};
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const float turn = (static_cast<float>(i) + 0.5F) * 0.785398F;
        corners[i] = {c.x + r * std::cos(turn), c.y + r * std::sin(turn)};
    }
    ui.draw.AddConvexPolyFilled(corners.data(), static_cast<int>(corners.size()), ui.theme.no_go_ink);
    ui.draw.AddRectFilled({c.x - 0.58F * r, c.y - 0.17F * r}, {c.x + 0.58F * r, c.y + 0.17F * r}, ui.theme.no_go);
}

}  // namespace

std::string_view verdict_word(Verdict verdict) {
    switch (verdict) {
        case Verdict::Go: return "GO";
        case Verdict::NoGo: return "NO-GO";
        case Verdict::NotChecked: return "NOT CHECKED";
    }
    return "NOT CHECKED";
}

ImU32 verdict_ink(const Theme& theme, Verdict verdict) { return verdict == Verdict::NoGo ? theme.no_go_ink : theme.ink; }

void verdict_ground(Ui& ui, const Box& box, Verdict verdict) {
    switch (verdict) {
        case Verdict::NoGo: ui.draw.AddRectFilled(box.min(), box.max(), ui.theme.no_go); break;
        case Verdict::Go: {
            const Box rim = box.inner(3.0F);
            ui.draw.AddRect(rim.min(), rim.max(), ui.theme.go, 0.0F, 0, 6.0F);
            break;
        }
        case Verdict::NotChecked: {
            const Box rim = box.inner(3.0F);
            dashed_rect(ui.draw, rim.min(), rim.max(), ui.theme.ink, 3.0F);
            break;
        }
    }
}

void verdict_shape(Ui& ui, ImVec2 c, float r, Verdict verdict) {
    switch (verdict) {
        case Verdict::Go: tick(ui, c, r); break;
        case Verdict::NoGo: barred_octagon(ui, c, r); break;
        case Verdict::NotChecked: dashed_rect(ui.draw, {c.x - 0.8F * r, c.y - 0.8F * r}, {c.x + 0.8F * r, c.y + 0.8F * r}, ui.theme.ink, 3.0F); break;
    }
}

void practice_ground(Ui& ui, const Box& box) {
    constexpr float k_band_px = 8.0F, k_bar_px = 14.0F;
    for (const float y : {box.y, box.y + box.h - k_band_px}) {
        ui.draw.PushClipRect({box.x, y}, {box.x + box.w, y + k_band_px}, true);
        for (float x = box.x - k_band_px; x < box.x + box.w; x += 2.0F * k_bar_px)
            ui.draw.AddQuadFilled({x, y + k_band_px}, {x + k_band_px, y}, {x + k_band_px + k_bar_px, y}, {x + k_bar_px, y + k_band_px}, ui.theme.ink);
        ui.draw.PopClipRect();
    }
}

void caution_shape(Ui& ui, ImVec2 c, float r) {
    const ImVec2 top{c.x, c.y - r}, left{c.x - 0.95F * r, c.y + 0.75F * r}, right{c.x + 0.95F * r, c.y + 0.75F * r};
    ui.draw.AddTriangleFilled(top, right, left, ui.theme.caution);
    ui.draw.AddTriangle(top, right, left, ui.theme.ink, 2.0F);
    ui.draw.AddRectFilled({c.x - 0.09F * r, c.y - 0.45F * r}, {c.x + 0.09F * r, c.y + 0.22F * r}, ui.theme.caution_ink);
    ui.draw.AddCircleFilled({c.x, c.y + 0.47F * r}, 0.12F * r, ui.theme.caution_ink);
}

}  // namespace guywright::widgets
