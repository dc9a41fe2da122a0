#include "engine/equilibrium/turn_about_feet.hpp"
#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

/// How far the legs' lengths at `there_m` are from what the step asked of them.
double worst_miss_m(const Model& m, Vec3 head_m, Vec3 step_m, Vec3 there_m) {
    double worst = 0.0;
    for (const Leg& leg : m.legs) {
        const Vec3 span_m = head_m - leg.foot_m;
        const double wanted_m = glm::length(span_m) + glm::dot(glm::normalize(span_m), step_m);
        worst = std::max(worst, std::abs(glm::length(there_m - leg.foot_m) - wanted_m));
    }
    return worst;
}

Model standing(int legs) {
    Model m = support::model_with_head({0.2, -0.1, 2.4});
    const Vec3 feet[3] = {{-1.0, 0.3, 0.0}, {0.8, -1.1, 0.2}, {0.7, 1.2, -0.1}};
    for (int i = 0; i < legs; ++i) support::add_leg_carrying(m, feet[i], 1000.0, 5e6);
    return m;
}

}  // namespace

TEST_CASE("turn_about_feet: one leg keeps the length the step asked for, exactly") {
    Random r(51);
    const Model m = standing(1);
    for (int i = 0; i < 100; ++i) {
        const Vec3 step_m = r.point(0.3);
        CHECK_WITHIN(worst_miss_m(m, m.drawn_head_m, step_m, turn_about_feet(m, m.drawn_head_m, step_m)), 0.0, 1e-14);
    }
}

TEST_CASE("turn_about_feet: with two legs and with three what is missed is a hundredth of what the tangent misses") {
    Random r(52);
    for (const int legs : {2, 3}) {
        const Model m = standing(legs);
        for (int i = 0; i < 100; ++i) {
            const Vec3 step_m = 0.05 * r.direction(), there_m = turn_about_feet(m, m.drawn_head_m, step_m);
            CHECK(worst_miss_m(m, m.drawn_head_m, step_m, there_m) <= 0.01 * worst_miss_m(m, m.drawn_head_m, step_m, m.drawn_head_m + step_m) + 1e-12);
        }
    }
}

TEST_CASE("turn_about_feet: differs from the step only by a second-order bend") {
    const Model m = standing(1);
    for (const double size_m : {1e-1, 1e-2, 1e-3}) {
        const Vec3 step_m = size_m * glm::normalize(Vec3(0.3, 1, 0.1));
        const double bend_m = glm::length(turn_about_feet(m, m.drawn_head_m, step_m) - m.drawn_head_m - step_m);
        CHECK(bend_m < 0.3 * size_m * size_m);
        CHECK(bend_m > 0.05 * size_m * size_m);
    }
}

TEST_CASE("turn_about_feet: legs in one line, or none, leave the step as it is") {
    Model m = standing(1);
    m.legs.push_back(m.legs[0]);
    CHECK(turn_about_feet(m, m.drawn_head_m, {0.1, 0.2, 0.0}) == m.drawn_head_m + Vec3(0.1, 0.2, 0.0));
    m.legs.clear();
    CHECK(turn_about_feet(m, m.drawn_head_m, {0.1, 0.2, 0.0}) == m.drawn_head_m + Vec3(0.1, 0.2, 0.0));
}
