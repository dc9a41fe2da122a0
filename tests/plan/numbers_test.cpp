#include "engine/plan/numbers.hpp"
#include "tests/support/full_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

using namespace guywright;

namespace {

std::vector<std::string> paths_of(const Plan& p) {
    std::vector<std::string> paths;
    for_each_number(p, [&](const std::string& path, double, const Range&) { paths.push_back(path); });
    return paths;
}

bool has(const std::vector<std::string>& paths, const char* path) { return std::find(paths.begin(), paths.end(), path) != paths.end(); }

}  // namespace

TEST_CASE("for_each_number: every number once, in the order of the document") {
    const std::vector<std::string> paths = paths_of(support::full_plan());
    CHECK(std::set<std::string>(paths.begin(), paths.end()).size() == paths.size());
    const auto at = [&](const char* path) { return std::find(paths.begin(), paths.end(), path) - paths.begin(); };
    const char* in_order[]{"edge.face_deg",         "edge.opening_m",     "frame.foot_m[0][0]",          "frame.foot_m[0][2]",
                           "frame.leg_length_m[0]", "ropes[0].load_kg",   "ropes[0].haul.height_m",      "ropes[1].edge_y_m",
                           "guys[0].anchor_m[1]",   "guys[1].parts",      "feet[0].ties[1].bearing_deg", "actions.dynamic_factor",
                           "tolerances.distance_m", "limits.factor_soft", "candidate_anchors_m[1][2]"};
    for (std::size_t i = 0; i < std::size(in_order); ++i) {
        CAPTURE(in_order[i]);
        REQUIRE(has(paths, in_order[i]));
        if (i > 0) CHECK(at(in_order[i - 1]) < at(in_order[i]));
    }
}

TEST_CASE("for_each_number: what is null, left out or replaced does not exist") {
    const std::vector<std::string> full = paths_of(support::full_plan());
    CHECK_FALSE(has(full, "guys[0].bearing_deg"));        // placed by its anchor point
    CHECK_FALSE(has(full, "ropes[1].haul.bearing_deg"));  // tied off
    const std::vector<std::string> plain = paths_of(support::steep_plan());
    CHECK_FALSE(has(plain, "edge.opening_m"));
    CHECK_FALSE(has(plain, "edge.compass_out_deg"));
    CHECK(has(plain, "guys[0].bearing_deg"));
}

TEST_CASE("for_each_number: changes stay, whole numbers are rounded, what is out of range is not taken") {
    Plan p = support::steep_plan();
    for_each_number(p, [](const std::string& path, double& v, const Range&) {
        if (path == "guys[0].parts") v = 2.6;
        if (path == "guys[1].parts") v = 1e9;
        if (path == "edge.face_deg") v = 64.0;
    });
    CHECK(p.guys[0].parts == 3);
    CHECK(p.guys[1].parts == 3);  // as it was
    CHECK(p.edge.face_deg == 64.0);
}

TEST_CASE("find_number: a handle on the plan itself, with its range") {
    Plan p = support::full_plan();
    const NumberRef height = find_number(p, "guys[0].anchor_m[2]");
    REQUIRE(height);
    CHECK(height.set(1.25));
    CHECK(p.guys[0].anchor_m->z == 1.25);
    CHECK(height.range.max == range::coordinate_m.max);

    const NumberRef parts = find_number(p, "guys[2].parts");
    REQUIRE(parts);
    CHECK(parts.get() == 3.0);
    CHECK(parts.set(4.4));
    CHECK(p.guys[2].parts == 4);
}

TEST_CASE("find_number: refuses what is out of range, and NaN") {
    Plan p = support::steep_plan();
    const NumberRef face = find_number(p, "edge.face_deg");
    REQUIRE(face);
    CHECK_FALSE(face.set(121.0));
    CHECK_FALSE(face.set(std::nan("")));
    CHECK(p.edge.face_deg == 90.0);
}

TEST_CASE("find_number: no number at a path that is none") {
    Plan p = support::steep_plan();
    for (const char* path : {"", "guys", "guys[3].parts", "guys[0].name", "edge.face", "edge.face_deg.x", "frame.foot_m[0]", "not_measured[0]"}) {
        CAPTURE(path);
        CHECK_FALSE(find_number(p, path));
        CHECK_FALSE(number_at(p, path));
    }
}

TEST_CASE("find_number, number_at: every number that a walk meets, with the same value and range") {
    Plan p = support::full_plan();
    std::size_t met = 0;
    for_each_number(std::as_const(p), [&](const std::string& path, double value, const Range& range) {
        CAPTURE(path);
        const auto at = number_at(p, path);
        REQUIRE(at);
        CHECK(at->value == value);
        CHECK(at->range.min == range.min);
        CHECK(at->range.max == range.max);
        REQUIRE(find_number(p, path));
        CHECK(find_number(p, path).get() == value);
        ++met;
    });
    CHECK(met > 50);
}
