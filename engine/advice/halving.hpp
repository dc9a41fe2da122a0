#pragma once
#include "engine/advice/lever.hpp"

#include <algorithm>
#include <cmath>

namespace guywright {

/// A change is sought this closely, as a share of it: with the rounding, three times this, well within what can be told on scene.
inline constexpr double k_change_share = 0.01;

namespace detail {

/// A size of change at least as large as `size`, by at most 2 %, with few digits: 4.137 becomes 4.15.
inline double rounded_up(double size) {
    const double most = 2.0 * k_change_share * size;
    double step = std::pow(10.0, std::floor(std::log10(most)));
    for (const double times : {5.0, 2.0})
        if (times * step <= most) {
            step *= times;
            break;
        }
    return tidy(std::ceil(size / step - 1e-9) * step);
}

}  // namespace detail

/// From a size of change that passes and a smaller one that does not, on to the smallest that passes, and that rounded up if it
/// then still passes. Asked from outside, one size after the other, so that it can be done in slices.
class Halving {
public:
    Halving(const Lever& lever, double breaks, double passes)
        : breaks_(breaks), passes_(passes), enough_(1e-4 * passes), stage_(lever.is_smooth() ? Stage::Halve : Stage::Done) {
        settle();
    }

    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    /// The size to look at next.
    [[nodiscard]] double asks() const { return stage_ == Stage::Round ? detail::rounded_up(passes_) : 0.5 * (breaks_ + passes_); }
    void tell(bool passed) {
        if (stage_ == Stage::Round) {
            passes_ = passed ? asks() : detail::tidy(passes_);
            stage_ = Stage::Done;
            return;
        }
        (passed ? passes_ : breaks_) = asks();
        settle();
    }
    /// The smallest size that passed.
    [[nodiscard]] double size() const { return passes_; }

private:
    enum class Stage : unsigned char { Halve, Round, Done };

    void settle() {
        if (stage_ == Stage::Halve && passes_ - breaks_ <= std::max(k_change_share * passes_, enough_)) stage_ = Stage::Round;
    }

    double breaks_, passes_, enough_;
    Stage stage_;
};

}  // namespace guywright
