#pragma once
#include "engine/model/model.hpp"

namespace guywright {

/// Head of a single leg: from the foot, `length_m` along the lean (radians from upright toward `bearing_rad`).
inline Vec3 head_of_leaning_leg(Vec3 foot_m, double length_m, double lean_rad, double bearing_rad) {
    return foot_m + length_m * (std::sin(lean_rad) * along_bearing(bearing_rad) + Vec3{0.0, 0.0, std::cos(lean_rad)});
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

/// Height of a point above the face below it, metres; negative inside the rock. Behind the edge, above the ground at z = 0.
/// Beyond the edge the face falls at `face_deg`; at 90 and over there is nothing below, whatever the height.
inline double height_above_face_m(Vec3 at_m, double face_deg) {
    if (at_m.x <= 0.0) return at_m.z;
    if (face_deg >= 90.0) return HUGE_VAL;
    return at_m.z + at_m.x * std::tan(radians(face_deg));
}

}  // namespace guywright
