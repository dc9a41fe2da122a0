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

struct Jacobi {
    std::array<std::array<double, 3>, 3> a{};
    std::array<std::array<double, 3>, 3> v{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};

    void rotate(std::size_t p, std::size_t q) {
        if (a[p][q] == 0.0) return;
        const double theta = (a[q][q] - a[p][p]) / (2.0 * a[p][q]);
        const double t = (theta >= 0.0 ? 1.0 : -1.0) / (std::abs(theta) + std::sqrt(theta * theta + 1.0));
        const double c = 1.0 / std::sqrt(t * t + 1.0), s = t * c;
        const std::size_t r = 3 - p - q;
        const double apq = a[p][q], arp = a[r][p], arq = a[r][q];
        a[p][p] -= t * apq;
        a[q][q] += t * apq;
        a[p][q] = a[q][p] = 0.0;
        a[r][p] = a[p][r] = c * arp - s * arq;
        a[r][q] = a[q][r] = s * arp + c * arq;
        for (auto& row : v) {
            const double vp = row[p], vq = row[q];
            row[p] = c * vp - s * vq;
            row[q] = s * vp + c * vq;
        }
    }
    [[nodiscard]] double off_diagonal() const { return std::abs(a[0][1]) + std::abs(a[0][2]) + std::abs(a[1][2]); }
};

}  // namespace detail

/// Cyclic Jacobi: square roots only, so native and wasm agree to the last bit, and exact to round-off of the largest value.
inline Eigen3 eigen(const Sym3& m) {
    detail::Jacobi j{.a = {{{m.xx, m.xy, m.xz}, {m.xy, m.yy, m.yz}, {m.xz, m.yz, m.zz}}}};
    const double scale = std::abs(m.xx) + std::abs(m.yy) + std::abs(m.zz);
    for (int sweep = 0; sweep < 30 && j.off_diagonal() > 1e-17 * scale; ++sweep) {
        j.rotate(0, 1);
        j.rotate(0, 2);
        j.rotate(1, 2);
    }
    std::array<std::size_t, 3> order{0, 1, 2};
    std::sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) { return j.a[x][x] < j.a[y][y]; });
    Eigen3 out;
    for (std::size_t i = 0; i < 3; ++i) {
        const std::size_t k = order[i];
        out.value[i] = j.a[k][k];
        out.vector[i] = {j.v[0][k], j.v[1][k], j.v[2][k]};
    }
    return out;
}

}  // namespace guywright
