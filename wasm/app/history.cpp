#include "wasm/app/history.hpp"

#include <algorithm>
#include <utility>

#include "engine/codec/plan_codec.hpp"

namespace guywright::app {
namespace {

/// About half a megabyte of text for one plan, in memory and in the browser's storage.
constexpr std::size_t k_most_steps = 200;

Travelled travel(std::vector<std::string>& from, std::vector<std::string>& to, Plan& plan) {
    if (from.empty()) return Travelled::NoSuchStep;
    PlanRead read = read_plan(from.back());
    if (!read.ok()) return Travelled::Unreadable;
    to.push_back(canonical_plan_text(plan));
    from.pop_back();
    plan = std::move(read.plan);
    return Travelled::Done;
}

}  // namespace

void take_in_step(History& history, bool back, std::string text) {
    std::vector<std::string>& steps = back ? history.past : history.future;
    steps.insert(steps.begin(), std::move(text));
    history.number = std::max(history.number, history.past.size());
}

void remember(History& history, const Plan& before) {
    history.past.push_back(canonical_plan_text(before));
    history.future.clear();
    ++history.number;
    if (history.past.size() > k_most_steps) history.past.erase(history.past.begin());
}

Travelled go_back(History& history, Plan& plan) {
    const Travelled travelled = travel(history.past, history.future, plan);
    if (travelled == Travelled::Done) --history.number;
    return travelled;
}

Travelled go_on(History& history, Plan& plan) {
    const Travelled travelled = travel(history.future, history.past, plan);
    if (travelled == Travelled::Done) ++history.number;
    return travelled;
}

}  // namespace guywright::app
