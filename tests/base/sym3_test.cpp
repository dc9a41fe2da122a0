#include "engine/base/sym3.hpp"
#include "tests/support/random.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

double determinant(const Sym3& m) { return m.xx * (m.yy * m.zz - m.yz * m.yz) - m.xy * (m.xy * m.zz - m.yz * m.xz) + m.xz * (m.xy * m.yz - m.yy * m.xz); }

Sym3 random_sym(Random& r, double size) {
    Sym3 m;
    for (double* v : {&m.xx, &m.yy, &m.zz, &m.xy, &m.xz, &m.yz}) *v = r.between(-size, size);
    return m;
}

/// The matrix with these eigenvalues along three skewed axes that stand square on each other.
Sym3 with_eigenvalues(Vec3 a, Vec3 near_b, double la, double lb, double lc) {
    a = glm::normalize(a);
    const Vec3 c = glm::normalize(glm::cross(a, near_b)), b = glm::cross(c, a);
    Sym3 m;
    add_axial(m, a, la, 0.0);
    add_axial(m, b, lb, 0.0);
    add_axial(m, c, lc, 0.0);
    return m;
}

void check_is_eigen(const Sym3& m, const Eigen3& e, double tolerance) {
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK_WITHIN(glm::length(e.vector[i]), 1.0, 1e-14);
        CHECK_WITHIN(glm::length(m * e.vector[i] - e.value[i] * e.vector[i]), 0.0, tolerance);
        CHECK_WITHIN(glm::dot(e.vector[i], e.vector[(i + 1) % 3]), 0.0, 1e-14);
    }
    CHECK(e.value[0] <= e.value[1]);
    CHECK(e.value[1] <= e.value[2]);
}

}  // namespace

TEST_CASE("Sym3 times a vector, by hand") {
    const Sym3 m{.xx = 4, .yy = 3, .zz = 5, .xy = 1, .xz = -2, .yz = 0.5};
    CHECK_VEC_WITHIN(m * Vec3(1, 2, -3), Vec3(4 + 2 + 6, 1 + 6 - 1.5, -2 + 1 - 15), 1e-15);
}

TEST_CASE("add_axial: one stiffness along the axis, another across it") {
    Sym3 m;
    const Vec3 n = glm::normalize(Vec3(1, -2, 0.5)), across = glm::normalize(glm::cross(n, Vec3(0, 0, 1)));
    add_axial(m, n, 700.0, -30.0);
    CHECK_VEC_WITHIN(m * n, 700.0 * n, 1e-12);
    CHECK_VEC_WITHIN(m * across, -30.0 * across, 1e-12);
}

TEST_CASE("eigen: a skewed matrix keeps trace and determinant and every vector fits its value") {
    const Sym3 m{.xx = 4, .yy = 3, .zz = 5, .xy = 1, .xz = -2, .yz = 0.5};
    const Eigen3 e = eigen(m);
    CHECK_WITHIN(e.value[0] + e.value[1] + e.value[2], 12.0, 1e-13);
    CHECK_WITHIN(e.value[0] * e.value[1] * e.value[2], determinant(m), 1e-12);
    check_is_eigen(m, e, 1e-13);
}

TEST_CASE("eigen: a thousand random matrices, indefinite ones too") {
    Random r(11);
    for (int i = 0; i < 1000; ++i) {
        const Sym3 m = random_sym(r, 10.0);
        const Eigen3 e = eigen(m);
        CHECK_WITHIN(e.value[0] + e.value[1] + e.value[2], m.xx + m.yy + m.zz, 1e-12);
        CHECK_WITHIN(e.value[0] * e.value[1] * e.value[2], determinant(m), 1e-10);
        check_is_eigen(m, e, 1e-12);
        CHECK(eigenvalues(m) == e.value);
    }
}

TEST_CASE("eigen: ascending whatever the order of the axes") {
    const double values[3] = {-7.0, 2.0, 90.0};
    const int orders[6][3] = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
    for (const auto& o : orders) {
        const Vec3 a(1, 0.4, -0.3), near_b(0.2, 1, 0.7);
        const Eigen3 skew = eigen(with_eigenvalues(a, near_b, values[o[0]], values[o[1]], values[o[2]]));
        const Eigen3 straight = eigen(Sym3{.xx = values[o[0]], .yy = values[o[1]], .zz = values[o[2]]});
        for (std::size_t i = 0; i < 3; ++i) {
            CHECK_WITHIN(skew.value[i], values[i], 1e-12);
            CHECK_WITHIN(straight.value[i], values[i], 1e-15);
        }
    }
}

