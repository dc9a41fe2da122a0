#include "engine/plan/numbers.hpp"
#include "tests/support/full_plan.hpp"
#include "wasm/app/found_anchors.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/words/card.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace guywright;
using namespace guywright::app;

namespace {

constexpr Speech k_metric_english{}, k_imperial_english{Tongue::English, UnitSystem::Imperial}, k_metric_french{Tongue::French, UnitSystem::Metric},
    k_imperial_french{Tongue::French, UnitSystem::Imperial};

const app::Input& input_of(std::string_view path) {
    const app::Input* input = find_input(path);
    REQUIRE(input != nullptr);
    return *input;
}

/// Calls `f(input, range)` for every number of a plan that has everything and that has a slider.
template <class F>
void each_input(F f) {
    int count = 0;
    const Plan plan = support::full_plan();
    for_each_number(plan, [&](const std::string& path, double, const Range&) {
        // of an anchor found, a person measures bearing and distance
        if (const app::Input* input = find_input(path)) f(*input, app::measure_at(plan, path)->range, path), ++count;
    });
    CHECK(count > 40);
}

double typed_and_kept(const app::Input& input, const Speech& speech, const std::string& text) {
    const auto typed = typed_number(text);
    REQUIRE(typed.has_value());
    return scale_of(input, speech).kept(*typed);
}

}  // namespace

TEST_CASE("inputs: in metric units a number is stored as it is typed, with a point or a comma") {
    const app::Input& length = input_of("frame.leg_length_m[0]");
    for (const Speech& speech : {k_metric_english, k_metric_french})
        for (const char* text : {"4.25", "4,25"}) CHECK(typed_and_kept(length, speech, text) == 4.25);
    CHECK(typed_and_kept(input_of("frame.foot_m[0][0]"), k_metric_english, "1.3") == -1.3);  // behind the edge is -x
}

TEST_CASE("inputs: in imperial units exactly the converted number is stored") {
    CHECK(typed_and_kept(input_of("frame.leg_length_m[0]"), k_imperial_english, "13.94") == 4.248912);
    CHECK(typed_and_kept(input_of("frame.leg_length_m[0]"), k_imperial_french, "13,94") == 4.248912);
    CHECK(typed_and_kept(input_of("ropes[0].load_kg"), k_imperial_english, "330") == 149.6854821);
    CHECK(typed_and_kept(input_of("guys[0].pretension_kN"), k_imperial_english, "50") == doctest::Approx(0.22241108076).epsilon(1e-11));
    CHECK(typed_and_kept(input_of("frame.pole_diameter_mm[0]"), k_imperial_english, "4.5") == 114.3);
    CHECK(typed_and_kept(input_of("guys[0].bearing_deg"), k_imperial_english, "137") == 137.0);
}

TEST_CASE("inputs: what is no number is none") {
    for (const char* text : {"", "-", ",", "1,2,3", "1.2.3", "x", "1e999", "nan", "inf", "12 m"}) CHECK_MESSAGE(!typed_number(text).has_value(), text);
    CHECK(typed_number("-0,5") == -0.5);
}

TEST_CASE("inputs: typing what is shown, again and again, stays where it is") {
    std::mt19937 random(3);
    for (const Speech& speech : {k_metric_english, k_imperial_english, k_imperial_french}) {
        each_input([&](const app::Input& input, const Range& range, const std::string& path) {
            CAPTURE(path);
            for (int i = 0; i < 20; ++i) {
                const double kept = range.min + (range.max - range.min) * std::uniform_real_distribution(0.02, 0.98)(random);
                const std::string shown = shown_number(input, speech, kept);
                const double once = typed_and_kept(input, speech, shown);
                CHECK(shown_number(input, speech, once) == shown);
                CHECK(typed_and_kept(input, speech, shown_number(input, speech, once)) == once);
            }
        });
    }
}

TEST_CASE("inputs: steps of a slider there and back come to the same number to the last digit") {
    for (const Speech& speech : {k_metric_english, k_imperial_english}) {
        each_input([&](const app::Input& input, const Range&, const std::string& path) {
            CAPTURE(path);
            const Scale scale = scale_of(input, speech);
            for (int step = 1; step < 40; ++step) {
                const double at = std::round(scale.slide.from / scale.slide.step + step) * scale.slide.step;
                const double kept = scale.kept(at), there = scale.kept(std::round(scale.shown(kept) / scale.slide.step + 1.0) * scale.slide.step);
                CHECK(scale.kept(std::round(scale.shown(there) / scale.slide.step - 1.0) * scale.slide.step) == kept);
            }
        });
    }
}

