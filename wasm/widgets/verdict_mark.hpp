#pragma once
#include "engine/verdict/evaluate.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::widgets {

/// "GO", "NO-GO", "NOT CHECKED" in every language, for page and tests; what is shown is the language's.
[[nodiscard]] std::string_view verdict_word(Verdict verdict);

/// The verdict's ground: solid for NO-GO, open field with a thick frame for GO, dashed frame for NOT CHECKED. Polarity and
/// shape tell it without any colour.
void verdict_ground(Ui& ui, const Box& box, Verdict verdict);
/// Circle with a tick, octagon with a bar, dashed square.
void verdict_shape(Ui& ui, ImVec2 centre, float radius, Verdict verdict);
/// Colour of text on verdict_ground.
[[nodiscard]] ImU32 verdict_ink(const Theme& theme, Verdict verdict);
/// Practice: no verdict's ground. A band of slanting bars above and below.
void practice_ground(Ui& ui, const Box& box);
/// Triangle with an exclamation mark.
void caution_shape(Ui& ui, ImVec2 centre, float radius);

}  // namespace guywright::widgets
