#include "tests/support/random.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/projection.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

void check_at(Vec2 got, double x, double y, double tolerance = 1e-9) {
    CHECK_WITHIN(got.x, x, tolerance);
    CHECK_WITHIN(got.y, y, tolerance);
}

/// Stands at the origin, looks level out over the edge; 100 px per metre at 1 m.
Eye level_eye() {
    Eye eye = eye_along(0.0, 0.0);
    eye.scale_px = 100.0;
    eye.centre_px = {200.0, 150.0};
    return eye;
}

Vec2 image(const Eye& eye, Vec3 at_m) { return image_of_seen(eye, seen_from(eye, at_m)); }

}  // namespace

TEST_CASE("eye: looking along a bearing, its right hand and its up are where a person's are") {
    CHECK_VEC_WITHIN(eye_along(0, 0).forward, Vec3(1, 0, 0), 1e-15);
    CHECK_VEC_WITHIN(eye_along(0, 0).right, Vec3(0, -1, 0), 1e-15);
    CHECK_VEC_WITHIN(eye_along(0, 0).up, Vec3(0, 0, 1), 1e-15);
    CHECK_VEC_WITHIN(eye_along(90, 0).forward, Vec3(0, -1, 0), 1e-15);
    CHECK_VEC_WITHIN(eye_along(180, 30).forward, Vec3(-std::sqrt(0.75), 0, -0.5), 1e-15);
    for (const double yaw : {0.0, 77.0, 215.0, 300.0})
        for (const double pitch : {0.0, 18.0, 90.0}) {
            const Eye e = eye_along(yaw, pitch);
            CHECK_WITHIN(glm::length(e.up), 1.0, 1e-14);
            CHECK_WITHIN(glm::dot(e.up, e.forward), 0.0, 1e-14);
            CHECK_WITHIN(glm::dot(e.right, e.forward), 0.0, 1e-14);
            CHECK(e.up.z > -1e-15);
        }
}

TEST_CASE("fixed views: from above out is up and right is right; from the right out is to the right and up is up") {
    Eye above = eye_along(0, 90), side = eye_along(270, 0);
    above.parallel = side.parallel = true;
    check_at(image(above, {2, 0, 5}), 0, -2);
    check_at(image(above, {0, -3, 1}), 3, 0);
    check_at(image(side, {2, 7, 0}), 2, 0);
    check_at(image(side, {0, -4, 3}), 0, -3);
}

TEST_CASE("perspective: known points, half the size at twice the distance") {
    const Eye eye = level_eye();
    check_at(image(eye, {2, 0, 0}), 200, 150);
    check_at(image(eye, {2, -1, 0}), 250, 150);
    check_at(image(eye, {4, -1, 0}), 225, 150);
    check_at(image(eye, {2, 0, 1}), 200, 100);
    CHECK_WITHIN(px_per_m(eye, {4, 3, 2}), 25.0, 1e-12);
    CHECK(px_per_m(eye, {-1, 0, 0}) == 0.0);
}

TEST_CASE("line: what is behind the eye is not drawn, what crosses is cut where it comes near") {
    const Eye eye = level_eye();
    CHECK_FALSE(image_of_line(eye, {-1, 0, 0}, {-5, 2, 1}).visible);
    const ImageLine whole = image_of_line(eye, {2, -1, 0}, {2, 0, 1});
    REQUIRE(whole.visible);
    check_at(whole.a, 250, 150);
    check_at(whole.b, 200, 100);
    const ImageLine forth = image_of_line(eye, {2, -1, 0}, {-2, -1, 0}), back = image_of_line(eye, {-2, -1, 0}, {2, -1, 0});
    REQUIRE(forth.visible);
    REQUIRE(back.visible);
    check_at(forth.a, 250, 150);
    check_at(forth.b, 200 + 100 / k_near_m, 150, 1e-6);  // still 1 m to the right, at the near plane
    check_at(back.a, forth.b.x, forth.b.y, 1e-6);
    check_at(back.b, 250, 150);
}

TEST_CASE("line: without perspective nothing is behind") {
    Eye eye = level_eye();
    eye.parallel = true;
    const ImageLine l = image_of_line(eye, {-9, -1, 0}, {9, -1, 1});
    REQUIRE(l.visible);
    check_at(l.a, 300, 150);
    check_at(l.b, 300, 50);
}

