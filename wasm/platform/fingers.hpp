#pragma once
#include <algorithm>
#include <array>
#include <cstdint>
#include <glm/geometric.hpp>
#include <glm/vec2.hpp>
#include <optional>

namespace guywright::platform {

/// What two fingers have done since last asked: the point between them went from one place to the other, and they are `factor` times as
/// far apart.
struct Pinch {
    glm::dvec2 from_px{0.0}, to_px{0.0};
    double factor = 1.0;
};

/// Follows the fingers on the screen. The first one is the pointer; a second one makes a pinch of them if both came down on
/// the picture, and from then on nothing is the pointer until all are up: a finger that lifts a moment later than the other must not
/// turn or press anything. Elsewhere a second finger, or the heel of a hand, is nothing.
class Fingers {
public:
    /// True where this makes a pinch of a finger that has been the pointer: that one must be let go.
    bool down(std::int64_t id, glm::dvec2 at_px, bool on_picture) {
        Finger* free = find(k_nobody);
        if (free == nullptr || find(id) != nullptr) return false;
        *free = {id, at_px, on_picture};
        const bool was_pointer = !pinched_ && two() && !pair_;
        pair_up();
        return was_pointer && pair_.has_value();
    }

    void move(std::int64_t id, glm::dvec2 at_px) {
        if (Finger* finger = find(id)) finger->at_px = at_px;
    }

    void up(std::int64_t id) {
        Finger* finger = find(id);
        if (finger == nullptr) return;
        *finger = {};
        if (pair_ && (pair_->first == id || pair_->second == id)) pair_.reset();
        pair_up();
        if (find_other_than(k_nobody) == nullptr) pinched_ = false;
    }

    /// The device took them away: no finger will be said to go up.
    void forget() { *this = {}; }

    /// From the second finger's coming down until all are up.
    [[nodiscard]] bool hold_pointer() const { return pinched_; }

    [[nodiscard]] std::optional<Pinch> take() {
        if (!pair_) return std::nullopt;
        const glm::dvec2 a = find(pair_->first)->at_px, b = find(pair_->second)->at_px;
        if (a == pair_->a_px && b == pair_->b_px) return std::nullopt;
        constexpr double k_closest_px = 20.0;  // two fingers side by side: their distance is mostly noise
        const double before = std::max(k_closest_px, glm::length(pair_->b_px - pair_->a_px)), now = std::max(k_closest_px, glm::length(b - a));
        const Pinch pinch{0.5 * (pair_->a_px + pair_->b_px), 0.5 * (a + b), now / before};
        pair_->a_px = a;
        pair_->b_px = b;
        return pinch;
    }

private:
    static constexpr std::int64_t k_nobody = INT64_MIN;
    struct Finger {
        std::int64_t id = k_nobody;
        glm::dvec2 at_px{0.0};
        bool on_picture = false;
    };
    struct Pair {
        std::int64_t first, second;
        glm::dvec2 a_px, b_px;
    };

    Finger* find(std::int64_t id) {
        for (Finger& f : fingers_)
            if (f.id == id) return &f;
        return nullptr;
    }
    Finger* find_other_than(std::int64_t id) {
        for (Finger& f : fingers_)
            if (f.id != id) return &f;
        return nullptr;
    }
    /// Two or more, and none elsewhere.
    [[nodiscard]] bool two() const {
        int count = 0;
        for (const Finger& f : fingers_) {
            if (f.id == k_nobody) continue;
            if (!f.on_picture) return false;
            ++count;
        }
        return count >= 2;
    }

    void pair_up() {
        if (pair_ || !two()) return;
        const Finger* first = nullptr;
        for (const Finger& f : fingers_) {
            if (f.id == k_nobody || !f.on_picture) continue;
            if (first == nullptr) {
                first = &f;
                continue;
            }
            pair_ = Pair{first->id, f.id, first->at_px, f.at_px};
            pinched_ = true;
            return;
        }
    }

    std::array<Finger, 10> fingers_{};
    std::optional<Pair> pair_{};
    bool pinched_ = false;
};

}  // namespace guywright::platform
