#include "engine/cases/build_cases.hpp"
#include "engine/checks/case_checks.hpp"
#include "engine/model/build_model.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

/// A holding outcome of a sound plan with round strengths, to be bent one number at a time.
struct Bench {
    Plan plan = support::usual_plan();
    Model model;
    Outcome outcome;

    Bench() {
        plan.guys[0].strength_kN = 20.0;
        plan.guys[0].parts = 2;
        plan.guys[0].knot_efficiency = 0.5;
        plan.guys[0].anchor_strength_kN = 16.0;
        plan.frame.legs[0].rating_kN = 20.0;
        plan.ropes[0].pulley_strength_kN = 40.0;
        plan.ropes[0].connector_strength_kN = 30.0;
        model = build_model(plan).model;
        const Cases cases = build_cases(model, plan.actions);
        outcome = solve_case(model, cases[1], model.drawn_head_m);
        read_angles(model, outcome);
        REQUIRE(outcome.stable);
    }
    void hold_foot(FootPlan foot) {
        plan.feet[0] = std::move(foot);
        model.legs[0].foot_ties = detail::ways_of(plan.feet[0].ties, model.legs[0].ground_slope_rad);
    }
    [[nodiscard]] CheckTable table() const {
        CheckTable t;
        check_forces(t, plan, model, outcome, 1);
        check_angles(t, plan, model, outcome, 1);
        return t;
    }
    [[nodiscard]] Check row(CheckId id, std::size_t subject = 0) const {
        const CheckTable t = table();
        const Check* c = t.find(id, subject);
        REQUIRE(c != nullptr);
        return *c;
    }
    [[nodiscard]] CheckStatus status(CheckId id, std::size_t subject = 0) const { return row(id, subject).status; }
};

}  // namespace

TEST_CASE("strength of a guy: all parts, weakened by the knot") {
    CHECK_WITHIN(guy_strength_kN(Bench().plan.guys[0]), 20.0, 1e-12);
    GuyPlan g;
    g.strength_kN = 9.8;
    g.parts = 3;
    g.knot_efficiency = 0.6;
    CHECK_WITHIN(guy_strength_kN(g), 17.64, 1e-12);
}

TEST_CASE("every strength: kept at its limit, broken just above") {
    const auto at = [](CheckId id, auto member, double limit_N) {
        Bench b;
        double& force_N = member(b.outcome);
        for (const auto& [factor, wanted] : {std::pair{1.0, CheckStatus::Pass}, {1.0 + 1e-9, CheckStatus::Fail}, {1.0 - 1e-9, CheckStatus::Pass}}) {
            force_N = limit_N * factor;
            CAPTURE(std::string(info(id).key));
            CHECK(b.status(id) == wanted);
        }
        force_N = std::nan("");
        CHECK(b.status(id) == CheckStatus::Fail);
    };
    at(
        CheckId::GuyStrength, [](Outcome& o) -> double& { return o.equilibrium.guy_tension_N[0]; }, 2000.0);
    at(
        CheckId::AnchorStrength, [](Outcome& o) -> double& { return o.equilibrium.guy_tension_N[0]; }, 4000.0);
    at(
        CheckId::LegStrength, [](Outcome& o) -> double& { return o.equilibrium.leg_compression_N[0]; }, 4000.0);
    at(
        CheckId::PulleyStrength, [](Outcome& o) -> double& { return o.pulley_N[0]; }, 8000.0);
    at(
        CheckId::ConnectorStrength, [](Outcome& o) -> double& { return o.pulley_N[0]; }, 6000.0);
}

TEST_CASE("a held leg in tension is judged by its size") {
    Bench b;
    b.outcome.equilibrium.leg_compression_N[0] = -4001.0;
    CHECK(b.status(CheckId::LegStrength) == CheckStatus::Fail);
}

