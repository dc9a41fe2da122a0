#pragma once
#include "engine/verdict/evaluate.hpp"

#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

namespace guywright {

/// So many measurements are taken a second time: what one person can tape and sight in a few minutes. Ours, no source.
inline constexpr std::size_t k_most_second_readings = 8;

/// The measurements whose errors matter most to the verdict, in the plan's order: those that a second person takes again without
/// having seen the first ones. `e` must have been swept to the end; empty where it was not.
[[nodiscard]] inline std::vector<std::string> critical_measurements(const Evaluation& e) {
    if (!e.error_swept) return {};
    std::vector<std::size_t> order(e.eaten.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return e.eaten[a] > e.eaten[b]; });
    order.resize(std::min(order.size(), k_most_second_readings));
    std::sort(order.begin(), order.end());
    std::vector<std::string> paths;
    paths.reserve(order.size());
    for (const std::size_t i : order) paths.push_back(e.spoilers[i]);
    return paths;
}

/// One number as the second person measured it, in the unit of the plan.
struct SecondReading {
    std::string path;
    double value = 0.0;
};

/// The two beside each other.
struct ReadTwice {
    std::string path;
    double first = 0.0, second = 0.0;
    double allowed = 0.0;  ///< the tolerance with which the first was judged
    bool agrees = false;   ///< the second lies within what was judged
};

struct SecondCheck {
    std::vector<ReadTwice> readings;
    std::vector<std::string> missing;         ///< critical measurements without a second reading
    InputFaults faults;                       ///< readings that no plan can hold, or that give no rig
    Plan seconds;                             ///< the plan with the second readings in place of the first
    Evaluation with_seconds;                  ///< of `seconds`: why its verdict is what it is; nothing in it while there are faults
    Verdict of_second = Verdict::NotChecked;  ///< its verdict
    Verdict worse = Verdict::NotChecked;      ///< of the two verdicts; never GO while a reading is missing

    [[nodiscard]] bool agrees() const {
        return missing.empty() && faults.empty() && std::all_of(readings.begin(), readings.end(), [](const ReadTwice& r) { return r.agrees; });
    }
};

namespace detail {

/// Difference of two values; of bearings the short way round.
inline double apart(double a, double b, ErrorKind kind) {
    const double d = std::abs(a - b);
    return kind == ErrorKind::Bearing ? std::abs(std::remainder(d, 360.0)) : d;
}

/// Puts the readings into `seconds`, a copy of the plan.
inline void take_readings(SecondCheck& out, Plan& seconds, const std::vector<SecondReading>& readings) {
    for (const SecondReading& r : readings) {
        const NumberRef number = find_number(seconds, r.path);
        if (!number) continue;  // of a part that the plan no longer has
        const double first = number.get(), allowed = half_width(seconds.tolerances, number.range.error, first);
        // rounding of the two typed numbers must not make them disagree
        const bool agrees = apart(first, r.value, number.range.error) <= allowed * (1.0 + 1e-9) + 1e-9;
        out.readings.push_back({r.path, first, r.value, allowed, agrees});
        if (!number.set(r.value)) out.faults.push_back({r.path, number_text(r.value), range_text(number.range)});
    }
}

inline Verdict worse_of(Verdict a, Verdict b) {
    if (a == Verdict::NoGo || b == Verdict::NoGo) return Verdict::NoGo;
    return a == Verdict::Go && b == Verdict::Go ? Verdict::Go : Verdict::NotChecked;
}

}  // namespace detail

/// Sets a second person's readings beside the plan's and judges the plan with them. `e` is evaluate(plan).
[[nodiscard]] inline SecondCheck second_check(const Plan& plan, const Evaluation& e, const std::vector<SecondReading>& readings) {
    SecondCheck out;
    out.seconds = plan;
    detail::take_readings(out, out.seconds, readings);
    for (const std::string& path : critical_measurements(e)) {
        const auto is_it = [&](const ReadTwice& r) { return r.path == path; };
        if (std::none_of(out.readings.begin(), out.readings.end(), is_it)) out.missing.push_back(path);
    }
    if (out.faults.empty()) {
        out.with_seconds = evaluate(out.seconds);
        out.faults = std::move(out.with_seconds.faults);
        out.of_second = out.with_seconds.verdict;
    }
    out.worse = detail::worse_of(e.verdict, out.of_second);
    if (out.worse == Verdict::Go && (!e.error_swept || !out.missing.empty())) out.worse = Verdict::NotChecked;
    return out;
}

}  // namespace guywright
