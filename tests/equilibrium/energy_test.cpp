#include "engine/equilibrium/energy.hpp"
#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

constexpr double k_step_m = 1e-5;

/// Central differences of the energy against the gradient, and of the gradient against every entry of the Hessian.
void check_derivatives(const Model& m, const Pulls& pulls, Vec3 at) {
    const Local here = local_at(m, pulls, at);
    const Vec3 columns[3] = {here.hessian_N_m * Vec3(1, 0, 0), here.hessian_N_m * Vec3(0, 1, 0), here.hessian_N_m * Vec3(0, 0, 1)};
    for (int axis = 0; axis < 3; ++axis) {
        CAPTURE(axis);
        Vec3 step{0.0};
        step[axis] = k_step_m;
        const Local plus = local_at(m, pulls, at + step), minus = local_at(m, pulls, at - step);
        CHECK_WITHIN(here.gradient_N[axis], (plus.energy_J - minus.energy_J) / (2 * k_step_m), 1e-3);
        CHECK_VEC_WITHIN(columns[axis], (plus.gradient_N - minus.gradient_N) / (2 * k_step_m), 1e-2);
    }
}

Model one_guy(Vec3 anchor_m, double rest_m) {
    Model m;
    m.guys.push_back({anchor_m, rest_m, 21e3});
    return m;
}

Model one_leg(Vec3 foot_m, double rest_m, bool held_down) {
    Model m;
    m.legs.push_back({foot_m, rest_m, 37e3, 0.0, held_down});
    return m;
}

}  // namespace

TEST_CASE("energy of a stretched guy: derivatives at random points") {
    Random r(21);
    for (int i = 0; i < 50; ++i) {
        const Vec3 head_m = r.point(3.0), anchor_m = r.point(3.0);
        const double length_m = glm::length(head_m - anchor_m);
        if (length_m < 0.5) continue;
        const Model m = one_guy(anchor_m, length_m * r.between(0.7, 0.98));
        CHECK(local_at(m, {}, head_m).energy_J > 0.0);
        check_derivatives(m, {}, head_m);
    }
}

TEST_CASE("energy of a guy by hand: half k times stretch squared, pulling toward the anchor") {
    const Local here = local_at(one_guy({0, 0, 0}, 4.9), {}, {3, 0, 4});
    CHECK_WITHIN(here.energy_J, 0.5 * 21e3 * 0.1 * 0.1, 1e-9);
    CHECK_VEC_WITHIN(here.gradient_N, 2100.0 * Vec3(0.6, 0, 0.8), 1e-9);
}

TEST_CASE("a loose guy has no energy, no force and no stiffness") {
    const Local here = local_at(one_guy({0, 0, 0}, 5.0001), {}, {3, 0, 4});
    CHECK(here.energy_J == 0.0);
    CHECK(here.gradient_N == Vec3(0.0));
    CHECK(here.hessian_N_m.xx == 0.0);
    CHECK(here.hessian_N_m.zz == 0.0);
}

TEST_CASE("energy of a pressed leg: derivatives at random points, softening across the leg") {
    Random r(22);
    for (int i = 0; i < 50; ++i) {
        const Vec3 head_m = r.point(3.0), foot_m = r.point(3.0);
        const double length_m = glm::length(head_m - foot_m);
        if (length_m < 0.5) continue;
        const Model m = one_leg(foot_m, length_m * r.between(1.02, 1.3), r.chance(0.5));
        check_derivatives(m, {}, head_m);
        CHECK(eigen(local_at(m, {}, head_m).hessian_N_m).value[0] < 0.0);
    }
}