TEST_CASE("arrest: its own, smaller safety factors") {
    Bench b;
    b.outcome.setup.arrest = true;
    b.outcome.equilibrium.guy_tension_N[0] = 5000.0;
    CHECK(b.status(CheckId::GuyStrength) == CheckStatus::Pass);     // 20 / 4
    CHECK(b.status(CheckId::AnchorStrength) == CheckStatus::Pass);  // 16 / 2
    b.outcome.equilibrium.guy_tension_N[0] = 5000.01;
    CHECK(b.status(CheckId::GuyStrength) == CheckStatus::Fail);
    b.outcome.pulley_N[0] = 10000.0;
    CHECK(b.status(CheckId::ConnectorStrength) == CheckStatus::Pass);  // 30 / 3
    b.outcome.pulley_N[0] = 10000.01;
    CHECK(b.status(CheckId::ConnectorStrength) == CheckStatus::Fail);
}

TEST_CASE("guy slack: a caution beyond a tenth of a millimetre, never a NO-GO") {
    Bench b;
    b.outcome.equilibrium.guy_loose_m[1] = 1e-4;
    CHECK(b.status(CheckId::GuySlack, 1) == CheckStatus::Pass);
    b.outcome.equilibrium.guy_loose_m[1] = 1.01e-4;
    CHECK(b.status(CheckId::GuySlack, 1) == CheckStatus::Caution);
    b.outcome.equilibrium.guy_loose_m[1] = 1.0;
    CHECK(b.status(CheckId::GuySlack, 1) == CheckStatus::Caution);
    CHECK_WITHIN(b.row(CheckId::GuySlack, 1).value, 1000.0, 1e-9);
}

TEST_CASE("guy angle against the applied force: equal is NO-GO, and just above is not") {
    Bench b;
    b.outcome.guy_angle_rad[2] = b.outcome.applied_force_angle_rad = 0.4;
    CHECK(b.status(CheckId::GuyAngleOverForce, 2) == CheckStatus::Fail);
    b.outcome.guy_angle_rad[2] = 0.4 + 1e-9;
    CHECK(b.status(CheckId::GuyAngleOverForce, 2) == CheckStatus::Pass);
    b.outcome.guy_angle_rad[2] = 0.4 - 1e-9;
    CHECK(b.status(CheckId::GuyAngleOverForce, 2) == CheckStatus::Fail);
}

TEST_CASE("applied-force angle: a caution above 15 degrees, never a NO-GO") {
    Bench b;
    b.outcome.applied_force_angle_rad = radians(14.999);
    CHECK(b.status(CheckId::AppliedForceAngle) == CheckStatus::Pass);
    b.outcome.applied_force_angle_rad = radians(15.001);
    CHECK(b.status(CheckId::AppliedForceAngle) == CheckStatus::Caution);
    b.outcome.applied_force_angle_rad = radians(80);
    CHECK(b.status(CheckId::AppliedForceAngle) == CheckStatus::Caution);
}

TEST_CASE("without a rope there is no applied force to judge by") {
    Bench b;
    b.outcome.resultant_N = {0, 0, 0};
    CHECK(b.table().find(CheckId::AppliedForceAngle) == nullptr);
    CHECK(b.table().find(CheckId::GuyAngleOverForce, 0) == nullptr);
}

TEST_CASE("head movement: caution above 5 % of the leg, NO-GO above 15 %") {
    Bench b;
    const auto status_at = [&](double percent) {
        b.outcome.head_shift_m = percent / 100.0 * 2.7;
        return b.status(CheckId::HeadShift);
    };
    CHECK(status_at(4.999) == CheckStatus::Pass);
    CHECK(status_at(5.001) == CheckStatus::Caution);
    CHECK(status_at(14.999) == CheckStatus::Caution);
    CHECK(status_at(15.001) == CheckStatus::Fail);
}

