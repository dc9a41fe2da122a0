#include "engine/advice/line_up.hpp"
#include "engine/advice/line_up_order.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

#include <functional>

using namespace guywright;

namespace {

struct Lined {
    Plan plan;
    Model model;
    LineUp line_up;
};
Lined lined(const Plan& plan) {
    const BuiltModel built = build_model(plan);
    REQUIRE(built.faults.empty());
    return {plan, built.model, find_line_up(plan, built.model)};
}
bool moves(const LineUp& l) { return !l.take_up_m.empty(); }

/// Random rigs of one and two legs whose plan has a model.
void for_random_rigs(std::uint64_t count, const std::function<void(const Lined&)>& look) {
    for (std::uint64_t i = 0; i < count; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i)})
            if (build_model(p).faults.empty()) look(lined(p));
}

/// The plan's own model, each guy taken in as told, looked at with its head where that is meant to bring it.
Model taken_in(const Lined& l) {
    Model m = l.model;
    for (std::size_t i = 0; i < m.guys.size(); ++i) take_up(m, i, l.line_up.take_up_m[i]);
    draw_head_at(m, l.plan, l.line_up.head_m);
    return m;
}

/// Degrees, of the holding case.
double angle_deg(const Model& m, const Actions& actions, Vec3 start_m) {
    const Cases cases = build_cases(m, actions);
    const Outcome rigged = solve_case(m, cases[k_rigged], start_m);
    Outcome holding = solve_case(m, cases[k_holding], rigged.equilibrium.head_m);
    if (!rigged.stable || !holding.stable) return std::nan("");
    read_angles(m, holding);
    return degrees(holding.applied_force_angle_rad);
}

Plan with_anchors_as_points(const Plan& p) {
    Plan out = p;
    const Model m = build_model(p).model;
    for (std::size_t i = 0; i < out.guys.size(); ++i) out.guys[i].anchor_m = m.guys[i].anchor_m;
    return out;
}

}  // namespace

TEST_CASE("line up: an upright leg goes forward until two guys would stand 180 degrees apart, and no farther") {
    Plan p = support::usual_plan();
    p.frame.lean_deg = 0.0;
    const Lined l = lined(p);
    CHECK(l.line_up.status == LineUpStatus::Stopped);
    REQUIRE(l.line_up.rule_stops);
    CHECK(l.line_up.stopped_by.id == CheckId::BearingGap);
    CHECK(degrees(l.line_up.angle_before_rad) > 20.0);
    CHECK(degrees(l.line_up.angle_after_rad) < 3.0);
    CHECK(l.line_up.after.deg > 25.0);
    CHECK_WITHIN(std::remainder(l.line_up.after.bearing_deg, 360.0), 0.0, 1e-6);  // the rig is symmetric
    CHECK(l.line_up.take_up_m[0] < -0.5);                                         // back is paid out
    CHECK_WITHIN(l.line_up.take_up_m[1], l.line_up.take_up_m[2], 1e-9);
    CHECK(l.line_up.take_up_m[1] > 0.2);
    const Model after = build_model(l.line_up.plan).model;
    CHECK(largest_bearing_gap_deg(after) < 180.0);
    Plan farther = p;
    REQUIRE(lean_to(farther, l.model, {l.line_up.after.deg + 0.2, 0.0}));
    CHECK(largest_bearing_gap_deg(build_model(farther).model) > 180.0);
}

TEST_CASE("line up: a leg that leans short of the pull is brought onto it") {
    const Lined l = lined(support::usual_plan());
    CHECK(l.line_up.status == LineUpStatus::LinedUp);
    CHECK(degrees(l.line_up.angle_before_rad) > 3.0);
    CHECK(degrees(l.line_up.angle_after_rad) < 1e-3);
    CHECK_WITHIN(l.line_up.before.deg, 22.0, 0.0);
    CHECK(l.line_up.after.deg > 25.0);
}

TEST_CASE("line up: nothing to do for a leg along the force; nothing to move on three legs") {
    CHECK(lined(support::go_plan()).line_up.status == LineUpStatus::InLine);
    CHECK_FALSE(moves(lined(support::go_plan()).line_up));
    const LineUp tripod = lined(support::random_tripod(3)).line_up;
    CHECK(tripod.status == LineUpStatus::ThreeLegs);
    CHECK_FALSE(moves(tripod));
}

