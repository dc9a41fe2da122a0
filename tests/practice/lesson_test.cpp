#include "engine/codec/plan_codec.hpp"
#include "engine/practice/lesson.hpp"

#include <doctest/doctest.h>

using namespace guywright;

namespace {

using R = Readout;

/// The verdict takes the whole box of errors; what is read as measured does not.
Evaluation judged(const Lesson& l, const Plan& plan) { return l.id == LessonId::MeasuringError ? evaluate(plan) : evaluate_as_measured(plan); }

double mover_at(const LessonMover& m, double share) { return m.from + share * (m.to - m.from); }

/// Whether some place of the movers reaches the goals of a lesson begun with `choice`.
bool can_be_reached(const Lesson& l, std::size_t choice) {
    constexpr int k_steps = 12;
    const std::vector<double> limits = goal_limits(l);
    const int second_steps = l.movers.size() > 1 ? k_steps : 0;
    for (int i = 0; i <= k_steps; ++i)
        for (int j = 0; j <= second_steps; ++j) {
            Plan p = l.start(choice);
            REQUIRE(set_mover(p, l.movers[0], mover_at(l.movers[0], static_cast<double>(i) / k_steps)));
            if (second_steps > 0) REQUIRE(set_mover(p, l.movers[1], mover_at(l.movers[1], static_cast<double>(j) / k_steps)));
            if (is_reached(l, limits, p, judged(l, p))) return true;
        }
    return false;
}

/// A reading over the range of one mover, all else as the lesson begins.
std::vector<double> along(LessonId id, std::size_t mover, R reading, double from, double to, std::size_t choice = 0) {
    constexpr int k_steps = 8;
    const Lesson& l = lesson(id);
    std::vector<double> out;
    for (int i = 0; i <= k_steps; ++i) {
        Plan p = l.start(choice);
        REQUIRE(set_mover(p, l.movers[mover], from + (to - from) * i / k_steps));
        const auto v = read(reading, p, judged(l, p));
        REQUIRE(v);
        out.push_back(*v);
    }
    return out;
}

bool only_rises(const std::vector<double>& v) {
    return std::adjacent_find(v.begin(), v.end(), [](double a, double b) { return !(b > a); }) == v.end();
}
bool only_falls(const std::vector<double>& v) {
    return std::adjacent_find(v.begin(), v.end(), [](double a, double b) { return !(b < a); }) == v.end();
}

const Outcome& case_of(const Evaluation& e, CaseId id) {
    for (const Outcome& o : e.outcomes)
        if (o.setup.id == id) return o;
    FAIL("no such case");
    return e.outcomes[0];
}

double value_of(R reading, const Plan& plan, const Evaluation& e) {
    const auto v = read(reading, plan, e);
    REQUIRE(v);
    return *v;
}

}  // namespace

TEST_CASE("lessons: ten, in the order of their ids, each with a plan that the codec takes and nothing still to be measured") {
    for (std::size_t i = 0; i < lessons().size(); ++i) {
        const Lesson& l = lessons()[i];
        CAPTURE(i);
        CHECK(l.id == static_cast<LessonId>(i));
        CHECK(l.movers.size() <= k_most_movers);
        CHECK(l.goals.size() <= k_most_goals);
        CHECK(l.readings.empty() == (l.id == LessonId::OrderOfWork));
        for (std::size_t choice = 0; choice < l.choices; ++choice) {
            const Plan plan = l.start(choice);
            const PlanRead back = read_plan(write_plan(plan));
            REQUIRE(back.ok());
            CHECK(back.plan == plan);
            CHECK(plan.not_measured.empty());
            CHECK_FALSE(evaluate_as_measured(plan).outcomes.empty());
        }
    }
}

TEST_CASE("lessons: none begins where it is to end, and each can be brought there with what may be moved") {
    for (const Lesson& l : lessons()) {
        if (l.id == LessonId::OrderOfWork) continue;
        CAPTURE(static_cast<int>(l.id));
        const Plan start = l.start(0);
        CHECK_FALSE(is_reached(l, goal_limits(l), start, judged(l, start)));
        CHECK(can_be_reached(l, l.choices - 1));
    }
}

