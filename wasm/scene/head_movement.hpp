#pragma once
#include <array>

#include "engine/verdict/evaluate.hpp"

namespace guywright::scene {

/// How many times larger the head's movements are drawn: one factor for all cases, so that they compare; a round one, at which
/// the largest of them is a good part of a leg and no more. 1 where nothing was solved.
inline double enlargement(const Evaluation& e) {
    constexpr double k_most_of_leg = 0.3;
    constexpr std::array<double, 8> k_round{200.0, 100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0};
    double largest_m = 0.0;
    for (const Outcome& o : e.outcomes)
        if (o.equilibrium.status == SolveStatus::Solved) largest_m = std::max(largest_m, o.head_shift_m);
    if (!(largest_m > 0.0)) return 1.0;
    for (const double factor : k_round)
        if (factor * largest_m <= k_most_of_leg * e.model.shortest_leg_m) return factor;
    return 1.0;
}

/// Where the head of a case is drawn.
inline Vec3 enlarged_head_m(const Model& m, const Outcome& o, double factor) { return m.drawn_head_m + factor * (o.equilibrium.head_m - m.drawn_head_m); }

}  // namespace guywright::scene
