#pragma once
#include "engine/base/sym3.hpp"

namespace guywright {

namespace detail {

/// The shift at which the step -(H + shift I)^-1 g (in eigenvector coordinates) is just as long as the radius; `lowest` where
/// it is shorter even there. Newton's method on 1 / length, nearly a straight line in the shift: from below it never passes
/// the root, and four or five rounds give six digits.
inline double shift_for_radius(const std::array<double, 3>& values, const std::array<double, 3>& g, double radius, double lowest) {
    double shift = lowest;
    for (int round = 0; round < 50; ++round) {
        double square = 0.0, cube = 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            if (g[i] == 0.0) continue;
            const double stiffness = values[i] + shift, s = g[i] / stiffness;
            square += s * s;
            cube += s * s / stiffness;
        }
        const double length = std::sqrt(square);
        if (!(length > radius * (1.0 + 1e-6))) break;
        shift += (length / radius - 1.0) * square / cube;
    }
    return shift;
}

/// Just past where the softest direction stops falling; more than 0 even where nothing holds at all.
inline double lowest_shift(double softest, double stiffest, double gradient, double radius) {
    return std::max(0.0, -softest) + 1e-12 * (std::max(std::abs(softest), std::abs(stiffest)) + gradient / radius);
}

/// The step as long as the radius by eigenvalues alone, without their vectors: what nearly every step that is cut short needs.
/// False where the slope hardly leans on the softest direction and the vectors must be known.
inline bool step_without_vectors(Vec3 gradient, const Sym3& hessian, double radius, Vec3& step) {
    auto a = rows_of(hessian);
    std::array<double, 3> g{gradient.x, gradient.y, gradient.z};
    diagonalise(a, values_stand, [&](std::size_t p, std::size_t q, double c, double s) {
        const double before = g[p];
        g[p] = c * before - s * g[q];
        g[q] = s * before + c * g[q];
    });
    const std::array<double, 3> values{a[0][0], a[1][1], a[2][2]};
    const auto [softest, stiffest] = std::minmax_element(values.begin(), values.end());
    const double lowest = lowest_shift(*softest, *stiffest, glm::length(gradient), radius);
    const double shift = shift_for_radius(values, g, radius, lowest);
    Sym3 shifted = hessian;
    shifted.xx += shift;
    shifted.yy += shift;
    shifted.zz += shift;
    if (!solve_positive(shifted, -gradient, step)) return false;
    const double length = glm::length(step);
    if (!(std::abs(length - radius) <= 1e-4 * radius)) return false;
    step *= radius / length;
    return true;
}

}  // namespace detail

/// Minimiser of g.s + s.Hs/2 over |s| <= radius, exact for an indefinite H too. From a saddle (no slope along the way
/// down) it goes along the softest direction, the same one every time.
inline Vec3 trust_step(Vec3 gradient, const Sym3& hessian, double radius) {
    Vec3 newton;
    if (solve_positive(hessian, -gradient, newton) && glm::dot(newton, newton) <= radius * radius) return newton;
    if (detail::step_without_vectors(gradient, hessian, radius, newton)) return newton;
    const Eigen3 e = eigen(hessian);
    const std::array<double, 3> g{glm::dot(e.vector[0], gradient), glm::dot(e.vector[1], gradient), glm::dot(e.vector[2], gradient)};
    const double lowest = detail::lowest_shift(e.value[0], e.value[2], glm::length(gradient), radius);
    const double shift = detail::shift_for_radius(e.value, g, radius, lowest);
    Vec3 step{0.0};
    for (std::size_t i = 0; i < 3; ++i)
        if (g[i] != 0.0) step -= (g[i] / (e.value[i] + shift)) * e.vector[i];
    const double length = glm::length(step);
    if (length > radius) return (radius / length) * step;
    const double rest = radius * radius - length * length;
    if (e.value[0] < 0.0 && rest > 0.0) {
        // what the step lacks of the radius goes along the softest direction, counting what it has of it already
        const double along = std::abs(glm::dot(step, e.vector[0]));
        step += (g[0] > 0.0 ? -1.0 : 1.0) * (std::sqrt(along * along + rest) - along) * e.vector[0];
    }
    return step;
}

}  // namespace guywright
