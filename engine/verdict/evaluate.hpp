#pragma once
#include "engine/cases/build_cases.hpp"
#include "engine/checks/case_checks.hpp"
#include "engine/checks/drawing_checks.hpp"
#include "engine/model/build_model.hpp"
#include "engine/plan/find_faults.hpp"

namespace guywright {

enum class Verdict : unsigned char { NotChecked, Go, NoGo };

/// Everything computed for one plan. `outcomes` and `checks` are empty where there are faults; where inputs are only missing
/// they show what the starting values would give, and the verdict stays NotChecked.
struct Evaluation {
    Verdict verdict = Verdict::NotChecked;
    InputFaults faults;                      ///< inputs that cannot be used
    std::vector<std::string> not_measured;   ///< inputs still missing
    Model model;
    Bounded<Outcome, k_max_cases> outcomes;  ///< [0] as rigged, [1] holding
    CheckTable checks;
    std::vector<Check> closest;              ///< every row with a margin or a failure, worst first
};

inline constexpr std::size_t k_rigged = 0, k_holding = 1;

namespace detail {

/// Ropes load a rig as it stands: the search starts from where the head rests as rigged, or, for a rope let go, as held. A
/// few rigs in ten thousand, with slack guys, have two resting places; from there the one that loading leads to is found.
inline void solve_cases(Evaluation& e, const Plan& plan) {
    Vec3 rigged_m = e.model.drawn_head_m, held_m = rigged_m;
    for (const Case& setup : build_cases(e.model, plan.actions)) {
        e.outcomes.push_back(solve_case(e.model, setup, setup.starts_held ? held_m : rigged_m));
        const Equilibrium& latest = e.outcomes[e.outcomes.size() - 1].equilibrium;
        if (latest.status != SolveStatus::Solved) continue;
        if (setup.id == CaseId::Rigged) rigged_m = held_m = latest.head_m;
        if (setup.id == CaseId::Holding) held_m = latest.head_m;
    }
}

inline void rank_checks(Evaluation& e) {
    e.checks.for_each([&](const Check& c) {
        if (c.has_margin || c.status == CheckStatus::Fail) e.closest.push_back(c);
    });
    // a failure first; among failures one without an answer or without a foot on the ground before a broken limit
    const auto key = [](const Check& c) {
        return std::pair{c.status != CheckStatus::Fail, c.has_margin && std::isfinite(c.margin) ? c.margin : -2.0};
    };
    std::stable_sort(e.closest.begin(), e.closest.end(), [&](const Check& a, const Check& b) { return key(a) < key(b); });
}

}  // namespace detail

/// The whole way from plan to verdict, at the measured values. GO only where every input is there and sound, every case
/// has an answer, and no rule is broken.
inline Evaluation evaluate(const Plan& plan) {
    Evaluation e;
    e.faults = find_faults(plan);
    e.not_measured = plan.not_measured;
    if (!e.faults.empty()) return e;
    BuiltModel built = build_model(plan);
    e.faults = std::move(built.faults);
    if (!e.faults.empty()) return e;
    e.model = built.model;
    detail::solve_cases(e, plan);
    check_drawing(e.checks, plan, e.model);
    for (std::size_t i = 0; i < e.outcomes.size(); ++i) {
        read_angles(e.model, e.outcomes[i]);
        check_forces(e.checks, plan, e.model, e.outcomes[i], static_cast<int>(i));
        check_angles(e.checks, plan, e.model, e.outcomes[i], static_cast<int>(i));
    }
    detail::rank_checks(e);
    if (!e.not_measured.empty()) return e;
    const bool broken = !e.closest.empty() && e.closest[0].status == CheckStatus::Fail;
    e.verdict = broken ? Verdict::NoGo : Verdict::Go;
    return e;
}

}  // namespace guywright
