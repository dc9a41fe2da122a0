#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "engine/plan/plan.hpp"
#include "wasm/app/shelf.hpp"
#include "wasm/app/speech.hpp"

// Title of the plan, names of guys and ropes. plan_edits.hpp changes them.
namespace guywright::app {

/// What the page asks the person for; none where the plan has no such text.
[[nodiscard]] std::optional<TextWish> text_wish(const Plan& plan, std::string_view path, const Speech& speech = {});

}  // namespace guywright::app
