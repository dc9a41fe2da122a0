#include "wasm/app/not_measured.hpp"

#include <algorithm>
#include <charconv>
#include <set>

#include "engine/plan/numbers.hpp"

namespace guywright::app {
namespace {

std::string entry_path(std::string_view list, std::size_t index) { return std::string(list) + "[" + std::to_string(index) + "]"; }

/// Gives every path of a list's entry the index that `renumber(index)` says.
template <class F>
void each_in_list(Plan& plan, std::string_view list, F renumber) {
    const std::string before = std::string(list) + "[";
    for (std::string& path : plan.not_measured) {
        if (!path.starts_with(before)) continue;
        std::size_t index = 0;
        const char* end = path.data() + path.size();
        const auto read = std::from_chars(path.data() + before.size(), end, index);
        if (read.ec == std::errc() && read.ptr != end) path = entry_path(list, renumber(index)) + std::string(read.ptr + 1, end);
    }
}

}  // namespace

bool is_measured(const Plan& plan, std::string_view path) {
    return std::find(plan.not_measured.begin(), plan.not_measured.end(), path) == plan.not_measured.end();
}

void mark_not_measured(Plan& plan, std::string path) {
    if (is_measured(plan, path)) plan.not_measured.push_back(std::move(path));
}

void mark_measured(Plan& plan, std::string_view path) { std::erase(plan.not_measured, path); }

void forget_not_measured(Plan& plan, std::string_view beginning) {
    std::erase_if(plan.not_measured, [&](const std::string& path) { return path.starts_with(beginning); });
}

void forget_what_is_gone(Plan& plan) {
    std::set<std::string> there;
    const Plan& unchanged = plan;
    for_each_number(unchanged, [&](const std::string& path, double, const Range&) { there.insert(path); });
    std::erase_if(plan.not_measured, [&](const std::string& path) { return !there.contains(path); });
}

void renumber_not_measured(Plan& plan, std::string_view list, std::size_t at) {
    forget_not_measured(plan, entry_path(list, at) + ".");
    each_in_list(plan, list, [&](std::size_t index) { return index > at ? index - 1 : index; });
}

void swap_not_measured(Plan& plan, std::string_view list, std::size_t a, std::size_t b) {
    each_in_list(plan, list, [&](std::size_t index) { return index == a ? b : index == b ? a : index; });
}

}  // namespace guywright::app
