#include "engine/checks/foot_hold.hpp"
#include "tests/support/random.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

TieWays tied(std::vector<double> bearings_deg) {
    TieWays ways;
    for (const double b : bearings_deg) ways.push_back(along_bearing(radians(b)));
    return ways;
}

double total_N(const FootTies& t) {
    double sum = 0.0;
    for (const double v : t.tension_N) sum += v;
    return sum;
}

double left_N(Vec3 push_N, const FootTies& t, const TieWays& ways) {
    Vec3 sum = push_N;
    for (std::size_t i = 0; i < ways.size(); ++i) sum += t.tension_N[i] * ways[i];
    return glm::length(sum);
}

/// Least total of up to three ties found by trying every mesh of tensions; HUGE_VAL where none holds.
double least_total_on_grid_N(Vec3 push_N, double friction_N, const TieWays& foot, double most_N, int steps) {
    const double step_N = most_N / steps;
    std::vector<Vec3> d(foot.begin(), foot.end());
    while (d.size() < 3) d.emplace_back(0.0);
    double best = HUGE_VAL;
    for (int i = 0; i <= steps; ++i)
        for (int j = 0; j <= (foot.size() > 1 ? steps : 0); ++j)
            for (int k = 0; k <= (foot.size() > 2 ? steps : 0); ++k) {
                const Vec3 sum = push_N + step_N * (double(i) * d[0] + double(j) * d[1] + double(k) * d[2]);
                if (glm::length(sum) <= friction_N) best = std::min(best, step_N * (i + j + k));
            }
    return best;
}

}  // namespace

TEST_CASE("foot ties: friction alone is enough up to its limit, then the tie takes what is over") {
    const TieWays back = tied({180});
    CHECK(total_N(smallest_foot_ties({400, 0, 0}, 400.0, back)) == 0.0);
    CHECK(smallest_foot_ties({400, 0, 0}, 400.0, back).holds);
    const FootTies over = smallest_foot_ties({500, 0, 0}, 400.0, back);
    CHECK(over.holds);
    CHECK_WITHIN(over.tension_N[0], 100.0, 1e-9);
}

TEST_CASE("foot ties: a tie on the wrong side or none at all holds nothing") {
    CHECK_FALSE(smallest_foot_ties({500, 0, 0}, 400.0, tied({0})).holds);
    CHECK_FALSE(smallest_foot_ties({500, 0, 0}, 400.0, tied({})).holds);
    CHECK_FALSE(smallest_foot_ties({0, 500, 0}, 400.0, tied({0, 180})).holds);
    CHECK(smallest_foot_ties({0, 400, 0}, 400.0, tied({})).holds);
}

TEST_CASE("foot ties: one tie askew, by hand") {
    // push 500 ahead, tie 30 degrees off straight back: |(500 - t cos30, t sin30)| = 300
    const double t_N = 500 * std::cos(radians(30)) - std::sqrt(300.0 * 300.0 - 250.0 * 250.0);
    const FootTies t = smallest_foot_ties({500, 0, 0}, 300.0, tied({150}));
    REQUIRE(t.holds);
    CHECK_WITHIN(t.tension_N[0], t_N, 1e-9);
}

TEST_CASE("foot ties: two ties alike share without friction, each half over the cosine") {
    const FootTies t = smallest_foot_ties({500, 0, 0}, 0.0, tied({140, 220}));
    REQUIRE(t.holds);
    CHECK_WITHIN(t.tension_N[0], 250.0 / std::cos(radians(40)), 1e-9);
    CHECK_WITHIN(t.tension_N[1], 250.0 / std::cos(radians(40)), 1e-9);
}

TEST_CASE("foot ties: an idle tie stays idle") {
    const FootTies t = smallest_foot_ties({500, 0, 0}, 400.0, tied({0, 180, 90}));
    REQUIRE(t.holds);
    CHECK(t.tension_N[0] == 0.0);
    CHECK_WITHIN(t.tension_N[1], 100.0, 1e-9);
    CHECK(t.tension_N[2] == 0.0);
}

