#pragma once
#include <glm/vec2.hpp>

#include <array>
#include <span>
#include <utility>
#include <vector>

#include "engine/base/vec.hpp"

namespace guywright::scene {

using Vec2 = glm::dvec2;

/// Nearer than this to the eye nothing is drawn, metres: the picture of a point grows without bound toward the eye.
inline constexpr double k_near_m = 0.05;

/// How the site is looked at. Image: CSS px, x to the right, y down.
struct Eye {
    Vec3 at_m{0.0};
    Vec3 forward{1, 0, 0}, right{0, -1, 0}, up{0, 0, 1};  ///< unit, at right angles
    bool parallel = false;                                ///< no perspective
    double scale_px = 1.0;                                ///< per metre if parallel, else per metre at 1 m depth
    Vec2 centre_px{0.0};                                  ///< image of the point straight ahead
};

/// An eye that looks along the bearing `yaw_deg`, `pitch_deg` downward.
inline Eye eye_along(double yaw_deg, double pitch_deg) {
    const double pitch = radians(pitch_deg);
    Eye eye;
    eye.forward = std::cos(pitch) * along_bearing(radians(yaw_deg)) - Vec3{0, 0, std::sin(pitch)};
    eye.right = along_bearing(radians(yaw_deg + 90.0));
    eye.up = glm::cross(eye.right, eye.forward);
    return eye;
}

/// The point as the eye sees it: metres to the right, up, and ahead.
inline Vec3 seen_from(const Eye& eye, Vec3 at_m) {
    const Vec3 d = at_m - eye.at_m;
    return {glm::dot(d, eye.right), glm::dot(d, eye.up), glm::dot(d, eye.forward)};
}

/// Unit vector from a point toward the eye.
inline Vec3 toward_eye(const Eye& eye, Vec3 at_m) { return eye.parallel ? -eye.forward : glm::normalize(eye.at_m - at_m); }

/// Image of a point in the eye's own axes; ahead of the near plane unless the eye is parallel.
inline Vec2 image_of_seen(const Eye& eye, Vec3 seen_m) {
    const double scale = eye.parallel ? eye.scale_px : eye.scale_px / seen_m.z;
    return {eye.centre_px.x + scale * seen_m.x, eye.centre_px.y - scale * seen_m.y};
}

inline bool is_ahead(const Eye& eye, Vec3 seen_m) { return eye.parallel || seen_m.z >= k_near_m; }

/// Image px of one metre across the line of sight at this point; 0 behind the eye.
inline double px_per_m(const Eye& eye, Vec3 at_m) {
    if (eye.parallel) return eye.scale_px;
    const Vec3 seen = seen_from(eye, at_m);
    return is_ahead(eye, seen) ? eye.scale_px / seen.z : 0.0;
}

struct ImageLine {
    bool visible = false;
    Vec2 a{0.0}, b{0.0};
};

/// Image of the part of a segment that lies ahead of the eye.
inline ImageLine image_of_line(const Eye& eye, Vec3 a_m, Vec3 b_m) {
    Vec3 a = seen_from(eye, a_m), b = seen_from(eye, b_m);
    if (!is_ahead(eye, a) && !is_ahead(eye, b)) return {};
    if (!is_ahead(eye, a)) a += (k_near_m - a.z) / (b.z - a.z) * (b - a);
    else if (!is_ahead(eye, b)) b += (k_near_m - b.z) / (a.z - b.z) * (a - b);
    return {true, image_of_seen(eye, a), image_of_seen(eye, b)};
}

/// Image of the part of a flat polygon that lies ahead of the eye; empty if none does.
inline std::vector<Vec2> image_of_polygon(const Eye& eye, std::span<const Vec3> corners_m) {
    std::vector<Vec2> out;
    for (std::size_t i = 0; i < corners_m.size(); ++i) {
        const Vec3 a = seen_from(eye, corners_m[i]), b = seen_from(eye, corners_m[(i + 1) % corners_m.size()]);
        if (is_ahead(eye, a)) out.push_back(image_of_seen(eye, a));
        if (is_ahead(eye, a) != is_ahead(eye, b)) out.push_back(image_of_seen(eye, a + (k_near_m - a.z) / (b.z - a.z) * (b - a)));
    }
    return out;
}

/// Cuts the segment to the box; false, leaving it undefined, if none of it is inside.
inline bool cut_to_box(Vec2& a, Vec2& b, Vec2 min, Vec2 max) {
    const Vec2 start = a, d = b - a;
    double from = 0.0, to = 1.0;
    const std::array<std::pair<double, double>, 4> sides{{{-d.x, start.x - min.x}, {d.x, max.x - start.x}, {-d.y, start.y - min.y}, {d.y, max.y - start.y}}};
    for (const auto& [slope, room] : sides) {
        if (slope == 0.0 && room < 0.0) return false;
        if (slope < 0.0) from = std::max(from, room / slope);
        if (slope > 0.0) to = std::min(to, room / slope);
    }
    if (!(from <= to)) return false;
    a = start + from * d;
    b = start + to * d;
    return true;
}

/// The part of a convex polygon inside the box; empty if there is none.
inline std::vector<Vec2> cut_to_box(std::vector<Vec2> corners, Vec2 min, Vec2 max) {
    const auto keep = [&corners](auto room) {  // room(p) >= 0: inside this side of the box
        std::vector<Vec2> kept;
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const Vec2 a = corners[i], b = corners[(i + 1) % corners.size()];
            const double ra = room(a), rb = room(b);
            if (ra >= 0.0) kept.push_back(a);
            if ((ra >= 0.0) != (rb >= 0.0)) kept.push_back(a + ra / (ra - rb) * (b - a));
        }
        corners = std::move(kept);
    };
    keep([min](Vec2 p) { return p.x - min.x; });
    keep([max](Vec2 p) { return max.x - p.x; });
    keep([min](Vec2 p) { return p.y - min.y; });
    keep([max](Vec2 p) { return max.y - p.y; });
    return corners;
}

inline constexpr double k_lowest_pitch_deg = 4.0, k_highest_pitch_deg = 86.0, k_deg_per_px = 0.4;

/// The free view's new direction after a drag: {yaw in [0, 360), pitch clamped}, degrees.
inline std::pair<double, double> turned(double yaw_deg, double pitch_deg, Vec2 drag_px) {
    double yaw = std::fmod(yaw_deg + k_deg_per_px * drag_px.x, 360.0);
    if (yaw < 0.0) yaw += 360.0;
    return {yaw, std::clamp(pitch_deg + k_deg_per_px * drag_px.y, k_lowest_pitch_deg, k_highest_pitch_deg)};
}

}  // namespace guywright::scene
