#include "engine/codec/plan_codec.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/text_of.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

using namespace guywright;

using support::text_of;

TEST_CASE("examples: every example plan reads without fault and keeps every byte from then on") {
    int examples = 0;
    for (const auto& entry : std::filesystem::directory_iterator(GUYWRIGHT_ROOT "/assets/examples")) {
        if (entry.path().extension() != ".json") continue;
        INFO(entry.path().string());
        const PlanRead read = read_plan(text_of(entry.path()));
        REQUIRE_MESSAGE(read.ok(), to_string(read.faults[0]));
        const bool kept = write_plan(read_plan(write_plan(read.plan)).plan) == write_plan(read.plan);
        CHECK(kept);
        ++examples;
    }
    CHECK(examples > 0);
}

TEST_CASE("examples: a plan written by hand, short keys only, is the plan of the tests") {
    const PlanRead read = read_plan(text_of(GUYWRIGHT_ROOT "/tests/plans/three_guys.json"));
    REQUIRE(read.ok());
    Plan expected = support::steep_plan();
    expected.candidate_anchors_m = {{-6.0, 1.5, 0.4}};
    CHECK(write_plan(read.plan) == write_plan(expected));
}
