#pragma once
#include "engine/verdict/evaluate.hpp"
#include "tests/support/plans.hpp"

namespace bench {

/// A sound rig with that many guys all round and that many ropes.
inline guywright::Plan rig(int guys, int ropes = 1) {
    guywright::Plan p = support::go_plan();
    p.guys.clear();
    const double first_deg = guys == 3 ? 180.0 : 180.0 / guys;
    for (int i = 0; i < guys; ++i) p.guys.push_back(support::guy("guy " + std::to_string(i), std::fmod(first_deg + 360.0 * i / guys, 360.0), 30.0, 3));
    p.ropes.resize(static_cast<std::size_t>(ropes), p.ropes[0]);
    for (std::size_t i = 0; i < p.ropes.size(); ++i) {
        p.ropes[i].name = "rope " + std::to_string(i);
        p.ropes[i].load_kg = 100.0;
        p.ropes[i].share = 1.0 / ropes;
    }
    p.actions.swing_deg = 5.0;
    p.edge.opening_m = 0.1;  // ground for every anchor, wherever the numbers put it
    return p;
}

/// Every case of a rig, loaded from the head as rigged.
struct Loaded {
    explicit Loaded(const guywright::Plan& p) : model(guywright::build_model(p).model), cases(guywright::build_cases(model, p.actions)) {
        rigged_m = guywright::solve_equilibrium(model, {}, model.drawn_head_m).head_m;
    }

    guywright::Model model;
    guywright::Cases cases;
    guywright::Vec3 rigged_m;
};

}  // namespace bench
