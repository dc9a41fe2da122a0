#include "wasm/scene/stage.hpp"

namespace guywright::scene {
namespace {

/// Points of the arc round `at` from direction a to b (unit), `radius_m` out.
std::vector<Vec3> arc(Vec3 at, Vec3 a, Vec3 b, double radius_m) {
    const double angle = angle_between(a, b);
    const Vec3 across = glm::length(glm::cross(a, b)) > 1e-9 ? glm::normalize(b - glm::dot(a, b) * a) : Vec3{0.0};
    std::vector<Vec3> out;
    constexpr int k_parts = 16;
    for (int i = 0; i <= k_parts; ++i) {
        const double turn = angle * i / k_parts;
        out.push_back(at + radius_m * (std::cos(turn) * a + std::sin(turn) * across));
    }
    return out;
}

void draw_force_angle(Scene& scene, Vec3 pull) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const Vec3 head = scene.rig.head_m, down_leg = scene.rig.feet_m[0] - head;
    const double radius_m = 0.55 * glm::length(down_leg);
    const std::vector<Vec3> points = arc(head, glm::normalize(down_leg), pull, radius_m);
    std::vector<Vec3> wedge = points;
    wedge.push_back(head);
    pen.area(wedge, faded(look.resultant, 0.25F));
    for (std::size_t i = 1; i < points.size(); ++i) pen.line(points[i - 1], points[i], {look.resultant, 2.5F * pen.unit_px()});
    const Vec3 middle = points[points.size() / 2];
    scene.stage.label_point(number_text(degrees(scene.rig.applied_force_angle_rad), 0, "\xC2\xB0"), rank::angle, look.resultant, middle, 34.0);
}

}  // namespace

void draw_forces(Scene& scene) {
    const Rig& rig = scene.rig;
    const double pull_N = glm::length(rig.resultant_N);
    if (!rig.has_forces || !(pull_N > 0.0) || rig.feet_m.empty()) return;
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const Vec3 pull = rig.resultant_N / pull_N;
    const double longest_m = 0.85 * glm::length(rig.feet_m[0] - rig.head_m);
    const Vec3 tip = rig.head_m + longest_m * pull_N / rig.largest_resultant_N * pull;
    if (scene.plan.frame.kind == FrameKind::Monopod) draw_force_angle(scene, pull);
    const auto a = pen.image(rig.head_m), b = pen.image(tip);
    if (!a || !b) return;
    const float head_px = 20.0F * pen.unit_px();
    const double length_px = glm::length(*b - *a);
    const Vec2 neck = length_px > 1.0 ? *b - (*b - *a) * std::min(1.0, 0.9 * static_cast<double>(head_px) / length_px) : *b;
    pen.image_line(*a, neck, {look.text_halo, 7.5F * pen.unit_px()});
    pen.image_line(*a, neck, {look.resultant, 5.0F * pen.unit_px()});
    pen.arrow_head(*b, *b - *a, head_px, look.resultant);
    scene.stage.label(kilonewton_text(pull_N), rank::resultant, look.resultant, {*b + Vec2{0, 16}, *b + Vec2{52, 0}, *b - Vec2{52, 0}});
}

}  // namespace guywright::scene
