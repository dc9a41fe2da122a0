#include "engine/cases/load_limit.hpp"
#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

/// Upright weightless leg of 3 m, three guys at 45 degrees with the given pretension, loaded straight down.
Model mast(double pretension_N) {
    Model m;
    m.drawn_head_m = {0, 0, 3};
    m.shortest_leg_m = 3.0;
    for (int i = 0; i < 3; ++i) {
        const double turn = 2.0 * k_pi * i / 3.0, span_m = 3.0 * std::sqrt(2.0), EA_N = 5e4;
        const double rest_m = span_m / (1.0 + pretension_N / EA_N);
        m.guys.push_back({{3.0 * std::cos(turn), 3.0 * std::sin(turn), 0.0}, rest_m, EA_N / rest_m});
    }
    m.legs.push_back({{0, 0, 0}, 3.0, 1e10, 0.0, false});
    return m;
}

Pulls straight_down(double force_N) {
    Pulls pulls;
    pulls.push_back({force_N, false, {0, 0, -1}});
    return pulls;
}

}  // namespace

// A rigid leg on a ball falls when its push over its length exceeds the guys' sideways stiffness: 3/2 k cos^2 of the cord and
// T/l (3 - 3/2 cos^2) of its tension.
TEST_CASE("load limit: a mast under a straight load falls at its length times the guys' sideways stiffness") {
    const Model m = mast(2000.0);
    const double sideways_N_m = 1.5 * m.guys[0].stiffness_N_m * 0.5 + 2000.0 / (3.0 * std::sqrt(2.0)) * (3.0 - 1.5 * 0.5);
    const LoadLimit limit = find_load_limit(m, straight_down(2000.0), m.drawn_head_m);
    const double by_hand = (3.0 * sideways_N_m - 3.0 * 2000.0 * std::sqrt(0.5)) / 2000.0;  // the guys push the leg down too
    CHECK_FALSE(limit.capped);
    CHECK_WITHIN(limit.collapse_factor / by_hand, 1.0, 0.01);
    CHECK(std::abs(limit.goes_toward.z) < 0.01);
}

TEST_CASE("load limit: twice the load, half the factor") {
    const Model m = mast(2000.0);
    const double one = find_load_limit(m, straight_down(2000.0), m.drawn_head_m).collapse_factor;
    CHECK_WITHIN(find_load_limit(m, straight_down(4000.0), m.drawn_head_m).collapse_factor, one / 2.0, 4e-3);
}

TEST_CASE("load limit: a small load stands to the cap, and no guy goes slack") {
    const Model m = mast(2000.0);
    const LoadLimit limit = find_load_limit(m, straight_down(50.0), m.drawn_head_m);
    CHECK(limit.capped);
    CHECK(limit.collapse_factor == k_collapse_factor_cap);
    CHECK_FALSE(limit.goes_slack);
}

TEST_CASE("load limit: the guy that a sideways pull unloads goes slack where a search by itself finds it") {
    const Model m = mast(1000.0);
    Pulls pulls;
    pulls.push_back({500.0, false, {1, 0, 0}});
    const LoadLimit limit = find_load_limit(m, pulls, m.drawn_head_m);
    REQUIRE(limit.goes_slack);
    const auto loose_at = [&](double factor) {
        const Equilibrium e = solve_equilibrium(m, detail::scaled(pulls, factor), m.drawn_head_m);
        return e.guy_loose_m[0] > k_slack_m;
    };
    CHECK_FALSE(loose_at(limit.first_slack_factor - 0.01));
    CHECK(loose_at(limit.first_slack_factor + 0.01));
}

TEST_CASE("load limit: what does not stand by itself carries nothing") {
    Model m = mast(0.0);
    m.guys.clear();
    CHECK(find_load_limit(m, straight_down(100.0), m.drawn_head_m).collapse_factor == 0.0);
}
