#include "engine/verdict/evaluate.hpp"
#include "tests/independent/asked.hpp"
#include "tests/independent/minimise.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

// The engine against a second writing of the same physics (second_energy.hpp) and a general optimiser.

using namespace guywright;

namespace {

using second::Asked;
using second::k_asked;
using second::point;

/// One case by both roads.
struct Pair {
    Outcome engine;
    second::Rig rig;
    second::Minimum minimum;
};

constexpr int k_loading_steps = 10;

/// The engine from where the head rests as rigged, at once; the second road by letting the load come on in steps.
Pair both(const Plan& p, const Model& m, const Asked& asked, Vec3 start_m) {
    Pair out;
    out.engine = solve_case(m, second::case_asked(m, p, asked), start_m);
    out.rig = second::rig_asked(p, asked);
    out.minimum = out.rig.sides.empty() ? second::minimise(out.rig) : second::minimise_loading(out.rig, k_loading_steps);
    return out;
}

double force_N(const second::Member& m, const second::Point& at) { return static_cast<double>(m.k_N_m * second::working_stretch(m, at)); }

/// A tenth of a percent or a newton, whichever is more.
void check_force(double engine_N, double second_N) { CHECK_WITHIN(engine_N, second_N, std::max(1.0, 0.001 * std::abs(second_N))); }

void check_forces(const Pair& p) {
    for (std::size_t g = 0; g < p.rig.guys.size(); ++g) check_force(p.engine.equilibrium.guy_tension_N[g], force_N(p.rig.guys[g], p.minimum.head));
    for (std::size_t l = 0; l < p.rig.legs.size(); ++l) check_force(p.engine.equilibrium.leg_compression_N[l], -force_N(p.rig.legs[l], p.minimum.head));
}

/// Within a hundredth, or half a newton per metre where there is hardly any stiffness left. False at a kink, where second
/// differences mean nothing.
bool check_stiffness(const Pair& p) {
    if (second::near_a_kink(p.rig, p.minimum.head)) return false;
    const double second_N_m = static_cast<double>(second::smallest_eigenvalue(second::curvature_N_m(p.rig, p.minimum.head)));
    CHECK_WITHIN(p.engine.equilibrium.min_stiffness_N_m, second_N_m, std::max(0.5, 0.01 * std::abs(second_N_m)));
    return true;
}

double moved_share(const Pair& p, const Plan& plan) {
    double shortest_m = HUGE_VAL;
    for (const LegPlan& leg : plan.frame.legs) shortest_m = std::min(shortest_m, leg.length_m);
    return static_cast<double>(second::distance(p.minimum.head, p.rig.head)) / shortest_m;
}

struct Tally {
    int stable = 0, fallen = 0, floating = 0, kinks = 0, two_places = 0;
};

/// A rig with slack guys may have two resting places. Where the second road ended in the other one it is sent to the engine's:
/// if that is no minimum of its energy it will not stay there.
bool sent_to_the_engines(Pair& pair) {
    const second::Point there = point(pair.engine.equilibrium.head_m);
    if (second::distance(there, pair.minimum.head) < 1e-4L) return false;
    second::Rig from_there = pair.rig;
    from_there.head = there;
    pair.minimum = second::minimise(from_there);
    return true;
}

void check_pair(Pair pair, const Plan& p, Tally& tally) {
    const SolveStatus status = pair.engine.equilibrium.status;
    CHECK(status != SolveStatus::MaxIterations);
    if (pair.engine.stable) {
        ++tally.stable;
        tally.two_places += sent_to_the_engines(pair);
        check_forces(pair);
        tally.kinks += !check_stiffness(pair);
    } else if (status == SolveStatus::Collapsed) {
        ++tally.fallen;
        CHECK(moved_share(pair, p) > 0.95 * k_collapse_share);
    } else {
        // balanced without stiffness: the second energy must be as flat there, or nothing carries anything (a weightless leg
        // among slack guys), where each guy is on the edge of taking up and curvature means nothing
        ++tally.floating;
        const Equilibrium& e = pair.engine.equilibrium;
        const auto idle = [](double force_N) { return std::abs(force_N) < 1e-6; };
        if (std::all_of(e.guy_tension_N.begin(), e.guy_tension_N.end(), idle) && std::all_of(e.leg_compression_N.begin(), e.leg_compression_N.end(), idle))
            return;
        const auto flat = second::smallest_eigenvalue(second::curvature_N_m(pair.rig, point(e.head_m)));
        CHECK(static_cast<double>(flat) < 0.01);
    }
}

/// Rigs 1 to `count` of a kind in every case, by both roads.
Tally compare_random(Plan (*random_plan)(std::uint64_t), std::uint64_t count) {
    Tally tally;
    for (std::uint64_t i = 1; i <= count; ++i) {
        const Plan p = random_plan(i);
        const BuiltModel b = build_model(p);
        if (!b.faults.empty()) continue;
        Vec3 start_m = b.model.drawn_head_m;
        for (const Asked& asked : k_asked) {
            CAPTURE(i);
            CAPTURE(static_cast<int>(asked.id));
            const Pair pair = both(p, b.model, asked, start_m);
            check_pair(pair, p, tally);
            if (asked.id != CaseId::Rigged) continue;
            if (!pair.engine.stable) break;  // nothing to load
            start_m = pair.engine.equilibrium.head_m;
        }
    }
    MESSAGE("random rigs: ", tally.stable, " stable, ", tally.fallen, " fallen, ", tally.floating, " floating, ", tally.kinks, " on a kink, ", tally.two_places,
            " with two resting places");
    CHECK(tally.floating < 10);
    CHECK(tally.kinks < tally.stable / 20);
    CHECK(tally.two_places <= 2);
    return tally;
}

}  // namespace

