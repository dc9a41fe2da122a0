#pragma once
#include "engine/checks/check_plan.hpp"
#include "engine/margins/measured.hpp"

namespace guywright {

/// Points of the box of errors after the one-at-a-time ends and the worst corners. Every other one is pushed out to the corner
/// it points to: forces are worst at corners, and which one it is turns on which guy goes slack, which no slope foretells.
inline constexpr std::size_t k_box_points = 512;

/// Rounds of turning every measurement to its other end, for one rule; a round that finds nothing worse is its last.
inline constexpr int k_most_follow_rounds = 3;

/// Margins this near are one margin: rounding must not choose between two points of the box.
inline constexpr double k_same_margin = 1e-9;
inline constexpr float k_same_end = 1e-6F;  ///< of one measurement's ends, kept as floats

/// Rules that the same force decides have their worst corner in common: the closest of them is followed for all.
inline constexpr CheckId force_behind(CheckId id) {
    switch (id) {
        case CheckId::AnchorStrength: return CheckId::GuyStrength;
        case CheckId::LegBuckling: return CheckId::LegStrength;
        case CheckId::ConnectorStrength: return CheckId::PulleyStrength;
        default: return id;
    }
}

/// The trade's rules of angle are judged on the measured value; the box only warns where an error could break one.
inline constexpr bool is_angle_rule(CheckId id) {
    return id == CheckId::GuyAngle || id == CheckId::BearingGap || id == CheckId::SideTie || id == CheckId::GuyAngleOverForce;
}

/// Rules judged on forces: they must hold over the whole box.
inline constexpr bool is_force_rule(CheckId id) {
    return id >= CheckId::Solved && !is_angle_rule(id) && id != CheckId::AppliedForceAngle && id != CheckId::ForceInside && id != CheckId::GuySlack;
}

/// A point of the box where some rule was worst, and the case in which it was: k_no_case where no single one says it.
struct WorstPoint {
    BoxPoint point;
    int case_index = k_no_case;
    bool operator==(const WorstPoint&) const = default;
};

/// Sweeps the box of measuring errors of one plan, in slices so that a screen can draw in between: first every measurement
/// by itself at both ends of its error, then for every check the corner that these make out to be the worst, then
/// low-discrepancy points, then from the worst point of every rule each measurement's other end, as long as that is worse. Every point is
/// a full nonlinear solve of every case, but for the last stage's, which look at the case where the rule is worst. The same plan gives
/// the same answer.
class ErrorSweep {
public:
    /// `plan` must have no faults; `checks` is what it gives as measured.
    ErrorSweep(const Plan& plan, const CheckTable& checks)
        : plan_(plan),
          numbers_(measured_numbers(plan_)),
          shares_(numbers_.size(), 0.0),
          nominal_(checks),
          ends_(2 * numbers_.size()),
          eaten_(numbers_.size(), 0.0) {
        spoiler_.fill(k_no_spoiler);
        const BuiltModel as_measured = build_model(plan_);
        for (const Guy& guy : as_measured.model.guys) shared_.push_back(guy.shared_anchor);
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

    /// For each measurement the largest part of what some rule of forces has to spare that its error alone eats up; 0 before the
    /// ends have been looked at.
    [[nodiscard]] const std::vector<double>& eaten() const { return eaten_; }

    /// Points at which a rule of forces was broken, the worst of each rule; none while no rule is.
    [[nodiscard]] std::vector<WorstPoint> breaking_points() const {
        return points_where([](const Check& c) { return c.status == CheckStatus::Fail; });
    }
    /// The worst point of every rule of forces that has less than `margin` to spare, broken ones too.
    [[nodiscard]] std::vector<WorstPoint> close_points(double margin) const {
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
        nominal_.for_each_slot([&](std::size_t slot, const Check& c) {
            if (!is_force_rule(c.id) && !is_angle_rule(c.id)) return;
            std::vector<signed char> corner = corner_of(slot);
            if (std::find(corners_.begin(), corners_.end(), corner) == corners_.end()) corners_.push_back(std::move(corner));
            find_spoiler(slot, c);
            if (is_force_rule(c.id) && c.has_margin) find_eaten(slot, c);
        });
        stage_ = Stage::Corners;
        next_ = 0;
    }

    [[nodiscard]] float lower_end(std::size_t i, std::size_t slot) const { return std::min(ends_[2 * i][slot], ends_[2 * i + 1][slot]); }

    [[nodiscard]] std::vector<signed char> corner_of(std::size_t slot) const {
        std::vector<signed char> corner(numbers_.size());
        for (std::size_t i = 0; i < corner.size(); ++i) {
            const float low = ends_[2 * i][slot], high = ends_[2 * i + 1][slot];
            corner[i] = low < high - k_same_end ? -1 : high < low - k_same_end ? 1 : 0;
        }
        return corner;
    }

    void find_spoiler(std::size_t slot, const Check& c) {
        float deepest = static_cast<float>(score(c));
        for (std::size_t i = 0; i < numbers_.size(); ++i) {
            if (!(lower_end(i, slot) < deepest - k_same_end)) continue;
            deepest = lower_end(i, slot);
            spoiler_[slot] = static_cast<int>(i);
        }
    }

    void find_eaten(std::size_t slot, const Check& c) {
        for (std::size_t i = 0; i < numbers_.size(); ++i) eaten_[i] = std::max(eaten_[i], part_eaten(score(c), lower_end(i, slot)));
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
            move(i, share_of_point(next_, i));
        }
        look(false);
        keep();
        if (++next_ == k_box_points || numbers_.empty()) start_following();
    }

