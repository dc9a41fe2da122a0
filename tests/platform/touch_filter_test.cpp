#include "wasm/platform/touch_filter.hpp"

#include <doctest/doctest.h>

using guywright::platform::TouchFilter;

TEST_CASE("TouchFilter: one and two fingers are meant") {
    TouchFilter f;
    CHECK_FALSE(f.down(1));
    CHECK_FALSE(f.down(2));
    CHECK(f.fingers() == 2);
    f.up(1);
    CHECK_FALSE(f.down(3));
    CHECK_FALSE(f.dropping());
}

TEST_CASE("TouchFilter: the third says so once, and nothing counts until every one is up") {
    TouchFilter f;
    f.down(1);
    f.down(2);
    CHECK(f.down(3));
    CHECK_FALSE(f.down(4));
    for (const int finger : {3, 1, 4}) {
        f.up(finger);
        CHECK(f.dropping());
    }
    CHECK_FALSE(f.down(5));  // rain goes on
    f.up(2);
    CHECK(f.dropping());
    f.up(5);
    CHECK_FALSE(f.dropping());
    CHECK_FALSE(f.down(6));
}

TEST_CASE("TouchFilter: a finger told twice is one; one never seen cannot lift") {
    TouchFilter f;
    for (int i = 0; i < 4; ++i) CHECK_FALSE(f.down(7));
    f.up(8);
    CHECK(f.fingers() == 1);
    f.up(7);
    CHECK(f.fingers() == 0);
}

TEST_CASE("TouchFilter: more touches than it can hold still end with the last it holds; forget() frees it") {
    TouchFilter f;
    for (int i = 0; i < 40; ++i) f.down(i);
    CHECK(f.dropping());
    f.forget();
    CHECK_FALSE(f.dropping());
    CHECK(f.fingers() == 0);
}
