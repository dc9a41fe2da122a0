#include "engine/base/units.hpp"
#include "engine/cases/outcome.hpp"
#include "tests/support/models.hpp"
#include "tests/support/within.hpp"

#include <tuple>
#include <vector>

// Worked examples from textbooks and manuals. READ: the figures were read in the source. MEMORY: not seen now. COMPUTED: own
// arithmetic on the book's set-up. The books' members are rigid; ours stretch by a 3e8th under the load, so that the rigid
// answer must come out within a millionth; stiffer ones would drown in the rounding of positions. Where a book rounds, the exact
// value is asked for first and the printed one within its rounding.

using namespace guywright;

namespace {

constexpr double k_share = 1e-6;  ///< of the expected value: all that elasticity takes
constexpr double rigid_EA_N(double load_N) { return 3e8 * load_N; }

#define CHECK_SHARE(value, expected) CHECK_WITHIN(value, expected, k_share* std::abs(expected))

Model head_at(Vec3 head_m) {
    Model m = support::model_with_head(head_m);
    m.shortest_leg_m = 1.0;  // for the rigs that only hang
    return m;
}
void add_guy(Model& m, Vec3 anchor_m, double load_N) { support::add_guy_carrying(m, anchor_m, 0.0, rigid_EA_N(load_N)); }
void add_leg(Model& m, Vec3 foot_m, double load_N) { support::add_leg_carrying(m, foot_m, 0.0, rigid_EA_N(load_N)); }

/// Two guys square to the plane x-z: they keep the head in it and carry nothing along it.
void keep_in_plane(Model& m) {
    for (const double y : {-8.0, 8.0}) support::add_guy_carrying(m, m.drawn_head_m + Vec3(0, y, 0), 1.0, 1e6);
}

Equilibrium solved(const Model& m, const std::vector<Vec3>& forces_N) {
    Pulls pulls;
    for (const Vec3 f : forces_N) pulls.push_back(support::force(f));
    const Equilibrium e = solve_equilibrium(m, pulls, m.drawn_head_m);
    REQUIRE(e.status == SolveStatus::Solved);
    return e;
}

Vec3 unit(double x_deg, double y_deg, double z_deg) { return {std::cos(radians(x_deg)), std::cos(radians(y_deg)), std::cos(radians(z_deg))}; }

Model mast_with_two_guys() {
    Model m = head_at({0, 0, 6});
    add_leg(m, {0, 0, 0}, 1000.0);
    add_guy(m, {6, 0, 0}, 1000.0);
    add_guy(m, {-3, 6, 0}, 1000.0);
    return m;
}

}  // namespace

// Hibbeler, Engineering Mechanics: Statics, ch. 5, mast with two cables and a ball-and-socket foot; geometry READ, load (a)
// MEMORY, (b) and (c) COMPUTED.
TEST_CASE("published: mast with two guys, pulled sideways by 1000 N") {
    const Equilibrium e = solved(mast_with_two_guys(), {{0, -1000, 0}});
    CHECK(is_stable(e));
    CHECK_SHARE(e.guy_tension_N[0], 707.10678);
    CHECK_SHARE(e.guy_tension_N[1], 1500.0);
    CHECK_SHARE(e.leg_compression_N[0], 1500.0);
}

TEST_CASE("published: mast with two guys, pulled along one guy's plane: the other is just slack, and that is no alarm") {
    const Equilibrium e = solved(mast_with_two_guys(), {{-1000, 0, 0}});
    CHECK_SHARE(e.guy_tension_N[0], 1414.21356);
    CHECK_WITHIN(e.guy_tension_N[1], 0.0, 1e-3);
    CHECK_SHARE(e.leg_compression_N[0], 1000.0);
    CHECK(e.guy_loose_m[1] < k_slack_m);
}

TEST_CASE("published: mast with two guys, pressed straight down: the leg alone") {
    const Equilibrium e = solved(mast_with_two_guys(), {{0, 0, -1000}});
    CHECK_WITHIN(e.guy_tension_N[0], 0.0, 1e-3);
    CHECK_WITHIN(e.guy_tension_N[1], 0.0, 1e-3);
    CHECK_SHARE(e.leg_compression_N[0], 1000.0);
}

