#pragma once
#include "engine/plan/walk.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

namespace guywright {

/// A number of a plan, found by its path: what a slider holds on to. Points into the plan; a plan that gained or lost a
/// guy, rope or foot makes it worthless.
struct NumberRef {
    double* real = nullptr;
    int* whole = nullptr;
    Range range{};

    explicit operator bool() const { return real != nullptr || whole != nullptr; }
    /// Must have been found.
    [[nodiscard]] double get() const { return real != nullptr ? *real : *whole; }
    /// Rounds where only whole numbers are possible. A value outside the range, or NaN, is not taken: false.
    bool set(double v) const {
        if (!range.holds(v)) return false;
        if (real != nullptr) *real = v;
        else *whole = static_cast<int>(std::lround(v));
        return true;
    }
};

/// A number of a plan as it stands, in the plan's unit.
struct NumberAt {
    double value = 0.0;
    Range range{};
};

namespace detail {

inline NumberRef refer(double& v, const Range& r) { return {&v, nullptr, r}; }
inline NumberRef refer(int& v, const Range& r) { return {nullptr, &v, r}; }

template <class F>
struct NumberCaller : SeesNothing {
    F& call;
    explicit NumberCaller(F& f) : call(f) {}
    template <class N>
    void number(const std::string& path, N& v, const Range& r) {
        if constexpr (Like<N, double>) {
            call(path, v, r);
        } else {
            double value = v;
            call(path, value, r);
            if constexpr (!std::is_const_v<N>) refer(v, r).set(value);
        }
    }
};

struct NumberFinder : SeesNothing {
    std::string_view wanted;
    NumberRef found;
    explicit NumberFinder(std::string_view path) : wanted(path) {}
    [[nodiscard]] bool may_hold(const std::string& path) const { return wanted.starts_with(path); }
    template <class N>
    void number(const std::string& path, N& v, const Range& r) {
        if (path == wanted) found = refer(v, r);
    }
};

}  // namespace detail

/// Calls `f(path, double& value, range)` for every number that exists in the plan, in document order. A whole number is
/// handed over as a double; what `f` leaves there is rounded back if it is in range.
template <class F>
void for_each_number(Plan& plan, F f) {
    detail::NumberCaller<F> caller(f);
    walk(plan, caller);
}
/// The same without changing anything: `f(path, double value, range)`.
template <class F>
void for_each_number(const Plan& plan, F f) {
    detail::NumberCaller<F> caller(f);
    walk(plan, caller);
}

/// The number at a path such as "guys[1].inclination_deg"; false when there is none.
[[nodiscard]] inline NumberRef find_number(Plan& plan, std::string_view path) {
    detail::NumberFinder finder(path);
    walk(plan, finder);
    return finder.found;
}
/// The same for a plan that nobody changes; none when there is none.
[[nodiscard]] inline std::optional<NumberAt> number_at(const Plan& plan, std::string_view path) {
    // Nothing is written; a walk of its own for what stays would be another 2 kB to load.
    const NumberRef found = find_number(const_cast<Plan&>(plan), path);
    return found ? std::optional(NumberAt{found.get(), found.range}) : std::nullopt;
}

}  // namespace guywright
