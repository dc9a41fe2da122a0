#include "wasm/app/lock.hpp"

#include <doctest/doctest.h>

#include <random>

using guywright::app::Lock;
using Touched = Lock::Touched;

namespace {

/// Looks every 20 ms for `seconds`; at nothing only while the lock asks for it, as the screen does.
struct Hand {
    Lock lock;
    double now_s = 100.0;

    Hand& touch(Touched what, double seconds) {
        for (double t = 0.0; t < seconds; t += 0.02, now_s += 0.02)
            if (what != Touched::Nothing || lock.waits()) lock.look(what, now_s);
        return *this;
    }
    Hand& rest(double seconds = 0.3) { return touch(Touched::Nothing, seconds); }
};

}  // namespace

TEST_CASE("Lock: first place held, let go, second place held: open") {
    Hand h;
    h.rest().touch(Touched::First, 1.2);
    CHECK(h.lock.first_done());
    CHECK_FALSE(h.lock.open());
    h.rest().touch(Touched::Second, 1.2);
    CHECK(h.lock.open());
}

TEST_CASE("Lock: too short a hold, wrong order, one place twice, too long between: closed") {
    CHECK_FALSE(Hand{}.touch(Touched::First, 0.9).rest().touch(Touched::Second, 1.2).lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 1.2).rest().touch(Touched::Second, 0.9).rest().lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::Second, 1.2).rest().touch(Touched::First, 1.2).rest().lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 5.0).lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 1.2).rest().touch(Touched::First, 1.2).rest().touch(Touched::Second, 1.2).lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 1.2).rest(7.0).touch(Touched::Second, 1.2).lock.open());
}

TEST_CASE("Lock: a touch that slides from one place to the other, or strays, begins it anew") {
    CHECK_FALSE(Hand{}.touch(Touched::First, 1.2).touch(Touched::Second, 1.5).lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 1.2).rest().touch(Touched::Wrong, 0.1).rest().touch(Touched::Second, 1.5).lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 0.5).touch(Touched::Wrong, 0.1).touch(Touched::First, 1.2).rest().touch(Touched::Second, 1.5).lock.open());
    CHECK_FALSE(Hand{}.touch(Touched::First, 1.2).rest().touch(Touched::Wrong, 0.1).touch(Touched::Second, 1.5).lock.open());
}

TEST_CASE("Lock: after any mistake the right way still opens it") {
    Hand h;
    h.touch(Touched::Second, 2.0).rest().touch(Touched::Wrong, 0.5).rest().touch(Touched::First, 1.2).rest().touch(Touched::Second, 1.2);
    CHECK(h.lock.open());
}

TEST_CASE("Lock: the text view's keys, in order only") {
    Lock lock;
    lock.press(Touched::Second, 1.0);
    CHECK_FALSE(lock.open());
    lock.press(Touched::First, 2.0);
    lock.press(Touched::First, 3.0);
    lock.press(Touched::Second, 4.0);
    CHECK_FALSE(lock.open());
    lock.press(Touched::First, 5.0);
    lock.look(Touched::Nothing, 40.0);
    lock.press(Touched::Second, 45.0);
    CHECK(lock.open());
    Lock left;
    left.press(Touched::First, 5.0);
    CHECK_FALSE(left.waits());  // nothing is drawn for it
    for (double now_s = 100.0; now_s < 103.0; now_s += 0.1) left.look(Touched::Second, now_s);
    CHECK_FALSE(left.open());
}

TEST_CASE("Lock: an hour of rain does not open it") {
    std::mt19937 random(4);
    std::uniform_real_distribution<double> rests_s(0.02, 0.6), pauses_s(0.05, 2.0);
    Hand h;
    while (h.now_s < 3600.0 && !h.lock.open()) h.touch(static_cast<Touched>(1 + random() % 3), rests_s(random)).rest(pauses_s(random));
    CHECK_FALSE(h.lock.open());
}
