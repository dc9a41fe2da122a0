#pragma once
#include "engine/model/model.hpp"

#include <array>

namespace guywright {

/// Head of a single leg: from the foot, `length_m` along the lean (radians from upright toward `bearing_rad`).
inline Vec3 head_of_leaning_leg(Vec3 foot_m, double length_m, double lean_rad, double bearing_rad) {
    return foot_m + length_m * (std::sin(lean_rad) * along_bearing(bearing_rad) + Vec3{0.0, 0.0, std::cos(lean_rad)});
}

/// A head that may not exist: the legs do not reach, or the frame has no side to lean to.
struct HeadPlace {
    bool exists = false;
    Vec3 head_m{};
};

/// Head of an A-frame: the two legs' own triangle, turned by `lean_rad` about the line of the feet; 0 has the triangle as
/// upright as the feet allow, plus leans to the side of `bearing_rad`. None: legs too short, one longer than the other and the
/// feet together, feet above each other, or a bearing along the feet.
inline HeadPlace head_of_a_frame(Vec3 foot_a_m, Vec3 foot_b_m, double length_a_m, double length_b_m, double lean_rad, double bearing_rad) {
    const Vec3 between = foot_b_m - foot_a_m;
    const double apart_m = glm::length(between);
    if (!(apart_m > 0.0)) return {};
    const Vec3 along = between / apart_m;
    const double from_a_m = (length_a_m * length_a_m - length_b_m * length_b_m + apart_m * apart_m) / (2.0 * apart_m);
    const double height2 = length_a_m * length_a_m - from_a_m * from_a_m;
    const Vec3 rise = Vec3{0.0, 0.0, 1.0} - along.z * along;
    if (!(height2 > 0.0) || !(glm::length(rise) > 1e-6)) return {};
    const Vec3 up = glm::normalize(rise);
    Vec3 side = glm::cross(along, up);
    const double toward = glm::dot(side, along_bearing(bearing_rad));
    if (lean_rad != 0.0 && std::abs(toward) < 1e-6) return {};
    if (toward < 0.0) side = -side;
    const Vec3 way = std::cos(lean_rad) * up + std::sin(lean_rad) * side;
    return {true, foot_a_m + from_a_m * along + std::sqrt(height2) * way};
}

/// Head of a tripod: the upper point at the three lengths from the three feet. None: the legs do not meet, or the feet
/// stand in one line.
inline HeadPlace head_of_tripod(const std::array<Vec3, 3>& foot_m, const std::array<double, 3>& length_m) {
    const Vec3 ab = foot_m[1] - foot_m[0], ac = foot_m[2] - foot_m[0];
    const double apart_m = glm::length(ab);
    if (!(apart_m > 0.0)) return {};
    const Vec3 ex = ab / apart_m;
    const double i = glm::dot(ex, ac);
    const Vec3 across = ac - i * ex;
    const double j = glm::length(across);
    if (!(j > 1e-6)) return {};
    const Vec3 ey = across / j;
    const double a2 = length_m[0] * length_m[0];
    const double x = (a2 - length_m[1] * length_m[1] + apart_m * apart_m) / (2.0 * apart_m);
    const double y = (a2 - length_m[2] * length_m[2] + i * i + j * j - 2.0 * i * x) / (2.0 * j);
    const double z2 = a2 - x * x - y * y;
    if (!(z2 > 0.0)) return {};
    Vec3 ez = glm::cross(ex, ey);
    if (ez.z < 0.0) ez = -ez;
    return {true, foot_m[0] + x * ex + y * ey + std::sqrt(z2) * ez};
}

/// The point of the ground plane (z = 0) straight below the head, from which anchors are paced off.
inline Vec3 plumb_point(Vec3 head_m) { return {head_m.x, head_m.y, 0.0}; }

/// Anchor where the line that falls at `inclination_rad` from the head along the bearing meets z = `height_m`.
/// Needs height_m below the head; the caller checks.
inline Vec3 anchor_from_head(Vec3 head_m, double bearing_rad, double inclination_rad, double height_m) {
    const double away_m = (head_m.z - height_m) / std::tan(inclination_rad);
    const Vec3 at = plumb_point(head_m) + away_m * along_bearing(bearing_rad);
    return {at.x, at.y, height_m};
}

/// How far the rock at an edge departs from the drawn lines, metres: an edge is worn round, a face is rough (our own allowance).
inline constexpr double k_rough_rock_m = 0.3;

/// Slope of the ground under a point, radians below horizontal: that of the face beyond the edge, level behind it, across an
/// opening and on the worn rims, so that measuring error puts no foot at the edge on the face. At most pi/2.
inline double ground_slope_rad(Vec3 at_m, const Edge& edge) {
    const bool across = edge.opening_m && at_m.x >= *edge.opening_m - k_rough_rock_m;
    if (at_m.x <= 0.0 || across || std::hypot(at_m.x, at_m.z) <= k_rough_rock_m) return 0.0;
    return std::min(radians(edge.face_deg), k_pi / 2.0);
}

/// A vector of the site frame seen from sloping ground: x down the slope, y left, z off the ground. On level ground itself.
inline Vec3 seen_from_ground(Vec3 v, double slope_rad) {
    const double c = std::cos(slope_rad), s = std::sin(slope_rad);
    return {c * v.x - s * v.z, v.y, s * v.x + c * v.z};
}

/// Height of a point above the face below it, metres; negative inside the rock. Behind the edge, above the ground at z = 0.
/// Beyond the edge the face falls at `face_deg`; at 90 and over there is nothing below, whatever the height.
inline double height_above_face_m(Vec3 at_m, double face_deg) {
    if (at_m.x <= 0.0) return at_m.z;
    if (face_deg >= 90.0) return HUGE_VAL;
    return at_m.z + at_m.x * std::tan(radians(face_deg));
}

}  // namespace guywright
