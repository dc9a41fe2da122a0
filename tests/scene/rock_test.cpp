#include "tests/support/within.hpp"
#include "wasm/scene/rock.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

constexpr SiteSize k_size{.back_m = 6, .right_y_m = -4, .left_y_m = 4, .beyond_m = 2, .slope_m = 2.5};

Edge edge(double face_deg, std::optional<double> opening_m = {}) {
    Edge e;
    e.face_deg = face_deg;
    e.opening_m = opening_m;
    return e;
}

Eye eye_at(Vec3 at_m) {
    Eye eye;
    eye.at_m = at_m;
    return eye;
}

const RockSide& side(const Rock& rock, Side which) { return rock.sides[static_cast<std::size_t>(which)]; }

}  // namespace

TEST_CASE("rock: a load below the edge is hidden from behind and seen from in front; nothing on top is hidden") {
    const Eye behind = eye_at({-9, 1, 4}), before = eye_at({9, 1, 4});
    const auto rocks = rocks_of({}, k_size, behind);
    REQUIRE(rocks.size() == 1);
    CHECK(hidden(rocks, {0.2, 0, -1.5}, behind));
    CHECK_FALSE(hidden(rocks, {0.2, 0, -1.5}, before));
    for (const Eye& eye : {behind, before})
        for (const Vec3 p : {Vec3{-2, 0, 0}, Vec3{0, 0, 0}, Vec3{-1, 0, 2.5}, Vec3{-5.9, 3.9, 0}}) CHECK_FALSE(hidden(rocks, p, eye));
    CHECK(hidden(rocks, {-2, 0, -1}, before));  // inside
}

TEST_CASE("rock: a point on the face is hidden only where the face is turned away") {
    for (const double face_deg : {30.0, 60.0, 90.0, 115.0}) {
        const double f = radians(face_deg);
        const Vec3 on_face = 1.2 * Vec3{std::cos(f), 0, -std::sin(f)};
        const Eye before = eye_at({12, -2, 1}), behind = eye_at({-12, -2, 1.5});
        const auto rocks = rocks_of(edge(face_deg), k_size, before);
        CHECK(faces_eye(side(rocks[0], Side::Face), before));
        CHECK_FALSE(faces_eye(side(rocks[0], Side::Face), behind));
        CHECK_FALSE(hidden(rocks, on_face, before));
        CHECK(hidden(rocks, on_face, behind));
        CHECK(faces_eye(side(rocks[0], Side::Ground), before));
        CHECK_FALSE(faces_eye(side(rocks[0], Side::Bottom), before));
    }
}

TEST_CASE("rock: seen along the ground without perspective, what stands on it is not hidden by it") {
    Eye side_view = eye_along(270, 0);
    side_view.parallel = true;
    const auto rocks = rocks_of({}, k_size, side_view);
    CHECK_FALSE(hidden(rocks, {-2, 0, 0}, side_view));
    CHECK(hidden(rocks, {-2, 0, -0.1}, side_view));
    CHECK(faces_eye(side(rocks[0], Side::Right), side_view));
    CHECK_FALSE(faces_eye(side(rocks[0], Side::Left), side_view));
}

TEST_CASE("rock: every side looks outward") {
    for (const double face_deg : {20.0, 90.0, 120.0})
        for (const Rock& rock : rocks_of(edge(face_deg, 5.0), k_size, eye_at({9, 0, 4}))) {
            const auto& s = rock.section;
            const Vec2 middle = 0.25 * (s[0] + s[1] + s[2] + s[3]);
            for (const RockSide& one : rock.sides) {
                CHECK_WITHIN(glm::length(one.outward), 1.0, 1e-12);
                CHECK(glm::dot(one.outward, Vec3{middle.x, 0, middle.y} - one.corners_m[0]) < 0.0);
            }
        }
}

TEST_CASE("rock: beyond an opening the ground begins again; the farther piece is drawn first") {
    const Edge shaft = edge(90, 2.5);
    const auto from_out = rocks_of(shaft, k_size, eye_at({12, 0, 5})), from_back = rocks_of(shaft, k_size, eye_at({-12, 0, 5}));
    REQUIRE(from_out.size() == 2);
    CHECK(from_out[0].section[1].x == 0.0);
    CHECK(from_out[1].section[1].x == 2.5);
    CHECK(from_back[0].section[1].x == 2.5);
    CHECK(hidden(from_out, {0.1, 0, -1.8}, eye_at({12, 0, 3})));  // the load down the shaft, behind its far side
    CHECK_FALSE(hidden(from_out, {3.5, 0, 0}, eye_at({12, 0, 3})));
}

TEST_CASE("rock: a gentle face stops where the far side of the opening begins") {
    for (const Rock& rock : rocks_of(edge(20, 1.0), k_size, eye_at({9, 0, 4}))) CHECK(rock.section[2].x <= 1.0 + 1e-12);
}

TEST_CASE("drawable edge: numbers that cannot be drawn are replaced, the others kept") {
    CHECK(drawable(edge(60)).face_deg == 60.0);
    CHECK(drawable(edge(500)).face_deg == 120.0);
    CHECK(drawable(edge(NAN)).face_deg == 90.0);
    CHECK(drawable(edge(90, 3.0)).opening_m == 3.0);
    CHECK_FALSE(drawable(edge(90, -1.0)).opening_m.has_value());
    CHECK_FALSE(drawable(edge(90, NAN)).opening_m.has_value());
}
