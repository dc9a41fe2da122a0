#include "wasm/scene/pen.hpp"

namespace guywright::scene {

ImU32 mixed(ImU32 a, ImU32 b, float share) {
    ImVec4 x = ImGui::ColorConvertU32ToFloat4(a);
    const ImVec4 y = ImGui::ColorConvertU32ToFloat4(b);
    x.x += share * (y.x - x.x);
    x.y += share * (y.y - x.y);
    x.z += share * (y.z - x.z);
    return ImGui::ColorConvertFloat4ToU32(x);
}

ImU32 faded(ImU32 colour, float alpha) {
    ImVec4 c = ImGui::ColorConvertU32ToFloat4(colour);
    c.w *= alpha;
    return ImGui::ColorConvertFloat4ToU32(c);
}

std::optional<Vec2> Pen::image(Vec3 at_m) const {
    const Vec3 seen = seen_from(eye_, at_m);
    if (!is_ahead(eye_, seen)) return std::nullopt;
    return image_of_seen(eye_, seen);
}

void Pen::line(Vec3 a_m, Vec3 b_m, const Ink& ink) {
    const ImageLine l = image_of_line(eye_, a_m, b_m);
    if (l.visible) image_line(l.a, l.b, ink);
}

void Pen::image_line(Vec2 a, Vec2 b, const Ink& ink) {
    // Beyond the frame there may be kilometres of it near the eye: cut before dashing, leaving room for the line's own width.
    const Vec2 room{static_cast<double>(ink.width_px) + 2.0};
    if (!cut_to_box(a, b, frame_.min - room, frame_.max + room)) return;
    if (ink.dash_px > 0.0F) return dashes(a, b, ink);
    list_.AddLine(imvec(a), imvec(b), ink.colour, ink.width_px);
}

void Pen::dashes(Vec2 a, Vec2 b, const Ink& ink) {
    const double length = glm::length(b - a), dash = static_cast<double>(ink.dash_px);
    if (length < 0.5) return;
    const Vec2 along = (b - a) / length;
    for (double from = 0.0; from < length; from += 1.8 * dash)
        list_.AddLine(imvec(a + from * along), imvec(a + std::min(length, from + dash) * along), ink.colour, ink.width_px);
}

void Pen::area(std::span<const Vec3> corners_m, ImU32 colour) {
    // A hair more than the frame, so that the smoothed border falls outside.
    const std::vector<Vec2> image = cut_to_box(image_of_polygon(eye_, corners_m), frame_.min - 4.0, frame_.max + 4.0);
    image_area(image, colour);
}

void Pen::image_area(std::span<const Vec2> corners, ImU32 colour) {
    if (corners.size() < 3) return;
    double twice_area = 0.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 a = corners[i] - corners[0], b = corners[(i + 1) % corners.size()] - corners[0];
        twice_area += a.x * b.y - a.y * b.x;
    }
    // ImGui smooths the border outward only for one sense of turning.
    std::vector<ImVec2> points;
    for (std::size_t i = 0; i < corners.size(); ++i) points.push_back(imvec(corners[twice_area > 0.0 ? i : corners.size() - 1 - i]));
    list_.AddConvexPolyFilled(points.data(), static_cast<int>(points.size()), colour);
}

void Pen::outline(std::span<const Vec3> corners_m, const Ink& ink) {
    for (std::size_t i = 0; i < corners_m.size(); ++i) line(corners_m[i], corners_m[(i + 1) % corners_m.size()], ink);
}

bool Pen::near_frame(Vec2 at, double reach_px) const {
    return at.x > frame_.min.x - reach_px && at.x < frame_.max.x + reach_px && at.y > frame_.min.y - reach_px && at.y < frame_.max.y + reach_px;
}

void Pen::disc(Vec3 at_m, float radius_px, ImU32 colour) {
    const auto at = image(at_m);
    if (at && near_frame(*at, static_cast<double>(radius_px))) list_.AddCircleFilled(imvec(*at), radius_px, colour);
}

void Pen::ring(Vec3 at_m, float radius_px, const Ink& ink) {
    const auto at = image(at_m);
    if (at && near_frame(*at, static_cast<double>(radius_px))) list_.AddCircle(imvec(*at), radius_px, ink.colour, 0, ink.width_px);
}

void Pen::arrow_head(Vec2 tip, Vec2 direction, float length_px, ImU32 colour) {
    const double size = glm::length(direction);
    if (size < 1e-9 || !near_frame(tip, static_cast<double>(length_px))) return;
    const Vec2 along = direction * (static_cast<double>(length_px) / size), across = 0.42 * Vec2{-along.y, along.x};
    image_area(std::array{tip, tip - along + across, tip - along - across}, colour);
}

void Pen::plate(const ImageBox& box, ImU32 colour) { list_.AddRectFilled(imvec(glm::round(box.min)), imvec(glm::round(box.max)), colour); }

void Pen::text(ImFont* font, float size_px, Vec2 middle, const char* words, ImU32 colour) {
    const ImVec2 size = font->CalcTextSizeA(size_px, FLT_MAX, 0.0F, words);
    list_.AddText(font, size_px, {static_cast<float>(middle.x) - 0.5F * size.x, static_cast<float>(middle.y) - 0.5F * size.y}, colour, words);
}

}  // namespace guywright::scene
