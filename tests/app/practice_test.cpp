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

void finish_checking(State& s) {
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
    finish_checking(s);
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
        finish_checking(s);
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
    finish_checking(s);
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
    finish_checking(s);
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

TEST_CASE("a text that is no plan is told as such, as a file and as a copy, and the plan in hand stays") {
    for (const auto open : {open_plan, open_copy}) {
        State s = first_state();
        const Plan own = s.plan;
        open(s, "{}");
        CHECK(s.message.starts_with("This file cannot be used."));
        CHECK(s.plan == own);
    }
}

namespace {

/// A state in which the site of that number is shown, to be predicted.
State on_site(std::uint32_t seed, int level) {
    State s = in_the_middle();
    apply(s, {EnterPractice{}, SetSite{seed, level}, DrawSite{}});
    while (is_drawing(s)) go_on_drawing(s, 5.0);
    REQUIRE(s.practice);
    REQUIRE(s.practice->stage == Practising::Predicting);
    finish_checking(s);
    return s;
}

}  // namespace

TEST_CASE("practice: a site is predicted in three steps, answered, marked and counted once") {
    State s = on_site(3, 1);
    CHECK(s.step == Step::Site);
    apply(s, {GoTo{Step::Answer, 0}, GoTo{Step::WhatIf, 0}, ShowAnswer{}});
    CHECK(s.step == Step::Site);
    CHECK(s.practice->stage == Practising::Predicting);
    apply(s, {SayGo{false}});
    CHECK(s.step == Step::SayGuy);
    apply(s, {SayHardest{99}});
    CHECK(s.step == Step::SayGuy);
    apply(s, {SayHardest{0}, SayAngle{-12.0}});
    CHECK(s.practice->site.said.angle_deg == 0.0);
    apply(s, {ShowAnswer{}});
    CHECK(s.step == Step::Answer);
    REQUIRE(s.practice->site.answer);
    const SiteAnswer& answer = *s.practice->site.answer;
    CHECK(s.practice->site.marks.verdict == (answer.verdict == Verdict::NoGo));
    CHECK(s.practice->site.marks.guy == (answer.hardest_guy == 0));
    CHECK(s.practice->site.explanation.size() > 5);
    CHECK(s.progress.levels[0].sites == 1);
    CHECK(s.progress_changed);
    apply(s, {GoTo{Step::Why, 0}, SpeakOf{3}, GoTo{Step::Answer, 0}, SayGo{true}});
    settle_answer(s);
    CHECK(s.progress.levels[0].sites == 1);
    CHECK_FALSE(s.practice->site.said.go);
}

TEST_CASE("practice: an answer that is asked for before the check has ended comes when it has, and is counted then") {
    State s = in_the_middle();
    apply(s, {EnterPractice{}, SetSite{2, 2}, DrawSite{}});
    while (is_drawing(s)) go_on_drawing(s, 5.0);
    REQUIRE(s.sweep);
    apply(s, {SayGo{true}, SayHardest{0}, ShowAnswer{}});
    CHECK_FALSE(s.practice->site.answer);
    CHECK(s.progress.levels[1].sites == 0);
    finish_checking(s);
    CHECK(s.practice->site.answer);
    CHECK(s.progress.levels[1].sites == 1);
}

TEST_CASE("practice: what if changes numbers there alone; the site is as drawn again everywhere else") {
    State s = on_site(4, 1);
    apply(s, {SayGo{true}, SayHardest{0}, ShowAnswer{}});
    const Plan drawn = s.plan;
    apply(s, {SetNumber{"frame.lean_deg", 5.0}});
    CHECK(s.plan == drawn);
    apply(s, {GoTo{Step::WhatIf, 0}});
    apply(s, {SetNumber{"frame.lean_deg", 5.0}});
    end_gesture(s);
    CHECK(s.plan != drawn);
    CHECK(s.practice->drawn == drawn);
    const SiteAnswer answer = *s.practice->site.answer;
    finish_checking(s);
    apply(s, {GoTo{Step::Answer, 0}});
    CHECK(s.plan == drawn);
    CHECK(s.history.past.empty());
    CHECK(s.practice->site.answer->hardest_N == answer.hardest_N);
    CHECK(s.progress.levels[0].sites == 1);
    CHECK(s.saves.empty());
    apply(s, {NextSite{}});
    CHECK(s.practice->site.seed == 5);
    while (is_drawing(s)) go_on_drawing(s, 5.0);
    CHECK(s.plan != drawn);
    CHECK_FALSE(s.practice->site.answer);
}

TEST_CASE("practice: the number of a site as it is typed") {
    State s = in_the_middle();
    apply(s, {EnterPractice{}, AskSiteNumber{}});
    REQUIRE(s.text_wish);
    CHECK(enter_text(s, {s.text_wish->path, "1234"}).empty());
    CHECK(s.practice->site.seed == 1234);
    for (const char* wrong : {"0", "10000", "-3", "1.5", "x", "", "99999999999"}) CHECK_FALSE(enter_text(s, {k_site_number_path, wrong}).empty());
    CHECK(s.practice->site.seed == 1234);
    apply(s, {SetSite{0, 9}});
    CHECK(s.practice->site.seed == 1);
    CHECK(s.practice->site.level == k_last_site_level);
}

TEST_CASE("practice: names of a site in either language, there and back, and nothing that is computed changes") {
    State s = on_site(5, 2);
    const Plan english = s.plan;
    apply(s, {NextLanguage{}});
    CHECK(s.plan.guys[0].name != english.guys[0].name);
    CHECK(s.plan.title != english.title);
    CHECK(s.practice->drawn == s.plan);
    apply(s, {NextLanguage{}});
    CHECK(s.plan == english);
    CHECK(s.practice->stage == Practising::Predicting);
}

TEST_CASE("progress: reads what it wrote; what is damaged counts as nothing") {
    Progress progress;
    progress.count(2, {true, false, true});
    progress.count(2, {false, false, true});
    progress.count(5, {true, true, true});
    CHECK(read_progress(progress_json(progress)) == progress);
    CHECK(progress.highest() == 5);
    CHECK(progress.levels[1] == LevelScore{2, 1, 0, 2});
    for (const char* damaged : {"", "{}", "[]", "{\"levels\":3}", "{\"levels\":[[1,2,0,0]]}", "{\"levels\":[[-1,0,0,0]]}", "{\"levels\":[[1,0,0]]}",
                                "{\"levels\":[[1e99,0,0,0]]}", "{\"levels\":[null,\"x\"]}"})
        CHECK(read_progress(damaged) == Progress{});
    CHECK(read_progress("{\"levels\":[[3,1,2,3],[1,2,0,0]]}").levels[0] == LevelScore{3, 1, 2, 3});
}
