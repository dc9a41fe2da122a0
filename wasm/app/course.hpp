#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/practice/lesson_order.hpp"
#include "wasm/app/command.hpp"

namespace guywright::app {

struct State;

/// A lesson as far as the trainee has come. The plan in hand is what it says; the numbers are always those of the evaluation.
struct LessonInHand {
    LessonId id = LessonId::Resultant;
    std::size_t choice = 0;
    std::vector<double> limits;                        ///< of its goals, SI
    std::vector<double> moved_at_start;                ///< of its movers, plan units
    std::vector<std::optional<double>> read_at_start;  ///< of its readings, SI
    std::vector<LessonOption> options;                 ///< of its question, once it was answered
    std::optional<std::size_t> answered;               ///< which of them
    bool reached = false;                              ///< by the plan as it is now

    // The order of work.
    Plan whole;                       ///< with every guy
    TiedGuys tied;                    ///< rightly
    std::optional<NextTie> wrong;     ///< tied in hand, and not to be tied now
    std::vector<NextTie> next;        ///< what could be tied then, as the engine sees it
    Standing standing;                ///< of what is tied
    double most_held_N = 0.0;         ///< so far, in the right order
    std::size_t by_itself_after = 0;  ///< guys; 0: it does not stand by itself yet

    [[nodiscard]] const Lesson& of() const { return lesson(id); }
    /// Its question is still to be answered: nothing may be seen of the answer.
    [[nodiscard]] bool asks() const { return of().question != LessonQuestion::None && !answered; }
};

/// The lesson in hand; null where there is none.
[[nodiscard]] const LessonInHand* lesson_in_hand(const State& state);

/// What moves the number at `path`; null where the lesson does not let it be moved, or no lesson is in hand.
[[nodiscard]] const LessonMover* mover_at(const State& state, std::string_view path);

/// What the number at `path` may be while it is in hand: what the plan allows, or as much of it as the lesson lets it be moved.
[[nodiscard]] Range range_in_hand(const State& state, std::string_view path, const Range& allowed);

/// Moves a number of the lesson, with all that goes with it. False, with nothing changed, where that is not allowed.
[[nodiscard]] bool move_in_lesson(Plan& plan, const LessonMover& mover, double value);

/// After the plan in hand was judged, or judged further: whether it now does what the lesson asks. What is reached with no finger down is done.
void look_at_lesson(State& state);

// Apply these; none changes anything but what is practised on and what is done.
void practise(State& state, const ShowCourse& wish);
void practise(State& state, const OpenLesson& wish);
void practise(State& state, const AnswerLesson& wish);
void practise(State& state, const ChooseRig& wish);
void practise(State& state, const TieGuy& wish);
void practise(State& state, const TakeOffGuy& wish);

}  // namespace guywright::app
