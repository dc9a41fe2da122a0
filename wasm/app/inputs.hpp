#pragma once
#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "engine/plan/plan.hpp"
#include "engine/plan/ranges.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/scene/view.hpp"

namespace guywright::app {

/// Ends and smallest step of a slider, as shown; the keypad reaches the whole allowed range.
struct Slide {
    double from, to, step;
    int decimals;
};

/// The same in either system; one alone where nothing is converted.
struct Slides {
    Slide metric, imperial;
    constexpr Slides(Slide both) : metric(both), imperial(both) {}
    constexpr Slides(Slide in_metric, Slide in_imperial) : metric(in_metric), imperial(in_imperial) {}
};

/// How one number of the plan is shown and slid. `#` in the pattern stands for an index.
struct Input {
    std::string_view pattern;
    Said label;
    Said how;               ///< one sentence: what to measure and how; {a} and {b} are the examples
    std::string_view unit;  ///< as the plan keeps it
    Slides slides;
    double sign;                       ///< shown = sign * plan value, in the unit shown
    scene::Highlight::Part part;       ///< what it moves in the scene
    std::array<double, 2> examples{};  ///< values of the plan that `how` speaks of
};

/// How a number of an input is shown in the units chosen.
struct Scale {
    std::string_view unit;  ///< "m", "lbf", the sign of degrees
    double per_kept;
    double sign;
    Slide slide;

    [[nodiscard]] double shown(double kept_value) const { return sign * kept_value * per_kept; }
    /// What is stored of a value as shown: the exact decimal, the same each time it is typed.
    [[nodiscard]] double kept(double shown_value) const;
};
[[nodiscard]] Scale scale_of(const Input& input, const Speech& speech);

/// The entry for a path of the plan ("guys[1].bearing_deg"); null where there is no slider for it.
[[nodiscard]] const Input* find_input(std::string_view path);

/// First index in a path: 1 in "guys[1].bearing_deg"; 0 without one.
[[nodiscard]] std::size_t index_in(std::string_view path);

/// What of the scene the number at a path moves, or what is judged by it; nothing for a path without a slider.
[[nodiscard]] scene::Highlight highlight_of(std::string_view path);

/// Path for an index: path_at("guys[#].parts", 2).
[[nodiscard]] std::string path_at(std::string_view pattern, std::size_t index, std::size_t second = 0);

/// What to measure and how.
[[nodiscard]] std::string how_text(const Input& input, const Speech& speech);
/// "12.5", with the decimals of the input.
[[nodiscard]] std::string shown_number(const Input& input, const Speech& speech, double plan_value);
/// "12.5 m", "70°", "0.3".
[[nodiscard]] std::string with_unit(const Input& input, const Speech& speech, std::string number);
/// A value of the plan with its unit.
[[nodiscard]] std::string shown_value(const Input& input, const Speech& speech, double plan_value);

/// What may be typed, in the unit and with the sign shown.
struct AllowedEnds {
    std::string least, most;
};
[[nodiscard]] AllowedEnds allowed_ends(const Input& input, const Speech& speech, const Range& range);
/// "allowed 2 to 88°".
[[nodiscard]] std::string allowed_text(const Input& input, const Speech& speech, const Range& range);

/// "± 3°", the tolerance of the plan for a measurement of this kind; empty where there is none.
[[nodiscard]] std::string error_text(const Input& input, const Speech& speech, const Tolerances& t, const Range& range, double plan_value);

/// A number as a person types it, with a point or a comma; none where it is no number.
[[nodiscard]] std::optional<double> typed_number(std::string text);

}  // namespace guywright::app
