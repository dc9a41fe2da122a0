#include "engine/advice/change.hpp"
#include "engine/model/build_model.hpp"
#include "engine/plan/find_faults.hpp"
#include "engine/verdict/evaluate.hpp"
#include "wasm/app/advice_edits.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/app/plan_edits.hpp"
#include "wasm/app/starters.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace guywright;
using namespace guywright::app;

namespace {

std::string faults_of(const Plan& plan) {
    std::string text;
    for (const InputFault& f : find_faults(plan)) text += to_string(f) + "\n";
    return text;
}

/// A plan in which everything is entered.
Plan entered_plan() {
    Plan plan = new_plan();
    plan.not_measured.clear();
    return plan;
}

bool misses(const Plan& plan, std::string_view path) { return !is_measured(plan, path); }

Vec3 anchor_of(const Plan& plan, std::size_t guy) {
    const BuiltModel built = build_model(plan);
    REQUIRE(built.faults.empty());
    return built.model.guys[guy].anchor_m;
}

}  // namespace

TEST_CASE("new_plan: sound, and NOT CHECKED until every value is in") {
    Plan plan = new_plan();
    CHECK(faults_of(plan) == "");
    while (!plan.not_measured.empty()) {
        CHECK(evaluate(plan).verdict == Verdict::NotChecked);
        plan.not_measured.pop_back();
    }
    CHECK(evaluate(plan).verdict != Verdict::NotChecked);
}

TEST_CASE("AddGuy: where its anchor is has to be entered, the height too where it would be that of another anchor") {
    Plan plan = entered_plan();
    const auto asked = [&](double height_m) {
        plan.guys.back().anchor_height_m = height_m;
        plan.not_measured.clear();
        edit(plan, AddGuy{});
        return plan.not_measured;
    };
    CHECK(asked(0.0) == std::vector<std::string>{"guys[3].bearing_deg", "guys[3].inclination_deg", "guys[3].anchor_strength_kN"});
    CHECK(asked(-0.6) == std::vector<std::string>{"guys[4].bearing_deg", "guys[4].inclination_deg", "guys[4].anchor_strength_kN", "guys[4].anchor_height_m"});
}

TEST_CASE("remove_entry: paths of the entry go, later ones move down, others stay") {
    Plan plan = entered_plan();
    edit(plan, AddGuy{});
    plan.not_measured = {"guys[0].bearing_deg", "guys[1].parts", "guys[3].bearing_deg", "guys[3].strength_kN", "edge.face_deg"};
    CHECK(edit(plan, RemoveGuy{1}).refused.empty());
    CHECK(plan.guys.size() == 3);
    CHECK(plan.not_measured == std::vector<std::string>{"guys[0].bearing_deg", "guys[2].bearing_deg", "guys[2].strength_kN", "edge.face_deg"});
}

TEST_CASE("remove_entry: a list inside a list is told from its neighbour") {
    Plan plan = entered_plan();
    edit(plan, SetKind{FrameKind::AFrame});
    plan.not_measured = {"feet[0].ties[1].bearing_deg", "feet[1].ties[0].bearing_deg", "feet[1].ties[1].bearing_deg"};
    CHECK(edit(plan, RemoveFootTie{1, 0}).refused.empty());
    CHECK(plan.not_measured == std::vector<std::string>{"feet[0].ties[1].bearing_deg", "feet[1].ties[0].bearing_deg"});
}

TEST_CASE("SetKind: the kit is kept, feet stand evenly about where the foot was, the new measurements are missing") {
    Plan plan = entered_plan();
    plan.frame.legs[0].rating_kN = 33.0;
    plan.frame.legs[0].foot_m = {-2.4, 0.3, 0.0};
    plan.feet[0].friction = 0.27;
    CHECK(edit(plan, SetKind{FrameKind::AFrame}).refused.empty());
    CHECK(faults_of(plan) == "");
    REQUIRE(plan.frame.legs.size() == 2);
    CHECK(plan.frame.legs[1].rating_kN == 33.0);
    CHECK(plan.feet[1].friction == 0.27);
    const Vec3 middle = (plan.frame.legs[0].foot_m + plan.frame.legs[1].foot_m) / 2.0;
    CHECK(glm::length(middle - Vec3{-2.4, 0.3, 0.0}) < 0.05);
    CHECK(plan.frame.legs[0].foot_m.x == plan.frame.legs[1].foot_m.x);
    for (const char* path : {"frame.foot_m[0][0]", "frame.foot_m[1][1]", "frame.leg_length_m[1]", "frame.lean_deg", "guys[0].bearing_deg"})
        CHECK_MESSAGE(misses(plan, path), path);
    CHECK_FALSE(misses(plan, "frame.leg_length_m[0]"));
    CHECK_FALSE(misses(plan, "frame.leg_rating_kN[1]"));
    CHECK(build_model(plan).faults.empty());
}

