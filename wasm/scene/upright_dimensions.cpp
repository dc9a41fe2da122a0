#include "wasm/scene/dimension_lines.hpp"
#include "wasm/words/picture.hpp"

// The views from the side and from behind.
namespace guywright::scene {
namespace {

constexpr double k_first_row_px = 30.0, k_second_row_px = 62.0;  // of dimension lines below the ground
constexpr Vec3 k_down{0, 0, -1};

/// Where the lean is measured: at the foot, or on the line of two feet square to the head.
Vec3 lean_point(const Rig& rig) {
    const Vec3 foot = rig.feet_m[0];
    if (rig.feet_m.size() < 2) return foot;
    const Vec3 along = rig.feet_m[1] - foot;
    return foot + glm::dot(rig.drawn_head_m - foot, along) / std::max(1e-9, glm::dot(along, along)) * along;
}

void draw_lean(Scene& scene) {
    const Vec3 foot = lean_point(scene.rig), leg = scene.rig.drawn_head_m - foot;
    const double length_m = glm::length(leg);
    if (scene.plan.frame.kind == FrameKind::Tripod || !(length_m > 0.0)) return;
    const Vec3 flat = glm::normalize(Vec3{leg.x, 0.0, leg.z});  // as it looks from the side
    scene.stage.pen().line(foot, foot + Vec3{0, 0, 0.8 * length_m}, broken(dimension_ink(scene.stage)));
    draw_angle(scene.stage, foot, {0, 0, 1}, flat, 0.62 * length_m, with_amount(scene.speech(), words::k_lean_of, degree_text(scene.plan.frame.lean_deg)));
}

void draw_face_angle(Scene& scene) {
    const double face = radians(scene.edge.face_deg), radius_m = 0.3 * scene.rig.slope_m;
    const Vec3 edge{0.0, scene.size.right_y_m, 0.0}, fall{std::cos(face), 0.0, -std::sin(face)};
    scene.stage.pen().line(edge, edge + Vec3{1.6 * radius_m, 0, 0}, broken(dimension_ink(scene.stage)));
    draw_angle(scene.stage, edge, {1, 0, 0}, fall, radius_m, with_amount(scene.speech(), words::k_face_of, degree_text(scene.edge.face_deg)));
}

/// Two legs one behind the other, of one length: their numbers are written once.
bool behind_an_earlier_leg(const Scene& scene, std::size_t leg) {
    constexpr double k_same_m = 0.02;
    const auto& legs = scene.plan.frame.legs;
    for (std::size_t i = 0; i < leg; ++i) {
        const Vec3 apart = legs[i].foot_m - legs[leg].foot_m;
        if (std::abs(apart.x) < k_same_m && std::abs(apart.z) < k_same_m && std::abs(legs[i].length_m - legs[leg].length_m) < k_same_m) return true;
    }
    return false;
}

void label_leg_length(Scene& scene, std::size_t leg) {
    const Vec3 foot = scene.rig.feet_m[leg], middle = 0.5 * (foot + scene.rig.head_m);  // the upper half is the forces'
    std::string text = length_text(scene.speech(), scene.plan.frame.legs[leg].length_m);
    if (scene.picture.large) text = with_amount(scene.speech(), words::k_leg_long, std::move(text));
    scene.stage.label_line({std::move(text), rank::dimension, scene.stage.look().text}, foot, middle);
}

void draw_legs_from_side(Scene& scene) {
    for (std::size_t i = 0; i < scene.rig.feet_m.size(); ++i) {
        if (behind_an_earlier_leg(scene, i)) continue;
        const Vec3 foot = scene.rig.feet_m[i];
        draw_distance(scene.stage, foot, {0.0, foot.y, foot.z}, k_down, k_first_row_px,
                      with_amount(scene.speech(), words::k_foot_at, length_text(scene.speech(), std::abs(foot.x))));
        if (scene.rig.has_head) label_leg_length(scene, i);
    }
}

/// The plumb line of the head with its height above the edge.
void draw_head_height(Scene& scene) {
    const Vec3 head = scene.rig.drawn_head_m, below = plumb_point(head);
    scene.stage.pen().line(head, below, broken(dimension_ink(scene.stage)));
    scene.stage.keep_clear(head, below);
    scene.stage.label_line({with_amount(scene.speech(), words::k_head_up, length_text(scene.speech(), head.z)), rank::dimension, scene.stage.look().text},
                           below, head);
}

/// "back 35°, 4.24 m" at the anchor: the guy's own inclination and length, however it is turned to the eye.
void label_guys_from_side(Scene& scene) {
    const Look& look = scene.stage.look();
    for (const GuyLine& guy : scene.rig.guys) {
        if (!guy.placed) continue;
        const Vec3 rise = scene.rig.drawn_head_m - guy.anchor_m;
        const double inclination = degrees(std::atan2(rise.z, std::hypot(rise.x, rise.y)));
        const std::string words = std::string(guy.name) + " " + degree_text(inclination) + " " + length_text(scene.speech(), glm::length(rise));
        scene.stage.label_round({words, rank::dimension, look.text, guy.slack ? look.guy_slack : look.guy}, guy.anchor_m, 9.0,
                                Vec2{rise.x > 0.0 ? -1.0 : 1.0, 0.6});
    }
}

std::string to_the_side(const app::Speech& speech, double y_m) {
    if (std::abs(y_m) < 0.005) return std::string(say(speech, words::k_in_line));
    return with_amount(speech, y_m > 0.0 ? words::k_to_the_left : words::k_to_the_right, length_text(speech, std::abs(y_m)));
}

/// "right 3.52 m right" at the anchor: from the plumb line of the head.
void label_guys_from_behind(Scene& scene) {
    const Look& look = scene.stage.look();
    for (const GuyLine& guy : scene.rig.guys) {
        if (!guy.placed) continue;
        const double y_m = guy.anchor_m.y - scene.rig.drawn_head_m.y;
        std::string text = say(scene.speech(), words::k_guy_is, {{"{name}", std::string(guy.name)}, {"{d}", to_the_side(scene.speech(), y_m)}});
        scene.stage.label_round({std::move(text), rank::dimension, look.text, guy.slack ? look.guy_slack : look.guy}, guy.anchor_m, 9.0, Vec2{-y_m, 1.0});
    }
}

/// How far apart the feet stand, or how far to the side of the head the one foot.
void draw_feet_from_behind(Scene& scene) {
    const auto& feet = scene.rig.feet_m;
    if (feet.size() == 1) {
        const Vec3 foot = feet[0], below{foot.x, scene.rig.drawn_head_m.y, foot.z};
        return draw_distance(scene.stage, foot, below, k_down, k_first_row_px,
                             with_amount(scene.speech(), words::k_foot_at, to_the_side(scene.speech(), foot.y - below.y)));
    }
    const auto [right, left] = std::minmax_element(feet.begin(), feet.end(), [](const Vec3& a, const Vec3& b) { return a.y < b.y; });
    draw_distance(scene.stage, {right->x, right->y, 0.0}, {right->x, left->y, 0.0}, k_down, k_first_row_px,
                  with_amount(scene.speech(), words::k_feet_apart, length_text(scene.speech(), left->y - right->y)));
}

}  // namespace

void draw_side_dimensions(Scene& scene) {
    draw_face_angle(scene);
    draw_legs_from_side(scene);
    if (!scene.rig.has_head) return;
    draw_lean(scene);
    if (!scene.picture.large) return;
    const Vec3 below = plumb_point(scene.rig.drawn_head_m);
    draw_head_height(scene);
    draw_distance(scene.stage, below, {0.0, below.y, 0.0}, k_down, k_second_row_px,
                  with_amount(scene.speech(), words::k_head_at, length_text(scene.speech(), std::abs(below.x))));
    label_guys_from_side(scene);
}

void draw_behind_dimensions(Scene& scene) {
    if (!scene.rig.has_head || scene.rig.feet_m.empty()) return;
    draw_head_height(scene);
    draw_feet_from_behind(scene);
    label_guys_from_behind(scene);
}

}  // namespace guywright::scene
