#pragma once
#include <doctest/doctest.h>

#include <cmath>

/// |value - expected| <= tolerance, in the quantity's own unit. NaN fails. doctest's Approx is not used: near zero and at
/// limits it lets through what it should not.
#define CHECK_WITHIN(value, expected, tolerance)                                                                                                   \
    do {                                                                                                                                           \
        const double within_got = (value), within_want = (expected), within_by = (tolerance);                                                      \
        CHECK_MESSAGE(std::abs(within_got - within_want) <= within_by, #value " is ", within_got, ", wanted ", within_want, " within ", within_by, \
                      ", off by ", within_got - within_want);                                                                                      \
    } while (false)

/// Each component of two vectors within the tolerance.
#define CHECK_VEC_WITHIN(value, expected, tolerance)    \
    do {                                                \
        const auto vec_got = (value);                   \
        const auto vec_want = (expected);               \
        INFO(#value);                                   \
        CHECK_WITHIN(vec_got.x, vec_want.x, tolerance); \
        CHECK_WITHIN(vec_got.y, vec_want.y, tolerance); \
        CHECK_WITHIN(vec_got.z, vec_want.z, tolerance); \
    } while (false)
