#pragma once
#include "engine/advice/hand_pull.hpp"
#include "engine/advice/linear_program.hpp"
#include "engine/advice/tie_matrix.hpp"
#include "engine/advice/tightness.hpp"

#include <optional>

namespace guywright {

enum class PretensionStatus : unsigned char {
    NotComputed,  ///< the plan has no model, or what was found did not stand the last look
    NoGuys,
    NoBalance,   ///< no pulls of these guys, all tight and in range, keep the head where it is drawn
    NotInRange,  ///< whatever is tried in range, a guy goes slack or the rig falls
    Found
};

/// Of one guy.
struct GuyPretension {
    double force_N = 0.0;        ///< pretension of all its parts
    double pull_N = 0.0;         ///< on its cord, through its parts
    bool by_hand = false;        ///< one person's pull does it; else a mechanical pull is needed
    double least_N = 0.0;        ///< left of its tension at the worst of cases and errors; below 0 what it lacks to be tight
    std::size_t case_index = 0;  ///< that worst case
};

/// The least pretension with which no guy goes slack in any case, within measuring error.
///
/// Three guys or more can be pretensioned in many ratios. Here they balance, with the legs' push and the own weight, at the head
/// as drawn: other ratios only shift the head until they do. Among those, the pretensions with the least sum, and of equal sums the
/// most even ones.
struct LeastPretension {
    PretensionStatus status = PretensionStatus::NotComputed;
    Bounded<GuyPretension, k_max_guys> guys;  ///< Found: the answer; NotInRange: the tightest that balances, and what then is slack
    bool falls = false;                       ///< NotInRange: it is not slackness that stops it, the rig falls in `falls_in`
    std::size_t falls_in = 0;                 ///< the first case in which it does
};

/// Least pretension looked at, newtons: a guy at nothing has no error and no slope.
inline constexpr double k_least_pretension_N = 10.0;

/// Kept by every guy at its worst, newtons, so that what lies between the points looked at is covered.
inline constexpr double k_kept_tension_N = 2.0;

/// Finds the least pretension of a plan without faults, in slices so that a screen can draw in between: linear programs over the worst
/// points of the box of errors, each with the slopes at the last answer, until that stays the same; then the whole box is looked over,
/// and what it finds worse is taken in. The range: what the plan may hold and what cord and anchor may carry for long.
class PretensionSearch {
public:
    explicit PretensionSearch(const Plan& plan) : plan_(plan) {
        const BuiltModel built = build_model(plan_);
        drawn_ = built.model;
        stage_ = Stage::Done;
        if (!built.faults.empty()) return;
        out_.status = plan_.guys.empty() ? PretensionStatus::NoGuys : PretensionStatus::NoBalance;
        for (std::size_t i = 0; i < plan_.guys.size(); ++i)
            most_N_[i] = std::min(newtons(range::pretension_kN.max), guy_allowed_N(plan_.guys[i], plan_.limits));
        if (plan_.guys.empty() || !find_tightest()) return;
        out_.status = PretensionStatus::NotComputed;
        stage_ = Stage::Settle;
        now_N_ = tightest_N_;
        points_.assign(1, TightnessBox(with(now_N_)).as_measured());
    }

    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    /// Once done.
    [[nodiscard]] const LeastPretension& answer() const { return out_; }

    /// One linear program, or some points of the box.
    void advance() {
        constexpr std::size_t points_a_slice = 64;
        if (stage_ == Stage::Settle) return settle();
        if (stage_ == Stage::Done) return;
        sweep_->advance(points_a_slice);
        if (!sweep_->done()) return;
        if (stage_ == Stage::Look) judge(sweep_->found());
        else tell_out_of_range(sweep_->found());
    }

private:
    using Pretensions = std::array<double, k_max_guys>;  ///< newtons
    enum class Stage : unsigned char { Settle, Look, LookAtTightest, Done };
    static constexpr int k_most_rounds = 8, k_most_settling = 12;

    void look(Stage stage, SweepDepth depth) {
        stage_ = stage;
        sweep_.emplace(with(now_N_), depth);
    }
    void look_at_tightest() {
        now_N_ = tightest_N_;
        look(Stage::LookAtTightest, SweepDepth::Whole);
    }

