#include "engine/base/vec.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

TEST_CASE("along_bearing: 0 is out over the edge, 90 to the right, 180 back, 270 to the left") {
    CHECK_VEC_WITHIN(along_bearing(radians(0.0)), Vec3(1, 0, 0), 1e-15);
    CHECK_VEC_WITHIN(along_bearing(radians(90.0)), Vec3(0, -1, 0), 1e-15);
    CHECK_VEC_WITHIN(along_bearing(radians(180.0)), Vec3(-1, 0, 0), 1e-15);
    CHECK_VEC_WITHIN(along_bearing(radians(270.0)), Vec3(0, 1, 0), 1e-15);
}

TEST_CASE("bearing_deg_of: gives back every bearing from 0 up to 360") {
    for (int deg = 0; deg < 360; ++deg) {
        const double back_deg = bearing_deg_of(3.0 * along_bearing(radians(deg)));
        CHECK_WITHIN(std::remainder(back_deg - deg, 360.0), 0.0, 1e-12);
        CHECK(back_deg >= 0.0);
        CHECK(back_deg <= 360.0);
    }
}

TEST_CASE("angle_between: right angles, opposites and lengths") {
    CHECK_WITHIN(angle_between({2, 0, 0}, {0, 0, 5}), k_pi / 2, 1e-15);
    CHECK_WITHIN(angle_between({1, 1, 0}, {-3, -3, 0}), k_pi, 1e-15);
    CHECK_WITHIN(angle_between({1, 0, 0}, {1, std::sqrt(3.0), 0}), k_pi / 3, 1e-15);
}

TEST_CASE("angle_between: tells a hundred-millionth of a radian, which acos of a cosine cannot") {
    const double tiny = 1e-8;
    CHECK_WITHIN(angle_between({1, 0, 0}, {std::cos(tiny), std::sin(tiny), 0}), tiny, 1e-15);
    CHECK_WITHIN(angle_between({1, 0, 0}, {-std::cos(tiny), std::sin(tiny), 0}), k_pi - tiny, 1e-15);
}

TEST_CASE("angle_between: no direction, no angle") { CHECK(angle_between({0, 0, 0}, {1, 2, 3}) == 0.0); }

TEST_CASE("degrees and radians undo each other") {
    CHECK_WITHIN(radians(180.0), std::acos(-1.0), 1e-15);
    CHECK_WITHIN(degrees(radians(37.25)), 37.25, 1e-13);
}