TEST_CASE("eigen: finds the soft direction of a stiff leg to a thousandth of a newton per metre") {
    const Vec3 leg(0.37, -0.1, 0.92), side(1, 0.2, 0.1);
    const Sym3 m = with_eigenvalues(leg, side, 3e9, 812.5, -41.25);
    const Eigen3 e = eigen(m);
    CHECK_WITHIN(e.value[0], -41.25, 1e-3);
    CHECK_WITHIN(e.value[1], 812.5, 1e-3);
    CHECK_WITHIN(std::abs(glm::dot(e.vector[2], glm::normalize(leg))), 1.0, 1e-12);
}

TEST_CASE("eigen: values near each other and far apart come to round-off of the largest") {
    Random r(17);
    for (int i = 0; i < 3000; ++i) {
        const double largest = std::pow(10.0, r.between(0.0, 9.0)), apart = std::pow(10.0, r.between(-18.0, 0.0));
        std::array<double, 3> wanted{largest, largest * (1.0 - apart), (i % 2 == 0 ? largest : 1.0) * r.between(-1.0, 1.0)};
        const std::array<double, 3> value = eigenvalues(with_eigenvalues(r.direction(), r.direction(), wanted[0], wanted[1], wanted[2]));
        std::sort(wanted.begin(), wanted.end());
        for (std::size_t k = 0; k < 3; ++k) CHECK_WITHIN(value[k], wanted[k], 3e-15 * largest);
    }
}

TEST_CASE("eigen: repeated values and the zero matrix") {
    const Eigen3 twice = eigen(with_eigenvalues({1, 2, 3}, {1, 0, 0}, 5.0, 5.0, -1.0));
    CHECK_WITHIN(twice.value[0], -1.0, 1e-14);
    CHECK_WITHIN(twice.value[1], 5.0, 1e-14);
    CHECK_WITHIN(twice.value[2], 5.0, 1e-14);
    const Eigen3 none = eigen(Sym3{});
    CHECK(none.value[0] == 0.0);
    CHECK(none.value[2] == 0.0);
    CHECK_WITHIN(glm::length(none.vector[1]), 1.0, 1e-15);
}

TEST_CASE("solve_positive: gives back a chosen answer") {
    Random r(12);
    for (int i = 0; i < 500; ++i) {
        const Sym3 m = with_eigenvalues(r.direction(), r.direction(), r.between(0.5, 5), r.between(0.5, 5), r.between(0.5, 5));
        const Vec3 wanted = r.point(3.0);
        Vec3 x{0.0};
        REQUIRE(solve_positive(m, m * wanted, x));
        CHECK_VEC_WITHIN(x, wanted, 1e-12);
    }
}

TEST_CASE("solve_positive: refuses what is not positive definite and leaves the answer alone") {
    Random r(13);
    for (int i = 0; i < 500; ++i) {
        double values[3] = {r.between(0.5, 5), r.between(0.5, 5), r.between(0.5, 5)};
        values[i % 3] *= -1.0;
        Vec3 x(1, 2, 3);
        CHECK_FALSE(solve_positive(with_eigenvalues(r.direction(), r.direction(), values[0], values[1], values[2]), {1, 1, 1}, x));
        CHECK(x == Vec3(1, 2, 3));
    }
    Vec3 x(1, 2, 3);
    CHECK_FALSE(solve_positive(Sym3{}, {1, 0, 0}, x));
    CHECK_FALSE(solve_positive(Sym3{.xx = 1, .yy = 1, .zz = 0}, {1, 0, 0}, x));
    CHECK_FALSE(solve_positive(Sym3{.xx = std::nan(""), .yy = 1, .zz = 1}, {1, 0, 0}, x));
    CHECK_FALSE(solve_positive(Sym3{.xx = 1, .yy = 1, .zz = 1, .yz = std::nan("")}, {1, 0, 0}, x));
}
