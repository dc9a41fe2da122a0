#pragma once
#include "engine/model/model.hpp"

namespace guywright {

// Angles are taken to what the legs make: one leg a line, two a plane, three a solid corner. All at the head, radians.

/// Unit normal of the plane of two legs; its sign has no meaning.
inline Vec3 plane_of_legs(const Model& m, Vec3 head_m) { return glm::normalize(glm::cross(m.legs[0].foot_m - head_m, m.legs[1].foot_m - head_m)); }

/// Angle between two vectors' plane and a direction: positive on the side of the normal.
inline double angle_to_plane_rad(Vec3 direction, Vec3 normal) {
    const double size = glm::length(direction);
    return size > 0.0 ? std::asin(std::clamp(glm::dot(direction, normal) / size, -1.0, 1.0)) : 0.0;
}

/// How far `direction` points outside a solid corner of three legs; negative: inside, by so much.
inline double outside_corner_rad(const Model& m, Vec3 head_m, Vec3 direction) {
    double outside = -k_pi;
    for (std::size_t i = 0; i < 3; ++i) {
        const Vec3 a = m.legs[i].foot_m - head_m, b = m.legs[(i + 1) % 3].foot_m - head_m, c = m.legs[(i + 2) % 3].foot_m - head_m;
        Vec3 outward = glm::normalize(glm::cross(a, b));
        if (glm::dot(outward, c) > 0.0) outward = -outward;
        outside = std::max(outside, angle_to_plane_rad(direction, outward));
    }
    return outside;
}

/// How far `direction` is off the leg, off the plane of two legs, or outside the corner of three (0 inside).
inline double angle_off_legs_rad(const Model& m, Vec3 head_m, Vec3 direction) {
    switch (m.legs.size()) {
        case 1: return angle_between(direction, m.legs[0].foot_m - head_m);
        case 2: return std::abs(angle_to_plane_rad(direction, plane_of_legs(m, head_m)));
        default: return std::max(0.0, outside_corner_rad(m, head_m, direction));
    }
}

/// How far the resultant stays inside the legs, seen in the plane of two or in the corner of three; negative: outside, and
/// a foot lifts unless something else holds it. A single leg has no inside.
inline double inside_legs_rad(const Model& m, Vec3 head_m, Vec3 resultant_N) {
    if (m.legs.size() == 3) return -outside_corner_rad(m, head_m, resultant_N);
    if (m.legs.size() != 2) return 0.0;
    const Vec3 normal = plane_of_legs(m, head_m);
    const Vec3 in_plane = resultant_N - glm::dot(resultant_N, normal) * normal;
    const Vec3 a = m.legs[0].foot_m - head_m, b = m.legs[1].foot_m - head_m;
    const double spread = angle_between(a, b), to_a = angle_between(in_plane, a), to_b = angle_between(in_plane, b);
    const double nearest = std::min(to_a, to_b);
    return to_a <= spread && to_b <= spread ? nearest : -nearest;
}

/// The guy that stands farthest off the plane of two legs on one side of it (0 the normal's, 1 the other).
struct SideGuy {
    bool exists = false;
    std::size_t guy = 0;
    double angle_rad = 0.0;
};
inline SideGuy best_guy_on_side(const Model& m, Vec3 head_m, std::size_t side) {
    const Vec3 normal = (side == 0 ? 1.0 : -1.0) * plane_of_legs(m, head_m);
    SideGuy best;
    for (std::size_t i = 0; i < m.guys.size(); ++i) {
        const double angle_rad = angle_to_plane_rad(m.guys[i].anchor_m - head_m, normal);
        if (angle_rad > best.angle_rad) best = {true, i, angle_rad};
    }
    return best;
}

}  // namespace guywright
