#pragma once
#include "engine/cases/solve_cases.hpp"
#include "engine/checks/case_checks.hpp"
#include "engine/checks/drawing_checks.hpp"
#include "engine/model/build_model.hpp"

namespace guywright {

using LostGuys = Bounded<Outcome, k_max_guys>;  ///< the holding case without each guy in turn

/// Adds the rows of every case that rest on forces.
inline void check_all_forces(CheckTable& table, const Plan& plan, const Model& m, const Outcomes& outcomes) {
    for (std::size_t i = 0; i < outcomes.size(); ++i) check_forces(table, plan, m, outcomes[i], static_cast<int>(i));
}

/// Adds the rows of the drawing and of every case's angles, which are read into `outcomes` here.
inline void check_all_angles(CheckTable& table, const Plan& plan, const Model& m, Outcomes& outcomes) {
    check_drawing(table, plan, m);
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        read_angles(m, outcomes[i]);
        check_angles(table, plan, m, outcomes[i], static_cast<int>(i));
    }
}

/// Holding, and then each guy in turn is gone: the search goes on from where the head rested.
inline void lose_each_guy(const Model& m, const Outcome& holding, LostGuys& lost) {
    const Vec3 start_m = holding.equilibrium.status == SolveStatus::Solved ? holding.equilibrium.head_m : m.drawn_head_m;
    for (std::size_t i = 0; i < m.guys.size(); ++i) lost.push_back(solve_case(without_guy(m, i), guy_lost_case(holding.setup, i), start_m));
}

/// Adds a row for each lost guy: whether what is left keeps every rule of forces.
inline void check_guys_lost(CheckTable& table, const Plan& plan, const Model& m, const LostGuys& lost) {
    for (std::size_t i = 0; i < lost.size(); ++i) {
        CheckTable left;
        check_forces(left, plan, without_guy(m, i), lost[i], k_no_case);
        bool holds = true;
        left.for_each([&](const Check& c) { holds = holds && c.status != CheckStatus::Fail; });
        table.add(yes_no_check(CheckId::GuyLost, i, holds ? CheckStatus::Pass : CheckStatus::Fail, 0.0, 0.0, k_no_case));
    }
}

/// Errors of measuring part guys on paper that hang on one anchor all the same.
inline void keep_shared_anchors(Model& m, const SharedAnchors& as_measured) {
    for (std::size_t i = 0; i < as_measured.size() && i < m.guys.size(); ++i) m.guys[i].shared_anchor = as_measured[i];
}

/// Solves every case of a plan without faults as it stands and adds every rule of forces, with or without those of drawing and
/// angles, to `table`. `outcomes` is room to work in: what it held is gone. A model that cannot be built has no answer. `shared`: of
/// the plan as measured, where `plan` differs from it by errors; else the anchors lie where `plan` says.
inline void check_as_it_stands(CheckTable& table, Outcomes& outcomes, const Plan& plan, bool with_angles, const SharedAnchors& shared = {}) {
    BuiltModel built = build_model(plan);
    if (!built.faults.empty()) return table.add(yes_no_check(CheckId::Solved, 0, CheckStatus::Fail, 0.0, 0.0, k_no_case));
    keep_shared_anchors(built.model, shared);
    outcomes.clear();
    solve_cases(built.model, build_cases(built.model, plan.actions), outcomes);
    check_all_forces(table, plan, built.model, outcomes);
    if (with_angles) check_all_angles(table, plan, built.model, outcomes);
    if (!plan.actions.guy_loss_must_hold) return;
    LostGuys lost;
    lose_each_guy(built.model, outcomes[k_holding], lost);
    check_guys_lost(table, plan, built.model, lost);
}

/// The rules of forces of one case alone, by its place in the list of cases.
inline void check_case_as_it_stands(CheckTable& table, const Plan& plan, std::size_t case_index, const SharedAnchors& shared = {}) {
    BuiltModel built = build_model(plan);
    if (!built.faults.empty()) return table.add(yes_no_check(CheckId::Solved, 0, CheckStatus::Fail, 0.0, 0.0, k_no_case));
    keep_shared_anchors(built.model, shared);
    const Cases cases = build_cases(built.model, plan.actions);
    check_forces(table, plan, built.model, solve_case_of(built.model, cases, case_index), static_cast<int>(case_index));
}

}  // namespace guywright
