#pragma once
#include "engine/checks/check_plan.hpp"
#include "engine/margins/measured.hpp"

namespace guywright {

/// Points of the box of errors after the one-at-a-time ends and the worst corners. Every other one is pushed out to the corner
/// it points to: forces are worst at corners, and which one it is turns on which guy goes slack, which no slope foretells.
inline constexpr std::size_t k_box_points = 512;

/// So many of the closest rules are followed on from the worst point found, measurement by measurement.
inline constexpr std::size_t k_followed_rules = 3;

/// The trade's rules of angle are judged on the measured value; the box only warns where an error could break one.
inline constexpr bool is_angle_rule(CheckId id) {
    return id == CheckId::GuyAngle || id == CheckId::BearingGap || id == CheckId::SideTie || id == CheckId::GuyAngleOverForce;
}

/// Rules judged on forces: they must hold over the whole box.
inline constexpr bool is_force_rule(CheckId id) {
    return id >= CheckId::Solved && !is_angle_rule(id) && id != CheckId::AppliedForceAngle && id != CheckId::ForceInside && id != CheckId::GuySlack;
}

/// Sweeps the box of measuring errors of one plan, in slices so that a screen can draw in between: first every measurement
/// by itself at both ends of its error, then for every check the corner that these make out to be the worst, then
/// low-discrepancy points, then from the worst point of each of the closest rules every measurement's other end. Every point is
/// a full nonlinear solve of every case. The same plan gives the same answer.
class ErrorSweep {
public:
    /// `plan` must have no faults; `checks` is what it gives as measured.
    ErrorSweep(const Plan& plan, const CheckTable& checks)
        : plan_(plan), numbers_(measured_numbers(plan_)), shares_(numbers_.size(), 0.0), nominal_(checks), ends_(2 * numbers_.size()) {
        spoiler_.fill(k_no_spoiler);
        here_ = checks;
        keep();
    }
    // the list of numbers points into the plan
    ErrorSweep(const ErrorSweep&) = delete;
    ErrorSweep& operator=(const ErrorSweep&) = delete;

    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    /// Points looked at so far, the measured values not counted.
    [[nodiscard]] std::size_t points() const { return points_; }
    /// The worst row of every rule over the points so far; angle rules at most as cautions.
    [[nodiscard]] const CheckTable& worst() const { return worst_; }
    /// Paths of the measurements, by Check::spoiler.
    [[nodiscard]] std::vector<std::string> paths() const {
        std::vector<std::string> out;
        for (const Measured& number : numbers_) out.push_back(number.path);
        return out;
    }

    /// Points at which a rule of forces was broken, the worst of each rule; none while no rule is.
    [[nodiscard]] std::vector<BoxPoint> breaking_points() const {
        return points_where([](const Check& c) { return c.status == CheckStatus::Fail; });
    }
    /// The worst point of every rule of forces that has less than `margin` to spare, broken ones too.
    [[nodiscard]] std::vector<BoxPoint> close_points(double margin) const {
        return points_where([&](const Check& c) { return c.status == CheckStatus::Fail || (c.has_margin && c.margin < margin); });
    }

    /// Goes on by at most `count` points.
    void advance(std::size_t count) {
        for (; count > 0 && !done(); --count) step();
    }

private:
    enum class Stage : unsigned char { Ends, Corners, Points, Follow, Done };

    void step() {
        switch (stage_) {
            case Stage::Ends: return step_ends();
            case Stage::Corners: return step_corners();
            case Stage::Points: return step_points();
            case Stage::Follow: return step_follow();
            case Stage::Done: return;
        }
    }

    /// One measurement at one end, all others as measured.
    void step_ends() {
        if (next_ == ends_.size()) return find_corners();
        move(next_ / 2, next_ % 2 == 0 ? -1.0 : 1.0);
        look(true);
        for (std::size_t s = 0; s < k_slot_count; ++s) {
            const Check* c = here_.at_slot(s);
            ends_[next_][s] = c != nullptr ? static_cast<float>(score(*c)) : 0.0F;
        }
        keep();
        move(next_ / 2, 0.0);
        ++next_;
    }

    /// For every row: the corner where each measurement errs to its worse side, and the one that spoils it most.
    void find_corners() {
        nominal_.for_each_slot([&](std::size_t slot, Check& c) {
            if (!is_force_rule(c.id) && !is_angle_rule(c.id)) return;
            std::vector<signed char> corner(numbers_.size());
            float deepest = static_cast<float>(score(c));
            for (std::size_t i = 0; i < numbers_.size(); ++i) {
                const float low = ends_[2 * i][slot], high = ends_[2 * i + 1][slot];
                corner[i] = low < high ? -1 : high < low ? 1 : 0;
                if (std::min(low, high) < deepest) {
                    deepest = std::min(low, high);
                    spoiler_[slot] = static_cast<int>(i);
                }
            }
            if (std::find(corners_.begin(), corners_.end(), corner) == corners_.end()) corners_.push_back(std::move(corner));
        });
        stage_ = Stage::Corners;
        next_ = 0;
    }