TEST_CASE("SetKind: a tripod has no lean to measure, and back to one leg nothing is left of the others") {
    Plan plan = new_plan();
    edit(plan, SetKind{FrameKind::Tripod});
    CHECK(faults_of(plan) == "");
    CHECK(build_model(plan).faults.empty());
    CHECK_FALSE(misses(plan, "frame.lean_deg"));
    CHECK(misses(plan, "frame.leg_rating_kN[2]"));  // never entered for the first leg either
    edit(plan, AddHobble{0, 2});
    edit(plan, SetKind{FrameKind::Monopod});
    CHECK(faults_of(plan) == "");
    CHECK(plan.frame.hobbles.empty());
    CHECK(misses(plan, "frame.lean_deg"));
    CHECK(std::none_of(plan.not_measured.begin(), plan.not_measured.end(),
                       [](const std::string& p) { return p.find("m[1]") != std::string::npos && p.starts_with("frame."); }));
}

TEST_CASE("SetKind: what a third leg does not know is what the first does not, whatever is missing of the second or of a hobble") {
    Plan plan = entered_plan();
    edit(plan, SetKind{FrameKind::AFrame});
    edit(plan, AddHobble{0, 1});
    plan.feet[1].ties.resize(1);
    plan.not_measured = {"feet[0].friction", "feet[1].ties[0].bearing_deg", "frame.hobbles[0].strength_kN", "frame.foot_m[1][0]"};
    edit(plan, SetKind{FrameKind::Tripod});
    CHECK(faults_of(plan) == "");
    CHECK(misses(plan, "feet[2].friction"));
    CHECK(misses(plan, "feet[1].ties[0].bearing_deg"));
    CHECK_FALSE(misses(plan, "feet[2].ties[0].bearing_deg"));
}

TEST_CASE("SetKind: a frame that leaned along the edge leans over it, for two feet side by side cannot lean along their line") {
    Plan plan = entered_plan();
    plan.frame.lean_bearing_deg = 90.0;
    plan.frame.lean_deg = 10.0;
    edit(plan, SetKind{FrameKind::AFrame});
    CHECK(build_model(plan).faults.empty());
}

TEST_CASE("SetAnchorByPosition: the anchor stays where it is, both ways, and is as well known as before") {
    Plan plan = entered_plan();
    plan.frame.lean_deg = 17.0;
    plan.guys[1].bearing_deg = 73.0;
    plan.guys[1].anchor_height_m = -0.4;
    const Vec3 before = anchor_of(plan, 1);
    CHECK(edit(plan, SetAnchorByPosition{1, true}).refused.empty());
    CHECK(plan.not_measured.empty());
    CHECK(glm::length(anchor_of(plan, 1) - before) < 1e-12);
    CHECK(edit(plan, SetAnchorByPosition{1, false}).refused.empty());
    CHECK(glm::length(anchor_of(plan, 1) - before) < 1e-9);
    CHECK(std::abs(plan.guys[1].bearing_deg - 73.0) < 1e-9);
    mark_not_measured(plan, "guys[1].inclination_deg");
    CHECK(edit(plan, SetAnchorByPosition{1, true}).refused.empty());
    CHECK(misses(plan, "guys[1].anchor_m[0]"));
    CHECK(faults_of(plan) == "");
}

TEST_CASE("SetAnchorByPosition: an anchor above the head has no inclination and stays entered by position") {
    Plan plan = entered_plan();
    plan.guys[0].anchor_m = Vec3{-5.0, 0.0, 9.0};
    const Edited done = edit(plan, SetAnchorByPosition{0, false});
    CHECK(done.refused.find("too high") != std::string::npos);
    CHECK(plan.guys[0].anchor_m.has_value());
}

TEST_CASE("ropes: shares always carry the whole load, the last rope stays") {
    Plan plan = entered_plan();
    for (int i = 0; i < 3; ++i) {
        CHECK(edit(plan, AddRope{}).refused.empty());
        CHECK(faults_of(plan) == "");
    }
    CHECK_FALSE(edit(plan, AddRope{}).refused.empty());
    while (plan.ropes.size() > 1) {
        CHECK(edit(plan, RemoveRope{0}).refused.empty());
        CHECK(faults_of(plan) == "");
    }
    CHECK(plan.ropes[0].share == 1.0);
    CHECK_FALSE(edit(plan, RemoveRope{0}).refused.empty());
}

