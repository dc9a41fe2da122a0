#include "engine/model/rope_path.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

Model site(Vec3 head_m, double face_deg) {
    Model m;
    m.drawn_head_m = head_m;
    m.face_rad = std::min(radians(face_deg), k_pi / 2.0);
    return m;
}

/// A rope that crosses the edge where it lies by itself.
Rope resting(const Model& m, double swing_deg = 0.0, double outward_deg = 0.0) {
    Rope r;
    r.swing_rad = radians(swing_deg);
    r.outward_rad = radians(outward_deg);
    r.edge_y_m = m.drawn_head_m.y - std::hypot(m.drawn_head_m.x, m.drawn_head_m.z) * std::tan(r.swing_rad);
    return r;
}

RopePath path_of(Vec3 head_m, double face_deg, double swing_deg = 0.0, double outward_deg = 0.0) {
    const Model m = site(head_m, face_deg);
    return rope_path(m, resting(m), radians(swing_deg), radians(outward_deg));
}

/// The way the rope leaves the head.
Vec3 leaves_along(const RopePath& p, Vec3 head_m) { return p.clear_of_edge ? p.below_edge : glm::normalize(p.edge_point_m - head_m); }

constexpr Vec3 k_head_m{-1.0, 0.0, 2.5};
const double k_to_edge_deg = degrees(std::atan2(2.5, 1.0));  // 68.1986: the line from that head to the edge falls by it

}  // namespace

TEST_CASE("rope over a vertical edge: touches, and turns by what the line to the edge lacks of vertical") {
    const RopePath p = path_of(k_head_m, 90);
    CHECK_FALSE(p.clear_of_edge);
    CHECK_WITHIN(p.clearance_m, -1.0, 1e-12);
    CHECK_VEC_WITHIN(p.edge_point_m, Vec3(0, 0, 0), 1e-15);
    CHECK_VEC_WITHIN(p.below_edge, Vec3(0, 0, -1), 1e-15);
    CHECK_WITHIN(degrees(p.wrap_rad), 90.0 - k_to_edge_deg, 1e-12);
    CHECK_WITHIN(degrees(p.wrap_rad), 21.801409, 1e-6);
}

TEST_CASE("rope over a slope: clear on a flat one, touching on a steep one") {
    CHECK(path_of(k_head_m, 60).clear_of_edge);
    CHECK(path_of(k_head_m, 60).wrap_rad == 0.0);
    CHECK_WITHIN(path_of(k_head_m, 60).clearance_m, 2.5 * 0.5 - std::sqrt(0.75), 1e-12);
    const RopePath steep = path_of(k_head_m, 75);
    CHECK_FALSE(steep.clear_of_edge);
    CHECK_WITHIN(degrees(steep.wrap_rad), 75.0 - k_to_edge_deg, 1e-12);
}

TEST_CASE("an outward pull lifts the rope off the edge") {
    CHECK_WITHIN(degrees(path_of(k_head_m, 90, 0, 5).wrap_rad), 85.0 - k_to_edge_deg, 1e-12);
    CHECK_FALSE(path_of(k_head_m, 90, 0, 21).clear_of_edge);
    const RopePath out = path_of(k_head_m, 90, 0, 30);
    CHECK(out.clear_of_edge);
    CHECK_VEC_WITHIN(out.below_edge, Vec3(0.5, 0, -std::sqrt(0.75)), 1e-14);
}

TEST_CASE("an outward pull never turns the load side above the horizontal") { CHECK_VEC_WITHIN(path_of(k_head_m, 20, 0, 45).below_edge, Vec3(1, 0, 0), 1e-15); }

TEST_CASE("overhang: below the lip the rope hangs plumb, as over a vertical face") {
    const RopePath a = path_of(k_head_m, 118), b = path_of(k_head_m, 90);
    CHECK(a.below_edge == b.below_edge);
    CHECK(a.wrap_rad == b.wrap_rad);
}

TEST_CASE("a head out over the drop hangs its rope clear") {
    const RopePath p = path_of({0.2, 0, 2.0}, 90);
    CHECK(p.clear_of_edge);
    CHECK_WITHIN(p.clearance_m, 0.2, 1e-12);
}

