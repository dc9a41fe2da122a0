#pragma once
#include "wasm/scene/projection.hpp"

namespace guywright::scene {

/// Part of the image that the site may fill, CSS px.
struct ImageBox {
    Vec2 min{0.0}, max{0.0};
};

/// Smallest box round the images of the points. Empty (min above max) if one of them is behind the eye.
inline ImageBox box_round(const Eye& eye, std::span<const Vec3> points_m) {
    ImageBox box{Vec2{HUGE_VAL}, Vec2{-HUGE_VAL}};
    for (const Vec3& p : points_m) {
        const Vec3 seen = seen_from(eye, p);
        if (!is_ahead(eye, seen)) return {Vec2{HUGE_VAL}, Vec2{-HUGE_VAL}};
        const Vec2 at = image_of_seen(eye, seen);
        box = {glm::min(box.min, at), glm::max(box.max, at)};
    }
    return box;
}

inline Vec3 middle_of(std::span<const Vec3> points_m) {
    Vec3 low{HUGE_VAL}, high{-HUGE_VAL};
    for (const Vec3& p : points_m) {
        low = glm::min(low, p);
        high = glm::max(high, p);
    }
    return 0.5 * (low + high);
}

/// Puts the images of the points in the middle of the box, `zoom` times the size at which they just fit.
inline void centre(Eye& eye, std::span<const Vec3> points_m, const ImageBox& box, double zoom) {
    eye.scale_px *= zoom;
    eye.centre_px = Vec2{0.0};
    const ImageBox seen = box_round(eye, points_m);
    eye.centre_px = 0.5 * (box.min + box.max) - 0.5 * (seen.min + seen.max);
}

/// Without perspective: one scale that makes the points fit.
inline Eye fit_parallel(Eye eye, std::span<const Vec3> points_m, const ImageBox& box, double zoom) {
    eye.parallel = true;
    eye.scale_px = 1.0;
    eye.at_m = middle_of(points_m) - 100.0 * eye.forward;
    const ImageBox seen = box_round(eye, points_m);
    const Vec2 size = glm::max(seen.max - seen.min, Vec2{0.1}), room = box.max - box.min;
    eye.scale_px = std::min(room.x / size.x, room.y / size.y);
    centre(eye, points_m, box, zoom);
    return eye;
}

namespace detail {

inline bool fits(const Eye& eye, std::span<const Vec3> points_m, Vec2 room_px) {
    const ImageBox seen = box_round(eye, points_m);
    const Vec2 size = seen.max - seen.min;
    return size.x >= 0.0 && size.x <= room_px.x && size.y <= room_px.y;
}

/// Nearest distance from `pivot_m` at which the points fit, seen along the eye's direction; at least `near_m`.
inline double distance_to_fit(Eye eye, std::span<const Vec3> points_m, Vec3 pivot_m, Vec2 room_px, double near_m) {
    constexpr double k_farthest_m = 500.0;
    double far_m = k_farthest_m;
    const auto fits_at = [&](double distance_m) {
        eye.at_m = pivot_m - distance_m * eye.forward;
        return fits(eye, points_m, room_px);
    };
    if (fits_at(near_m)) return near_m;
    for (int i = 0; i < 24; ++i) {
        const double middle_m = 0.5 * (near_m + far_m);
        (fits_at(middle_m) ? far_m : near_m) = middle_m;
    }
    return far_m;
}

}  // namespace detail

/// With perspective: the nearest distance from which the points fit from every side at this pitch, so that the picture does
/// not grow and shrink while it turns.
inline Eye fit_perspective(double yaw_deg, double pitch_deg, std::span<const Vec3> points_m, const ImageBox& box, double zoom) {
    constexpr int k_sides = 24;
    const Vec3 pivot_m = middle_of(points_m);
    const Vec2 room = box.max - box.min;
    const double scale_px = 1.5 * std::max(room.x, room.y);  // a lens of some 37 degrees: depth is felt, lines stay calm
    double distance_m = 0.1;
    for (int i = 0; i <= k_sides; ++i) {  // the last one is the view itself, between two of the others
        Eye side = eye_along(i < k_sides ? 360.0 * i / k_sides : yaw_deg, pitch_deg);
        side.scale_px = scale_px;
        distance_m = detail::distance_to_fit(side, points_m, pivot_m, room, distance_m);
    }
    Eye eye = eye_along(yaw_deg, pitch_deg);
    eye.scale_px = scale_px;
    eye.at_m = pivot_m - distance_m * eye.forward;
    centre(eye, points_m, box, zoom);
    return eye;
}

}  // namespace guywright::scene
