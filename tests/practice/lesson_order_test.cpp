#include "engine/practice/lesson_order.hpp"

#include <doctest/doctest.h>

using namespace guywright;

namespace {

struct Pole {
    Plan plan = lesson(LessonId::OrderOfWork).start(0);
    Model model = evaluate_as_measured(plan).model;
};

NextTie tie_of(const std::vector<NextTie>& ties, std::size_t guy) {
    for (const NextTie& t : ties)
        if (t.guy == guy) return t;
    FAIL("not to be tied any more");
    return ties[0];
}

std::size_t guy_named(const Plan& p, std::string_view name) {
    for (std::size_t i = 0; i < p.guys.size(); ++i)
        if (p.guys[i].name == name) return i;
    FAIL("no such guy");
    return 0;
}

}  // namespace

TEST_CASE("order lesson: the engine's own order is right at every step") {
    const Pole pole;
    TiedGuys tied;
    for (const SequenceStep& step : find_sequence(pole.plan, pole.model).up) {
        if (step.kind != StepKind::BackTieFirst && step.kind != StepKind::TieOn) continue;
        const NextTie next = tie_of(next_ties(pole.plan, pole.model, tied), step.part);
        CHECK(next.right);
        if (step.computed) CHECK(next.after.by_itself == step.after.by_itself);
        tied.push_back(step.part);
    }
    CHECK(all_tied(pole.plan, tied));
    CHECK(standing_with(pole.plan, pole.model, tied).by_itself);
}

TEST_CASE("order lesson: near the edge only what holds the kit back comes first, however well another would hold the pole") {
    const Pole pole;
    const auto first = next_ties(pole.plan, pole.model, {});
    for (const NextTie& t : first) CHECK(t.right == (t.guy == guy_named(pole.plan, "back")));
}

TEST_CASE("order lesson: of two guys beside one another the second helps little, and is wrong next") {
    const Pole pole;
    TiedGuys tied;
    tied.push_back(guy_named(pole.plan, "back"));
    const auto next = next_ties(pole.plan, pole.model, tied);
    CHECK(next.size() == 3);
    CHECK_FALSE(tie_of(next, guy_named(pole.plan, "back left")).right);
    CHECK(tie_of(next, guy_named(pole.plan, "left")).right);
    CHECK(tie_of(next, guy_named(pole.plan, "right")).right);  // mirror of the other
}

TEST_CASE("order lesson: wrong orders leave somebody holding the pole where the right one is done") {
    const Pole pole;
    TiedGuys right, wrong;
    for (const char* name : {"back", "left", "right"}) right.push_back(guy_named(pole.plan, name));
    for (const char* name : {"back", "back left", "left"}) wrong.push_back(guy_named(pole.plan, name));
    CHECK(standing_with(pole.plan, pole.model, right).by_itself);
    const Standing held = standing_with(pole.plan, pole.model, wrong);
    CHECK_FALSE(held.by_itself);
    CHECK(held.hold_N > 0.0);
}

TEST_CASE("order lesson: the rig drawn is the one that was asked about, without what is not tied") {
    const Pole pole;
    TiedGuys tied;
    for (const char* name : {"back", "right"}) tied.push_back(guy_named(pole.plan, name));
    const Plan drawn = tied_plan(pole.plan, tied);
    REQUIRE(drawn.guys.size() == 2);
    CHECK(drawn.guys[1].name == "right");
    const Standing whole = standing_with(pole.plan, pole.model, tied), alone = find_standing(drawn, build_model(drawn).model);
    CHECK(alone.by_itself == whole.by_itself);
    CHECK(alone.hold_N == doctest::Approx(whole.hold_N));
}
