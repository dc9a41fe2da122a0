#include "engine/plan/numbers.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/within.hpp"
#include "wasm/app/inputs.hpp"

using namespace guywright;
using namespace guywright::app;
using scene::lights;
using Part = scene::Highlight::Part;

namespace {

/// A plan of each kind in which every slider of the app has its number.
std::vector<Plan> plans() {
    Plan one = support::full_plan();
    one.frame.legs[0].pole_diameter_mm = 120.0;
    one.ropes[0].strength_kN = 30.0;
    Plan two = one;
    two.frame.kind = FrameKind::AFrame;
    two.frame.legs.resize(2);
    two.frame.hobbles = {{0, 1, 9.8}};
    two.feet.resize(2);
    two.feet[1].ties = {{90.0, 9.8}, {270.0, 9.8}};
    Plan three = two;
    three.frame.kind = FrameKind::Tripod;
    three.frame.legs.resize(3);
    three.frame.hobbles = {{0, 1, 9.8}, {1, 2, 9.8}, {2, 0, 9.8}};
    three.feet.resize(3);
    return {one, two, three};
}

std::size_t digit_after(std::string_view path, std::string_view what) {
    const std::size_t at = path.find(what);
    return at == std::string_view::npos ? 0 : static_cast<std::size_t>(path[at + what.size()] - '0');
}

/// What a person expects to see lit up for a path.
bool is_lit(const scene::Highlight& h, std::string_view path) {
    const auto has = [path](std::string_view word) { return path.find(word) != std::string_view::npos; };
    if (path.starts_with("edge.")) return lights(h, Part::Edge, 0);
    if (path.starts_with("guys[")) return lights(h, Part::Guy, digit_after(path, "guys["));
    if (has(".haul.")) return lights(h, Part::Haul, digit_after(path, "ropes["));
    if (has("pulley") || has("connector")) return lights(h, Part::Head, 0) || lights(h, Part::Head, digit_after(path, "ropes["));
    if (path.starts_with("ropes[")) return lights(h, Part::Rope, digit_after(path, "ropes["));
    if (has(".ties[")) return lights(h, Part::FootTie, digit_after(path, "feet["), digit_after(path, "ties["));
    if (path.starts_with("feet[")) return lights(h, Part::Foot, digit_after(path, "feet["));
    if (has("hobbles[")) return lights(h, Part::Hobble, digit_after(path, "hobbles["));
    if (has("foot_m[")) return lights(h, Part::Foot, digit_after(path, "foot_m["));
    if (has("lean")) return lights(h, Part::Leg, 0) && lights(h, Part::Leg, 1) && lights(h, Part::Leg, 2);
    if (path.starts_with("frame.")) return lights(h, Part::Leg, digit_after(path, "["));
    if (path.starts_with("actions.")) return lights(h, Part::Rope, 0) && lights(h, Part::Rope, 1);
    if (has("soft")) return lights(h, Part::Guy, 0) && lights(h, Part::Guy, 2) && lights(h, Part::Rope, 0);
    if (has("metal")) return lights(h, Part::Leg, 0) && lights(h, Part::Head, 0);
    if (has("anchor") || path == "tolerances.bearing_deg") return lights(h, Part::Anchors, 0);
    return false;
}

}  // namespace

TEST_CASE("highlight: every slider of every structure lights up what it is about, and nothing of its neighbour") {
    std::size_t sliders = 0;
    for (Plan& plan : plans())
        for_each_number(plan, [&](const std::string& path, double&, const Range&) {
            if (find_input(path) == nullptr) return;
            if (path.starts_with("candidate_anchor")) return;  // these have a plan view of their own
            ++sliders;
            INFO(path);
            const scene::Highlight h = highlight_of(path);
            CHECK(is_lit(h, path));
            if (path.starts_with("guys[0]")) CHECK_FALSE(lights(h, Part::Guy, 1));
            if (path.starts_with("feet[1].ties[0]")) CHECK_FALSE(lights(h, Part::FootTie, 1, 1));
            if (path.starts_with("frame.hobbles[0]")) CHECK_FALSE(lights(h, Part::Hobble, 1));
            if (path.starts_with("frame.leg_length_m[0]")) CHECK_FALSE(lights(h, Part::Leg, 1));
        });
    CHECK(sliders > 150);
    CHECK(highlight_of("nothing").part == Part::None);
    CHECK(highlight_of("").part == Part::None);
    for (int part = 0; part <= static_cast<int>(Part::Anchors); ++part) CHECK_FALSE(lights({}, static_cast<Part>(part), 0));
}
