#include "engine/base/bounded.hpp"

#include <doctest/doctest.h>

using guywright::Bounded;

TEST_CASE("Bounded: keeps the order in which things were added") {
    Bounded<int, 3> b;
    CHECK(b.empty());
    b.push_back(7);
    b.push_back(5);
    REQUIRE(b.size() == 2);
    CHECK(b[0] == 7);
    CHECK(b[1] == 5);
    CHECK_FALSE(b.full());
    b.push_back(9);
    CHECK(b.full());
    int sum = 0;
    for (const int v : b) sum = 10 * sum + v;
    CHECK(sum == 759);
}

TEST_CASE("Bounded: erase closes the gap and leaves the rest in order") {
    Bounded<int, 4> b;
    for (int v = 1; v <= 4; ++v) b.push_back(v);
    b.erase(1);
    REQUIRE(b.size() == 3);
    CHECK(b[0] == 1);
    CHECK(b[1] == 3);
    CHECK(b[2] == 4);
    b.erase(2);
    b.erase(0);
    REQUIRE(b.size() == 1);
    CHECK(b[0] == 3);
}

TEST_CASE("Bounded: clear makes room again") {
    Bounded<int, 1> b;
    b.push_back(1);
    b.clear();
    CHECK(b.empty());
    CHECK(b.begin() == b.end());
    b.push_back(2);
    CHECK(b[0] == 2);
}
