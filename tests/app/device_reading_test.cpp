#include "wasm/app/device.hpp"
#include "wasm/app/found_anchors.hpp"
#include "wasm/app/starters.hpp"

#include <doctest/doctest.h>

using namespace guywright;
using namespace guywright::app;
using Status = Reading::Status;

namespace {

constexpr double k_largest_deg = 20.0;

Held lying(double beta_deg, double alpha_deg = 0.0) {
    Held h;
    h.alpha_deg = alpha_deg;
    h.beta_deg = beta_deg;
    h.gamma_deg = 0.0;
    h.absolute = true;
    return h;
}

/// Ten readings a second for two seconds, `wobble` to and fro.
template <class F>
SteadyReader filled(F held_at, double seconds = 2.0) {
    SteadyReader reader;
    for (int i = 0; i * 0.1 <= seconds; ++i) reader.add(held_at(i % 2 == 0 ? 1.0 : -1.0), 50.0 + i * 0.1);
    return reader;
}

Plan sound_plan() {
    Plan plan = new_plan();
    plan.not_measured = {"guys[0].inclination_deg", "guys[0].bearing_deg"};
    return plan;
}

}  // namespace

TEST_CASE("SteadyReader: the mean of a still hand, its spread, and never better than the device") {
    const Reading r = filled([](double side) { return lying(41.0 + 0.4 * side); }).read(ReadingKind::Inclination, k_largest_deg);
    CHECK(r.status == Status::Steady);
    CHECK(std::abs(r.value_deg - 41.0) < 0.1);
    CHECK(std::abs(r.spread_deg - 0.4) < 0.1);
    CHECK(r.error_deg == k_tilt_error_deg);
}

TEST_CASE("SteadyReader: an unsteady hand widens the error, a moving one is no reading") {
    const Reading shaky = filled([](double side) { return lying(41.0 + 1.8 * side); }).read(ReadingKind::Inclination, k_largest_deg);
    CHECK(shaky.status == Status::Steady);
    CHECK(shaky.error_deg > 3.5);
    CHECK(filled([](double side) { return lying(41.0 + 3.0 * side); }).read(ReadingKind::Inclination, k_largest_deg).status == Status::Moving);
}

TEST_CASE("SteadyReader: too few, too short, or nothing told is no reading") {
    const auto still = [](double) { return lying(41.0); };
    CHECK(SteadyReader{}.read(ReadingKind::Inclination, k_largest_deg).status == Status::Waiting);
    CHECK(filled(still, 1.0).read(ReadingKind::Inclination, k_largest_deg).status == Status::Waiting);
    CHECK(filled([](double) { return Held{}; }).read(ReadingKind::Inclination, k_largest_deg).status == Status::Waiting);
    SteadyReader reader = filled(still);
    reader.add(lying(41.0), 3600.0);  // a pause: what was before it counts no more
    CHECK(reader.read(ReadingKind::Inclination, k_largest_deg).status == Status::Waiting);
}

TEST_CASE("SteadyReader: headings are averaged across north") {
    const Reading r = filled([](double side) { return lying(0.0, 3.0 * side); }).read(ReadingKind::Bearing, k_largest_deg);
    CHECK(r.status == Status::Steady);
    CHECK(std::abs(turn_deg(r.value_deg, 0.0)) < 0.5);
    CHECK(std::abs(r.spread_deg - 3.0) < 0.5);
    CHECK(r.error_deg >= std::sqrt(2.0) * k_heading_error_deg);
}

TEST_CASE("SteadyReader: a compass that says it is bad, that is steep, or that is none") {
    const auto told = [](double error_deg, double beta_deg = 0.0) {
        return filled([=](double) {
                   Held h = lying(beta_deg, 20.0);
                   h.compass_deg = 30.0;
                   h.compass_error_deg = error_deg;
                   return h;
               })
            .read(ReadingKind::Bearing, k_largest_deg);
    };
    CHECK(told(10.0).status == Status::Steady);
    CHECK(told(10.0).error_deg > 14.0);
    CHECK(told(25.0).status == Status::Inaccurate);
    CHECK(told(-1.0).status == Status::Inaccurate);
    CHECK(told(5.0, 60.0).status == Status::HoldFlatter);
    const Reading none = filled([](double) {
                             Held h = lying(0.0);
                             h.absolute = false;
                             return h;
                         }).read(ReadingKind::Bearing, k_largest_deg);
    CHECK(none.status == Status::Waiting);
}

TEST_CASE("SteadyReader: a leg's lean has its side only with the screen toward the eye") {
    CHECK(filled([](double) { return lying(75.0); }).read(ReadingKind::LegLean, k_largest_deg).status == Status::Steady);
    const auto aside = [](double) {
        Held h = lying(0.0);
        h.gamma_deg = -75.0;
        h.taller_than_wide = false;  // its long edge is x
        return h;
    };
    CHECK(filled(aside).read(ReadingKind::LegLean, k_largest_deg).status == Status::Steady);
    const auto sideways = [](double) {
        Held h = lying(60.0);
        h.gamma_deg = 80.0;
        return h;
    };
    CHECK(filled(sideways).read(ReadingKind::LegLean, k_largest_deg).status == Status::TurnScreen);
}