TEST_CASE("lessons: with three guys the swing cannot be brought down to the goal of the slack guys") {
    CHECK_FALSE(can_be_reached(lesson(LessonId::Slack), 0));
}

TEST_CASE("lessons: the numbers move the way each lesson says") {
    // the leg comes under the pull: angle and hardest guy fall
    CHECK(only_falls(along(LessonId::Resultant, 0, R::ForceAngle, 0.0, 19.0)));
    CHECK(only_falls(along(LessonId::Resultant, 0, R::HardestGuy, 0.0, 19.0)));
    // a guy nearer to the leg works harder, and presses the leg harder
    CHECK(only_rises(along(LessonId::GuyAngle, 0, R::FirstGuy, 15.0, 58.0)));
    CHECK(only_falls(along(LessonId::GuyAngle, 0, R::FirstGuyAngle, 15.0, 58.0)));
    CHECK(only_rises(along(LessonId::GuyAngle, 0, R::LegPush, 15.0, 58.0)));
    // nearer and higher, the rope turns less over the edge, and raising takes less
    for (const R reading : {R::EdgeTurn, R::EdgeAdds, R::RaisePull}) {
        CHECK(only_falls(along(LessonId::EdgeWrap, 0, reading, -3.8, -1.9)));
        CHECK(only_falls(along(LessonId::EdgeWrap, 1, reading, 1.8, 3.2)));
    }
    CHECK(only_rises(along(LessonId::Slack, 0, R::SwingWay, 10.0, 20.0)));
    CHECK(only_rises(along(LessonId::Foot, 0, R::FootUsed, 10.0, 34.0)));
    CHECK(only_falls(along(LessonId::PulleyLoad, 0, R::PulleyTimes, 0.2, 6.0)));
    CHECK(only_rises(along(LessonId::Pretension, 0, R::LegPush, 0.2, 2.0)));
    CHECK(only_rises(along(LessonId::Pretension, 0, R::CordUsed, 0.4, 2.0)));
    CHECK(only_falls(along(LessonId::Pretension, 0, R::SwingWay, 0.0, 0.25)));
}

TEST_CASE("lessons: below 30 degrees the force in a guy climbs more than twice as fast as above") {
    const auto at = [](double inclination_deg) {
        const Lesson& l = lesson(LessonId::GuyAngle);
        Plan p = l.start(0);
        REQUIRE(set_mover(p, l.movers[0], inclination_deg));
        const Evaluation e = evaluate_as_measured(p);
        return std::pair{degrees(value_of(R::FirstGuyAngle, p, e)), value_of(R::FirstGuy, p, e)};
    };
    const auto flat = at(28.0), middle = at(40.0), steep = at(52.0);  // the same steps of angle
    CHECK(flat.first > middle.first);
    CHECK(middle.first == doctest::Approx(30.0).epsilon(0.02));
    CHECK(steep.second - middle.second > 2.0 * (middle.second - flat.second));
}

TEST_CASE("lessons: a load three times as heavy hardly changes how much of the friction a foot uses") {
    const auto used = along(LessonId::Foot, 1, R::FootUsed, 60.0, 180.0);
    const auto push = along(LessonId::Foot, 1, R::FootPush, 60.0, 180.0);
    CHECK(used.back() / used.front() < 1.05);
    CHECK(push.back() / push.front() > 1.8);
}

TEST_CASE("lessons: three guys and four have as many slack at rest, and differ in the swing") {
    const Lesson& l = lesson(LessonId::Slack);
    const Plan three = l.start(0), four = l.start(1);
    const Evaluation e3 = evaluate_as_measured(three), e4 = evaluate_as_measured(four);
    CHECK(value_of(R::SlackGuys, three, e3) == value_of(R::SlackGuys, four, e4));
    CHECK(value_of(R::SlackGuys, three, e3) > 0.0);
    CHECK(value_of(R::SwingWay, three, e3) > 2.0 * value_of(R::SwingWay, four, e4));
}

