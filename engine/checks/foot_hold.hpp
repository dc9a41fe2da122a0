#pragma once
#include "engine/model/model.hpp"

namespace guywright {

/// What each tie of a foot carries.
struct FootTies {
    Bounded<double, k_max_foot_ties> tension_N;
    bool holds = false;  ///< false: no set of ties keeps the foot within friction
};

namespace detail {

/// Tension of tie i alone that brings |push + t d| down to `within_N`; < 0 where it cannot.
inline double single_tie_N(Vec3 push_N, Vec3 d, double within_N) {
    const double along = glm::dot(push_N, d);
    const double across2 = glm::dot(push_N, push_N) - along * along;
    const double reach2 = within_N * within_N - across2;
    return reach2 < 0.0 ? -1.0 : -along - std::sqrt(reach2);
}

struct TiePair {
    double a_N = -1.0, b_N = -1.0;
};

/// Least total tension of two ties with |push + a d + b e| = within_N: the point of the friction circle nearest in the
/// ties' own measure. Negative entries: this pair is not the answer.
inline TiePair two_ties_N(Vec3 push_N, Vec3 d, Vec3 e, double within_N) {
    const double det = d.x * e.y - d.y * e.x;
    if (std::abs(det) < 1e-9) return {};
    // total tension of the pair as a linear function of the force they make: c . force
    const Vec3 c{(e.y - d.y) / det, (d.x - e.x) / det, 0.0};
    const double size = glm::length(c);
    const Vec3 left = size > 0.0 ? (-within_N / size) * c : Vec3{0.0};
    const Vec3 f = left - push_N;
    return {(f.x * e.y - f.y * e.x) / det, (d.x * f.y - d.y * f.x) / det};
}

}  // namespace detail

/// What ties, pulling as hard as they like, leave of a push for friction to hold: its distance from what they can make together.
inline double left_to_friction_N(Vec3 push_N, const TieWays& d) {
    double least_N = glm::length(push_N);
    for (std::size_t i = 0; i < d.size(); ++i) {
        const double along_N = glm::dot(push_N, d[i]);
        if (along_N < 0.0) least_N = std::min(least_N, glm::length(push_N - along_N * d[i]));
        for (std::size_t j = i + 1; j < d.size(); ++j) {
            const detail::TiePair both = detail::two_ties_N(push_N, d[i], d[j], 0.0);
            if (both.a_N >= 0.0 && both.b_N >= 0.0) return 0.0;
        }
    }
    return least_N;
}

/// The smallest ties (least total tension) that keep a foot, pushed by `push_N` (along the ground), within the friction
/// `friction_N`: |push + sum t d| <= friction, every t >= 0. At most two ties work at the optimum of two equations.
/// `d`: unit, along the ground, the way each tie pulls.
inline FootTies smallest_foot_ties(Vec3 push_N, double friction_N, const TieWays& d) {
    FootTies out;
    for (std::size_t i = 0; i < d.size(); ++i) out.tension_N.push_back(0.0);
    out.holds = glm::length(push_N) <= friction_N;
    if (out.holds) return out;
    double best_N = HUGE_VAL;
    const auto keep = [&](std::size_t i, double a_N, std::size_t j, double b_N) {
        if (a_N < 0.0 || b_N < 0.0 || !(a_N + b_N < best_N)) return;
        best_N = a_N + b_N;
        out.holds = true;
        for (double& t_N : out.tension_N) t_N = 0.0;
        out.tension_N[i] += a_N;
        out.tension_N[j] += b_N;
    };
    for (std::size_t i = 0; i < d.size(); ++i) {
        keep(i, detail::single_tie_N(push_N, d[i], friction_N), i, 0.0);
        for (std::size_t j = i + 1; j < d.size(); ++j) {
            const detail::TiePair p = detail::two_ties_N(push_N, d[i], d[j], friction_N);
            keep(i, p.a_N, j, p.b_N);
        }
    }
    return out;
}

}  // namespace guywright
