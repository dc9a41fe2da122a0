#include "engine/checks/case_checks.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

// Gere, Mechanics of Materials, 7th ed., problem 11.4-2, READ: steel tube 40/36 mm, 1.2 m long, 210 GPa, pinned ends 62.2 kN; the
// second moment is 43.21575e3 mm^4.
TEST_CASE("published: a steel tube buckles at 62.2 kN between pinned ends") {
    LegPlan leg;
    leg.length_m = 1.2;
    leg.pole_diameter_mm = 40.0;
    leg.pole_wall_mm = 2.0;
    leg.pole_E_GPa = 210.0;
    CHECK_WITHIN(pole_buckling_kN(leg), 62.2012, 0.00005);
    CHECK_WITHIN(pole_buckling_kN(leg), 62.2, 0.05);
}

// pi^3 E d^4 / (64 L^2) for a solid round pole (identity, COMPUTED): spruce, 10 GPa, 0.12 m thick, 4 m long.
TEST_CASE("published: a solid pole buckles by its diameter to the fourth and its length squared") {
    LegPlan leg;
    leg.length_m = 4.0;
    leg.pole_diameter_mm = 120.0;
    leg.pole_wall_mm = 0.0;
    leg.pole_E_GPa = 10.0;
    const double whole_kN = pole_buckling_kN(leg);
    CHECK_WITHIN(whole_kN, 62.7877, 0.0005);
    leg.pole_diameter_mm = 60.0;
    CHECK_WITHIN(pole_buckling_kN(leg), whole_kN / 16.0, 1e-9);
    leg.length_m = 2.0;
    CHECK_WITHIN(pole_buckling_kN(leg), whole_kN / 4.0, 1e-9);
}
