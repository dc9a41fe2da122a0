#pragma once
#include <string_view>

#include "engine/codec/english.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/sentences.hpp"

namespace guywright::app {

enum class Tongue : unsigned char { English, French };

/// In which words and units the app talks. Plans are always kept in metric units.
struct Speech {
    Tongue tongue = Tongue::English;
    UnitSystem units = UnitSystem::Metric;
};

namespace detail {

// Not computable while compiling, so that calling one stops the build and its name says why.
void a_language_is_missing();
void one_language_fills_in_other_things();

}  // namespace detail

/// One text of the app in every language: as long as one is missing, or names other things, it does not compile.
struct Said {
    std::string_view english, french;

    consteval Said(std::string_view in_english, std::string_view in_french) : english(in_english), french(in_french) {
        if (english.empty() || french.empty()) detail::a_language_is_missing();
        if (holes(english) != holes(french)) detail::one_language_fills_in_other_things();
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

}  // namespace guywright::app
