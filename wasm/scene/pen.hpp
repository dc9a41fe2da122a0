#pragma once
#include <imgui.h>

#include <optional>

#include "wasm/scene/fit.hpp"

namespace guywright::scene {

/// `share` of b mixed into a; the alpha of a stays.
ImU32 mixed(ImU32 a, ImU32 b, float share);
ImU32 faded(ImU32 colour, float alpha);
inline ImVec2 imvec(Vec2 v) { return {static_cast<float>(v.x), static_cast<float>(v.y)}; }

struct Ink {
    ImU32 colour = 0;
    float width_px = 1.0F;
    float dash_px = 0.0F;  ///< 0: unbroken
};

/// Draws points of the site, seen by the eye, into the draw list. Cuts everything to the frame and to what lies ahead.
class Pen {
public:
    /// `unit_px`: width of a thin line; all other widths are multiples of it, so that a small picture is not clogged.
    Pen(ImDrawList& list, const Eye& eye, const ImageBox& frame, float unit_px) : list_(list), eye_(eye), frame_(frame), unit_px_(unit_px) {}

    void line(Vec3 a_m, Vec3 b_m, const Ink& ink);
    void area(std::span<const Vec3> corners_m, ImU32 colour);
    void outline(std::span<const Vec3> corners_m, const Ink& ink);
    void disc(Vec3 at_m, float radius_px, ImU32 colour);
    void ring(Vec3 at_m, float radius_px, const Ink& ink);
    void image_line(Vec2 a, Vec2 b, const Ink& ink);
    void image_area(std::span<const Vec2> corners, ImU32 colour);
    /// A solid head with its tip at `tip`, pointing along `direction` (image px).
    void arrow_head(Vec2 tip, Vec2 direction, float length_px, ImU32 colour);
    /// What words are written on, to whole px: its border is sharp, and plates that touch do not overlap.
    void plate(const ImageBox& box, ImU32 colour);
    void text(ImFont* font, float size_px, Vec2 middle, const char* words, ImU32 colour);

    [[nodiscard]] const Eye& eye() const { return eye_; }
    [[nodiscard]] const ImageBox& frame() const { return frame_; }
    [[nodiscard]] float unit_px() const { return unit_px_; }
    /// Image of a point; none behind the eye.
    [[nodiscard]] std::optional<Vec2> image(Vec3 at_m) const;

private:
    [[nodiscard]] bool near_frame(Vec2 at, double reach_px) const;
    void dashes(Vec2 a, Vec2 b, const Ink& ink);

    ImDrawList& list_;
    const Eye& eye_;
    ImageBox frame_;
    float unit_px_;
};

}  // namespace guywright::scene
