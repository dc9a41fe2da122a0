#include "engine/verdict/evaluate.hpp"
#include <doctest/doctest.h>

#include "tests/support/near_sound.hpp"
#include "tests/support/random_plan.hpp"

using namespace guywright;

// The verdict's shortcuts - cases that share where they start, no second look at a step that clearly works, eigenvalues without
// vectors, the sweep's own order of points - against a plain road that has none of them.
namespace {

/// One case on a plain road: from `start_m`, full steps of a trust region that always asks the energy.
struct Plain {
    bool stable = false;
    Vec3 head_m{};
};

Plain rest(const Model& m, const Pulls& pulls, Vec3 start_m) {
    const double enough_N = detail::balance_N(m, detail::scale_of(m), pulls), farthest_m = k_collapse_share * m.shortest_leg_m;
    double radius_m = 0.005 * m.shortest_leg_m;
    Plain p{false, start_m};
    for (int i = 0; i < 2000; ++i) {
        const Local here = local_at(m, pulls, p.head_m);
        const Eigen3 e = eigen(here.hessian_N_m);
        if (glm::length(here.gradient_N) <= enough_N && (e.value[0] > 0.0 || radius_m < 1e-9)) {
            p.stable = e.value[0] > k_stiffness_share * e.value[2];
            return p;
        }
        const Vec3 step_m = trust_step(here.gradient_N, here.hessian_N_m, radius_m);
        const Vec3 next_m = turn_about_feet(m, p.head_m, step_m);
        const Local next = local_at(m, pulls, next_m);
        const double quality = detail::step_quality(here, next, detail::predicted_J(here, step_m), energy_change(m, pulls, p.head_m, next_m - p.head_m));
        radius_m = detail::next_radius(radius_m, glm::length(step_m), quality);
        if (quality > 0.0) p.head_m = next_m;
        if (!(glm::length(p.head_m - m.drawn_head_m) <= farthest_m)) return p;
    }
    return p;
}

/// Whether every case of a plan as it stands keeps every rule of forces; -1: the plan cannot be built.
int keeps_forces(const Plan& plan) {
    const BuiltModel b = build_model(plan);
    if (!b.faults.empty()) return -1;
    Vec3 rigged_m = b.model.drawn_head_m, held_m = rigged_m;
    CheckTable table;
    for (const Case& setup : build_cases(b.model, plan.actions)) {
        const Plain p = rest(b.model, setup.pulls, setup.starts_held ? held_m : rigged_m);
        if (!p.stable) return 0;
        if (setup.id == CaseId::Rigged) rigged_m = held_m = p.head_m;
        if (setup.id == CaseId::Holding) held_m = p.head_m;
        check_forces(table, plan, b.model, solve_case(b.model, setup, p.head_m), k_no_case);
    }
    bool keeps = true;
    table.for_each([&](const Check& c) { keeps = keeps && c.status != CheckStatus::Fail; });
    return keeps ? 1 : 0;
}

bool fails_on_forces(const Evaluation& e, const CheckTable& table) {
    bool fails = e.load_limit.collapse_factor < 1.0 && e.outcomes[k_rigged].stable;
    table.for_each([&](const Check& c) { fails = fails || (is_force_rule(c.id) && c.status == CheckStatus::Fail); });
    return fails;
}

Plan random_of_all(std::uint64_t i) { return i % 3 == 0 ? support::random_tripod(i) : i % 3 == 1 ? support::random_monopod(i) : support::random_a_frame(i); }

}  // namespace

TEST_CASE("the plain road and the quick one agree on 10 000 random plans as measured") {
    int keeps = 0, breaks = 0;
    for (std::uint64_t i = 1; i <= 10000; ++i) {
        const Plan p = support::only_physics(random_of_all(i));
        const int plain = keeps_forces(p);
        if (plain < 0) continue;
        const Evaluation e = evaluate_as_measured(p);
        // a rig that stands under its load and falls on the way there is judged on that way, which the plain road does not go
        const bool quick = !fails_on_forces(e, e.checks);
        (plain == 1 ? keeps : breaks) += 1;
        if (e.load_limit.collapse_factor < 1.0 && e.outcomes[k_rigged].stable) continue;
        CAPTURE(p.title);
        CHECK(quick == (plain == 1));
    }
    MESSAGE("random plans: ", keeps, " keep the rules of forces, ", breaks, " do not");
    CHECK(keeps > 1000);
    CHECK(breaks > 1000);
}

TEST_CASE("no point of the box of errors that the plain road finds broken is in a rig called GO") {
    int go = 0, looked = 0;
    for (std::uint64_t i = 1; go < 40; ++i) {
        Plan p = i % 2 == 0 ? support::random_near_sound(i) : support::jittered(support::sound_a_frame(), i);
        if (!find_faults(p).empty() || evaluate(p).verdict != Verdict::Go) continue;
        ++go;
        CAPTURE(i);
        const std::vector<Measured> numbers = measured_numbers(p);
        support::Random r(i);
        for (std::size_t point = 0; point < k_box_points; ++point) {
            // the sweep's own points and, which it has never seen, corners drawn at random
            for (std::size_t n = 0; n < numbers.size(); ++n) numbers[n].move_to(point % 4 == 0 ? share_of_point(point, n) : r.chance(0.5) ? 1.0 : -1.0);
            ++looked;
            CHECK(keeps_forces(p) == 1);
        }
    }
    MESSAGE(looked, " points of ", go, " rigs");
}
