#pragma once
#include "engine/plan/plan.hpp"
#include "engine/plan/ranges.hpp"
#include "wasm/scene/projection.hpp"

namespace guywright::scene {

enum class Side : unsigned char { Ground, Face, Bottom, Back, Right, Left };

struct RockSide {
    Side side = Side::Ground;
    std::array<Vec3, 4> corners_m{};
    Vec3 outward{0.0};  ///< unit
};

/// A piece of the site cut out like a slice of cake: a convex cross-section in the x-z plane, drawn out along y.
struct Rock {
    std::array<Vec2, 4> section{};  ///< (x, z), metres: back of the ground, its edge, foot of the face, bottom back
    double right_y_m = 0.0, left_y_m = 0.0;
    std::array<RockSide, 6> sides{};
};

namespace detail {

inline Vec3 at(Vec2 section, double y_m) { return {section.x, y_m, section.y}; }

inline Vec3 flat_normal(Vec2 from, Vec2 to, Vec2 inside) {
    const Vec2 along = glm::normalize(to - from);
    const Vec3 n{-along.y, 0.0, along.x};
    return glm::dot(n, at(inside - from, 0.0)) > 0.0 ? -n : n;
}

}  // namespace detail

inline Rock make_rock(const std::array<Vec2, 4>& section, double right_y_m, double left_y_m) {
    Rock rock{section, right_y_m, left_y_m, {}};
    const auto& s = section;
    const Vec2 inside = 0.25 * (s[0] + s[1] + s[2] + s[3]);
    for (std::size_t i = 0; i < 4; ++i) {
        const Vec2 a = s[i], b = s[(i + 1) % 4];
        rock.sides[i] = {static_cast<Side>(i),
                         {detail::at(a, right_y_m), detail::at(b, right_y_m), detail::at(b, left_y_m), detail::at(a, left_y_m)},
                         detail::flat_normal(a, b, inside)};
    }
    for (std::size_t i = 0; i < 2; ++i) {
        const double y_m = i == 0 ? right_y_m : left_y_m;
        rock.sides[4 + i] = {static_cast<Side>(4 + i),
                             {detail::at(s[0], y_m), detail::at(s[1], y_m), detail::at(s[2], y_m), detail::at(s[3], y_m)},
                             {0.0, i == 0 ? -1.0 : 1.0, 0.0}};
    }
    return rock;
}

inline bool faces_eye(const RockSide& side, const Eye& eye) { return glm::dot(side.outward, toward_eye(eye, side.corners_m[0])) > 1e-6; }

/// True if the rock stands between the point and the eye. A point on the surface is not hidden by its own surface.
inline bool hides(const Rock& rock, Vec3 point_m, const Eye& eye) {
    constexpr double k_skin_m = 0.03;
    const Vec3 ray = toward_eye(eye, point_m);
    double from_m = 0.0, to_m = eye.parallel ? HUGE_VAL : glm::length(eye.at_m - point_m);
    for (const RockSide& side : rock.sides) {
        const double above_m = glm::dot(point_m - side.corners_m[0], side.outward), rise = glm::dot(ray, side.outward);
        if (rise < 0.0) from_m = std::max(from_m, above_m / -rise);
        else if (rise > 0.0) to_m = std::min(to_m, -above_m / rise);
        else if (above_m > -1e-9) return false;  // seen along the surface it lies on
    }
    return to_m - from_m > k_skin_m;
}

inline bool hidden(std::span<const Rock> rocks, Vec3 point_m, const Eye& eye) {
    return std::any_of(rocks.begin(), rocks.end(), [&](const Rock& r) { return hides(r, point_m, eye); });
}

/// How much of the site is shown: distance back from the edge, to both sides and beyond an opening, down the face, and how
/// much of the ground is the edge zone, metres.
struct SiteSize {
    double back_m = 4.0, right_y_m = -3.0, left_y_m = 3.0, beyond_m = 2.0, slope_m = 2.6, zone_m = 2.0;
};

/// The edge with its numbers in the range that can be drawn: a picture is wanted for a plan with faults too.
inline Edge drawable(Edge edge) {
    edge.face_deg = std::isfinite(edge.face_deg) ? std::clamp(edge.face_deg, range::face_deg.min, range::face_deg.max) : Edge{}.face_deg;
    if (edge.opening_m && !range::opening_m.holds(*edge.opening_m)) edge.opening_m.reset();
    return edge;
}

/// The standing ground with its face, and the far side of an opening if there is one. The farther one from the eye first.
/// The edge must be drawable().
inline std::vector<Rock> rocks_of(const Edge& edge, const SiteSize& size, const Eye& eye) {
    const double face = radians(edge.face_deg);
    double slope_m = size.slope_m;
    if (edge.opening_m && std::cos(face) > 0.0) slope_m = std::min(slope_m, *edge.opening_m / std::cos(face));
    const Vec2 foot = slope_m * Vec2{std::cos(face), -std::sin(face)};
    const double back_m = std::max(size.back_m, 0.5 - foot.x);
    std::vector<Rock> out{make_rock({Vec2{-back_m, 0.0}, Vec2{0.0}, foot, Vec2{-back_m, foot.y}}, size.right_y_m, size.left_y_m)};
    if (!edge.opening_m) return out;
    const double near_m = *edge.opening_m, far_m = near_m + size.beyond_m;
    out.push_back(make_rock({Vec2{far_m, 0.0}, Vec2{near_m, 0.0}, Vec2{near_m, foot.y}, Vec2{far_m, foot.y}}, size.right_y_m, size.left_y_m));
    if (toward_eye(eye, {0.5 * near_m, 0.0, 0.0}).x < 0.0) std::swap(out[0], out[1]);
    return out;
}

}  // namespace guywright::scene
