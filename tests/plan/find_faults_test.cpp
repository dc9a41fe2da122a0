#include "engine/plan/find_faults.hpp"
#include "tests/support/full_plan.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <string>
#include <vector>

using namespace guywright;

namespace {

struct Row {
    const char* path;
    const char* part_of_message;
    std::function<void(Plan&)> spoil;
    std::size_t faults = 1;
};

}  // namespace

TEST_CASE("find_faults: a sound plan has none") {
    CHECK(find_faults(support::usual_plan()).empty());
    CHECK(find_faults(support::full_plan()).empty());
}

TEST_CASE("find_faults: an empty plan cannot be used by mistake") { CHECK_FALSE(find_faults(Plan{}).empty()); }

TEST_CASE("find_faults: each rule names its key and says what is allowed") {
    const std::vector<Row> rows{
        {"edge.face_deg", "is 121; allowed: 5 to 120 deg", [](Plan& p) { p.edge.face_deg = 121; }},
        {"edge.face_deg", "is NaN; allowed: 5 to 120 deg", [](Plan& p) { p.edge.face_deg = std::nan(""); }},
        {"edge.face_deg", "is Infinity", [](Plan& p) { p.edge.face_deg = HUGE_VAL; }},
        {"edge.face_deg", "is 120.00000000000001", [](Plan& p) { p.edge.face_deg = std::nextafter(120.0, 1000.0); }},
        {"edge.opening_m", "is 0; allowed: 0.1 to 50 m", [](Plan& p) { p.edge.opening_m = 0; }},
        {"guys[1].parts", "is 0; allowed: 1 to 9", [](Plan& p) { p.guys[1].parts = 0; }},
        {"frame.foot_m[0][1]", "is 51; allowed: -50 to 50 m", [](Plan& p) { p.frame.legs[0].foot_m.y = 51; }},
        {"candidate_anchors_m[1][2]", "is -51", [](Plan& p) { p.candidate_anchors_m[1].z = -51; }},
        {"candidate_anchor_strengths_kN[1]", "is 0; allowed: 0.1 to 1000 kN", [](Plan& p) { p.candidate_anchor_strengths_kN[1] = 0; }},
        {"candidate_anchor_strengths_kN", "1 entry; allowed: 2 entries, one per candidate", [](Plan& p) { p.candidate_anchor_strengths_kN.pop_back(); }},
        {"ropes[0].haul.height_m", "is NaN", [](Plan& p) { p.ropes[0].haul->height_m = std::nan(""); }},
        {"guys", "9 entries; allowed: 0 to 8 entries",
         [](Plan& p) {
             while (p.guys.size() < 9) p.guys.push_back(support::guy("g" + std::to_string(p.guys.size()), 0, 30));
         }},
        {"ropes", "0 entries; allowed: 1 to 4 entries",
         [](Plan& p) {
             p.ropes.clear();
             p.not_measured.clear();
         }},
        {"feet", "2 entries; allowed: 1 entry", [](Plan& p) { p.feet.resize(2); }},
        {"feet", "0 entries", [](Plan& p) { p.feet.clear(); }},
        {"frame.foot_m", "1 entry; allowed: 2 entries", [](Plan& p) { p.frame.kind = FrameKind::AFrame; }, 2},
        {"frame.foot_m", "1 entry; allowed: 3 entries", [](Plan& p) { p.frame.kind = FrameKind::Tripod; }, 2},
        {"frame.foot_m", "0 entries",
         [](Plan& p) {
             p.frame.legs.clear();
             p.not_measured.clear();
         }},
        {"feet[0].ties", "7 entries; allowed: 0 to 6", [](Plan& p) { p.feet[0].ties.resize(7); }},
        {"guys[1].name", "is empty", [](Plan& p) { p.guys[1].name = ""; }},
        {"guys[1].name", "is blank", [](Plan& p) { p.guys[1].name = "  "; }},
        {"guys[2].name", "used twice", [](Plan& p) { p.guys[2].name = p.guys[0].name; }},
        {"ropes[1].name", "used twice", [](Plan& p) { p.ropes[1].name = "main"; }},
        {"guys[0].name", "41 characters long; allowed: at most 40", [](Plan& p) { p.guys[0].name = std::string(41, 'x'); }},
        {"guys[0].name", "control character", [](Plan& p) { p.guys[0].name = "a\nb"; }},
        {"title", "control character", [](Plan& p) { p.title = "a\x1B[2J"; }},
        {"note", "control character", [](Plan& p) { p.note = "a\tb"; }},
        {"note", "not UTF-8", [](Plan& p) { p.note = "\xFF"; }},
        {"ropes[1].share", "add up to 0.9", [](Plan& p) { p.ropes[0].share = 0.45; }},
        {"limits.guy_angle_good_deg", "is 29; allowed: at least 30", [](Plan& p) { p.limits.guy_angle_good_deg = 29; }},
        {"limits.bearing_gap_good_deg", "is 181; allowed: at most 180", [](Plan& p) { p.limits.bearing_gap_good_deg = 181; }},
        {"limits.head_shift_good_percent", "is 16; allowed: at most 15", [](Plan& p) { p.limits.head_shift_good_percent = 16; }},
        {"not_measured[0]", "\"guys[1].name\"", [](Plan& p) { p.not_measured[0] = "guys[1].name"; }},
        {"not_measured[0]", "\"guys[0].bearing_deg\"", [](Plan& p) { p.not_measured[0] = "guys[0].bearing_deg"; }},
        {"not_measured[1]", "listed twice", [](Plan& p) { p.not_measured[1] = p.not_measured[0]; }},
    };
    for (const Row& row : rows) {
        Plan p = support::full_plan();
        row.spoil(p);
        const InputFaults faults = find_faults(p);
        INFO(row.path, " ", row.part_of_message);
        REQUIRE(faults.size() == row.faults);
        CHECK(faults[0].path == row.path);
        CHECK_MESSAGE(to_string(faults[0]).find(row.part_of_message) != std::string::npos, to_string(faults[0]));
    }
}