// OpenStax, University Physics vol. 1, 12.4, end-of-section problem, READ (printed 1.11e5 N); leg and resultants COMPUTED. The
// nearest thing in print to a head pulley with a back guy: both rope sides 40 kN, 80 degrees to the pole, 90 apart in plan.
TEST_CASE("published: power line turning a corner over a guyed pole") {
    const double out = 40e3 * std::sin(radians(80)), down = 40e3 * std::cos(radians(80)), half = std::sqrt(0.5);
    const Vec3 a_N{out * half, out * half, -down}, b_N{out * half, -out * half, -down};
    CHECK_SHARE(std::hypot((a_N + b_N).x, (a_N + b_N).y), 55709.139);
    CHECK_WITHIN(glm::length(a_N + b_N), 57415.0, 0.5);
    CHECK_WITHIN(degrees(angle_between(a_N, b_N)), 88.27, 0.005);
    Model m = head_at({0, 0, 15});
    add_leg(m, {0, 0, 0}, 60e3);
    add_guy(m, {-15 * std::tan(radians(30)), 0, 0}, 60e3);
    keep_in_plane(m);
    const Equilibrium e = solved(m, {a_N, b_N});
    CHECK(is_stable(e));
    CHECK_SHARE(e.guy_tension_N[0], 111418.278);
    CHECK_SHARE(e.leg_compression_N[0], 110382.914);
    CHECK_WITHIN(e.guy_tension_N[0], 1.11e5, 500.0);
}

// Baker & Haynes, Engineering Statics: Open and Interactive, 3.5, READ (printed 196.4, 192.2, 98.5: the book rounds early, so
// its second and third differ from the exact ones by up to 0.33 N).
TEST_CASE("published: a weight on three ties given by their angles") {
    const Vec3 ties[3] = {unit(35, 55, 90),
                          {-std::cos(radians(15)) * std::cos(radians(30)), std::cos(radians(75)), -std::cos(radians(15)) * std::cos(radians(60))},
                          unit(90, 70, 20)};
    Model m = head_at({0, 0, 0});
    for (const Vec3 t : ties) add_guy(m, 4.0 * glm::normalize(t), 196.2);
    const Equilibrium e = solved(m, {{0, -196.2, 0}});
    CHECK(is_stable(e));
    CHECK_SHARE(e.guy_tension_N[0], 196.365302);
    CHECK_SHARE(e.guy_tension_N[1], 192.289186);
    CHECK_SHARE(e.guy_tension_N[2], 98.828642);
    CHECK_WITHIN(e.guy_tension_N[0], 196.4, 0.05);
    CHECK_WITHIN(e.guy_tension_N[1], 192.2, 0.1);
    CHECK_WITHIN(e.guy_tension_N[2], 98.5, 0.35);
}

// Baker & Haynes, 3.4, READ (printed 14.5 and 23.6 kN): six wires of 10 kN, three each side, 76 degrees from the axis.
TEST_CASE("published: six wires on a pole and one guy") {
    Model m = head_at({0, 0, 9});
    add_leg(m, {0, 0, 0}, 15e3);
    add_guy(m, {-9 * std::tan(radians(38)), 0, 0}, 15e3);
    keep_in_plane(m);
    const Vec3 left{std::cos(radians(76)), std::sin(radians(76)), 0}, right{left.x, -left.y, 0};
    const Equilibrium e = solved(m, {10e3 * left, 10e3 * left, 10e3 * left, 10e3 * right, 10e3 * right, 10e3 * right});
    CHECK(is_stable(e));
    CHECK_SHARE(60e3 * left.x, 14515.314);
    CHECK_SHARE(e.guy_tension_N[0], 23576.778);
    CHECK_SHARE(e.leg_compression_N[0], 18578.755);
    CHECK_WITHIN(e.guy_tension_N[0], 23.6e3, 50.0);
}

