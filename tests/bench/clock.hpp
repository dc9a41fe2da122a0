#pragma once
#include <algorithm>
#include <chrono>

namespace bench {

/// Seconds that `work` takes: the quickest of `rounds`, each of `repeat` runs. On a machine with other work the quickest is
/// what the code costs; the rest is waiting.
template <class Work>
double quickest_s(int rounds, int repeat, Work work) {
    using Clock = std::chrono::steady_clock;
    double best_s = 1e9;
    for (int round = 0; round < rounds; ++round) {
        const auto from = Clock::now();
        for (int i = 0; i < repeat; ++i) work();
        best_s = std::min(best_s, std::chrono::duration<double>(Clock::now() - from).count() / repeat);
    }
    return best_s;
}

}  // namespace bench
