#include "engine/base/shown_unit.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

// NIST SP 811, appendix B.8, exact factors (MEMORY, arithmetic verified): ft 0.3048 m, lb 0.45359237 kg, lbf = lb * 9.80665 m/s^2.
TEST_CASE("imperial units are the exact ones") {
    const auto imperial = [](std::string_view kept, double v) { return v * shown_unit(kept, UnitSystem::Imperial).per_kept; };
    CHECK_WITHIN(imperial("m", 0.3048), 1.0, 1e-15);
    CHECK_WITHIN(imperial("mm", 25.4), 1.0, 1e-15);
    CHECK_WITHIN(imperial("kg", 0.45359237), 1.0, 1e-15);
    CHECK_WITHIN(imperial("kN", 0.45359237 * 9.80665e-3), 1.0, 1e-15);
    CHECK_WITHIN(imperial("kN", 22.2411080763025), 5000.0, 1e-9);
    CHECK_WITHIN(imperial("N", 0.45359237 * 9.80665), 1.0, 1e-15);
    CHECK_WITHIN(imperial("kN/m", imperial("m", 1.0)), imperial("kN", 1.0), 1e-9);
    CHECK(imperial("deg", 12.0) == 12.0);
    CHECK(shown_unit("GPa", UnitSystem::Imperial).name == "GPa");
    CHECK(shown_unit("kN", UnitSystem::Metric).per_kept == 1.0);
}

TEST_CASE("the unit of a number of the plan is in its path") {
    CHECK(unit_of_path("guys[1].anchor_m[0]") == "m");
    CHECK(unit_of_path("frame.leg_length_m[2]") == "m");
    CHECK(unit_of_path("ropes[0].haul.distance_m") == "m");
    CHECK(unit_of_path("ropes[0].load_kg") == "kg");
    CHECK(unit_of_path("frame.leg_EA_kN[0]") == "kN");
    CHECK(unit_of_path("tolerances.load_percent") == "%");
    CHECK(unit_of_path("frame.pole_wall_mm[0]") == "mm");
    CHECK(unit_of_path("edge.rope_friction").empty());
    CHECK(unit_of_path("guys[0].parts").empty());
    CHECK(unit_of_path("ropes[0].share").empty());
}