TEST_CASE("inputs: a slider lies within what is allowed, and its ends and steps are round as shown") {
    for (const Speech& speech : {k_metric_english, k_imperial_english}) {
        each_input([&](const app::Input& input, const Range& range, const std::string& path) {
            CAPTURE(path);
            const Scale scale = scale_of(input, speech);
            for (const double end : {scale.slide.from, scale.slide.to}) {
                CHECK(range.holds(scale.kept(end)));
                CHECK(typed_number(number(speech, end, scale.slide.decimals)) == doctest::Approx(end));
            }
            const double steps = (scale.slide.to - scale.slide.from) / scale.slide.step, decimals = scale.slide.step * std::pow(10.0, scale.slide.decimals);
            CHECK(steps >= 8.0);
            CHECK(steps <= 730.0);
            CHECK(std::abs(decimals - std::round(decimals)) < 1e-9);  // no step is smaller than what is shown
        });
    }
}

TEST_CASE("inputs: the ends told as allowed can be typed") {
    for (const Speech& speech : {k_metric_english, k_metric_french, k_imperial_english, k_imperial_french}) {
        each_input([&](const app::Input& input, const Range& range, const std::string& path) {
            CAPTURE(path);
            const AllowedEnds ends = allowed_ends(input, speech, range);
            CHECK(range.holds(typed_and_kept(input, speech, ends.least)));
            CHECK(range.holds(typed_and_kept(input, speech, ends.most)));
        });
    }
}

TEST_CASE("inputs: the same value in either language and either system") {
    const app::Input& length = input_of("frame.leg_length_m[0]");
    CHECK(shown_value(length, k_metric_english, 4.25) == "4.25 m");
    CHECK(shown_value(length, k_metric_french, 4.25) == "4,25 m");
    CHECK(shown_value(length, k_imperial_english, 4.25) == "13.94 ft");
    CHECK(shown_value(length, k_imperial_french, 4.25) == "13,94 ft");
    CHECK(shown_value(input_of("frame.foot_m[0][0]"), k_metric_english, 0.0) == "0.00 m");  // never "-0"
    CHECK(allowed_text(input_of("guys[0].inclination_deg"), k_metric_english, range::inclination_deg) == "allowed 2 to 88\u00B0");
    CHECK(allowed_text(input_of("guys[0].inclination_deg"), k_metric_french, range::inclination_deg) == "admis : 2 à 88\u00B0");
    const Tolerances t{};
    CHECK(error_text(length, k_metric_english, t, range::leg_length_m, 4.0) == "");
    CHECK(error_text(input_of("edge.opening_m"), k_imperial_english, t, range::opening_m, 4.0) == "\u00B1 0.33 ft");
    CHECK(error_text(input_of("edge.opening_m"), k_metric_french, t, range::opening_m, 4.0) == "\u00B1 0,1 m");
}

TEST_CASE("inputs: examples in the line of how are in the units shown") {
    CHECK(how_text(input_of("guys[0].strength_kN"), k_metric_english) == "One strand, no knots: 7 mm 9.8, 8 mm 12.8.");
    CHECK(how_text(input_of("guys[0].strength_kN"), k_imperial_english) == "One strand, no knots: 7 mm 2200, 8 mm 2900.");
    CHECK(how_text(input_of("guys[0].pretension_kN"), k_metric_french) == "Avant la charge ; à la main env. 0,3.");
    CHECK(how_text(input_of("frame.leg_EA_kN[0]"), k_metric_english) == "20000 is a usual aluminium tube.");
}

TEST_CASE("words: plurals are those of the language") {
    CHECK(say(k_metric_english, words::k_to_enter, 1) == "1 value still to enter");
    CHECK(say(k_metric_english, words::k_to_enter, 2) == "2 values still to enter");
    CHECK(say(k_metric_french, words::k_to_enter, 1) == "1 valeur encore à saisir");
    CHECK(say(k_metric_french, words::k_to_enter, 0) == "0 valeur encore à saisir");
    CHECK(say(k_metric_french, words::k_to_enter, 2) == "2 valeurs encore à saisir");
}
