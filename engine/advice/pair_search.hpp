#pragma once
#include "engine/advice/lever_search.hpp"

namespace guywright {

/// A lever with the sizes of change that pairs are tried with, both ways, the smallest first; of a choice one of it.
struct PairLever {
    std::size_t lever = 0;  ///< index in the list of levers
    std::vector<double> by;
    double best_by = 0.0;     ///< the one that brings the plan nearest to GO by itself
    double lacks = HUGE_VAL;  ///< how far it then still is: shortfall()
};

/// Two levers pulled together.
struct FoundPair {
    double by_first = 0.0, by_second = 0.0;
    double margin = 0.0;
};

/// Looks for changes of two levers that give GO together: the first pair of sizes that passes the screen, each then made as
/// small as the other lets it, and a full verdict on what comes out.
class PairSearch {
public:
    PairSearch(const Plan& base, const Lever& first, const Lever& second, const std::vector<double>& by_first, const std::vector<double>& by_second,
               Screen& screen)
        : base_(base), first_(first), second_(second), screen_(screen) {
        for (std::size_t i = 0; i < by_first.size(); ++i)
            for (std::size_t j = 0; j < by_second.size(); ++j) sizes_.push_back({by_first[i], by_second[j], i + j});
        std::stable_sort(sizes_.begin(), sizes_.end(), [](const Sizes& a, const Sizes& b) { return a.rank < b.rank; });
    }

    [[nodiscard]] bool done() const { return done_; }
    [[nodiscard]] const std::optional<FoundPair>& found() const { return found_; }

    /// Goes on by one look, or at most `budget` points of a full verdict. Returns what it cost, in points.
    std::size_t advance(std::size_t budget) {
        if (done_) return 0;
        if (confirmation_) return confirm(budget);
        if (next_ == sizes_.size() || refusals_ == k_most_refusals) {
            done_ = true;
            return 0;
        }
        if (halving_) return shrink();
        const Look seen = look(sizes_[next_].first, sizes_[next_].second);
        if (seen.broken) ++next_;
        else start_shrinking();
        return seen.points;
    }

private:
    struct Sizes {
        double first, second;
        std::size_t rank;
    };

    [[nodiscard]] std::optional<Plan> both(double by_first, double by_second) const {
        std::optional<Plan> plan = detail::pulled(base_, first_, by_first);
        return plan ? detail::pulled(*plan, second_, by_second) : std::nullopt;
    }
    Look look(double by_first, double by_second) {
        const std::optional<Plan> plan = both(by_first, by_second);
        return plan ? screen_.look(*plan) : Look{};
    }

    void start_shrinking() {
        asked_ = {sizes_[next_].first, sizes_[next_].second};
        second_turn_ = false;
        halving_.emplace(first_, 0.0, std::abs(asked_.by_first));
    }

    /// Of a choice `by` is an index, which no halving touches.
    static double with_size(const Lever& lever, double by, double size) { return lever.is_choice() ? by : by < 0.0 ? -size : size; }

    /// First one change as small as the other lets it, then the other.
    std::size_t shrink() {
        const Lever& lever = second_turn_ ? second_ : first_;
        double& by = second_turn_ ? asked_.by_second : asked_.by_first;
        if (!halving_->done()) {
            const double try_by = with_size(lever, by, halving_->asks());
            const Look seen = second_turn_ ? look(asked_.by_first, try_by) : look(try_by, asked_.by_second);
            halving_->tell(!seen.broken);
            return seen.points;
        }
        by = with_size(lever, by, halving_->size());
        if (second_turn_) return ask();
        second_turn_ = true;
        halving_.emplace(second_, 0.0, std::abs(asked_.by_second));
        return 0;
    }

    std::size_t ask() {
        halving_.reset();
        std::optional<Plan> plan = both(asked_.by_first, asked_.by_second);
        if (plan) confirmation_ = std::make_unique<Confirmation>(std::move(*plan));
        else ++next_;
        return 3;
    }

    std::size_t confirm(std::size_t budget) {
        const std::size_t cost = confirmation_->advance(budget);
        if (!confirmation_->done()) return cost;
        if (confirmation_->go()) {
            asked_.margin = least_margin(confirmation_->evaluation().worst);
            found_ = asked_;
            done_ = true;
        } else {
            if (!confirmation_->teach(screen_)) ++next_;
            ++refusals_;
        }
        confirmation_.reset();
        return cost;
    }

    const Plan& base_;
    const Lever& first_;
    const Lever& second_;
    Screen& screen_;
    std::vector<Sizes> sizes_;
    std::size_t next_ = 0;
    std::optional<Halving> halving_;
    bool second_turn_ = false;
    FoundPair asked_;
    int refusals_ = 0;
    bool done_ = false;
    std::unique_ptr<Confirmation> confirmation_;
    std::optional<FoundPair> found_;
};

}  // namespace guywright
