#include "wasm/app/not_measured.hpp"

#include <algorithm>
#include <charconv>
#include <set>

#include "engine/plan/numbers.hpp"

namespace guywright::app {

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
    const std::string before = std::string(list) + "[";
    std::vector<std::string> kept;
    for (const std::string& path : plan.not_measured) {
        std::size_t index = 0;
        const char* digits = path.data() + std::min(before.size(), path.size());
        const auto read = std::from_chars(digits, path.data() + path.size(), index);
        const bool listed = path.starts_with(before) && read.ec == std::errc();
        if (!listed || index < at) kept.push_back(path);
        else if (index > at) kept.push_back(before + std::to_string(index - 1) + std::string(read.ptr, path.data() + path.size()));
    }
    plan.not_measured = std::move(kept);
}

}  // namespace guywright::app
