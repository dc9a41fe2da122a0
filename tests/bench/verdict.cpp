// What the engine costs: one equilibrium, a full verdict, and how it grows. Built natively and for Node; prints JSON.
#include "tests/bench/clock.hpp"
#include "tests/bench/rigs.hpp"

#include <cstdio>

using namespace guywright;

namespace {

volatile double sink = 0.0;  // so that no result is computed for nobody

/// Of one case, on average over all cases of a rig.
double equilibrium_s() {
    const bench::Loaded rig(bench::rig(3));
    const double all_s = bench::quickest_s(40, 200, [&] {
        for (const Case& c : rig.cases) sink = solve_equilibrium(rig.model, c.pulls, rig.rigged_m).min_stiffness_N_m;
    });
    return all_s / static_cast<double>(rig.cases.size());
}

double verdict_s(const Plan& p) {
    return bench::quickest_s(40, 1, [&] { sink = static_cast<double>(evaluate(p).verdict); });
}

double points_s(std::size_t points) {
    const Plan p = bench::rig(3);
    const Evaluation e = evaluate_as_measured(p);
    return bench::quickest_s(40, 1, [&] {
        ErrorSweep sweep(p, e.checks);
        sweep.advance(points);
        sink = static_cast<double>(sweep.points());
    });
}

std::size_t points_of(const Plan& p) {
    ErrorSweep sweep(p, evaluate_as_measured(p).checks);
    while (!sweep.done()) sweep.advance(k_box_points);
    return sweep.points();
}

void print(const char* what, int n, std::size_t cases, std::size_t points, double s) {
    std::printf("  {\"what\": \"%s\", \"n\": %d, \"cases\": %zu, \"points\": %zu, \"us\": %.4f},\n", what, n, cases, points, s * 1e6);
}

void print_verdict(const char* what, int n, const Plan& p) {
    const Evaluation e = evaluate(p);
    if (e.verdict != Verdict::Go) std::fprintf(stderr, "%s %d: this rig is not GO\n", what, n);
    print(what, n, e.outcomes.size(), points_of(p), verdict_s(p));
}

}  // namespace

int main() {
    std::printf("[\n");
    print("equilibrium", 3, 1, 1, equilibrium_s());
    for (int guys = 3; guys <= static_cast<int>(k_max_guys); ++guys) print_verdict("guys", guys, bench::rig(guys));
    for (int ropes = 1; ropes <= static_cast<int>(k_max_ropes); ++ropes) print_verdict("ropes", ropes, bench::rig(4, ropes));
    for (const std::size_t points : {32, 64, 128, 256, 512}) print("points", static_cast<int>(points), 14, points, points_s(points));
    std::printf("  null\n]\n");
}
