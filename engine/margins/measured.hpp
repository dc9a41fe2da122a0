#pragma once
#include "engine/plan/numbers.hpp"

#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace guywright {

/// Half-width of a measurement's error, in the unit of the plan.
inline double half_width(const Tolerances& t, ErrorKind kind, double nominal) {
    switch (kind) {
        case ErrorKind::None: return 0.0;
        case ErrorKind::Bearing: return t.bearing_deg;
        case ErrorKind::Inclination: return t.inclination_deg;
        case ErrorKind::Lean: return t.lean_deg;
        case ErrorKind::Face: return t.face_deg;
        case ErrorKind::Distance: return t.distance_m;
        case ErrorKind::Load: return std::abs(nominal) * t.load_percent / 100.0;
        case ErrorKind::Pretension: return std::abs(nominal) * t.pretension_percent / 100.0;
    }
    return 0.0;
}

/// One number of a plan that may be off, with the place in a working copy where it is varied.
struct Measured {
    std::string path;
    double* at = nullptr;
    double nominal = 0.0, half = 0.0;
    Range range;

    /// Moves it to `share` (-1 to 1) of its half-width. A bearing goes round; all else stays within what the plan may hold.
    void move_to(double share) const {
        const double v = nominal + share * half;
        *at = range.error == ErrorKind::Bearing ? v : std::clamp(v, range.min, range.max);
    }
};

/// Every measured number of `plan` with an error, pointing into it: the plan must outlive the list and keep its shape.
inline std::vector<Measured> measured_numbers(Plan& plan) {
    std::vector<Measured> numbers;
    for_each_number(plan, [&](const std::string& path, double& value, const Range& range) {
        const double half = half_width(plan.tolerances, range.error, value);
        if (half > 0.0 && path.rfind("candidate_anchors_m", 0) != 0) numbers.push_back({path, &value, value, half, range});
    });
    return numbers;
}

/// Where one measurement stands in its error.
struct ErrorShare {
    std::string path;
    double share = 0.0;  ///< of its half-width, -1 to 1
    bool operator==(const ErrorShare&) const = default;
};

/// A point of the box of errors, in the plan's order. What is left out stands as measured. By path, so that it means the same
/// in a plan that has gained a guy.
using BoxPoint = std::vector<ErrorShare>;

/// Moves every number to where `point` has it, the others back to as measured. Both in the plan's order; a path that the plan
/// does not have is passed over.
inline void move_to(std::vector<Measured>& numbers, const BoxPoint& point) {
    std::size_t first = 0;
    for (const Measured& number : numbers) {
        std::size_t at = first;
        while (at < point.size() && point[at].path != number.path) ++at;
        const bool found = at < point.size();
        number.move_to(found ? point[at].share : 0.0);
        if (found) first = at + 1;
    }
}

namespace detail {

/// More measurements than any plan can hold.
inline constexpr std::size_t k_most_axes = 256;

inline constexpr std::array<double, k_most_axes> first_primes() {
    std::array<double, k_most_axes> primes{};
    std::array<int, k_most_axes> found{};
    std::size_t count = 0;
    for (int n = 2; count < k_most_axes; ++n) {
        bool prime = true;
        for (std::size_t i = 0; i < count && found[i] * found[i] <= n; ++i) prime = prime && n % found[i] != 0;
        if (!prime) continue;
        primes[count] = n;
        found[count++] = n;
    }
    return primes;
}
inline constexpr std::array<double, k_most_axes> k_primes = first_primes();

}  // namespace detail

/// Point `index` of a low-discrepancy sequence (Richtmyer: multiples of the square roots of the primes), coordinate
/// `axis`, in -1 to 1. The same everywhere and every time.
inline double low_discrepancy(std::size_t index, std::size_t axis) {
    const double turn = static_cast<double>(index + 1) * std::sqrt(detail::k_primes[axis % detail::k_most_axes]);
    return 2.0 * (turn - std::floor(turn)) - 1.0;
}

/// The same for the points that are looked at: every other one pushed out to the corner it points to.
inline double share_of_point(std::size_t index, std::size_t axis) {
    const double share = low_discrepancy(index, axis);
    return index % 2 == 0 ? share : share < 0.0 ? -1.0 : 1.0;
}

}  // namespace guywright
