#pragma once
#include "engine/advice/least_pretension.hpp"
#include "wasm/app/command.hpp"
#include "wasm/app/plan_edits.hpp"

// What advice changes in a plan. Each refuses, with nothing changed, where the plan is not the one that the advice was for.
namespace guywright::app {

Edited edit(Plan& plan, const TakeAdvice& wish, const Speech& speech = {});
Edited edit(Plan& plan, const TakeLean& wish, const Speech& speech = {});
Edited edit(Plan& plan, const TakePretensions& wish, const Speech& speech = {});
Edited edit(Plan& plan, const TakeAnchors& wish, const Speech& speech = {});
Edited edit(Plan& plan, const AddFoundAnchor& wish, const Speech& speech = {});
Edited edit(Plan& plan, const RemoveFoundAnchor& wish, const Speech& speech = {});
Edited edit(Plan& plan, const GradeFoundAnchors& wish, const Speech& speech = {});

/// Pretensions as a slider can hold them: the least step that is no less, kN.
[[nodiscard]] std::vector<double> as_entered_kN(const LeastPretension& least);

}  // namespace guywright::app
