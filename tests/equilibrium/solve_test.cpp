#include "engine/equilibrium/solve.hpp"
#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

/// A random leg with guys all round, each carrying a tension chosen first.
Model manufactured(Random& r) {
    Model m = support::model_with_head(Vec3(-0.8, 0.0, 2.5) + r.point(0.5));
    support::add_leg_carrying(m, Vec3(-1.8, 0.0, 0.0) + r.point(0.4), r.between(500, 9000), std::pow(10.0, r.between(6.0, 8.5)), r.chance(0.3));
    const int guys = r.whole(3, 6);
    for (int i = 0; i < guys; ++i) {
        const double around = 2.0 * k_pi * (i + r.between(-0.3, 0.3)) / guys, away_m = r.between(2.0, 6.0);
        const Vec3 anchor_m{m.drawn_head_m.x + away_m * std::cos(around), away_m * std::sin(around), r.between(-0.5, 0.5)};
        if (r.chance(0.2)) support::add_loose_guy(m, anchor_m, r.between(0.05, 0.5), r.between(2e4, 3e5));
        else support::add_guy_carrying(m, anchor_m, r.between(50, 2500), r.between(2e4, 3e5));
    }
    return m;
}

double tension_chosen_N(const Model& m, std::size_t i) {
    const Guy& g = m.guys[i];
    return std::max(0.0, g.stiffness_N_m * (glm::length(m.drawn_head_m - g.anchor_m) - g.rest_length_m));
}

}  // namespace

TEST_CASE("solve: gives back answers that were chosen first") {
    Random r(41);
    int tried = 0;
    for (int i = 0; i < 400; ++i) {
        const Model m = manufactured(r);
        const Pulls pulls = support::balancing_pull(m);
        if (eigen(local_at(m, pulls, m.drawn_head_m).hessian_N_m).value[0] < 300.0) continue;
        ++tried;
        CAPTURE(i);
        const Equilibrium e = solve_equilibrium(m, pulls, m.drawn_head_m + r.point(0.001));
        REQUIRE(e.status == SolveStatus::Solved);
        CHECK(is_stable(e));
        CHECK_VEC_WITHIN(e.head_m, m.drawn_head_m, 1e-7);
        for (std::size_t g = 0; g < m.guys.size(); ++g) CHECK_WITHIN(e.guy_tension_N[g], tension_chosen_N(m, g), 0.01);
        const Leg& leg = m.legs[0];
        CHECK_WITHIN(e.leg_compression_N[0], leg.stiffness_N_m * (leg.rest_length_m - glm::length(m.drawn_head_m - leg.foot_m)), 0.01);
    }
    CHECK(tried > 250);
}

TEST_CASE("solve: the skewed rig comes back to the digit from every side") {
    const Model m = support::skewed_model();
    const Pulls pulls = support::balancing_pull(m);
    for (const Vec3 off : {Vec3(0.1, 0, 0), Vec3(-0.1, 0.05, 0), Vec3(0, -0.12, -0.05), Vec3(0.02, 0.03, 0.1)}) {
        const Equilibrium e = solve_equilibrium(m, pulls, m.drawn_head_m + off);
        REQUIRE(e.status == SolveStatus::Solved);
        CHECK_WITHIN(e.guy_tension_N[0], 310.0, 1e-3);
        CHECK_WITHIN(e.guy_tension_N[1], 540.0, 1e-3);
        CHECK_WITHIN(e.guy_tension_N[2], 280.0, 1e-3);
        CHECK_WITHIN(e.guy_tension_N[3], 120.0, 1e-3);
        CHECK_WITHIN(e.leg_compression_N[0], 2600.0, 1e-2);
        CHECK(e.residual_N < 1e-4);
    }
}

TEST_CASE("solve: the smallest stiffness and its direction are those of the plain Hessian at the answer") {
    const Model m = support::skewed_model();
    const Pulls pulls = support::balancing_pull(m);
    const Equilibrium e = solve_equilibrium(m, pulls, m.drawn_head_m);
    REQUIRE(e.status == SolveStatus::Solved);
    const Sym3 h = local_at(m, pulls, m.drawn_head_m).hessian_N_m;
    CHECK_VEC_WITHIN(h * softest_way(e), e.min_stiffness_N_m * softest_way(e), 1e-2);
    CHECK_WITHIN(glm::length(softest_way(e)), 1.0, 1e-12);
    const double push_J = local_at(m, pulls, m.drawn_head_m + 1e-3 * softest_way(e)).energy_J - local_at(m, pulls, m.drawn_head_m).energy_J;
    CHECK_WITHIN(push_J, 0.5 * e.min_stiffness_N_m * 1e-6, 0.01 * push_J);
}

