#include "engine/codec/english.hpp"
#include "engine/codec/fault_told.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/plan_codec.hpp"
#include "engine/model/build_model.hpp"
#include "engine/plan/find_faults.hpp"
#include "tests/support/full_plan.hpp"

#include <doctest/doctest.h>

using namespace guywright;

namespace {

std::string in_french(const InputFault& f) { return fault_told(k_french, f); }

void all_have_words(const InputFaults& faults) {
    CHECK_FALSE(faults.empty());
    for (const InputFault& f : faults) CHECK_MESSAGE(has_words_for(k_french, f), to_string(f));
}

}  // namespace

TEST_CASE("fault_told: English is as the engine says it") {
    const InputFault f{"guys[1].inclination_deg", "95", "2 to 88 deg"};
    CHECK(fault_told(k_english, f) == to_string(f));
}

TEST_CASE("fault_told: phrases inside phrases, numbers with a comma, quotations as they stand") {
    CHECK(in_french({"guys[1].inclination_deg", "95.5", "2 to 88 deg"}) == "guys[1].inclination_deg : 95,5 ; admis : 2 à 88 deg");
    CHECK(in_french({"feet", "a list of 1 entry", "3 entries, one per leg"}) == "feet : une liste de 1 élément ; admis : 3 éléments, un par jambe");
    CHECK(in_french({"title", "\"1 to 2.5, text\" (used twice)", "a name of its own"}) ==
          "title : \"1 to 2.5, text\" (pris deux fois) ; admis : un nom différent des autres");
    CHECK(in_french({"plan", "not JSON (found `x at line 2` at line 3, column 14)", "a value"}) ==
          "plan : pas du JSON (`x at line 2` trouvé ligne 3, colonne 14) ; admis : une valeur");
}

TEST_CASE("fault_told: what has no words is told in English, and found") {
    const InputFault f{"x", "quite new", "1 to 2"};
    CHECK_FALSE(has_words_for(k_french, f));
    CHECK(in_french(f) == "x : quite new ; admis : 1 à 2");
}

TEST_CASE("fault_told: every rule across keys and every place that cannot be has words") {
    Plan p = support::full_plan();
    p.feet.clear();
    p.guys[1].name = p.guys[0].name;
    p.guys[2].name.clear();
    p.limits.guy_angle_good_deg = 1.0;
    p.limits.bearing_gap_good_deg = 359.0;
    p.not_measured = {"nothing", "edge.face_deg", "edge.face_deg"};
    p.frame.legs[0].pole_diameter_mm = 100.0;
    p.frame.legs[0].pole_wall_mm = 60.0;
    p.frame.hobbles = {{0, 0}};
    for (RopePlan& rope : p.ropes) rope.share = 0.1;
    p.candidate_anchor_strengths_kN.push_back(1.0);
    all_have_words(find_faults(p));
    p.title = std::string(900, 'x') + "\x01\xFF";
    all_have_words(find_faults(p));

    Plan high = support::full_plan();
    for (GuyPlan& guy : high.guys) {
        guy.anchor_m.reset();
        guy.anchor_height_m = 40.0;
    }
    all_have_words(build_model(high).faults);
    Plan apart = support::full_plan();
    for (std::size_t i = 0; i < apart.frame.legs.size(); ++i) apart.frame.legs[i].foot_m = {0.0, 20.0 * static_cast<double>(i), 0.0};
    if (apart.frame.legs.size() > 1) all_have_words(build_model(apart).faults);
}

TEST_CASE("fault_told: files of any kind of damage have words") {
    const std::string whole = canonical_plan_text(support::full_plan());
    const auto with = [&](std::string_view what, std::string_view put) {
        std::string text = whole;
        const std::size_t at = text.find(what);
        REQUIRE(at != std::string::npos);
        return text.replace(at, what.size(), put);
    };
    for (const std::string& text :
         {std::string(), std::string("}{"), std::string("[1, 2]"), std::string("{\"a\": 1"), whole + "x", std::string(k_most_plan_bytes + 1, ' '),
          std::string(9000, '['), std::string("{\"a\": \"\x01\"}"), std::string("\xFF"), std::string("{\"a\": 1 \"b\"}"), std::string("{\"a\" 1}"),
          std::string("{a: 1}"), std::string("{\"a\": tru}"), std::string("{\"a\": NaN}"), std::string("{\"a\": 01}"), std::string("{\"a\": \"\n\"}"),
          with("\"version\":1", "\"version\":99"), with("\"edge\"", "\"egde\"")})
        all_have_words(read_plan(text).faults);
}
