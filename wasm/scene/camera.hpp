#pragma once
#include "wasm/scene/fit.hpp"
#include "wasm/scene/view.hpp"

namespace guywright::scene {

inline constexpr double k_least_zoom = 0.5, k_most_zoom = 8.0;

/// Two fingers, or a wheel: what was at `from_px` comes to `to_px`, `factor` times as large. `room` is what the site fills at
/// zoom 1. Stops at the ends of the zoom, and where the picture would be lost.
inline void pinch(Camera& camera, const ImageBox& room, Vec2 from_px, Vec2 to_px, double factor) {
    const Vec2 size = room.max - room.min, middle = room.min + 0.5 * size;
    const double side_px = std::min(size.x, size.y), before = static_cast<double>(camera.zoom);
    if (!(side_px > 0.0) || !(factor > 0.0)) return;
    const double zoom = std::clamp(before * factor, k_least_zoom, k_most_zoom), grown = zoom / before;
    const Vec2 moved_px = side_px * Vec2{camera.moved_x, camera.moved_y};
    const Vec2 now_px = to_px - middle - grown * (from_px - middle - moved_px);
    const Vec2 most_px = 0.6 * std::max(1.0, zoom) * size;
    const Vec2 kept = glm::clamp(now_px, -most_px, most_px) / side_px;
    camera.zoom = static_cast<float>(zoom);
    camera.moved_x = static_cast<float>(kept.x);
    camera.moved_y = static_cast<float>(kept.y);
}

/// Turns by a drag of `drag_px`, as if the finger held the near side. The free view stays between just above the ground and
/// nearly straight down; what has a fixed direction is moved instead.
inline void drag(Camera& camera, View view, const ImageBox& room, Vec2 drag_px) {
    if (has_dimensions(view)) return pinch(camera, room, Vec2{0.0}, drag_px, 1.0);
    const bool forces = view == View::Forces;
    float& yaw_deg = forces ? camera.forces_yaw_deg : camera.yaw_deg;
    float& pitch_deg = forces ? camera.forces_pitch_deg : camera.pitch_deg;
    const auto [yaw, pitch] = turned(static_cast<double>(yaw_deg), static_cast<double>(pitch_deg), drag_px);
    yaw_deg = static_cast<float>(yaw);
    pitch_deg =
        static_cast<float>(forces ? std::clamp(static_cast<double>(pitch_deg) + k_deg_per_px * drag_px.y, -k_highest_pitch_deg, k_highest_pitch_deg) : pitch);
}

/// As large as fits, in the middle; `turned_too` also from where it is seen at the start.
inline void reset(Camera& camera, bool turned_too) {
    Camera fresh;
    if (!turned_too) {
        fresh.yaw_deg = camera.yaw_deg;
        fresh.pitch_deg = camera.pitch_deg;
    }
    camera = fresh;
}

/// Where the fitted eye's picture has been moved to.
inline void apply_moved(Eye& eye, const Camera& camera, const ImageBox& room) {
    const Vec2 size = room.max - room.min;
    eye.centre_px += std::min(size.x, size.y) * Vec2{camera.moved_x, camera.moved_y};
}

}  // namespace guywright::scene
