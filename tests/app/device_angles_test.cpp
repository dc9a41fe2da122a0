#include "wasm/app/device_angles.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace guywright;
using namespace guywright::app;

namespace {

Held held(double alpha_deg, double beta_deg, double gamma_deg) {
    Held h;
    h.alpha_deg = alpha_deg;
    h.beta_deg = beta_deg;
    h.gamma_deg = gamma_deg;
    h.absolute = true;
    return h;
}

void check_near(const Vec3& a, const Vec3& b) { CHECK(glm::length(a - b) < 1e-12); }

}  // namespace

TEST_CASE("up_in_device: flat, on its lower edge, on its left side, on its face") {
    check_near(up_in_device(held(0, 0, 0)), {0, 0, 1});
    check_near(up_in_device(held(0, 90, 0)), {0, 1, 0});
    check_near(up_in_device(held(0, 0, -90)), {1, 0, 0});
    check_near(up_in_device(held(0, 180, 0)), {0, 0, -1});
}

TEST_CASE("in_world: a turn keeps lengths and angles, and its third row is what gravity tells") {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> angle(-180.0, 180.0);
    for (int i = 0; i < 200; ++i) {
        const Held h = held(angle(random), angle(random), angle(random) / 2.0);
        const Vec3 x = in_world(h, {1, 0, 0}), y = in_world(h, {0, 1, 0}), z = in_world(h, {0, 0, 1});
        check_near(glm::cross(x, y), z);
        CHECK(std::abs(glm::length(x) - 1.0) < 1e-12);
        check_near({x.z, y.z, z.z}, up_in_device(h));
    }
}

TEST_CASE("long_edge and picture_up: a device made tall and one made wide, held both ways") {
    Held tall = held(0, 0, 0);
    check_near(long_edge(tall), {0, 1, 0});
    tall.screen_turn_deg = 90;
    tall.taller_than_wide = false;
    check_near(long_edge(tall), {0, 1, 0});
    Held wide = held(0, 0, 0);
    wide.taller_than_wide = false;
    check_near(long_edge(wide), {1, 0, 0});
    wide.screen_turn_deg = 270;
    wide.taller_than_wide = true;
    check_near(long_edge(wide), {1, 0, 0});
    for (const auto& [turn, up] : {std::pair{0, Vec3{0, 1, 0}}, {90, Vec3{1, 0, 0}}, {180, Vec3{0, -1, 0}}, {270, Vec3{-1, 0, 0}}}) {
        Held h = held(0, 0, 0);
        h.screen_turn_deg = turn;
        check_near(picture_up(h), up);
    }
}

TEST_CASE("guy_inclination_deg: every degree, either end up, screen to any side, exact at level and upright") {
    const Vec3 edge{0, 1, 0};
    for (int deg = 0; deg <= 90; ++deg)
        for (const double gamma : {-80.0, -20.0, 0.0, 35.0}) {
            CHECK(std::abs(guy_inclination_deg(up_in_device(held(0, deg, gamma)), edge) - deg) < 1e-9);
            CHECK(std::abs(guy_inclination_deg(up_in_device(held(0, -deg, gamma)), edge) - deg) < 1e-9);
            CHECK(std::abs(guy_inclination_deg(up_in_device(held(0, 180 - deg, gamma)), edge) - deg) < 1e-9);
        }
}

TEST_CASE("leg_lean_deg: away from the eye is plus, toward it minus, and either end of the device may be up") {
    const Vec3 edge{0, 1, 0};
    CHECK(leg_lean_deg(up_in_device(held(0, 70, 0)), edge) == doctest::Approx(20.0));
    CHECK(leg_lean_deg(up_in_device(held(0, 110, 0)), edge) == doctest::Approx(-20.0));
    CHECK(leg_lean_deg(up_in_device(held(0, -70, 0)), edge) == doctest::Approx(20.0));
    CHECK(std::abs(leg_lean_deg(up_in_device(held(0, 90, 0)), edge)) < 1e-9);
}

TEST_CASE("plane_lean_deg: the turn of the device in the plane does not matter") {
    for (const double turn_deg : {0.0, 30.0, 90.0, 200.0}) {
        const double t = radians(turn_deg), lean = radians(15.0);
        // Upright, leaning away by 15 degrees, turned in its plane: up as the device sees it.
        const Vec3 up{std::cos(lean) * std::sin(t), std::cos(lean) * std::cos(t), std::sin(lean)};
        CHECK(plane_lean_deg(up) == doctest::Approx(15.0));
    }
}

TEST_CASE("faces_aside: a screen that looks along the edge does not tell the side of a lean") {
    const Vec3 edge{0, 1, 0};
    CHECK_FALSE(faces_aside(glm::normalize(Vec3{0.0, 1.0, 0.3}), edge));
    CHECK(faces_aside(glm::normalize(Vec3{0.3, 1.0, 0.0}), edge));
    CHECK(faces_aside(glm::normalize(Vec3{0.3, 1.0, -0.2}), edge));
    CHECK_FALSE(faces_aside(glm::normalize(Vec3{0.03, 1.0, 0.0}), edge));  // upright within the reading's error
}

TEST_CASE("heading_deg: north, east, south, west; tilted; held past upright; the picture turned") {
    for (const double heading : {0.0, 90.0, 180.0, 270.0, 41.0}) {
        for (const double beta : {0.0, 35.0, -35.0}) CHECK(std::abs(turn_deg(heading_deg(held(360.0 - heading, beta, 0)), heading)) < 1e-9);
        Held turned = held(360.0 - heading, 0, 0);
        turned.screen_turn_deg = 90;
        CHECK(std::abs(turn_deg(heading_deg(turned), heading + 90.0)) < 1e-9);
    }
    // Alpha and gamma jump where beta passes 90; the direction does not.
    const double before = heading_deg(held(20.0, 89.9, 0.0)), after = heading_deg(held(200.0, 89.9, 180.0 - 1e-9));
    CHECK(before == doctest::Approx(340.0));
    CHECK(std::abs(turn_deg(after, 160.0)) < 1e-6);
}

TEST_CASE("heading_deg: a browser's own heading counts before alpha and turns with the picture") {
    Held h = held(123.0, 0, 0);
    h.compass_deg = 350.0;
    CHECK(heading_deg(h) == doctest::Approx(350.0));
    h.screen_turn_deg = 90;
    CHECK(heading_deg(h) == doctest::Approx(80.0));
}

TEST_CASE("tells_heading: an alpha against anything is none, and neither is a missing one") {
    Held h = held(10, 20, 30);
    CHECK(tells_heading(h));
    h.absolute = false;
    CHECK_FALSE(tells_heading(h));
    h.absolute = true;
    h.alpha_deg = k_not_told;
    CHECK_FALSE(tells_heading(h));
    CHECK(tells_tilt(h));
}

TEST_CASE("turn_deg and around_deg: the short way, and never 360") {
    CHECK(turn_deg(350.0, 10.0) == doctest::Approx(20.0));
    CHECK(turn_deg(10.0, 350.0) == doctest::Approx(-20.0));
    CHECK(around_deg(-1e-30) < 360.0 + 1e-12);
    CHECK(around_deg(720.0) == 0.0);
}
