#include "engine/model/build_model.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::usual_plan;

namespace {

Model built(const Plan& p) {
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.empty());
    return b.model;
}

/// Tension of a guy at the head as drawn.
double drawn_tension_N(const Model& m, std::size_t i) {
    return m.guys[i].stiffness_N_m * (glm::length(m.guys[i].anchor_m - m.drawn_head_m) - m.guys[i].rest_length_m);
}

}  // namespace

TEST_CASE("build_model: the leg in SI, half its weight at the head") {
    Plan p = usual_plan();
    p.frame.legs[0] = {{-2.0, 0.1, 0.2}, 2.5, 18000.0, 22.0, 8.0, true};
    const Model m = built(p);
    REQUIRE(m.legs.size() == 1);
    CHECK(m.legs[0].foot_m == Vec3(-2.0, 0.1, 0.2));
    CHECK(m.legs[0].rest_length_m == 2.5);
    CHECK_WITHIN(m.legs[0].stiffness_N_m, 7.2e6, 1e-8);
    CHECK_WITHIN(m.legs[0].weight_N, 78.4532, 1e-10);
    CHECK_WITHIN(m.head_weight_N, 39.2266, 1e-10);
    CHECK(m.legs[0].held_down);
    CHECK(m.shortest_leg_m == 2.5);
    CHECK_WITHIN(glm::length(m.drawn_head_m - m.legs[0].foot_m), 2.5, 1e-15);
}

TEST_CASE("build_model: a guy carries its pretension at the head as drawn, whatever its parts") {
    Plan p = usual_plan();
    p.guys[0].pretension_kN = 0.85;
    p.guys[0].EA_kN = 12.0;
    p.guys[1].pretension_kN = 0.0;
    const Model m = built(p);
    CHECK_WITHIN(drawn_tension_N(m, 0), 850.0, 1e-8);
    CHECK_WITHIN(drawn_tension_N(m, 1), 0.0, 1e-8);
    CHECK_WITHIN(drawn_tension_N(m, 2), 300.0, 1e-8);
    CHECK_WITHIN(m.guys[0].stiffness_N_m * m.guys[0].rest_length_m, 36e3, 1e-8);  // 12 kN a part, three parts
}

TEST_CASE("build_model: an anchor by bearing and inclination, or by its position instead") {
    Plan p = usual_plan();
    const Vec3 head_m = built(p).drawn_head_m;
    p.guys[0].bearing_deg = 135.0;
    p.guys[0].inclination_deg = 45.0;
    p.guys[0].anchor_height_m = 0.3;
    p.guys[1].anchor_m = Vec3(-4.0, 2.0, 5.0);  // above the head: allowed by position
    const Model m = built(p);
    const double away_m = (head_m.z - 0.3) * std::sqrt(0.5);
    CHECK_VEC_WITHIN(m.guys[0].anchor_m, Vec3(head_m.x - away_m, head_m.y - away_m, 0.3), 1e-12);
    CHECK(m.guys[1].anchor_m == Vec3(-4.0, 2.0, 5.0));
}

TEST_CASE("build_model: the rope's share of the load, its haul point and where it crosses the edge") {
    Plan p = usual_plan();
    p.ropes[0].share = 0.4;
    p.ropes[0].swing_deg = 10.0;
    p.ropes[0].haul = Haul{90.0, 6.0, 0.7};
    const Model m = built(p);
    const Vec3 head_m = m.drawn_head_m;
    CHECK_WITHIN(m.ropes[0].weight_N, 80.0 * 9.80665, 1e-9);
    CHECK_VEC_WITHIN(m.ropes[0].haul_m, Vec3(head_m.x, head_m.y - 6.0, 0.7), 1e-12);
    CHECK_WITHIN(m.ropes[0].edge_y_m, head_m.y - std::hypot(head_m.x, head_m.z) * std::tan(radians(10.0)), 1e-12);
    p.ropes[0].edge_y_m = -0.25;
    p.ropes[0].haul.reset();
    CHECK(built(p).ropes[0].edge_y_m == -0.25);
    CHECK_FALSE(built(p).ropes[0].has_haul);
}

TEST_CASE("build_model: without swing the rope crosses the edge straight ahead of the head") {
    Plan p = usual_plan();
    p.frame.legs[0].foot_m.y = 0.7;
    CHECK_WITHIN(built(p).ropes[0].edge_y_m, 0.7, 1e-15);
}

