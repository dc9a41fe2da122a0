#pragma once
#include "engine/advice/choice_search.hpp"
#include "engine/advice/pair_search.hpp"

namespace guywright {

/// Rules with less than this to spare over the plan's own box give their worst point to the screen before anything is tried.
inline constexpr double k_close_margin = 0.2;

/// At most so many levers are tried in pairs: those that bring the plan nearest to GO.
inline constexpr std::size_t k_paired_levers = 10;

/// So many pairs are enough to choose from.
inline constexpr std::size_t k_most_pairs = 3;

/// What stays broken where no change in reach gives GO: the nearest that was tried, and why it is not GO.
struct OutOfReach {
    Plan nearest;
    Evaluation evaluation;  ///< of `nearest`
    Check check;            ///< the row that governs there
};

/// For a NO-GO: of everything that can be changed on scene the smallest change that gives GO over the whole box of measuring
/// errors, each confirmed by a full verdict, the least effort first; where no single one does, two together. Works in slices,
/// so that a screen can draw in between. The same plan gives the same advice.
class SmallestChange {
public:
    /// `plan` must have no faults. A plan that is not NO-GO needs no advice and gets none.
    explicit SmallestChange(Plan plan) : plan_(std::move(plan)), measured_(evaluate_as_measured(plan_)) {
        if (!measured_.faults.empty() || !measured_.not_measured.empty()) stage_ = Stage::Done;
        else sweep_.emplace(plan_, measured_.checks);
    }
    // searches point into the plan and the levers
    SmallestChange(const SmallestChange&) = delete;
    SmallestChange& operator=(const SmallestChange&) = delete;

    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    /// What was found so far, the least effort first.
    [[nodiscard]] const std::vector<Advice>& advice() const { return advice_; }
    /// Only once done, and only where there is no advice for a NO-GO.
    [[nodiscard]] const OutOfReach* out_of_reach() const { return out_of_reach_.get(); }
    /// The points of the box of errors at which plans like this one were found to break.
    [[nodiscard]] const Screen& screen() const { return screen_; }
    /// Points of the box looked at so far, each a solve of every case: what it cost.
    [[nodiscard]] std::size_t points() const { return points_; }

    /// Goes on by about `count` points.
    void advance(std::size_t count) {
        const std::size_t end = points_ + count;
        while (!done() && points_ < end) points_ += step(end - points_);
    }

private:
    enum class Stage : unsigned char { Sweep, Singles, Levels, Pairs, Nearest, Done };

    std::size_t step(std::size_t budget) {
        switch (stage_) {
            case Stage::Sweep: return step_sweep(budget);
            case Stage::Singles: return step_singles(budget);
            case Stage::Levels: return step_levels();
            case Stage::Pairs: return step_pairs(budget);
            case Stage::Nearest: return step_nearest(budget);
            case Stage::Done: break;
        }
        return 0;
    }

    /// The plan's own sweep says where in the box it breaks.
    std::size_t step_sweep(std::size_t budget) {
        const std::size_t before = sweep_->points();
        sweep_->advance(budget);
        const std::size_t cost = sweep_->points() - before;
        if (!sweep_->done()) return cost;
        take_in(measured_, *sweep_);
        margin_ = least_margin(measured_.worst);
        screen_.learn(sweep_->close_points(k_close_margin));
        sweep_.reset();
        if (measured_.verdict == Verdict::NoGo) {
            levers_ = levers_of(plan_);
            stage_ = Stage::Singles;
        } else {
            stage_ = Stage::Done;
        }
        return cost;
    }

    std::size_t step_singles(std::size_t budget) {
        if (!single_) {
            if (next_ == levers_.size()) return end_of_singles();
            single_ = std::make_unique<LeverSearch>(plan_, levers_[next_], margin_, screen_);
        }
        const std::size_t cost = single_->advance(budget);
        if (!single_->done()) return cost;
        if (single_->found()) {
            const Change change = change_of(plan_, levers_[next_], single_->found()->by);
            offer({{change}, change.effort, single_->found()->margin});
        }
        single_.reset();
        ++next_;
        return cost;
    }

    std::size_t end_of_singles() {
        next_ = 0;
        stage_ = advice_.empty() ? Stage::Levels : Stage::Done;
        return 0;
    }

    void offer(Advice advice) {
        const auto after = std::upper_bound(advice_.begin(), advice_.end(), advice, [](const Advice& a, const Advice& b) { return a.effort < b.effort; });
        advice_.insert(after, std::move(advice));
    }

    /// A few sizes of each lever, and how near to GO they come by themselves.
    std::size_t step_levels() {
        if (next_ == levers_.size()) return start_pairs();
        if (!level_) {
            level_.emplace().lever = next_;
            level_sizes_ = pair_sizes(levers_[next_]);
            next_size_ = 0;
        }
        if (next_size_ == level_sizes_.size()) return end_of_level();
        const double by = level_sizes_[next_size_++];
        const std::optional<Plan> plan = detail::pulled(plan_, levers_[next_], by);
        if (!plan) return 0;
        std::size_t cost = 0;
        level_->by.push_back(by);
        const double lacks = screen_.lacks(*plan, k_points_of_levels, cost);
        if (lacks < level_->lacks) {
            level_->lacks = lacks;
            level_->best_by = by;
        }
        return cost;
    }

    std::size_t end_of_level() {
        if (levers_[next_].is_choice()) level_->by = {level_->best_by};
        if (!level_->by.empty()) pair_levers_.push_back(std::move(*level_));
        level_.reset();
        ++next_;
        return 0;
    }

    static constexpr std::size_t k_points_of_levels = 3;