TEST_CASE("independent: the head stands where the second geometry puts it") {
    for (const auto& random_plan : {support::random_monopod, support::random_a_frame, support::random_tripod})
        for (std::uint64_t i = 1; i <= 60; ++i) {
            const Plan p = random_plan(i);
            const BuiltModel b = build_model(p);
            if (!b.faults.empty()) continue;
            CAPTURE(p.title);
            CHECK_WITHIN(static_cast<double>(second::distance(second::head_of(p), point(b.model.drawn_head_m))), 0.0, 1e-9);
        }
}

TEST_CASE("independent: the steep plan as rigged and holding, within 0.1 % or 1 N, stiffness within 1 %") {
    const Plan p = support::steep_plan();
    const Model m = build_model(p).model;
    for (const Asked& asked : k_asked) {
        CAPTURE(static_cast<int>(asked.id));
        const Pair pair = both(p, m, asked, m.drawn_head_m);
        REQUIRE(pair.engine.stable);
        CHECK(pair.minimum.left_N < 0.01);
        check_forces(pair);
        CHECK(check_stiffness(pair));
    }
}

TEST_CASE("independent: 600 random monopods, seven cases each") {
    const Tally tally = compare_random(support::random_monopod, 600);
    CHECK(tally.stable > 3000);
    CHECK(tally.fallen > 100);
}

TEST_CASE("independent: 300 random A-frames, seven cases each") {
    const Tally tally = compare_random(support::random_a_frame, 300);
    CHECK(tally.stable > 1000);
    CHECK(tally.fallen > 50);
}

TEST_CASE("independent: 300 random tripods, seven cases each") {
    const Tally tally = compare_random(support::random_tripod, 300);
    CHECK(tally.stable > 1000);
    CHECK(tally.fallen > 50);
}

// Stands as rigged, would stand under the whole load, and falls while the load comes on.
TEST_CASE("independent: a rig that falls on the way to its load is not found standing under it") {
    const Plan p = support::only_physics(support::random_monopod(14922));
    const second::Rig loaded = second::rig_of(p, second::head_of(p), second::Motion::Lowering);
    CHECK(moved_share({{}, loaded, second::minimise_loading(loaded, 40)}, p) > k_collapse_share);
    CHECK(moved_share({{}, loaded, second::minimise(loaded)}, p) < 0.1);
    const Evaluation e = evaluate(p);
    REQUIRE(e.outcomes.size() > 3);
    CHECK(e.outcomes[k_rigged].stable);
    CHECK_FALSE(e.outcomes[3].stable);
    CHECK(e.verdict == Verdict::NoGo);
}
