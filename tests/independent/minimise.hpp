#pragma once
#include "tests/independent/second_energy.hpp"

#include <nlopt.h>

namespace second {

/// A minimum found by NLopt: quasi-Newton with slopes by differences, then a simplex search that sees energies only.
struct Minimum {
    Point head{};
    Real left_N = 0;  ///< out-of-balance force there
};

/// Search coordinates: z = L^T (head - start), L the Cholesky factor of the stiffness with every member at work, so that all
/// directions are about equally steep.
struct Scaled {
    const Rig& rig;
    Point start;
    Matrix lower{};
    Real start_J;

    explicit Scaled(const Rig& r) : rig(r), start(r.head), start_J(energy_J(r, r.head)) {
        Matrix k{};
        for (std::size_t i = 0; i < 3; ++i) k[i][i] = 1;
        for (const auto* members : {&r.legs, &r.guys})
            for (const Member& m : *members) {
                const Real length = distance(m.fixed, start);
                for (std::size_t i = 0; i < 3; ++i)
                    for (std::size_t j = 0; j < 3; ++j) k[i][j] += m.k_N_m * (start[i] - m.fixed[i]) * (start[j] - m.fixed[j]) / (length * length);
            }
        for (std::size_t i = 0; i < 3; ++i)
            for (std::size_t j = 0; j <= i; ++j) {
                Real sum = k[i][j];
                for (std::size_t n = 0; n < j; ++n) sum -= lower[i][n] * lower[j][n];
                lower[i][j] = i == j ? std::sqrt(sum) : sum / lower[j][j];
            }
    }
    [[nodiscard]] Point head_at(const double* z) const {
        Point u{};
        for (std::size_t n = 3; n-- > 0;) {
            Real sum = z[n];
            for (std::size_t i = n + 1; i < 3; ++i) sum -= lower[i][n] * u[i];
            u[n] = sum / lower[n][n];
        }
        return {start[0] + u[0], start[1] + u[1], start[2] + u[2]};
    }
    /// dE/dz from dE/dhead: solves L y = slope.
    [[nodiscard]] Point slope_in_z(const Point& slope) const {
        Point y{};
        for (std::size_t i = 0; i < 3; ++i) {
            Real sum = slope[i];
            for (std::size_t n = 0; n < i; ++n) sum -= lower[i][n] * y[n];
            y[i] = sum / lower[i][i];
        }
        return y;
    }
};

inline double nlopt_energy(unsigned, const double* z, double* slope, void* data) {
    const Scaled& s = *static_cast<const Scaled*>(data);
    const Point at = s.head_at(z);
    if (slope != nullptr) {
        const Point y = s.slope_in_z(slope_N(s.rig, at));
        for (std::size_t i = 0; i < 3; ++i) slope[i] = static_cast<double>(y[i]);
    }
    return static_cast<double>(energy_J(s.rig, at) - s.start_J);
}

inline void run_nlopt(nlopt_algorithm algorithm, Scaled& s, double* z, double first_step, int most) {
    nlopt_opt opt = nlopt_create(algorithm, 3);
    nlopt_set_min_objective(opt, nlopt_energy, &s);
    nlopt_set_xtol_abs1(opt, 1e-10);
    nlopt_set_maxeval(opt, most);
    if (first_step > 0.0) nlopt_set_initial_step1(opt, first_step);
    double least = 0.0;
    nlopt_optimize(opt, z, &least);
    nlopt_destroy(opt);
}

inline Minimum minimise(const Rig& rig) {
    Scaled s(rig);
    double z[3] = {0.0, 0.0, 0.0};
    run_nlopt(NLOPT_LD_LBFGS, s, z, 0.0, 2000);
    run_nlopt(NLOPT_LN_SBPLX, s, z, 1e-2, 20000);
    run_nlopt(NLOPT_LD_LBFGS, s, z, 0.0, 2000);
    Minimum m;
    m.head = s.head_at(z);
    const Point left = slope_N(rig, m.head);
    m.left_N = std::sqrt(left[0] * left[0] + left[1] * left[1] + left[2] * left[2]);
    return m;
}

/// The same, reached as a load comes on: the tensions grow in `steps` equal steps, each minimum the start of the next.
inline Minimum minimise_loading(const Rig& loaded, int steps) {
    Minimum m;
    m.head = loaded.head;
    for (int i = 0; i <= steps; ++i) {
        Rig part = loaded;
        part.head = m.head;
        for (RopeSide& s : part.sides) s.tension_N *= static_cast<Real>(i) / steps;
        m = minimise(part);
    }
    return m;
}

}  // namespace second
