#pragma once
#include <optional>

#include "engine/plan/ranges.hpp"
#include "wasm/app/device_reading.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::widgets {

/// One number of the plan as a full-width slider between two nudge keys, with label, value (tap it for the keypad) and how to
/// measure it. Dragging is relative: the thumb never jumps to the finger, and the first finger's width moves single steps.
struct SliderText {
    const app::Input& input;
    app::Speech speech;
    std::string path;
    double value;  ///< plan unit
    bool measured;
    std::string error;                         ///< "± 3°", empty where none
    std::optional<double> drawn{};             ///< plan unit: a value marked on the rail
    std::optional<app::ReadingKind> device{};  ///< what the device here can measure of it
    std::string label{};                       ///< in place of the input's own
    std::optional<Range> ends{};               ///< plan unit: not so far as the input's own
    bool brief = false;                        ///< without how to measure it
};

[[nodiscard]] float slider_height(const Ui& ui, const SliderText& text, float width);
void slider(Ui& ui, Box box, const SliderText& text);

}  // namespace guywright::widgets
