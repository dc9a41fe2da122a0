#include "engine/codec/plan_codec.hpp"
#include "tests/support/plans.hpp"
#include "wasm/app/apply.hpp"
#include "wasm/app/lesson_told.hpp"
#include "wasm/app/practice_steps.hpp"
#include "wasm/words/lessons.hpp"

#include <doctest/doctest.h>

#include <cstdlib>

using namespace guywright;
using namespace guywright::app;

namespace {

State with_own_plan() {
    State s = first_state();
    open_plan(s, write_plan(support::go_plan()));
    s.saves.clear();
    return s;
}

void open(State& s, LessonId id) { apply(s, {OpenLesson{id}}); }

const LessonInHand& hand(const State& s) {
    REQUIRE(lesson_in_hand(s) != nullptr);
    return *lesson_in_hand(s);
}

void check_to_the_end(State& s) {
    while (s.sweep) go_on_checking(s, 5.0);
}

/// Past the question, if there is one.
void begin(State& s, LessonId id) {
    open(s, id);
    if (hand(s).asks()) apply(s, {AnswerLesson{0}});
}

/// The finger is up; the check goes on to its end where the lesson is about the verdict.
void let_go(State& s) {
    if (hand(s).id == LessonId::MeasuringError) check_to_the_end(s);
    end_gesture(s);
}

/// Moves everything to its ends and between until the goal is reached.
bool bring_to_goal(State& s) {
    constexpr int k_steps = 10;
    const Lesson& l = hand(s).of();
    if (l.choices > 1) apply(s, {ChooseRig{l.choices - 1}});
    for (int i = 0; i <= k_steps; ++i)
        for (int j = 0; j <= (l.movers.size() > 1 && l.id != LessonId::MeasuringError ? k_steps : 0); ++j) {
            const std::array<int, 2> at{i, j};
            for (std::size_t m = 0; m < l.movers.size(); ++m)
                apply(s, {SetNumber{std::string(l.movers[m].path), l.movers[m].from + (l.movers[m].to - l.movers[m].from) * at[m] / k_steps}});
            let_go(s);
            if (hand(s).reached) return true;
        }
    return false;
}

void tie_rightly(State& s) {
    while (!hand(s).reached) {
        const auto& next = hand(s).next;
        const auto right = std::find_if(next.begin(), next.end(), [](const NextTie& t) { return t.right; });
        REQUIRE(right != next.end());
        apply(s, {TieGuy{right->guy}});
    }
}

bool is_filled(const std::string& text) { return !text.empty() && text.find('{') == std::string::npos; }

/// The first number in a text as it is shown in English; none in a word.
std::optional<double> number_in(const std::string& text) {
    const std::size_t at = text.find_first_of("0123456789");
    if (at == std::string::npos) return std::nullopt;
    return std::strtod(text.c_str() + at, nullptr) * (at > 0 && text[at - 1] == '-' ? -1.0 : 1.0);
}

/// The first lesson, its goal reached by a slider that is still held.
State at_goal_finger_down() {
    State s = with_own_plan();
    begin(s, LessonId::Resultant);
    apply(s, {SetNumber{"frame.lean_deg", 18.0}});
    return s;
}

}  // namespace

TEST_CASE("course: every lesson opens, is practice, saves nothing, and leaves the person's plan as it was") {
    for (const Lesson& l : lessons()) {
        CAPTURE(static_cast<int>(l.id));
        State s = with_own_plan();
        const Plan own = s.plan;
        open(s, l.id);
        CHECK(s.step == Step::Lesson);
        CHECK(hand(s).id == l.id);
        CHECK_FALSE(hand(s).reached);
        begin(s, l.id);
        if (l.id == LessonId::OrderOfWork) tie_rightly(s);
        else CHECK(bring_to_goal(s));
        CHECK(s.saves.empty());
        CHECK(s.check_code.empty());
        CHECK(s.history.past.empty());
        apply(s, {LeavePractice{}});
        CHECK(s.plan == own);
        CHECK(s.saves.empty());
        CHECK(lesson_in_hand(s) == nullptr);
    }
}

TEST_CASE("course: what is reached is done, and stays so when the lesson is left or taken again") {
    State s = with_own_plan();
    begin(s, LessonId::Resultant);
    CHECK_FALSE(s.progress.lessons.any());
    REQUIRE(bring_to_goal(s));
    CHECK(s.progress.lessons.test(0));
    CHECK(s.progress_changed);
    open(s, LessonId::Resultant);
    CHECK_FALSE(hand(s).reached);
    CHECK(s.progress.lessons.count() == 1);
}

TEST_CASE("course: a slider that runs through the goal is not there while the finger is down") {
    State s = at_goal_finger_down();
    CHECK(hand(s).reached);
    CHECK_FALSE(s.progress.lessons.any());
    apply(s, {SetNumber{"frame.lean_deg", 2.0}});
    let_go(s);
    CHECK_FALSE(hand(s).reached);
    CHECK_FALSE(s.progress.lessons.any());
}

