#pragma once
#include "engine/base/vec.hpp"
#include "engine/plan/utf8.hpp"

#include <glm/vec2.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace guywright::detail {

// A drawing on paper. Millimetres from the lower left corner, up is up.

using PaperPoint = glm::dvec2;

struct PaperBox {
    PaperPoint low{}, high{};

    [[nodiscard]] bool meets(const PaperBox& o) const { return low.x < o.high.x && o.low.x < high.x && low.y < o.high.y && o.low.y < high.y; }
    [[nodiscard]] bool holds(const PaperBox& o) const { return low.x <= o.low.x && low.y <= o.low.y && o.high.x <= high.x && o.high.y <= high.y; }
    void take_in(PaperPoint p) {
        low = glm::min(low, p);
        high = glm::max(high, p);
    }
};

/// Cuts a line off at a box, by its parameter on each axis. False where nothing of it is inside.
inline bool cut_to(const PaperBox& box, PaperPoint& a, PaperPoint& b) {
    double from = 0.0, to = 1.0;
    const PaperPoint start = a, way = b - a;
    for (int axis = 0; axis < 2; ++axis) {
        if (way[axis] == 0.0) {
            if (a[axis] < box.low[axis] || a[axis] > box.high[axis]) return false;
            continue;
        }
        const double p = (box.low[axis] - a[axis]) / way[axis], q = (box.high[axis] - a[axis]) / way[axis];
        from = std::max(from, std::min(p, q));
        to = std::min(to, std::max(p, q));
    }
    if (!(from < to)) return false;
    a = start + way * from;
    b = start + way * to;
    return true;
}

inline constexpr double k_letter_mm = 2.7;  ///< size of the letters in drawings

inline PaperPoint text_size_mm(std::string_view text) {
    constexpr double width_of_letter = 0.6;  // of a wide letter, so that no text is thought narrower than it is
    return {static_cast<double>(look_at(text).characters) * width_of_letter * k_letter_mm, 1.15 * k_letter_mm};
}

/// A text with its middle at `at`.
struct PaperText {
    std::string text;
    PaperPoint at{};
    PaperBox box{};
};

/// Finds a place for each text near its point: on the paper, off the texts before it and, where there is room, off the lines.
class LabelPlaces {
public:
    explicit LabelPlaces(PaperBox paper) : paper_(paper) {}

    void keep_off(PaperPoint a, PaperPoint b) { lines_.push_back({a, b}); }
    void keep_free(PaperPoint at, double half_mm) { taken_.push_back({at - half_mm, at + half_mm}); }

    /// `away`: the way it had best stand from `by`; any length.
    void add(std::string text, PaperPoint by, PaperPoint away) {
        const PaperPoint half = 0.5 * text_size_mm(text);
        PaperText best{std::move(text), by, box_at(by, half)};
        double least = HUGE_VAL;
        for (const double far_mm : {1.6, 2.6, 4.0, 6.0, 9.0, 13.0})
            for (std::size_t turn = 0; turn < k_turns.size(); ++turn) {
                const PaperPoint way = turned(away, k_turns[turn]);
                const PaperPoint at = by + way * far_mm + PaperPoint{way.x * half.x, way.y * half.y};
                const PaperBox box = box_at(at, half);
                const double cost =
                    100.0 * overlaps(box) + 8.0 * crossings(box) + (paper_.holds(box) ? 0.0 : 1000.0) + far_mm + 0.8 * static_cast<double>(turn);
                if (cost >= least) continue;
                least = cost;
                best.at = at;
                best.box = box;
            }
        taken_.push_back(best.box);
        placed_.push_back(std::move(best));
    }

    [[nodiscard]] const std::vector<PaperText>& placed() const { return placed_; }

private:
    static constexpr std::array k_turns{0.0, 0.6, -0.6, 1.2, -1.2, 1.9, -1.9, 2.6, -2.6, 3.14};  // radians off the way wanted

    static PaperBox box_at(PaperPoint at, PaperPoint half) { return {at - half, at + half}; }
    static PaperPoint turned(PaperPoint way, double by_rad) {
        const double length = glm::length(way);
        const PaperPoint unit = length > 0.0 ? way / length : PaperPoint{0.0, 1.0};
        return {unit.x * std::cos(by_rad) - unit.y * std::sin(by_rad), unit.x * std::sin(by_rad) + unit.y * std::cos(by_rad)};
    }
    [[nodiscard]] double overlaps(const PaperBox& box) const {
        return static_cast<double>(std::count_if(taken_.begin(), taken_.end(), [&](const PaperBox& t) { return t.meets(box); }));
    }

    [[nodiscard]] double crossings(const PaperBox& box) const {
        return static_cast<double>(
            std::count_if(lines_.begin(), lines_.end(), [&](std::pair<PaperPoint, PaperPoint> l) { return cut_to(box, l.first, l.second); }));
    }

    PaperBox paper_;
    std::vector<std::pair<PaperPoint, PaperPoint>> lines_;
    std::vector<PaperBox> taken_;
    std::vector<PaperText> placed_;
};

}  // namespace guywright::detail