TEST_CASE("a foot that lifts is NO-GO beyond a tenth of a millimetre, and then nothing else is said of it") {
    Bench b;
    b.outcome.equilibrium.leg_gap_m[0] = 1e-4;
    CHECK(b.status(CheckId::FootLifts) == CheckStatus::Pass);
    b.outcome.equilibrium.leg_gap_m[0] = 1.01e-4;
    CHECK(b.status(CheckId::FootLifts) == CheckStatus::Fail);
    for (const CheckId id : {CheckId::FootFriction, CheckId::FootPin, CheckId::FootTies}) CHECK(b.table().find(id) == nullptr);
}

TEST_CASE("a foot held down: a caution with the pull as soon as it pulls up, since nothing says what that may be") {
    Bench b;
    b.outcome.foot_reaction_N[0] = {0, 0, -500};
    CHECK(b.table().find(CheckId::FootHeldDown) == nullptr);  // not held down
    b.model.legs[0].held_down = true;
    CHECK(b.status(CheckId::FootHeldDown) == CheckStatus::Caution);
    CHECK_WITHIN(b.row(CheckId::FootHeldDown).value, 0.5, 1e-12);
    b.outcome.foot_reaction_N[0].z = 0.0;
    CHECK(b.status(CheckId::FootHeldDown) == CheckStatus::Pass);
    b.outcome.foot_reaction_N[0].z = -1e-6;
    CHECK(b.status(CheckId::FootHeldDown) == CheckStatus::Caution);
}

TEST_CASE("foot by friction alone: at mu N it holds, above it slides") {
    Bench b;
    b.hold_foot({0.5, 0.0, {}});
    b.outcome.foot_reaction_N[0] = {-300, 400, 1000};
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Caution);  // it holds, with nothing to spare
    CHECK_WITHIN(b.row(CheckId::FootFriction).margin, 0.0, 1e-12);
    b.outcome.foot_reaction_N[0] = {-300, 400.001, 1000};
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
    b.outcome.foot_reaction_N[0] = {-1, 0, -500};  // held down, pulled up: no friction
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
}

TEST_CASE("foot by friction alone: nobody measures it, so that less than a third to spare is a caution, and ties or a pin end it") {
    Bench b;
    b.hold_foot({0.6, 0.0, {}});
    b.outcome.foot_reaction_N[0] = {-399, 0, 1000};
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Pass);
    b.outcome.foot_reaction_N[0] = {-401, 0, 1000};
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Caution);
    b.hold_foot({0.6, 0.0, {{0.0, 9.8}}});  // a tie ahead holds nothing of a push ahead
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Caution);
    b.hold_foot({0.6, 0.0, {{90.0, 9.8}, {180.0, 9.8}}});
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Pass);
    CHECK(b.status(CheckId::FootTies) == CheckStatus::Pass);
    b.hold_foot({0.6, 20.0, {}});
    CHECK(b.table().find(CheckId::FootFriction) == nullptr);
    CHECK(b.status(CheckId::FootPin) == CheckStatus::Pass);
}

TEST_CASE("foot: a push of mere rounding leaves all of the friction to spare") {
    Bench b;
    b.hold_foot({0.5, 0.0, {}});
    b.outcome.foot_reaction_N[0] = {1e-10, 0, 1000};
    CHECK(b.row(CheckId::FootFriction).margin == 1.0);
    b.outcome.foot_reaction_N[0] = {0, 0, 1000};
    CHECK(b.row(CheckId::FootFriction).margin == 1.0);
}

TEST_CASE("foot on a slope: friction and what pushes along it are those of the slope") {
    Bench b;
    b.model.legs[0].ground_slope_rad = radians(30);
    b.hold_foot({0.6, 0.0, {}});
    const Vec3 off_ground{0.5, 0.0, std::sqrt(0.75)}, down_slope{std::sqrt(0.75), 0.0, -0.5};
    b.outcome.foot_reaction_N[0] = 1000.0 * off_ground - 599.0 * down_slope;
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Caution);
    CHECK_WITHIN(b.row(CheckId::FootFriction).value, 0.599, 1e-9);
    CHECK_WITHIN(b.row(CheckId::FootFriction).limit, 0.6, 1e-9);
    b.outcome.foot_reaction_N[0] = 1000.0 * off_ground - 601.0 * down_slope;
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
    b.outcome.foot_reaction_N[0] = {0, 0, 1000};  // straight down: the slope is steeper than friction's angle where tan 30 > mu
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Caution);
    b.hold_foot({0.57, 0.0, {}});
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
    b.outcome.foot_reaction_N[0] = {900, 0, 200};  // off the slope: nothing presses it down
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
}