TEST_CASE("course: a gesture that the device took away is taken back, and reaches nothing") {
    State s = at_goal_finger_down();
    cancel_gesture(s);
    CHECK_FALSE(hand(s).reached);
    CHECK_FALSE(s.progress.lessons.any());
}

TEST_CASE("course: only what the lesson is about can be moved, within its ends, and a number typed too far is told the ends") {
    State s = with_own_plan();
    begin(s, LessonId::GuyAngle);
    const Plan before = s.plan;
    apply(s, {SetNumber{"ropes[0].load_kg", 50.0}, SetNumber{"guys[0].inclination_deg", 70.0}, SetNumber{"guys[1].inclination_deg", 40.0}});
    CHECK(s.plan == before);
    const std::string refused = enter_shown(s, "guys[0].inclination_deg", "70");
    CHECK(refused.find("15 to 58") != std::string::npos);
    CHECK(enter_shown(s, "guys[0].inclination_deg", "58").empty());
}

TEST_CASE("course: the ends of a slider can be reached in feet, too") {
    State s = with_own_plan();
    s.speech.units = UnitSystem::Imperial;
    begin(s, LessonId::EdgeWrap);
    CHECK(enter_shown(s, "frame.foot_m[0][0]", "6.3").empty());  // 1.92 m behind the edge
    CHECK_FALSE(enter_shown(s, "frame.foot_m[0][0]", "6.2").empty());
}

TEST_CASE("course: while a question is open nothing of the answer is to be seen, and nothing can be moved") {
    for (const LessonId id : {LessonId::Slack, LessonId::Redundancy, LessonId::PulleyLoad, LessonId::MeasuringError}) {
        State s = with_own_plan();
        open(s, id);
        CHECK(hand(s).asks());
        CHECK(is_blind(s.practice));
        CHECK(seen(s).outcomes.empty());
        CHECK(readings_told(s).empty());
        CHECK(is_filled(question_told(s)));
        const Plan before = s.plan;
        apply(s, {SetNumber{std::string(hand(s).of().movers[0].path), hand(s).of().movers[0].to}});
        CHECK(s.plan == before);
        check_to_the_end(s);
        CHECK_FALSE(s.progress.lessons.any());
    }
}

TEST_CASE("course: an answer is judged by the engine, whichever it is, and is told with what is right") {
    for (const LessonId id : {LessonId::Slack, LessonId::Redundancy, LessonId::PulleyLoad, LessonId::MeasuringError}) {
        CAPTURE(static_cast<int>(id));
        State probe = with_own_plan();
        open(probe, id);
        const std::size_t count = options_told(probe).size();
        REQUIRE(count >= 2);
        int right = 0;
        for (std::size_t i = 0; i < count; ++i) {
            State s = with_own_plan();
            open(s, id);
            apply(s, {AnswerLesson{i}});
            CHECK_FALSE(hand(s).asks());
            const bool is_right = hand(s).options[i].right;
            right += is_right ? 1 : 0;
            CHECK(idea_told(s).starts_with(is_right ? "Right: " : "No: "));
            apply(s, {AnswerLesson{0}});  // only once
            CHECK(hand(s).answered == i);
        }
        CHECK(right >= 1);
        CHECK(right < static_cast<int>(count));
    }
}

TEST_CASE("course: an answer that is not offered answers nothing") {
    State s = with_own_plan();
    open(s, LessonId::Slack);
    apply(s, {AnswerLesson{17}});
    CHECK(hand(s).asks());
}

TEST_CASE("course: what was moved stays when the other rig is chosen") {
    State s = with_own_plan();
    begin(s, LessonId::Slack);
    apply(s, {SetNumber{"actions.swing_deg", 12.0}, ChooseRig{1}});
    CHECK(s.plan.guys.size() == 4);
    CHECK(s.plan.actions.swing_deg == 12.0);
    apply(s, {ChooseRig{7}});
    CHECK(s.plan.guys.size() == 4);
}

TEST_CASE("course: a wrong guy in the order of work is shown, told against a better one, and taken off again") {
    State s = with_own_plan();
    open(s, LessonId::OrderOfWork);
    CHECK(s.plan.guys.empty());
    const auto& next = hand(s).next;
    const auto wrong = std::find_if(next.begin(), next.end(), [](const NextTie& t) { return !t.right; });
    REQUIRE(wrong != next.end());
    const std::size_t guy = wrong->guy;
    apply(s, {TieGuy{guy}});
    REQUIRE(hand(s).wrong);
    CHECK(s.plan.guys.size() == 1);
    CHECK(is_filled(order_told(s)));
    CHECK(order_told(s).find(hand(s).whole.guys[guy].name) != std::string::npos);
    apply(s, {TieGuy{0}});  // first it has to come off
    CHECK(s.plan.guys.size() == 1);
    apply(s, {TakeOffGuy{}});
    CHECK(s.plan.guys.empty());
    tie_rightly(s);
    CHECK(s.plan.guys.size() == 4);
    CHECK(hand(s).by_itself_after == 3);
    CHECK(hand(s).most_held_N > 0.0);
    CHECK(s.progress.lessons.test(9));
}

