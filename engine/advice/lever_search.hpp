#pragma once
#include "engine/advice/change.hpp"
#include "engine/advice/halving.hpp"
#include "engine/advice/screen.hpp"

#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace guywright {

/// After so many full verdicts that said no, one way of changing one thing is given up: no known rig came near it.
inline constexpr int k_most_refusals = 16;

/// Where the box has many corners that are nearly alike, each refusal moves the answer by a hair: after so many of them each moves
/// it by at least k_change_share.
inline constexpr int k_patient_refusals = 3;

namespace detail {

/// A plan with a lever pulled.
inline std::optional<Plan> pulled(const Plan& base, const Lever& lever, double by) {
    Plan plan = base;
    return pull(lever, by, plan) ? std::optional(std::move(plan)) : std::nullopt;
}

}  // namespace detail

/// A change that a full verdict found to give GO.
struct Found {
    double by = 0.0;      ///< for pull()
    double margin = 0.0;  ///< least margin over the box
};

/// Looks for the smallest change one way of one lever: outward step by step with the screen, between steps where a rule comes
/// nearest to being kept, then halving, and a full verdict on what is left. What that finds broken the screen learns, and the
/// search goes on outward.
class OneWaySearch {
public:
    /// `way` is 1 or -1. Only changes smaller than `within` are of interest. `margin` is that of the plan as it is.
    OneWaySearch(const Plan& base, const Lever& lever, double way, double within, double margin, Screen& screen)
        : base_(base), lever_(lever), sizes_(way < 0.0 ? lever.down : lever.up), way_(way), within_(within), screen_(screen) {
        before_last_ = before_ = latest_ = {0.0, margin};
    }

    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    [[nodiscard]] const std::optional<Found>& found() const { return found_; }

    /// Goes on by one look, or by at most `budget` points of a full verdict. Returns what it cost, in points.
    std::size_t advance(std::size_t budget) {
        switch (stage_) {
            case Stage::Scan: return scan();
            case Stage::Peak: return peak();
            case Stage::Narrow: return narrow();
            case Stage::Confirm: return confirm(budget);
            case Stage::Done: break;
        }
        return 0;
    }

private:
    enum class Stage : unsigned char { Scan, Peak, Narrow, Confirm, Done };
    struct Tried {
        double size, margin;
    };

    Look look(double size) {
        const std::optional<Plan> plan = detail::pulled(base_, lever_, way_ * size);
        return plan ? screen_.look(*plan) : Look{};
    }

    /// One step further out; where that would be `within_` or past it, once as far as a change is still smaller.
    [[nodiscard]] std::optional<double> size_to_look_at() const {
        if (next_ == sizes_.size()) return std::nullopt;
        if (sizes_[next_] < within_) return sizes_[next_];
        const double last = within_ * (1.0 - k_change_share);
        return lever_.is_smooth() && latest_.size < last ? std::optional(last) : std::nullopt;
    }

    std::size_t scan() {
        const std::optional<double> size = size_to_look_at();
        if (!size) return finish();
        const Look seen = look(*size);
        from_peak_ = false;
        if (!seen.broken) return pass_at(*size, latest_.size, seen.points);
        if (*size == sizes_[next_]) ++next_;
        before_last_ = before_;
        before_ = latest_;
        latest_ = {*size, seen.margin};
        if (may_peak()) start_peak(before_last_, before_, latest_);
        return seen.points;
    }

    void start_peak(Tried left, Tried middle, Tried right) {
        stage_ = Stage::Peak;
        left_ = left, middle_ = middle, right_ = right;
        looks_left_ = k_peak_looks;
        from_peak_ = true;
    }

    static constexpr int k_peak_looks = 8;

    /// Whether the margin may reach above 0 between the last three sizes, the middle one being nearest.
    [[nodiscard]] bool may_peak() const {
        if (!lever_.is_smooth()) return false;
        const Tried a = before_last_, b = before_, c = latest_;
        if (!(b.size > a.size) || !(b.margin >= a.margin) || !(b.margin >= c.margin)) return false;
        // as far again as it fell on the steeper side
        return b.margin + std::max(b.margin - a.margin, b.margin - c.margin) > 0.0;
    }

    /// Halves the longer side about the best size so far.
    std::size_t peak() {
        if (looks_left_-- == 0) {
            stage_ = Stage::Scan;
            return 0;
        }
        const bool go_right = right_.size - middle_.size > middle_.size - left_.size;
        const double size = 0.5 * (middle_.size + (go_right ? right_.size : left_.size));
        const Look seen = look(size);
        if (!seen.broken) return pass_at(size, left_.size, seen.points);
        const Tried here{size, seen.margin};
        if (here.margin > middle_.margin) {
            (go_right ? left_ : right_) = middle_;
            middle_ = here;
        } else {
            (go_right ? right_ : left_) = here;
        }
        return seen.points;
    }

    std::size_t pass_at(double size, double broken_below, std::size_t cost) {
        halving_.emplace(lever_, std::max(breaks_, broken_below), size);
        stage_ = Stage::Narrow;
        return cost;
    }

    std::size_t narrow() {
        if (halving_->done()) return ask();
        const Look seen = look(halving_->asks());
        halving_->tell(!seen.broken);
        return seen.points;
    }

    /// Asks for a full verdict on what the halving came to.
    std::size_t ask() {
        asked_ = halving_->size();
        std::optional<Plan> plan = detail::pulled(base_, lever_, way_ * asked_);
        if (!plan || !(asked_ < within_)) return finish();
        confirmation_ = std::make_unique<Confirmation>(std::move(*plan));
        stage_ = Stage::Confirm;
        return 3;
    }

    std::size_t confirm(std::size_t budget) {
        const std::size_t cost = confirmation_->advance(budget);
        if (!confirmation_->done()) return cost;
        if (confirmation_->go()) {
            found_ = {way_ * asked_, least_margin(confirmation_->evaluation().worst)};
            finish();
        } else {
            refuse();
        }
        confirmation_.reset();
        return cost;
    }

    /// The screen learns; the search goes on beyond the size that was refused.
    void refuse() {
        const bool told = confirmation_->teach(screen_);
        if (++refusals_ == k_most_refusals) return void(finish());
        breaks_ = std::max(breaks_, refusals_ > k_patient_refusals ? asked_ * (1.0 + k_change_share) : asked_);
        const Tried here{breaks_, k_broken_margin};
        if (from_peak_) return start_peak(here, here, right_);
        while (next_ < sizes_.size() && (sizes_[next_] < breaks_ || (!told && sizes_[next_] == breaks_))) ++next_;
        before_last_ = before_ = latest_ = here;
        stage_ = Stage::Scan;
    }

    std::size_t finish() {
        stage_ = Stage::Done;
        return 0;
    }

    const Plan& base_;
    const Lever& lever_;
    const std::vector<double>& sizes_;
    double way_, within_;
    Screen& screen_;
    Stage stage_ = Stage::Scan;
    std::size_t next_ = 0;
    Tried before_last_{}, before_{}, latest_{};  ///< the last three steps
    Tried left_{}, middle_{}, right_{};          ///< where a peak is looked for
    bool from_peak_ = false;
    std::optional<Halving> halving_;
    double breaks_ = 0.0, asked_ = 0.0;
    int looks_left_ = 0, refusals_ = 0;
    std::unique_ptr<Confirmation> confirmation_;
    std::optional<Found> found_;
};

}  // namespace guywright