TEST_CASE("solve: a foot that lifts carries nothing and says how far; one held down carries tension") {
    for (const bool held_down : {false, true}) {
        Model m = support::model_with_head({0, 0, 2});
        support::add_leg_carrying(m, {0, 0, 0}, 0.0, 5e6, held_down);
        for (int i = 0; i < 3; ++i) support::add_guy_carrying(m, {3 * std::cos(2.1 * i), 3 * std::sin(2.1 * i), 0}, 50.0, 5e4);
        Pulls pulls;
        pulls.push_back(support::force({0, 0, 2000}));
        const Equilibrium e = solve_equilibrium(m, pulls, m.drawn_head_m);
        REQUIRE(e.status == SolveStatus::Solved);
        if (held_down) {
            CHECK(e.leg_compression_N[0] < -1000.0);
            CHECK(e.leg_gap_m[0] == 0.0);
        } else {
            CHECK(e.leg_compression_N[0] == 0.0);
            CHECK_WITHIN(e.leg_gap_m[0], glm::length(e.head_m) - 2.0, 1e-9);
            CHECK(e.leg_gap_m[0] > 0.01);
        }
    }
}

TEST_CASE("solve: a slack guy says by how much it hangs loose") {
    Model m = support::skewed_model();
    support::add_loose_guy(m, {-4, 2, 0}, 0.037, 5e4);
    const Equilibrium e = solve_equilibrium(m, support::balancing_pull(m), m.drawn_head_m);
    REQUIRE(e.status == SolveStatus::Solved);
    CHECK(e.guy_tension_N[4] == 0.0);
    CHECK_WITHIN(e.guy_loose_m[4], 0.037, 1e-7);
    CHECK(e.guy_loose_m[0] == 0.0);
}

TEST_CASE("solve: the same input gives the same bits") {
    const Model m = support::skewed_model();
    const Pulls pulls = support::balancing_pull(m);
    const Vec3 start_m = m.drawn_head_m + Vec3(0.05, -0.02, 0.01);
    const Equilibrium a = solve_equilibrium(m, pulls, start_m), b = solve_equilibrium(m, pulls, start_m);
    CHECK(a.head_m == b.head_m);
    CHECK(a.min_stiffness_N_m == b.min_stiffness_N_m);
    CHECK(a.iterations == b.iterations);
}

TEST_CASE("solve: what is not a number never comes out as solved") {
    const double nan = std::nan(""), inf = HUGE_VAL;
    const auto refuses = [](const Model& m, const Pulls& pulls, Vec3 start_m) {
        const Equilibrium e = solve_equilibrium(m, pulls, start_m);
        return e.status != SolveStatus::Solved && !is_stable(e);
    };
    const Model sound = support::skewed_model();
    const Pulls pulls = support::balancing_pull(sound);
    CHECK_FALSE(refuses(sound, pulls, sound.drawn_head_m));
    for (const double bad : {nan, inf, -inf}) {
        CAPTURE(bad);
        Pulls p = pulls;
        p[0].tension_N = bad;
        CHECK(refuses(sound, p, sound.drawn_head_m));
        p = pulls;
        p[0].at.y = bad;
        CHECK(refuses(sound, p, sound.drawn_head_m));
        CHECK(refuses(sound, pulls, {bad, 0, 2}));
        Model m = sound;
        m.head_weight_N = bad;
        CHECK(refuses(m, pulls, m.drawn_head_m));
        m = sound;
        m.guys[1].anchor_m.x = bad;
        CHECK(refuses(m, pulls, m.drawn_head_m));
        m = sound;
        m.guys[1].stiffness_N_m = bad;
        CHECK(refuses(m, pulls, m.drawn_head_m));
        m = sound;
        m.legs[0].foot_m.z = bad;
        CHECK(refuses(m, pulls, m.drawn_head_m));
        m = sound;
        m.legs[0].rest_length_m = bad;
        CHECK(refuses(m, pulls, m.drawn_head_m));
        m = sound;
        m.legs[0].stiffness_N_m = bad;
        CHECK(refuses(m, pulls, m.drawn_head_m));
    }
}

TEST_CASE("solve: a stiffness that is not a number is seen even on a guy that hangs loose") {
    Model m = support::skewed_model();
    support::add_loose_guy(m, {-4, 2, 0}, 0.05, 5e4);
    const Pulls pulls = support::balancing_pull(m);
    REQUIRE(is_stable(solve_equilibrium(m, pulls, m.drawn_head_m)));
    m.guys[4].stiffness_N_m = std::nan("");
    CHECK_FALSE(is_stable(solve_equilibrium(m, pulls, m.drawn_head_m)));
}

TEST_CASE("solve: runs out of steps rather than claim a balance it has not found") {
    Model m = support::skewed_model();
    Pulls pulls = support::balancing_pull(m);
    pulls[0].tension_N = std::nan("");
    const Equilibrium e = solve_equilibrium(m, pulls, m.drawn_head_m);
    CHECK(e.status == SolveStatus::MaxIterations);
    CHECK(e.iterations == k_max_iterations);
}

TEST_CASE("is_stable: only a solved state with stiffness left in every direction") {
    Equilibrium e;
    e.max_stiffness_N_m = 1e6;
    e.min_stiffness_N_m = 100.0;
    for (const SolveStatus s : {SolveStatus::NotRun, SolveStatus::MaxIterations, SolveStatus::Collapsed}) {
        e.status = s;
        CHECK_FALSE(is_stable(e));
    }
    e.status = SolveStatus::Solved;
    CHECK(is_stable(e));
    for (const double none : {0.0, -1.0, 1e-6, std::nan("")}) {
        e.min_stiffness_N_m = none;
        CHECK_FALSE(is_stable(e));
    }
}
