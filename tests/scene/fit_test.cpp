#include "tests/support/random.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/fit.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

const std::vector<Vec3> k_site{{-2, 0, 0}, {-1, 0, 2.5}, {-5.3, 0, 0}, {-0.4, -4.2, 0}, {-0.4, 4.2, 0.3}, {0, 0, -1.6}};
constexpr ImageBox k_room{{20, 10}, {370, 240}};

bool inside(const ImageBox& inner, const ImageBox& outer, double slack_px) {
    return inner.min.x >= outer.min.x - slack_px && inner.min.y >= outer.min.y - slack_px && inner.max.x <= outer.max.x + slack_px &&
           inner.max.y <= outer.max.y + slack_px;
}

}  // namespace

TEST_CASE("fit: the site is in the room from every side, and turning it does not change its distance") {
    const double distance_m = glm::length(fit_perspective(215, 18, k_site, k_room, 1.0).at_m - middle_of(k_site));
    for (int yaw = 0; yaw < 360; yaw += 15) {
        const Eye eye = fit_perspective(yaw, 18, k_site, k_room, 1.0);
        CHECK(inside(box_round(eye, k_site), k_room, 0.01));
        CHECK_WITHIN(glm::length(eye.at_m - middle_of(k_site)), distance_m, 0.01 * distance_m);
    }
    for (const double pitch : {4.0, 45.0, 86.0}) CHECK(inside(box_round(fit_perspective(30, pitch, k_site, k_room, 1.0), k_site), k_room, 0.01));
}

TEST_CASE("fit: the room is used") {
    const Vec2 room = k_room.max - k_room.min;
    double most = 0.0;
    for (int yaw = 0; yaw < 360; yaw += 15) {
        const ImageBox seen = box_round(fit_perspective(yaw, 18, k_site, k_room, 1.0), k_site);
        const Vec2 size = seen.max - seen.min;
        most = std::max({most, size.x / room.x, size.y / room.y});
    }
    CHECK_WITHIN(most, 1.0, 1e-3);  // from one side at least
    const Eye flat = fit_parallel(eye_along(270, 0), k_site, k_room, 1.0);
    const ImageBox side = box_round(flat, k_site);
    CHECK(inside(side, k_room, 1e-6));
    CHECK_WITHIN(side.max.y - side.min.y, room.y, 1e-6);  // 5.3 m by 4.1 m in 350 px by 230 px: the height decides
}

TEST_CASE("fit: zoom makes everything larger about the middle") {
    const Eye one = fit_parallel(eye_along(0, 90), k_site, k_room, 1.0), two = fit_parallel(eye_along(0, 90), k_site, k_room, 2.0);
    CHECK_WITHIN(two.scale_px, 2.0 * one.scale_px, 1e-9);
    const ImageBox a = box_round(one, k_site), b = box_round(two, k_site);
    CHECK_WITHIN(a.min.x + a.max.x, b.min.x + b.max.x, 1e-6);
    CHECK_WITHIN(a.min.y + a.max.y, b.min.y + b.max.y, 1e-6);
    CHECK_WITHIN(b.max.x - b.min.x, 2.0 * (a.max.x - a.min.x), 1e-6);
}

TEST_CASE("fit: one point alone is shown, not a division by nothing") {
    const std::vector<Vec3> one{{0, 0, 0}};
    for (const Eye& eye : {fit_parallel(eye_along(270, 0), one, k_room, 1.0), fit_perspective(30, 20, one, k_room, 1.0)}) {
        const Vec2 at = image_of_seen(eye, seen_from(eye, one[0]));
        CHECK_WITHIN(at.x, 195.0, 1e-6);
        CHECK_WITHIN(at.y, 125.0, 1e-6);
    }
}
