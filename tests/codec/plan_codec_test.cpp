#include "engine/codec/plan_codec.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"

#include <doctest/doctest.h>

using namespace guywright;

namespace {

void check_round_trip(const Plan& plan) {
    const std::string text = write_plan(plan);
    const PlanRead read = read_plan(text);
    REQUIRE_MESSAGE(read.ok(), to_string(read.faults[0]));
    CHECK(write_plan(read.plan) == text);
    const PlanRead compact = read_plan(canonical_plan_text(plan));
    REQUIRE(compact.ok());
    CHECK(write_plan(compact.plan) == text);
}

}  // namespace

TEST_CASE("write_plan, read_plan: every key comes back as it was") {
    const Plan p = support::full_plan();
    const PlanRead read = read_plan(write_plan(p));
    REQUIRE_MESSAGE(read.ok(), to_string(read.faults[0]));
    const Plan& q = read.plan;
    CHECK(q.title == p.title);
    CHECK(q.note == p.note);
    CHECK(q.edge.face_deg == 71.5);
    CHECK(q.edge.compass_out_deg == p.edge.compass_out_deg);
    CHECK(q.edge.opening_m == p.edge.opening_m);
    CHECK(q.frame.kind == FrameKind::Monopod);
    CHECK(q.frame.legs[0].foot_m == p.frame.legs[0].foot_m);
    CHECK(q.frame.legs[0].held_down);
    CHECK(q.frame.legs[0].rating_kN == p.frame.legs[0].rating_kN);
    REQUIRE(q.ropes.size() == 2);
    CHECK(q.ropes[0].haul->height_m == 0.6);
    CHECK_FALSE(q.ropes[1].haul.has_value());
    CHECK(q.ropes[1].edge_y_m == p.ropes[1].edge_y_m);
    REQUIRE(q.guys.size() == 3);
    CHECK(q.guys[0].anchor_m == p.guys[0].anchor_m);
    CHECK(q.guys[1].parts == 3);
    CHECK(q.guys[2].bearing_deg == 300.0);
    CHECK(q.feet[0].ties[1].bearing_deg == 180.0);
    CHECK(q.tolerances.distance_m == 0.15);
    CHECK(q.limits.factor_soft == 11.0);
    CHECK(q.candidate_anchors_m == p.candidate_anchors_m);
    CHECK(q.candidate_anchor_strengths_kN == p.candidate_anchor_strengths_kN);
    CHECK(q.not_measured == p.not_measured);
}

TEST_CASE("write_plan: reading and writing again changes no byte") {
    check_round_trip(support::full_plan());
    check_round_trip(support::steep_plan());
    for (std::uint64_t i = 0; i < 300; ++i) check_round_trip(support::random_monopod(i));
}

TEST_CASE("write_plan: numbers are short and exact") {
    Plan p = support::steep_plan();
    p.frame.legs[0].foot_m = {-1.0 / 3.0, -0.0, 0.1 + 0.2};
    const std::string text = canonical_plan_text(p);
    CHECK(text.find("\"foot_m\":[[-0.3333333333333333,0,0.30000000000000004]]") != std::string::npos);
    CHECK(text.find("\"face_deg\":90,") != std::string::npos);
    check_round_trip(p);
}

TEST_CASE("write_plan: limits and tolerances always, other optional keys only where they say something") {
    const std::string plain = canonical_plan_text(support::steep_plan());
    CHECK(plain.find("\"factor_soft\":10") != std::string::npos);
    CHECK(plain.find("\"pretension_percent\":30") != std::string::npos);
    CHECK(plain.find("opening_m") == std::string::npos);
    CHECK(plain.find("not_measured") == std::string::npos);
    CHECK(plain.starts_with("{\"format\":\"guywright-plan\",\"version\":1,\"title\":\"Spillway bench\","));
}

