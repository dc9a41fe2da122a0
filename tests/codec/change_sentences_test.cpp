#include "engine/codec/change_sentences.hpp"
#include "engine/codec/english.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/report.hpp"
#include "engine/command_line/card_text.hpp"
#include "tests/support/near_sound.hpp"
#include "tests/support/words.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

using namespace guywright;

namespace {

using support::holds;

/// Too little pretension in one guy.
Plan loose_plan() {
    Plan p = support::go_plan();
    p.frame.lean_deg = 5.0;
    p.guys[2].pretension_kN = 0.1;
    p.ropes[0].load_kg = 110.0;
    return p;
}

Change change_by(const Plan& p, Input input, double by, std::size_t subject = 0) {
    for (const Lever& lever : levers_of(p))
        if (lever.input == input && lever.subject == subject) return change_of(p, lever, by);
    FAIL("no such lever");
    return {};
}

std::string told(const Plan& p, Input input, double by, std::size_t subject = 0) { return sentence({k_english}, p, change_by(p, input, by, subject)); }

}  // namespace

TEST_CASE("change sentence: what, to how much, from how much") {
    const Plan p = support::go_plan();
    CHECK(told(p, Input::Pretension, 0.25, 2) == "Set the pretension of guy right to 0.55 kN (now 0.30 kN).");
    CHECK(told(p, Input::Parts, 1.0, 0) == "Rig guy back right with 4 parts (now 3).");
    CHECK(told(p, Input::FootOutAnchorsStay, -0.35).starts_with("Move the foot 0.35 m away from the edge;"));
    CHECK(told(p, Input::FootSideAnew, 0.35).starts_with("Move the foot 0.35 m to the left "));
    CHECK(told(p, Input::AddFootTie, 3.0) == "Tie the foot toward bearing 45 deg.");
    CHECK(told(support::sound_a_frame(), Input::AddFootTie, 3.0, 1) == "Leg 2: tie the foot toward bearing 45 deg.");
    CHECK(told(p, Input::Load, -12.5) == "Bring the load down to 137.5 kg (now 150 kg).");
}

TEST_CASE("change sentence: a value is told with all its digits, never rounded to the side that fails") {
    Plan p = support::go_plan();
    CHECK(holds(told(p, Input::GuyBearing, 4.15, 2), "bearing 74.15 deg (now 70 deg)"));
    CHECK(holds(told(p, Input::Pretension, 0.155, 2), "0.455 kN"));
    CHECK(holds(sentence({k_french}, p, change_by(p, Input::Pretension, 0.155, 2)), "0,455 kN"));
    CHECK(holds(sentence({k_english, UnitSystem::Imperial}, p, change_by(p, Input::FootOutAnew, -0.3048)), "1.00 ft away from the edge"));
}

TEST_CASE("change sentence: every change of many plans has one in every language, without a gap") {
    std::set<Input> met;
    for (std::uint64_t i = 1; i <= 16; ++i) {
        const Plan p = support::random_spoilt(i);
        for (const Lever& lever : levers_of(p)) {
            const double by = lever.is_choice() ? 1.0 : !lever.up.empty() ? lever.up.front() : lever.down.empty() ? 0.0 : -lever.down.front();
            Plan changed = p;
            if (!pull(lever, by, changed)) continue;
            met.insert(lever.input);
            for (const Language& words : {k_english, k_french}) {
                const std::string s = sentence({words}, p, change_of(p, lever, by));
                CAPTURE(s);
                CHECK(s.size() > 15);
                CHECK(s.back() == '.');
                CHECK(s.find_first_of("{}") == std::string::npos);
                CHECK(s.find("  ") == std::string::npos);
                CHECK(s.find("nan") == std::string::npos);
            }
        }
    }
    CHECK(met.size() == k_input_count);
}

TEST_CASE("report: each advice with every edit it takes, and the map; nothing of it where it was not computed") {
    const Plan p = loose_plan();
    const Evaluation e = evaluate(p);
    REQUIRE(e.verdict == Verdict::NoGo);
    const Counsel counsel = counsel_for(p, e);
    OrderedJson r = OrderedJson::parse(write_report(p, e, {}, counsel), nullptr, false);
    REQUIRE(r["advice"].size() == counsel.change->advice().size());
    CHECK(r["advice"][0]["input"] == "guys[2].pretension_kN");
    CHECK(r["advice"][0]["from"] == 0.1);
    CHECK(r["advice"][0]["to"] == counsel.change->advice()[0].changes[0].to);
    CHECK(r["advice"][0]["edits"][0]["path"] == "guys[2].pretension_kN");
    CHECK_FALSE(r.contains("out_of_reach"));
    CHECK_FALSE(r.contains("anchor_choice"));
    CHECK(r["map"]["margin"].size() == k_report_rings + 1);
    CHECK(r["map"]["margin"][1].size() == k_report_bearings);
    CHECK(r["map"]["guys"].size() == 4);
    OrderedJson plain = OrderedJson::parse(write_report(p, e), nullptr, false);
    for (const char* key : {"advice", "out_of_reach", "anchor_choice", "map"}) CHECK_FALSE(plain.contains(key));
}

TEST_CASE("card: what would change it, the least effort first; where nothing does, what stays out of reach") {
    Plan p = loose_plan();
    Evaluation e = evaluate(p);
    const std::string mended = card_text({k_english}, p, e, {}, counsel_for(p, e));
    CHECK(holds(mended, "What would change it, the least effort first\n  - Set the pretension of guy right to "));
    CHECK(holds(mended, "more in the report."));
    p.ropes[0].strength_kN = 2.0;
    e = evaluate(p);
    const std::string hopeless = card_text({k_english}, p, e, {}, counsel_for(p, e));
    CHECK(holds(hopeless, "No change in reach gives GO."));
    CHECK(holds(hopeless, "Rope main carries"));
    const Plan go = support::go_plan();
    e = evaluate(go);
    CHECK_FALSE(holds(card_text({k_english}, go, e, {}, counsel_for(go, e)), "What would change it"));
}

TEST_CASE("card and report: the best anchors of those found") {
    Plan p = support::go_plan();
    for (const double bearing_deg : {40.0, 150.0, 260.0, 320.0}) {
        const Vec3 at_m = plumb_point(*drawn_head_of(p)) + 4.5 * along_bearing(radians(bearing_deg));
        p.candidate_anchors_m.push_back({std::min(at_m.x, -0.2), at_m.y, 0.0});
    }
    const Evaluation e = evaluate(p);
    const Counsel counsel = counsel_for(p, e);
    const OrderedJson r = OrderedJson::parse(write_report(p, e, {}, counsel), nullptr, false);
    CHECK(r["anchor_choice"]["four"].size() == 1);
    CHECK(r["anchor_choice"]["three"].size() == AnchorChoice::k_told);
    CHECK(holds(card_text({k_english}, p, e, {}, counsel), "  - Anchors "));
}
