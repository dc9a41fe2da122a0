#include "engine/advice/hand_pull.hpp"
#include "engine/cases/build_cases.hpp"
#include "engine/cases/outcome.hpp"
#include "engine/model/geometry.hpp"
#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

// e^(mu b): identity, COMPUTED.
TEST_CASE("published: capstan factors at friction 0.3") {
    for (const auto& [deg, factor] : {std::pair{30.0, 1.1701}, {45.0, 1.2657}, {90.0, 1.6020}, {180.0, 2.5663}})
        CHECK_WITHIN(edge_factor(0.3, radians(deg)), factor, 0.00005);
    CHECK(edge_factor(0.3, 0.0) == 1.0);
    CHECK(edge_factor(0.0, 3.0) == 1.0);
}

// Baker & Haynes, Engineering Statics: Open and Interactive, ch. 9, rope friction, READ (printed 0.15 lb).
TEST_CASE("published: 100 lb held through four and a half turns, friction 0.23") {
    const double held_lb = 100.0 / edge_factor(0.23, 4.5 * 2.0 * k_pi);
    CHECK_WITHIN(held_lb, 0.149879, 5e-7);
    CHECK_WITHIN(held_lb, 0.15, 0.005);
}

// 2 cos(theta / 2), theta between the two sides: rigging tables print it (identity, COMPUTED; mind which angle a table means).
TEST_CASE("published: load on a redirect pulley by the angle between the rope's sides") {
    for (const auto& [deg, factor] : {std::pair{0.0, 2.0}, {60.0, 1.7320508}, {90.0, 1.4142136}, {120.0, 1.0}, {150.0, 0.5176381}, {180.0, 0.0}}) {
        Model m = support::model_with_head({0, 0, 3});
        support::add_leg_carrying(m, {0, 0, 0}, 0.0, 1e11);
        for (int i = 0; i < 3; ++i) support::add_guy_carrying(m, {4 * std::cos(2.1 * i), 4 * std::sin(2.1 * i), 0}, 1.0, 1e11);
        Rope rope;
        rope.has_haul = true;
        m.ropes.push_back(rope);
        Case c;
        c.ropes.push_back({.loaded = true, .path = {}, .head_side_N = 1000.0, .haul_side_N = 1000.0});
        const double half = radians(deg) / 2.0;
        c.pulls.push_back({1000.0, false, {std::sin(half), 0, -std::cos(half)}});
        c.pulls.push_back(support::toward(m.drawn_head_m + 1e3 * Vec3(-std::sin(half), 0, -std::cos(half)), 1000.0));
        const Outcome o = solve_case(m, c, m.drawn_head_m);
        REQUIRE(o.equilibrium.status == SolveStatus::Solved);
        CHECK_WITHIN(o.pulley_N[0] / 1000.0, factor, 1e-6);
    }
}

// "Guy anchors at twice the pole's height from its foot": US Army FM 5-125, MEMORY; "at least double", British Manual of
// Military Engineering arts. 281-282, READ. As an inclination it is 26.6 degrees.
TEST_CASE("published: anchors at twice the height lie at 26.6 degrees") {
    const Vec3 at = anchor_from_head({0, 0, 5}, 0.0, std::atan(0.5), 0.0);
    CHECK_WITHIN(at.x, 10.0, 1e-12);
    CHECK_WITHIN(anchor_from_head({0, 0, 5}, 0.0, radians(26.6), 0.0).x, 10.0, 0.02);
}

// Tackle friction, a tenth of the load for each sheave, divided by the parts: US Navy and Army rigging manuals, MEMORY.
TEST_CASE("published: a tackle of three sheaves and three parts lifts 500 lb with 216.667 lb") {
    CHECK_WITHIN(tackle_pull(500.0, 3, 3), 216.667, 0.0005);
    CHECK_WITHIN(tackle_pull(500.0, 3, 3), 650.0 / 3.0, 1e-12);
    CHECK(hand_pull_N(500.0, 3) == tackle_pull(500.0, 3, 3));
}
