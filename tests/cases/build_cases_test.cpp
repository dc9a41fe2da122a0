#include "engine/cases/build_cases.hpp"
#include "engine/model/build_model.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

#include <vector>

using namespace guywright;

namespace {

constexpr double k_load_N = 200.0 * 9.80665;

/// The sound plan over a vertical edge: head 2.7 sin 22 ahead of a foot 2.2 m back, 2.7 cos 22 high.
double wrap_by_hand_rad() { return std::atan((2.2 - 2.7 * std::sin(radians(22))) / (2.7 * std::cos(radians(22)))); }

Cases cases_of(const Plan& p) {
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.empty());
    return build_cases(b.model, p.actions);
}

const Case& find(const Cases& cases, CaseId id, std::size_t rope = 0) {
    for (const Case& c : cases)
        if (c.id == id && c.part == rope) return c;
    FAIL("no such case");
    return cases[0];
}

std::vector<CaseId> ids(const Cases& cases) {
    std::vector<CaseId> out;
    for (const Case& c : cases) out.push_back(c.id);
    return out;
}

Plan two_ropes() {
    Plan p = support::usual_plan();
    p.ropes.push_back(p.ropes[0]);
    p.ropes[1].name = "second";
    p.ropes[0].share = 0.7;
    p.ropes[1].share = 0.3;
    p.ropes[1].haul.reset();
    return p;
}

}  // namespace

TEST_CASE("cases: which there are, rigged and holding first") {
    using enum CaseId;
    CHECK(ids(cases_of(support::usual_plan())) == std::vector{Rigged, Holding, Raising, Lowering, HeldHigh, HeldLow, Arrest, ArrestRunning, ArrestSwingLeft,
                                                              ArrestSwingRight, SwingLeft, SwingRight, Outward, HaulReleased});
    Plan still = support::usual_plan();
    still.actions.swing_deg = still.actions.outward_deg = 0.0;
    still.ropes[0].haul.reset();
    CHECK(ids(cases_of(still)) == std::vector{Rigged, Holding, Raising, Lowering, HeldHigh, HeldLow, Arrest, ArrestRunning});
    CHECK(ids(cases_of(two_ropes())) == std::vector{Rigged, Holding, Raising, Lowering, HeldHigh, HeldLow, Arrest, ArrestRunning, ArrestSwingLeft,
                                                    ArrestSwingRight, SwingLeft, SwingRight, Outward, OneRopeTakesAll, HaulReleased, OneRopeTakesAll});
}

TEST_CASE("cases: four hauled ropes fill the list and fit") {
    Plan p = support::usual_plan();
    for (int i = 1; i < 4; ++i) p.ropes.push_back(p.ropes[0]);
    CHECK(cases_of(p).size() == k_max_cases);
}

TEST_CASE("as rigged no rope pulls") {
    const Cases cases = cases_of(support::usual_plan());
    CHECK(cases[0].pulls.empty());
    REQUIRE(cases[0].ropes.size() == 1);
    CHECK_FALSE(cases[0].ropes[0].loaded);
    CHECK_FALSE(cases[0].arrest);
}

TEST_CASE("holding: the load's weight on both sides") {
    const Case c = find(cases_of(support::usual_plan()), CaseId::Holding);
    CHECK_WITHIN(c.ropes[0].head_side_N, k_load_N, 1e-9);
    CHECK_WITHIN(c.ropes[0].haul_side_N, k_load_N, 1e-9);
    CHECK_WITHIN(c.ropes[0].path.wrap_rad, wrap_by_hand_rad(), 1e-12);
    REQUIRE(c.pulls.size() == 2);
    CHECK(c.pulls[0].toward_point);
    CHECK_VEC_WITHIN(c.pulls[0].at, Vec3(0, 0, 0), 1e-12);
    CHECK_VEC_WITHIN(c.pulls[1].at, Vec3(-2.2 + 2.7 * std::sin(radians(22)) - 8.0, 0, 0.6), 1e-12);
}

TEST_CASE("raising: the edge adds its friction to the head side, the pulley's loss to the haul side") {
    const Case c = find(cases_of(support::usual_plan()), CaseId::Raising);
    const double head_N = k_load_N * std::exp(0.3 * wrap_by_hand_rad());
    CHECK_WITHIN(c.ropes[0].head_side_N, head_N, 1e-8);
    CHECK_WITHIN(c.ropes[0].haul_side_N, head_N / 0.9, 1e-8);
    CHECK(c.pulls[0].tension_N == c.ropes[0].head_side_N);
    CHECK(c.pulls[1].tension_N == c.ropes[0].haul_side_N);
}

TEST_CASE("lowering: both friction losses the other way round") {
    const Case c = find(cases_of(support::usual_plan()), CaseId::Lowering);
    const double head_N = k_load_N / std::exp(0.3 * wrap_by_hand_rad());
    CHECK_WITHIN(c.ropes[0].head_side_N, head_N, 1e-8);
    CHECK_WITHIN(c.ropes[0].haul_side_N, head_N * 0.9, 1e-8);
}

