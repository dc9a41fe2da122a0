#pragma once
#include <numeric>
#include <optional>

#include "wasm/scene/fit.hpp"

namespace guywright::scene {

/// A text that wants to stand somewhere: its size and the places for its middle, best first.
struct LabelWish {
    Vec2 size_px{0.0};
    int rank = 0;                 ///< smaller = placed earlier, dropped later
    std::vector<Vec2> places_px;
};

namespace detail {

inline bool overlap(const ImageBox& a, const ImageBox& b) {
    return a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y;
}

/// The place moved into the frame; none if that takes more than the label's own height.
inline std::optional<Vec2> moved_inside(Vec2 place_px, Vec2 size_px, const ImageBox& frame) {
    const Vec2 low = frame.min + 0.5 * size_px, high = frame.max - 0.5 * size_px;
    if (!(low.x <= high.x && low.y <= high.y)) return std::nullopt;
    const Vec2 inside = glm::clamp(place_px, low, high);
    if (!(std::max(std::abs(inside.x - place_px.x), std::abs(inside.y - place_px.y)) <= size_px.y)) return std::nullopt;
    return inside;
}

}  // namespace detail

/// Middles of the labels, none for one that is dropped. No label leaves the frame, covers another one or a box of `taken`.
inline std::vector<std::optional<Vec2>> place_labels(std::span<const LabelWish> wishes, const ImageBox& frame, std::vector<ImageBox> taken) {
    std::vector<std::optional<Vec2>> out(wishes.size());
    std::vector<std::size_t> order(wishes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wishes[a].rank < wishes[b].rank; });
    for (const std::size_t i : order) {
        for (const Vec2 place : wishes[i].places_px) {
            const std::optional<Vec2> at = detail::moved_inside(place, wishes[i].size_px, frame);
            if (!at) continue;
            const ImageBox box{*at - 0.5 * wishes[i].size_px, *at + 0.5 * wishes[i].size_px};
            if (std::any_of(taken.begin(), taken.end(), [&](const ImageBox& t) { return detail::overlap(t, box); })) continue;
            taken.push_back(box);
            out[i] = at;
            break;
        }
    }
    return out;
}

}  // namespace guywright::scene
