#pragma once
#include <cmath>
#include <limits>

#include "engine/base/vec.hpp"

// From what a browser tells of how the device is held to the angles of a rig. Device frame: x to the right and y up along the
// sides of the screen as the device was made, z out of the screen toward the eye. World frame: x east, y north, z up.
// Everything goes through directions, never through the three angles themselves: those jump where the device stands upright.
namespace guywright::app {

inline constexpr double k_not_told = std::numeric_limits<double>::quiet_NaN();

/// One event of the browser. Turned about z by alpha, then about the turned x by beta, then about the turned y by gamma.
struct Held {
    double alpha_deg = k_not_told;  ///< against north where `absolute`, else against anything
    double beta_deg = k_not_told, gamma_deg = k_not_told;
    bool absolute = false;
    double compass_deg = k_not_told;        ///< some browsers tell the heading of the device's y by itself, clockwise from north
    double compass_error_deg = k_not_told;  ///< as the device tells; negative: it is not calibrated
    int screen_turn_deg = 0;                ///< by how much the picture is turned clockwise against the device: 0, 90, 180, 270
    bool taller_than_wide = true;           ///< the screen as it is held now
};

/// World "up" as the device sees it; a unit vector.
[[nodiscard]] inline Vec3 up_in_device(const Held& h) {
    const double b = radians(h.beta_deg), g = radians(h.gamma_deg);
    return {-std::cos(b) * std::sin(g), std::sin(b), std::cos(b) * std::cos(g)};
}

/// A direction of the device in the world. Needs alpha.
[[nodiscard]] inline Vec3 in_world(const Held& h, const Vec3& v) {
    const double a = radians(h.alpha_deg), b = radians(h.beta_deg), g = radians(h.gamma_deg);
    const double ca = std::cos(a), sa = std::sin(a), cb = std::cos(b), sb = std::sin(b), cg = std::cos(g), sg = std::sin(g);
    return {(ca * cg - sa * sb * sg) * v.x - sa * cb * v.y + (ca * sg + sa * sb * cg) * v.z,
            (sa * cg + ca * sb * sg) * v.x + ca * cb * v.y + (sa * sg - ca * sb * cg) * v.z, -cb * sg * v.x + sb * v.y + cb * cg * v.z};
}

/// Toward the upper edge of the picture, as a direction of the device.
[[nodiscard]] inline Vec3 picture_up(const Held& h) {
    const double turn = radians(h.screen_turn_deg);
    return {std::round(std::sin(turn)), std::round(std::cos(turn)), 0.0};
}

/// Along the long edge of the screen.
[[nodiscard]] inline Vec3 long_edge(const Held& h) {
    const bool turned = h.screen_turn_deg % 180 != 0;
    const bool made_tall = h.taller_than_wide != turned;
    return made_tall ? Vec3{0.0, 1.0, 0.0} : Vec3{1.0, 0.0, 0.0};
}

/// Angle of a direction above horizontal, degrees, -90 to 90.
[[nodiscard]] inline double above_horizontal_deg(const Vec3& up, const Vec3& direction) {
    return degrees(std::atan2(glm::dot(up, direction), glm::length(glm::cross(up, direction))));
}

/// Of a guy along which the long edge lies, whichever end is up: 0 to 90.
[[nodiscard]] inline double guy_inclination_deg(const Vec3& up, const Vec3& edge) { return std::abs(above_horizontal_deg(up, edge)); }

/// Of a leg along which the long edge lies, from upright: positive where the screen looks up, that is where the leg leans away
/// from whoever looks at it. -90 to 90.
[[nodiscard]] inline double leg_lean_deg(const Vec3& up, const Vec3& edge) { return std::copysign(90.0 - guy_inclination_deg(up, edge), up.z); }

/// Of a plane against which the back of the device lies, from upright: positive where the screen looks up.
[[nodiscard]] inline double plane_lean_deg(const Vec3& up) { return above_horizontal_deg(up, {0.0, 0.0, 1.0}); }

/// True where the screen looks so far to the side that it does not tell to which side the leg leans.
[[nodiscard]] inline bool faces_aside(const Vec3& up, const Vec3& edge) {
    constexpr double upright_deg = 3.0;  // so near upright the sign is within the error of the reading
    const double across = glm::dot(up, glm::cross(edge, Vec3{0.0, 0.0, 1.0}));
    return std::abs(leg_lean_deg(up, edge)) > upright_deg && std::abs(up.z) < std::abs(across);
}

/// 0 to below 360.
[[nodiscard]] inline double around_deg(double angle_deg) {
    const double turned = std::fmod(angle_deg, 360.0);
    return turned < 0.0 ? turned + 360.0 : turned;
}

/// How far around from `from_deg`, the short way: -180 to 180.
[[nodiscard]] inline double turn_deg(double from_deg, double to_deg) {
    const double turned = around_deg(to_deg - from_deg);
    return turned > 180.0 ? turned - 360.0 : turned;
}

[[nodiscard]] inline bool tells_tilt(const Held& h) { return std::isfinite(h.beta_deg) && std::isfinite(h.gamma_deg); }
[[nodiscard]] inline bool tells_heading(const Held& h) { return std::isfinite(h.compass_deg) || (h.absolute && std::isfinite(h.alpha_deg) && tells_tilt(h)); }

/// Heading of the upper edge of the picture, clockwise from north, 0 to below 360. Must tell a heading.
[[nodiscard]] inline double heading_deg(const Held& h) {
    if (std::isfinite(h.compass_deg)) return around_deg(h.compass_deg + h.screen_turn_deg);
    const Vec3 way = in_world(h, picture_up(h));
    return around_deg(degrees(std::atan2(way.x, way.y)));
}

}  // namespace guywright::app