TEST_CASE("lessons: a worse compass turns GO into NO-GO and never the other way") {
    const Lesson& l = lesson(LessonId::MeasuringError);
    std::vector<double> go;
    for (const double error_deg : {2.0, 5.0, 8.0, 10.0, 15.0}) {
        Plan p = l.start(0);
        REQUIRE(set_mover(p, l.movers[0], error_deg));
        go.push_back(value_of(R::IsGo, p, evaluate(p)));
    }
    CHECK(go[1] == 1.0);
    CHECK(go[3] == 0.0);
    CHECK(std::is_sorted(go.rbegin(), go.rend()));
}

TEST_CASE("lessons: what is read out is what the evaluation has") {
    for (const Lesson& l : lessons()) {
        CAPTURE(static_cast<int>(l.id));
        const Plan p = l.start(l.choices - 1);
        const Evaluation e = judged(l, p);
        const Outcome& holding = case_of(e, CaseId::Holding);
        CHECK(value_of(R::ForceAngle, p, e) == holding.applied_force_angle_rad);
        CHECK(value_of(R::PulleyForce, p, e) == holding.pulley_N[0]);
        CHECK(value_of(R::PulleyTimes, p, e) == doctest::Approx(holding.pulley_N[0] / (p.ropes[0].load_kg * k_gravity)));
        CHECK(value_of(R::RestWay, p, e) == holding.head_shift_m);
        CHECK(value_of(R::EdgeTurn, p, e) == holding.setup.ropes[0].path.wrap_rad);
        CHECK(value_of(R::RaisePull, p, e) == case_of(e, CaseId::Raising).setup.ropes[0].haul_side_N);
        // friction over the edge is all that stands between the load and the head side
        const RopeState& raising = case_of(e, CaseId::Raising).setup.ropes[0];
        CHECK(value_of(R::EdgeAdds, p, e) == doctest::Approx(raising.head_side_N / e.model.ropes[0].weight_N - 1.0));
        // equal tension on both sides: the pulley carries twice the rope's tension times the sine of half the turn
        CHECK(value_of(R::PulleyForce, p, e) == doctest::Approx(2.0 * holding.setup.ropes[0].head_side_N * std::sin(0.5 * value_of(R::RopeTurn, p, e))));
        const double swing_m = std::max(glm::length(case_of(e, CaseId::SwingLeft).equilibrium.head_m - holding.equilibrium.head_m),
                                        glm::length(case_of(e, CaseId::SwingRight).equilibrium.head_m - holding.equilibrium.head_m));
        CHECK(value_of(R::SwingWay, p, e) == swing_m);
        if (e.model.guys.empty()) continue;
        CHECK(value_of(R::FirstGuy, p, e) == holding.equilibrium.guy_tension_N[0]);
        double most_N = 0.0;
        for (const double tension_N : holding.equilibrium.guy_tension_N) most_N = std::max(most_N, tension_N);
        CHECK(value_of(R::HardestGuy, p, e) == most_N);
        CHECK(degrees(value_of(R::FirstGuyAngle, p, e)) == doctest::Approx(e.checks.find(CheckId::GuyAngle, 0)->value));
    }
}

TEST_CASE("lessons: the foot's share is that of the rule of friction, the cord's that of the rule of strength") {
    Plan p = lesson(LessonId::Foot).start(0);
    p.actions = {.dynamic_factor = 1.0, .swing_deg = 0.0, .outward_deg = 0.0};
    p.edge.rope_friction = 0.0;
    p.ropes[0].pulley_efficiency = 1.0;  // every case is the holding one
    const Evaluation e = evaluate_as_measured(p);
    const Check* friction = e.checks.find(CheckId::FootFriction, 0);
    REQUIRE(friction != nullptr);
    CHECK(value_of(R::FootUsed, p, e) == doctest::Approx(friction->value / friction->limit).epsilon(1e-3));
    double used = 0.0;
    for (std::size_t i = 0; i < p.guys.size(); ++i) used = std::max(used, 1.0 - e.checks.find(CheckId::GuyStrength, i)->margin);
    CHECK(value_of(R::CordUsed, p, e) == doctest::Approx(used));
}