TEST_CASE("course: everything that is said is filled in, in both languages and units, at the start and at the goal") {
    for (const Tongue tongue : {Tongue::English, Tongue::French})
        for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Imperial})
            for (const Lesson& l : lessons()) {
                CAPTURE(static_cast<int>(l.id));
                State s = with_own_plan();
                s.speech = {tongue, units};
                begin(s, l.id);
                if (l.id == LessonId::OrderOfWork) {
                    CHECK(is_filled(order_told(s)));
                    tie_rightly(s);
                } else {
                    CHECK(is_filled(idea_told(s)));
                    REQUIRE(bring_to_goal(s));
                }
                CAPTURE(closing_told(s));
                CHECK(is_filled(closing_told(s)));
                for (const ReadingTold& r : readings_told(s)) CHECK(is_filled(r.name + r.value + r.goal));
                for (const LessonMover& mover : l.movers) CHECK(is_filled(mover_told(s, mover)));
            }
}

TEST_CASE("course: names of every lesson in either language, there and back, also those of guys still to be tied") {
    for (const Lesson& l : lessons()) {
        CAPTURE(static_cast<int>(l.id));
        State s = with_own_plan();
        begin(s, l.id);
        const Plan english = s.plan, whole = hand(s).whole;
        apply(s, {NextLanguage{}});
        CHECK(s.plan.title != english.title);
        for (std::size_t i = 0; i < english.guys.size(); ++i) CHECK(s.plan.guys[i].name != english.guys[i].name);
        if (l.id == LessonId::OrderOfWork) CHECK(hand(s).whole.guys[0].name != whole.guys[0].name);
        State french = with_own_plan();
        french.speech.tongue = Tongue::French;
        begin(french, l.id);
        CHECK(s.plan == french.plan);
        apply(s, {NextLanguage{}});
        CHECK(s.plan == english);
        CHECK(hand(s).whole == whole);
    }
}

TEST_CASE("course: a goal reads as reached just where it is, in both units") {
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Imperial})
        for (const Lesson& l : lessons()) {
            if (l.id == LessonId::OrderOfWork || l.id == LessonId::MeasuringError) continue;
            State s = with_own_plan();
            s.speech.units = units;
            begin(s, l.id);
            for (int i = 0; i <= 60; ++i) {
                apply(s, {SetNumber{std::string(l.movers[0].path), l.movers[0].from + (l.movers[0].to - l.movers[0].from) * i / 60.0}});
                for (const ReadingTold& r : readings_told(s)) {
                    const auto value = number_in(r.value), limit = number_in(r.goal);
                    if (!value || !limit) continue;
                    CAPTURE(r.value);
                    CAPTURE(r.goal);
                    CHECK(r.kept == (*value <= *limit));
                }
            }
        }
}

TEST_CASE("course: the closing sentence has the numbers that were reached") {
    State s = with_own_plan();
    begin(s, LessonId::GuyAngle);
    const std::string start = readings_told(s)[0].value;
    REQUIRE(bring_to_goal(s));
    const std::string closing = closing_told(s), now = readings_told(s)[0].value;
    CHECK(start != now);
    CHECK(closing.find(start) != std::string::npos);
    CHECK(closing.find(now) != std::string::npos);
}

TEST_CASE("course: what is done comes back from what was kept; what is damaged or unknown is passed over") {
    Progress p;
    p.lessons.set(2);
    p.lessons.set(9);
    CHECK(read_progress(progress_json(p)) == p);
    for (const char* damaged : {"", "{", "[]", "null", "{\"lessons\":7}", "{\"lessons\":[1,null,\"none\"]}", "\xFF\xFE"})
        CHECK(read_progress(damaged).lessons.none());
    const Progress later = read_progress(R"({"lessons":["foot","of a later version"],"more":{}})");
    CHECK(later.lessons.test(5));
    CHECK(later.lessons.count() == 1);
}

TEST_CASE("course: a lesson counts as no site answered") {
    State s = with_own_plan();
    const Progress before = s.progress;
    begin(s, LessonId::MeasuringError);
    let_go(s);
    begin(s, LessonId::Foot);
    let_go(s);
    CHECK(s.progress.levels == before.levels);
}

TEST_CASE("course: wishes of a course that is not open change nothing") {
    State s = with_own_plan();
    const Plan own = s.plan;
    apply(s, {AnswerLesson{0}, ChooseRig{1}, TieGuy{0}, TakeOffGuy{}});
    CHECK(s.plan == own);
    CHECK_FALSE(s.practice);
    apply(s, {ShowCourse{}});
    CHECK(s.step == Step::Course);
    CHECK(s.practice);
    apply(s, {LeavePractice{}});
    CHECK(s.plan == own);
}
