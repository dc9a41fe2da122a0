#include "engine/verdict/second_check.hpp"

#include <doctest/doctest.h>

#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

/// The readings of somebody who measures everything asked for exactly as it stands in the plan.
std::vector<SecondReading> same_readings(Plan plan, const Evaluation& e) {
    std::vector<SecondReading> out;
    for (const std::string& path : critical_measurements(e)) out.push_back({path, find_number(plan, path).get()});
    return out;
}

SecondReading& reading_of(std::vector<SecondReading>& readings, std::string_view path) {
    const auto found = std::find_if(readings.begin(), readings.end(), [&](const SecondReading& r) { return r.path == path; });
    REQUIRE(found != readings.end());
    return *found;
}

}  // namespace

TEST_CASE("second check: somebody who reads the same gets the same verdict") {
    const Plan plan = support::go_plan();
    const Evaluation e = evaluate(plan);
    const SecondCheck c = second_check(plan, e, same_readings(plan, e));
    CHECK(c.agrees());
    CHECK(c.readings.size() == k_most_second_readings);
    CHECK(c.of_second == Verdict::Go);
    CHECK(c.worse == Verdict::Go);
}

TEST_CASE("second check: what is asked for again is what the verdict hangs on") {
    Plan plan = support::go_plan();
    const Evaluation e = evaluate(plan);
    const std::vector<std::string> asked = critical_measurements(e);
    CHECK(std::find(asked.begin(), asked.end(), "ropes[0].load_kg") != asked.end());  // every force grows with it
    std::vector<std::string> in_order;
    for (const Measured& m : measured_numbers(plan))
        if (std::find(asked.begin(), asked.end(), m.path) != asked.end()) in_order.push_back(m.path);
    CHECK(asked == in_order);
}

TEST_CASE("second check: a reading agrees up to the tolerance, and no farther") {
    const Plan plan = support::go_plan();
    const Evaluation e = evaluate(plan);
    const double tolerance_kg = plan.ropes[0].load_kg * plan.tolerances.load_percent / 100.0;
    std::vector<SecondReading> readings = same_readings(plan, e);
    for (const double share : {-1.0, 1.0, -1.001, 1.001}) {
        reading_of(readings, "ropes[0].load_kg").value = plan.ropes[0].load_kg + share * tolerance_kg;
        CAPTURE(share);
        CHECK(second_check(plan, e, readings).agrees() == (std::abs(share) <= 1.0));
    }
}

TEST_CASE("second check: bearings are compared the short way round") {
    Plan plan = support::go_plan();
    plan.guys[0].bearing_deg = 359.0;
    SecondCheck c = second_check(plan, evaluate(plan), {{"guys[0].bearing_deg", 2.0}});
    REQUIRE(c.readings.size() == 1);
    CHECK(c.readings[0].agrees == (plan.tolerances.bearing_deg >= 3.0));
    c = second_check(plan, evaluate(plan), {{"guys[0].bearing_deg", 179.0}});
    CHECK_FALSE(c.readings[0].agrees);
}

TEST_CASE("second check: the worse of the two verdicts counts, whichever it is") {
    const Plan plan = support::go_plan();
    const Evaluation e = evaluate(plan);
    std::vector<SecondReading> readings = same_readings(plan, e);
    reading_of(readings, "ropes[0].load_kg").value = 490.0;
    const SecondCheck c = second_check(plan, e, readings);
    CHECK(c.of_second == Verdict::NoGo);
    CHECK(c.worse == Verdict::NoGo);
    CHECK(c.seconds.ropes[0].load_kg == 490.0);  // and it can be told why
    REQUIRE_FALSE(c.with_seconds.closest.empty());
    CHECK(c.with_seconds.closest.front().status == CheckStatus::Fail);
    Plan heavy = plan;
    heavy.ropes[0].load_kg = 490.0;
    const Evaluation heavy_e = evaluate(heavy);
    REQUIRE(heavy_e.verdict == Verdict::NoGo);
    std::vector<SecondReading> light = same_readings(heavy, heavy_e);
    for (SecondReading& r : light)
        if (r.path == "ropes[0].load_kg") r.value = plan.ropes[0].load_kg;
    CHECK(second_check(heavy, heavy_e, light).worse == Verdict::NoGo);
}

TEST_CASE("second check: never GO while a reading is missing, cannot be, or the plan was not checked to the end") {
    const Plan plan = support::go_plan();
    const Evaluation e = evaluate(plan);
    std::vector<SecondReading> readings = same_readings(plan, e);
    const SecondReading last = readings.back();
    readings.pop_back();
    const SecondCheck gap = second_check(plan, e, readings);
    CHECK(gap.missing == std::vector<std::string>{last.path});
    CHECK(gap.worse == Verdict::NotChecked);
    CHECK_FALSE(gap.agrees());

    readings.push_back({last.path, 1e6});
    const SecondCheck wild = second_check(plan, e, readings);
    REQUIRE(wild.faults.size() == 1);
    CHECK(wild.faults[0].path == last.path);
    CHECK(wild.worse == Verdict::NotChecked);
    readings.back().value = std::nan("");
    CHECK(second_check(plan, e, readings).worse == Verdict::NotChecked);

    CHECK(critical_measurements(evaluate_as_measured(plan)).empty());
    CHECK(second_check(plan, evaluate_as_measured(plan), {}).worse == Verdict::NotChecked);
}
