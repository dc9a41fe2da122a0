#pragma once
#include "engine/verdict/evaluate.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace guywright {

/// Broken, one of these says that nothing stands there to be judged.
inline constexpr std::array k_down_rules{CheckId::Solved, CheckId::Standing};

/// What a rule without a margin counts where it is broken.
inline constexpr double k_broken_margin = -1.0;

/// Margin of one row; broken rules are below 0.
inline double margin_of(const Check& c) {
    const double margin = c.has_margin && std::isfinite(c.margin) ? c.margin : k_broken_margin;
    if (c.status == CheckStatus::Fail) return std::min(margin, -1e-9);
    return c.has_margin && std::isfinite(c.margin) ? c.margin : HUGE_VAL;
}

/// Least margin of a table; below 0 where a rule is broken.
inline double least_margin(const CheckTable& table) {
    double least = HUGE_VAL;
    table.for_each([&](const Check& c) { least = std::min(least, margin_of(c)); });
    return least;
}

/// How far a table is from GO: what every broken rule lacks, each at most 1, added up; 0 where none is broken.
inline double shortfall(const CheckTable& table) {
    double sum = 0.0;
    table.for_each([&](const Check& c) {
        if (c.status == CheckStatus::Fail) sum += std::clamp(-margin_of(c), 0.0, 1.0);
    });
    return sum;
}

/// A row that says: it falls, or there is no answer.
inline bool says_down(const Check& c) {
    return c.status == CheckStatus::Fail && std::find(k_down_rules.begin(), k_down_rules.end(), c.id) != k_down_rules.end();
}

/// What else such a table says is not worth comparing.
inline bool comes_down(const CheckTable& table) {
    return std::any_of(k_down_rules.begin(), k_down_rules.end(), [&](CheckId id) {
        const Check* c = table.find(id);
        return c != nullptr && says_down(*c);
    });
}

namespace detail {

/// Tables of plans that are tried, with the room to work them out in.
class Trial {
public:
    [[nodiscard]] const CheckTable& table() const { return table_; }
    [[nodiscard]] const Outcomes& outcomes() const { return outcomes_; }
    [[nodiscard]] const BuiltModel& built() const { return built_; }
    void clear() { table_.clear(); }

    /// The rows of the measured values. A drawing that breaks a rule is not solved, nor any case after one that falls: what comes down
    /// is past helping. No row where there is no head to draw. False: the plan cannot be tried any further.
    bool take_measured(const Plan& plan) {
        built_ = build_model(plan);
        outcomes_.clear();
        if (!built_.faults.empty()) return false;
        check_drawing(table_, plan, built_.model);
        if (least_margin(table_) < 0.0) return false;
        solve_cases_while(built_.model, build_cases(built_.model, plan.actions), outcomes_, [](const Outcome& o) { return o.stable; });
        check_all_forces(table_, plan, built_.model, outcomes_);
        if (comes_down(table_)) return false;
        check_all_angles(table_, plan, built_.model, outcomes_);
        if (plan.actions.guy_loss_must_hold) take_lost_guys(plan);
        shared_.clear();
        for (const Guy& guy : built_.model.guys) shared_.push_back(guy.shared_anchor);
        return true;
    }

    void take_every_case(const Plan& plan, bool with_angles) { check_as_it_stands(table_, outcomes_, plan, with_angles); }

    /// `varied`, which stands at `worst.point`: the rows of the case that was worst there, of all where no single one was. Guys that
    /// shared an anchor when last measured still do.
    void take_point(const Plan& varied, const WorstPoint& worst) {
        if (worst.case_index == k_no_case) check_as_it_stands(table_, outcomes_, varied, false, shared_);
        else check_case_as_it_stands(table_, varied, static_cast<std::size_t>(worst.case_index), shared_);
    }

private:
    void take_lost_guys(const Plan& plan) {
        LostGuys lost;
        lose_each_guy(built_.model, outcomes_[k_holding], lost);
        check_guys_lost(table_, plan, built_.model, lost);
    }

    BuiltModel built_;
    CheckTable table_;
    Outcomes outcomes_;
    SharedAnchors shared_;
};

}  // namespace detail

/// What a screen found out about one plan.
struct Look {
    bool broken = true;               ///< surely not GO; false: nothing known speaks against it
    double margin = k_broken_margin;  ///< the least that was found before it was clear
    std::size_t points = 0;           ///< what it cost, in points of the box
};

/// A quick no to plans that cannot be GO: the measured values, and the points of the box of errors, each with its case, where plans like
/// it are known to break. It learns from every plan that a full verdict found broken. It never says yes: that is for a full verdict.
class Screen {
public:
    /// Remembers where a sweep found rules broken.
    void learn(const std::vector<WorstPoint>& points) {
        for (const WorstPoint& point : points)
            if (std::find(points_.begin(), points_.end(), point) == points_.end()) points_.push_back(point);
    }
    /// From now on follows the load up from nothing, too, which costs as much as several points.
    void follow_load() { follows_load_ = true; }
    [[nodiscard]] bool follows_load() const { return follows_load_; }
    [[nodiscard]] std::size_t size() const { return points_.size(); }

    /// Looks at a plan within its ranges until a rule is broken.
    Look look(const Plan& plan) {
        Look out;
        if (measured_breaks(plan, out) || points_.empty()) return out;
        Plan varied = plan;
        std::vector<Measured> numbers = measured_numbers(varied);
        for (std::size_t i = 0; i < points_.size(); ++i) {
            move_to(numbers, points_[i].point);
            if (!point_breaks(varied, points_[i], out)) continue;
            if (i > 0) std::swap(points_[i], points_[i - 1]);  // what breaks often is asked early
            break;
        }
        return out;
    }

