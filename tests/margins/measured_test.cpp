#include "engine/margins/measured.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

#include <set>

using namespace guywright;

TEST_CASE("measured: each kind of measurement errs by its own tolerance, shares by their share") {
    Plan p = support::usual_plan();
    p.tolerances = {.bearing_deg = 4, .inclination_deg = 2, .lean_deg = 1.5, .face_deg = 6, .distance_m = 0.2, .load_percent = 10, .pretension_percent = 30};
    std::set<std::string> seen;
    for (const Measured& m : measured_numbers(p)) {
        seen.insert(m.path);
        if (m.path == "guys[1].bearing_deg") CHECK(m.half == 4.0);
        if (m.path == "guys[1].inclination_deg") CHECK(m.half == 2.0);
        if (m.path == "frame.lean_deg") CHECK(m.half == 1.5);
        if (m.path == "edge.face_deg") CHECK(m.half == 6.0);
        if (m.path == "frame.foot_m[0][0]") CHECK(m.half == 0.2);
        if (m.path == "ropes[0].load_kg") CHECK_WITHIN(m.half, 20.0, 1e-12);
        if (m.path == "guys[2].pretension_kN") CHECK_WITHIN(m.half, 0.09, 1e-12);
    }
    for (const char* path : {"guys[1].bearing_deg", "guys[1].inclination_deg", "frame.lean_deg", "edge.face_deg", "frame.foot_m[0][0]", "ropes[0].load_kg",
                             "guys[2].pretension_kN", "ropes[0].haul.distance_m"})
        CHECK_MESSAGE(seen.contains(path), path);
    for (const char* kit : {"guys[0].strength_kN", "ropes[0].pulley_strength_kN", "limits.factor_soft", "actions.swing_deg"})
        CHECK_MESSAGE(!seen.contains(kit), kit);
}

TEST_CASE("measured: without tolerances nothing errs") {
    Plan p = support::exact(support::usual_plan());
    CHECK(measured_numbers(p).empty());
}

TEST_CASE("measured: a bearing goes round, all else stays within what a plan may hold") {
    Plan p = support::usual_plan();
    p.guys[0].bearing_deg = 355.0;
    p.guys[0].inclination_deg = 3.0;
    for (const Measured& m : measured_numbers(p)) {
        if (m.path == "guys[0].bearing_deg") {
            m.move_to(1.0);
            CHECK(p.guys[0].bearing_deg == 365.0);
        }
        if (m.path == "guys[0].inclination_deg") {
            m.move_to(-1.0);
            CHECK(p.guys[0].inclination_deg == range::inclination_deg.min);
        }
    }
}

TEST_CASE("low discrepancy: every axis is filled evenly, and no two axes alike") {
    for (std::size_t axis = 0; axis < 130; ++axis) {
        CAPTURE(axis);
        std::array<int, 8> bins{};
        for (std::size_t i = 0; i < 512; ++i) {
            const double v = low_discrepancy(i, axis);
            REQUIRE(v >= -1.0);
            REQUIRE(v < 1.0);
            ++bins[static_cast<std::size_t>((v + 1.0) * 4.0)];
        }
        for (const int n : bins) CHECK(std::abs(n - 64) <= 24);
        for (std::size_t other = 0; other < axis; ++other) CHECK(low_discrepancy(100, axis) != low_discrepancy(100, other));
    }
}
