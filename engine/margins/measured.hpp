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

/// Point `index` of a low-discrepancy sequence (Richtmyer: multiples of the square roots of the primes), coordinate
/// `axis`, in -1 to 1. The same everywhere and every time.
inline double low_discrepancy(std::size_t index, std::size_t axis) {
    static constexpr std::array<double, 60> primes{2,   3,   5,   7,   11,  13,  17,  19,  23,  29,  31,  37,  41,  43,  47,  53,  59,  61,  67,  71,
                                                   73,  79,  83,  89,  97,  101, 103, 107, 109, 113, 127, 131, 137, 139, 149, 151, 157, 163, 167, 173,
                                                   179, 181, 191, 193, 197, 199, 211, 223, 227, 229, 233, 239, 241, 251, 257, 263, 269, 271, 277, 281};
    const double lap = axis >= primes.size() ? 1.0 + static_cast<double>(axis / primes.size()) : 1.0;
    const double turn = static_cast<double>(index + 1) * std::sqrt(primes[axis % primes.size()] * lap * (lap + 1.0) / 2.0);
    return 2.0 * (turn - std::floor(turn)) - 1.0;
}

}  // namespace guywright
