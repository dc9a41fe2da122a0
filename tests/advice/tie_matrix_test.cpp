#include "engine/advice/tie_matrix.hpp"
#include "engine/verdict/evaluate.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

bool all_tight(const Equilibrium& e) {
    return std::all_of(e.guy_loose_m.begin(), e.guy_loose_m.end(), [](double loose_m) { return loose_m == 0.0; });
}
bool same_guys_pull(const Equilibrium& a, const Equilibrium& b) {
    for (std::size_t i = 0; i < a.guy_loose_m.size(); ++i)
        if ((a.guy_loose_m[i] == 0.0) != (b.guy_loose_m[i] == 0.0)) return false;
    return true;
}

/// Largest difference between what the matrix foretells of taking in `guy` by `step_m` and what solving anew finds; NaN where a guy
/// comes tight or slack on the way, which no slope foretells.
double miss_N(const Model& m, const Outcome& o, const TieMatrix& t, std::size_t guy, double step_m) {
    Model taken = m;
    take_up(taken, guy, step_m);
    const Equilibrium after = solve_equilibrium(taken, o.setup.pulls, o.equilibrium.head_m);
    if (!is_stable(after) || !same_guys_pull(after, o.equilibrium)) return std::nan("");
    double worst_N = 0.0;
    for (std::size_t j = 0; j < t.guys; ++j) {
        const double foretold_N = o.equilibrium.guy_tension_N[j] + step_m * t.change_N_per_m[guy][j];
        worst_N = std::max(worst_N, std::abs(after.guy_tension_N[j] - foretold_N));
    }
    return worst_N;
}

/// Halving the step must quarter the miss: the matrix is the slope itself, not something near it.
int check_first_order(const Plan& p) {
    const Evaluation e = evaluate_as_measured(p);
    int looked_at = 0;
    if (e.outcomes.empty()) return 0;
    for (const std::size_t state : {k_rigged, k_holding}) {
        const Outcome& o = e.outcomes[state];
        const TieMatrix t = tie_matrix(e.model, o.equilibrium);
        CHECK(t.computed == o.stable);
        if (!t.computed) continue;
        for (std::size_t i = 0; i < t.guys; ++i) {
            double step_m = 4e-4, miss = miss_N(e.model, o, t, i, step_m);
            double largest_N = 1.0;
            for (const double tension_N : o.equilibrium.guy_tension_N) largest_N = std::max(largest_N, tension_N);
            for (int halving = 0; halving < 4; ++halving, step_m *= 0.5) {
                const double next = miss_N(e.model, o, t, i, 0.5 * step_m);
                if (std::isnan(miss) || std::isnan(next)) break;
                // 1e-5 of the largest tension: what a solve leaves out of balance in a soft rig
                CHECK_MESSAGE(next <= 0.3 * miss + 1e-5 * largest_N, p.title, " guy ", i, " at ", step_m, ": ", miss, " N, then ", next);
                miss = next;
                ++looked_at;
            }
        }
    }
    return looked_at;
}

/// Largest gap between neighbouring guys seen along the leg, degrees.
double gap_round_leg_deg(const Model& m, Vec3 head_m) {
    const Vec3 along = glm::normalize(head_m - m.legs[0].foot_m), aside = glm::normalize(glm::cross(along, Vec3(0.3, 0.9, 0.1)));
    std::vector<double> around_deg;
    for (const Guy& g : m.guys) {
        const Vec3 to = g.anchor_m - head_m;
        around_deg.push_back(degrees(std::atan2(glm::dot(to, glm::cross(along, aside)), glm::dot(to, aside))));
    }
    std::sort(around_deg.begin(), around_deg.end());
    double gap_deg = 360.0 - around_deg.back() + around_deg.front();
    for (std::size_t i = 1; i < around_deg.size(); ++i) gap_deg = std::max(gap_deg, around_deg[i] - around_deg[i - 1]);
    return gap_deg;
}

}  // namespace

TEST_CASE("tie matrix: it is the slope of the tensions, rigged and holding, on random rigs of every structure") {
    int looked_at = 0;
    for (std::uint64_t i = 0; i < 150; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) looked_at += check_first_order(p);
    CHECK(looked_at > 5000);
}

TEST_CASE("tie matrix: at a head that cannot move a guy gains k l / L0") {
    Model m;
    m.drawn_head_m = {0.0, 0.0, 2.0};
    m.shortest_leg_m = 2.0;
    for (const Vec3 foot : {Vec3(1, 0, 0), Vec3(-1, 1, 0), Vec3(-1, -1, 0)}) m.legs.push_back({foot, glm::length(m.drawn_head_m - foot), 1e13, 0.0, true});
    m.guys.push_back({{-4.0, 0.0, 0.0}, 4.0, 20e3});  // spans 4.472 m
    const Equilibrium e = solve_equilibrium(m, {}, m.drawn_head_m);
    const TieMatrix t = tie_matrix(m, e);
    REQUIRE(t.computed);
    CHECK_WITHIN(t.change_N_per_m[0][0], 20e3 * std::sqrt(20.0) / 4.0, 0.01);
}

