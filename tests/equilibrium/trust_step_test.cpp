#include "engine/equilibrium/trust_step.hpp"
#include "tests/support/random.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

Sym3 matrix(Vec3 a, Vec3 near_b, double la, double lb, double lc) {
    a = glm::normalize(a);
    const Vec3 c = glm::normalize(glm::cross(a, near_b));
    Sym3 m;
    add_axial(m, a, la, 0.0);
    add_axial(m, glm::cross(c, a), lb, 0.0);
    add_axial(m, c, lc, 0.0);
    return m;
}

double model_J(const Sym3& h, Vec3 g, Vec3 s) { return glm::dot(g, s) + 0.5 * glm::dot(s, h * s); }

/// No point of the ball may lie lower: tried at the centre, along the border and inside, at random.
void check_is_minimiser(const Sym3& h, Vec3 g, double radius, Random& r) {
    const Vec3 s = trust_step(g, h, radius);
    CHECK(glm::length(s) <= radius * (1.0 + 1e-9));
    const double here_J = model_J(h, g, s);
    const double scale_J = glm::length(g) * radius + 0.5 * std::abs(eigen(h).value[2]) * radius * radius;
    for (int i = 0; i < 300; ++i) {
        const double share = i % 2 == 0 ? 1.0 : r.between(0.0, 1.0);
        CHECK(model_J(h, g, share * radius * r.direction()) >= here_J - 1e-6 * scale_J);
    }
}

/// The conditions of More and Sorensen: (H + shift I) s = -g with shift >= 0, shift >= -lowest eigenvalue, and a shift only
/// on the border.
void check_conditions(const Sym3& h, Vec3 g, double radius) {
    const Vec3 s = trust_step(g, h, radius);
    const Vec3 force = -(g + h * s);
    const double shift = glm::dot(force, s) / glm::dot(s, s);
    const double scale = glm::length(g) + std::abs(eigen(h).value[2]) * radius;
    CHECK_WITHIN(glm::length(force - shift * s), 0.0, 1e-5 * scale);
    CHECK(shift >= -1e-6 * scale / radius);
    CHECK(shift >= -eigen(h).value[0] - 1e-5 * scale / radius);
    if (shift > 1e-3 * scale / radius) CHECK_WITHIN(glm::length(s), radius, 1e-5 * radius);
}

}  // namespace

TEST_CASE("trust_step: inside the radius it is the Newton step") {
    const Sym3 h = matrix({1, 0.3, -0.2}, {0, 1, 0}, 900, 40, 7);
    const Vec3 wanted(0.01, -0.02, 0.03);
    CHECK_VEC_WITHIN(trust_step(-(h * wanted), h, 0.1), wanted, 1e-14);
}

TEST_CASE("trust_step: optimal on random problems, definite and indefinite") {
    Random r(31);
    for (int i = 0; i < 200; ++i) {
        const Sym3 h = matrix(r.direction(), r.direction(), r.between(-50, 900), r.between(-50, 50), r.between(-20, 20));
        const Vec3 g = r.point(10.0);
        const double radius = r.between(0.01, 1.0);
        check_is_minimiser(h, g, radius, r);
        check_conditions(h, g, radius);
    }
}

TEST_CASE("trust_step: too long a Newton step is cut to the radius, not beyond") {
    const Sym3 h = matrix({1, 0.3, -0.2}, {0, 1, 0}, 900, 40, 7);
    const Vec3 s = trust_step({30, -20, 50}, h, 0.1);
    CHECK_WITHIN(glm::length(s), 0.1, 1e-6);
    check_conditions(h, {30, -20, 50}, 0.1);
}

TEST_CASE("trust_step: hard case, no slope along the way down: it leaves the saddle to the border") {
    const Vec3 down = glm::normalize(Vec3(0.2, 1, -0.4)), stiff = glm::normalize(glm::cross(down, Vec3(1, 0, 0)));
    const Sym3 h = matrix(down, stiff, -5.0, 60.0, 300.0);
    for (const double slope : {0.0, 1.0}) {
        const Vec3 g = slope * stiff, s = trust_step(g, h, 0.2);
        CHECK_WITHIN(glm::length(s), 0.2, 1e-7);
        CHECK(std::abs(glm::dot(s, down)) > 0.19);
        CHECK_WITHIN(glm::dot(s, stiff), -slope / (60.0 + 5.0), 1e-4);
    }
}

TEST_CASE("trust_step: from a saddle it goes the same way every time") {
    const Sym3 h = matrix({0.2, 1, -0.4}, {1, 0, 0}, -5.0, 60.0, 300.0);
    CHECK(trust_step({0, 0, 0}, h, 0.2) == trust_step({0, 0, 0}, h, 0.2));
}

TEST_CASE("trust_step: a slope too small to tell from none never takes the step past the radius") {
    Random r(32);
    for (int i = 0; i < 200; ++i) {
        const Vec3 down = r.direction();
        const Sym3 h = matrix(down, r.direction(), -1000.0, 2e4, 3e8);
        const Vec3 g = std::pow(10.0, r.between(-9.0, 1.0)) * (down + 0.3 * r.direction());
        check_is_minimiser(h, g, 0.1, r);
    }
}

TEST_CASE("trust_step: nothing holds and nothing pulls: no step, and no NaN") {
    CHECK(trust_step({0, 0, 0}, Sym3{}, 0.2) == Vec3(0, 0, 0));
    const Vec3 free_fall = trust_step({0, 0, 34}, Sym3{}, 0.2);
    CHECK_VEC_WITHIN(free_fall, Vec3(0, 0, -0.2), 1e-6);
}
