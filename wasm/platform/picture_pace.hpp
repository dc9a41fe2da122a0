#pragma once
#include <algorithm>
#include <string>
#include <string_view>

namespace guywright::platform {

/// How close upon each other new pictures go to the browser. One that cannot show them as fast (no graphics chip, or a weak one) puts off
/// frames until it can, and the finger waits meanwhile: then one or two frames between pictures go without. A new verdict never waits.
class PicturePace {
public:
    /// At the start of a frame that was asked for in the one before. @param after_ms between the two, by the browser's clock of frames
    void frame_came(double after_ms) {
        usual_ms_ = std::clamp(after_ms, k_shortest_ms, usual_ms_ * k_forget);
        if (after_ms > k_late * usual_ms_) {
            rest_ = std::min(rest_ + 1, k_longest_rest);
            in_time_ = 0;
        } else if (++in_time_ == k_calm) {
            rest_ = std::max(rest_ - 1, 0);
            in_time_ = 0;
        }
    }

    /// @param verdict the word that the picture shows; empty where it shows none
    [[nodiscard]] bool may_show(std::string_view verdict) const { return without_ >= rest_ || verdict != shown_; }

    /// At the end of each frame.
    void frame_went(bool with_picture, std::string_view verdict) {
        without_ = with_picture ? 0 : std::min(without_ + 1, k_longest_rest);
        if (with_picture) shown_ = verdict;
    }

private:
    static constexpr double k_shortest_ms = 16.6;  ///< what is faster than 60 a second needs no finger's picture anyway
    static constexpr double k_forget = 1.02;       ///< a screen that saves power is slower from some frame on: that is its usual then
    static constexpr double k_late = 1.5;
    static constexpr int k_longest_rest = 2, k_calm = 30;

    std::string shown_;
    double usual_ms_ = k_shortest_ms;
    int rest_ = 0, without_ = k_longest_rest, in_time_ = 0;
};

}  // namespace guywright::platform