TEST_CASE("foot on a slope: a tie up it holds what slides down, a tie down it does not") {
    Bench b;
    b.model.legs[0].ground_slope_rad = radians(45);
    b.outcome.foot_reaction_N[0] = {0, 0, 1000};  // 707 down the slope, 707 onto it
    b.hold_foot({0.2, 0.0, {{180.0, 9.8}}});
    CHECK(b.status(CheckId::FootTies) == CheckStatus::Pass);
    CHECK_WITHIN(b.row(CheckId::FootTies).value, 0.8 * std::sqrt(0.5), 1e-9);
    b.hold_foot({0.2, 0.0, {{0.0, 9.8}}});
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
}

TEST_CASE("foot by a pin: takes what friction leaves, up to its shear over the factor for metal") {
    Bench b;
    b.hold_foot({0.5, 2.0, {}});
    b.outcome.foot_reaction_N[0] = {-900, 0, 1000};  // 400 over friction; 2 kN / 5
    CHECK(b.status(CheckId::FootPin) == CheckStatus::Pass);
    CHECK_WITHIN(b.row(CheckId::FootPin).value, 0.4, 1e-12);
    b.outcome.foot_reaction_N[0].x = -900.001;
    CHECK(b.status(CheckId::FootPin) == CheckStatus::Fail);
}

TEST_CASE("foot by ties: the worst tie speaks, over the factor for soft goods") {
    Bench b;
    b.hold_foot({0.5, 0.0, {{0.0, 9.8}, {180.0, 4.0}}});
    b.outcome.foot_reaction_N[0] = {-900, 0, 1000};  // pushed ahead: the back tie carries 400 of 4 kN / 10
    CHECK(b.status(CheckId::FootTies) == CheckStatus::Pass);
    CHECK_WITHIN(b.row(CheckId::FootTies).value, 0.4, 1e-9);
    CHECK_WITHIN(b.row(CheckId::FootTies).margin, 0.0, 1e-9);
    b.outcome.foot_reaction_N[0].x = -900.001;
    CHECK(b.status(CheckId::FootTies) == CheckStatus::Fail);
}

TEST_CASE("foot: ties that cannot hold leave friction to answer for it") {
    Bench b;
    b.hold_foot({0.5, 0.0, {{0.0, 9.8}}});
    b.outcome.foot_reaction_N[0] = {-900, 0, 1000};
    CHECK(b.status(CheckId::FootFriction) == CheckStatus::Fail);
    CHECK(b.table().find(CheckId::FootTies) == nullptr);
}

TEST_CASE("foot: a broken way to hold it never hides behind another, a sound one is enough") {
    Bench b;
    b.outcome.foot_reaction_N[0] = {-900, 0, 1000};
    b.hold_foot({0.5, 0.1, {{180.0, 40.0}}});  // a hopeless pin, a strong tie
    CHECK(b.status(CheckId::FootTies) == CheckStatus::Pass);
    b.hold_foot({0.5, 50.0, {{180.0, 0.1}}});  // a strong pin, a thread for a tie
    CHECK(b.status(CheckId::FootPin) == CheckStatus::Pass);
    CHECK(b.table().find(CheckId::FootTies) == nullptr);
}

TEST_CASE("standing: fails where the outcome is not stable, whatever the forces") {
    Bench b;
    CHECK(b.status(CheckId::Standing) == CheckStatus::Pass);
    CHECK(b.row(CheckId::Standing).margin > 0.0);
    CHECK(b.row(CheckId::Standing).margin < 1.0);
    b.outcome.stable = false;
    CHECK(b.status(CheckId::Standing) == CheckStatus::Fail);
}