    /// How far a plan is from GO at the measured values and the `most` first known points, all rules and cases counted.
    double lacks(const Plan& plan, std::size_t most, std::size_t& cost) {
        trial_.clear();
        trial_.take_every_case(plan, true);
        ++cost;
        if (comes_down(trial_.table())) return shortfall(trial_.table());
        Plan varied = plan;
        std::vector<Measured> numbers = measured_numbers(varied);
        for (std::size_t i = 0; i < std::min(most, points_.size()); ++i, ++cost) {
            move_to(numbers, points_[i].point);
            trial_.take_every_case(varied, false);
        }
        return shortfall(trial_.table());
    }
    /// Where plans like these are known to break.
    [[nodiscard]] const std::vector<WorstPoint>& points() const { return points_; }

private:
    bool measured_breaks(const Plan& plan, Look& out) {
        out.points = 1;
        trial_.clear();
        trial_.take_measured(plan);
        if (!trial_.built().faults.empty()) return true;
        take_in_margin(out);
        if (out.broken || !follows_load_) return out.broken;
        out.points += 4;
        const Model& model = trial_.built().model;
        out.broken = find_load_limit(model, trial_.outcomes()[k_holding].setup.pulls, trial_.outcomes()[k_rigged].equilibrium.head_m).collapse_factor < 1.0;
        return out.broken;
    }

    /// One more point of the box; true where it breaks a rule.
    bool point_breaks(const Plan& varied, const WorstPoint& point, Look& out) {
        ++out.points;
        trial_.clear();
        trial_.take_point(varied, point);
        const double before = out.margin;
        take_in_margin(out);
        out.margin = std::min(before, out.margin);
        return out.broken;
    }

    void take_in_margin(Look& out) {
        out.margin = least_margin(trial_.table());
        out.broken = out.margin < 0.0;
    }

    std::vector<WorstPoint> points_;
    bool follows_load_ = false;
    detail::Trial trial_;
};

/// All rows of a plan at the measured values and at every known point of a screen, one point at a time, until it is past helping: see
/// Trial::take_measured().
class RowsAtPoints {
public:
    /// `screen` must outlive this and learn nothing meanwhile.
    RowsAtPoints(Plan plan, const Screen& screen) : varied_(std::move(plan)), screen_(screen) {}
    // the list of numbers points into the plan
    RowsAtPoints(const RowsAtPoints&) = delete;
    RowsAtPoints& operator=(const RowsAtPoints&) = delete;

    [[nodiscard]] bool done() const { return done_; }
    /// The worst of the points so far.
    [[nodiscard]] const CheckTable& table() const { return trial_.table(); }

    void step() {
        if (next_ == 0) {
            done_ = !trial_.take_measured(varied_);
        } else {
            if (next_ == 1) numbers_ = measured_numbers(varied_);  // most plans never come here
            const WorstPoint& point = screen_.points()[next_ - 1];
            move_to(numbers_, point.point);
            trial_.take_point(varied_, point);
        }
        done_ = done_ || ++next_ > screen_.size();
    }

private:
    Plan varied_;
    std::vector<Measured> numbers_;
    const Screen& screen_;
    detail::Trial trial_;
    std::size_t next_ = 0;
    bool done_ = false;
};

/// Says of the worst rows so far whether nobody wants to know more.
using Enough = std::function<bool(const CheckTable& so_far)>;

inline bool is_broken(const CheckTable& so_far) { return least_margin(so_far) < 0.0; }
inline bool never_enough(const CheckTable&) { return false; }

/// A full verdict in slices. It stops soon after it is enough: what the evaluation then says is true, and not all.
class Confirmation {
public:
    explicit Confirmation(Plan plan, Enough enough = is_broken) : plan_(std::move(plan)), e_(evaluate_as_measured(plan_)), enough_(std::move(enough)) {
        const bool judged = e_.faults.empty() && e_.not_measured.empty();
        if (judged && !enough_(e_.checks)) sweep_.emplace(plan_, e_.checks);
    }

    [[nodiscard]] bool done() const { return !sweep_ || sweep_->done() || stopped_; }
    /// Goes on by at most `count` points; returns how many it took.
    std::size_t advance(std::size_t count) {
        if (done()) return 0;
        const std::size_t before = sweep_->points();
        constexpr std::size_t between_looks = 16;  // however it is sliced, so that it always stops at the same point
        while (!done() && sweep_->points() - before < count) {
            const std::size_t to_look = between_looks - sweep_->points() % between_looks;
            sweep_->advance(std::min(to_look, before + count - sweep_->points()));
            const bool looks = sweep_->done() || sweep_->points() % between_looks == 0;
            stopped_ = looks && enough_(sweep_->worst());
        }
        if (done()) take_in(e_, *sweep_);
        return sweep_->points() - before;
    }
    /// GO, over the whole box of measuring errors. False until done.
    [[nodiscard]] bool go() const { return e_.verdict == Verdict::Go; }
    [[nodiscard]] const Plan& plan() const { return plan_; }
    [[nodiscard]] const Evaluation& evaluation() const { return e_; }

    /// Tells a screen where the rules with less than `margin` to spare are worst.
    void teach_close(Screen& screen, double margin) const {
        if (sweep_) screen.learn(sweep_->close_points(margin));
    }

    /// Tells a screen why the answer was no; false where there was nothing to tell.
    bool teach(Screen& screen) const {
        const std::size_t before = screen.size();
        const bool follows = screen.follows_load();
        if (sweep_) screen.learn(sweep_->breaking_points());
        else screen.follow_load();
        return screen.size() > before || screen.follows_load() != follows;
    }

private:
    Plan plan_;
    Evaluation e_;
    Enough enough_;
    std::optional<ErrorSweep> sweep_;
    bool stopped_ = false;
};

}  // namespace guywright