TEST_CASE("line up: taking the guys in as told brings the force to the angle it says, within 0.2 degrees") {
    int moved = 0, walked = 0;
    for_random_rigs(400, [&](const Lined& l) {
        if (!moves(l.line_up)) return;
        ++moved;
        const double said_deg = degrees(l.line_up.angle_after_rad);
        CAPTURE(l.plan.title);
        CHECK_WITHIN(angle_deg(taken_in(l), l.plan.actions, l.line_up.head_m), said_deg, 0.2);
        const LineUpOrder order = find_order(l.plan, l.model, l.line_up);
        if (order.status != OrderStatus::Found) return;
        ++walked;  // now as it happens on site, from where the head was
        Model m = l.model;
        Vec3 head_m = solve_equilibrium(m, {}, m.drawn_head_m).head_m;
        for (const TakeUpStep& s : order.steps) {
            take_up(m, s.guy, s.take_up_m);
            m.drawn_head_m = head_m;
            head_m = solve_equilibrium(m, {}, head_m).head_m;
        }
        draw_head_at(m, l.plan, l.line_up.head_m);
        CHECK_WITHIN(angle_deg(m, l.plan.actions, head_m), said_deg, 0.2);
    });
    CHECK(moved > 300);
    CHECK(walked > 30);
}

TEST_CASE("line up: never away from the force; all the way means none of the angle is left") {
    for_random_rigs(400, [](const Lined& l) {
        CAPTURE(l.plan.title);
        if (l.line_up.stands_before) CHECK(l.line_up.angle_after_rad <= l.line_up.angle_before_rad);
        if (l.line_up.status == LineUpStatus::LinedUp) CHECK(degrees(l.line_up.angle_after_rad) < 1e-3);
        if (l.line_up.status == LineUpStatus::Stopped && !moves(l.line_up)) CHECK(l.line_up.head_m == l.model.drawn_head_m);
    });
}

TEST_CASE("line up: the plan it leaves moves the head and nothing else; with its anchors as points it computes to the same") {
    int looked_at = 0;
    for_random_rigs(150, [&](const Lined& l) {
        if (!moves(l.line_up)) return;
        ++looked_at;
        CAPTURE(l.plan.title);
        CHECK(find_faults(l.line_up.plan).empty());
        const Evaluation e = evaluate_as_measured(l.line_up.plan), points = evaluate_as_measured(with_anchors_as_points(l.line_up.plan));
        REQUIRE(e.outcomes.size() == points.outcomes.size());
        CHECK_VEC_WITHIN(e.model.drawn_head_m, l.line_up.head_m, 1e-12);
        CHECK_WITHIN(e.outcomes[k_holding].applied_force_angle_rad, l.line_up.angle_after_rad, 1e-9);
        CHECK_WITHIN(points.outcomes[k_holding].applied_force_angle_rad, l.line_up.angle_after_rad, 1e-7);
        for (std::size_t i = 0; i < e.model.guys.size(); ++i) {
            CHECK_VEC_WITHIN(e.model.guys[i].anchor_m, l.model.guys[i].anchor_m, 1e-9);
            CHECK_WITHIN(l.model.guys[i].rest_length_m - e.model.guys[i].rest_length_m, l.line_up.take_up_m[i], 1e-12);
            const double stretch_m = glm::length(l.line_up.head_m - e.model.guys[i].anchor_m) - e.model.guys[i].rest_length_m;
            CHECK_WITHIN(e.model.guys[i].stiffness_N_m * stretch_m, 1000.0 * l.plan.guys[i].pretension_kN, 1e-6);
        }
        for (std::size_t i = 0; i < e.model.ropes.size(); ++i) CHECK_VEC_WITHIN(e.model.ropes[i].haul_m, l.model.ropes[i].haul_m, 1e-9);
    });
    CHECK(looked_at > 80);
}

