#pragma once
#include "engine/advice/least_pretension.hpp"
#include "engine/advice/line_up_order.hpp"
#include "engine/advice/sequence.hpp"

namespace guywright {

/// What a rig's guys can be told to do: for one plan, computed after its verdict, and no part of it.
struct Tuning {
    bool computed = false;  ///< false: the plan has no model
    TieMatrix rigged, holding;
    LineUp line_up;
    LineUpOrder order;
    LeastPretension least_pretension;
    Sequence sequence;
};

/// `e` must be what was computed for `plan`.
[[nodiscard]] inline Tuning tune(const Plan& plan, const Evaluation& e) {
    Tuning t;
    if (e.outcomes.empty()) return t;
    t.computed = true;
    t.rigged = tie_matrix(e.model, e.outcomes[k_rigged].equilibrium);
    t.holding = tie_matrix(e.model, e.outcomes[k_holding].equilibrium);
    t.line_up = find_line_up(plan, e.model);
    t.order = find_order(plan, e.model, t.line_up);
    t.least_pretension = find_least_pretension(plan);
    t.sequence = find_sequence(plan, e.model);
    return t;
}

}  // namespace guywright
