#pragma once
#include "engine/cases/load_limit.hpp"
#include "engine/margins/error_sweep.hpp"
#include "engine/plan/find_faults.hpp"

namespace guywright {

enum class Verdict : unsigned char { NotChecked, Go, NoGo };

/// Everything computed for one plan. `outcomes` and `checks` are empty where there are faults; where inputs are only missing
/// they show what the starting values would give, and the verdict stays NotChecked.
struct Evaluation {
    Verdict verdict = Verdict::NotChecked;
    bool error_swept = false;               ///< the box of measuring errors was looked at to the end
    InputFaults faults;                     ///< inputs that cannot be used
    std::vector<std::string> not_measured;  ///< inputs still missing
    Model model;
    Outcomes outcomes;  ///< [k_rigged], [k_holding], ...
    LostGuys guys_lost;
    LoadLimit load_limit;               ///< of the holding case
    CheckTable checks;                  ///< at the measured values
    CheckTable worst;                   ///< at the worst of measuring error
    std::vector<std::string> spoilers;  ///< paths of measurements, by Check::spoiler
    std::vector<double> eaten;          ///< as ErrorSweep::eaten(), of the same measurements
    std::vector<Check> closest;         ///< rows of `worst` with a margin or a failure, the worst first
};

namespace detail {

/// Reported always, judged where the plan wants it.
inline void take_in_lost_guys(Evaluation& e, const Plan& plan) {
    lose_each_guy(e.model, e.outcomes[k_holding], e.guys_lost);
    for (std::size_t i = 0; i < e.guys_lost.size(); ++i) read_angles(without_guy(e.model, i), e.guys_lost[i]);
    if (plan.actions.guy_loss_must_hold) check_guys_lost(e.checks, plan, e.model, e.guys_lost);
}

}  // namespace detail

/// Rows with a margin or a failure, the worst first.
inline std::vector<Check> ranked(const CheckTable& checks) {
    std::vector<Check> out;
    checks.for_each([&](const Check& c) {
        if (c.has_margin || c.status == CheckStatus::Fail) out.push_back(c);
    });
    // a failure first; among failures one without an answer or without a foot on the ground before a broken limit
    const auto key = [](const Check& c) { return std::pair{c.status != CheckStatus::Fail, c.has_margin && std::isfinite(c.margin) ? c.margin : -2.0}; };
    std::stable_sort(out.begin(), out.end(), [&](const Check& a, const Check& b) { return key(a) < key(b); });
    return out;
}

namespace detail {

/// NO-GO as soon as a rule is broken; GO only once nothing is left to look at.
inline void conclude(Evaluation& e) {
    e.closest = ranked(e.worst);
    const bool broken = !e.closest.empty() && e.closest[0].status == CheckStatus::Fail;
    if (!e.not_measured.empty()) e.verdict = Verdict::NotChecked;
    else if (broken) e.verdict = Verdict::NoGo;
    else e.verdict = e.error_swept ? Verdict::Go : Verdict::NotChecked;
}

}  // namespace detail

/// From plan to verdict at the measured values alone: NO-GO or, since measuring error is still to come, NOT CHECKED.
inline Evaluation evaluate_as_measured(const Plan& plan) {
    Evaluation e;
    e.faults = find_faults(plan);
    e.not_measured = plan.not_measured;
    if (!e.faults.empty()) return e;
    BuiltModel built = build_model(plan);
    e.faults = std::move(built.faults);
    if (!e.faults.empty()) return e;
    e.model = built.model;
    solve_cases(e.model, build_cases(e.model, plan.actions), e.outcomes);
    check_all_forces(e.checks, plan, e.model, e.outcomes);
    check_all_angles(e.checks, plan, e.model, e.outcomes);
    detail::take_in_lost_guys(e, plan);
    const Equilibrium& rigged = e.outcomes[k_rigged].equilibrium;
    if (rigged.status == SolveStatus::Solved) {
        e.load_limit = find_load_limit(e.model, e.outcomes[k_holding].setup.pulls, rigged.head_m);
        // it may stand as rigged and under the whole load, and fall on the way there
        if (e.load_limit.collapse_factor < 1.0) e.checks.add(fallen_check(static_cast<int>(k_holding)));
    }
    e.worst = e.checks;
    detail::conclude(e);
    return e;
}

/// Takes in what a sweep has found so far, and gives the verdict that follows from it.
inline void take_in(Evaluation& e, const ErrorSweep& sweep) {
    e.error_swept = sweep.done();
    e.worst = e.checks;
    e.spoilers = sweep.paths();
    e.eaten = sweep.eaten();
    sweep.worst().for_each([&](const Check& c) { e.worst.add(c); });
    detail::conclude(e);
}

/// The whole way from plan to verdict. GO only where every input is there and sound, every case has an answer, and no rule
/// is broken, at the measured values and, for forces, stability, feet and strength, over the whole box of measuring errors.
inline Evaluation evaluate(const Plan& plan) {
    Evaluation e = evaluate_as_measured(plan);
    if (e.outcomes.empty() || !e.not_measured.empty()) return e;
    ErrorSweep sweep(plan, e.checks);
    while (!sweep.done()) sweep.advance(k_box_points);
    take_in(e, sweep);
    return e;
}

}  // namespace guywright
