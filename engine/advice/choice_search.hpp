#pragma once
#include "engine/advice/lever_search.hpp"

namespace guywright {

/// Looks for the best of several things to add: each is looked at, then full verdicts are asked, the one with most to spare
/// first, until one is GO.
class ChoiceSearch {
public:
    ChoiceSearch(const Plan& base, const Lever& lever, Screen& screen) : base_(base), lever_(lever), screen_(screen) {}

    [[nodiscard]] bool done() const { return done_; }
    [[nodiscard]] const std::optional<Found>& found() const { return found_; }

    /// Goes on by one look, or by at most `budget` points of a full verdict. Returns what it cost, in points.
    std::size_t advance(std::size_t budget) {
        if (done_) return 0;
        if (confirmation_) return confirm(budget);
        return next_ < lever_.choices() ? look() : ask();
    }

private:
    struct Open {
        std::size_t choice;
        double margin;
    };

    std::size_t look() {
        const std::size_t choice = next_++;
        const std::optional<Plan> plan = detail::pulled(base_, lever_, static_cast<double>(choice));
        const Look seen = plan ? screen_.look(*plan) : Look{};
        if (!seen.broken) open_.push_back({choice, seen.margin});
        return seen.points;
    }

    /// The best left, if the screen, which may have learned since, still lets it pass.
    std::size_t ask() {
        const auto best = std::max_element(open_.begin(), open_.end(), [](const Open& a, const Open& b) { return a.margin < b.margin; });
        done_ = best == open_.end() || refusals_ == k_most_refusals;
        if (done_) return 0;
        asked_ = static_cast<double>(best->choice);
        open_.erase(best);
        Plan plan = *detail::pulled(base_, lever_, asked_);
        const Look seen = screen_.look(plan);
        if (!seen.broken) confirmation_ = std::make_unique<Confirmation>(std::move(plan));
        return seen.points + (seen.broken ? 0 : 3);
    }

    std::size_t confirm(std::size_t budget) {
        const std::size_t cost = confirmation_->advance(budget);
        if (!confirmation_->done()) return cost;
        if (confirmation_->go()) {
            found_ = {asked_, least_margin(confirmation_->evaluation().worst)};
            done_ = true;
        } else {
            confirmation_->teach(screen_);
            ++refusals_;
        }
        confirmation_.reset();
        return cost;
    }

    const Plan& base_;
    const Lever& lever_;
    Screen& screen_;
    std::vector<Open> open_;
    std::size_t next_ = 0;
    double asked_ = 0.0;
    int refusals_ = 0;
    bool done_ = false;
    std::unique_ptr<Confirmation> confirmation_;
    std::optional<Found> found_;
};

/// The smallest change of one lever, both ways; of a choice the best one.
class LeverSearch {
public:
    /// `margin`: least margin of the plan as it is. Plan, lever and screen must outlive the search.
    LeverSearch(const Plan& base, const Lever& lever, double margin, Screen& screen) : base_(base), lever_(lever), margin_(margin), screen_(screen) {
        if (lever.is_choice()) choice_.emplace(base, lever, screen);
        else one_way_.emplace(base, lever, 1.0, HUGE_VAL, margin, screen);
    }

    [[nodiscard]] bool done() const { return done_; }
    [[nodiscard]] const std::optional<Found>& found() const { return found_; }

    std::size_t advance(std::size_t budget) {
        if (done_) return 0;
        std::size_t cost = 0;
        if (choice_) {
            cost = choice_->advance(budget);
            done_ = choice_->done();
            found_ = choice_->found();
            return cost;
        }
        cost = one_way_->advance(budget);
        if (one_way_->done()) end_of_way();
        return cost;
    }

private:
    /// The other way only where it is shorter.
    void end_of_way() {
        if (one_way_->found()) found_ = one_way_->found();
        done_ = back_;
        if (back_) return;
        back_ = true;
        one_way_.emplace(base_, lever_, -1.0, found_ ? std::abs(found_->by) : HUGE_VAL, margin_, screen_);
    }

    const Plan& base_;
    const Lever& lever_;
    double margin_;
    Screen& screen_;
    std::optional<ChoiceSearch> choice_;
    std::optional<OneWaySearch> one_way_;
    std::optional<Found> found_;
    bool back_ = false, done_ = false;
};

}  // namespace guywright
