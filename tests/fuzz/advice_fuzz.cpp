// Any plan that can be used, also one that stands nowhere: the advice on guys and the load-direction map come to an end, without a
// crash and without a NaN in what they tell.
#include "engine/advice/direction_map.hpp"
#include "engine/advice/tuning.hpp"
#include "tests/fuzz/some_plan.hpp"

namespace {

using namespace guywright;
using fuzzed::require;

void check_tuning(const Tuning& t) {
    for (const SequenceSteps* steps : {&t.sequence.up, &t.sequence.down})
        for (const SequenceStep& s : *steps) require(std::isfinite(s.hold_N), "what must be held is finite");
    for (const GuyPretension& g : t.least_pretension.guys) require(std::isfinite(g.force_N + g.least_N), "a pretension is finite");
    const bool moves = t.line_up.status == LineUpStatus::LinedUp || t.line_up.status == LineUpStatus::Stopped;
    for (const double take_up_m : t.line_up.take_up_m) require(!moves || std::isfinite(take_up_m), "a take-up is finite");
}

void check_map(const Plan& plan, const Evaluation& e) {
    constexpr std::size_t rings = 3, bearings = 8;
    DirectionMap map(plan, e, rings, bearings);
    map.advance(rings * bearings + 1);
    require(map.done(), "the map comes to an end");
    for (std::size_t ring = 0; ring <= rings; ++ring)
        for (std::size_t b = 0; b < bearings; ++b) require(!std::isnan(map.cell(ring, b).margin), "a margin is a number");
    const WorkingSector sector = map.working_sector();
    require(std::isfinite(sector.from_bearing_deg + sector.to_bearing_deg), "a sector has its ends");
    for (const MapLine& line : map.go_line()) require(std::isfinite(line.from.off_down_deg + line.to.off_down_deg), "the line is drawn");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzzed::Choices choices(data, size);
    const Plan plan = fuzzed::some_plan(choices);
    const Evaluation e = evaluate_as_measured(plan);
    if (e.outcomes.empty()) return 0;
    check_tuning(tune(plan, e));
    check_map(plan, e);
    return 0;
}
