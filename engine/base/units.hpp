#pragma once

namespace guywright {

/// Standard gravity, m/s^2, exact (NIST SP 811, appendix B; MEMORY).
inline constexpr double k_gravity = 9.80665;
inline constexpr double k_newton_per_kN = 1000.0;

inline constexpr double newtons(double kN) { return kN * k_newton_per_kN; }
inline constexpr double kilonewtons(double N) { return N / k_newton_per_kN; }

}  // namespace guywright
