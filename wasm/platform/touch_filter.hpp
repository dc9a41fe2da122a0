#pragma once
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace guywright::platform {

/// Tells fingers from a palm, a sleeve or rain: three or more touches at once are none of them meant. From the third on
/// everything is dropped until the glass is free again, and the caller takes back what the first two have begun.
class TouchFilter {
public:
    static constexpr std::size_t k_fewest_unmeant = 3;

    /// True where this touch shows that none of the present ones is meant.
    bool down(std::int64_t finger) {
        if (has(finger) || count_ == fingers_.size()) return false;
        fingers_[count_++] = finger;
        const bool turns = count_ >= k_fewest_unmeant && !dropping_;
        dropping_ = dropping_ || turns;
        return turns;
    }
    void up(std::int64_t finger) {
        const auto end = fingers_.begin() + static_cast<std::ptrdiff_t>(count_);
        const auto at = std::find(fingers_.begin(), end, finger);
        if (at == end) return;
        *at = fingers_[--count_];
        if (count_ == 0) dropping_ = false;
    }
    /// The device takes the touches away: what is still told of them is not meant either.
    void take_away() { dropping_ = true; }
    /// The page lost sight of the fingers: their lifting will not be told.
    void forget() {
        count_ = 0;
        dropping_ = false;
    }
    [[nodiscard]] bool dropping() const { return dropping_; }
    [[nodiscard]] int fingers() const { return static_cast<int>(count_); }

private:
    [[nodiscard]] bool has(std::int64_t finger) const {
        const auto end = fingers_.begin() + static_cast<std::ptrdiff_t>(count_);
        return std::find(fingers_.begin(), end, finger) != end;
    }

    std::array<std::int64_t, 20> fingers_{};
    std::size_t count_ = 0;
    bool dropping_ = false;
};

}  // namespace guywright::platform