TEST_CASE("reading_kind: what a device can measure, and straight out before the first bearing") {
    Plan plan = sound_plan();
    CHECK(reading_kind(plan, "guys[2].inclination_deg") == ReadingKind::Inclination);
    CHECK(reading_kind(plan, "frame.lean_deg") == ReadingKind::LegLean);
    CHECK(reading_kind(plan, "guys[0].bearing_deg") == ReadingKind::StraightOut);
    plan.edge.compass_out_deg = 200.0;
    for (const char* path : {"guys[0].bearing_deg", "ropes[0].haul.bearing_deg", "feet[0].ties[0].bearing_deg"})
        CHECK(reading_kind(plan, path) == ReadingKind::Bearing);
    plan.frame.kind = FrameKind::AFrame;
    CHECK(reading_kind(plan, "frame.lean_deg") == ReadingKind::PlaneLean);
    plan.frame.kind = FrameKind::Tripod;
    CHECK_FALSE(reading_kind(plan, "frame.lean_deg").has_value());
    CHECK_FALSE(reading_kind(plan, "edge.face_deg").has_value());
}

TEST_CASE("take_reading: the value is entered, the tolerance grows where it must and never shrinks") {
    Plan plan = sound_plan();
    plan.tolerances.inclination_deg = 1.0;
    Reading r{.status = Status::Steady, .value_deg = 41.3, .spread_deg = 1.6, .error_deg = 3.2};
    CHECK(take_reading(plan, "guys[0].inclination_deg", ReadingKind::Inclination, r).empty());
    CHECK(plan.guys[0].inclination_deg == 41.0);
    CHECK(plan.tolerances.inclination_deg == 3.5);
    CHECK(plan.not_measured == std::vector<std::string>{"guys[0].bearing_deg"});
    r.error_deg = 3.0;
    CHECK(take_reading(plan, "guys[0].inclination_deg", ReadingKind::Inclination, r).empty());
    CHECK(plan.tolerances.inclination_deg == 3.5);
}

TEST_CASE("take_reading: a bearing is counted from straight out, across north too") {
    Plan plan = sound_plan();
    Reading r{.status = Status::Steady, .value_deg = 350.4, .error_deg = 9.9};
    CHECK(take_reading(plan, "guys[0].bearing_deg", ReadingKind::StraightOut, r).empty());
    CHECK(plan.edge.compass_out_deg == 350.0);
    CHECK_FALSE(plan.not_measured.empty());
    r.value_deg = 20.0;
    CHECK(take_reading(plan, "guys[0].bearing_deg", ReadingKind::Bearing, r).empty());
    CHECK(plan.guys[0].bearing_deg == 30.0);
    CHECK(plan.tolerances.bearing_deg == 10.0);
    r.value_deg = 349.9;
    CHECK(take_reading(plan, "guys[0].bearing_deg", ReadingKind::Bearing, r).empty());
    CHECK(plan.guys[0].bearing_deg == 0.0);
}

TEST_CASE("take_reading: an anchor found is turned to its bearing and stays as far away") {
    Plan plan = sound_plan();
    plan.edge.compass_out_deg = 200.0;
    plan.candidate_anchors_m = {{-6.0, 1.0, 0.4}};
    const std::string bearing = "candidate_anchors_m[0][0]", distance = "candidate_anchors_m[0][1]";
    CHECK(reading_kind(plan, bearing) == ReadingKind::Bearing);
    CHECK_FALSE(reading_kind(plan, distance).has_value());
    const double away_m = measure_at(plan, distance)->value;
    CHECK(take_reading(plan, bearing, ReadingKind::Bearing, {.status = Status::Steady, .value_deg = 290.0, .error_deg = 5.0}, {}).empty());
    CHECK(measure_at(plan, bearing)->value == doctest::Approx(90.0));
    CHECK(measure_at(plan, distance)->value == doctest::Approx(away_m));
    CHECK(plan.candidate_anchors_m[0].z == 0.4);
}

TEST_CASE("take_reading: what is out of range or unsteady changes nothing and says why") {
    Plan plan = sound_plan();
    const Plan before = plan;
    Reading r{.status = Status::Steady, .value_deg = 89.6, .error_deg = 4.0};
    CHECK(take_reading(plan, "guys[0].inclination_deg", ReadingKind::Inclination, r) == "90\u00B0 is not possible here; allowed 2 to 88\u00B0");
    CHECK(plan == before);
    r.status = Status::Moving;
    CHECK_FALSE(take_reading(plan, "guys[0].inclination_deg", ReadingKind::Inclination, r).empty());
    CHECK(plan == before);
}