    /// What the box says of the answer settled on.
    void judge(const Tightness& t) {
        if (t.falls) {
            points_.push_back(t.falls_at);
            if (!step_back()) return look_at_tightest();
        } else if (round_ > 0 && least_of(t) >= 0.0) {
            return tell(PretensionStatus::Found, t);
        }
        add_points(t);
        if (least_of(t) > -k_kept_tension_N) kept_N_ += k_kept_tension_N;  // between the points, not at them
        settled_ = 0;
        stage_ = ++round_ < k_most_rounds ? Stage::Settle : Stage::Done;
    }

    [[nodiscard]] Plan with(const Pretensions& pretension_N) const {
        Plan p = plan_;
        for (std::size_t i = 0; i < p.guys.size(); ++i) p.guys[i].pretension_kN = kilonewtons(pretension_N[i]);
        return p;
    }
    [[nodiscard]] double least_of(const Tightness& t) const {
        double least_N = HUGE_VAL;
        for (std::size_t i = 0; i < plan_.guys.size(); ++i) least_N = std::min(least_N, t.guys[i].least_N);
        return least_N;
    }

    /// Unknowns: every guy, every leg, once more for legs that also pull, the largest of the guys, and what is lacking, all in kN.
    [[nodiscard]] std::size_t largest() const { return plan_.guys.size() + 2 * drawn_.legs.size(); }
    [[nodiscard]] std::size_t lacking() const { return largest() + 1; }

    /// Pulls that balance at the drawn head, in range, with the least sum.
    [[nodiscard]] LinearProgram balanced(double least_share) const {
        LinearProgram p;
        const std::size_t guys = plan_.guys.size(), legs = drawn_.legs.size();
        p.unknowns = lacking() + 1;
        std::array<LinearProgram::Row, 3> balance;
        balance[2].at_least = kilonewtons(drawn_.head_weight_N);
        for (std::size_t i = 0; i < guys; ++i) {
            const Vec3 toward = glm::normalize(drawn_.guys[i].anchor_m - drawn_.drawn_head_m);
            for (int axis = 0; axis < 3; ++axis) balance[static_cast<std::size_t>(axis)].a[i] = toward[axis];
            p.cost[i] = 1.0;
            LinearProgram::Row least, most, no_larger;
            least.a[i] = 1.0;
            most.a[i] = -1.0;
            no_larger.a[i] = -1.0;
            no_larger.a[largest()] = 1.0;
            least.at_least = kilonewtons(std::max(k_least_pretension_N, least_share * most_N_[i]));
            most.at_least = -kilonewtons(most_N_[i]);
            p.rows.push_back(least);
            p.rows.push_back(most);
            p.rows.push_back(no_larger);
        }
        for (std::size_t i = 0; i < legs; ++i) {
            const Vec3 up = glm::normalize(drawn_.drawn_head_m - drawn_.legs[i].foot_m);
            for (int axis = 0; axis < 3; ++axis) {
                balance[static_cast<std::size_t>(axis)].a[guys + i] = up[axis];
                if (drawn_.legs[i].held_down) balance[static_cast<std::size_t>(axis)].a[guys + legs + i] = -up[axis];
            }
        }
        for (LinearProgram::Row& row : balance) {
            row.equal = true;
            p.rows.push_back(row);
        }
        p.cost[largest()] = 1e-3;  // of equal sums the most even one
        p.cost[lacking()] = 100.0;
        return p;
    }

    bool take(const ProgramAnswer& a, Pretensions& pretension_N) {
        if (!a.solved) return false;
        for (std::size_t i = 0; i < plan_.guys.size(); ++i) pretension_N[i] = newtons(a.x[i]);
        lacks_N_ = newtons(a.x[lacking()]);
        return true;
    }

    /// The balance in which the guy with the least share of what it may carry has as much as can be: where every slope can be read.
    bool find_tightest() {
        if (!take(solve(balanced(0.0)), tightest_N_)) return false;
        double low = 0.0, high = 1.0;
        for (int halving = 0; halving < 10; ++halving) {
            const double middle = 0.5 * (low + high);
            (take(solve(balanced(middle)), tightest_N_) ? low : high) = middle;
        }
        return true;
    }

    /// The tension of every guy in every case at one point, as a straight function of all pretensions, must stay above what is kept.
    bool add_conditions(TightnessBox& box, const Shares& at, LinearProgram& p) const {
        if (!box.solve_at(at)) return false;
        const Model& m = box.model();
        for (const Outcome& o : box.outcomes()) {
            GuyPairs change{};
            if (!signed_tension_change(m, o.equilibrium, change)) return false;
            for (std::size_t felt = 0; felt < m.guys.size(); ++felt) {
                LinearProgram::Row row;
                row.at_least = kilonewtons(kept_N_ - signed_tension_N(m.guys[felt], o.equilibrium.head_m));
                for (std::size_t j = 0; j < m.guys.size(); ++j) {
                    row.a[j] = change[j][felt] * take_up_per_N(box, j);
                    row.at_least += row.a[j] * kilonewtons(now_N_[j]);
                }
                row.a[lacking()] = 1.0;
                p.rows.push_back(row);
            }
        }
        return true;
    }

