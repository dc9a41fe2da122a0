#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/head_movement.hpp"
#include "wasm/scene/way_it_goes.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

double energy_J(const Evaluation& e, double factor, Vec3 at_m) {
    Pulls pulls = e.outcomes[k_holding].setup.pulls;
    for (Pull& p : pulls) p.tension_N *= factor;
    return local_at(e.model, pulls, at_m).energy_J;
}

}  // namespace

TEST_CASE("enlargement: one round factor for all cases, the largest movement a good part of a leg") {
    const Evaluation e = evaluate_as_measured(support::usual_plan());
    const double factor = enlargement(e);
    double largest_m = 0.0;
    for (const Outcome& o : e.outcomes)
        if (o.equilibrium.status == SolveStatus::Solved) largest_m = std::max(largest_m, o.head_shift_m);
    REQUIRE(largest_m > 0.0);
    CHECK(factor >= 1.0);
    CHECK(factor * largest_m <= 0.3 * e.model.shortest_leg_m);
    CHECK(2.6 * factor * largest_m > 0.3 * e.model.shortest_leg_m);
    CHECK(enlargement(Evaluation{}) == 1.0);
    const Outcome& o = e.outcomes[k_holding];
    CHECK_VEC_WITHIN(enlarged_head_m(e.model, o, 1.0), o.equilibrium.head_m, 1e-12);
    CHECK_WITHIN(glm::length(enlarged_head_m(e.model, o, factor) - e.model.drawn_head_m), factor * o.head_shift_m, 1e-9);
}

TEST_CASE("the way it goes: the side that takes less energy, at the load at which it goes") {
    const Evaluation e = evaluate_as_measured(support::usual_plan());
    const WayItGoes way = way_it_goes(e, k_holding);
    REQUIRE(way.known);
    CHECK(way.stands);
    CHECK(way.has_factor);
    CHECK(way.factor == e.load_limit.collapse_factor);
    CHECK_WITHIN(glm::length(way.toward), 1.0, 1e-9);
    const Vec3 head = e.outcomes[k_holding].equilibrium.head_m;
    const Vec3 there = path_of_way(e.model, head, way.toward)[2], back = path_of_way(e.model, head, -way.toward)[2];
    CHECK(energy_J(e, way.factor, there) <= energy_J(e, way.factor, back));
}

TEST_CASE("the way it goes: without side guys to the side, as easily to either") {
    Plan plan = support::usual_plan();
    plan.guys = {support::guy("back", 180, 22), support::guy("front", 0, 35)};
    plan.guys[1].anchor_m = Vec3{0.9, 0, -0.6};
    const Evaluation e = evaluate_as_measured(plan);
    REQUIRE_FALSE(e.outcomes.empty());
    const WayItGoes way = way_it_goes(e, k_rigged);
    REQUIRE(way.known);
    CHECK(std::abs(way.toward.y) > 0.9);
    CHECK((way.either || !way.stands));
}

TEST_CASE("the way it goes: a rig that falls goes where its head went") {
    Plan plan = support::usual_plan();
    plan.guys.clear();
    Evaluation e = evaluate_as_measured(plan);
    REQUIRE(e.outcomes.size() > k_holding);
    Outcome& o = e.outcomes[k_holding];
    REQUIRE(o.equilibrium.status == SolveStatus::Collapsed);
    const WayItGoes way = way_it_goes(e, k_holding);
    REQUIRE(way.known);
    CHECK_FALSE(way.stands);
    CHECK(glm::dot(way.toward, o.equilibrium.head_m - e.model.drawn_head_m) > 0.0);
    o.equilibrium.status = SolveStatus::MaxIterations;
    CHECK_FALSE(way_it_goes(e, k_holding).known);
    CHECK_FALSE(way_it_goes(e, 99).known);
    CHECK_FALSE(way_it_goes(Evaluation{}, k_holding).known);
}

TEST_CASE("the way it goes: the head turns about its foot, it does not fly off") {
    const Evaluation e = evaluate_as_measured(support::usual_plan());
    const Vec3 foot = e.model.legs[0].foot_m, head = e.outcomes[k_holding].equilibrium.head_m;
    const double leg_m = glm::length(head - foot);
    const std::vector<Vec3> path = path_of_way(e.model, head, {0, 1, 0});
    REQUIRE(path.size() > 5);
    for (const Vec3& p : path) CHECK_WITHIN(glm::length(p - foot), leg_m, 0.002 * leg_m);
    CHECK(glm::length(path.back() - head) > 0.3 * leg_m);
    CHECK(path.back().y > 0.3 * leg_m);
}
