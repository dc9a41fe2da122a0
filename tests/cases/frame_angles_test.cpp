#include "engine/cases/frame_angles.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

Model standing_on(std::initializer_list<Vec3> feet, Vec3 head_m) {
    Model m;
    m.drawn_head_m = head_m;
    for (const Vec3 foot_m : feet) m.legs.push_back({foot_m, glm::length(head_m - foot_m), 1e6, 0.0, false});
    return m;
}

double off_deg(const Model& m, Vec3 direction) { return degrees(angle_off_legs_rad(m, m.drawn_head_m, direction)); }

}  // namespace

TEST_CASE("angle_off_legs: one leg, seen from the head toward its foot") {
    CHECK_WITHIN(off_deg(standing_on({{0, 0, 0}}, {0, 0, 2}), {2, 0, -2}), 45.0, 1e-12);
    CHECK_WITHIN(off_deg(standing_on({{0, 0, 0}}, {1, 0, 2}), {0, 0, -2}), degrees(std::atan(0.5)), 1e-12);
    CHECK_WITHIN(off_deg(standing_on({{0, 0, 0}}, {0, 0, 2}), {0, 0, 3}), 180.0, 1e-12);
}

TEST_CASE("angle_off_legs: two legs, to their plane, whatever lies in it") {
    const Model m = standing_on({{0, -1, 0}, {0, 1, 0}}, {0, 0, 2});
    CHECK_WITHIN(off_deg(m, {0, 0.3, -1}), 0.0, 1e-12);
    CHECK_WITHIN(off_deg(m, {1, 0, -1}), 45.0, 1e-12);
    CHECK_WITHIN(off_deg(m, {-1, 0, -1}), 45.0, 1e-12);
    CHECK_WITHIN(off_deg(m, {1, 5, 0}), degrees(std::asin(1.0 / std::sqrt(26.0))), 1e-12);
}

TEST_CASE("angle_off_legs: three legs, nothing inside their corner") {
    const Model m = standing_on({{1, 0, 0}, {-0.5, 0.9, 0}, {-0.5, -0.9, 0}}, {0, 0, 2});
    CHECK(off_deg(m, {0, 0, -1}) == 0.0);
    CHECK(off_deg(m, {0.2, 0, -1}) == 0.0);
    CHECK(off_deg(m, {-1, 0, -1}) > 10.0);
    // past the face between the two legs at x = -0.5: that face leans atan(0.5 / 2) from upright
    CHECK_WITHIN(off_deg(m, {-1, 0, -1}), 45.0 - degrees(std::atan(0.25)), 1e-9);
}

TEST_CASE("inside_legs: by how much, and negative outside") {
    const Model a = standing_on({{0, -1, 0}, {0, 1, 0}}, {0, 0, 2});
    const double half_deg = degrees(std::atan(0.5));
    CHECK_WITHIN(degrees(inside_legs_rad(a, {0, 0, 2}, {0, 0, -1})), half_deg, 1e-9);
    CHECK_WITHIN(degrees(inside_legs_rad(a, {0, 0, 2}, {5, 1, -1})), half_deg - 45.0, 1e-9);  // its part across the plane does not count
    CHECK(inside_legs_rad(a, {0, 0, 2}, {0, 0, 1}) < 0.0);
    const Model t = standing_on({{1, 0, 0}, {-0.5, 0.9, 0}, {-0.5, -0.9, 0}}, {0, 0, 2});
    // straight down passes the nearest face at the angle whose tangent is that face's foot line's distance over the height
    const double line_m = 0.9 / std::hypot(1.5, 0.9), middle_deg = degrees(std::atan(std::min(0.5, line_m) / 2.0));
    CHECK_WITHIN(degrees(inside_legs_rad(t, {0, 0, 2}, {0, 0, -1})), middle_deg, 1e-9);
    CHECK(inside_legs_rad(t, {0, 0, 2}, {0, 0, 1}) < 0.0);
}

TEST_CASE("best_guy_on_side: the one farthest off the plane, each side by itself") {
    Model m = standing_on({{0, -1, 0}, {0, 1, 0}}, {0, 0, 2});
    m.guys.push_back({{3, 0, 0}, 1.0, 1.0});
    m.guys.push_back({{1, 3, 0}, 1.0, 1.0});
    const SideGuy front = best_guy_on_side(m, {0, 0, 2}, plane_of_legs(m, {0, 0, 2}).x > 0.0 ? 0 : 1);
    CHECK(front.exists);
    CHECK(front.guy == 0);
    CHECK_WITHIN(degrees(front.angle_rad), degrees(std::atan(1.5)), 1e-9);
    CHECK_FALSE(best_guy_on_side(m, {0, 0, 2}, plane_of_legs(m, {0, 0, 2}).x > 0.0 ? 1 : 0).exists);
}
