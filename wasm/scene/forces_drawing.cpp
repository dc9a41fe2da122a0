#include "wasm/scene/stage.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::scene {
namespace {

/// What the applied-force angle is taken to, as a unit vector: the leg, or the resultant's own trace in the plane of two legs.
/// None for three: there the angle is counted from the nearest side of the corner, and that is 0 for a sound rig.
std::optional<Vec3> angle_base(const Rig& rig, Vec3 pull) {
    const Vec3 first = rig.feet_m[0] - rig.head_m;
    if (rig.feet_m.size() == 1) return glm::normalize(first);
    if (rig.feet_m.size() != 2) return std::nullopt;
    const Vec3 across = glm::cross(first, rig.feet_m[1] - rig.head_m);
    const Vec3 trace = pull - glm::dot(pull, across) / glm::dot(across, across) * across;
    return glm::length(trace) > 1e-6 ? std::optional(glm::normalize(trace)) : std::nullopt;
}

/// Wedge between the legs and the resultant, with its angle.
void draw_force_angle(Scene& scene, Vec3 base, Vec3 pull) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const Vec3 head = scene.rig.head_m;
    const std::vector<Vec3> points = arc(head, base, pull, 0.72 * glm::length(scene.rig.feet_m[0] - head));
    std::vector<Vec3> wedge = points;
    wedge.push_back(head);
    pen.area(wedge, faded(look.resultant, 0.25F));
    pen.line(head, points.back(), {look.resultant, 1.5F * pen.unit_px()});  // on from a short arrow to the arc
    for (std::size_t i = 1; i < points.size(); ++i) pen.line(points[i - 1], points[i], {look.resultant, 2.5F * pen.unit_px()});
    const auto from = pen.image(points.front()), to = pen.image(points.back()), middle = pen.image(points[points.size() / 2]);
    if (!from || !to || !middle) return;
    // Beyond the resultant rather than beyond the leg, where the ground is busier.
    const double away_px = 0.5 * glm::length(*to - *from) + 8.0 * static_cast<double>(pen.unit_px());
    const Vec2 first = glm::length(*to - *from) > 2.0 ? *to - *from : Vec2{1, 0};
    std::string angle = degree_text(degrees(scene.rig.applied_force_angle_rad));
    if (scene.picture.large) angle = say(scene.speech(), scene.rig.feet_m.size() == 1 ? words::k_off_leg : words::k_off_legs, {{"{angle}", angle}});
    scene.stage.label_round({std::move(angle), rank::angle, look.resultant}, *middle, away_px, first);
}

void draw_arrow(Scene& scene, Vec2 from, Vec2 tip, double pull_N) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const double head_px = 20.0 * static_cast<double>(pen.unit_px()), length_px = glm::length(tip - from);
    const Vec2 neck = tip - (tip - from) * std::min(1.0, 0.9 * head_px / std::max(1.0, length_px));
    pen.image_line(from, neck, {look.plate, 6.0F * pen.unit_px()});
    pen.image_line(from, neck, {look.resultant, 4.0F * pen.unit_px()});
    pen.arrow_head(tip, tip - from, static_cast<float>(head_px), look.resultant);
    scene.stage.keep_head_clear(tip, tip - from, head_px);
    scene.stage.keep_clear(from, tip);
    std::string force = force_text(scene.speech(), pull_N);
    if (scene.picture.large) force = say(scene.speech(), words::k_ropes_together, {{"{force}", force}});
    scene.stage.label_round({std::move(force), rank::resultant, look.resultant}, tip, 5.0, Vec2{1, 0});
}

}  // namespace

void draw_forces(Scene& scene) {
    const Rig& rig = scene.rig;
    const double pull_N = glm::length(rig.resultant_N);
    if (!rig.has_forces || !(pull_N > 0.0) || rig.feet_m.empty() || scene.view == View::Above || scene.view == View::Behind) return;
    const Vec3 pull = rig.resultant_N / pull_N;
    const double longest_m = glm::length(rig.feet_m[0] - rig.head_m);
    const std::optional<Vec3> base = angle_base(rig, pull);
    if (base) draw_force_angle(scene, *base, pull);
    const auto from = scene.stage.pen().image(rig.head_m);
    const auto tip = scene.stage.pen().image(rig.head_m + longest_m * pull_N / rig.largest_resultant_N * pull);
    if (from && tip) draw_arrow(scene, *from, *tip, pull_N);
}

}  // namespace guywright::scene
