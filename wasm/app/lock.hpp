#pragma once

namespace guywright::app {

/// The way out of the lock: the first of two places is held still, let go, and then the second is held. Rain taps, sleeves
/// wander and lie on both at once: whatever is not this, in this order, begins it anew.
class Lock {
public:
    static constexpr double k_hold_s = 1.0;           ///< longer than a drop or a brush of a sleeve rests, short enough to be willing to
    static constexpr double k_between_s = 6.0;        ///< from the first place to the second
    static constexpr double k_between_keys_s = 60.0;  ///< the same for the keys of the text view

    /// What is touched in a frame. Both places at once, a finger that moves, and any other spot are `Wrong`.
    enum class Touched : unsigned char { Nothing, First, Second, Wrong };

    void look(Touched touched, double now_s) {
        if (first_done_ && now_s - done_s_ > longest_between_s_) first_done_ = false;
        if (touched == Touched::Nothing) return let_go();
        if (touched == kept_) return;  // done with, or wrong, and not let go yet
        const bool wanted = touched == (first_done_ ? Touched::Second : Touched::First);
        if (!wanted || kept_ != Touched::Nothing) return begin_anew(touched);
        if (!holding_) since_s_ = now_s;
        holding_ = true;
        held_s_ = now_s - since_s_;
        if (held_s_ >= k_hold_s) done(touched, now_s);
    }

    /// The same by a key of the text view that is pressed on purpose and cannot be held. To hear and find the second key takes
    /// longer than to move a finger.
    void press(Touched place, double now_s) {
        if (place == (first_done_ ? Touched::Second : Touched::First)) done(place, now_s);
        else begin_anew(Touched::Nothing);
        kept_ = Touched::Nothing;
        longest_between_s_ = k_between_keys_s;
    }

    [[nodiscard]] bool open() const { return open_; }
    [[nodiscard]] bool first_done() const { return first_done_; }
    /// 0 to 1: how far the place that is wanted now has been held.
    [[nodiscard]] float held() const { return holding_ ? static_cast<float>(held_s_ / k_hold_s) : 0.0F; }
    /// True while it wants to hear that nothing is touched, too.
    [[nodiscard]] bool waits() const { return holding_ || kept_ != Touched::Nothing || (first_done_ && longest_between_s_ == k_between_s); }

private:
    void let_go() {
        holding_ = false;
        held_s_ = 0.0;
        kept_ = Touched::Nothing;
    }
    void begin_anew(Touched touched) {
        *this = {};
        kept_ = touched;
    }
    void done(Touched place, double now_s) {
        open_ = first_done_;
        first_done_ = true;
        holding_ = false;
        held_s_ = 0.0;
        kept_ = place;
        done_s_ = now_s;
        longest_between_s_ = k_between_s;
    }

    double since_s_ = 0.0, held_s_ = 0.0, done_s_ = 0.0, longest_between_s_ = k_between_s;
    Touched kept_ = Touched::Nothing;  ///< counts no more until it is let go
    bool holding_ = false, first_done_ = false, open_ = false;
};

}  // namespace guywright::app