    static std::vector<double> pair_sizes(const Lever& lever) {
        std::vector<double> out;
        if (lever.is_choice()) {
            for (std::size_t i = 0; i < lever.choices(); ++i) out.push_back(static_cast<double>(i));
            return out;
        }
        const std::size_t longest = std::max(lever.up.size(), lever.down.size()), apart = lever.is_smooth() ? 5 : 1;
        for (std::size_t i = lever.is_smooth() ? 4 : 0; i < longest; i += apart) {
            if (i < lever.up.size()) out.push_back(lever.up[i]);
            if (i < lever.down.size()) out.push_back(-lever.down[i]);
        }
        return out;
    }

    std::size_t start_pairs() {
        std::stable_sort(pair_levers_.begin(), pair_levers_.end(), [](const PairLever& a, const PairLever& b) { return a.lacks < b.lacks; });
        if (pair_levers_.size() > k_paired_levers) pair_levers_.resize(k_paired_levers);
        for (std::size_t i = 0; i < pair_levers_.size(); ++i)
            for (std::size_t j = i + 1; j < pair_levers_.size(); ++j) pairs_.emplace_back(i, j);
        const auto effort = [&](std::size_t i) { return info(levers_[pair_levers_[i].lever].input).effort; };
        std::stable_sort(pairs_.begin(), pairs_.end(),
                         [&](const auto& a, const auto& b) { return effort(a.first) + effort(a.second) < effort(b.first) + effort(b.second); });
        next_ = 0;
        stage_ = Stage::Pairs;
        return 0;
    }

    std::size_t step_pairs(std::size_t budget) {
        if (!pair_) {
            if (next_ == pairs_.size() || advice_.size() == k_most_pairs) return end_of_pairs();
            const PairLever &a = pair_levers_[pairs_[next_].first], &b = pair_levers_[pairs_[next_].second];
            pair_ = std::make_unique<PairSearch>(plan_, levers_[a.lever], levers_[b.lever], a.by, b.by, screen_);
        }
        const std::size_t cost = pair_->advance(budget);
        if (!pair_->done()) return cost;
        if (pair_->found()) offer_pair(*pair_->found());
        pair_.reset();
        ++next_;
        return cost;
    }

    void offer_pair(const FoundPair& found) {
        const Lever& a = levers_[pair_levers_[pairs_[next_].first].lever];
        const Lever& b = levers_[pair_levers_[pairs_[next_].second].lever];
        const Change first = change_of(plan_, a, found.by_first);
        Plan between = plan_;
        pull(a, found.by_first, between);
        const Change second = change_of(between, b, found.by_second);
        offer({{first, second}, first.effort + second.effort, found.margin});
    }

    std::size_t end_of_pairs() {
        next_ = 0;
        nearest_ = plan_;
        least_lack_ = HUGE_VAL;
        stage_ = advice_.empty() ? Stage::Nearest : Stage::Done;
        return 0;
    }

    /// Of the plan, each lever and each pair at its best the one nearest to GO.
    std::size_t step_nearest(std::size_t budget) {
        std::size_t cost = 1;
        if (next_ == pairs_.size() + 1) return judge_nearest(budget);
        std::optional<Plan> plan;
        if (next_ == pairs_.size()) {
            plan = pair_levers_.empty() ? plan_ : *detail::pulled(plan_, levers_[pair_levers_[0].lever], pair_levers_[0].best_by);
        } else {
            const PairLever &a = pair_levers_[pairs_[next_].first], &b = pair_levers_[pairs_[next_].second];
            plan = detail::pulled(plan_, levers_[a.lever], a.best_by);
            if (plan) plan = detail::pulled(*plan, levers_[b.lever], b.best_by);
        }
        ++next_;
        if (!plan) return cost;
        const double lack = screen_.lacks(*plan, screen_.size(), cost);
        if (lack < least_lack_) {
            least_lack_ = lack;
            nearest_ = std::move(*plan);
        }
        return cost;
    }

    /// The whole box of the nearest, so that what is said of it is its worst.
    std::size_t judge_nearest(std::size_t budget) {
        if (!judged_) judged_ = std::make_unique<Confirmation>(nearest_, never_enough);
        const std::size_t cost = judged_->advance(budget);
        if (!judged_->done()) return cost;
        stage_ = Stage::Done;
        const bool no_go = judged_->evaluation().verdict == Verdict::NoGo;  // else it cannot be judged, and the plan itself speaks
        const Evaluation& e = no_go ? judged_->evaluation() : measured_;
        out_of_reach_ = std::make_unique<OutOfReach>(OutOfReach{no_go ? nearest_ : plan_, e, e.closest[0]});
        judged_.reset();
        return cost;
    }

    Plan plan_;
    Evaluation measured_;
    std::optional<ErrorSweep> sweep_;
    Screen screen_;
    double margin_ = k_broken_margin;
    std::vector<Lever> levers_;
    std::unique_ptr<LeverSearch> single_;
    std::optional<PairLever> level_;  ///< whose sizes are being tried
    std::vector<double> level_sizes_;
    std::size_t next_size_ = 0;
    std::vector<PairLever> pair_levers_;
    std::vector<std::pair<std::size_t, std::size_t>> pairs_;
    std::unique_ptr<PairSearch> pair_;
    Plan nearest_;
    std::unique_ptr<Confirmation> judged_;
    double least_lack_ = HUGE_VAL;
    std::vector<Advice> advice_;
    std::unique_ptr<OutOfReach> out_of_reach_;
    Stage stage_ = Stage::Sweep;
    std::size_t next_ = 0, points_ = 0;
};

}  // namespace guywright
