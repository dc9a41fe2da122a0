#include "engine/model/geometry.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

TEST_CASE("head of a leaning leg: upright, forward, to the right, back") {
    const Vec3 foot_m{-2.0, 0.5, 0.1};
    CHECK_VEC_WITHIN(head_of_leaning_leg(foot_m, 2.7, 0.0, 1.0), Vec3(-2.0, 0.5, 2.8), 1e-15);
    const double s = 2.7 * 0.5, c = 2.7 * std::sqrt(0.75);
    CHECK_VEC_WITHIN(head_of_leaning_leg(foot_m, 2.7, radians(30), 0.0), Vec3(-2.0 + s, 0.5, 0.1 + c), 1e-14);
    CHECK_VEC_WITHIN(head_of_leaning_leg(foot_m, 2.7, radians(30), radians(90)), Vec3(-2.0, 0.5 - s, 0.1 + c), 1e-14);
    CHECK_VEC_WITHIN(head_of_leaning_leg(foot_m, 2.7, radians(-30), 0.0), Vec3(-2.0 - s, 0.5, 0.1 + c), 1e-14);
}

TEST_CASE("plumb point: under the head on the ground plane") { CHECK(plumb_point({-1.2, 0.3, 2.6}) == Vec3(-1.2, 0.3, 0.0)); }

TEST_CASE("anchor: on the bearing from the plumb point, where the line falls to its height at the inclination") {
    const Vec3 head_m{-1.0, 0.2, 2.5};
    CHECK_VEC_WITHIN(anchor_from_head(head_m, radians(180), radians(45), 0.0), Vec3(-3.5, 0.2, 0.0), 1e-14);
    CHECK_VEC_WITHIN(anchor_from_head(head_m, radians(90), radians(45), 0.5), Vec3(-1.0, -1.8, 0.5), 1e-14);
    for (const double incl_deg : {10.0, 30.0, 65.0})
        for (const double height_m : {-1.0, 0.0, 1.2}) {
            const Vec3 at = anchor_from_head(head_m, radians(250), radians(incl_deg), height_m), rise = head_m - at;
            CHECK_WITHIN(degrees(std::atan2(rise.z, std::hypot(rise.x, rise.y))), incl_deg, 1e-12);
            CHECK_WITHIN(bearing_deg_of(at - head_m), 250.0, 1e-12);
            CHECK(at.z == height_m);
        }
}

TEST_CASE("ground slope: the face's beyond the edge, level behind it, on its rim and across an opening") {
    Edge e;
    e.face_deg = 35.0;
    CHECK(ground_slope_rad({-3, 0, -2}, e) == 0.0);
    CHECK(ground_slope_rad({0, 0, 0}, e) == 0.0);
    CHECK(ground_slope_rad({0.29, 5, 0}, e) == 0.0);
    CHECK(ground_slope_rad({0.25, 0, -0.18}, e) == radians(35));
    CHECK(ground_slope_rad({2, 0, -1.4}, e) == radians(35));
    e.face_deg = 110.0;
    CHECK(ground_slope_rad({2, 0, -1.4}, e) == radians(90));
    e.opening_m = 1.9;
    CHECK(ground_slope_rad({2, 0, 0}, e) == 0.0);
    CHECK(ground_slope_rad({1.61, 0, 0}, e) == 0.0);
    CHECK(ground_slope_rad({1.59, 0, 0}, e) == radians(90));
}

TEST_CASE("seen from sloping ground: level it is the site frame, else x runs down the slope and z stands off it") {
    const Vec3 v{1.0, -2.0, 3.0};
    CHECK(seen_from_ground(v, 0.0) == v);
    CHECK_VEC_WITHIN(seen_from_ground({std::sqrt(0.75), 0.3, -0.5}, radians(30)), Vec3(1.0, 0.3, 0.0), 1e-15);
    CHECK_VEC_WITHIN(seen_from_ground({0.5, 0.0, std::sqrt(0.75)}, radians(30)), Vec3(0.0, 0.0, 1.0), 1e-15);
}

TEST_CASE("height above the face: ground behind the edge, a slope beyond it, nothing under a drop") {
    CHECK(height_above_face_m({-3, 0, 0.4}, 60) == 0.4);
    CHECK(height_above_face_m({0, 0, 0.4}, 90) == 0.4);
    CHECK_WITHIN(height_above_face_m({2, 0, -1.5}, 45), 0.5, 1e-14);
    CHECK_WITHIN(height_above_face_m({1, 0, -std::sqrt(3.0)}, 60), 0.0, 1e-14);
    CHECK(height_above_face_m({0.1, 0, -50}, 90) == HUGE_VAL);
    CHECK(height_above_face_m({0.1, 0, -50}, 110) == HUGE_VAL);
}