TEST_CASE("lessons: of a rig that falls nothing is read, and no goal is reached") {
    const Lesson& l = lesson(LessonId::Resultant);
    Plan p = l.start(0);
    p.frame.lean_deg = -30.0;
    const Evaluation e = evaluate_as_measured(p);
    REQUIRE_FALSE(case_of(e, CaseId::Holding).stable);
    for (std::size_t i = 0; i < k_readout_count; ++i) CHECK_FALSE(read(static_cast<R>(i), p, e));
    CHECK_FALSE(is_reached(l, goal_limits(l), p, e));
    CHECK_FALSE(is_kept({.reading = R::ForceAngle, .limit = 1.0}, 1.0, std::nullopt));
}

TEST_CASE("lessons: while measuring error is looked at there is neither GO nor a margin") {
    const Plan p = lesson(LessonId::MeasuringError).start(0);
    const Evaluation e = evaluate_as_measured(p);
    CHECK_FALSE(read(R::IsGo, p, e));
    CHECK_FALSE(read(R::LeastSpare, p, e));
    CHECK(read(R::LeastSpare, p, evaluate(p)));
}

TEST_CASE("lessons: a goal that depends on the start is a share of what the start reads, cut to the digits shown") {
    const Lesson& l = lesson(LessonId::GuyAngle);
    const Plan p = l.start(0);
    const double start_N = value_of(R::FirstGuy, p, evaluate_as_measured(p)), limit_N = goal_limits(l)[0];
    CHECK(limit_N <= 0.4 * start_N);
    CHECK(limit_N > 0.4 * start_N - 10.0);
    CHECK(std::fmod(limit_N + 1e-6, 10.0) < 1e-5);
}

TEST_CASE("lessons: what reads as the limit keeps the goal, a digit more does not") {
    const LessonGoal goal{.reading = R::ForceAngle, .limit = radians(5.0)};
    CHECK(is_kept(goal, goal.limit, radians(5.04)));
    CHECK_FALSE(is_kept(goal, goal.limit, radians(5.06)));
    CHECK_FALSE(is_kept(goal, goal.limit, NAN));
    const LessonGoal least{.reading = R::IsGo, .at_most = false, .limit = 1.0};
    CHECK(is_kept(least, 1.0, 1.0));
    CHECK_FALSE(is_kept(least, 1.0, 0.0));
    CHECK_FALSE(is_kept(least, 1.0, NAN));
}

TEST_CASE("lessons: a mover moves within its ends alone, and all guys at once where it says so") {
    const Lesson& l = lesson(LessonId::Pretension);
    Plan p = l.start(0);
    CHECK(set_mover(p, l.movers[0], 0.75));
    for (const GuyPlan& g : p.guys) CHECK(g.pretension_kN == 0.75);
    const Plan before = p;
    for (const double out : {-0.01, 2.01, static_cast<double>(NAN)}) CHECK_FALSE(set_mover(p, l.movers[0], out));
    CHECK(p == before);
    CHECK_FALSE(set_mover(p, {"guys[9].pretension_kN", 0.0, 1.0}, 0.5));
}

TEST_CASE("lessons: every question has a right answer and a wrong one, and they are the evaluation's") {
    for (const Lesson& l : lessons()) {
        if (l.question == LessonQuestion::None) continue;
        CAPTURE(static_cast<int>(l.id));
        const Plan p = l.start(0);
        const Evaluation e = judged(l, p);
        const auto options = options_of(l.question, p, e);
        CHECK(std::any_of(options.begin(), options.end(), [](const LessonOption& o) { return o.right; }));
        CHECK(std::any_of(options.begin(), options.end(), [](const LessonOption& o) { return !o.right; }));
        for (const LessonOption& o : options) {
            if (l.question == LessonQuestion::FatalGuy) CHECK(o.right == (e.guys_lost[o.part].equilibrium.status != SolveStatus::Solved));
            if (l.question == LessonQuestion::SlackGuy) CHECK(o.right == (case_of(e, CaseId::Holding).equilibrium.guy_tension_N[o.part] == 0.0));
        }
    }
}

TEST_CASE("lessons: nothing is right while there is no answer") {
    const Plan p = lesson(LessonId::MeasuringError).start(0);
    for (const LessonOption& o : options_of(LessonQuestion::GoOrNot, p, evaluate_as_measured(p))) CHECK_FALSE(o.right);
}
