#include "engine/cases/build_cases.hpp"
#include "engine/cases/outcome.hpp"
#include "engine/model/build_model.hpp"
#include "tests/support/models.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

Model built(const Plan& p) {
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.empty());
    return b.model;
}

Outcome solved(const Model& m, const Plan& p, CaseId id) {
    for (const Case& c : build_cases(m, p.actions))
        if (c.id == id) {
            Outcome o = solve_case(m, c, m.drawn_head_m);
            read_angles(m, o);
            return o;
        }
    FAIL("no such case");
    return {};
}

Plan skewed_plan() {
    Plan p = support::usual_plan();
    p.frame.legs[0].foot_m = {-2.1, 0.2, 0.1};
    p.frame.lean_bearing_deg = 8.0;
    p.guys[1].bearing_deg = 70.0;
    p.guys[1].pretension_kN = 0.5;
    p.ropes[0].swing_deg = 4.0;
    p.ropes[0].haul = Haul{170.0, 6.0, 0.3};
    return p;
}

}  // namespace

TEST_CASE("pull_force_N: toward the point with the tension, or along the fall") {
    CHECK_VEC_WITHIN(pull_force_N(support::toward({3, 0, -4}, 500.0), {0, 0, 0}), Vec3(300, 0, -400), 1e-12);
    CHECK_VEC_WITHIN(pull_force_N(support::force({10, 20, -70}), {5, 5, 5}), Vec3(10, 20, -70), 1e-12);
    CHECK(pull_force_N(support::toward({1, 1, 1}, 500.0), {1, 1, 1}) == Vec3(0, 0, 0));
}

TEST_CASE("outcome: the whole rig is in balance - feet, anchors, ropes and weight add up to nothing") {
    const Plan p = skewed_plan();
    const Model m = built(p);
    for (const Case& c : build_cases(m, p.actions)) {
        CAPTURE(static_cast<int>(c.id));
        const Outcome o = solve_case(m, c, m.drawn_head_m);
        REQUIRE(o.stable);
        Vec3 sum_N = o.foot_reaction_N[0] + o.resultant_N - Vec3(0, 0, m.legs[0].weight_N);
        for (std::size_t i = 0; i < m.guys.size(); ++i) sum_N += o.equilibrium.guy_tension_N[i] * glm::normalize(m.guys[i].anchor_m - o.equilibrium.head_m);
        CHECK_VEC_WITHIN(sum_N, Vec3(0, 0, 0), 1e-4);
    }
}

TEST_CASE("outcome: moments about the foot vanish too, but for the leg's weight, which acts half at the head") {
    const Plan p = skewed_plan();
    const Model m = built(p);
    const Outcome o = solved(m, p, CaseId::Holding);
    REQUIRE(o.stable);
    const Vec3 arm_m = o.equilibrium.head_m - m.legs[0].foot_m;
    Vec3 at_head_N = o.resultant_N - Vec3(0, 0, m.head_weight_N);
    for (std::size_t i = 0; i < m.guys.size(); ++i) at_head_N += o.equilibrium.guy_tension_N[i] * glm::normalize(m.guys[i].anchor_m - o.equilibrium.head_m);
    CHECK_VEC_WITHIN(glm::cross(arm_m, at_head_N), Vec3(0, 0, 0), 1e-3);
}

TEST_CASE("outcome: resultant, its angle to the leg and the pulley's load are those of both rope sides") {
    const Plan p = skewed_plan();
    const Model m = built(p);
    const Outcome o = solved(m, p, CaseId::Raising);
    REQUIRE(o.stable);
    const Vec3 head_m = o.equilibrium.head_m;
    const RopeState& r = o.setup.ropes[0];
    const Vec3 both_N = r.head_side_N * glm::normalize(r.path.edge_point_m - head_m) + r.haul_side_N * glm::normalize(m.ropes[0].haul_m - head_m);
    CHECK_VEC_WITHIN(o.resultant_N, both_N, 1e-8);
    CHECK_WITHIN(o.pulley_N[0], glm::length(both_N), 1e-8);
    const Vec3 leg = glm::normalize(m.legs[0].foot_m - head_m);
    CHECK_WITHIN(o.applied_force_angle_rad, std::acos(glm::dot(leg, glm::normalize(both_N))), 1e-9);
    for (std::size_t i = 0; i < 3; ++i) CHECK_WITHIN(o.guy_angle_rad[i], std::acos(glm::dot(leg, glm::normalize(m.guys[i].anchor_m - head_m))), 1e-9);
    CHECK_WITHIN(o.head_shift_m, glm::length(head_m - m.drawn_head_m), 1e-15);
}

TEST_CASE("outcome: as rigged there is no resultant, no angle and no load on a pulley") {
    const Plan p = skewed_plan();
    const Outcome o = solved(built(p), p, CaseId::Rigged);
    REQUIRE(o.stable);
    CHECK(o.resultant_N == Vec3(0, 0, 0));
    CHECK(o.applied_force_angle_rad == 0.0);
    CHECK(o.pulley_N[0] == 0.0);
}

TEST_CASE("outcome: two ropes - each pulley its own load, the resultant their sum") {
    Plan p = skewed_plan();
    p.ropes.push_back(p.ropes[0]);
    p.ropes[1].name = "second";
    p.ropes[0].share = p.ropes[1].share = 0.5;
    p.ropes[1].haul.reset();
    p.ropes[1].swing_deg = -6.0;
    const Model m = built(p);
    const Outcome o = solved(m, p, CaseId::Holding);
    REQUIRE(o.stable);
    CHECK_WITHIN(o.pulley_N[1], 100.0 * 9.80665, 1e-8);  // tied off: the one side
    Vec3 sum_N{0.0};
    for (const Pull& pull : o.setup.pulls) sum_N += pull_force_N(pull, o.equilibrium.head_m);
    CHECK_VEC_WITHIN(o.resultant_N, sum_N, 1e-9);
    CHECK(o.pulley_N[0] > o.pulley_N[1]);
}

TEST_CASE("outcome: without an answer nothing is read off") {
    Plan p = skewed_plan();
    p.guys.clear();
    const Outcome o = solved(built(p), p, CaseId::Holding);
    CHECK_FALSE(o.stable);
    CHECK(o.equilibrium.status != SolveStatus::Solved);
    CHECK(o.guy_angle_rad.empty());
    CHECK(o.foot_reaction_N.empty());
    CHECK(o.pulley_N.empty());
}
