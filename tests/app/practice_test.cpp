#include "engine/codec/plan_codec.hpp"
#include "tests/support/near_sound.hpp"
#include "wasm/app/apply.hpp"
#include "wasm/app/practice_steps.hpp"
#include "wasm/platform/assets.hpp"

#include <doctest/doctest.h>

// Natively no files are built in: the app then begins with a new plan.
namespace guywright::assets {
std::span<const Example> examples() { return {}; }
}  // namespace guywright::assets

using namespace guywright;
using namespace guywright::app;

namespace {

void check_to_the_end(State& s) {
    while (s.sweep) go_on_checking(s, 5.0);
}

/// A state with a plan of the person's own, changed once and taken back, somewhere in the middle of the walk.
State in_the_middle() {
    State s = first_state();
    open_plan(s, write_plan(support::go_plan()));
    apply(s, {SetNumber{"frame.lean_deg", 19.0}});
    end_gesture(s);
    apply(s, {SetNumber{"frame.lean_deg", 18.0}});
    end_gesture(s);
    apply(s, {Undo{}});
    apply(s, {GoTo{Step::Guys, 3}, SetView{scene::View::Side}, ShowCase{k_rigged}});
    check_to_the_end(s);
    s.saves.clear();
    return s;
}

struct Before {
    Plan plan;
    std::string check_code;
    std::vector<std::string> past, future;
    std::size_t number;

    explicit Before(const State& s) : plan(s.plan), check_code(s.check_code), past(s.history.past), future(s.history.future), number(s.history.number) {}
    void holds(State& s) const {
        CHECK_FALSE(s.practice);
        CHECK(s.plan == plan);
        CHECK(s.history.past == past);
        CHECK(s.history.future == future);
        CHECK(s.history.number == number);
        CHECK(s.step == Step::Guys);
        CHECK(s.item == 3);
        CHECK(s.view == scene::View::Side);
        CHECK(s.shown_case == k_rigged);
        check_to_the_end(s);
        CHECK(s.check_code == check_code);
        CHECK(s.saves.empty());
        CHECK(s.fallen.empty());
    }
};

Plan drawn_plan() {
    Plan plan = support::usual_plan();
    plan.title = "drawn";
    return plan;
}

}  // namespace

TEST_CASE("practice: into it and out again, the person's plan, history and place are as they were, and nothing was saved") {
    State s = in_the_middle();
    const Before before(s);
    REQUIRE_FALSE(before.check_code.empty());
    apply(s, {EnterPractice{}});
    CHECK(s.step == Step::Practice);
    CHECK(s.check_code.empty());
    apply(s, {LeavePractice{}});
    before.holds(s);
}

TEST_CASE("practice: what is changed of a plan practised on is nobody's: never saved, no history of the person's, no check code, no signature lost") {
    State s = in_the_middle();
    const Before before(s);
    s.signatures = {{"one", s.plan, {{"A", "", ""}, {"B", "", ""}}}, {"two", drawn_plan(), {{"A", "", ""}, {"B", "", ""}}}};
    apply(s, {EnterPractice{}});
    practise_on(s, drawn_plan(), Practising::Changing, Step::Practice);
    refresh(s);
    apply(s, {SetNumber{"frame.lean_deg", 12.0}});
    end_gesture(s);
    CHECK(s.plan.frame.lean_deg == 12.0);
    CHECK(s.history.past.size() == 1);
    apply(s, {Undo{}});
    CHECK(s.plan == drawn_plan());
    apply(s, {Redo{}});
    CHECK(s.plan.frame.lean_deg == 12.0);
    check_to_the_end(s);
    CHECK(s.check_code.empty());
    CHECK(own_plan(s) == before.plan);
    apply(s, {LeavePractice{}});
    before.holds(s);
    CHECK(s.signatures.size() == 2);
}

TEST_CASE("practice: before the answer no number changes and nothing of the answer can be seen") {
    State s = in_the_middle();
    apply(s, {EnterPractice{}});
    practise_on(s, drawn_plan(), Practising::Predicting, Step::Practice);
    refresh(s);
    check_to_the_end(s);
    apply(s, {SetNumber{"frame.lean_deg", 12.0}, OpenKeypad{"frame.lean_deg"}});
    CHECK_FALSE(enter_shown(s, "frame.lean_deg", "12").empty());
    end_gesture(s);
    CHECK(s.plan == drawn_plan());
    CHECK_FALSE(s.keypad);
    CHECK(seen(s).outcomes.empty());
    CHECK(seen(s).closest.empty());
    CHECK(seen(s).verdict == Verdict::NotChecked);
    CHECK(seen(s).model.legs.size() == 1);
    practise_further(s, Practising::Answered, Step::Practice);
    CHECK_FALSE(seen(s).outcomes.empty());
}

TEST_CASE("practice: what keeps, opens, hands on or signs a plan is not carried out, and no step of the person's plan is reached") {
    State s = in_the_middle();
    const Plan own = s.plan;
    apply(s, {EnterPractice{}});
    practise_on(s, drawn_plan(), Practising::Changing, Step::Practice);
    refresh(s);
    apply(s, {NewPlan{}, OpenFile{}, SaveFile{}, ShowPlans{}, AskShelf{ShelfAct::Delete, "x"}, AskForText{"title"}, SetText{"title", "mine"}, AddGuy{},
              ShowPage{Page::ShareCode}, ShowPage{Page::SecondCheck}, ShowPage{Page::RigSheet}, LockScreen{}, GoTo{Step::Card, 0}, GoToItem{Step::Guys, "x"}});
    end_gesture(s);
    CHECK(s.plan == drawn_plan());
    CHECK(s.step == Step::Practice);
    CHECK_FALSE(s.plans_screen);
    CHECK_FALSE(s.lock);
    CHECK_FALSE(s.open_wanted);
    CHECK_FALSE(s.download);
    CHECK_FALSE(s.page_wanted);
    CHECK_FALSE(s.text_wish);
    CHECK(s.shelf_requests.empty());
    CHECK(s.saves.empty());
    apply(s, {LeavePractice{}, GoTo{Step::Practice, 0}});
    CHECK(s.step == Step::Guys);
    CHECK(s.plan == own);
}

TEST_CASE("practice: a plan that comes from outside ends it, and the one set aside is what was left, not what was practised on") {
    State s = in_the_middle();
    const Plan own = s.plan;
    apply(s, {EnterPractice{}});
    practise_on(s, drawn_plan(), Practising::Changing, Step::Practice);
    refresh(s);
    Plan other = support::sound_a_frame();
    open_plan(s, write_plan(other));
    CHECK_FALSE(s.practice);
    CHECK(s.plan == other);
    REQUIRE(s.saves.size() == 1);
    CHECK(s.saves[0].title == other.title);

    State resumed = in_the_middle();
    apply(resumed, {EnterPractice{}});
    CHECK(resume(resumed, write_plan(own), {}, false) > 0);
    CHECK_FALSE(resumed.practice);
    CHECK(resumed.plan == own);

    State refused = in_the_middle();
    apply(refused, {EnterPractice{}});
    open_plan(refused, "{}");
    CHECK(refused.practice);
    CHECK(own_plan(refused) == own);
}
