#pragma once
#include "engine/advice/line_up.hpp"
#include "engine/advice/take_up.hpp"

namespace guywright {

// What one person takes in or pays out at a time, largest first, metres: an arm's pull down to the turn of a buckle (common
// practice, no source).
inline constexpr std::array k_step_sizes_m{0.1, 0.05, 0.02, 0.01, 0.005};

/// Less than this left on a guy waits for a later step, metres; at the end less than half a millimetre is left be. Nobody sets less.
inline constexpr double k_least_step_m = 0.002, k_least_last_step_m = 0.0005;

inline constexpr std::size_t k_most_steps = 200;

struct TakeUpStep {
    std::size_t guy = 0;
    double take_up_m = 0.0;        ///< + in, - out
    double angle_rad = 0.0;        ///< of the holding resultant to the legs, at the head where it then rests as rigged
    double least_tension_N = 0.0;  ///< of all guys, as rigged
};

enum class OrderStatus : unsigned char {
    NotComputed,
    Found,
    SlackAtStart,  ///< a guy hangs loose as rigged: no order keeps it tight
    FallsAtStart,  ///< it does not stand as rigged
    NotFound       ///< every next step, however small, lets a guy go slack, overloads one or turns the force away, or it takes too many
};

/// An order of single-guy steps for a line-up in which no guy goes slack, none carries more than it may (or did at the start) and
/// the applied-force angle never grows beyond what it was.
struct LineUpOrder {
    OrderStatus status = OrderStatus::NotComputed;
    std::size_t slack_guy = 0;  ///< for SlackAtStart
    double angle_start_rad = 0.0;
    Bounded<TakeUpStep, k_most_steps> steps;
};

/// Off the legs, the holding resultant with the head at rest as rigged at `head_m`: what a rope would do if it were loaded now.
inline double angle_as_rigged_rad(const Plan& plan, Model m, Vec3 head_m) {
    draw_head_at(m, plan, head_m);
    const Vec3 force_N = sum_of_pulls_N(build_cases(m, plan.actions)[k_holding].pulls, head_m);
    return glm::length(force_N) > 0.0 ? angle_off_legs_rad(m, head_m, force_N) : 0.0;
}

namespace detail {

/// Walks the guys in steps from where they are to where the line-up wants them, in slices. Plan, model and line-up must outlive it.
class StepFinder {
public:
    StepFinder(const Plan& plan, const Model& drawn, const LineUp& line_up) : plan_(plan), start_(drawn), line_up_(line_up), model_(drawn) {
        from_ = offset_of(plan, drawn);
        to_ = offset_of(line_up.plan, build_model(line_up.plan).model);
        at_ = solve_equilibrium(model_, {}, drawn.drawn_head_m);
        for (std::size_t i = 0; i < drawn.guys.size(); ++i) {
            const double tension_N = i < at_.guy_tension_N.size() ? at_.guy_tension_N[i] : 0.0;
            most_N_[i] = std::max(guy_allowed_N(plan.guys[i], plan.limits), tension_N);
        }
        done_ = !starts_well();
    }

    [[nodiscard]] bool done() const { return done_; }
    [[nodiscard]] const LineUpOrder& order() const { return order_; }

    /// One stretch of the way, or one that turns out to be too long.
    void advance() {
        const double next = share_after(share_, k_step_sizes_m[size_]);
        if (walk_to(next)) {
            share_ = next;
            size_ = size_ > 0 ? size_ - 1 : 0;
        } else if (++size_ == k_step_sizes_m.size() || order_.steps.full()) {
            order_.steps.clear();
            return finish(OrderStatus::NotFound);
        }
        if (share_ >= 1.0) finish(OrderStatus::Found);
    }

private:
    void finish(OrderStatus status) {
        order_.status = status;
        done_ = true;
    }

    bool starts_well() {
        if (!is_stable(at_)) {
            order_.status = OrderStatus::FallsAtStart;
            return false;
        }
        order_.angle_start_rad = angle_as_rigged_rad(plan_, model_, at_.head_m);
        for (std::size_t i = 0; i < model_.guys.size(); ++i) {
            if (at_.guy_loose_m[i] <= k_slack_m) continue;
            order_.status = OrderStatus::SlackAtStart;
            order_.slack_guy = i;
            return false;
        }
        return true;
    }

    /// Take-up of every guy, counted from the start, with which it has its pretension where the head then is.
    void wanted_m(double share, std::array<double, k_max_guys>& out) const {
        if (share >= 1.0) {
            for (std::size_t i = 0; i < model_.guys.size(); ++i) out[i] = line_up_.take_up_m[i];
            return;
        }
        const Model there = move_head(plan_, start_, from_ + share * (to_ - from_)).model;
        for (std::size_t i = 0; i < model_.guys.size(); ++i) out[i] = start_.guys[i].rest_length_m - there.guys[i].rest_length_m;
    }

