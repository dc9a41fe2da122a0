#include "engine/plan/find_faults.hpp"
#include "engine/plan/numbers.hpp"
#include "wasm/app/names.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/app/plan_edits.hpp"
#include "wasm/app/starters.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace guywright;
using namespace guywright::app;

namespace {

std::string refusal(Plan& plan, std::string path, std::string value) { return edit(plan, SetText{std::move(path), std::move(value)}).refused; }

bool has(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("SetText: names and the title are taken without the blanks around them") {
    Plan plan = new_plan();
    CHECK(refusal(plan, "guys[1].name", "  north tree ") == "");
    CHECK(plan.guys[1].name == "north tree");
    CHECK(refusal(plan, "ropes[0].name",
                  "B\xC3\xA9"
                  "al 1") == "");
    CHECK(plan.ropes[0].name ==
          "B\xC3\xA9"
          "al 1");
    CHECK(refusal(plan, "title", "Quarry dam, bay 3") == "");
    CHECK(plan.title == "Quarry dam, bay 3");
    CHECK(find_faults(plan).empty());
}

TEST_CASE("SetText: a refusal says why and changes nothing") {
    Plan plan = new_plan();  // guys back, right, left
    const Plan before = plan;
    for (const char* empty : {"", "   ", "-", "!?"}) CHECK_MESSAGE(has(refusal(plan, "guys[1].name", empty), "at least one letter"), empty);
    CHECK(has(refusal(plan, "title", ""), "at least one letter"));
    CHECK(refusal(plan, "guys[1].name", std::string(41, 'x')) == "That is 41 characters; at most 40 fit.");
    CHECK(refusal(plan, "title", std::string(81, 'x')) == "That is 81 characters; at most 80 fit.");
    CHECK(refusal(plan, "guys[1].name", "left") == "Another guy is called \"left\". Every guy needs a name of its own.");
    CHECK(has(refusal(plan, "guys[1].name", " LEFT "), "\"left\""));
    for (const char* strange : {"\xC5\x81"
                                "awa",
                                "\xF0\x9F\xA7\x97", "a\tb", "a\nb",
                                "\xE2\x80\xAE"
                                "cba",
                                "a\xFF"})
        CHECK_MESSAGE(has(refusal(plan, "guys[1].name", strange), "no sign for"), strange);
    for (const char* path : {"guys[3].name", "note", "not_measured[0]", "guys[0].bearing_deg", "", "guys[0].name.name"})
        CHECK_MESSAGE(refusal(plan, path, "x") != "", path);
    CHECK(plan == before);
}

TEST_CASE("SetText: the letters that the face has beyond Latin-1 are taken, and no sign that it lacks") {
    Plan plan = new_plan();
    for (const char* drawn : {"N\u0153ud", "\u0152uvre", "\u0160ibenik \u0161", "\u0178", "10 \u20AC", "pont \u2013 rive", "\u00ABA\u00BB \u2026"})
        CHECK_MESSAGE(refusal(plan, "guys[0].name", drawn) == "", drawn);
    for (const char* lacking : {"\u017Eivo", "\u0142", "\u010D", "\u2011x", "\u2012x", "\u2024x"})
        CHECK_MESSAGE(has(refusal(plan, "guys[0].name", lacking), "no sign for"), lacking);
}

TEST_CASE("SetText: a refusal in French, and new parts named in it") {
    const Speech french{Tongue::French, {}};
    Plan plan = new_plan(french);
    CHECK(plan.title == "Nouveau montage");
    CHECK(plan.guys[0].name == "arri\u00E8re");
    CHECK(edit(plan, SetText{"guys[1].name", "gauche"}, french).refused == "Un autre hauban s'appelle \"gauche\". \u00C0 chaque hauban son propre nom.");
    edit(plan, AddGuy{}, french);
    CHECK(plan.guys.back().name == "hauban 4");
    CHECK(edit(plan, RemoveRope{0}, french).refused == "Un plan a au moins une corde.");
    CHECK(find_faults(plan).empty());
}

TEST_CASE("SetText: a guy keeps its own name, in other letters too; a rope may be called as a guy is") {
    Plan plan = new_plan();
    CHECK(refusal(plan, "guys[2].name", "Left") == "");
    CHECK(plan.guys[2].name == "Left");
    CHECK(refusal(plan, "ropes[0].name", "left") == "");
}

TEST_CASE("SetText: guy 1 is told from guy 10 and later") {
    Plan plan = new_plan();
    while (plan.guys.size() < k_max_guys) edit(plan, AddGuy{});
    for (std::size_t i = 0; i < plan.guys.size(); ++i) CHECK(refusal(plan, "guys[" + std::to_string(i) + "].name", "g" + std::to_string(i)) == "");
    CHECK(has(refusal(plan, "guys[7].name", "g0"), "\"g0\""));
}

TEST_CASE("text_wish: what is asked for, with the present text") {
    const Plan plan = new_plan();
    const auto wish = text_wish(plan, "guys[1].name");
    REQUIRE(wish.has_value());
    CHECK(wish->label == "Name of guy right");
    CHECK(wish->value == "right");
    CHECK(text_wish(plan, "title")->value == plan.title);
    CHECK_FALSE(text_wish(plan, "guys[9].name").has_value());
}

TEST_CASE("MoveGuy: the guy goes with what is not measured of it, and back again to the same plan") {
    Plan plan = new_plan();
    plan.not_measured = {"guys[0].bearing_deg", "guys[1].parts", "guys[2].bearing_deg", "edge.face_deg"};
    const Plan before = plan;
    const Edited moved = edit(plan, MoveGuy{1, true});
    CHECK(moved.refused == "");
    CHECK(moved.show == order_item("guys", 0));
    CHECK(plan.guys[0].name == "right");
    CHECK(plan.guys[1].name == "back");
    CHECK(plan.not_measured == std::vector<std::string>{"guys[1].bearing_deg", "guys[0].parts", "guys[2].bearing_deg", "edge.face_deg"});
    CHECK(edit(plan, MoveGuy{0, false}).refused == "");
    CHECK(plan == before);
}

TEST_CASE("MoveGuy: not past the ends, and not what is not there") {
    Plan plan = new_plan();
    const Plan before = plan;
    for (const MoveGuy& wish : {MoveGuy{0, true}, MoveGuy{2, false}, MoveGuy{3, true}, MoveGuy{99, false}}) CHECK(edit(plan, wish).refused != "");
    CHECK(plan == before);
}

TEST_CASE("MoveRope: the rope goes with its share and what is not measured of it") {
    Plan plan = new_plan();
    edit(plan, AddRope{});
    plan.ropes[0].share = 0.7;
    plan.not_measured = {"ropes[1].load_kg", "ropes[0].haul.bearing_deg"};
    CHECK(edit(plan, MoveRope{1, true}).refused == "");
    CHECK(plan.ropes[1].share == 0.7);
    CHECK(plan.not_measured == std::vector<std::string>{"ropes[0].load_kg", "ropes[1].haul.bearing_deg"});
    CHECK(find_faults(plan).empty());
}

TEST_CASE("moves: whatever the order, each guy has its own numbers missing") {
    std::mt19937 random(7);
    Plan plan = new_plan();
    while (plan.guys.size() < 6) edit(plan, AddGuy{});
    plan.not_measured.clear();
    for (std::size_t i = 0; i < plan.guys.size(); i += 2) mark_not_measured(plan, "guys[" + std::to_string(i) + "].parts");
    for (std::size_t i = 0; i < plan.guys.size(); ++i) plan.guys[i].parts = i % 2 == 0 ? 1 : 2;  // 1: not measured
    for (int step = 0; step < 300; ++step) {
        edit(plan, MoveGuy{random() % 6, random() % 2 == 0});
        for (std::size_t i = 0; i < plan.guys.size(); ++i) REQUIRE(is_measured(plan, "guys[" + std::to_string(i) + "].parts") == (plan.guys[i].parts == 2));
    }
}
