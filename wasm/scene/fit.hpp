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

/// The circles, as polygons round them, that the points run round the upright axis through `pivot_m`. What fits them fits the site from every
/// side, so that the picture does not grow and shrink while it turns.
inline std::vector<Vec3> circles_round(Vec3 pivot_m, std::span<const Vec3> points_m) {
    constexpr int k_parts = 16;
    std::vector<Vec3> out;
    for (const Vec3& p : points_m) {
        const double radius_m = std::hypot(p.x - pivot_m.x, p.y - pivot_m.y) / std::cos(k_pi / k_parts);
        for (int i = 0; i < k_parts; ++i) {
            const Vec3 at = pivot_m + radius_m * along_bearing(2.0 * k_pi * i / k_parts);
            out.push_back({at.x, at.y, p.z});
        }
    }
    return out;
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

/// With perspective: the nearest distance from which the points fit, seen from any side.
inline Eye fit_perspective(Eye eye, std::span<const Vec3> points_m, const ImageBox& box, double zoom) {
    const Vec3 pivot_m = middle_of(points_m);
    const std::vector<Vec3> all = circles_round(pivot_m, points_m);
    const Vec2 room = box.max - box.min;
    eye.scale_px = 1.5 * std::max(room.x, room.y);   // a lens of some 37 degrees: depth is felt, lines stay calm
    eye.centre_px = Vec2{0.0};
    double near_m = 0.1, far_m = 500.0;
    for (int i = 0; i < 40; ++i) {
        const double middle_m = 0.5 * (near_m + far_m);
        eye.at_m = pivot_m - middle_m * eye.forward;
        const ImageBox seen = box_round(eye, all);
        const bool fits = seen.min.x <= seen.max.x && seen.max.x - seen.min.x <= room.x && seen.max.y - seen.min.y <= room.y;
        (fits ? far_m : near_m) = middle_m;
    }
    eye.at_m = pivot_m - far_m * eye.forward;
    centre(eye, all, box, zoom);
    return eye;
}

}  // namespace guywright::scene
