#include "tests/support/random.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/camera.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

const std::vector<Vec3> k_site{{-2, 0, 0}, {-1, 0, 2.5}, {-5.3, 0, 0}, {-0.4, -4.2, 0}, {-0.4, 4.2, 0.3}, {0, 0, -1.6}};
constexpr ImageBox k_room{{20, 10}, {370, 240}};

Vec2 image_now(const Camera& camera, bool parallel, Vec3 at_m) {
    const double zoom = static_cast<double>(camera.zoom);
    Eye eye = parallel ? fit_parallel(eye_along(270, 0), k_site, k_room, zoom) : fit_perspective(215, 18, k_site, k_room, zoom);
    apply_moved(eye, camera, k_room);
    return image_of_seen(eye, seen_from(eye, at_m));
}

}  // namespace

TEST_CASE("pinch: what lay between the fingers stays between them, with and without perspective") {
    for (const bool parallel : {true, false})
        for (const Vec3 at_m : {k_site[1], k_site[3], Vec3{0.3, 1.0, 0.0}}) {
            Camera camera;
            for (const double factor : {1.7, 0.8, 1.3, 1.0}) {
                const Vec2 from = image_now(camera, parallel, at_m), to = from + Vec2{13.0, -7.0};
                pinch(camera, k_room, from, to, factor);
                const Vec2 now = image_now(camera, parallel, at_m);
                CHECK_WITHIN(now.x, to.x, 0.01);
                CHECK_WITHIN(now.y, to.y, 0.01);
            }
            CHECK_WITHIN(camera.zoom, 1.7 * 0.8 * 1.3, 1e-5);
            CHECK(camera.yaw_deg == Camera{}.yaw_deg);  // and nothing turns
            CHECK(camera.pitch_deg == Camera{}.pitch_deg);
        }
}

TEST_CASE("pinch: the zoom has ends, and the picture is never lost") {
    Camera camera;
    for (int i = 0; i < 60; ++i) pinch(camera, k_room, {200, 100}, {200, 100}, 1.3);
    CHECK_WITHIN(camera.zoom, k_most_zoom, 1e-6);
    for (int i = 0; i < 60; ++i) pinch(camera, k_room, {200, 100}, {200, 100}, 0.7);
    CHECK_WITHIN(camera.zoom, k_least_zoom, 1e-6);
    for (int i = 0; i < 60; ++i) pinch(camera, k_room, {0, 0}, {500, 300}, 1.0);
    const Vec2 middle = image_now(camera, true, middle_of(k_site));
    CHECK(std::abs(middle.x - 195.0) <= 0.61 * 350.0);
    CHECK(std::abs(middle.y - 125.0) <= 0.61 * 230.0);
    const Camera before = camera;
    pinch(camera, k_room, {0, 0}, {5, 5}, 0.0);
    pinch(camera, k_room, {0, 0}, {5, 5}, std::nan(""));
    CHECK(camera == before);
}

TEST_CASE("drag: turns what can turn, moves what has a fixed direction") {
    for (const View view : {View::Above, View::Side, View::Behind}) {
        Camera camera;
        const Vec2 before = image_now(camera, true, k_site[0]);
        drag(camera, view, k_room, {31, -12});
        CHECK(camera.yaw_deg == Camera{}.yaw_deg);
        CHECK_WITHIN(image_now(camera, true, k_site[0]).x - before.x, 31.0, 0.01);
        CHECK_WITHIN(image_now(camera, true, k_site[0]).y - before.y, -12.0, 0.01);
    }
    Camera camera;
    drag(camera, View::Free, k_room, {31, -12});
    CHECK(camera.yaw_deg > Camera{}.yaw_deg);
    CHECK(camera.pitch_deg < Camera{}.pitch_deg);
    CHECK(camera.moved_x == 0.0F);
    CHECK(camera.forces_yaw_deg == 0.0F);
    const float yaw_deg = camera.yaw_deg;
    drag(camera, View::Forces, k_room, {10, -20});
    CHECK(camera.yaw_deg == yaw_deg);
    CHECK(camera.forces_yaw_deg > 0.0F);
    CHECK(camera.forces_pitch_deg < 0.0F);
}

TEST_CASE("reset: as large as fits; turned back only where that is asked") {
    Camera camera;
    drag(camera, View::Free, k_room, {100, 20});
    pinch(camera, k_room, {100, 100}, {120, 90}, 2.0);
    drag(camera, View::Forces, k_room, {10, 10});
    Camera kept = camera;
    reset(kept, false);
    CHECK(kept.yaw_deg == camera.yaw_deg);
    kept.yaw_deg = Camera{}.yaw_deg;
    kept.pitch_deg = Camera{}.pitch_deg;
    CHECK(kept == Camera{});
    reset(camera, true);
    CHECK(camera == Camera{});
}
