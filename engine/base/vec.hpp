#pragma once
#include <glm/geometric.hpp>
#include <glm/vec3.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace guywright {

/// Site frame: x straight out over the edge, y to the left along it, z up. Metres, newtons or a pure direction; the name says which.
using Vec3 = glm::dvec3;

inline constexpr double k_pi = std::numbers::pi;
inline constexpr double radians(double deg) { return deg * (k_pi / 180.0); }
inline constexpr double degrees(double rad) { return rad * (180.0 / k_pi); }

/// Angle between two directions, radians, 0 to pi. Exact for parallel and for tiny angles, unlike acos. 0 if either is zero.
inline double angle_between(Vec3 a, Vec3 b) { return std::atan2(glm::length(glm::cross(a, b)), glm::dot(a, b)); }

/// Horizontal unit vector of a bearing: radians clockwise seen from above, 0 straight out over the edge, pi/2 right.
inline Vec3 along_bearing(double bearing_rad) { return {std::cos(bearing_rad), -std::sin(bearing_rad), 0.0}; }

/// Bearing of a horizontal offset, degrees in [0, 360).
inline double bearing_deg_of(Vec3 offset) {
    const double deg = degrees(std::atan2(-offset.y, offset.x));
    return deg < 0.0 ? deg + 360.0 : deg;
}

}  // namespace guywright
