#pragma once
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>

#include "engine/codec/english.hpp"
#include "engine/codec/fault_told.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/sentences.hpp"
#include "engine/plan/fault_text.hpp"

namespace guywright::app {

enum class Tongue : unsigned char { English, French };
inline constexpr int k_tongue_count = 2;

/// In which words and units the app talks. Plans are always kept in metric units.
struct Speech {
    Tongue tongue = Tongue::English;
    UnitSystem units = UnitSystem::Metric;
    bool operator==(const Speech&) const = default;
};

namespace detail {

// Not computable while compiling, so that calling one stops the build and its name says why.
void a_language_is_missing();
void one_language_fills_in_other_things();
void french_has_a_space_before_this_sign();

}  // namespace detail

/// One text of the app in every language: as long as one is missing, or names other things, it does not compile.
struct Said {
    std::string_view english, french;

    consteval Said(std::string_view in_english, std::string_view in_french) : english(in_english), french(in_french) {
        if (english.empty() || french.empty()) detail::a_language_is_missing();
        if (holes(english) != holes(french)) detail::one_language_fills_in_other_things();
        for (std::size_t i = 0; i < french.size(); ++i)
            if (std::string_view(":;?!").find(french[i]) != std::string_view::npos && (i == 0 || french[i - 1] != ' '))
                detail::french_has_a_space_before_this_sign();
    }

private:
    static consteval int holes(std::string_view text) {
        int count = 0;
        for (const char c : text) count += c == '{' ? 1 : 0;
        return count;
    }
};

constexpr std::string_view say(const Speech& speech, const Said& said) { return speech.tongue == Tongue::French ? said.french : said.english; }

/// The engine's words for the same.
inline const Language& language_of(const Speech& speech) { return speech.tongue == Tongue::French ? k_french : k_english; }

using Fill = guywright::detail::Replacement;  ///< what stands in place of a {mark}

/// With its marks filled in: say(speech, k_guy, {{"{name}", "left"}}).
inline std::string say(const Speech& speech, const Said& said, std::initializer_list<Fill> fills) {
    return guywright::detail::filled(say(speech, said), fills);
}

/// A text with a number {n} in it, of one and of many. None counts as many in English and as one in French.
struct Counted {
    Said one, many;
};
inline std::string say(const Speech& speech, const Counted& counted, std::size_t n) {
    const bool one = n == 1 || (n == 0 && speech.tongue == Tongue::French);
    return say(speech, one ? counted.one : counted.many, {{"{n}", std::to_string(n)}});
}

/// "12.50", "12,50"; never "-0.00".
inline std::string number(const Speech& speech, double v, int decimals) { return number_told(language_of(speech), v, decimals); }

/// With as few digits as say it: "0.5", "0,5".
inline std::string short_number(const Speech& speech, double v) {
    std::string text = number_text(v);
    std::replace(text.begin(), text.end(), '.', language_of(speech).decimal_mark);
    return text;
}

/// A number with few digits and its unit: "50 m", "164 ft".
inline std::string short_amount(const Speech& speech, double kept, std::string_view unit) {
    const ShownUnit shown = shown_unit(unit, speech.units);
    const double v = shown.per_kept == 1.0 ? kept : std::round(kept * shown.per_kept);
    return guywright::with_unit(short_number(speech, v), shown.name);
}

/// A quantity kept in `unit`, in the unit shown: "0.38 kN", "85 lbf".
inline std::string amount(const Speech& speech, double kept, std::string_view unit) {
    return guywright::quantity({language_of(speech), speech.units}, kept, unit);
}

}  // namespace guywright::app
