#include "engine/advice/least_pretension.hpp"
#include "engine/verdict/evaluate.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

Plan pretensioned(Plan p, const LeastPretension& least, double times = 1.0) {
    for (std::size_t i = 0; i < p.guys.size(); ++i) p.guys[i].pretension_kN = times * kilonewtons(least.guys[i].force_N);
    return p;
}

/// A sensible rig, a bit different for every number, measured with care.
Plan varied(std::uint64_t number) {
    support::Random r(number + 0x7E50u);
    Plan p = r.chance(0.5) ? support::go_plan() : support::usual_plan();
    p.frame.lean_deg += r.between(-3.0, 3.0);
    p.ropes[0].load_kg = r.between(60.0, 140.0);
    p.ropes[0].outward_deg = r.between(0.0, 4.0);
    for (GuyPlan& g : p.guys) {
        g.bearing_deg += r.between(-6.0, 6.0);
        g.inclination_deg += r.between(-4.0, 4.0);
    }
    p.tolerances = {2.0, 1.0, 1.0, 2.0, 0.05, 5.0, 10.0};
    return p;
}

/// Least signed tension over all cases, NaN where one has no stable answer.
double least_tension_N(const Plan& p) {
    const BuiltModel built = build_model(p);
    if (!built.faults.empty()) return std::nan("");
    Outcomes outcomes;
    solve_cases(built.model, build_cases(built.model, p.actions), outcomes);
    double least_N = HUGE_VAL;
    for (const Outcome& o : outcomes) {
        if (!o.stable) return std::nan("");
        for (const Guy& g : built.model.guys) least_N = std::min(least_N, signed_tension_N(g, o.equilibrium.head_m));
    }
    return least_N;
}

/// A point of the box, most of its measurements at an end.
Plan off_by_chance(Plan p, support::Random& r) {
    for (const Measured& m : measured_numbers(p)) m.move_to(r.chance(0.7) ? (r.chance(0.5) ? 1.0 : -1.0) : r.between(-1.0, 1.0));
    return p;
}

}  // namespace

TEST_CASE("linear program: the corner with the least cost, an equality kept, none where the rows contradict") {
    LinearProgram p;
    p.unknowns = 2;
    p.cost = {2.0, 3.0};
    p.rows = {{{1.0, 1.0}, 4.0, false}, {{1.0, 3.0}, 6.0, false}, {{-1.0, 0.0}, -3.0, false}};
    ProgramAnswer a = solve(p);  // x + y >= 4, x + 3y >= 6, x <= 3: at (3, 1)
    REQUIRE(a.solved);
    CHECK_WITHIN(a.x[0], 3.0, 1e-12);
    CHECK_WITHIN(a.x[1], 1.0, 1e-12);
    p.rows.push_back({{1.0, -1.0}, 0.5, true});
    a = solve(p);
    REQUIRE(a.solved);
    CHECK_WITHIN(a.x[0] - a.x[1], 0.5, 1e-12);
    CHECK_WITHIN(a.x[0] + a.x[1], 4.0, 1e-12);
    p.rows.push_back({{-1.0, -1.0}, -3.0, false});
    CHECK_FALSE(solve(p).solved);
}

TEST_CASE("linear program: no point that keeps every row costs less, over random programs") {
    support::Random r(77);
    int solved = 0;
    for (int trial = 0; trial < 300; ++trial) {
        LinearProgram p;
        p.unknowns = static_cast<std::size_t>(r.whole(2, 5));
        LinearProgram::Coefficients inside{};
        for (std::size_t i = 0; i < p.unknowns; ++i) {
            p.cost[i] = r.between(0.1, 2.0);
            inside[i] = r.between(0.5, 3.0);
        }
        for (int k = 0; k < 12; ++k) {
            LinearProgram::Row row;
            for (std::size_t i = 0; i < p.unknowns; ++i) row.a[i] = r.between(-1.0, 1.0);
            for (std::size_t i = 0; i < p.unknowns; ++i) row.at_least += row.a[i] * inside[i];
            row.at_least -= r.between(0.0, 0.5);  // so that `inside` keeps it
            p.rows.push_back(row);
        }
        const ProgramAnswer a = solve(p);
        REQUIRE(a.solved);
        ++solved;
        const auto cost = [&](const LinearProgram::Coefficients& x) {
            double sum = 0.0;
            for (std::size_t i = 0; i < p.unknowns; ++i) sum += p.cost[i] * x[i];
            return sum;
        };
        const auto keeps = [&](const LinearProgram::Coefficients& x, double by) {
            for (std::size_t i = 0; i < p.unknowns; ++i)
                if (!(x[i] >= -by)) return false;
            for (const LinearProgram::Row& row : p.rows) {
                double sum = 0.0;
                for (std::size_t i = 0; i < p.unknowns; ++i) sum += row.a[i] * x[i];
                if (!(sum >= row.at_least - by)) return false;
            }
            return true;
        };
        CHECK(keeps(a.x, 1e-9));
        for (int k = 0; k < 300; ++k) {
            LinearProgram::Coefficients x = a.x;
            for (std::size_t i = 0; i < p.unknowns; ++i) x[i] += r.between(-0.3, 0.3);
            if (keeps(x, 0.0)) CHECK(cost(x) >= cost(a.x) - 1e-9);
        }
    }
    CHECK(solved == 300);
}

