#pragma once
#include "engine/base/bounded.hpp"
#include "engine/base/vec.hpp"
#include "engine/plan/plan.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace guywright {

/// What the hobbles carry, and what is left for each foot to hold by itself.
struct HobbleForces {
    Bounded<double, k_max_hobbles> tension_N;
    Bounded<Vec3, k_max_legs> push_N;  ///< along the ground
};

namespace detail {

/// The part of a push that friction does not hold.
inline Vec3 beyond_friction_N(Vec3 push_N, double friction_N) {
    const double size_N = glm::length(push_N);
    return size_N > friction_N ? (1.0 - friction_N / size_N) * push_N : Vec3{0.0};
}

}  // namespace detail

/// Small hobble tensions that bring every foot within friction, as nearly as hobbles can: the squared rest beyond friction
/// is minimised over tensions >= 0 by projected gradient from zero, so it stops where the last foot comes to hold. All hobbles
/// move at once, so that their order does not matter. Deterministic; allocates nothing.
inline HobbleForces share_by_hobbles(const Bounded<Vec3, k_max_legs>& push_N, const Bounded<double, k_max_legs>& friction_N,
                                     const Bounded<Vec3, k_max_legs>& foot_m, const std::vector<Hobble>& hobbles) {
    // 1 over the largest curvature there can be: all hobbles side by side between two feet
    const double step = hobbles.empty() ? 0.0 : 0.5 / static_cast<double>(hobbles.size());
    constexpr double friction_used = 0.999;  // so that what is left is inside friction, not on it
    constexpr double friction_enough = 0.9995;
    constexpr int most_rounds = 400;
    constexpr double stands_still = 1e-13;  // of the largest push: what is left to come is then rounding, too
    HobbleForces out{{}, push_N};
    double largest_N = 0.0;
    for (const Vec3& push : push_N) largest_N = std::max(largest_N, glm::length(push));
    Bounded<Vec3, k_max_hobbles> along;  // from the hobble's first foot to its second
    for (const Hobble& h : hobbles) {
        const Vec3 d = foot_m[static_cast<std::size_t>(h.to)] - foot_m[static_cast<std::size_t>(h.from)];
        const double length_m = std::hypot(d.x, d.y);
        along.push_back(length_m > 0.0 ? Vec3{d.x / length_m, d.y / length_m, 0.0} : Vec3{0.0});
        out.tension_N.push_back(0.0);
    }
    for (int round = 0; round < most_rounds; ++round) {
        bool hold = true;  // the target is approached ever more slowly: half way from it to the whole friction will do
        for (std::size_t i = 0; i < push_N.size(); ++i) hold = hold && glm::length(out.push_N[i]) <= friction_enough * friction_N[i];
        if (hold) break;
        const Bounded<Vec3, k_max_legs> before_N = out.push_N;
        double moved_N = 0.0;
        for (std::size_t j = 0; j < along.size(); ++j) {
            const auto from = static_cast<std::size_t>(hobbles[j].from), to = static_cast<std::size_t>(hobbles[j].to);
            const Vec3 beyond = detail::beyond_friction_N(before_N[from], friction_used * friction_N[from]) -
                                detail::beyond_friction_N(before_N[to], friction_used * friction_N[to]);
            const double change_N = std::max(-out.tension_N[j], -step * glm::dot(beyond, along[j]));
            out.tension_N[j] += change_N;
            out.push_N[from] += change_N * along[j];
            out.push_N[to] -= change_N * along[j];
            moved_N = std::max(moved_N, std::abs(change_N));
        }
        if (moved_N <= stands_still * largest_N) break;  // feet that no hobble can hold
    }
    return out;
}

namespace detail {

/// What foot `i` pushes that its hobbles surely do not take: all of it where it has none, the part across a single one, and of more than
/// one nothing can be told.
inline std::optional<double> not_hobbled_N(std::size_t i, Vec3 push_N, const Bounded<Vec3, k_max_legs>& foot_m, const std::vector<Hobble>& hobbles) {
    const Hobble* only = nullptr;
    for (const Hobble& h : hobbles) {
        if (static_cast<std::size_t>(h.from) != i && static_cast<std::size_t>(h.to) != i) continue;
        if (only != nullptr) return std::nullopt;
        only = &h;
    }
    if (only == nullptr) return glm::length(push_N);
    const Vec3 d = foot_m[static_cast<std::size_t>(only->to)] - foot_m[static_cast<std::size_t>(only->from)];
    const double length_m = std::hypot(d.x, d.y);
    if (!(length_m > 0.0)) return std::nullopt;
    return std::abs(push_N.x * d.y - push_N.y * d.x) / length_m;
}

}  // namespace detail

/// Share of the friction that is still free, as far as that can be told without the hobbles' forces: they only pass force from foot
/// to foot, so the friction of all feet has to hold what all push together, and that of a foot with one hobble what it pushes
/// across it. What is really free may be less; below 0 no hobble can hold the feet.
inline double hobbled_friction_spare(const Bounded<Vec3, k_max_legs>& push_N, const Bounded<double, k_max_legs>& friction_N,
                                     const Bounded<Vec3, k_max_legs>& foot_m, const std::vector<Hobble>& hobbles) {
    Vec3 sum_N{0.0};
    double friction_sum_N = 0.0;
    for (std::size_t i = 0; i < push_N.size(); ++i) {
        sum_N += push_N[i];
        friction_sum_N += friction_N[i];
    }
    const auto spare = [](double needed_N, double there_N) { return there_N > 0.0 ? 1.0 - needed_N / there_N : needed_N > 0.0 ? -1.0 : 1.0; };
    double least = spare(glm::length(sum_N), friction_sum_N);
    for (std::size_t i = 0; i < push_N.size(); ++i)
        if (const auto needed_N = detail::not_hobbled_N(i, push_N[i], foot_m, hobbles)) least = std::min(least, spare(*needed_N, friction_N[i]));
    return least;
}

}  // namespace guywright