// Common practice, no source: with three guys every take-up raises all three - where no gap between them, seen along the
// leg, is more than the 150 degrees that count as good.
TEST_CASE("tie matrix: three guys round a single leg, as rigged and all tight: every take-up raises all three") {
    int looked_at = 0;
    for (std::uint64_t i = 0; i < 2000; ++i) {
        const Plan p = support::random_monopod(i);
        if (p.guys.size() != 3) continue;
        const Evaluation e = evaluate_as_measured(p);
        if (e.outcomes.empty()) continue;
        const Outcome& rigged = e.outcomes[k_rigged];
        if (!rigged.stable || !all_tight(rigged.equilibrium) || gap_round_leg_deg(e.model, rigged.equilibrium.head_m) > 150.0) continue;
        const TieMatrix t = tie_matrix(e.model, rigged.equilibrium);
        REQUIRE(t.computed);
        for (std::size_t a = 0; a < 3; ++a)
            for (std::size_t b = 0; b < 3; ++b) CHECK_MESSAGE(t.change_N_per_m[a][b] > 0.0, p.title, " ", a, " ", b, ": ", t.change_N_per_m[a][b]);
        ++looked_at;
    }
    CHECK(looked_at > 100);
}

// Common practice, no source: with four guys some take-up slackens a neighbour.
TEST_CASE("tie matrix: four guys round a single leg: some take-up slackens a neighbour") {
    const Evaluation e = evaluate_as_measured(support::go_plan());
    const TieMatrix t = tie_matrix(e.model, e.outcomes[k_rigged].equilibrium);
    REQUIRE(t.computed);
    CHECK(t.change_N_per_m[0][1] < 0.0);  // back right eases back left, 70 degrees from it
    CHECK(t.change_N_per_m[0][3] > 0.0);  // and tightens left, across the leg
    int eased = 0, looked_at = 0;
    for (std::uint64_t i = 0; i < 1000; ++i) {
        const Plan p = support::random_monopod(i);
        if (p.guys.size() != 4) continue;
        const Evaluation r = evaluate_as_measured(p);
        if (r.outcomes.empty()) continue;
        const Outcome& rigged = r.outcomes[k_rigged];
        if (!rigged.stable || !all_tight(rigged.equilibrium)) continue;
        const TieMatrix of_four = tie_matrix(r.model, rigged.equilibrium);
        bool eases = false;
        for (std::size_t a = 0; a < 4; ++a)
            for (std::size_t b = 0; b < 4; ++b) eases = eases || of_four.change_N_per_m[a][b] < 0.0;
        eased += eases;
        ++looked_at;
    }
    CHECK(looked_at > 50);
    CHECK(eased == looked_at);
}

TEST_CASE("tie matrix: a slack guy feels nothing and does nothing until its slack is in") {
    Plan p = support::go_plan();
    p.guys.push_back(support::guy("loose", 0.0, 30.0));
    Evaluation e = evaluate_as_measured(p);
    const std::size_t loose = p.guys.size() - 1;
    take_up(e.model, loose, -0.25);
    const Equilibrium rigged = solve_equilibrium(e.model, {}, e.model.drawn_head_m);
    const TieMatrix t = tie_matrix(e.model, rigged);
    REQUIRE(t.computed);
    CHECK(t.slack_m[loose] == rigged.guy_loose_m[loose]);
    CHECK(t.slack_m[loose] > 0.1);
    for (std::size_t i = 0; i < t.guys; ++i) {
        CHECK(t.change_N_per_m[loose][i] == 0.0);
        CHECK(t.change_N_per_m[i][loose] == 0.0);
        if (i != loose) CHECK(t.slack_m[i] == 0.0);
    }
    take_up(e.model, loose, t.slack_m[loose] - 1e-6);
    const Equilibrium just_slack = solve_equilibrium(e.model, {}, rigged.head_m);
    for (std::size_t i = 0; i < t.guys; ++i) CHECK_WITHIN(just_slack.guy_tension_N[i], rigged.guy_tension_N[i], 1e-3);
    take_up(e.model, loose, 1e-3);
    CHECK(solve_equilibrium(e.model, {}, rigged.head_m).guy_tension_N[loose] > 1.0);
}

TEST_CASE("tie matrix: none for a state that does not stand") {
    Plan p = support::usual_plan();
    p.guys.resize(1);
    const Evaluation e = evaluate_as_measured(p);
    CHECK_FALSE(tie_matrix(e.model, e.outcomes[k_holding].equilibrium).computed);
    CHECK_FALSE(tie_matrix(e.model, Equilibrium{}).computed);
}
