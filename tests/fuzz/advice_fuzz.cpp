// Any plan that can be used, also one that stands nowhere: no part of the advice crashes, tells a number that is none, or offers
// what is not GO. One part a run, and of the long searches as many steps as the run says, so that many plans get their turn.
#include "engine/advice/counsel.hpp"
#include "engine/advice/tuning.hpp"
#include "tests/fuzz/some_plan.hpp"

namespace {

using namespace guywright;
using fuzzed::require;

void check_matrices(const Evaluation& e) {
    for (const std::size_t state : {k_rigged, k_holding}) {
        const TieMatrix matrix = tie_matrix(e.model, e.outcomes[state].equilibrium);
        if (!matrix.computed) continue;
        for (std::size_t i = 0; i < matrix.guys; ++i) {
            require(std::isfinite(matrix.slack_m[i]), "a slack is finite");
            for (std::size_t j = 0; j < matrix.guys; ++j) require(std::isfinite(matrix.change_N_per_m[i][j]), "a slope is finite");
        }
    }
}

void check_line_up(const Plan& plan, const Evaluation& e) {
    const LineUp line_up = find_line_up(plan, e.model);
    const bool moves = line_up.status == LineUpStatus::LinedUp || line_up.status == LineUpStatus::Stopped;
    for (const double take_up_m : line_up.take_up_m) require(!moves || std::isfinite(take_up_m), "a take-up is finite");
    const LineUpOrder order = find_order(plan, e.model, line_up);
    for (const TakeUpStep& step : order.steps) require(std::isfinite(step.take_up_m), "a step is finite");
}

void check_sequence(const Plan& plan, const Evaluation& e) {
    const Sequence sequence = find_sequence(plan, e.model);
    for (const SequenceSteps* steps : {&sequence.up, &sequence.down})
        for (const SequenceStep& s : *steps) require(std::isfinite(s.hold_N), "what must be held is finite");
}

void check_pretension(const Plan& plan, std::size_t slices) {
    PretensionSearch search(plan);
    for (std::size_t i = 0; i < slices && !search.done(); ++i) search.advance();
    if (!search.done()) return;
    for (const GuyPretension& g : search.answer().guys) require(std::isfinite(g.force_N + g.least_N), "a pretension is finite");
}

/// Whatever is offered, at whatever moment.
void check_change(const Plan& plan, std::size_t points) {
    SmallestChange search(plan);
    search.advance(points);
    require(!search.out_of_reach() || search.done(), "out of reach is told at the end");
    if (search.advice().empty()) return;
    Plan changed = plan;
    for (const Change& c : search.advice().front().changes) detail::apply(c, changed);
    require(evaluate(changed).verdict == Verdict::Go, "advice is GO");
}

void check_anchors(const Plan& plan, std::size_t points) {
    AnchorChoice search(plan);
    search.advance(points);
    if (!search.done()) return;
    for (const std::vector<AnchorSet>* sets : {&search.best_three(), &search.best_four()})
        for (const AnchorSet& set : *sets) {
            require(!std::isnan(set.margin), "a margin is a number");
            require(set.verdict != Verdict::Go || evaluate(set.plan).verdict == Verdict::Go, "a choice called GO is GO");
        }
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

/// Mostly a few steps, now and then to the end.
std::size_t how_far(std::uint8_t lot, std::size_t all) { return lot == 0 ? all : lot % 8; }

void check_part(std::uint8_t part, std::uint8_t lot, const Plan& plan, const Evaluation& e) {
    constexpr std::size_t all_points = 1000000, all_slices = 1000, points_a_slice = 7;  // a slice costs far more than a point
    const std::uint8_t share = part % 16;
    // the two that cost as much as ten of the others
    if (share == 0 && lot < 32) return check_line_up(plan, e);
    if (share == 1 && lot < 64) return check_sequence(plan, e);
    if (share < 4) return check_pretension(plan, how_far(lot, all_slices * points_a_slice) / points_a_slice);
    if (share < 6) return check_map(plan, e);
    if (share < 8) return check_matrices(e);
    if (share < 12) return check_anchors(plan, how_far(lot, all_points));
    return check_change(plan, how_far(lot, all_points));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzzed::Choices choices(data, size);
    const std::uint8_t part = choices.byte();
    const Plan plan = fuzzed::some_plan(choices);
    const Evaluation e = evaluate_as_measured(plan);
    if (!e.outcomes.empty()) check_part(part, fuzzed::lot(data, size), plan, e);
    return 0;
}