TEST_CASE("build_model: a face past vertical pulls as a vertical one") {
    Plan p = usual_plan();
    p.edge.face_deg = 115.0;
    CHECK_WITHIN(built(p).face_rad, k_pi / 2.0, 1e-15);
    p.edge.face_deg = 60.0;
    CHECK_WITHIN(built(p).face_rad, k_pi / 3.0, 1e-15);
}

TEST_CASE("build_model: legs that do not meet, or feet in one line, are a fault that names the legs") {
    Plan p = usual_plan();
    p.frame.kind = FrameKind::AFrame;
    p.frame.legs = {LegPlan{.foot_m = {-2, -3, 0}}, LegPlan{.foot_m = {-2, 3, 0}}};
    p.feet.resize(2);
    REQUIRE(build_model(p).faults.size() == 1);
    CHECK(build_model(p).faults[0].path == "frame.leg_length_m");
    p.frame.kind = FrameKind::Tripod;
    p.frame.legs = {LegPlan{.foot_m = {-2, -1, 0}}, LegPlan{.foot_m = {-2, 0, 0}}, LegPlan{.foot_m = {-2, 1, 0}}};
    p.feet.resize(3);
    REQUIRE(build_model(p).faults.size() == 1);
    CHECK(build_model(p).faults[0].path == "frame.leg_length_m");
}

TEST_CASE("build_model: an A-frame leans about the line of its feet, to the side of the bearing") {
    Plan p = usual_plan();
    p.frame.kind = FrameKind::AFrame;
    p.frame.legs = {LegPlan{.foot_m = {-2, -0.9, 0}, .length_m = 1.5}, LegPlan{.foot_m = {-2, 0.9, 0}, .length_m = 1.5}};
    p.feet.resize(2);
    p.frame.lean_deg = 0.0;
    CHECK_VEC_WITHIN(built(p).drawn_head_m, Vec3(-2, 0, 1.2), 1e-12);
    p.frame.lean_deg = 30.0;
    p.frame.lean_bearing_deg = 40.0;  // the side counts, not the bearing
    CHECK_VEC_WITHIN(built(p).drawn_head_m, Vec3(-2 + 0.6, 0, 1.2 * std::sqrt(0.75)), 1e-12);
    p.frame.lean_bearing_deg = 170.0;
    CHECK_VEC_WITHIN(built(p).drawn_head_m, Vec3(-2 - 0.6, 0, 1.2 * std::sqrt(0.75)), 1e-12);
    p.frame.lean_bearing_deg = 90.0;
    CHECK(build_model(p).faults.size() == 1);
}

TEST_CASE("build_model: a tripod's head is at its three lengths, above, with feet at any heights") {
    const Vec3 head{-0.3, 0.2, 2.4};
    Plan p = usual_plan();
    p.frame.kind = FrameKind::Tripod;
    p.frame.legs.clear();
    for (const Vec3 foot_m : {Vec3(-1.5, 0.8, 0.1), Vec3(-1.4, -0.9, 0.0), Vec3(0.9, 0.1, -1.2)})
        p.frame.legs.push_back(LegPlan{.foot_m = foot_m, .length_m = glm::length(head - foot_m)});
    p.feet.resize(3);
    CHECK_VEC_WITHIN(built(p).drawn_head_m, head, 1e-12);
    std::swap(p.frame.legs[0], p.frame.legs[2]);
    CHECK_VEC_WITHIN(built(p).drawn_head_m, head, 1e-12);
}

TEST_CASE("build_model: an inclination to an anchor at or above the head is a fault that says so, for every such guy") {
    Plan p = usual_plan();
    p.guys[0].anchor_height_m = 2.6;
    p.guys[2].anchor_height_m = 40.0;
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.size() == 2);
    CHECK(b.faults[0].path == "guys[0].anchor_height_m");
    CHECK(b.faults[0].value == "2.60 m");
    CHECK(b.faults[0].allowed.find("2.50 m") != std::string::npos);  // where the head is
    CHECK(b.faults[1].path == "guys[2].anchor_height_m");
}

TEST_CASE("build_model: a guy without length and a haul point at the head are faults") {
    Plan p = usual_plan();
    const Vec3 head_m = built(p).drawn_head_m;
    p.guys[1].anchor_m = head_m + Vec3(0.0005, 0, 0);
    p.ropes[0].haul = Haul{0.0, 0.0, head_m.z};
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.size() == 2);
    CHECK(b.faults[0].path == "guys[1].anchor_m");
    CHECK(b.faults[1].path == "ropes[0].haul.height_m");
    p.guys[1].anchor_m = head_m + Vec3(0.002, 0, 0);
    p.ropes[0].haul = Haul{0.0, 0.0, head_m.z - 0.002};
    CHECK(build_model(p).faults.empty());
}
