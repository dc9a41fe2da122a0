#pragma once
#include <optional>
#include <string>

#include "engine/plan/numbers.hpp"

// Anchors found on site are kept as points and measured from below the head: in the app the first number of such a point is its
// bearing from there and the second its distance, the third its height as in the plan.
namespace guywright::app {

/// A number of the plan as a person measures it.
using Measure = NumberAt;

/// The number at a path; none where the plan has no such number.
[[nodiscard]] std::optional<Measure> measure_at(const Plan& plan, const std::string& path);

/// False, with nothing changed, where the plan has no such number or the value is not allowed.
[[nodiscard]] bool set_measure(Plan& plan, const std::string& path, double value);

}  // namespace guywright::app
