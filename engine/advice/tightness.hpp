#pragma once
#include "engine/advice/take_up.hpp"
#include "engine/margins/error_sweep.hpp"

namespace guywright {

/// Where each measurement stands in its error, -1 to 1.
using Shares = std::vector<double>;

/// How tight every guy stays over the cases and the measuring errors of one plan.
struct Tightness {
    struct OfGuy {
        double least_N = HUGE_VAL;   ///< signed tension; below 0 it hangs slack, by what it lacks
        std::size_t case_index = 0;
        Shares at;
    };
    std::array<OfGuy, k_max_guys> guys;
    bool falls = false;              ///< somewhere a case has no resting place that stands: the rest says nothing of it
    std::size_t falls_in = 0;        ///< case
    Shares falls_at;
};

/// One plan's box of measuring errors, looked at for guys that go slack. The loss of a guy is not a case here.
class TightnessBox {
public:
    explicit TightnessBox(const Plan& plan) : plan_(plan), numbers_(measured_numbers(plan_)) {}
    TightnessBox(const TightnessBox&) = delete;   // the list of numbers points into the plan
    TightnessBox& operator=(const TightnessBox&) = delete;

    [[nodiscard]] Shares as_measured() const { return Shares(numbers_.size(), 0.0); }
    [[nodiscard]] const Model& model() const { return model_; }
    [[nodiscard]] const Outcomes& outcomes() const { return outcomes_; }
    [[nodiscard]] const Plan& plan() const { return plan_; }   ///< as it stands at the point looked at last

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

    /// Each measurement at its ends, the corners these foretell as worst for each guy, low-discrepancy points, and from the worst
    /// point of each guy every measurement's other end: as the verdict's own sweep, with the guys' tightness for its rules.
    Tightness sweep() {
        Tightness out = ends_and_corners();
        for (std::size_t p = 0; p < k_box_points && !numbers_.empty(); ++p) {
            Shares at = as_measured();
            for (std::size_t i = 0; i < at.size(); ++i) {
                const double share = low_discrepancy(p, i);
                at[i] = p % 2 == 0 ? share : share < 0.0 ? -1.0 : 1.0;
            }
            look(at, out);
        }
        for (std::size_t g = 0; g < plan_.guys.size(); ++g) follow(g, out);
        return out;
    }

    /// The part of sweep() that finds each guy's worst corner.
    Tightness ends_and_corners() {
        Tightness out;
        look(as_measured(), out);
        const Tensions centre = tensions_;
        std::vector<std::array<Tensions, 2>> ends(numbers_.size());
        for (std::size_t i = 0; i < numbers_.size(); ++i)
            for (const std::size_t end : {0u, 1u}) {
                Shares at = as_measured();
                at[i] = end == 0 ? -1.0 : 1.0;
                look(at, out);
                ends[i][end] = tensions_;
            }
        for (std::size_t g = 0; g < plan_.guys.size(); ++g) look(foretold_corner(g, centre, ends), out);
        return out;
    }

private:
    using Tensions = std::array<std::array<double, k_max_guys>, k_max_cases>;   ///< signed, newtons

    void look(const Shares& at, Tightness& out) {
        if (!solve_at(at)) {
            out.falls = true;
            out.falls_at = at;
            return;
        }
        for (std::size_t c = 0; c < outcomes_.size(); ++c) {
            if (!outcomes_[c].stable) {
                out.falls = true;
                out.falls_in = c;
                out.falls_at = at;
                continue;
            }
            for (std::size_t g = 0; g < model_.guys.size(); ++g) {
                tensions_[c][g] = signed_tension_N(model_.guys[g], outcomes_[c].equilibrium.head_m);
                if (tensions_[c][g] < out.guys[g].least_N) out.guys[g] = {tensions_[c][g], c, at};
            }
        }
    }

    /// The corner at which, were tensions straight in every error, this guy would be slackest in its worst case.
    [[nodiscard]] Shares foretold_corner(std::size_t guy, const Tensions& centre, const std::vector<std::array<Tensions, 2>>& ends) const {
        double worst_N = HUGE_VAL;
        Shares corner = as_measured();
        for (std::size_t c = 0; c < outcomes_.size(); ++c) {
            double foretold_N = centre[c][guy];
            Shares at = as_measured();
            for (std::size_t i = 0; i < at.size(); ++i) {
                const double low = ends[i][0][c][guy], high = ends[i][1][c][guy];
                at[i] = low < high ? -1.0 : 1.0;
                foretold_N += std::min(low, high) - centre[c][guy];
            }
            if (!(foretold_N < worst_N)) continue;
            worst_N = foretold_N;
            corner = at;
        }
        return corner;
    }

    void follow(std::size_t guy, Tightness& out) {
        Shares at = out.guys[guy].at;
        for (std::size_t i = 0; i < at.size(); ++i) {
            const double before = at[i], so_far_N = out.guys[guy].least_N;
            at[i] = before < 0.0 ? 1.0 : -1.0;
            look(at, out);
            if (!(out.guys[guy].least_N < so_far_N)) at[i] = before;
        }
    }

    Plan plan_;
    std::vector<Measured> numbers_;
    Model model_;
    Outcomes outcomes_;
    Tensions tensions_{};
};

}  // namespace guywright
