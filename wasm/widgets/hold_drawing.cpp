#include "wasm/widgets/hold_drawing.hpp"

#include <array>
#include <cmath>

namespace guywright::widgets {
namespace {

constexpr float k_line_wide_px = 4.0F;
constexpr float k_lowest_px = 48.0F;  ///< less is no drawing

/// A square of side 1 in the middle of the box, x to the right and y up.
struct Sheet {
    ImDrawList& draw;
    ImVec2 corner;  ///< lower left
    float side;
    ImU32 ink, fill;

    [[nodiscard]] ImVec2 at(float x, float y) const { return {corner.x + x * side, corner.y - y * side}; }
    void line(ImVec2 from, ImVec2 to, float wide = k_line_wide_px) const { draw.AddLine(at(from.x, from.y), at(to.x, to.y), ink, wide); }
    void dot(ImVec2 p) const { draw.AddCircleFilled(at(p.x, p.y), 0.035F * side, ink); }

    /// A device whose long edge runs along `angle_rad` above the x axis.
    void device(ImVec2 middle, float angle_rad, float length, float width) const {
        const float c = std::cos(angle_rad), s = std::sin(angle_rad);
        const auto corner_at = [&](float u, float v) { return at(middle.x + u * c - v * s, middle.y + u * s + v * c); };
        const float l = length / 2.0F, w = width / 2.0F;
        const std::array<ImVec2, 4> outer{corner_at(-l, -w), corner_at(l, -w), corner_at(l, w), corner_at(-l, w)};
        draw.AddConvexPolyFilled(outer.data(), 4, fill);
        draw.AddPolyline(outer.data(), 4, ink, ImDrawFlags_Closed, k_line_wide_px);
    }

    void arrow(ImVec2 from, ImVec2 to) const {
        line(from, to);
        const float dx = to.x - from.x, dy = to.y - from.y, length = std::hypot(dx, dy), ux = dx / length, uy = dy / length;
        constexpr float barb = 0.09F;
        for (const float side_of : {-1.0F, 1.0F}) line(to, {to.x - barb * (ux + 0.6F * side_of * uy), to.y - barb * (uy - 0.6F * side_of * ux)});
    }
};

void ground(const Sheet& s) { s.line({-0.3F, 0.06F}, {1.3F, 0.06F}, 2.0F); }

void along_guy(const Sheet& s) {
    ground(s);
    s.dot({-0.1F, 0.06F});
    s.line({-0.1F, 0.06F}, {1.1F, 0.98F}, 3.0F);
    s.device({0.31F, 0.47F}, 0.654F, 0.62F, 0.07F);
}

void along_leg(const Sheet& s) {
    ground(s);
    s.line({0.3F, 0.06F}, {0.62F, 1.0F}, 6.0F);
    s.device({0.40F, 0.53F}, 1.243F, 0.5F, 0.07F);
    s.arrow({-0.25F, 0.72F}, {0.22F, 0.6F});  // where the eye is
    s.draw.AddCircle(s.at(-0.3F, 0.735F), 0.05F * s.side, s.ink, 0, 3.0F);
}

void across_legs(const Sheet& s) {
    ground(s);
    s.line({0.05F, 0.06F}, {0.5F, 1.0F}, 6.0F);
    s.line({0.95F, 0.06F}, {0.5F, 1.0F}, 6.0F);
    s.device({0.5F, 0.42F}, 0.0F, 0.8F, 0.3F);
}

/// Seen from above, the edge at the top.
void pointing(const Sheet& s, ImVec2 from, ImVec2 to) {
    const float angle = std::atan2(to.y - from.y, to.x - from.x);
    s.device(from, angle, 0.34F, 0.2F);
    s.arrow({from.x + 0.24F * std::cos(angle), from.y + 0.24F * std::sin(angle)}, to);
}

void edge_from_above(const Sheet& s) {
    s.line({-0.3F, 0.82F}, {1.3F, 0.82F}, 6.0F);
    for (int i = 0; i < 8; ++i) {
        const float x = -0.25F + 0.2F * static_cast<float>(i);
        s.line({x, 0.82F}, {x + 0.08F, 0.90F}, 2.0F);
    }
}

}  // namespace

void draw_hold(Ui& ui, const Box& box, app::ReadingKind kind) {
    const float side = std::min(box.h, box.w / 1.7F);
    if (side < k_lowest_px) return;
    const Sheet s{ui.draw, {box.x + (box.w - side) / 2.0F, box.y + (box.h + side) / 2.0F}, side, ui.theme.ink, ui.theme.raised};
    switch (kind) {
        case app::ReadingKind::Inclination: return along_guy(s);
        case app::ReadingKind::LegLean: return along_leg(s);
        case app::ReadingKind::PlaneLean: return across_legs(s);
        case app::ReadingKind::StraightOut: edge_from_above(s); return pointing(s, {0.5F, 0.2F}, {0.5F, 1.0F});
        case app::ReadingKind::Bearing:
            edge_from_above(s);
            s.dot({1.1F, 0.1F});
            return pointing(s, {0.3F, 0.55F}, {1.02F, 0.15F});
    }
}

void draw_device_sign(Ui& ui, const Box& box, app::ReadingKind kind) {
    const float side = std::min(box.w, box.h);
    const Sheet s{ui.draw, {box.x + (box.w - side) / 2.0F, box.y + (box.h + side) / 2.0F}, side, ui.theme.ink, ui.theme.field};
    if (app::needs_compass(kind)) {
        s.draw.AddCircle(s.at(0.5F, 0.5F), 0.42F * side, s.ink, 0, 3.0F);
        return s.arrow({0.34F, 0.24F}, {0.66F, 0.78F});
    }
    s.line({0.0F, 0.1F}, {1.0F, 0.1F}, 3.0F);
    s.device({0.5F, 0.52F}, 0.7F, 0.9F, 0.26F);
}

}  // namespace guywright::widgets
