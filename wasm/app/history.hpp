#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "engine/plan/plan.hpp"

namespace guywright::app {

/// Texts of the plan as it was, one per gesture. Each has a number, so that a store keeps it once: the present plan has `number`,
/// what came before counts down from it without a gap, what was taken back counts up.
struct History {
    std::vector<std::string> past;    ///< oldest first
    std::vector<std::string> future;  ///< what redo brings next is last
    std::size_t number = 0;

    [[nodiscard]] std::size_t first() const { return number - past.size(); }
    [[nodiscard]] std::size_t last() const { return number + future.size(); }
};

/// Takes in a step that was kept: `back` for what was before the plan, the nearest first, else for what was taken back, the nearest
/// first. `number` stays ahead of what was before.
void take_in_step(History& history, bool back, std::string text);

/// A gesture has made something else out of `before`.
void remember(History& history, const Plan& before);

enum class Travelled : unsigned char { Done, NoSuchStep, Unreadable };

/// One step back, or on again. Nothing has changed where it is not Done.
Travelled go_back(History& history, Plan& plan);
Travelled go_on(History& history, Plan& plan);

}  // namespace guywright::app
