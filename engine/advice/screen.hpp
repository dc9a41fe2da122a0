#pragma once
#include "engine/verdict/evaluate.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace guywright {

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

/// What a screen found out about one plan.
struct Look {
    bool broken = true;               ///< surely not GO; false: nothing known speaks against it
    double margin = k_broken_margin;  ///< the least that was found before it was clear
    std::size_t points = 0;           ///< what it cost, in points of the box
};

/// A quick no to plans that cannot be GO: the measured values and the points of the box of errors where plans like it are known
/// to break. It learns from every plan that a full verdict found broken. It never says yes: that is for a full verdict.
class Screen {
public:
    /// Remembers where a sweep found rules broken.
    void learn(const std::vector<BoxPoint>& points) {
        for (const BoxPoint& point : points)
            if (std::find(points_.begin(), points_.end(), point) == points_.end()) points_.push_back(point);
    }
    /// From now on follows the load up from nothing, too, which costs as much as several points.
    void follow_load() { follows_load_ = true; }
    [[nodiscard]] bool follows_load() const { return follows_load_; }
    [[nodiscard]] std::size_t size() const { return points_.size(); }

    /// Looks at a plan within its ranges until a rule is broken.
    Look look(const Plan& plan) {
        Look out;
        if (measured_breaks(plan, out)) return out;
        if (points_.empty()) {
            out.broken = false;
            return out;
        }
        Plan varied = plan;
        std::vector<Measured> numbers = measured_numbers(varied);
        for (std::size_t i = 0; i < points_.size(); ++i) {
            move_to(numbers, points_[i]);
            if (!takes_in(varied, false, out)) continue;
            if (i > 0) std::swap(points_[i], points_[i - 1]);   // what breaks often is asked early
            return out;
        }
        out.broken = false;
        return out;
    }

    /// How far a plan is from GO at the measured values and the `most` first known points, all rules counted.
    double lacks(const Plan& plan, std::size_t most, std::size_t& cost) {
        take_all(plan, most, cost);
        return shortfall(table_);
    }
    /// Where plans like these are known to break.
    [[nodiscard]] const std::vector<BoxPoint>& points() const { return points_; }

private:
    bool measured_breaks(const Plan& plan, Look& out) {
        if (drawing_breaks(plan, out) || takes_in(plan, true, out)) return true;
        if (!follows_load_ || outcomes_[k_rigged].equilibrium.status != SolveStatus::Solved) return false;
        const BuiltModel built = build_model(plan);
        out.points += 4;
        return find_load_limit(built.model, outcomes_[k_holding].setup.pulls, outcomes_[k_rigged].equilibrium.head_m).collapse_factor < 1.0;
    }

    bool drawing_breaks(const Plan& plan, Look& out) {
        const BuiltModel built = build_model(plan);
        out.points = 1;
        if (!built.faults.empty()) return true;
        table_.clear();
        check_drawing(table_, plan, built.model);
        out.margin = least_margin(table_);
        return out.margin < 0.0;
    }

    /// The worst of the measured values and of the `most` first points.
    void take_all(const Plan& plan, std::size_t most, std::size_t& cost) {
        table_.clear();
        check_as_it_stands(table_, outcomes_, plan, true);
        const std::size_t count = std::min(most, points_.size());
        cost += count + 1;
        if (count == 0) return;
        Plan varied = plan;
        std::vector<Measured> numbers = measured_numbers(varied);
        for (std::size_t i = 0; i < count; ++i) {
            move_to(numbers, points_[i]);
            check_as_it_stands(table_, outcomes_, varied, false);
        }
    }

    /// One more point of the box; true where it breaks a rule.
    bool takes_in(const Plan& plan, bool with_angles, Look& out) {
        ++out.points;
        table_.clear();
        check_as_it_stands(table_, outcomes_, plan, with_angles);
        const double margin = least_margin(table_);
        out.margin = std::min(out.margin, margin);
        return margin < 0.0;
    }

    std::vector<BoxPoint> points_;
    bool follows_load_ = false;
    CheckTable table_;
    Outcomes outcomes_;
};

/// All rows of a plan at the measured values and at every known point of a screen, one point at a time. A plan whose drawing breaks a
/// rule is not solved: then the rows of the drawing; none where there is no head to draw.
class RowsAtPoints {
public:
    /// `screen` must outlive this and learn nothing meanwhile.
    RowsAtPoints(const Plan& plan, const Screen& screen) : varied_(plan), numbers_(measured_numbers(varied_)), screen_(screen) {}
    // the list of numbers points into the plan
    RowsAtPoints(const RowsAtPoints&) = delete;
    RowsAtPoints& operator=(const RowsAtPoints&) = delete;

    [[nodiscard]] bool done() const { return done_; }
    /// The worst of the points so far.
    [[nodiscard]] const CheckTable& table() const { return table_; }

    void step() {
        const bool measured = next_ == 0;
        if (measured && drawing_breaks()) return;
        if (!measured) move_to(numbers_, screen_.points()[next_ - 1]);
        check_as_it_stands(table_, outcomes_, varied_, measured);
        done_ = ++next_ > screen_.size();
    }

private:
    bool drawing_breaks() {
        const BuiltModel built = build_model(varied_);
        done_ = true;
        if (!built.faults.empty()) return true;
        check_drawing(table_, varied_, built.model);
        if (least_margin(table_) < 0.0) return true;
        table_.clear();
        done_ = false;
        return false;
    }

    Plan varied_;
    std::vector<Measured> numbers_;
    const Screen& screen_;
    Outcomes outcomes_;
    CheckTable table_;
    std::size_t next_ = 0;
    bool done_ = false;
};

/// A full verdict in slices.
class Confirmation {
public:
    /// UntilBroken stops as soon as it is not GO; the evaluation is then not to be used.
    enum class Box : unsigned char { UntilBroken, Whole };

    explicit Confirmation(Plan plan, Box box = Box::UntilBroken) : plan_(std::move(plan)), e_(evaluate_as_measured(plan_)), box_(box) {
        const bool judged = e_.faults.empty() && e_.not_measured.empty();
        if (judged && (box == Box::Whole || e_.verdict != Verdict::NoGo)) sweep_.emplace(plan_, e_.checks);
    }

    [[nodiscard]] bool done() const { return !sweep_ || sweep_->done() || stopped_; }
    /// Goes on by at most `count` points; returns how many it took.
    std::size_t advance(std::size_t count) {
        if (done()) return 0;
        const std::size_t before = sweep_->points();
        constexpr std::size_t between_looks = 16;   // however it is sliced, so that it always stops at the same point
        while (!done() && sweep_->points() - before < count) {
            const std::size_t to_look = between_looks - sweep_->points() % between_looks;
            sweep_->advance(std::min(to_look, before + count - sweep_->points()));
            const bool looks = sweep_->done() || sweep_->points() % between_looks == 0;
            stopped_ = looks && box_ == Box::UntilBroken && least_margin(sweep_->worst()) < 0.0;
        }
        if (done() && !stopped_) take_in(e_, *sweep_);
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
    Box box_;
    std::optional<ErrorSweep> sweep_;
    bool stopped_ = false;
};

}  // namespace guywright
