#include "engine/codec/plan_codec.hpp"
#include "tests/support/near_sound.hpp"
#include "wasm/app/advice_edits.hpp"
#include "wasm/app/advisor.hpp"
#include "wasm/app/found_anchors.hpp"
#include "wasm/app/history.hpp"
#include "wasm/app/not_measured.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace guywright;
using namespace guywright::app;

namespace {

/// Upright, so that the force is far off the leg.
Plan leaning_too_little() {
    Plan plan = support::go_plan();
    plan.frame.lean_deg -= 12.0;
    return plan;
}

/// Nearly all of its cord gone.
Plan no_go_plan() {
    Plan plan = support::go_plan();
    plan.guys[0].strength_kN = 2.0;
    REQUIRE(evaluate(plan).verdict == Verdict::NoGo);
    return plan;
}

Plan with_anchors_found(int count) {
    Plan plan = support::go_plan();
    for (int i = 0; i < count; ++i) REQUIRE(edit(plan, AddFoundAnchor{}).refused.empty());
    for (int i = 0; i < count; ++i) {
        const std::string point = "candidate_anchors_m[" + std::to_string(i) + "]";
        REQUIRE(set_measure(plan, point + "[0]", 360.0 * i / count + 20.0));
        REQUIRE(set_measure(plan, point + "[1]", 4.0 + 0.3 * i));
    }
    plan.not_measured.clear();
    return plan;
}

void answer(Advisor& advisor, Question about) {
    int slices = 0;
    for (std::size_t news = advisor.news(about); !advisor.done(about); news = advisor.news(about)) {
        advisor.advance(about);
        CHECK(advisor.news(about) >= news);
        REQUIRE(++slices < 2'000'000);
    }
}

bool same(const Advice& a, const Advice& b) { return applied(no_go_plan(), a) == applied(no_go_plan(), b) && a.effort == b.effort; }

}  // namespace