TEST_CASE("a leg that has lifted does nothing; one held down pulls back") {
    Random r(23);
    for (int i = 0; i < 50; ++i) {
        const Vec3 head_m = r.point(3.0), foot_m = r.point(3.0);
        const double length_m = glm::length(head_m - foot_m);
        if (length_m < 0.5) continue;
        const double rest_m = length_m * r.between(0.7, 0.98);
        const Local lifted = local_at(one_leg(foot_m, rest_m, false), {}, head_m);
        CHECK(lifted.energy_J == 0.0);
        CHECK(lifted.gradient_N == Vec3(0.0));
        const Model held = one_leg(foot_m, rest_m, true);
        CHECK(glm::dot(local_at(held, {}, head_m).gradient_N, head_m - foot_m) > 0.0);
        check_derivatives(held, {}, head_m);
    }
}

TEST_CASE("energy of a rope toward a point and of a free hang: derivatives at random points") {
    Random r(24);
    for (int i = 0; i < 50; ++i) {
        const Vec3 head_m = r.point(3.0), at_m = r.point(3.0);
        if (glm::length(head_m - at_m) < 0.5) continue;
        Pulls point, hang;
        point.push_back(support::toward(at_m, r.between(100, 5000)));
        hang.push_back(support::force(r.between(100, 5000) * r.direction()));
        check_derivatives({}, point, head_m);
        check_derivatives({}, hang, head_m);
    }
}

TEST_CASE("a rope toward a point pulls the head with its tension; a free hang pulls the way the load falls") {
    Pulls pulls;
    pulls.push_back(support::toward({3, 0, -4}, 500.0));
    CHECK_VEC_WITHIN(local_at({}, pulls, {0, 0, 0}).gradient_N, Vec3(-300, 0, 400), 1e-10);
    CHECK_WITHIN(local_at({}, pulls, {0, 0, 0}).energy_J, 2500.0, 1e-9);
    pulls.clear();
    pulls.push_back(support::force({0, 0, -700}));
    CHECK_VEC_WITHIN(local_at({}, pulls, {1, 2, 3}).gradient_N, Vec3(0, 0, 700), 1e-10);
    CHECK_WITHIN(local_at({}, pulls, {1, 2, 3}).energy_J, 2100.0, 1e-9);
}

TEST_CASE("own weight: energy grows with height, the force is down, no stiffness") {
    Model m;
    m.head_weight_N = 34.0;
    const Local here = local_at(m, {}, {1, 2, 2.5});
    CHECK_WITHIN(here.energy_J, 85.0, 1e-12);
    CHECK_VEC_WITHIN(here.gradient_N, Vec3(0, 0, 34), 1e-12);
    check_derivatives(m, {}, {1, 2, 2.5});
}

TEST_CASE("the whole head: derivatives of the sum, and the sum is the sum of its parts") {
    Random r(25);
    for (int i = 0; i < 50; ++i) {
        const Model m = support::skewed_model(i % 2 == 0);
        Pulls pulls;
        pulls.push_back(support::toward({0.0, 0.4, 0.0}, 2000.0));
        pulls.push_back(support::toward({-8.0, -0.3, 0.6}, 2200.0));
        pulls.push_back(support::force({300, -100, -900}));
        const Vec3 at = m.drawn_head_m + r.point(0.15);
        check_derivatives(m, pulls, at);
        Vec3 parts{0.0};
        for (const Guy& g : m.guys) {
            Model one;
            one.guys.push_back(g);
            parts += local_at(one, {}, at).gradient_N;
        }
        Model legs = m;
        legs.guys.clear();
        parts += local_at(legs, pulls, at).gradient_N;
        CHECK_VEC_WITHIN(local_at(m, pulls, at).gradient_N, parts, 1e-8);
    }
}

TEST_CASE("a head on top of an anchor or of a rope's point has no direction to pull: no force, no NaN") {
    Pulls pulls;
    pulls.push_back(support::toward({1, 1, 1}, 500.0));
    const Local here = local_at(one_guy({1, 1, 1}, 0.0), pulls, {1, 1, 1});
    CHECK(here.energy_J == 0.0);
    CHECK(here.gradient_N == Vec3(0.0));
}
