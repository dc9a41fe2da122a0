#include "wasm/scene/dimension_lines.hpp"

namespace guywright::scene {

Ink dimension_ink(Stage& stage) { return {stage.look().text, 1.5F * stage.pen().unit_px()}; }

Ink broken(Ink ink) {
    ink.dash_px = 4.0F * ink.width_px;
    return ink;
}

void draw_path(Pen& pen, const std::vector<Vec3>& points, const Ink& ink) {
    for (std::size_t i = 1; i < points.size(); ++i) pen.line(points[i - 1], points[i], ink);
}

void draw_distance(Stage& stage, Vec3 a_m, Vec3 b_m, Vec3 aside, double aside_px, const std::string& words) {
    constexpr double k_least_px = 8.0, k_tick_px = 6.0;
    Pen& pen = stage.pen();
    const double px = px_per_m(pen.eye(), a_m);
    if (!(glm::length(b_m - a_m) * px > k_least_px)) return;
    const Ink ink = dimension_ink(stage);
    const Vec3 shift = aside_px / px * aside, along = glm::normalize(b_m - a_m), stroke = k_tick_px / px * (along + aside);
    for (const Vec3& end : {a_m, b_m}) {
        pen.line(end, end + shift, broken(ink));
        pen.line(end + shift - stroke, end + shift + stroke, {ink.colour, 2.0F * ink.width_px});
    }
    pen.line(a_m + shift, b_m + shift, ink);
    stage.keep_clear(a_m + shift, b_m + shift);
    stage.label_line({words, rank::dimension, stage.look().text}, a_m + shift, b_m + shift);
}

void draw_angle(Stage& stage, Vec3 at_m, Vec3 a, Vec3 b, double radius_m, std::string words) {
    Pen& pen = stage.pen();
    const std::vector<Vec3> points = arc(at_m, a, b, radius_m);
    draw_path(pen, points, dimension_ink(stage));
    const auto middle = pen.image(points[points.size() / 2]), centre = pen.image(at_m);
    if (middle && centre) stage.label_round({std::move(words), rank::dimension, stage.look().text}, *middle, 5.0, *middle - *centre);
}

}  // namespace guywright::scene