TEST_CASE("least pretension: with it no guy goes slack, as measured and at thousands of points of the box") {
    support::Random r(5);
    int found = 0;
    double worst_N = HUGE_VAL;
    for (std::uint64_t i = 0; i < 25; ++i) {
        const Plan p = varied(i);
        const LeastPretension least = find_least_pretension(p);
        if (least.status != PretensionStatus::Found) continue;
        ++found;
        const Plan tight = pretensioned(p, least);
        CHECK(find_faults(tight).empty());
        CHECK(least_tension_N(tight) > 0.0);
        for (int k = 0; k < 400; ++k) worst_N = std::min(worst_N, least_tension_N(off_by_chance(tight, r)));
    }
    CHECK(found >= 15);
    CHECK_MESSAGE(worst_N >= 0.0, worst_N);
}

TEST_CASE("least pretension: it is the least: a guy is at its last newtons, and a twentieth less lets one go slack") {
    int found = 0;
    for (std::uint64_t i = 0; i < 25; ++i) {
        const Plan p = varied(i);
        const LeastPretension least = find_least_pretension(p);
        if (least.status != PretensionStatus::Found) continue;
        ++found;
        double least_N = HUGE_VAL;
        for (const GuyPretension& g : least.guys) least_N = std::min(least_N, g.least_N);
        CHECK(least_N >= 0.0);
        CHECK(least_N < 10.0);
        TightnessSweep sweep(pretensioned(p, least, 0.95), SweepDepth::Whole);
        sweep.advance(5000);
        REQUIRE(sweep.done());
        const Tightness& less = sweep.found();
        double slackest_N = HUGE_VAL;
        for (std::size_t g = 0; g < p.guys.size(); ++g) slackest_N = std::min(slackest_N, less.guys[g].least_N);
        CHECK_MESSAGE((less.falls || slackest_N < 0.0), p.title, i, ": ", slackest_N);
    }
    CHECK(found >= 15);
}

TEST_CASE("least pretension: of the ratios that balance none holds with a smaller sum, tried at random on five uneven guys") {
    Plan p = support::exact(support::go_plan());
    p.guys.push_back(support::guy("rear", 190.0, 24.0));
    p.guys[0].bearing_deg = 120.0;
    p.guys[3].EA_kN = 60.0;
    const LeastPretension least = find_least_pretension(p);
    REQUIRE(least.status == PretensionStatus::Found);
    const Model m = build_model(p).model;
    const Vec3 along = glm::normalize(m.drawn_head_m - m.legs[0].foot_m), aside = glm::normalize(glm::cross(along, Vec3(0, 1, 0)));
    const Vec3 other = glm::cross(along, aside);
    const auto toward = [&](std::size_t i) { return glm::normalize(m.guys[i].anchor_m - m.drawn_head_m); };
    double sum_N = 0.0;
    for (const GuyPretension& g : least.guys) sum_N += g.force_N;
    support::Random r(11);
    int held = 0;
    double cheapest_N = HUGE_VAL;
    for (int k = 0; k < 40000; ++k) {
        // three by chance, the first two from the balance across the leg
        std::array<double, 5> tried_N{};
        Vec3 rest_N{0.0, 0.0, -m.head_weight_N};
        for (std::size_t i = 2; i < 5; ++i) {
            tried_N[i] = r.chance(0.3) ? r.between(10.0, 60.0) : least.guys[i].force_N * r.between(0.5, 1.5);
            rest_N += tried_N[i] * toward(i);
        }
        const double a = glm::dot(toward(0), aside), b = glm::dot(toward(1), aside), c = glm::dot(toward(0), other), d = glm::dot(toward(1), other);
        const double e = -glm::dot(rest_N, aside), f = -glm::dot(rest_N, other), det = a * d - b * c;
        tried_N[0] = (e * d - b * f) / det;
        tried_N[1] = (a * f - e * c) / det;
        Plan tried = p;
        double tried_sum_N = 0.0;
        for (std::size_t i = 0; i < 5; ++i) {
            tried.guys[i].pretension_kN = kilonewtons(tried_N[i]);
            tried_sum_N += tried_N[i];
        }
        if (!(tried_N[0] >= 10.0 && tried_N[1] >= 10.0) || !(least_tension_N(tried) >= k_kept_tension_N)) continue;
        ++held;
        cheapest_N = std::min(cheapest_N, tried_sum_N);
    }
    CHECK(held > 50);
    CHECK_MESSAGE(cheapest_N > 0.99 * sum_N, cheapest_N, " against ", sum_N);
    CHECK_MESSAGE(cheapest_N < 1.15 * sum_N, cheapest_N, " against ", sum_N);  // it was looked for near enough
}

