#pragma once
#include <cstddef>
#include <string_view>

namespace guywright {

inline constexpr std::string_view k_plan_format = "guywright-plan";
inline constexpr int k_plan_version = 1;

/// A larger file is refused unread. The largest plan that the ranges allow is below 40 kB.
inline constexpr std::size_t k_most_plan_bytes = std::size_t{256} * 1024;

}  // namespace guywright
