#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/rig.hpp"

using namespace guywright;
using namespace guywright::scene;

TEST_CASE("rig: forces and head of the case that is shown") {
    const Plan plan = support::usual_plan();
    const Evaluation e = evaluate(plan);
    const Rig rig = rig_of(plan, e, k_holding);
    REQUIRE(rig.has_forces);
    REQUIRE(rig.guys.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(rig.guys[i].name == plan.guys[i].name);
        CHECK(rig.guys[i].anchor_m == e.model.guys[i].anchor_m);
        CHECK(rig.guys[i].tension_N == e.outcomes[k_holding].equilibrium.guy_tension_N[i]);
    }
    CHECK(glm::length(rig.head_m - e.outcomes[k_holding].equilibrium.head_m) < 1e-12);
    CHECK(rig.drawn_head_m == e.model.drawn_head_m);
    CHECK(rig.resultant_N == e.outcomes[k_holding].resultant_N);
    for (const Outcome& o : e.outcomes) CHECK(glm::length(o.resultant_N) <= rig.largest_resultant_N);
    CHECK(rig.ropes[0].pulls);
    CHECK_FALSE(rig_of(plan, e, k_rigged).ropes[0].pulls);
}

TEST_CASE("rig: no such case, or one without an answer: the geometry as drawn and no force") {
    const Plan plan = support::usual_plan();
    Evaluation e = evaluate(plan);
    const Rig beyond = rig_of(plan, e, 99);
    e.outcomes[k_holding].equilibrium.status = SolveStatus::MaxIterations;
    const Rig unsolved = rig_of(plan, e, k_holding), no_answer = rig_of(plan, Evaluation{}, k_holding);
    for (const Rig& rig : {beyond, unsolved, no_answer}) {
        REQUIRE(rig.has_head);
        CHECK_FALSE(rig.has_forces);
        CHECK(rig.head_m == e.model.drawn_head_m);
        CHECK(rig.guys.size() == 3);
        CHECK_FALSE(rig.guys[0].has_tension);
        CHECK_FALSE(rig.ropes[0].pulls);
        CHECK(glm::length(rig.guys[1].anchor_m - e.model.guys[1].anchor_m) < 1e-12);
    }
}

TEST_CASE("rig: the load hangs along its pull from the head or the edge, above the rock") {
    for (const double face_deg : {30.0, 60.0, 90.0, 110.0}) {
        Plan plan = support::usual_plan();
        plan.edge.face_deg = face_deg;
        const Evaluation e = evaluate(plan);
        const RopeLine rope = rig_of(plan, e, 99).ropes.at(0);
        const Vec3 from = rope.over_edge ? rope.edge_m : e.model.drawn_head_m;
        CHECK_WITHIN(angle_between(rope.load_m - from, rope.load_pull), 0.0, 1e-9);
        CHECK(rope.load_m.z < from.z);
        CHECK(height_above_face_m(rope.load_m, face_deg) > -1e-9);  // not inside the rock
    }
}

TEST_CASE("rig: a slack guy and a hanging anchor are told apart from sound ones") {
    Plan plan = support::usual_plan();
    plan.guys[1].anchor_m = Vec3{1.5, -2.0, 0.0};
    Evaluation e = evaluate(plan);
    REQUIRE(e.outcomes[k_holding].equilibrium.status == SolveStatus::Solved);
    e.outcomes[k_holding].equilibrium.guy_tension_N[0] = 0.0;
    const Rig rig = rig_of(plan, e, k_holding);
    CHECK(rig.guys[0].slack);
    CHECK_FALSE(rig.guys[2].slack);
    CHECK(rig.guys[1].hangs);
    CHECK_FALSE(rig.guys[2].hangs);
}

TEST_CASE("rig: what cannot be drawn is left out and the rest is there") {
    Plan plan = support::usual_plan();
    plan.guys[0].anchor_height_m = 5.0;  // above the head: the inclination gives no anchor
    plan.guys[1].bearing_deg = NAN;
    plan.ropes[0].haul->distance_m = 1e7;
    const Rig rig = rig_of(plan, evaluate(plan), k_holding);
    REQUIRE(rig.has_head);
    CHECK_FALSE(rig.guys[0].placed);
    CHECK_FALSE(rig.guys[1].placed);
    CHECK(rig.guys[2].placed);
    REQUIRE(rig.ropes.size() == 1);
    CHECK_FALSE(rig.ropes[0].has_haul);
    plan.frame.legs[0].foot_m.x = NAN;
    CHECK(rig_of(plan, evaluate(plan), k_holding).feet_m.empty());
    plan.frame.legs.clear();
    CHECK_FALSE(rig_of(plan, evaluate(plan), k_holding).has_head);
}

TEST_CASE("rig: two ropes on one load show one load") {
    Plan plan = support::usual_plan();
    plan.ropes.push_back(plan.ropes[0]);
    plan.ropes[0].share = plan.ropes[1].share = 0.5;
    const Rig rig = rig_of(plan, evaluate(plan), k_holding);
    REQUIRE(rig.ropes.size() == 2);
    CHECK_FALSE(rig.ropes[0].same_load);
    CHECK(rig.ropes[1].same_load);
}
