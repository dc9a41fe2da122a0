// What all advice for one plan costs: smallest changes and the choice of anchors, and both with all else that can be asked, for NO-GO
// plans with as many anchors found as a plan may have. Built natively and for Node; prints JSON.
#include "engine/advice/counsel.hpp"
#include "engine/advice/tuning.hpp"
#include "tests/support/near_sound.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <vector>

using namespace guywright;

namespace {

constexpr std::size_t k_plans = 60;
constexpr int k_rounds = 3;  ///< the quickest counts: the rest is waiting

/// A NO-GO plan, with anchors found all round it.
std::vector<Plan> plans() {
    std::vector<Plan> out;
    for (std::uint64_t i = 5000; out.size() < k_plans; ++i) {
        Plan p = support::random_spoilt(i);
        support::Random r(i);
        for (std::size_t a = 0; a < k_max_candidate_anchors; ++a) {
            p.candidate_anchors_m.push_back(p.frame.legs[0].foot_m +
                                            r.between(2.5, 6.0) * along_bearing(radians(30.0 * static_cast<double>(a) + r.between(-10.0, 10.0))));
            p.candidate_anchor_strengths_kN.push_back(r.between(6.0, 20.0));
        }
        if (evaluate(p).verdict == Verdict::NoGo) out.push_back(std::move(p));
    }
    return out;
}

struct Cost {
    double change_s, anchors_s, rest_s;
};

template <class Work>
double seconds(Work work) {
    double best_s = HUGE_VAL;
    for (int i = 0; i < k_rounds; ++i) {
        const std::clock_t from = std::clock();  // of the processor, so that other work on the machine counts less
        work();
        best_s = std::min(best_s, static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
    }
    return best_s;
}

template <class Search>
void finish(Search&& search) {
    while (!search.done()) search.advance(1000);
}

Cost cost_of(const Plan& p) {
    return {seconds([&] { finish(SmallestChange(p)); }), seconds([&] { finish(AnchorChoice(p)); }), seconds([&] {
                const Evaluation e = evaluate(p);
                finish(DirectionMap(p, e));
                static_cast<void>(tune(p, e));
            })};
}

template <class Of>
void print(const char* what, const std::vector<Cost>& costs, Of of) {
    std::vector<double> us;
    for (const Cost& c : costs) us.push_back(of(c) * 1e6);
    std::sort(us.begin(), us.end());
    std::printf("  {\"what\": \"%s\", \"plans\": %zu, \"median_us\": %.1f, \"worst_us\": %.1f},\n", what, us.size(), us[us.size() / 2], us.back());
}

}  // namespace

int main() {
    const std::vector<Plan> all = plans();
    cost_of(all.front());  // until the engine that runs wasm has compiled it well
    std::vector<Cost> costs;
    for (const Plan& p : all) costs.push_back(cost_of(p));
    std::printf("[\n");
    print("smallest changes", costs, [](const Cost& c) { return c.change_s; });
    print("anchors", costs, [](const Cost& c) { return c.anchors_s; });
    print("all advice", costs, [](const Cost& c) { return c.change_s + c.anchors_s + c.rest_s; });
    std::printf("  null\n]\n");
}