TEST_CASE("advisor: changes found in slices are those found at once, and applying one is the engine's edit, undone exactly") {
    const Plan plan = no_go_plan();
    Advisor advisor(plan, evaluate(plan));
    answer(advisor, Question::Change);
    SmallestChange at_once(plan);
    while (!at_once.done()) at_once.advance(100'000);
    const std::vector<Advice>& found = advisor.change()->advice();
    REQUIRE(!found.empty());
    REQUIRE(found.size() == at_once.advice().size());
    for (std::size_t i = 0; i < found.size(); ++i) CHECK(same(found[i], at_once.advice()[i]));

    for (const Advice& advice : found) {
        Plan changed = plan;
        CHECK(edit(changed, TakeAdvice{advice}).refused.empty());
        if (!advice.changes[0].new_guy) CHECK(changed == applied(plan, advice));
        History history;
        remember(history, plan);
        REQUIRE(go_back(history, changed) == Travelled::Done);
        CHECK(canonical_plan_text(changed) == canonical_plan_text(plan));
    }
    Plan first = plan;
    edit(first, TakeAdvice{found[0]});
    CHECK(evaluate(first).verdict == Verdict::Go);
}

TEST_CASE("advisor: what a new guy's anchor carries is asked for before it is GO, unless it was found and graded") {
    for (const bool graded : {false, true}) {
        Plan plan = support::go_plan();
        plan.guys.erase(plan.guys.begin() + 2);
        plan.candidate_anchors_m = {{-1.9, -4.0, 0.0}};
        if (graded) plan.candidate_anchor_strengths_kN = {20.0};
        const std::vector<Lever> levers = levers_of(plan);
        const auto add = std::find_if(levers.begin(), levers.end(), [](const Lever& l) { return l.input == Input::AddGuy; });
        REQUIRE(add != levers.end());
        for (const bool at_anchor_found : {false, true}) {
            Advice advice;
            advice.changes.push_back(change_of(plan, *add, at_anchor_found ? 0.0 : 1.0));  // the anchors found stand first
            REQUIRE(advice.changes[0].new_guy->anchor_m.has_value() == at_anchor_found);
            Plan changed = plan;
            REQUIRE(edit(changed, TakeAdvice{advice}).refused.empty());
            const bool known = graded && at_anchor_found;
            CHECK(is_measured(changed, "guys[" + std::to_string(changed.guys.size() - 1) + "].anchor_strength_kN") == known);
            CHECK((evaluate(changed).verdict == Verdict::NotChecked) == !known);
        }
    }
}

TEST_CASE("advisor: advice for another plan is refused and changes nothing") {
    const Plan plan = no_go_plan();
    SmallestChange search(plan);
    while (!search.done()) search.advance(100'000);
    for (const Advice& advice : search.advice()) {
        if (advice.changes[0].edits.empty()) continue;
        Plan other = plan;
        REQUIRE(find_number(other, advice.changes[0].edits[0].path).set(advice.changes[0].edits[0].to));
        const Plan before = other;
        CHECK(!edit(other, TakeAdvice{advice}).refused.empty());
        CHECK(other == before);
    }
    Plan fewer = plan;
    fewer.guys.pop_back();
    const Plan before = fewer;
    CHECK(!edit(fewer, TakePretensions{{0.5, 0.5, 0.5, 0.5}}).refused.empty());
    CHECK(!edit(fewer, TakeLean{{1.25, 0.0}, {2.0, 0.0}}).refused.empty());
    CHECK(fewer == before);
}

TEST_CASE("advisor: what is asked is answered, and nothing else") {
    const Plan plan = leaning_too_little();
    const Evaluation e = evaluate(plan);
    Advisor advisor(plan, e);
    answer(advisor, Question::LineUp);
    for (const Question other : {Question::Change, Question::Ties, Question::Pretension, Question::Order, Question::Anchors, Question::Directions})
        CHECK(!advisor.done(other));
    const Tuning at_once = tune(plan, e);
    REQUIRE(!advisor.tuning().line_up.take_up_m.empty());
    CHECK(advisor.tuning().line_up.plan == at_once.line_up.plan);
    REQUIRE(advisor.tuning().order.steps.size() == at_once.order.steps.size());
    for (std::size_t i = 0; i < at_once.order.steps.size(); ++i) CHECK(advisor.tuning().order.steps[i].take_up_m == at_once.order.steps[i].take_up_m);

    for (const Question about : {Question::Ties, Question::Pretension, Question::Order, Question::Directions}) answer(advisor, about);
    CHECK(advisor.tuning().holding.change_N_per_m == at_once.holding.change_N_per_m);
    CHECK(advisor.tuning().sequence.up.size() == at_once.sequence.up.size());
    REQUIRE(advisor.tuning().least_pretension.guys.size() == at_once.least_pretension.guys.size());
    for (std::size_t i = 0; i < at_once.least_pretension.guys.size(); ++i)
        CHECK(advisor.tuning().least_pretension.guys[i].force_N == at_once.least_pretension.guys[i].force_N);
    CHECK(advisor.directions()->done());
}

TEST_CASE("TakeLean: the plan as the line-up says that it then reads") {
    Plan plan = leaning_too_little();
    const LineUp line_up = find_line_up(plan, build_model(plan).model);
    REQUIRE(!line_up.take_up_m.empty());
    CHECK(edit(plan, TakeLean{line_up.before, line_up.after}).refused.empty());
    CHECK(plan == line_up.plan);
}

TEST_CASE("TakePretensions: no less than the least, as a slider can hold it") {
    Plan plan = support::go_plan();
    const LeastPretension least = find_least_pretension(plan);
    REQUIRE(least.status == PretensionStatus::Found);
    const std::vector<double> wanted_kN = as_entered_kN(least);
    CHECK(edit(plan, TakePretensions{wanted_kN}).refused.empty());
    for (std::size_t i = 0; i < plan.guys.size(); ++i) {
        const double least_kN = kilonewtons(least.guys[i].force_N), step_kN = range::pretension_kN.step;
        CHECK(plan.guys[i].pretension_kN >= least_kN - 1e-9);
        CHECK(plan.guys[i].pretension_kN < least_kN + step_kN);
        CHECK(std::abs(plan.guys[i].pretension_kN / step_kN - std::round(plan.guys[i].pretension_kN / step_kN)) < 1e-9);
    }
}

TEST_CASE("found anchors: measured from below the head, missing until entered") {
    Plan plan = support::go_plan();
    CHECK(edit(plan, AddFoundAnchor{}).show == "candidate_anchors_m[0][0]");
    CHECK(plan.not_measured.size() == 4);
    CHECK(evaluate(plan).verdict == Verdict::NotChecked);
    CHECK(set_measure(plan, "candidate_anchors_m[0][0]", 90.0));
    CHECK(set_measure(plan, "candidate_anchors_m[0][1]", 2.5));
    const Vec3 head_m = *drawn_head_of(plan), at_m = plan.candidate_anchors_m[0];
    CHECK(std::abs(at_m.x - head_m.x) < 1e-9);
    CHECK(std::abs(at_m.y - (head_m.y - 2.5)) < 1e-9);  // 90 is to the right, y is to the left
    CHECK(measure_at(plan, "candidate_anchors_m[0][0]")->value == 90.0);
    CHECK(measure_at(plan, "candidate_anchors_m[0][1]")->value == 2.5);
    CHECK(!set_measure(plan, "candidate_anchors_m[0][0]", 361.0));
    CHECK(!set_measure(plan, "candidate_anchors_m[0][1]", std::nan("")));
    CHECK(!set_measure(plan, "candidate_anchors_m[1][0]", 5.0));
    CHECK(plan.candidate_anchors_m[0] == at_m);
    CHECK(!measure_at(plan, "candidate_anchors_m[1][0]"));
    CHECK(measure_at(plan, "edge.face_deg")->value == plan.edge.face_deg);
}

TEST_CASE("found anchors: one goes with what is missing of it, the others keep theirs; no more than the plan can hold") {
    Plan plan = with_anchors_found(static_cast<int>(k_max_candidate_anchors));
    CHECK(!edit(plan, AddFoundAnchor{}).refused.empty());
    plan.not_measured = {"candidate_anchors_m[1][0]", "candidate_anchors_m[11][1]", "candidate_anchor_strengths_kN[1]", "candidate_anchor_strengths_kN[11]"};
    const Vec3 last_m = plan.candidate_anchors_m[11];
    CHECK(edit(plan, RemoveFoundAnchor{1}).refused.empty());
    CHECK(plan.not_measured == std::vector<std::string>{"candidate_anchors_m[10][1]", "candidate_anchor_strengths_kN[10]"});
    CHECK(plan.candidate_anchors_m[10] == last_m);
    CHECK(plan.candidate_anchor_strengths_kN.size() == plan.candidate_anchors_m.size());
    CHECK(!edit(plan, RemoveFoundAnchor{11}).refused.empty());
}

TEST_CASE("found anchors: the choice in slices is the choice at once, and taking it gives its verdict") {
    const Plan plan = with_anchors_found(5);
    Advisor advisor(plan, evaluate(plan));
    answer(advisor, Question::Anchors);
    AnchorChoice at_once(plan);
    while (!at_once.done()) at_once.advance(100'000);
    REQUIRE(!advisor.anchors()->best_three().empty());
    REQUIRE(advisor.anchors()->best_three().size() == at_once.best_three().size());
    for (std::size_t i = 0; i < at_once.best_three().size(); ++i) CHECK(advisor.anchors()->best_three()[i].plan == at_once.best_three()[i].plan);
    const AnchorSet& best = advisor.anchors()->best_three()[0];
    Plan taken = plan;
    CHECK(edit(taken, TakeAnchors{best.plan.guys}).refused.empty());
    CHECK(taken == best.plan);
    CHECK(evaluate(taken).verdict == best.verdict);
}