TEST_CASE("line up: no rule of the drawing that was kept is broken at the new head, and it stands") {
    for_random_rigs(300, [](const Lined& l) {
        if (!moves(l.line_up)) return;
        CAPTURE(l.plan.title);
        const Evaluation before = evaluate_as_measured(l.plan), after = evaluate_as_measured(l.line_up.plan);
        CHECK(after.outcomes[k_rigged].stable);
        CHECK(after.outcomes[k_holding].stable);
        after.checks.for_each([&](const Check& c) {
            if (c.id >= CheckId::Solved || c.status != CheckStatus::Fail) return;
            const Check* was = before.checks.find(c.id, c.subject);
            REQUIRE(was != nullptr);
            CHECK(was->status == CheckStatus::Fail);
        });
    });
}

TEST_CASE("line up: a rig that does not stand under load may be told where it would") {
    int mended = 0;
    for_random_rigs(400, [&](const Lined& l) {
        if (l.line_up.stands_before || !moves(l.line_up)) return;
        CAPTURE(l.plan.title);
        CHECK(evaluate_as_measured(l.line_up.plan).outcomes[k_holding].stable);
        ++mended;
    });
    CHECK(mended > 0);
}

TEST_CASE("line up order: as told no guy goes slack, none is overloaded, the angle never grows beyond the start, and it arrives") {
    int found = 0, steps = 0;
    const auto look = [&](const Lined& l) {
        const LineUpOrder order = find_order(l.plan, l.model, l.line_up);
        if (order.status != OrderStatus::Found) {
            CHECK(order.steps.empty());
            return;
        }
        ++found;
        CAPTURE(l.plan.title);
        Model m = l.model;
        Equilibrium at = solve_equilibrium(m, {}, m.drawn_head_m);
        const Equilibrium start = at;
        const double start_rad = angle_as_rigged_rad(l.plan, m, at.head_m);
        std::vector<double> done_m(m.guys.size(), 0.0);
        for (const TakeUpStep& s : order.steps) {
            CHECK(std::abs(s.take_up_m) <= k_step_sizes_m.front() + k_least_step_m);
            CHECK(std::abs(s.take_up_m) > k_least_last_step_m);
            take_up(m, s.guy, s.take_up_m);
            done_m[s.guy] += s.take_up_m;
            m.drawn_head_m = at.head_m;
            at = solve_equilibrium(m, {}, at.head_m);
            REQUIRE(is_stable(at));
            for (std::size_t i = 0; i < m.guys.size(); ++i) {
                CHECK(at.guy_tension_N[i] > 0.0);
                CHECK(at.guy_tension_N[i] <= std::max(guy_allowed_N(l.plan.guys[i], l.plan.limits), start.guy_tension_N[i]) + 1e-3);
            }
            CHECK(angle_as_rigged_rad(l.plan, m, at.head_m) <= start_rad + 1e-9);
            ++steps;
        }
        for (std::size_t i = 0; i < m.guys.size(); ++i) CHECK_WITHIN(done_m[i], l.line_up.take_up_m[i], k_least_last_step_m + 1e-12);
    };
    for_random_rigs(300, look);
    for (Plan p : {support::usual_plan(), support::steep_plan()}) {
        const int before = found;
        look(lined(p));
        CHECK(found == before + 1);
        p.frame.lean_deg = 2.0;
        look(lined(p));
    }
    CHECK(found > 30);
    CHECK(steps > 500);
}

TEST_CASE("line up order: a guy that hangs loose as rigged is named, and no order is made up") {
    Plan p = support::usual_plan();
    for (auto& g : p.guys) g.pretension_kN = 0.0;
    p.guys[0].pretension_kN = 2.0;  // drags the head back: the front guys cannot pull it up, but the leg stands on all three
    p.guys.push_back(support::guy("rear", 170.0, 25.0));
    p.guys.back().pretension_kN = 0.0;
    const Lined l = lined(p);
    REQUIRE(moves(l.line_up));
    const LineUpOrder order = find_order(l.plan, l.model, l.line_up);
    CHECK(order.status == OrderStatus::SlackAtStart);
    CHECK(order.slack_guy == 3);
    CHECK(order.steps.empty());
    CHECK(find_order(l.plan, l.model, LineUp{}).status == OrderStatus::NotComputed);
}
