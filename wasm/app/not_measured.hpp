#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "engine/plan/plan.hpp"

// Plan::not_measured names numbers by path; here it is kept true while the plan changes its make-up.
namespace guywright::app {

[[nodiscard]] bool is_measured(const Plan& plan, std::string_view path);

/// Puts a path on the list, once.
void mark_not_measured(Plan& plan, std::string path);

/// The number has been entered.
void mark_measured(Plan& plan, std::string_view path);

/// Takes off the list every path that begins so: one number, or all of a guy ("guys[1].").
void forget_not_measured(Plan& plan, std::string_view beginning);

/// Takes off the list whatever the plan no longer has.
void forget_what_is_gone(Plan& plan);

/// After entry `at` of a list ("guys", "feet[0].ties") went: its paths go, those after it move down.
void renumber_not_measured(Plan& plan, std::string_view list, std::size_t at);

/// Entries `a` and `b` of a list have changed places: so do their paths.
void swap_not_measured(Plan& plan, std::string_view list, std::size_t a, std::size_t b);

/// Takes an entry out of a list of the plan, with its paths. False where there is no such entry.
template <class T>
bool remove_entry(Plan& plan, std::vector<T>& entries, std::string_view list, std::size_t at) {
    if (at >= entries.size()) return false;
    entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(at));
    renumber_not_measured(plan, list, at);
    return true;
}

}  // namespace guywright::app
