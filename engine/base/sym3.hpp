#pragma once
#include "engine/base/vec.hpp"

#include <array>

namespace guywright {

/// Symmetric 3x3 matrix, six numbers. As a stiffness: N/m in the site frame.
struct Sym3 {
    double xx = 0.0, yy = 0.0, zz = 0.0, xy = 0.0, xz = 0.0, yz = 0.0;
};

inline Vec3 operator*(const Sym3& m, Vec3 v) {
    return {m.xx * v.x + m.xy * v.y + m.xz * v.z, m.xy * v.x + m.yy * v.y + m.yz * v.z, m.xz * v.x + m.yz * v.y + m.zz * v.z};
}

/// m += across * identity + (along - across) * n n^T: a tie's own stiffness along it, force over length across it.
inline void add_axial(Sym3& m, Vec3 n, double along, double across) {
    const double d = along - across;
    m.xx += across + d * n.x * n.x;
    m.yy += across + d * n.y * n.y;
    m.zz += across + d * n.z * n.z;
    m.xy += d * n.x * n.y;
    m.xz += d * n.x * n.z;
    m.yz += d * n.y * n.z;
}

/// Solves m x = b by Cholesky. Returns false, leaving x alone, when m is not positive definite.
inline bool solve_positive(const Sym3& m, Vec3 b, Vec3& x) {
    if (!(m.xx > 0.0)) return false;
    const double ly = m.xy / m.xx, lz = m.xz / m.xx;
    const double dy = m.yy - ly * m.xy;
    if (!(dy > 0.0)) return false;
    const double rest = m.yz - lz * m.xy, lyz = rest / dy;
    const double dz = m.zz - lz * m.xz - lyz * rest;
    if (!(dz > 0.0)) return false;
    const double cy = b.y - ly * b.x;
    const double cz = b.z - lz * b.x - lyz * cy;
    x.z = cz / dz;
    x.y = cy / dy - lyz * x.z;
    x.x = b.x / m.xx - ly * x.y - lz * x.z;
    return true;
}

/// Eigenvalues ascending, with unit eigenvectors in the same order.
struct Eigen3 {
    std::array<double, 3> value{};
    std::array<Vec3, 3> vector{};
};

namespace detail {

/// How exact eigenvalues are, as a share of the trace without signs: round-off of the largest.
inline constexpr double k_round_off = 1e-17;

inline double trace_without_signs(const std::array<std::array<double, 3>, 3>& a) { return std::abs(a[0][0]) + std::abs(a[1][1]) + std::abs(a[2][2]); }

/// What is left beside the diagonal turns no vector any more.
inline bool vectors_stand(const std::array<std::array<double, 3>, 3>& a) {
    return !(std::abs(a[0][1]) + std::abs(a[0][2]) + std::abs(a[1][2]) > k_round_off * trace_without_signs(a));
}

/// What is left beside the diagonal moves no value any more: by its square over the gap between two values, far less than itself.
/// Vectors may still turn by the square root of round-off.
inline bool values_stand(const std::array<std::array<double, 3>, 3>& a) {
    const double enough = k_round_off * trace_without_signs(a);
    const auto moves = [&](std::size_t p, std::size_t q) { return a[p][q] * a[p][q] > enough * std::max(std::abs(a[q][q] - a[p][p]), enough); };
    return !(moves(0, 1) || moves(0, 2) || moves(1, 2));
}

/// Cyclic Jacobi until `stands(a)`: square roots only, so native and wasm agree to the last bit.
/// `Turn` is told of every rotation (p, q, c, s), to turn vectors along; eigenvalues alone are half the work.
template <class Stands, class Turn>
void diagonalise(std::array<std::array<double, 3>, 3>& a, Stands stands, Turn turn) {
    const auto rotate = [&](std::size_t p, std::size_t q) {
        if (a[p][q] == 0.0) return;
        const double gap = a[q][q] - a[p][p], twice = 2.0 * a[p][q];
        const double t = (gap < 0.0 ? -twice : twice) / (std::abs(gap) + std::sqrt(gap * gap + twice * twice));
        const double c = 1.0 / std::sqrt(t * t + 1.0), s = t * c;
        const std::size_t r = 3 - p - q;
        const double apq = a[p][q], arp = a[r][p], arq = a[r][q];
        a[p][p] -= t * apq;
        a[q][q] += t * apq;
        a[p][q] = a[q][p] = 0.0;
        a[r][p] = a[p][r] = c * arp - s * arq;
        a[r][q] = a[q][r] = s * arp + c * arq;
        turn(p, q, c, s);
    };
    for (int sweep = 0; sweep < 30 && !stands(a); ++sweep) {
        rotate(0, 1);
        rotate(0, 2);
        rotate(1, 2);
    }
}

inline std::array<std::array<double, 3>, 3> rows_of(const Sym3& m) { return {{{m.xx, m.xy, m.xz}, {m.xy, m.yy, m.yz}, {m.xz, m.yz, m.zz}}}; }

}  // namespace detail

/// Eigenvalues alone, ascending, exact to round-off of the largest.
inline std::array<double, 3> eigenvalues(const Sym3& m) {
    auto a = detail::rows_of(m);
    detail::diagonalise(a, detail::values_stand, [](std::size_t, std::size_t, double, double) {});
    std::array<double, 3> value{a[0][0], a[1][1], a[2][2]};
    std::sort(value.begin(), value.end());
    return value;
}

/// Eigenvalues, those of eigenvalues() to the last bit, and eigenvectors, exact to round-off of the largest value.
inline Eigen3 eigen(const Sym3& m) {
    auto a = detail::rows_of(m);
    std::array<Vec3, 3> v{Vec3{1.0, 0.0, 0.0}, Vec3{0.0, 1.0, 0.0}, Vec3{0.0, 0.0, 1.0}};
    detail::diagonalise(a, detail::vectors_stand, [&](std::size_t p, std::size_t q, double c, double s) {
        const Vec3 before = v[p];
        v[p] = c * before - s * v[q];
        v[q] = s * before + c * v[q];
    });
    std::array<std::size_t, 3> order{0, 1, 2};
    std::sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) { return a[x][x] < a[y][y]; });
    return {eigenvalues(m), {v[order[0]], v[order[1]], v[order[2]]}};
}

}  // namespace guywright
