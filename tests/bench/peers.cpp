// The same equilibrium by a general optimiser on the same energy, and by a general finite-element program. Prints JSON.
#include "tests/bench/clock.hpp"
#include "tests/bench/rigs.hpp"
#include "tests/independent/finite_element.hpp"

#include <nlopt.h>

#include <cstdio>

using namespace guywright;

namespace {

volatile double sink = 0.0;  // so that no result is computed for nobody

/// One case, for NLopt: the engine's own energy and slope.
struct Problem {
    const bench::Loaded& rig;
    const Pulls& pulls;
};

double energy_J(unsigned, const double* at, double* slope, void* data) {
    const Problem& problem = *static_cast<const Problem*>(data);
    const Local here = local_at(problem.rig.model, problem.pulls, {at[0], at[1], at[2]});
    if (slope != nullptr)
        for (int i = 0; i < 3; ++i) slope[i] = here.gradient_N[i];
    return here.energy_J;
}

Vec3 by_nlopt(nlopt_algorithm algorithm, const bench::Loaded& rig, const Case& c) {
    Problem problem{rig, c.pulls};
    nlopt_opt opt = nlopt_create(algorithm, 3);
    nlopt_set_min_objective(opt, energy_J, &problem);
    nlopt_set_xtol_abs1(opt, 1e-9);
    nlopt_set_maxeval(opt, 20000);
    nlopt_set_initial_step1(opt, 1e-3);  // metres; only methods without slopes use it
    double at[3] = {rig.rigged_m.x, rig.rigged_m.y, rig.rigged_m.z}, least_J = 0.0;
    nlopt_optimize(opt, at, &least_J);
    nlopt_destroy(opt);
    return {at[0], at[1], at[2]};
}

Vec3 by_engine(const bench::Loaded& rig, const Case& c) { return solve_equilibrium(rig.model, c.pulls, rig.rigged_m).head_m; }

void print(const char* peer, double s, double apart_m) {
    std::printf("  {\"peer\": \"%s\", \"us\": %.4f, \"apart_mm\": %.6f},\n", peer, s * 1e6, apart_m * 1e3);
}

/// Time of one case on average over all cases, and the farthest that a head is from the engine's.
template <class Solve>
void compare(const char* peer, const bench::Loaded& rig, int repeat, Solve solve) {
    double apart_m = 0.0;
    for (const Case& c : rig.cases) apart_m = std::max(apart_m, glm::length(solve(rig, c) - by_engine(rig, c)));
    const double all_s = bench::quickest_s(40, repeat, [&] {
        for (const Case& c : rig.cases) sink = solve(rig, c).z;
    });
    print(peer, all_s / static_cast<double>(rig.cases.size()), apart_m);
}

}  // namespace

int main() {
    const Plan p = bench::rig(3);
    const bench::Loaded rig(p);
    std::printf("[\n");
    compare("engine", rig, 200, by_engine);
    compare("NLopt L-BFGS, our energy and our slope", rig, 5, [](const auto& r, const Case& c) { return by_nlopt(NLOPT_LD_LBFGS, r, c); });
    compare("NLopt subplex, our energy alone", rig, 1, [](const auto& r, const Case& c) { return by_nlopt(NLOPT_LN_SBPLX, r, c); });
    const second::Rig other = second::rig_of(p, second::head_of(p), second::Motion::Holding);
    const second::Point held = finite_element::solve(other).loaded.head;
    const Vec3 ccx_m{static_cast<double>(held[0]), static_cast<double>(held[1]), static_cast<double>(held[2])};
    print("CalculiX, a process (holding)", bench::quickest_s(5, 1, [&] { (void)finite_element::solve(other); }),
          glm::length(ccx_m - by_engine(rig, rig.cases[k_holding])));
    std::printf("  null\n]\n");
}
