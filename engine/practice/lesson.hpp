#pragma once
#include "engine/plan/numbers.hpp"
#include "engine/practice/lesson_plans.hpp"
#include "engine/practice/lesson_reading.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace guywright {

/// One idea each.
enum class LessonId : unsigned char { Resultant, GuyAngle, EdgeWrap, Slack, Redundancy, Foot, PulleyLoad, Pretension, MeasuringError, OrderOfWork };
inline constexpr std::size_t k_lesson_count = 10;
inline constexpr std::size_t k_most_movers = 2;
inline constexpr std::size_t k_most_goals = 2;

/// What the trainee may move: one number of the plan, or one in all of a kind alike. Ends in the plan's unit.
struct LessonMover {
    std::string_view path;  ///< of the number that the slider shows
    double from = 0.0, to = 0.0;
    bool all_guys = false;  ///< `path` is that of guy 0, and every guy gets the same
};

/// What has to be brought about. `limit` in SI, or of what the lesson begins with.
struct LessonGoal {
    Readout reading;
    bool at_most = true;
    double limit = 0.0;
    bool of_start = false;
};

/// What is asked before anything is moved. The engine knows the answer.
enum class LessonQuestion : unsigned char {
    None,
    SlackGuy,     ///< which guy goes slack under the load
    FatalGuy,     ///< which guy cannot be lost
    PulleyTimes,  ///< how many times the load the pulley carries
    GoOrNot       ///< the verdict
};

/// One lesson as data.
struct Lesson {
    LessonId id;
    Plan (*start)(std::size_t choice);  ///< the rig it begins with
    std::size_t choices = 1;            ///< of rigs
    std::vector<LessonMover> movers;
    std::vector<Readout> readings;  ///< the first is what it is about
    std::vector<LessonGoal> goals;  ///< all of them at once; none: the order of work (lesson_order.hpp)
    LessonQuestion question = LessonQuestion::None;
    CaseId shown = CaseId::Holding;  ///< the case to be looked at
};

/// All ten, in the order in which they are taken.
// clang-format off
inline const std::array<Lesson, k_lesson_count>& lessons() {
    using R = Readout;
    static const std::array<Lesson, k_lesson_count> k_lessons{{
        {.id = LessonId::Resultant, .start = detail::upright_leg, .movers = {{"frame.lean_deg", 0.0, 32.0}, {"ropes[0].haul.distance_m", 3.0, 15.0}},
         .readings = {R::ForceAngle, R::HardestGuy, R::LegPush}, .goals = {{.reading = R::ForceAngle, .limit = radians(5.0)}}},
        {.id = LessonId::GuyAngle, .start = detail::steep_back_guy, .movers = {{"guys[0].inclination_deg", 15.0, 58.0}},
         .readings = {R::FirstGuy, R::FirstGuyAngle, R::LegPush}, .goals = {{.reading = R::FirstGuy, .limit = 0.4, .of_start = true}}},
        {.id = LessonId::EdgeWrap, .start = detail::rope_on_the_edge,
         .movers = {{"frame.foot_m[0][0]", -3.8, -1.9}, {"frame.leg_length_m[0]", 1.8, 3.2}},
         .readings = {R::EdgeAdds, R::RaisePull, R::EdgeTurn, R::GroundAdds}, .goals = {{.reading = R::EdgeAdds, .limit = 0.05}}, .shown = CaseId::Raising},
        {.id = LessonId::Slack, .start = detail::leaning_far_out, .choices = 2, .movers = {{"actions.swing_deg", 10.0, 20.0}},
         .readings = {R::SwingWay, R::SlackGuys, R::RestWay}, .goals = {{.reading = R::SwingWay, .limit = 0.5, .of_start = true}},
         .question = LessonQuestion::SlackGuy, .shown = CaseId::SwingRight},
        {.id = LessonId::Redundancy, .start = detail::fifth_guy, .movers = {{"guys[4].bearing_deg", 70.0, 290.0}},
         .readings = {R::FatalGuys, R::HardestGuy}, .goals = {{.reading = R::FatalGuys}}, .question = LessonQuestion::FatalGuy},
        {.id = LessonId::Foot, .start = detail::free_foot, .movers = {{"frame.lean_deg", 10.0, 34.0}, {"ropes[0].load_kg", 50.0, 250.0}},
         .readings = {R::FootUsed, R::FootPush, R::FootHolds, R::HardestGuy}, .goals = {{.reading = R::FootUsed, .limit = 1.0}}},
        {.id = LessonId::PulleyLoad, .start = detail::haul_straight_down,
         .movers = {{"ropes[0].haul.distance_m", 0.2, 6.0}, {"ropes[0].haul.height_m", 0.0, 1.5}},
         .readings = {R::PulleyTimes, R::PulleyForce, R::RopeTurn}, .goals = {{.reading = R::PulleyTimes, .limit = 1.8}},
         .question = LessonQuestion::PulleyTimes},
        {.id = LessonId::Pretension, .start = detail::loose_guys, .movers = {{.path = "guys[0].pretension_kN", .from = 0.0, .to = 2.0, .all_guys = true}},
         .readings = {R::SwingWay, R::CordUsed, R::LegPush},
         .goals = {{.reading = R::SwingWay, .limit = 0.6, .of_start = true}, {.reading = R::CordUsed, .limit = 0.5}}, .shown = CaseId::SwingRight},
        {.id = LessonId::MeasuringError, .start = detail::by_compass, .movers = {{"tolerances.bearing_deg", 2.0, 15.0}, {"tolerances.lean_deg", 1.0, 6.0}},
         .readings = {R::IsGo, R::LeastSpare}, .goals = {{.reading = R::IsGo, .at_most = false, .limit = 1.0}}, .question = LessonQuestion::GoOrNot},
        {.id = LessonId::OrderOfWork, .start = detail::heavy_pole, .movers = {}, .readings = {}, .goals = {}, .shown = CaseId::Rigged},
    }};
    return k_lessons;
}
// clang-format on

