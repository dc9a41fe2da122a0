#include "wasm/app/course.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/model/build_model.hpp"
#include "wasm/app/apply.hpp"
#include "wasm/app/practice_steps.hpp"
#include "wasm/app/starters.hpp"

namespace guywright::app {
namespace {

LessonInHand* in_hand(State& s) { return s.practice && s.practice->lesson ? &*s.practice->lesson : nullptr; }

Plan start_of(const Lesson& l, std::size_t choice, const Speech& speech) {
    Plan plan = l.start(choice);
    name_in_language(plan, speech);
    return plan;
}

double moved_now(const Plan& plan, const LessonMover& mover) { return number_at(plan, mover.path)->value; }

std::size_t case_called(const Evaluation& e, CaseId id) {
    for (std::size_t i = 0; i < e.outcomes.size(); ++i)
        if (e.outcomes[i].setup.id == id) return i;
    return k_holding;
}

void show_case_of(State& s, CaseId id) { s.shown_case = case_called(s.evaluation, id); }

/// What is read as the lesson begins, for the sentence at its end.
void begin_moving(State& s, LessonInHand& hand) {
    hand.limits = goal_limits(hand.of());
    for (const Readout reading : hand.of().readings) hand.read_at_start.push_back(read(reading, s.plan, s.evaluation));
    for (const LessonMover& mover : hand.of().movers) hand.moved_at_start.push_back(moved_now(s.plan, mover));
    show_case_of(s, hand.of().shown);
}

/// The verdict of the plan in hand, to the end: a few hundredths of a second, once, where it is what a question is about.
void finish_checking(State& s) {
    constexpr double k_slice_ms = 50.0;
    while (s.sweep) go_on_checking(s, k_slice_ms);
}

/// The pole with what is tied, also what was tied wrongly, and what could come next.
void show_pole(State& s, LessonInHand& hand) {
    const Model whole = build_model(hand.whole).model;
    TiedGuys on = hand.tied;
    if (hand.wrong) on.push_back(hand.wrong->guy);
    s.plan = tied_plan(hand.whole, on);
    hand.standing = standing_with(hand.whole, whole, on);
    hand.next = next_ties(hand.whole, whole, hand.tied);
    refresh(s);
    show_case_of(s, CaseId::Rigged);
}

void mark_done(State& s, LessonId id) {
    const auto at = static_cast<std::size_t>(id);
    if (s.progress.lessons.test(at)) return;
    s.progress.lessons.set(at);
    s.progress_changed = true;
}

void note_standing(LessonInHand& hand) {
    if (!hand.standing.by_itself) hand.most_held_N = std::max(hand.most_held_N, hand.standing.hold_N);
    else if (hand.by_itself_after == 0) hand.by_itself_after = hand.tied.size();
}

}  // namespace

const LessonInHand* lesson_in_hand(const State& s) { return s.practice && s.practice->lesson ? &*s.practice->lesson : nullptr; }

const LessonMover* mover_at(const State& s, std::string_view path) {
    const LessonInHand* hand = lesson_in_hand(s);
    if (hand == nullptr) return nullptr;
    for (const LessonMover& mover : hand->of().movers)
        if (mover.path == path) return &mover;
    return nullptr;
}

Range range_in_hand(const State& s, std::string_view path, const Range& allowed) {
    Range range = allowed;
    const LessonMover* mover = mover_at(s, path);
    if (mover == nullptr) return range;
    range.min = mover->from;
    range.max = mover->to;
    return range;
}

bool move_in_lesson(Plan& plan, const LessonMover& mover, double value) {
    // a value typed in other units comes back as a near decimal: the ends themselves must be reachable
    const double slack = 1e-9 * std::max(1.0, std::abs(value));
    if (value < mover.from && value > mover.from - slack) value = mover.from;
    if (value > mover.to && value < mover.to + slack) value = mover.to;
    return set_mover(plan, mover, value);
}

void look_at_lesson(State& s) {
    LessonInHand* hand = in_hand(s);
    if (hand == nullptr || hand->asks()) return;
    const bool tied = hand->id == LessonId::OrderOfWork && all_tied(hand->whole, hand->tied) && hand->standing.by_itself;
    hand->reached = tied || is_reached(hand->of(), hand->limits, s.plan, s.evaluation);
    if (hand->reached && !s.before_gesture) mark_done(s, hand->id);
}

void practise(State& s, const ShowCourse&) {
    enter_practice(s);
    s.step = Step::Course;
}

void practise(State& s, const OpenLesson& wish) {
    const Lesson& l = lesson(wish.id);
    const bool asks = l.question != LessonQuestion::None;
    practise_on(s, start_of(l, 0, s.speech), asks ? Practising::Predicting : Practising::Changing, Step::Lesson);
    s.view = scene::View::Free;
    LessonInHand& hand = s.practice->lesson.emplace();
    hand.id = wish.id;
    if (wish.id == LessonId::OrderOfWork) {
        hand.whole = s.plan;
        show_pole(s, hand);
        note_standing(hand);
        return;
    }
    refresh(s);
    if (!asks) begin_moving(s, hand);
}

void practise(State& s, const AnswerLesson& wish) {
    LessonInHand* hand = in_hand(s);
    if (hand == nullptr || !hand->asks()) return;
    if (hand->of().question == LessonQuestion::GoOrNot) finish_checking(s);
    hand->options = options_of(hand->of().question, s.plan, s.evaluation);
    if (wish.option >= hand->options.size()) return;
    hand->answered = wish.option;
    s.practice->stage = Practising::Changing;
    begin_moving(s, *hand);
}

void practise(State& s, const ChooseRig& wish) {
    LessonInHand* hand = in_hand(s);
    if (hand == nullptr || hand->asks() || wish.choice >= hand->of().choices || wish.choice == hand->choice) return;
    Plan plan = start_of(hand->of(), wish.choice, s.speech);
    for (const LessonMover& mover : hand->of().movers)
        if (!set_mover(plan, mover, moved_now(s.plan, mover))) return;
    hand->choice = wish.choice;
    s.plan = std::move(plan);
}

void practise(State& s, const TieGuy& wish) {
    LessonInHand* hand = in_hand(s);
    if (hand == nullptr || hand->wrong) return;
    for (const NextTie& tie : std::vector<NextTie>(hand->next)) {
        if (tie.guy != wish.guy) continue;
        if (tie.right) hand->tied.push_back(tie.guy);
        else hand->wrong = tie;
        const std::vector<NextTie> before = hand->next;
        show_pole(s, *hand);
        if (hand->wrong) hand->next = before;  // what would have been better is told
        else note_standing(*hand);
        look_at_lesson(s);
    }
}

void practise(State& s, const TakeOffGuy&) {
    LessonInHand* hand = in_hand(s);
    if (hand == nullptr || !hand->wrong) return;
    hand->wrong.reset();
    show_pole(s, *hand);
}

}  // namespace guywright::app
