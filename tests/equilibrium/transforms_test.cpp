#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

// The answer must follow the site: turned, mirrored, moved or listed in another order.

using namespace guywright;

namespace {

Pulls skewed_pulls() {
    Pulls pulls;
    pulls.push_back(support::toward({0.0, 0.6, 0.0}, 2100.0));
    pulls.push_back(support::toward({-9.0, 0.2, 0.5}, 1900.0));
    pulls.push_back(support::force({60.0, -140.0, -250.0}));
    return pulls;
}

Vec3 turned(Vec3 v, double rad) { return {std::cos(rad) * v.x - std::sin(rad) * v.y, std::sin(rad) * v.x + std::cos(rad) * v.y, v.z}; }

void check_same_forces(const Equilibrium& a, const Equilibrium& b) {
    REQUIRE(a.status == SolveStatus::Solved);
    REQUIRE(b.status == SolveStatus::Solved);
    for (std::size_t i = 0; i < a.guy_tension_N.size(); ++i) CHECK_WITHIN(b.guy_tension_N[i], a.guy_tension_N[i], 1e-3);
    CHECK_WITHIN(b.leg_compression_N[0], a.leg_compression_N[0], 1e-2);
    CHECK_WITHIN(b.min_stiffness_N_m, a.min_stiffness_N_m, 1e-3 * a.min_stiffness_N_m);
}

}  // namespace

TEST_CASE("turning the site about the vertical turns the answer and nothing else") {
    const Model m = support::skewed_model();
    const Equilibrium a = solve_equilibrium(m, skewed_pulls(), m.drawn_head_m);
    for (const double rad : {0.7, 2.0, -1.3, k_pi}) {
        Pulls pulls = skewed_pulls();
        const auto turn = [&](Vec3 v) { return turned(v, rad); };
        const Model t = support::mapped(m, turn, turn, pulls);
        const Equilibrium b = solve_equilibrium(t, pulls, t.drawn_head_m);
        check_same_forces(a, b);
        CHECK_VEC_WITHIN(b.head_m, turn(a.head_m), 1e-8);
    }
}

TEST_CASE("a mirrored site gives the mirrored answer") {
    const Model m = support::skewed_model();
    const Equilibrium a = solve_equilibrium(m, skewed_pulls(), m.drawn_head_m);
    Pulls pulls = skewed_pulls();
    const auto mirror = [](Vec3 v) { return Vec3(v.x, -v.y, v.z); };
    const Model t = support::mapped(m, mirror, mirror, pulls);
    const Equilibrium b = solve_equilibrium(t, pulls, t.drawn_head_m);
    check_same_forces(a, b);
    CHECK_VEC_WITHIN(b.head_m, mirror(a.head_m), 1e-8);
}

TEST_CASE("a site somewhere else gives the same answer there") {
    const Model m = support::skewed_model();
    const Equilibrium a = solve_equilibrium(m, skewed_pulls(), m.drawn_head_m);
    Pulls pulls = skewed_pulls();
    const Vec3 away{31.0, -17.0, 8.0};
    const Model t = support::mapped(
        m, [&](Vec3 v) { return v + away; }, [](Vec3 v) { return v; }, pulls);
    const Equilibrium b = solve_equilibrium(t, pulls, t.drawn_head_m);
    check_same_forces(a, b);
    CHECK_VEC_WITHIN(b.head_m, a.head_m + away, 1e-8);
}

TEST_CASE("the order in which guys and ropes are listed does not matter") {
    const Model m = support::skewed_model();
    const Equilibrium a = solve_equilibrium(m, skewed_pulls(), m.drawn_head_m);
    REQUIRE(a.status == SolveStatus::Solved);
    const std::size_t order[4] = {2, 0, 3, 1};
    Model t = m;
    t.guys.clear();
    for (const std::size_t i : order) t.guys.push_back(m.guys[i]);
    const Pulls given = skewed_pulls();
    Pulls pulls;
    for (const std::size_t i : {2u, 0u, 1u}) pulls.push_back(given[i]);
    const Equilibrium b = solve_equilibrium(t, pulls, t.drawn_head_m);
    REQUIRE(b.status == SolveStatus::Solved);
    for (std::size_t i = 0; i < 4; ++i) CHECK_WITHIN(b.guy_tension_N[i], a.guy_tension_N[order[i]], 1e-3);
    CHECK_VEC_WITHIN(b.head_m, a.head_m, 1e-9);
}

TEST_CASE("everything twice as large and four times as strong moves twice as far under four times the force") {
    const Model m = support::skewed_model();
    const Equilibrium a = solve_equilibrium(m, skewed_pulls(), m.drawn_head_m);
    Pulls pulls = skewed_pulls();
    const auto twice = [](Vec3 v) { return 2.0 * v; };
    Model t = support::mapped(
        m, twice, [](Vec3 v) { return v; }, pulls);
    for (Pull& p : pulls) p.tension_N *= 4.0;
    for (Leg& leg : t.legs) {
        leg.rest_length_m *= 2.0;
        leg.stiffness_N_m *= 2.0;
    }
    for (Guy& g : t.guys) {
        g.rest_length_m *= 2.0;
        g.stiffness_N_m *= 2.0;
    }
    t.shortest_leg_m *= 2.0;
    const Equilibrium b = solve_equilibrium(t, pulls, t.drawn_head_m);
    REQUIRE(a.status == SolveStatus::Solved);
    REQUIRE(b.status == SolveStatus::Solved);
    for (std::size_t i = 0; i < 4; ++i) CHECK_WITHIN(b.guy_tension_N[i], 4.0 * a.guy_tension_N[i], 1e-2);
    CHECK_VEC_WITHIN(b.head_m, 2.0 * a.head_m, 1e-8);
}
