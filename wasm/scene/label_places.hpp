#pragma once
#include <array>
#include <numeric>
#include <optional>

#include "wasm/scene/fit.hpp"

namespace guywright::scene {

/// A line of the drawing that a label should rather not stand on.
struct DrawnLine {
    Vec2 a{0.0}, b{0.0};
};

/// A text that wants to stand somewhere: its size and the places for its middle, best first.
struct LabelWish {
    Vec2 size_px{0.0};
    int rank = 0;  ///< smaller = placed earlier, dropped later
    std::vector<Vec2> places_px;
    std::optional<DrawnLine> own;  ///< the line it speaks of: it may stand close to this one alone
};

namespace detail {

inline bool overlap(const ImageBox& a, const ImageBox& b) { return a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y; }

/// The place moved into the frame; none if that takes more than the label's own height.
inline std::optional<Vec2> moved_inside(Vec2 place_px, Vec2 size_px, const ImageBox& frame) {
    const Vec2 low = frame.min + 0.5 * size_px, high = frame.max - 0.5 * size_px;
    if (!(low.x <= high.x && low.y <= high.y)) return std::nullopt;
    const Vec2 inside = glm::clamp(place_px, low, high);
    if (!(std::max(std::abs(inside.x - place_px.x), std::abs(inside.y - place_px.y)) <= size_px.y)) return std::nullopt;
    return inside;
}

inline ImageBox box_at(Vec2 middle, Vec2 size_px) { return {middle - 0.5 * size_px, middle + 0.5 * size_px}; }

inline bool same_line(const DrawnLine& l, const DrawnLine& m) {
    const auto near = [](Vec2 p, Vec2 q) { return glm::dot(p - q, p - q) < 1.0; };
    return (near(l.a, m.a) && near(l.b, m.b)) || (near(l.a, m.b) && near(l.b, m.a));
}

inline Vec2 nearest_on(const DrawnLine& l, Vec2 p) {
    const Vec2 d = l.b - l.a;
    const double length2 = glm::dot(d, d);
    return length2 > 0.0 ? l.a + std::clamp(glm::dot(p - l.a, d) / length2, 0.0, 1.0) * d : l.a;
}

inline bool cross(const DrawnLine& l, const DrawnLine& m) {
    const auto side = [](const DrawnLine& of, Vec2 p) { return (of.b.x - of.a.x) * (p.y - of.a.y) - (of.b.y - of.a.y) * (p.x - of.a.x); };
    return side(l, m.a) * side(l, m.b) < 0.0 && side(m, l.a) * side(m, l.b) < 0.0;
}

/// True if a foreign line runs between a label and the line it speaks of: read without care, it is the foreign line's.
inline bool cut_off(Vec2 middle, const DrawnLine& own, std::span<const DrawnLine> lines) {
    const DrawnLine leader{middle, nearest_on(own, middle)};
    return std::any_of(lines.begin(), lines.end(), [&](const DrawnLine& l) { return !same_line(own, l) && cross(l, leader); });
}

/// Lines that a label in this box would cover, or be taken to belong to: a foreign line next to it, or between it and
/// its own line, counts as well.
inline double lines_in_the_way(const ImageBox& box, std::span<const DrawnLine> lines, const std::optional<DrawnLine>& own) {
    constexpr double k_close_px = 9.0, k_cost_of_cut_off = 2.0;
    double count = own && cut_off(0.5 * (box.min + box.max), *own, lines) ? k_cost_of_cut_off : 0.0;
    for (DrawnLine l : lines) {
        const double reach = own && !same_line(*own, l) ? k_close_px : 0.0;
        if (cut_to_box(l.a, l.b, box.min - reach, box.max + reach)) count += 1.0;
    }
    return count;
}

/// The best free place of one label: few lines under it, then early in its list.
inline std::optional<Vec2> best_place(const LabelWish& wish, const ImageBox& frame, std::span<const ImageBox> taken, std::span<const DrawnLine> lines) {
    constexpr double k_cost_of_later = 0.04;  // of a line: a place 25 further down the list is as bad as one line more
    std::optional<Vec2> best;
    double best_cost = HUGE_VAL;
    for (std::size_t i = 0; i < wish.places_px.size(); ++i) {
        const std::optional<Vec2> at = moved_inside(wish.places_px[i], wish.size_px, frame);
        if (!at) continue;
        const ImageBox box = box_at(*at, wish.size_px);
        if (std::any_of(taken.begin(), taken.end(), [&](const ImageBox& t) { return overlap(t, box); })) continue;
        const double cost = lines_in_the_way(box, lines, wish.own) + k_cost_of_later * static_cast<double>(i);
        if (cost >= best_cost) continue;
        best = at;
        best_cost = cost;
    }
    return best;
}

}  // namespace detail

/// Middles of the labels, none for one that is dropped. No label leaves the frame, covers another one or a box of `taken`.
inline std::vector<std::optional<Vec2>> place_labels(std::span<const LabelWish> wishes, const ImageBox& frame, std::vector<ImageBox> taken,
                                                     std::span<const DrawnLine> lines) {
    std::vector<std::optional<Vec2>> out(wishes.size());
    std::vector<std::size_t> order(wishes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wishes[a].rank < wishes[b].rank; });
    for (const std::size_t i : order) {
        out[i] = detail::best_place(wishes[i], frame, taken, lines);
        if (out[i]) taken.push_back(detail::box_at(*out[i], wishes[i].size_px));
    }
    return out;
}

/// Places beside a line, from its middle outward and at last by its start, on the upper side first; then on the line itself.
inline std::vector<Vec2> places_along(const DrawnLine& line, Vec2 size_px, double gap_px) {
    const Vec2 d = line.b - line.a;
    const double length = glm::length(d);
    Vec2 across = length > 1e-6 ? Vec2{d.y, -d.x} / length : Vec2{0, -1};
    if (across.y > 0.0) across = -across;
    const double away = 0.5 * (std::abs(across.x) * size_px.x + std::abs(across.y) * size_px.y) + gap_px;
    std::vector<Vec2> out;
    for (const double side : {1.0, -1.0, 0.0})
        for (const double t : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.82, 0.05}) out.push_back(line.a + t * d + side * away * across);
    return out;
}

/// How much farther than the nearest ring round its point a label may go; from the third on it needs a line to lead to it.
inline constexpr std::array<double, 5> k_rings_px{0.0, 7.0, 26.0, 52.0, 84.0};
inline constexpr std::size_t k_first_led_ring = 2, k_places_each_ring = 8;

/// Places round a point, `away_px` clear of it; the direction `first` (image, any length) is tried first, and near before far.
inline std::vector<Vec2> places_round(Vec2 at, Vec2 size_px, double away_px, Vec2 first) {
    const double start = std::atan2(first.y, first.x);
    std::vector<Vec2> out;
    for (const double further_px : k_rings_px)
        for (const int eighth : {0, 1, -1, 2, -2, 3, -3, 4}) {
            const double turn = start + eighth * k_pi / 4.0;
            const Vec2 way{std::cos(turn), std::sin(turn)};
            const double half = 0.5 * (std::abs(way.x) * size_px.x + std::abs(way.y) * size_px.y);
            out.push_back(at + (away_px + further_px + half) * way);
        }
    return out;
}

/// True if a label there stands so far from its point that a line has to lead to it.
inline bool needs_leader(Vec2 middle, Vec2 size_px, Vec2 at, double away_px) {
    const Vec2 beside = glm::abs(middle - at) - 0.5 * size_px;
    return std::max(beside.x, beside.y) > away_px + 0.7 * k_rings_px[k_first_led_ring];
}

}  // namespace guywright::scene