TEST_CASE("find_faults: every number is held to both ends of its range, and to being a number") {
    const Plan sound = support::full_plan();
    std::vector<std::string> paths;
    for_each_number(sound, [&](const std::string& path, double, const Range&) { paths.push_back(path); });
    REQUIRE(paths.size() > 80);
    const auto names_it = [&](const std::string& path, auto spoilt_value) {
        Plan p = sound;
        const NumberRef number = find_number(p, path);
        REQUIRE(number);
        if (number.whole != nullptr) return;
        *number.real = spoilt_value(number.range);
        const InputFaults faults = find_faults(p);
        CAPTURE(path);
        REQUIRE_FALSE(faults.empty());
        CHECK(faults[0].path == path);
    };
    for (const std::string& path : paths) {
        names_it(path, [](const Range& r) { return std::nextafter(r.max, HUGE_VAL); });
        names_it(path, [](const Range& r) { return std::nextafter(r.min, -HUGE_VAL); });
        names_it(path, [](const Range&) { return std::nan(""); });
    }
}

TEST_CASE("find_faults: several faults at once, one per key") {
    Plan p = support::full_plan();
    p.edge.face_deg = 0;
    p.limits.guy_angle_good_deg = -5;  // out of range, and below the minimum
    p.guys[2].name = p.guys[0].name;
    const InputFaults faults = find_faults(p);
    REQUIRE(faults.size() == 3);
    CHECK(faults[0].path == "edge.face_deg");
    CHECK(faults[1].path == "limits.guy_angle_good_deg");
    CHECK(faults[2].path == "guys[2].name");
}

TEST_CASE("find_faults: three ropes at a third each are enough, one rope with half the load is not") {
    Plan p = support::usual_plan();
    p.ropes.resize(3, p.ropes[0]);
    for (std::size_t i = 0; i < 3; ++i) {
        p.ropes[i].name = "rope " + std::to_string(i);
        p.ropes[i].share = 0.33;
    }
    CHECK(find_faults(p).empty());
    p.ropes.resize(1);
    p.ropes[0].share = 0.5;
    REQUIRE(find_faults(p).size() == 1);
    CHECK(find_faults(p)[0].path == "ropes[0].share");
}

TEST_CASE("number_text: the fewest digits that give the number back") {
    CHECK(number_text(95) == "95");
    CHECK(number_text(2.7) == "2.7");
    CHECK(number_text(-0.1) == "-0.1");
    CHECK(number_text(0.1 + 0.2) == "0.30000000000000004");
    CHECK(number_text(1e6) == "1000000");
}
