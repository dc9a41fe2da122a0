#pragma once
#include <optional>
#include <string>

#include "wasm/app/course.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/app/state.hpp"

// What lessons say, in the words and units chosen. Every number is one that was read.
namespace guywright::app {

[[nodiscard]] std::string lesson_title(const Speech& speech, LessonId id);

/// "5.0°", "0.69 kN", "NO-GO"; a word where there is nothing to be read because it falls or is still being checked.
[[nodiscard]] std::string reading_told(const Speech& speech, Readout reading, std::optional<double> value, bool checking);

/// "Goal: 5.0° or less"
[[nodiscard]] std::string goal_told(const Speech& speech, const LessonGoal& goal, double limit);

/// One number of the lesson in hand with its name and, where it has one, its goal.
struct ReadingTold {
    std::string name, value, goal;  ///< goal: empty where there is none
    bool kept = false;              ///< the goal, now
};
[[nodiscard]] std::vector<ReadingTold> readings_told(const State& state);

/// What the lesson is about; after a question with the answer before it.
[[nodiscard]] std::string idea_told(const State& state);
/// What came out, from the numbers at its start and now.
[[nodiscard]] std::string closing_told(const State& state);

[[nodiscard]] std::string question_told(const State& state);
/// The answers to choose from, in the order of options_of().
[[nodiscard]] std::vector<std::string> options_told(const State& state);

/// The name of a slider of the lesson: whose number it is, where several have one.
[[nodiscard]] std::string mover_told(const State& state, const LessonMover& mover);

/// What is to be held of the pole, and what became of the guy tied last.
[[nodiscard]] ReadingTold standing_told(const State& state);
[[nodiscard]] std::string order_told(const State& state);

}  // namespace guywright::app