    /// Every rule that is not broken yet, the closest first, one for each force.
    void start_following() {
        std::vector<const Check*> rules;
        worst_.for_each_slot([&](std::size_t, Check& c) {
            if (is_force_rule(c.id) && c.has_margin && c.status != CheckStatus::Fail) rules.push_back(&c);
        });
        std::stable_sort(rules.begin(), rules.end(), [](const Check* a, const Check* b) { return a->margin < b->margin; });
        std::vector<std::pair<CheckId, std::size_t>> forces;
        for (const Check* c : rules) {
            const std::pair force{force_behind(c->id), c->subject};
            if (std::find(forces.begin(), forces.end(), force) != forces.end()) continue;
            forces.push_back(force);
            followed_.push_back(CheckTable::slot_of(c->id, c->subject));
        }
        stage_ = Stage::Follow;
        rule_ = 0;
        rounds_ = 0;
        begin_round();
    }

    /// From the worst point of the rule followed.
    void begin_round() {
        if (rule_ >= followed_.size() || numbers_.empty()) return finish();
        next_ = 0;
        margin_before_ = margin_followed();
        case_followed_ = worst_.at_slot(followed_[rule_])->case_index;
        const std::vector<double>& start = worst_at_[followed_[rule_]];
        for (std::size_t i = 0; i < start.size(); ++i) move(i, start[i]);
    }

    [[nodiscard]] double margin_followed() const { return worst_.at_slot(followed_[rule_])->margin; }

    /// Turns one measurement to the other end, and leaves it there if that is worse for the rule followed.
    void step_follow() {
        const double before = shares_[next_], so_far = margin_followed();
        move(next_, before < 0.0 ? 1.0 : -1.0);
        look_at_followed();
        keep();
        if (!(margin_followed() < so_far - k_same_margin)) move(next_, before);
        if (++next_ < numbers_.size()) return;
        look(false);  // in the other cases it may be worse still
        keep();
        const bool again = margin_followed() < margin_before_ - k_same_margin && ++rounds_ < k_most_follow_rounds;
        if (!again) {
            ++rule_;
            rounds_ = 0;
        }
        begin_round();
    }

    template <class Wanted>
    [[nodiscard]] std::vector<WorstPoint> points_where(Wanted wanted) const {
        std::vector<WorstPoint> out;
        for (std::size_t slot = 0; slot < k_slot_count; ++slot) {
            const Check* c = worst_.at_slot(slot);
            if (c == nullptr || !is_force_rule(c->id) || !wanted(*c)) continue;
            WorstPoint worst{{}, c->case_index};
            for (std::size_t i = 0; i < worst_at_[slot].size(); ++i) worst.point.push_back({numbers_[i].path, worst_at_[slot][i]});
            if (std::find(out.begin(), out.end(), worst) == out.end()) out.push_back(std::move(worst));
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

    /// Of a margin that is gone already, any loss is all of it.
    static double part_eaten(double margin, double left) {
        constexpr double least = 0.01;
        return std::max(0.0, margin - left) / std::max(margin, least);
    }

    /// Into here_ the rows of the case in which the rule followed was worst: a small part of the work.
    void look_at_followed() {
        if (case_followed_ < 0) return look(false);
        here_.clear();
        ++points_;
        check_case_as_it_stands(here_, plan_, static_cast<std::size_t>(case_followed_), shared_);
    }

    /// Computes the table of the plan as it now stands into here_.
    void look(bool with_angles) {
        here_.clear();
        ++points_;
        check_as_it_stands(here_, outcomes_, plan_, with_angles, shared_);
    }

    static bool is_clearly_worse(const Check& a, const Check& b) {
        if (!CheckTable::is_worse(a, b)) return false;
        return a.status != b.status || !a.has_margin || !b.has_margin || b.margin - a.margin > k_same_margin;
    }

    void keep() {
        here_.for_each_slot([&](std::size_t slot, const Check& c) {
            if (is_force_rule(c.id)) {
                if (worst_.at_slot(slot) == nullptr || is_clearly_worse(c, *worst_.at_slot(slot))) worst_at_[slot] = shares_;
                return worst_.add(c);
            }
            if (!is_angle_rule(c.id) || c.status != CheckStatus::Fail) return;
            // broken only where the measurement errs: a caution with nothing to spare
            worst_.add({c.id, c.subject, CheckStatus::Caution, c.value, c.limit, true, 0.0, c.case_index});
        });
    }

    Plan plan_;
    std::vector<Measured> numbers_;
    std::vector<double> shares_;  ///< where each measurement now stands in its error, -1 to 1
    SharedAnchors shared_;        ///< of the plan as measured
    Outcomes outcomes_;
    CheckTable nominal_, here_, worst_;
    std::vector<std::array<float, k_slot_count>> ends_;
    std::vector<double> eaten_;
    std::vector<std::vector<signed char>> corners_;
    std::array<int, k_slot_count> spoiler_{};
    std::array<std::vector<double>, k_slot_count> worst_at_{};  ///< the shares at which each rule was worst
    std::vector<std::size_t> followed_;                         ///< slots of the rules to follow
    std::size_t rule_ = 0;                                      ///< of followed_, the one in hand
    int rounds_ = 0;                                            ///< done for it
    double margin_before_ = 0.0;                                ///< its margin before this round
    int case_followed_ = k_no_case;                             ///< where it was worst then
    Stage stage_ = Stage::Ends;
    std::size_t next_ = 0, points_ = 0;
};

}  // namespace guywright
