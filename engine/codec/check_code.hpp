#pragma once
#include "engine/codec/plan_codec.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace guywright {

/// 32 signs that are not mistaken for each other when read out, written down or seen on a wet screen: no 0 O 1 I.
inline constexpr std::string_view k_check_code_signs = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
inline constexpr std::size_t k_check_code_length = 6;
static_assert(k_check_code_signs.size() == 32);

/// One changed plan in this many keeps its code (32^6): it catches slips of the hand and of the ear, not forgery.
inline constexpr std::uint64_t k_check_code_count = std::uint64_t{1} << (5 * k_check_code_length);

namespace detail {

/// FNV-1a over the bytes, then the finaliser of splitmix64 so that every input bit reaches the bits that are used.
inline std::uint64_t mixed_hash(std::string_view bytes) {
    std::uint64_t h = 14695981039346656037ull;
    for (const char c : bytes) h = (h ^ static_cast<unsigned char>(c)) * 1099511628211ull;
    h = (h ^ (h >> 30)) * 0xBF58476D1CE4E5B9ull;
    h = (h ^ (h >> 27)) * 0x94D049BB133111EBull;
    return h ^ (h >> 31);
}

}  // namespace detail

/// The code of a plan's canonical text as it stands, which another version of the program may have written.
[[nodiscard]] inline std::string check_code_of(std::string_view canonical) {
    std::string code;
    std::uint64_t rest = detail::mixed_hash(canonical);
    for (std::size_t i = 0; i < k_check_code_length; ++i, rest >>= 5) code += k_check_code_signs[rest & 31u];
    return code;
}

/// Six signs that two people compare to know that both see the same plan, every digit of it.
[[nodiscard]] inline std::string check_code(const Plan& plan) { return check_code_of(canonical_plan_text(plan)); }

}  // namespace guywright