TEST_CASE("least pretension: the head rests where it is drawn, but for what the leg gives way") {
    for (const Plan& p : {support::exact(support::go_plan()), support::exact(support::usual_plan())}) {
        const LeastPretension least = find_least_pretension(p);
        REQUIRE(least.status == PretensionStatus::Found);
        const Model m = build_model(pretensioned(p, least)).model;
        const Equilibrium e = solve_equilibrium(m, {}, m.drawn_head_m);
        CHECK(glm::length(e.head_m - m.drawn_head_m) < 1e-3);
        for (std::size_t i = 0; i < m.guys.size(); ++i) CHECK_WITHIN(e.guy_tension_N[i], least.guys[i].force_N, 5.0);
    }
}

TEST_CASE("least pretension: measuring error asks for more; the hand's pull follows from the parts") {
    const LeastPretension exact = find_least_pretension(support::exact(support::go_plan())), real = find_least_pretension(support::go_plan());
    REQUIRE(exact.status == PretensionStatus::Found);
    REQUIRE(real.status == PretensionStatus::Found);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(real.guys[i].force_N > exact.guys[i].force_N);
        CHECK_WITHIN(real.guys[i].pull_N, real.guys[i].force_N * 1.3 / 3.0, 1e-9);  // three parts
        CHECK(exact.guys[i].by_hand);
        CHECK_FALSE(real.guys[i].by_hand);  // over 600 N on the cord
    }
}

TEST_CASE("least pretension: out of range it says who goes slack and when, or in what the rig falls") {
    const LeastPretension falls = find_least_pretension(support::steep_plan());
    CHECK(falls.status == PretensionStatus::NotInRange);
    CHECK(falls.falls);
    CHECK(falls.guys.empty());
    Plan p = support::exact(support::go_plan());
    p.frame.lean_deg = 8.0;
    p.guys[2].anchor_strength_kN = 0.4;  // may carry 100 N for long
    const LeastPretension slack = find_least_pretension(p);
    REQUIRE(slack.status == PretensionStatus::NotInRange);
    REQUIRE_FALSE(slack.falls);
    bool any = false;
    for (const GuyPretension& g : slack.guys) any = any || g.least_N < 0.0;
    CHECK(any);
    CHECK(slack.guys[2].force_N <= 100.0 + 1e-6);
}

TEST_CASE("least pretension: none without guys, none where guys stand on one side only") {
    Plan p = support::random_tripod(5);
    p.guys.clear();
    CHECK(find_least_pretension(p).status == PretensionStatus::NoGuys);
    Plan one_sided = support::usual_plan();
    one_sided.guys = {support::guy("right", 80.0, 30.0), support::guy("more right", 100.0, 30.0)};
    CHECK(find_least_pretension(one_sided).status == PretensionStatus::NoBalance);
}

TEST_CASE("least pretension: for random rigs of every structure what is told as found holds over the box") {
    support::Random r(6);
    int found = 0, told = 0;
    for (std::uint64_t i = 0; i < 30; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            if (!build_model(p).faults.empty()) continue;
            const LeastPretension least = find_least_pretension(p);
            told += least.status != PretensionStatus::NotComputed;
            if (least.status != PretensionStatus::Found) continue;
            ++found;
            CAPTURE(p.title);
            const Plan tight = pretensioned(p, least);
            for (int k = 0; k < 100; ++k) CHECK(least_tension_N(off_by_chance(tight, r)) >= -1.0);
        }
    CHECK(found > 2);
    CHECK(told > 75);
}

TEST_CASE("least pretension: of a rig that stands in no case at all it says that it falls") {
    Plan p = support::go_plan();
    p.frame.legs[0].mass_kg = 500.0;  // on cord too weak to be pulled as tight as that takes
    p.frame.lean_deg = 0.0;
    p.guys = {support::guy("front", 0, 30), support::guy("right", 90, 30), support::guy("back", 180, 30), support::guy("left", 270, 30)};
    for (GuyPlan& g : p.guys) {
        g.EA_kN = 0.5;
        g.strength_kN = 1.0;
    }
    for (const Outcome& o : evaluate_as_measured(p).outcomes) REQUIRE_FALSE(o.stable);
    const LeastPretension least = find_least_pretension(p);
    CHECK(least.status == PretensionStatus::NotInRange);
    CHECK(least.falls);
    CHECK(least.falls_in == k_rigged);
}
