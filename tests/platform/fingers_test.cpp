#include "tests/support/within.hpp"
#include "wasm/platform/fingers.hpp"

using guywright::platform::Fingers;
using guywright::platform::Pinch;

TEST_CASE("fingers: two on the picture are a pinch, and hold the pointer until both are up") {
    Fingers f;
    CHECK_FALSE(f.down(1, {100, 100}, true));
    CHECK_FALSE(f.hold_pointer());
    f.move(1, {105, 100});
    CHECK_FALSE(f.take());
    CHECK(f.down(2, {205, 100}, true));  // the first one has been the pointer
    CHECK(f.hold_pointer());
    CHECK_FALSE(f.take());  // nothing has moved since
    f.move(1, {95, 120});
    f.move(2, {245, 120});
    const auto pinch = f.take();
    REQUIRE(pinch);
    CHECK_WITHIN(pinch->factor, 1.5, 1e-12);
    CHECK(pinch->from_px == glm::dvec2(155, 100));
    CHECK(pinch->to_px == glm::dvec2(170, 120));
    CHECK_FALSE(f.take());  // taken once
    f.up(1);
    f.move(2, {300, 200});
    CHECK_FALSE(f.take());
    CHECK(f.hold_pointer());  // the one left must not turn anything
    f.up(2);
    CHECK_FALSE(f.hold_pointer());
}

TEST_CASE("fingers: a finger that comes again goes on with the pinch from where it is") {
    Fingers f;
    f.down(1, {100, 100}, true);
    f.down(2, {200, 100}, true);
    f.up(1);
    CHECK_FALSE(f.down(3, {20, 300}, true));  // no pointer to let go of
    CHECK_FALSE(f.take());                    // no jump
    f.move(3, {20, 310});
    REQUIRE(f.take());
    f.up(3);
    f.up(2);
    CHECK_FALSE(f.hold_pointer());
    CHECK_FALSE(f.down(4, {1, 1}, true));
    CHECK_FALSE(f.hold_pointer());
}

TEST_CASE("fingers: no pinch with a finger on a slider or a key") {
    Fingers f;
    f.down(1, {100, 600}, false);
    CHECK_FALSE(f.down(2, {200, 100}, true));
    CHECK_FALSE(f.down(3, {220, 160}, true));
    f.move(3, {300, 200});
    CHECK_FALSE(f.take());
    CHECK_FALSE(f.hold_pointer());
    Fingers g;
    g.down(1, {100, 100}, true);
    CHECK_FALSE(g.down(2, {100, 600}, false));
    CHECK_FALSE(g.hold_pointer());
}

TEST_CASE("fingers: two side by side do not make it jump, and strangers do no harm") {
    Fingers f;
    f.down(1, {100, 100}, true);
    f.down(2, {101, 100}, true);
    f.move(2, {104, 100});
    REQUIRE(f.take());
    f.move(1, {50, 100});
    const auto pinch = f.take();
    REQUIRE(pinch);
    CHECK(pinch->factor < 3.0);
    f.up(77);
    f.move(77, {0, 0});
    CHECK_FALSE(f.down(1, {0, 0}, true));  // already down
    for (int i = 3; i < 30; ++i) f.down(i, {1.0 * i, 0}, true);
    CHECK(f.hold_pointer());
    Fingers taken = f;
    taken.forget();  // the device took them: no "up" will come
    CHECK_FALSE(taken.hold_pointer());
    CHECK_FALSE(taken.down(1, {5, 5}, true));
    for (int i = 1; i < 30; ++i) f.up(i);
    CHECK_FALSE(f.hold_pointer());
}
