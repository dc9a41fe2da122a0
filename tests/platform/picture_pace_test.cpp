#include <doctest/doctest.h>

#include "wasm/platform/picture_pace.hpp"

using guywright::platform::PicturePace;

namespace {

constexpr double k_frame_ms = 1000.0 / 60.0;

/// Of so many frames that come after `wait_ms` and have a new picture each, if they may, how many show one.
int shown(PicturePace& pace, int frames, double wait_ms = k_frame_ms) {
    int count = 0;
    for (int i = 0; i < frames; ++i) {
        pace.frame_came(wait_ms);
        const bool shows = pace.may_show("GO");
        pace.frame_went(shows, "GO");
        count += shows ? 1 : 0;
    }
    return count;
}

}  // namespace

TEST_CASE("picture pace: where frames come in time each may show its picture, the very first too") {
    PicturePace pace;
    CHECK(pace.may_show(""));
    CHECK(shown(pace, 100) == 100);
}

TEST_CASE("picture pace: after a late frame one goes without between two pictures, until thirty came in time") {
    PicturePace pace;
    shown(pace, 10);
    shown(pace, 1, 3.0 * k_frame_ms);
    CHECK(shown(pace, 29) == 15);
    CHECK(shown(pace, 100) >= 99);
}

TEST_CASE("picture pace: never more than two go without, however late they are") {
    PicturePace pace;
    for (int i = 0; i < 20; ++i) {
        shown(pace, 1);
        shown(pace, 1, 20.0 * k_frame_ms);
    }
    CHECK(shown(pace, 27) == 9);
}

TEST_CASE("picture pace: a screen of thirty a second, or one of 120, is not late") {
    PicturePace slow;
    shown(slow, 200, 2.0 * k_frame_ms);
    CHECK(shown(slow, 100, 2.0 * k_frame_ms) == 100);
    PicturePace quick;
    for (int i = 0; i < 50; ++i) CHECK(shown(quick, 2, k_frame_ms / (1 + i % 2)) == 2);
}

TEST_CASE("picture pace: rests only as long as it has to") {
    PicturePace pace;
    for (int i = 0; i < 3; ++i) shown(pace, 1, 4.0 * k_frame_ms);
    shown(pace, 60);
    CHECK(shown(pace, 60) == 60);
}

TEST_CASE("picture pace: a new verdict is shown at once, however late frames are") {
    PicturePace pace;
    while (shown(pace, 1, 4.0 * k_frame_ms) == 1) {}  // until one has to wait
    CHECK_FALSE(pace.may_show("GO"));
    CHECK(pace.may_show("NO-GO"));
    CHECK(pace.may_show(""));
    pace.frame_went(false, "NO-GO");  // not shown after all
    CHECK(pace.may_show("NO-GO"));
    pace.frame_went(true, "NO-GO");
    CHECK_FALSE(pace.may_show("NO-GO"));
    CHECK(pace.may_show("GO"));
}
