#pragma once
#include "engine/plan/plan.hpp"

namespace guywright::app {

/// An empty walk: usual kit and an upright guess of the site to draw, every measurement still to be entered.
[[nodiscard]] Plan new_plan();

/// A guy like the last one, in the widest gap between the others; its position still to be measured.
void add_guy(Plan& plan);

/// Removes a guy and moves the not-measured paths of those after it.
void remove_guy(Plan& plan, std::size_t guy);

}  // namespace guywright::app