// OpenStax, University Physics vol. 1, 6.1, READ (printed 108 and 132 N); g 9.80 as the book has it.
TEST_CASE("published: 15 kg on two ties, 30 and 45 degrees above the horizontal") {
    Model m = head_at({0, 0, 0});
    add_guy(m, 3.0 * Vec3(-std::cos(radians(30)), 0, std::sin(radians(30))), 147.0);
    add_guy(m, 3.0 * Vec3(std::cos(radians(45)), 0, std::sin(radians(45))), 147.0);
    const Equilibrium e = solved(m, {{0, 0, -15.0 * 9.80}});
    CHECK_WITHIN(e.guy_tension_N[0], 107.611, 0.0005);
    CHECK_WITHIN(e.guy_tension_N[1], 131.797, 0.0005);
    CHECK_WITHIN(e.guy_tension_N[0], 108.0, 0.5);
    CHECK_WITHIN(e.guy_tension_N[1], 132.0, 0.5);
}

// OpenStax, University Physics vol. 1, 5.6, READ (printed 3.93e3 N, from a rounded sine).
TEST_CASE("published: tightrope walker, 70 kg, 5 degrees both sides") {
    Model m = head_at({0, 0, 0});
    for (const double side : {-1.0, 1.0}) add_guy(m, 10.0 * Vec3(side * std::cos(radians(5)), 0, std::sin(radians(5))), 4000.0);
    const Equilibrium e = solved(m, {{0, 0, -70.0 * 9.80}});
    CHECK_WITHIN(e.guy_tension_N[0], 3935.48, 0.005);
    CHECK_WITHIN(e.guy_tension_N[0], 3930.0, 10.0);
}

// US Army FM 5-125 (1995), ch. 4, guy lines, MEMORY: T = (load + half the spar) * drift / perpendicular distance of the guy from
// the foot. It is the exact moment equation. 2400 lb, spar 800 lb, drift 20 ft, distance 28 ft: 2000 lb; shears of two such
// spars, the same equation in the plane of the pull: 2285 lb.
TEST_CASE("published: gin pole and shears, back guy by drift and distance") {
    const double ft = 0.3048, lbf = 4.4482216152605, length_ft = 60.0, drift_ft = 20.0, distance_ft = 28.0;
    const double height_ft = std::sqrt(length_ft * length_ft - drift_ft * drift_ft), guy_to_leg = std::asin(distance_ft / length_ft);
    for (const auto& [spars, exact_lb, printed_lb] : {std::tuple{1.0, 2000.0, 2000.0}, {2.0, 3200.0 * 20.0 / 28.0, 2285.0}}) {
        Model m = head_at({drift_ft * ft, 0, height_ft * ft});
        add_leg(m, {0, 0, 0}, 14e3);
        m.head_weight_N = spars * 400.0 * lbf;
        const double guy_off_plumb = std::asin(drift_ft / length_ft) + guy_to_leg;
        add_guy(m, m.drawn_head_m + 30.0 * Vec3(-std::sin(guy_off_plumb), 0, -std::cos(guy_off_plumb)), 14e3);
        keep_in_plane(m);
        const Equilibrium e = solved(m, {{0, 0, -2400.0 * lbf}});
        CHECK(is_stable(e));
        CHECK_SHARE(e.guy_tension_N[0] / lbf, exact_lb);
        CHECK_WITHIN(e.guy_tension_N[0] / lbf, printed_lb, 1.0);
    }
}

// Sling tables print 1 / sin of the angle from the horizontal as the factor on half the load (identity, COMPUTED).
TEST_CASE("published: load factors of a two-leg sling") {
    for (const auto& [deg, factor] : {std::pair{60.0, 1.1547005}, {45.0, 1.4142136}, {30.0, 2.0}}) {
        Model m = head_at({0, 0, 0});
        for (const double side : {-1.0, 1.0}) add_guy(m, 2.0 * Vec3(side * std::cos(radians(deg)), 0, std::sin(radians(deg))), 2000.0);
        CHECK_SHARE(solved(m, {{0, 0, -2000.0}}).guy_tension_N[0] / 1000.0, factor);
    }
}