TEST_CASE("a part that is not there is refused and nothing changes") {
    Plan plan = entered_plan();
    CHECK_FALSE(edit(plan, RemoveGuy{7}).refused.empty());
    CHECK_FALSE(edit(plan, AddHobble{0, 1}).refused.empty());
    CHECK_FALSE(edit(plan, RemoveFootTie{0, 5}).refused.empty());
    CHECK_FALSE(edit(plan, SetHaul{3, false}).refused.empty());
    CHECK(plan.guys.size() == 3);
    CHECK(plan.not_measured.empty());
}

namespace {

const std::vector<std::string> k_some_names{
    "back", "Back ", "left", "main", "", "   ", "\xC3\xA9t\xC3\xA9", "\xFF", "a\nb", std::string(40, 'x'), std::string(41, 'x')};

/// Takes an answer: a lever pulled, a lean, pretensions, other anchors. Made without asking whether it helps: the plan must bear it.
void random_advice(Plan& plan, std::mt19937& random) {
    const Plan asked = plan;
    switch (random() % 4) {
        case 0: {
            const std::vector<Lever> levers = levers_of(asked);
            const Lever& lever = levers[random() % levers.size()];
            Plan pulled = asked;
            const double by = lever.is_choice() ? 0.0 : lever.up.empty() ? -lever.down[0] : lever.up[random() % lever.up.size()];
            if ((lever.is_choice() && lever.choices() == 0) || !pull(lever, by, pulled)) return;
            Advice advice;
            advice.changes.push_back(change_of(asked, lever, by));
            edit(plan, TakeAdvice{advice});
            return;
        }
        case 1:
            edit(plan, TakeLean{{asked.frame.lean_deg, asked.frame.lean_bearing_deg}, {static_cast<double>(random() % 30), asked.frame.lean_bearing_deg}});
            return;
        case 2: edit(plan, TakePretensions{std::vector<double>(random() % 7, 0.3)}); return;
        default: {
            std::vector<GuyPlan> guys = asked.guys;
            if (!guys.empty()) guys.pop_back();
            edit(plan, TakeAnchors{guys});
        }
    }
}

/// One of all the edits, with indices that may or may not exist.
void random_edit(Plan& plan, std::mt19937& random) {
    const auto below = [&](unsigned n) { return random() % n; };
    const std::size_t i = below(5), j = below(4);
    const bool on = below(2) == 0;
    switch (below(24)) {
        case 0: edit(plan, SetKind{static_cast<FrameKind>(below(3))}); break;
        case 1: edit(plan, SetPole{i, on}); break;
        case 2: edit(plan, SetHeldDown{i, on}); break;
        case 3: edit(plan, AddHobble{static_cast<int>(below(3)), static_cast<int>(below(3))}); break;
        case 4: edit(plan, RemoveHobble{j}); break;
        case 5: edit(plan, SetOpening{on}); break;
        case 6: edit(plan, AddRope{}); break;
        case 7: edit(plan, RemoveRope{j}); break;
        case 8: edit(plan, SetHaul{j, on}); break;
        case 9: edit(plan, SetRopeStrength{j, on}); break;
        case 10: edit(plan, AddGuy{}); break;
        case 11: edit(plan, RemoveGuy{i}); break;
        case 12: edit(plan, SetAnchorByPosition{i, on}); break;
        case 13: edit(plan, AddFootTie{j}); break;
        case 14: edit(plan, RemoveFootTie{j, i}); break;
        case 15: edit(plan, SetCompass{on}); break;
        case 16: edit(plan, MoveGuy{i, on}); break;
        case 17: edit(plan, MoveRope{j, on}); break;
        case 18: edit(plan, SetText{(on ? "guys[" : "ropes[") + std::to_string(on ? i : j) + "].name", k_some_names[random() % k_some_names.size()]}); break;
        case 19: edit(plan, AddFoundAnchor{}); break;
        case 20: edit(plan, RemoveFoundAnchor{i}); break;
        case 21: edit(plan, GradeFoundAnchors{}); break;
        case 22: random_advice(plan, random); break;
        default: edit(plan, SetGuyLossJudged{on}); break;
    }
}

}  // namespace

TEST_CASE("edits: any sequence of them leaves a plan without a fault") {
    std::mt19937 random(20);
    for (int run = 0; run < 40; ++run) {
        Plan plan = run % 2 == 0 ? new_plan() : entered_plan();
        for (int step = 0; step < 60; ++step) {
            random_edit(plan, random);
            REQUIRE(faults_of(plan) == "");
        }
    }
}