inline const Lesson& lesson(LessonId id) { return lessons()[static_cast<std::size_t>(id)]; }

/// Every number that a mover moves.
[[nodiscard]] inline std::vector<std::string> paths_of(const LessonMover& mover, const Plan& plan) {
    std::vector<std::string> paths{std::string(mover.path)};
    const std::string_view key = mover.path.substr(mover.path.find('.') + 1);
    for (std::size_t i = 1; mover.all_guys && i < plan.guys.size(); ++i) paths.push_back("guys[" + std::to_string(i) + "]." + std::string(key));
    return paths;
}

/// Moves what a mover moves. False, with nothing changed, where `value` is outside the mover's ends or the plan has no such number.
inline bool set_mover(Plan& plan, const LessonMover& mover, double value) {
    if (!(value >= mover.from && value <= mover.to)) return false;
    Plan moved = plan;
    for (const std::string& path : paths_of(mover, plan)) {
        NumberRef number = find_number(moved, path);
        if (!number || !number.set(value)) return false;
    }
    plan = std::move(moved);
    return true;
}

namespace detail {

/// How many of the last digit shown go into one unit of SI.
inline double digits_per_SI(Readout reading) { return std::pow(10.0, info(reading).decimals) * info(reading).per_SI; }

inline double cut_to_shown(Readout reading, double value) { return std::floor(value * digits_per_SI(reading)) / digits_per_SI(reading); }

}  // namespace detail

/// The limits of a lesson's goals, in SI. One that depends on what the lesson begins with is worked out here, down to the last digit shown.
[[nodiscard]] inline std::vector<double> goal_limits(const Lesson& l) {
    const Plan plan = l.start(0);
    const Evaluation e = evaluate_as_measured(plan);
    std::vector<double> limits;
    for (const LessonGoal& goal : l.goals) {
        limits.push_back(goal.of_start ? detail::cut_to_shown(goal.reading, goal.limit * read(goal.reading, plan, e).value_or(0.0)) : goal.limit);
    }
    return limits;
}

/// Half of the last digit shown, SI: what reads as the limit counts as the limit.
[[nodiscard]] inline double half_digit(Readout reading) { return 0.5 / detail::digits_per_SI(reading); }

/// Whether a reading keeps a goal, as it is shown. A reading that is none keeps nothing.
[[nodiscard]] inline bool is_kept(const LessonGoal& goal, double limit, std::optional<double> value) {
    const double half = half_digit(goal.reading);
    return value && (goal.at_most ? *value < limit + half : *value >= limit - half);
}

/// Whether the plan does what the lesson asks; only the evaluation can say so.
[[nodiscard]] inline bool is_reached(const Lesson& l, const std::vector<double>& limits, const Plan& plan, const Evaluation& e) {
    bool all = !l.goals.empty() && limits.size() == l.goals.size();
    for (std::size_t i = 0; all && i < l.goals.size(); ++i) all = is_kept(l.goals[i], limits[i], read(l.goals[i].reading, plan, e));
    return all;
}

/// One answer to choose from.
struct LessonOption {
    std::size_t part = 0;  ///< guy; of the verdict 1 for GO
    double times = 0.0;    ///< PulleyTimes: of the load
    bool right = false;    ///< as the evaluation has it
};

/// The answers to a question about a plan, and which of them are right. `e` of that plan; for the verdict after its sweep.
[[nodiscard]] inline std::vector<LessonOption> options_of(LessonQuestion question, const Plan& plan, const Evaluation& e) {
    std::vector<LessonOption> out;
    const Outcome* holding = detail::standing_case(e, CaseId::Holding);
    const bool about_guys = question == LessonQuestion::SlackGuy || question == LessonQuestion::FatalGuy;
    for (std::size_t i = 0; about_guys && holding != nullptr && i < e.guys_lost.size(); ++i) {
        const bool slack = holding->equilibrium.guy_loose_m[i] > k_slack_m;
        out.push_back({.part = i, .right = question == LessonQuestion::SlackGuy ? slack : !e.guys_lost[i].stable});
    }
    if (question == LessonQuestion::PulleyTimes) {
        const double times = read(Readout::PulleyTimes, plan, e).value_or(0.0);
        for (const double offered : {1.0, 1.5, 2.0}) out.push_back({.times = offered, .right = std::abs(times - offered) < 0.25});
    }
    if (question == LessonQuestion::GoOrNot)
        for (const std::size_t go : {1U, 0U}) out.push_back({.part = go, .right = e.verdict == (go == 1 ? Verdict::Go : Verdict::NoGo)});
    return out;
}

}  // namespace guywright