TEST_CASE("swing: + is to the right, which is -y, and the pull is shorter along") {
    const RopePath p = path_of({0.2, 0, 2.0}, 90, 20);
    CHECK_VEC_WITHIN(p.below_edge, Vec3(0, -std::sin(radians(20)), -std::cos(radians(20))), 1e-15);
    CHECK_WITHIN(path_of({0.2, 0, 2.0}, 90, -20).below_edge.y, std::sin(radians(20)), 1e-15);
    CHECK_WITHIN(glm::length(path_of(k_head_m, 47, 33, 7).below_edge), 1.0, 1e-15);
}

TEST_CASE("swing over the edge: the same slope along the edge on both sides, wrap by hand") {
    const double s = radians(20), turn = radians(90.0 - k_to_edge_deg);
    const RopePath p = path_of(k_head_m, 90, 20);
    REQUIRE_FALSE(p.clear_of_edge);
    CHECK_WITHIN(leaves_along(p, k_head_m).y, p.below_edge.y, 1e-14);
    CHECK_WITHIN(p.edge_point_m.y, -std::hypot(1.0, 2.5) * std::tan(s), 1e-14);
    CHECK(p.edge_point_m.x == 0.0);
    CHECK(p.edge_point_m.z == 0.0);
    CHECK_WITHIN(p.wrap_rad, std::acos(std::cos(s) * std::cos(s) * std::cos(turn) + std::sin(s) * std::sin(s)), 1e-12);
}

TEST_CASE("just clear and just touching pull the head alike, at any swing") {
    for (const double swing_deg : {-40.0, -10.0, 0.0, 10.0, 40.0}) {
        const RopePath touching = path_of(k_head_m, k_to_edge_deg + 1e-6, swing_deg);
        const RopePath clear = path_of(k_head_m, k_to_edge_deg - 1e-6, swing_deg);
        REQUIRE_FALSE(touching.clear_of_edge);
        REQUIRE(clear.clear_of_edge);
        CHECK_VEC_WITHIN(leaves_along(touching, k_head_m), leaves_along(clear, k_head_m), 1e-7);
        CHECK(touching.wrap_rad < 1e-7);
    }
}

TEST_CASE("the rope's own swing and outward pull add to the case's") {
    const Model m = site({0.2, 0, 2.0}, 90);
    const RopePath p = rope_path(m, resting(m, 5, 3), radians(10), radians(2));
    const RopePath q = rope_path(m, resting(m), radians(15), radians(5));
    CHECK_VEC_WITHIN(p.below_edge, q.below_edge, 1e-15);
}

TEST_CASE("an entered crossing is where the rope lies at its own swing; a further swing moves it along the edge") {
    const Model m = site(k_head_m, 90);
    Rope r = resting(m, 5);
    r.edge_y_m = 0.4;
    CHECK_WITHIN(rope_path(m, r, 0, 0).edge_point_m.y, 0.4, 1e-15);
    const double reach_m = std::hypot(1.0, 2.5);
    CHECK_WITHIN(rope_path(m, r, radians(10), 0).edge_point_m.y, 0.4 - reach_m * (std::tan(radians(15)) - std::tan(radians(5))), 1e-14);
}

TEST_CASE("a mirrored rope takes the mirrored path") {
    Model m = site({-1.0, 0.3, 2.5}, 85), n = site({-1.0, -0.3, 2.5}, 85);
    Rope r = resting(m, 12, 2), q = resting(n, -12, 2);
    const RopePath a = rope_path(m, r, radians(4), 0), b = rope_path(n, q, radians(-4), 0);
    CHECK_WITHIN(a.edge_point_m.y, -b.edge_point_m.y, 1e-14);
    CHECK_WITHIN(a.below_edge.y, -b.below_edge.y, 1e-15);
    CHECK_WITHIN(a.wrap_rad, b.wrap_rad, 1e-14);
}

TEST_CASE("a head on the edge itself leaves no direction to the contact: it counts as clear, without wrap") {
    const RopePath p = path_of({0, 0, 0}, 90);
    CHECK(p.clear_of_edge);
    CHECK(p.wrap_rad == 0.0);
}
