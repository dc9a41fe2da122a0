#pragma once
#include "engine/advice/take_up.hpp"
#include "engine/margins/error_sweep.hpp"

namespace guywright {

/// Where each measurement stands in its error, -1 to 1.
using Shares = std::vector<double>;

/// How tight every guy stays over the cases and the measuring errors of one plan.
struct Tightness {
    struct OfGuy {
        double least_N = HUGE_VAL;  ///< signed tension; below 0 it hangs slack, by what it lacks
        std::size_t case_index = 0;
        Shares at;
    };
    std::array<OfGuy, k_max_guys> guys;
    bool falls = false;        ///< somewhere a case has no resting place that stands: the rest says nothing of it
    std::size_t falls_in = 0;  ///< the first case in which it falls
    Shares falls_at;
};

/// One plan's box of measuring errors: every case solved at one point of it at a time. The loss of a guy is not a case here.
class TightnessBox {
public:
    using Tensions = std::array<std::array<double, k_max_guys>, k_max_cases>;  ///< signed, newtons: [case][guy]

    explicit TightnessBox(const Plan& plan) : plan_(plan), numbers_(measured_numbers(plan_)) {}
    TightnessBox(const TightnessBox&) = delete;  // the list of numbers points into the plan
    TightnessBox& operator=(const TightnessBox&) = delete;

    [[nodiscard]] Shares as_measured() const { return Shares(numbers_.size(), 0.0); }
    [[nodiscard]] const Model& model() const { return model_; }
    [[nodiscard]] const Outcomes& outcomes() const { return outcomes_; }
    [[nodiscard]] const Plan& plan() const { return plan_; }                ///< as it stands at the point looked at last
    [[nodiscard]] const Tensions& tensions_N() const { return tensions_; }  ///< of the cases that stand, after look()

    /// Solves every case at one point. False where the plan has no model there.
    bool solve_at(const Shares& shares) {
        for (std::size_t i = 0; i < numbers_.size(); ++i) numbers_[i].move_to(shares[i]);
        BuiltModel built = build_model(plan_);
        if (!built.faults.empty()) return false;
        model_ = built.model;
        outcomes_.clear();
        solve_cases(model_, build_cases(model_, plan_.actions), outcomes_);
        return true;
    }

    /// Takes one point into what was found.
    void look(const Shares& at, Tightness& out) {
        const bool solved = solve_at(at);
        if (!solved) take_fall(out, 0, at);
        for (std::size_t c = 0; solved && c < outcomes_.size(); ++c) {
            if (!outcomes_[c].stable) {
                take_fall(out, c, at);
                continue;
            }
            for (std::size_t g = 0; g < model_.guys.size(); ++g) {
                tensions_[c][g] = signed_tension_N(model_.guys[g], outcomes_[c].equilibrium.head_m);
                if (tensions_[c][g] < out.guys[g].least_N) out.guys[g] = {tensions_[c][g], c, at};
            }
        }
    }

private:
    /// The first of the cases is told: a rig that falls as rigged falls in all that follow, too.
    static void take_fall(Tightness& out, std::size_t case_index, const Shares& at) {
        if (out.falls && out.falls_in <= case_index) return;
        out.falls = true;
        out.falls_in = case_index;
        out.falls_at = at;
    }

    Plan plan_;
    std::vector<Measured> numbers_;
    Model model_;
    Outcomes outcomes_;
    Tensions tensions_{};
};

/// How far a sweep goes.
enum class SweepDepth : unsigned char { Corners, Whole };

/// Looks the box over for guys that go slack, in slices: each measurement at its ends, the corner these foretell as worst for each
/// guy, and, in depth, low-discrepancy points and from the worst point of each guy every measurement's other end. As the verdict's own
/// sweep, with the guys' tightness for its rules.
class TightnessSweep {
public:
    TightnessSweep(const Plan& plan, SweepDepth depth) : box_(plan), at_(box_.as_measured()), ends_(2 * at_.size()), depth_(depth) {
        box_.look(at_, found_);
        centre_ = box_.tensions_N();
    }
    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    [[nodiscard]] const Tightness& found() const { return found_; }

    /// Goes on by at most `count` points.
    void advance(std::size_t count) {
        for (; count > 0 && !done(); --count) step();
    }

private:
    enum class Stage : unsigned char { Ends, Corners, Points, Follow, Done };

    void go_to(Stage stage) {
        stage_ = stage;
        next_ = 0;
    }
    [[nodiscard]] std::size_t guys() const { return box_.plan().guys.size(); }

    void step() {
        switch (stage_) {
            case Stage::Ends: return step_ends();
            case Stage::Corners: return step_corners();
            case Stage::Points: return step_points();
            case Stage::Follow: return step_follow();
            case Stage::Done: return;
        }
    }

    void step_ends() {
        if (next_ == ends_.size()) return go_to(Stage::Corners);
        at_[next_ / 2] = next_ % 2 == 0 ? -1.0 : 1.0;
        box_.look(at_, found_);
        ends_[next_] = box_.tensions_N();
        at_[next_ / 2] = 0.0;
        ++next_;
    }

    void step_corners() {
        if (next_ == guys()) return go_to(depth_ == SweepDepth::Corners || at_.empty() ? Stage::Done : Stage::Points);
        box_.look(foretold_corner(next_++), found_);
    }

    void step_points() {
        if (next_ == k_box_points) return go_to(Stage::Follow);
        for (std::size_t i = 0; i < at_.size(); ++i) at_[i] = share_of_point(next_, i);
        box_.look(at_, found_);
        ++next_;
    }

    /// Turns one measurement to its other end, and leaves it there if that is worse for the guy followed.
    void step_follow() {
        const std::size_t measurements = ends_.size() / 2, guy = next_ / measurements, i = next_ % measurements;
        if (guy == guys()) return go_to(Stage::Done);
        if (found_.guys[guy].at.empty()) {  // never seen in a rig that stands
            next_ += measurements;
            return;
        }
        if (i == 0) at_ = found_.guys[guy].at;
        ++next_;
        const double before = at_[i], so_far_N = found_.guys[guy].least_N;
        at_[i] = before < 0.0 ? 1.0 : -1.0;
        box_.look(at_, found_);
        if (!(found_.guys[guy].least_N < so_far_N)) at_[i] = before;
    }

    /// The corner at which, were tensions straight in every error, this guy would be slackest in its worst case.
    [[nodiscard]] Shares foretold_corner(std::size_t guy) const {
        double worst_N = HUGE_VAL;
        Shares corner = box_.as_measured();
        for (std::size_t c = 0; c < box_.outcomes().size(); ++c) {
            double foretold_N = centre_[c][guy];
            Shares at = box_.as_measured();
            for (std::size_t i = 0; i < at.size(); ++i) {
                const double low = ends_[2 * i][c][guy], high = ends_[2 * i + 1][c][guy];
                at[i] = low < high ? -1.0 : 1.0;
                foretold_N += std::min(low, high) - centre_[c][guy];
            }
            if (!(foretold_N < worst_N)) continue;
            worst_N = foretold_N;
            corner = at;
        }
        return corner;
    }

    TightnessBox box_;
    Shares at_;
    TightnessBox::Tensions centre_{};
    std::vector<TightnessBox::Tensions> ends_;
    Tightness found_;
    SweepDepth depth_;
    Stage stage_ = Stage::Ends;
    std::size_t next_ = 0;
};

}  // namespace guywright