TEST_CASE("read_plan: optional keys may be left out, empty, or null where they are nothing") {
    const char* without =
        R"({"format":"guywright-plan","version":1.0,"title":"",
            "edge":{"face_deg":90,"rope_friction":0.3,"compass_out_deg":null,"opening_m":null},
            "frame":{"kind":"Monopod","foot_m":[[-2,0,0]],"leg_length_m":[2.7],"lean_deg":2.2e1,"lean_bearing_deg":0,
                     "leg_EA_kN":[20000],"leg_rating_kN":[22],"leg_mass_kg":[0]},
            "ropes":[{"name":"main","load_kg":200,"share":1,"swing_deg":0,"outward_deg":0,"edge_y_m":null,"haul":null,
                      "pulley_efficiency":0.9,"pulley_strength_kN":36,"connector_strength_kN":27}],
            "guys":[],"feet":[{"friction":0.4,"pin_shear_kN":0,"ties":[]}],
            "actions":{"dynamic_factor":2,"swing_deg":0,"outward_deg":0},"limits":{"factor_soft":12}})";
    const PlanRead read = read_plan(without);
    REQUIRE_MESSAGE(read.ok(), to_string(read.faults[0]));
    CHECK(read.plan.frame.lean_deg == 22.0);
    CHECK(read.plan.limits.factor_soft == 12.0);
    CHECK(read.plan.limits.factor_metal == Limits{}.factor_metal);
    CHECK(read.plan.tolerances.distance_m == Tolerances{}.distance_m);
    CHECK_FALSE(read.plan.frame.legs[0].held_down);
    CHECK_FALSE(read.plan.edge.opening_m.has_value());
}

TEST_CASE("read_plan: A-frame and tripod can be read; their spelling is free") {
    Plan p = support::steep_plan();
    for (const auto& [kind, legs] : {std::pair{FrameKind::AFrame, 2}, std::pair{FrameKind::Tripod, 3}}) {
        p.frame.kind = kind;
        p.frame.legs.resize(static_cast<std::size_t>(legs));
        p.feet.resize(static_cast<std::size_t>(legs));
        check_round_trip(p);
    }
    for (const char* spelling : {"A-frame", "a-frame", "a_frame", "AFRAME"}) CHECK(names_kind(spelling, name_of(FrameKind::AFrame)));
    for (const char* other : {"a_fram", "a_frames", "", "-", "tripod"}) CHECK_FALSE(names_kind(other, name_of(FrameKind::AFrame)));
}

TEST_CASE("read_plan: a byte order mark and Windows line ends do no harm") {
    std::string text = "\xEF\xBB\xBF" + write_plan(support::steep_plan());
    for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += 2) text.replace(at, 1, "\r\n");
    const PlanRead read = read_plan(text);
    REQUIRE(read.ok());
    CHECK(write_plan(read.plan) == write_plan(support::steep_plan()));
}

TEST_CASE("write_plan: never fails; what is not a number or not text cannot be read back") {
    Plan p = support::steep_plan();
    p.edge.face_deg = std::nan("");
    p.title = "\xFF";
    const PlanRead read = read_plan(write_plan(p));
    REQUIRE(read.faults.size() == 1);
    CHECK(read.faults[0].path == "edge.face_deg");
}

TEST_CASE("write_plan: the largest plan is far below the size that is refused") {
    Plan p = support::full_plan();
    const double long_number = -0.12345678901234567;
    p.title = std::string(2 * k_longest_name, 'x');
    p.note = std::string(k_longest_note, '\n');
    while (p.ropes.size() < k_max_ropes) p.ropes.push_back(p.ropes[0]);
    while (p.guys.size() < k_max_guys) p.guys.push_back(p.guys[2]);
    while (p.candidate_anchors_m.size() < k_max_candidate_anchors) p.candidate_anchors_m.push_back({long_number, long_number, long_number});
    p.frame.legs.resize(k_max_legs);
    p.feet.resize(k_max_legs, p.feet[0]);
    for (FootPlan& f : p.feet) f.ties.resize(k_max_foot_ties);
    for_each_number(p, [&](const std::string&, double& v, const Range&) { v = long_number; });
    p.not_measured.assign(k_most_not_measured, std::string(2 * k_longest_name, 'x'));
    CHECK(write_plan(p).size() * 2 < k_most_plan_bytes);
}