    void step_corners() {
        if (next_ == corners_.size()) {
            stage_ = Stage::Points;
            next_ = 0;
            return;
        }
        for (std::size_t i = 0; i < numbers_.size(); ++i) move(i, corners_[next_][i]);
        look(true);
        keep();
        ++next_;
    }

    void step_points() {
        for (std::size_t i = 0; i < numbers_.size(); ++i) {
            const double share = low_discrepancy(next_, i);
            move(i, next_ % 2 == 0 ? share : share < 0.0 ? -1.0 : 1.0);
        }
        look(false);
        keep();
        if (++next_ == k_box_points || numbers_.empty()) start_following();
    }

    /// Picks the closest rules, each with the point where it was worst.
    void start_following() {
        std::vector<std::pair<double, std::size_t>> closest;
        worst_.for_each_slot([&](std::size_t slot, Check& c) {
            if (is_force_rule(c.id) && c.has_margin && c.status != CheckStatus::Fail) closest.emplace_back(c.margin, slot);
        });
        std::sort(closest.begin(), closest.end());
        if (closest.size() > k_followed_rules) closest.resize(k_followed_rules);
        for (const auto& [margin, slot] : closest) followed_.push_back(slot);
        stage_ = Stage::Follow;
        next_ = 0;
        begin_rule();
    }

    void begin_rule() {
        if (next_ >= followed_.size() * numbers_.size()) return finish();
        const std::vector<double>& start = worst_at_[followed_[next_ / numbers_.size()]];
        for (std::size_t i = 0; i < start.size(); ++i) move(i, start[i]);
    }

    /// Turns one measurement to the other end, and leaves it there if that is worse for the rule followed.
    void step_follow() {
        if (followed_.empty() || numbers_.empty()) return finish();
        const std::size_t slot = followed_[next_ / numbers_.size()], i = next_ % numbers_.size();
        const double before = shares_[i], so_far = worst_.at_slot(slot)->margin;
        move(i, before < 0.0 ? 1.0 : -1.0);
        look(false);
        keep();
        if (!(worst_.at_slot(slot)->margin < so_far)) move(i, before);
        if (++next_ % numbers_.size() == 0) begin_rule();
    }

    template <class Wanted>
    [[nodiscard]] std::vector<BoxPoint> points_where(Wanted wanted) const {
        std::vector<BoxPoint> out;
        for (std::size_t slot = 0; slot < k_slot_count; ++slot) {
            const Check* c = worst_.at_slot(slot);
            if (c == nullptr || !is_force_rule(c->id) || !wanted(*c)) continue;
            BoxPoint point;
            for (std::size_t i = 0; i < worst_at_[slot].size(); ++i) point.push_back({numbers_[i].path, worst_at_[slot][i]});
            if (std::find(out.begin(), out.end(), point) == out.end()) out.push_back(std::move(point));
        }
        return out;
    }

    void move(std::size_t i, double share) {
        shares_[i] = share;
        numbers_[i].move_to(share);
    }

    void finish() {
        for (std::size_t i = 0; i < numbers_.size(); ++i) move(i, 0.0);
        worst_.for_each_slot([&](std::size_t slot, Check& c) {
            c.at_worst = true;
            c.spoiler = spoiler_[slot];
        });
        stage_ = Stage::Done;
    }

    /// Lower is worse; rules without a margin only know kept and broken.
    static double score(const Check& c) {
        if (is_angle_rule(c.id)) return info(c.id).lower_is_bad ? c.value - c.limit : c.limit - c.value;
        if (c.has_margin && std::isfinite(c.margin)) return c.margin;
        return c.status == CheckStatus::Fail ? -1.0 : 1.0;
    }

    /// Computes the table of the plan as it now stands into here_.
    void look(bool with_angles) {
        here_.clear();
        ++points_;
        check_as_it_stands(here_, outcomes_, plan_, with_angles);
    }

    void keep() {
        here_.for_each_slot([&](std::size_t slot, const Check& c) {
            if (is_force_rule(c.id)) {
                if (worst_.at_slot(slot) == nullptr || CheckTable::is_worse(c, *worst_.at_slot(slot))) worst_at_[slot] = shares_;
                return worst_.add(c);
            }
            if (!is_angle_rule(c.id) || c.status != CheckStatus::Fail) return;
            // broken only where the measurement errs: a caution with nothing to spare
            worst_.add({c.id, c.subject, CheckStatus::Caution, c.value, c.limit, true, 0.0, c.case_index});
        });
    }

    Plan plan_;
    std::vector<Measured> numbers_;
    std::vector<double> shares_;                     ///< where each measurement now stands in its error, -1 to 1
    Outcomes outcomes_;
    CheckTable nominal_, here_, worst_;
    std::vector<std::array<float, k_slot_count>> ends_;
    std::vector<std::vector<signed char>> corners_;
    std::array<int, k_slot_count> spoiler_{};
    std::array<std::vector<double>, k_slot_count> worst_at_{};   ///< the shares at which each rule was worst
    std::vector<std::size_t> followed_;
    Stage stage_ = Stage::Ends;
    std::size_t next_ = 0, points_ = 0;
};

}  // namespace guywright
