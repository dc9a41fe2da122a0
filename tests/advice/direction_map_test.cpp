#include "engine/advice/direction_map.hpp"
#include "engine/advice/guy_kit.hpp"
#include "tests/support/near_sound.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

DirectionMap map_of(const Plan& p, std::size_t rings = 12, std::size_t bearings = 36) {
    const Evaluation e = evaluate_as_measured(p);
    REQUIRE(e.faults.empty());
    DirectionMap map(p, e, rings, bearings);
    while (!map.done()) map.advance(100);
    return map;
}

/// A rope tied off at the head that hangs free down a vertical face: its resultant is straight down however the head moves.
Plan straight_down() {
    Plan p = support::go_plan();
    p.edge.face_deg = 90.0;
    p.ropes[0].haul.reset();
    p.frame.legs[0].foot_m = {-0.2, 0.0, 0.0};
    for (GuyPlan& g : p.guys) g.EA_kN = 200.0;
    return p;
}

}  // namespace

TEST_CASE("direction map: straight down is what the holding case of a free hang says") {
    const Plan p = straight_down();
    const Evaluation e = evaluate_as_measured(p);
    const DirectionMap map = map_of(p);
    CHECK_WITHIN(map.load_N(), 150.0 * k_gravity, 1e-6);
    CheckTable holding;
    check_forces(holding, p, e.model, e.outcomes[k_holding], k_no_case);
    double least = HUGE_VAL;
    holding.for_each([&](const Check& c) {
        if (info(c.id).subject != Subject::Rope) least = std::min(least, margin_of(c));
    });
    CHECK_WITHIN(map.cell(0, 0).margin, std::max(least, -1.0), 1e-9);
    for (const CasePull& pull : map.cases())
        if (pull.case_index == k_holding) CHECK_WITHIN(pull.heading.off_down_deg, 0.0, 1e-9);
}

TEST_CASE("direction map: each cell is the equilibrium under a pull of that size and direction") {
    const Plan p = support::go_plan();
    const DirectionMap map = map_of(p);
    const Evaluation e = evaluate_as_measured(p);
    Model m = e.model;
    m.ropes.clear();
    int broken = 0;
    for (std::size_t ring = 0; ring <= 12; ring += 3)
        for (std::size_t b = 0; b < 36; b += 5) {
            const Heading h = map.heading(ring, b);
            Case pull;
            const Vec3 way{std::sin(radians(h.off_down_deg)) * std::cos(radians(h.bearing_deg)),
                           -std::sin(radians(h.off_down_deg)) * std::sin(radians(h.bearing_deg)), -std::cos(radians(h.off_down_deg))};
            pull.pulls.push_back({map.load_N(), false, way});
            CheckTable table;
            check_forces(table, p, m, solve_case(m, pull, e.outcomes[k_rigged].equilibrium.head_m), k_no_case);
            CHECK_WITHIN(map.cell(ring, b).margin, std::max(-1.0, least_margin(table)), 1e-12);
            const Check* governing = table.find(map.cell(ring, b).id, map.cell(ring, b).subject);
            REQUIRE(governing != nullptr);
            CHECK(std::max(-1.0, margin_of(*governing)) == map.cell(ring, b).margin);
            broken += map.cell(ring, b).margin < 0.0 ? 1 : 0;
        }
    CHECK(broken > 0);
}

TEST_CASE("direction map: a rig alike on both sides has a map alike on both sides") {
    const DirectionMap map = map_of(support::go_plan());
    for (std::size_t ring = 1; ring <= 12; ++ring)
        for (std::size_t b = 0; b < 36; ++b) CHECK_WITHIN(map.cell(ring, b).margin, map.cell(ring, 36 - b).margin, 1e-6);
}

TEST_CASE("direction map: the working sector holds every case, and the guys lie on their bearings") {
    for (const Plan& p : {support::go_plan(), support::sound_a_frame()}) {
        const DirectionMap map = map_of(p, 4, 12);
        const WorkingSector s = map.working_sector();
        REQUIRE(map.cases().size() > 8);
        const double width_deg = wrapped_deg(s.to_bearing_deg - s.from_bearing_deg);
        CHECK(width_deg < 180.0);
        for (const CasePull& c : map.cases()) {
            CHECK(c.heading.off_down_deg >= s.least_off_deg);
            CHECK(c.heading.off_down_deg <= s.most_off_deg);
            if (c.heading.off_down_deg > k_no_bearing_deg) CHECK(wrapped_deg(c.heading.bearing_deg - s.from_bearing_deg) <= width_deg + 1e-9);
        }
        const std::vector<Heading> guys = map.guys();
        REQUIRE(guys.size() == p.guys.size());
        for (std::size_t i = 0; i < guys.size(); ++i) {
            if (p.guys[i].anchor_m) continue;
            CHECK(between_bearings_deg(guys[i].bearing_deg, p.guys[i].bearing_deg) < 1.0);
            CHECK_WITHIN(guys[i].off_down_deg, 90.0 - p.guys[i].inclination_deg, 1.0);
        }
    }
}

TEST_CASE("direction map: the line of GO runs between directions kept and broken, and ends only at the rim") {
    const DirectionMap map = map_of(support::go_plan());
    const std::vector<MapLine> line = map.go_line();
    REQUIRE_FALSE(line.empty());
    const double off_step = 90.0 / 12, bearing_step = 360.0 / 36;
    int at_rim = 0;
    const auto sign_changes_at = [&](const Heading& h) {
        const double ring = h.off_down_deg / off_step, b = h.bearing_deg / bearing_step;
        const auto kept = [&](double r, double s) { return map.cell(static_cast<std::size_t>(r), static_cast<std::size_t>(s)).margin >= 0.0; };
        return kept(std::floor(ring + 1e-9), std::floor(b + 1e-9)) != kept(std::ceil(ring - 1e-9), std::ceil(b - 1e-9));
    };
    for (const MapLine& piece : line)
        for (const Heading& end : {piece.from, piece.to}) {
            CHECK(sign_changes_at(end));
            int meets = 0;
            for (const MapLine& other : line)
                for (const Heading& e : {other.from, other.to})
                    meets += std::abs(e.off_down_deg - end.off_down_deg) < 1e-9 && between_bearings_deg(e.bearing_deg, end.bearing_deg) < 1e-9 ? 1 : 0;
            if (std::abs(end.off_down_deg - 90.0) < 1e-9) ++at_rim;
            else CHECK(meets == 2);
        }
    CHECK(at_rim % 2 == 0);
}

TEST_CASE("direction map: a head that does not stand unloaded has nothing to spare anywhere") {
    Plan p = support::go_plan();
    p.guys.clear();
    const DirectionMap map = map_of(p, 4, 8);
    for (std::size_t ring = 0; ring <= 4; ++ring)
        for (std::size_t b = 0; b < 8; ++b) {
            CHECK(map.cell(ring, b).margin == k_broken_margin);
            CHECK(map.cell(ring, b).id == CheckId::Standing);
        }
}

TEST_CASE("heading: a way and back") {
    for (const Heading h : {Heading{0, 90}, Heading{90, 45}, Heading{211, 12}, Heading{300, 120}}) {
        const Heading back = heading_of(way_of(h));
        CHECK_WITHIN(back.bearing_deg, h.bearing_deg, 1e-9);
        CHECK_WITHIN(back.off_down_deg, h.off_down_deg, 1e-9);
    }
    CHECK_VEC_WITHIN(way_of({90, 90}), Vec3(0, -1, 0), 1e-12);
}
