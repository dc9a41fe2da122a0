#pragma once
#include "engine/base/sym3.hpp"

namespace guywright {

namespace detail {

/// Length of the step -(H + shift I)^-1 g in eigenvector coordinates.
inline double shifted_length(const Eigen3& e, const std::array<double, 3>& g, double shift) {
    double sum = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        const double s = g[i] / (e.value[i] + shift);
        sum += s * s;
    }
    return std::sqrt(sum);
}

/// The shift at which the step is just as long as the radius; bisection between bounds that always enclose it.
inline double shift_for_radius(const Eigen3& e, const std::array<double, 3>& g, double radius, double lowest) {
    double low = lowest, high = lowest + std::sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]) / radius;
    for (int i = 0; i < 60 && high - low > 1e-6 * high; ++i) {
        const double middle = 0.5 * (low + high);
        (shifted_length(e, g, middle) > radius ? low : high) = middle;
    }
    return high;
}

}  // namespace detail

/// Minimiser of g.s + s.Hs/2 over |s| <= radius, exact for an indefinite H too. From a saddle (no slope along the way
/// down) it goes along the softest direction, the same one every time.
inline Vec3 trust_step(Vec3 gradient, const Sym3& hessian, double radius) {
    Vec3 newton;
    if (solve_positive(hessian, -gradient, newton) && glm::dot(newton, newton) <= radius * radius) return newton;
    const Eigen3 e = eigen(hessian);
    const std::array<double, 3> g{glm::dot(e.vector[0], gradient), glm::dot(e.vector[1], gradient), glm::dot(e.vector[2], gradient)};
    const double largest = std::max(std::abs(e.value[0]), std::abs(e.value[2]));
    const double lowest = std::max(0.0, -e.value[0]) + 1e-12 * largest;
    const double shift = detail::shift_for_radius(e, g, radius, lowest);
    Vec3 step{0.0};
    for (std::size_t i = 0; i < 3; ++i)
        if (g[i] != 0.0) step -= (g[i] / (e.value[i] + shift)) * e.vector[i];
    const double rest = radius * radius - glm::dot(step, step);
    if (e.value[0] < 0.0 && rest > 0.0) {
        // what the step lacks of the radius goes along the softest direction, counting what it has of it already
        const double along = std::abs(glm::dot(step, e.vector[0]));
        step += (g[0] > 0.0 ? -1.0 : 1.0) * (std::sqrt(along * along + rest) - along) * e.vector[0];
    }
    return step;
}

}  // namespace guywright
