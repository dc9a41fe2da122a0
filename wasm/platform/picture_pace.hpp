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
    static constexpr double k_shortest_ms = 16.6;  ///< of 60 a second: on a quicker screen a frame of that length is still in time
    static constexpr double k_forget = 1.02;       ///< a frame: where a screen turns slower, to save power, that is soon its usual
    static constexpr double k_late = 1.5;          ///< times as long as usual
    static constexpr int k_longest_rest = 2;       ///< frames; with three a tablet showed a third fewer pictures than with none
    static constexpr int k_calm = 30;              ///< frames in time, until the rest is shorter

    std::string shown_;
    double usual_ms_ = k_shortest_ms;
    int rest_ = 0;                  ///< frames that go without after each picture
    int without_ = k_longest_rest;  ///< since the last picture, counted that far
    int in_time_ = 0;               ///< since one was late, or the rest was changed
};

}  // namespace guywright::platform
