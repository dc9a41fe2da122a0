#include "engine/base/units.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

TEST_CASE("units: a kilonewton is a thousand newtons, both ways") {
    CHECK(newtons(1.25) == 1250.0);
    CHECK(kilonewtons(1250.0) == 1.25);
}

// Standard gravity, pound and pound-force: NIST SP 811 (MEMORY; the arithmetic is verified): lbf = lb * g0.
TEST_CASE("units: standard gravity turns a pound into a pound-force") { CHECK_WITHIN(0.45359237 * k_gravity, 4.4482216152605, 1e-13); }