TEST_CASE("a rope clear of the edge loses nothing there, only in the pulley") {
    Plan p = support::usual_plan();
    p.edge.face_deg = 60.0;
    const Cases cases = cases_of(p);
    REQUIRE(find(cases, CaseId::Raising).ropes[0].path.clear_of_edge);
    CHECK_WITHIN(find(cases, CaseId::Raising).ropes[0].head_side_N, k_load_N, 1e-9);
    CHECK_WITHIN(find(cases, CaseId::Raising).ropes[0].haul_side_N, k_load_N / 0.9, 1e-9);
    const Pull hang = find(cases, CaseId::Raising).pulls[0];
    CHECK_FALSE(hang.toward_point);
    CHECK_VEC_WITHIN(hang.at, Vec3(0.5, 0, -std::sqrt(0.75)), 1e-14);
}

TEST_CASE("arrest: the dynamic factor on both sides, no relief from friction, arrest safety factors") {
    Plan p = support::usual_plan();
    p.actions.dynamic_factor = 2.5;
    const Case c = find(cases_of(p), CaseId::Arrest);
    CHECK_WITHIN(c.ropes[0].head_side_N, 2.5 * k_load_N, 1e-8);
    CHECK_WITHIN(c.ropes[0].haul_side_N, 2.5 * k_load_N, 1e-8);
    CHECK(c.arrest);
    CHECK_FALSE(find(cases_of(p), CaseId::Raising).arrest);
}

TEST_CASE("swing and outward pull: the action is added to the rope's own") {
    Plan p = support::usual_plan();
    p.edge.face_deg = 60.0;  // clear of the edge: the direction shows in the pull itself
    p.ropes[0].swing_deg = 3.0;
    p.actions = {2.0, 10.0, 5.0};
    const Cases cases = cases_of(p);
    CHECK_WITHIN(find(cases, CaseId::SwingLeft).pulls[0].at.y, std::sin(radians(7)), 1e-14);
    CHECK_WITHIN(find(cases, CaseId::SwingRight).pulls[0].at.y, -std::sin(radians(13)), 1e-14);
    CHECK_WITHIN(find(cases, CaseId::Outward).pulls[0].at.z, -std::sin(radians(55)) * std::cos(radians(3)), 1e-14);
    for (const CaseId id : {CaseId::SwingLeft, CaseId::SwingRight, CaseId::Outward}) CHECK_WITHIN(find(cases, id).ropes[0].head_side_N, k_load_N, 1e-9);
}

TEST_CASE("one rope takes all: the sum of the shares on that rope, nothing on the other") {
    const Cases cases = cases_of(two_ropes());
    const Case first = find(cases, CaseId::OneRopeTakesAll, 0), second = find(cases, CaseId::OneRopeTakesAll, 1);
    CHECK_WITHIN(first.ropes[0].head_side_N, k_load_N, 1e-9);
    CHECK_WITHIN(first.ropes[0].haul_side_N, k_load_N, 1e-9);
    CHECK_FALSE(first.ropes[1].loaded);
    CHECK(first.pulls.size() == 2);
    CHECK_FALSE(second.ropes[0].loaded);
    CHECK_WITHIN(second.ropes[1].head_side_N, k_load_N, 1e-9);
    CHECK(second.pulls.size() == 1);  // tied off: one side only
}

TEST_CASE("shares: each rope carries its own part while both hold") {
    const Case c = find(cases_of(two_ropes()), CaseId::Holding);
    CHECK_WITHIN(c.ropes[0].head_side_N, 0.7 * k_load_N, 1e-9);
    CHECK_WITHIN(c.ropes[1].head_side_N, 0.3 * k_load_N, 1e-9);
    CHECK(c.ropes[1].haul_side_N == 0.0);
    CHECK(c.pulls.size() == 3);
}

TEST_CASE("haul released: that rope is gone from the head, the other stays; it starts from the held position") {
    const Case one = find(cases_of(support::usual_plan()), CaseId::HaulReleased);
    CHECK(one.pulls.empty());
    CHECK(one.starts_held);
    const Case two = find(cases_of(two_ropes()), CaseId::HaulReleased);
    CHECK_FALSE(two.ropes[0].loaded);
    CHECK(two.ropes[1].loaded);
    CHECK(two.pulls.size() == 1);
}

TEST_CASE("tied off at the head: no haul side in any case, raising and lowering keep the edge's friction") {
    Plan p = support::usual_plan();
    p.ropes[0].haul.reset();
    for (const Case& c : cases_of(p)) {
        CHECK(c.pulls.size() == (c.id == CaseId::Rigged ? 0u : 1u));
        CHECK(c.ropes[0].haul_side_N == 0.0);
        CHECK(c.id != CaseId::HaulReleased);
    }
    CHECK_WITHIN(find(cases_of(p), CaseId::Raising).ropes[0].head_side_N, k_load_N * std::exp(0.3 * wrap_by_hand_rad()), 1e-8);
}