    /// How far along the way so that no guy is taken in or paid out by more than `size_m`.
    [[nodiscard]] double share_after(double share, double size_m) const {
        std::array<double, k_max_guys> here{}, there{};
        wanted_m(share, here);
        const auto fits = [&](double next) {
            wanted_m(next, there);
            for (std::size_t i = 0; i < model_.guys.size(); ++i)
                if (std::abs(there[i] - done_m_[i]) > size_m) return false;
            return true;
        };
        if (fits(1.0)) return 1.0;
        double low = share, high = 1.0;
        for (int halving = 0; halving < 14; ++halving) {
            const double middle = 0.5 * (low + high);
            (fits(middle) ? low : high) = middle;
        }
        return low;
    }

    /// One step of every guy that has one to take, in the order that keeps the least tension highest. Undone if it cannot be.
    bool walk_to(double share) {
        if (!(share > last_share_)) return false;
        std::array<double, k_max_guys> wanted{};
        wanted_m(share, wanted);
        const Model model_before = model_;
        const Equilibrium at_before = at_;
        const auto done_before = done_m_;
        const auto steps_before = order_.steps;
        while (true) {
            const int next = best_step(wanted, share >= 1.0 ? k_least_last_step_m : k_least_step_m);
            if (next == k_none_left) break;
            if (next == k_none_possible || order_.steps.full()) {
                model_ = model_before;
                at_ = at_before;
                done_m_ = done_before;
                order_.steps = steps_before;
                return false;
            }
            take(static_cast<std::size_t>(next), wanted[static_cast<std::size_t>(next)]);
        }
        last_share_ = share;
        return true;
    }

    static constexpr int k_none_left = -1, k_none_possible = -2;

    /// The guy to take next, none left, or none possible.
    [[nodiscard]] int best_step(const std::array<double, k_max_guys>& wanted, double least_m) const {
        int best = k_none_left;
        double best_N = -HUGE_VAL;
        for (std::size_t i = 0; i < model_.guys.size(); ++i) {
            if (std::abs(wanted[i] - done_m_[i]) <= least_m) continue;
            if (best == k_none_left) best = k_none_possible;
            Model tried;
            Equilibrium after;
            const double least_N = try_step(i, wanted[i] - done_m_[i], tried, after);
            if (!(least_N > best_N)) continue;
            best = static_cast<int>(i);
            best_N = least_N;
        }
        return best;
    }

    /// Least tension after one step; below all where the step is not to be taken.
    double try_step(std::size_t guy, double by_m, Model& tried, Equilibrium& after) const {
        tried = model_;
        take_up(tried, guy, by_m);
        tried.drawn_head_m = at_.head_m;
        after = solve_equilibrium(tried, {}, at_.head_m);
        if (!is_stable(after)) return -HUGE_VAL;
        double least_N = HUGE_VAL;
        for (std::size_t i = 0; i < tried.guys.size(); ++i) {
            if (!(after.guy_tension_N[i] > 0.0) || after.guy_tension_N[i] > most_N_[i]) return -HUGE_VAL;
            least_N = std::min(least_N, after.guy_tension_N[i]);
        }
        return angle_as_rigged_rad(plan_, tried, after.head_m) <= order_.angle_start_rad ? least_N : -HUGE_VAL;
    }

    void take(std::size_t guy, double wanted_m) {
        const double by_m = wanted_m - done_m_[guy];
        Model tried;
        Equilibrium after;
        const double least_N = try_step(guy, by_m, tried, after);
        model_ = tried;
        at_ = after;
        done_m_[guy] = wanted_m;
        order_.steps.push_back({guy, by_m, angle_as_rigged_rad(plan_, model_, at_.head_m), least_N});
    }

    const Plan& plan_;
    const Model& start_;
    const LineUp& line_up_;
    Model model_;  ///< with the steps so far
    HeadOffset from_{}, to_{};
    Equilibrium at_;
    std::array<double, k_max_guys> most_N_{}, done_m_{};
    double last_share_ = 0.0, share_ = 0.0;
    std::size_t size_ = 0;  ///< of the stretches, in k_step_sizes_m
    LineUpOrder order_;
    bool done_ = false;
};

}  // namespace detail

/// The same in slices.
using LineUpOrderSearch = detail::StepFinder;

/// An order for the steps of `line_up`, found by following the head's way and trying, in every stretch of it, each guy in turn; where
/// none can be taken, in smaller steps. What it finds holds; that it finds none does not prove that there is none.
[[nodiscard]] inline LineUpOrder find_order(const Plan& plan, const Model& drawn, const LineUp& line_up) {
    if (line_up.take_up_m.empty()) return {};
    detail::StepFinder finder(plan, drawn, line_up);
    while (!finder.done()) finder.advance();
    return finder.order();
}

}  // namespace guywright
