#include "wasm/app/signatures.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "engine/codec/plan_codec.hpp"
#include "tests/support/plans.hpp"

using namespace guywright;
using namespace guywright::app;

namespace {

nlohmann::json entry(const std::string& id, const Plan& plan) {
    return {{"id", id},
            {"plan", canonical_plan_text(plan)},
            {"people",
             {{{"name", "Mara"}, {"role", "rigger"}, {"time", "2031-04-05 16:07"}}, {{"name", "Jon"}, {"role", "officer"}, {"time", "2031-04-05 16:09"}}}}};
}

}  // namespace

TEST_CASE("signatures: those of this very plan are found, and of no other") {
    const Plan plan = support::go_plan();
    Plan other = plan;
    other.guys[0].bearing_deg += 1e-9;
    const auto all = read_signatures(nlohmann::json{{"signed", {entry("b", other), entry("a", plan)}}}.dump());
    REQUIRE(all.size() == 2);
    const Signatures* found = signatures_of(all, plan);
    REQUIRE(found != nullptr);
    CHECK(found->id == "a");
    REQUIRE(found->people.size() == 2);
    CHECK(found->people[1].name == "Jon");
    CHECK(found->people[1].time == "2031-04-05 16:09");
    other.title += "!";
    CHECK(signatures_of(all, other) == nullptr);
}

TEST_CASE("signatures: a change takes away all that was signed for the plan before, and nothing else") {
    const Plan plan = support::go_plan();
    Plan other = plan;
    other.note = "another";
    auto all = read_signatures(nlohmann::json{{"signed", {entry("a", plan), entry("b", other), entry("c", plan)}}}.dump());
    CHECK(fall_away(all, plan) == std::vector<std::string>{"a", "c"});
    CHECK(signatures_of(all, plan) == nullptr);
    CHECK(signatures_of(all, other) != nullptr);
    CHECK(fall_away(all, plan).empty());
}

TEST_CASE("signatures: what cannot be read signs nothing") {
    const Plan plan = support::go_plan();
    nlohmann::json bad_plan = entry("a", plan), no_people = entry("b", plan);
    bad_plan["plan"] = "{}";
    no_people["people"] = 3;
    CHECK(read_signatures(nlohmann::json{{"signed", {bad_plan, no_people, 7, nullptr}}}.dump()).empty());
    for (const char* text : {"", "{", "[]", "7", "{\"signed\":{}}", "{\"signed\":[[]]}"}) CHECK(read_signatures(text).empty());
}
