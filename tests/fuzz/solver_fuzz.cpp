// Any plan whose numbers lie within their ranges, mostly on the borders: no crash, no NaN in an answer, and never GO without
// one for every case. Now and then a number just outside: that is a fault and nothing is computed.
#include "engine/advice/screen.hpp"
#include "tests/fuzz/some_plan.hpp"

namespace {

using namespace guywright;
using fuzzed::require;

bool is_finite(const Outcome& o) {
    double sum = o.applied_force_angle_rad + o.head_shift_m + o.resultant_N.x + o.resultant_N.y + o.resultant_N.z;
    sum += o.equilibrium.min_stiffness_N_m + o.equilibrium.residual_N + o.equilibrium.head_m.x + o.equilibrium.head_m.z;
    for (const double v : o.equilibrium.guy_tension_N) sum += v;
    for (const double v : o.equilibrium.leg_compression_N) sum += v;
    for (const double v : o.guy_angle_rad) sum += v;
    for (const double v : o.pulley_N) sum += v;
    for (const Vec3 v : o.foot_reaction_N) sum += v.x + v.y + v.z;
    return std::isfinite(sum);
}

/// `to_end`: nothing was left to look at, or a rule is broken.
void check_answer(const Evaluation& e, bool to_end) {
    const bool whole = e.error_swept && e.not_measured.empty();
    require(e.verdict != Verdict::Go || whole, "GO only where no input is missing and the whole box was looked at");
    require(e.not_measured.empty() || e.verdict == Verdict::NotChecked, "NOT CHECKED where an input is missing");
    require(!to_end || e.verdict != Verdict::NotChecked || !e.not_measured.empty(), "NOT CHECKED only there, once it was looked at to the end");
    require(e.outcomes.size() >= 5, "every plan has its cases");
    for (const Outcome& o : e.outcomes) {
        const bool solved = o.equilibrium.status == SolveStatus::Solved;
        require(!solved || is_finite(o), "an answer is finite");
        require(!o.stable || solved, "only an answer is stable");
        require(e.verdict != Verdict::Go || o.stable, "GO only where every case is stable");
    }
    e.checks.for_each([&](const Check& c) {
        require(e.verdict != Verdict::Go || c.status != CheckStatus::Fail, "GO only where no rule is broken");
        require(c.status == CheckStatus::Fail || std::isfinite(c.value), "what is not a number passes nothing");
    });
}

/// The measured values and some points of the box of errors: mostly few, so that many plans get their turn, now and then all of
/// them. It stops where the answer is NO-GO.
void look(Confirmation& judged, std::uint8_t how_far) {
    constexpr std::uint8_t all_below = 2, most = 16;
    if (how_far >= all_below) judged.advance(how_far % most);
    else
        while (!judged.done()) judged.advance(k_box_points);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzzed::Choices choices(data, size);
    const Plan plan = fuzzed::some_plan(choices);
    bool outside = false;
    for_each_number(plan, [&](const std::string&, double v, const Range& r) { outside = outside || !r.holds(v); });
    Confirmation judged(plan);
    look(judged, fuzzed::lot(data, size));
    const Evaluation& e = judged.evaluation();
    require(!outside || !e.faults.empty(), "a number outside its range is a fault");
    if (e.faults.empty()) check_answer(e, judged.done());
    else require(e.verdict == Verdict::NotChecked && e.outcomes.empty(), "with a fault nothing is computed");
    return 0;
}