TEST_CASE("foot ties: a lifted foot, without friction, is held by ties alone") {
    CHECK_FALSE(smallest_foot_ties({300, 40, 0}, 0.0, tied({180})).holds);
    CHECK(smallest_foot_ties({300, 40, 0}, 0.0, tied({180, 90})).holds);
    CHECK_FALSE(smallest_foot_ties({300, 40, 0}, 0.0, tied({180, 270})).holds);  // 40 to the left, and that tie pulls left
}

TEST_CASE("foot ties: what it finds does hold, no tie pushes, and no combination on a fine mesh does it with less") {
    Random r(61);
    int held = 0, open = 0;
    for (int i = 0; i < 120; ++i) {
        const Vec3 push_N = r.between(200, 1500) * along_bearing(r.between(0, 2 * k_pi));
        const double friction_N = r.chance(0.2) ? 0.0 : r.between(20, 0.9 * glm::length(push_N));
        std::vector<double> bearings;
        const int ties = r.whole(1, 3);
        for (int t = 0; t < ties; ++t) bearings.push_back(r.between(0, 360));
        const TieWays foot = tied(bearings);
        const FootTies found = smallest_foot_ties(push_N, friction_N, foot);
        const double most_N = 4000.0;
        const int steps = ties == 3 ? 60 : 600;
        const double grid_N = least_total_on_grid_N(push_N, friction_N, foot, most_N, steps);
        CAPTURE(i);
        if (!found.holds) {
            ++open;
            CHECK(grid_N == HUGE_VAL);
            continue;
        }
        ++held;
        for (const double t_N : found.tension_N) CHECK(t_N >= 0.0);
        CHECK(left_N(push_N, found, foot) <= friction_N + 1e-6);
        CHECK(total_N(found) <= grid_N + 1e-6);
    }
    CHECK(held > 20);
    CHECK(open > 20);
}

TEST_CASE("foot ties: what they leave to friction is the least friction with which they hold") {
    Random r(63);
    int within_reach = 0, left_over = 0;
    for (int i = 0; i < 300; ++i) {
        const Vec3 push_N = r.between(200, 1500) * along_bearing(r.between(0, 2 * k_pi));
        std::vector<double> bearings;
        for (int t = r.whole(1, 4); t > 0; --t) bearings.push_back(r.between(0, 360));
        const TieWays ways = tied(bearings);
        const double left_N = left_to_friction_N(push_N, ways);
        CAPTURE(i);
        CHECK(smallest_foot_ties(push_N, left_N + 0.01, ways).holds);
        if (left_N > 0.0) CHECK_FALSE(smallest_foot_ties(push_N, left_N - 0.01, ways).holds);
        (left_N > 0.0 ? left_over : within_reach) += 1;
    }
    CHECK(within_reach > 50);
    CHECK(left_over > 50);
}

TEST_CASE("foot ties: six ties hold with no more than any three of them") {
    Random r(62);
    for (int i = 0; i < 50; ++i) {
        const Vec3 push_N = r.between(200, 1500) * along_bearing(r.between(0, 2 * k_pi));
        std::vector<double> all;
        for (int t = 0; t < 6; ++t) all.push_back(r.between(0, 360));
        const TieWays ways = tied(all);
        const FootTies six = smallest_foot_ties(push_N, 100.0, ways);
        const FootTies three = smallest_foot_ties(push_N, 100.0, tied({all[1], all[3], all[4]}));
        if (!three.holds) continue;
        REQUIRE(six.holds);
        CHECK(total_N(six) <= total_N(three) + 1e-9);
        CHECK(left_N(push_N, six, ways) <= 100.0 + 1e-6);
    }
}

TEST_CASE("foot ties: turning push and ties together turns nothing else") {
    const FootTies a = smallest_foot_ties(600.0 * along_bearing(radians(20)), 250.0, tied({150, 230, 300}));
    const FootTies b = smallest_foot_ties(600.0 * along_bearing(radians(97)), 250.0, tied({227, 307, 17}));
    REQUIRE(a.holds);
    for (std::size_t i = 0; i < 3; ++i) CHECK_WITHIN(b.tension_N[i], a.tension_N[i], 1e-9);
}
