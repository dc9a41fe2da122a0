#pragma once
#include "engine/cases/build_cases.hpp"
#include "engine/cases/outcome.hpp"

namespace guywright {

using Outcomes = Bounded<Outcome, k_max_cases>;
inline constexpr std::size_t k_rigged = 0, k_holding = 1;  ///< where these two cases stand in every list

/// Solves every case, as long as `go_on(outcome)` says so of each. Ropes load a rig as it stands: the search starts from where the head rests as rigged, or, for a rope
/// let go, as held. A few rigs in ten thousand, with slack guys, have two resting places; from there the one that loading
/// leads to is found.
template <class GoOn>
inline void solve_cases_while(const Model& m, const Cases& cases, Outcomes& outcomes, GoOn go_on) {
    Start rigged(m, m.drawn_head_m), held = rigged;
    for (const Case& setup : cases) {
        outcomes.push_back(solve_case(setup.starts_held ? held : rigged, setup));
        const Outcome& outcome = outcomes[outcomes.size() - 1];
        if (!go_on(outcome)) return;
        const Equilibrium& latest = outcome.equilibrium;
        if (latest.status != SolveStatus::Solved) continue;
        if (setup.id == CaseId::Rigged) rigged.move_to(latest.head_m);
        if (setup.id == CaseId::Rigged || setup.id == CaseId::Holding) held.move_to(latest.head_m);
    }
}

inline void solve_cases(const Model& m, const Cases& cases, Outcomes& outcomes) {
    solve_cases_while(m, cases, outcomes, [](const Outcome&) { return true; });
}

/// The one case `index` as solve_cases() would solve it.
inline Outcome solve_case_of(const Model& m, const Cases& cases, std::size_t index) {
    Start start(m, m.drawn_head_m);
    for (const std::size_t before : {k_rigged, k_holding}) {
        if (before >= index || (before == k_holding && !cases[index].starts_held)) continue;
        const Equilibrium latest = solve_case(start, cases[before]).equilibrium;
        if (latest.status == SolveStatus::Solved) start.move_to(latest.head_m);
    }
    return solve_case(start, cases[index]);
}

}  // namespace guywright
