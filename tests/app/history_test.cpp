#include "engine/codec/plan_codec.hpp"
#include "wasm/app/history.hpp"
#include "wasm/app/starters.hpp"

#include <doctest/doctest.h>

using namespace guywright;
using namespace guywright::app;

namespace {

/// The plan after `gestures` gestures: the face is one degree more with each.
Plan make(History& history, int gestures) {
    Plan plan = new_plan();
    plan.edge.face_deg = 10.0;
    for (int i = 0; i < gestures; ++i) {
        remember(history, plan);
        plan.edge.face_deg += 0.1;
    }
    return plan;
}

}  // namespace

TEST_CASE("history: back to the first plan and on to the last, each the very same") {
    History history;
    Plan plan = make(history, 5);
    const Plan last = plan;
    std::vector<Plan> seen;
    do seen.push_back(plan);
    while (go_back(history, plan) == Travelled::Done);
    CHECK(seen.size() == 6);
    CHECK(plan.edge.face_deg == 10.0);
    for (std::size_t i = seen.size() - 1; i-- > 0;) {
        CHECK(go_on(history, plan) == Travelled::Done);
        CHECK(plan == seen[i]);
    }
    CHECK(plan == last);
    CHECK(go_on(history, plan) == Travelled::NoSuchStep);
    CHECK(plan == last);
}

TEST_CASE("history: numbers tell every step from every other, and what was taken back is gone with the next gesture") {
    History history;
    Plan plan = make(history, 3);
    CHECK(history.first() == 0);
    CHECK(history.number == 3);
    CHECK(history.last() == 3);
    go_back(history, plan);
    go_back(history, plan);
    CHECK(history.number == 1);
    CHECK(history.last() == 3);
    remember(history, plan);
    CHECK(history.number == 2);
    CHECK(history.last() == 2);
    CHECK(history.first() == 0);
}

TEST_CASE("history: taken in step by step as it was kept, the nearest first") {
    History kept;
    Plan plan = make(kept, 4);
    go_back(kept, plan);
    History history;
    history.number = kept.number;
    for (std::size_t i = kept.past.size(); i-- > 0;) take_in_step(history, true, kept.past[i]);
    for (std::size_t i = kept.future.size(); i-- > 0;) take_in_step(history, false, kept.future[i]);
    CHECK(history.past == kept.past);
    CHECK(history.future == kept.future);
    CHECK(history.number == 3);
    History short_of_numbers;
    for (int i = 0; i < 3; ++i) take_in_step(short_of_numbers, true, "x");
    CHECK(short_of_numbers.first() == 0);  // never below
}

TEST_CASE("history: holds the last 200 gestures") {
    History history;
    Plan plan = make(history, 250);
    CHECK(history.past.size() == 200);
    CHECK(history.number == 250);
    CHECK(history.first() == 50);
    for (int i = 0; i < 200; ++i) REQUIRE(go_back(history, plan) == Travelled::Done);
    CHECK(go_back(history, plan) == Travelled::NoSuchStep);
    CHECK(plan.edge.face_deg == doctest::Approx(15.0));
}

TEST_CASE("history: a step that cannot be read is not taken, and nothing is lost") {
    History history;
    Plan plan = make(history, 3);
    const Plan before = plan;
    history.past.back() = "damaged";
    CHECK(go_back(history, plan) == Travelled::Unreadable);
    CHECK(plan == before);
    CHECK(history.past.size() == 3);
    CHECK(history.future.empty());
    CHECK(history.number == 3);
}
