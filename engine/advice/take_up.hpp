#pragma once
#include "engine/checks/case_checks.hpp"
#include "engine/model/model.hpp"

#include <array>

namespace guywright {

// A guy is taken in (+) or paid out (-) by a length of unstretched cord, measured along the guy: of three parts, three times as
// much cord runs through the hand.

/// Guy `guy` of the model is `take_up_m` shorter, unstretched. Less must be left than there was.
inline void take_up(Model& m, std::size_t guy, double take_up_m) {
    Guy& g = m.guys[guy];
    const double EA_N = g.stiffness_N_m * g.rest_length_m;
    g.rest_length_m -= take_up_m;
    g.stiffness_N_m = EA_N / g.rest_length_m;
}

/// What a guy may carry for long, newtons: the weaker of cord and anchor under the plan's static factors.
inline double guy_allowed_N(const GuyPlan& g, const Limits& limits) {
    const Factors f = factors_for(limits, false);
    return newtons(std::min(guy_strength_kN(g) / f.soft, g.anchor_strength_kN / f.anchor));
}

/// Force with which a guy pulls, newtons; below 0 what it lacks to be tight.
inline double signed_tension_N(const Guy& g, Vec3 head_m) { return g.stiffness_N_m * (glm::length(head_m - g.anchor_m) - g.rest_length_m); }

}  // namespace guywright