    /// Take-up of a guy per newton more of its pretension as entered, metres: L0 = l / (1 + T / EA), and T errs by its share.
    [[nodiscard]] double take_up_per_N(const TightnessBox& box, std::size_t guy) const {
        const Guy& g = box.model().guys[guy];
        const double drawn_m = glm::length(box.model().drawn_head_m - g.anchor_m);
        const double errs = newtons(box.plan().guys[guy].pretension_kN) / now_N_[guy];
        return errs * g.rest_length_m / (drawn_m * g.stiffness_N_m);
    }

    /// The best answer with the slopes at the last one; on to the box once it stays the same.
    void settle() {
        LinearProgram p = balanced(0.0);
        TightnessBox box(with(now_N_));
        bool stands = true;
        for (std::size_t i = 0; i < points_.size() && stands; ++i) stands = add_conditions(box, points_[i], p);
        bool same = false;
        Pretensions next_N{};
        if (!stands) {
            if (!step_back()) return look_at_tightest();
        } else if (take(solve(p), next_N)) {
            double moved_N = 0.0;
            for (std::size_t i = 0; i < plan_.guys.size(); ++i) moved_N = std::max(moved_N, std::abs(next_N[i] - now_N_[i]));
            now_N_ = next_N;
            same = moved_N < 0.5;
        } else {
            same = true;  // rounding stopped it: the box will tell
        }
        if (!same && ++settled_ < k_most_settling) return;
        if (lacks_N_ > kept_N_) return look_at_tightest();
        look(Stage::Look, round_ == 0 ? SweepDepth::Corners : SweepDepth::Whole);
    }

    /// Half way to the tightest; false once there.
    bool step_back() {
        double away_N = 0.0;
        for (std::size_t i = 0; i < plan_.guys.size(); ++i) {
            away_N = std::max(away_N, std::abs(tightest_N_[i] - now_N_[i]));
            now_N_[i] = 0.5 * (now_N_[i] + tightest_N_[i]);
        }
        return away_N > k_kept_tension_N;
    }

    void add_points(const Tightness& t) {
        for (std::size_t i = 0; i < plan_.guys.size(); ++i)
            if (std::isfinite(t.guys[i].least_N) && std::find(points_.begin(), points_.end(), t.guys[i].at) == points_.end()) points_.push_back(t.guys[i].at);
    }

    void tell(PretensionStatus status, const Tightness& t) {
        stage_ = Stage::Done;
        out_.status = status;
        for (std::size_t i = 0; i < plan_.guys.size(); ++i) {
            const double pull_N = hand_pull_N(now_N_[i], plan_.guys[i].parts);
            out_.guys.push_back({now_N_[i], pull_N, pull_N <= k_typical_hand_pull_N, t.guys[i].least_N, t.guys[i].case_index});
        }
    }

    /// What goes wrong at the tightest; if nothing does, the search has erred, and nothing is told.
    void tell_out_of_range(const Tightness& t) {
        stage_ = Stage::Done;
        if (!t.falls && least_of(t) >= 0.0) return;
        if (!t.falls) return tell(PretensionStatus::NotInRange, t);
        out_.status = PretensionStatus::NotInRange;
        out_.falls = true;
        out_.falls_in = t.falls_in;
    }

    Plan plan_;
    Model drawn_;
    LeastPretension out_;
    Pretensions most_N_{}, tightest_N_{}, now_N_{};
    std::vector<Shares> points_;  ///< of the box, where some guy was at its slackest
    std::optional<TightnessSweep> sweep_;
    double kept_N_ = k_kept_tension_N, lacks_N_ = 0.0;
    Stage stage_ = Stage::Settle;
    int round_ = 0, settled_ = 0;
};

/// The least pretension of a plan without faults, all at once.
[[nodiscard]] inline LeastPretension find_least_pretension(const Plan& plan) {
    PretensionSearch search(plan);
    while (!search.done()) search.advance();
    return search.answer();
}

}  // namespace guywright