TEST_CASE("polygon: a ground that runs under the eye keeps the corners ahead and is cut at the near plane") {
    Eye eye = level_eye();
    eye.at_m = {0, 0, 2};
    const std::array<Vec3, 4> ground{Vec3{-5, -1, 0}, Vec3{5, -1, 0}, Vec3{5, 1, 0}, Vec3{-5, 1, 0}};
    const std::vector<Vec2> seen = image_of_polygon(eye, ground);
    REQUIRE(seen.size() == 4);
    for (const Vec2 p : seen) CHECK(p.y > 150.0);  // all below the horizon
    check_at(seen[1], 220, 190);
    check_at(seen[2], 180, 190);
    check_at(seen[0], 200 + 100 / k_near_m, 150 + 200 / k_near_m, 1e-6);
    CHECK(image_of_polygon(eye, std::array<Vec3, 3>{Vec3{-1, 0, 0}, Vec3{-2, 1, 0}, Vec3{-2, -1, 0}}).empty());
}

TEST_CASE("cut to the frame: the part inside, along the same line") {
    Vec2 a{-10, 5}, b{30, 5};
    REQUIRE(cut_to_box(a, b, {0, 0}, {20, 10}));
    check_at(a, 0, 5);
    check_at(b, 20, 5);
    Vec2 c{-5, 20}, d{30, 11};
    CHECK_FALSE(cut_to_box(c, d, {0, 0}, {20, 10}));
    Vec2 inside{3, 3}, same{3, 3};
    CHECK(cut_to_box(inside, same, {0, 0}, {20, 10}));
    support::Random random(5);
    for (int i = 0; i < 500; ++i) {
        const Vec2 p{random.between(-40, 60), random.between(-40, 50)}, q{random.between(-40, 60), random.between(-40, 50)};
        Vec2 e = p, f = q;
        if (!cut_to_box(e, f, {0, 0}, {20, 10})) continue;
        for (const Vec2 r : {e, f}) {
            CHECK(r.x >= -1e-9);
            CHECK(r.x <= 20 + 1e-9);
            CHECK(r.y >= -1e-9);
            CHECK(r.y <= 10 + 1e-9);
            CHECK_WITHIN((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x), 0.0, 1e-9);
        }
    }
}

TEST_CASE("cut to the frame: a triangle over a corner loses what is outside and no more") {
    const std::vector<Vec2> cut = cut_to_box(std::vector<Vec2>{{-5, 5}, {5, -5}, {5, 5}}, {0, 0}, {20, 20});
    double twice_area = 0.0;
    for (std::size_t i = 0; i < cut.size(); ++i) {
        const Vec2 a = cut[i], b = cut[(i + 1) % cut.size()];
        twice_area += a.x * b.y - a.y * b.x;
    }
    CHECK_WITHIN(0.5 * twice_area, 25.0, 1e-12);  // the hypotenuse runs through the box's corner: a square of 5 is left
    CHECK(cut_to_box(std::vector<Vec2>{{-5, -5}, {-1, -5}, {-1, -1}}, {0, 0}, {20, 20}).empty());
}

TEST_CASE("turn: yaw goes round, pitch stays above the ground and short of straight down") {
    CHECK(turned(10, 20, {0, 0}) == std::pair{10.0, 20.0});
    CHECK(turned(10, 20, {50, 0}).first > 10.0);   // the near side follows the finger to the right
    CHECK(turned(10, 20, {0, 30}).second > 20.0);  // and down
    for (const double dx : {-5000.0, -60.0, 900.0, 12345.0}) {
        const double yaw = turned(350, 20, {dx, 0}).first;
        CHECK(yaw >= 0.0);
        CHECK(yaw < 360.0);
    }
    CHECK(turned(0, 20, {0, 1e6}).second == k_highest_pitch_deg);
    CHECK(turned(0, 20, {0, -1e6}).second == k_lowest_pitch_deg);
}

TEST_CASE("turn: a near point follows the finger") {
    Eye before = eye_along(200, 20);
    const auto [yaw, pitch] = turned(200, 20, {10, 10});
    Eye after = eye_along(yaw, pitch);
    const Vec3 near = -2.0 * before.forward;  // between the eye and the middle of the site
    before.at_m = -10.0 * before.forward;
    after.at_m = -10.0 * after.forward;
    CHECK(image(after, near).x > image(before, near).x);
    CHECK(image(after, near).y > image(before, near).y);
}
