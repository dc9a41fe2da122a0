#include "wasm/scene/stage.hpp"

namespace guywright::scene {
namespace {

Ink dimension_ink(Scene& scene) { return {scene.stage.look().text, 1.5F * scene.stage.pen().unit_px()}; }

Ink broken(Ink ink) {
    ink.dash_px = 4.0F * ink.width_px;
    return ink;
}

void draw_arc(Pen& pen, const std::vector<Vec3>& points, const Ink& ink) {
    for (std::size_t i = 1; i < points.size(); ++i) pen.line(points[i - 1], points[i], ink);
}

/// An angle of the elevation: arc from a to b (unit) with its text outside.
void draw_angle(Scene& scene, Vec3 at_m, Vec3 a, Vec3 b, double radius_m, std::string words) {
    Pen& pen = scene.stage.pen();
    const std::vector<Vec3> points = arc(at_m, a, b, radius_m);
    draw_arc(pen, points, dimension_ink(scene));
    const auto middle = pen.image(points[points.size() / 2]), centre = pen.image(at_m);
    if (middle && centre)
        scene.stage.label_round({std::move(words), rank::dimension, scene.stage.look().text}, *middle, 5.0, *middle - *centre);
}

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
    const Vec3 flat = glm::normalize(Vec3{leg.x, 0.0, leg.z});   // as it looks from the side
    scene.stage.pen().line(foot, foot + Vec3{0, 0, 0.8 * length_m}, broken(dimension_ink(scene)));
    draw_angle(scene, foot, {0, 0, 1}, flat, 0.62 * length_m, "lean " + degree_text(scene.plan.frame.lean_deg));
}

/// Distance from foot to edge, below the ground where nothing else is.
void draw_foot_distance(Scene& scene, Vec3 foot_m) {
    Pen& pen = scene.stage.pen();
    const double tick_m = 7.0 / px_per_m(pen.eye(), foot_m), z_m = -4.0 * tick_m;
    if (std::abs(foot_m.x) < tick_m) return;
    const Ink ink = dimension_ink(scene);
    for (const double x : {foot_m.x, 0.0}) {
        pen.line({x, foot_m.y, 0.0}, {x, foot_m.y, z_m - tick_m}, broken(ink));
        pen.line({x - tick_m, foot_m.y, z_m - tick_m}, {x + tick_m, foot_m.y, z_m + tick_m}, {ink.colour, 2.0F * ink.width_px});
    }
    pen.line({foot_m.x, foot_m.y, z_m}, {0.0, foot_m.y, z_m}, ink);
    scene.stage.keep_clear(Vec3{foot_m.x, foot_m.y, z_m}, Vec3{0.0, foot_m.y, z_m});
    const auto middle = pen.image({0.5 * foot_m.x, foot_m.y, z_m});
    const LabelText text{number_text(std::abs(foot_m.x), 2, " m"), rank::dimension, scene.stage.look().text};
    if (middle) scene.stage.label_round(text, *middle, 4.0, {0, 1});
}

void draw_face_angle(Scene& scene) {
    const double face = radians(scene.edge.face_deg), radius_m = 0.3 * scene.rig.slope_m;
    const Vec3 edge{0.0, scene.size.right_y_m, 0.0}, fall{std::cos(face), 0.0, -std::sin(face)};
    scene.stage.pen().line(edge, edge + Vec3{1.6 * radius_m, 0, 0}, broken(dimension_ink(scene)));
    draw_angle(scene, edge, {1, 0, 0}, fall, radius_m, degree_text(scene.edge.face_deg));
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
    const Vec3 foot = scene.rig.feet_m[leg], middle = 0.5 * (foot + scene.rig.head_m);   // the upper half is the forces'
    scene.stage.label_line({number_text(scene.plan.frame.legs[leg].length_m, 2, " m"), rank::dimension, scene.stage.look().text}, foot, middle);
}

struct Bearing {
    double deg = 0.0;
    std::size_t guy = 0;
};

std::vector<Bearing> bearings_in_order(const Rig& rig) {
    std::vector<Bearing> out;
    for (std::size_t i = 0; i < rig.guys.size(); ++i)
        if (rig.guys[i].placed) out.push_back({bearing_deg_of(rig.guys[i].anchor_m - rig.drawn_head_m), i});
    std::sort(out.begin(), out.end(), [](const Bearing& a, const Bearing& b) { return a.deg < b.deg; });
    return out;
}

/// "back 180° 4.3 m" at the anchor, as it is paced out: from the point below the head.
void label_anchor(Scene& scene, const Bearing& bearing) {
    Pen& pen = scene.stage.pen();
    const GuyLine& guy = scene.rig.guys[bearing.guy];
    const Vec3 d = guy.anchor_m - scene.rig.drawn_head_m;
    const double whole_deg = std::fmod(std::round(bearing.deg), 360.0);   // 359.7 reads as 0
    const LabelText text{std::string(guy.name) + " " + degree_text(whole_deg) + " " + number_text(std::hypot(d.x, d.y), 1, " m"),
                         rank::dimension, scene.stage.look().text};
    const auto at = pen.image(guy.anchor_m);
    const bool inside = at && at->x > pen.frame().min.x && at->x < pen.frame().max.x && at->y > pen.frame().min.y && at->y < pen.frame().max.y;
    if (inside) scene.stage.label_round(text, *at, 10.0, Vec2{-d.y, -d.x});
    else scene.stage.label_line(text, guy.anchor_m, scene.rig.head_m);
}

void draw_gap(Scene& scene, double from_deg, double gap_deg, double radius_m) {
    Pen& pen = scene.stage.pen();
    const Limits& limits = scene.plan.limits;
    const Look& look = scene.stage.look();
    const bool too_wide = scene.plan.frame.kind == FrameKind::Monopod && gap_deg >= limits.bearing_gap_max_deg;
    const Ink ink{too_wide ? look.hazard : look.text, (too_wide ? 4.0F : 1.6F) * pen.unit_px()};
    const Vec3 middle = plumb_point(scene.rig.drawn_head_m);
    constexpr int k_parts = 24;
    std::vector<Vec3> points;
    const double clear_deg = std::min(6.0, 0.2 * gap_deg);   // so that neighbouring arcs stay apart
    for (int i = 0; i <= k_parts; ++i)
        points.push_back(middle + radius_m * along_bearing(radians(from_deg + clear_deg + (gap_deg - 2.0 * clear_deg) * i / k_parts)));
    draw_arc(pen, points, ink);
    const Vec3 way = along_bearing(radians(from_deg + 0.5 * gap_deg));
    scene.stage.label_round({degree_text(gap_deg), rank::angle, ink.colour}, middle + radius_m * way, 4.0, Vec2{-way.y, -way.x});
}

}  // namespace

void draw_elevation_dimensions(Scene& scene) {
    draw_face_angle(scene);
    for (std::size_t i = 0; i < scene.rig.feet_m.size(); ++i)
        if (!behind_an_earlier_leg(scene, i)) draw_foot_distance(scene, scene.rig.feet_m[i]);
    if (!scene.rig.has_head) return;
    draw_lean(scene);
    for (std::size_t i = 0; i < scene.rig.feet_m.size(); ++i)
        if (!behind_an_earlier_leg(scene, i)) label_leg_length(scene, i);
}

void draw_plan_dimensions(Scene& scene) {
    if (!scene.rig.has_head) return;
    const std::vector<Bearing> bearings = bearings_in_order(scene.rig);
    const double radius_m = 44.0 * static_cast<double>(scene.stage.pen().unit_px()) / px_per_m(scene.stage.pen().eye(), scene.rig.head_m);
    for (std::size_t i = 0; i < bearings.size(); ++i) {
        label_anchor(scene, bearings[i]);
        const double next_deg = i + 1 < bearings.size() ? bearings[i + 1].deg : bearings[0].deg + 360.0;
        draw_gap(scene, bearings[i].deg, next_deg - bearings[i].deg, radius_m);
    }
}

}  // namespace guywright::scene