TEST_CASE("standing: the margin is what is left of the stiffness without the leg's own push") {
    Bench b;
    b.outcome.equilibrium.min_stiffness_N_m = 3000.0;
    b.outcome.equilibrium.leg_compression_N[0] = 2700.0;  // over 2.7 m: 1000 N/m
    CHECK_WITHIN(b.row(CheckId::Standing).margin, 0.75, 1e-12);
}

TEST_CASE("without an answer only that is said: nothing is judged on numbers that are no equilibrium") {
    for (const SolveStatus s : {SolveStatus::NotRun, SolveStatus::MaxIterations}) {
        Bench b;
        b.outcome.equilibrium.status = s;
        b.outcome.stable = false;
        CHECK(b.status(CheckId::Solved) == CheckStatus::Fail);
        int rows = 0;
        b.table().for_each([&](const Check&) { ++rows; });
        CHECK(rows == 1);
    }
}

TEST_CASE("a leg that falls fails by not standing, not by lack of an answer") {
    Bench b;
    b.outcome.equilibrium.status = SolveStatus::Collapsed;
    b.outcome.stable = false;
    CHECK(b.status(CheckId::Solved) == CheckStatus::Pass);
    CHECK(b.status(CheckId::Standing) == CheckStatus::Fail);
    CHECK(b.table().find(CheckId::GuyStrength, 0) == nullptr);
}

TEST_CASE("standing: a head that keeps less than a tenth of its stiffness is said to stand barely") {
    Bench b;
    b.outcome.equilibrium.leg_compression_N[0] = 2700.0;  // over 2.7 m: 1000 N/m
    b.outcome.equilibrium.min_stiffness_N_m = 1000.0 / 9.0 * 1.001;
    CHECK(b.status(CheckId::Standing) == CheckStatus::Pass);
    b.outcome.equilibrium.min_stiffness_N_m = 1000.0 / 9.0 * 0.999;
    CHECK(b.status(CheckId::Standing) == CheckStatus::Caution);
}

TEST_CASE("a foot that a hobble holds has what is left of the friction of all feet to spare") {
    Plan p = support::usual_plan();
    p.frame.kind = FrameKind::AFrame;
    p.frame.legs = {LegPlan{.foot_m = {-2, -0.9, 0}}, LegPlan{.foot_m = {-2, 0.9, 0}}};
    p.feet = {FootPlan{.friction = 0.1, .pin_shear_kN = 0.0, .ties = {}}, FootPlan{.friction = 0.1, .pin_shear_kN = 0.0, .ties = {}}};
    const auto foot = [&](double outward_N = 0.0) {
        const Model m = build_model(p).model;
        Outcome o = solve_case(m, build_cases(m, p.actions)[1], m.drawn_head_m);
        REQUIRE(o.stable);
        o.foot_reaction_N[0] = {outward_N, 500.0, 1500.0};  // the feet spread
        o.foot_reaction_N[1] = {outward_N, -500.0, 1500.0};
        CheckTable t;
        check_forces(t, p, m, o, 1);
        return t;
    };
    CHECK(foot().find(CheckId::FootFriction, 0)->status == CheckStatus::Fail);
    p.frame.hobbles = {Hobble{0, 1, 9.8}};
    const CheckTable held = foot();
    CHECK(held.find(CheckId::FootFriction, 0)->status == CheckStatus::Pass);
    CHECK(held.find(CheckId::FootFriction, 0)->margin == 1.0);                   // nothing but the hobble holds what spreads them
    CHECK_WITHIN(foot(90.0).find(CheckId::FootFriction, 0)->margin, 0.4, 1e-9);  // each foot pushes 90 N of the 150 that its friction gives
    CHECK(foot(151.0).find(CheckId::FootFriction, 0)->status == CheckStatus::Fail);
    CHECK_WITHIN(held.find(CheckId::HobbleStrength, 0)->value, 0.35, 0.001);
}
