#include "engine/checks/drawing_checks.hpp"
#include "engine/model/build_model.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::guy;
using support::usual_plan;

namespace {

CheckTable drawn(const Plan& p) {
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.empty());
    CheckTable table;
    check_drawing(table, p, b.model);
    return table;
}

CheckStatus status(const Plan& p, CheckId id, std::size_t subject = 0) {
    const CheckTable table = drawn(p);
    const Check* c = table.find(id, subject);
    REQUIRE(c != nullptr);
    return c->status;
}

/// An upright leg: a guy's angle to it is what its inclination leaves of 90 degrees.
Plan upright(std::vector<GuyPlan> guys) {
    Plan p = usual_plan();
    p.frame.lean_deg = 0.0;
    p.guys = std::move(guys);
    return p;
}

CheckStatus angle_status(double guy_angle_deg) { return status(upright({guy("back", 180, 90.0 - guy_angle_deg)}), CheckId::GuyAngle); }

CheckStatus gap_status(std::vector<double> bearings_deg) {
    Plan p = upright({});
    for (const double b : bearings_deg) p.guys.push_back(guy("guy", b, 40));
    return status(p, CheckId::BearingGap);
}

/// Head so far behind the edge, upright, with guys behind and, if wanted, one just ahead.
CheckStatus front_tie_status(double behind_m, bool guy_ahead) {
    Plan p = upright({guy("back", 180, 45), guy("side", guy_ahead ? 80 : 100, 45), guy("other", 260, 45)});
    p.frame.legs[0].foot_m = {-behind_m, 0, 0};
    return status(p, CheckId::FrontTie);
}

}  // namespace

TEST_CASE("guy angle: NO-GO under 30, caution under 45, at the limit kept") {
    CHECK(angle_status(29.999) == CheckStatus::Fail);
    CHECK(angle_status(30.0) == CheckStatus::Caution);
    CHECK(angle_status(30.001) == CheckStatus::Caution);
    CHECK(angle_status(44.999) == CheckStatus::Caution);
    CHECK(angle_status(45.0) == CheckStatus::Pass);
    CHECK(angle_status(60.0) == CheckStatus::Pass);
}

TEST_CASE("guy angle: the lean counts, and every guy is judged by itself") {
    Plan p = usual_plan();  // leans 22 forward
    p.guys = {guy("back", 180, 39), guy("front", 0, 70), guy("steep", 180, 37.5)};
    CHECK(status(p, CheckId::GuyAngle, 0) == CheckStatus::Fail);     // 90 - 22 - 39 = 29
    CHECK(status(p, CheckId::GuyAngle, 1) == CheckStatus::Caution);  // 90 + 22 - 70 = 42
    CHECK(status(p, CheckId::GuyAngle, 2) == CheckStatus::Caution);
    CHECK_WITHIN(drawn(p).find(CheckId::GuyAngle, 1)->value, 42.0, 1e-6);
}

TEST_CASE("bearing gap: NO-GO at 180 and over, caution over 150") {
    CHECK(gap_status({0, 120, 240}) == CheckStatus::Pass);
    CHECK(gap_status({0, 105, 210}) == CheckStatus::Pass);  // 150
    CHECK(gap_status({0, 104.99, 209.99}) == CheckStatus::Caution);
    CHECK(gap_status({0, 90, 180.001}) == CheckStatus::Caution);
    CHECK(gap_status({0, 90, 180}) == CheckStatus::Fail);
    CHECK(gap_status({0, 90, 179.999}) == CheckStatus::Fail);
}

TEST_CASE("bearing gap: the gap across north counts, the order of the list does not") {
    CHECK(gap_status({170, 350, 80}) == CheckStatus::Fail);
    CHECK(gap_status({240, 0, 120}) == CheckStatus::Pass);
    CHECK(gap_status({350, 110, 230}) == CheckStatus::Pass);
    CHECK(gap_status({100, 260}) == CheckStatus::Fail);
}

TEST_CASE("bearing gap: one guy or none leaves the whole circle open") {
    CHECK(gap_status({180}) == CheckStatus::Fail);
    CHECK(gap_status({}) == CheckStatus::Fail);
    CHECK(drawn(upright({})).find(CheckId::BearingGap)->value == 360.0);
}

TEST_CASE("bearing gap: an anchor straight under the head lies on no bearing and closes no gap") {
    Plan p = usual_plan();
    p.guys = {guy("right", 100, 40), guy("left", 260, 40), guy("plumb", 0, 40)};
    const Vec3 head_m = build_model(p).model.drawn_head_m;
    p.guys[2].anchor_m = Vec3(head_m.x, head_m.y, 0.0);
    CHECK(status(p, CheckId::BearingGap) == CheckStatus::Fail);
    CHECK_WITHIN(drawn(p).find(CheckId::BearingGap)->value, 200.0, 1e-6);
}

TEST_CASE("front tie: within half a metre of the edge a guy must be anchored ahead of the head") {
    CHECK(front_tie_status(0.501, false) == CheckStatus::Pass);
    CHECK(front_tie_status(0.5, false) == CheckStatus::Pass);
    CHECK(front_tie_status(0.499, false) == CheckStatus::Fail);
    CHECK(front_tie_status(-0.3, false) == CheckStatus::Fail);
    CHECK(front_tie_status(0.499, true) == CheckStatus::Pass);
    CHECK(front_tie_status(-0.3, true) == CheckStatus::Pass);
}

TEST_CASE("front tie: the head counts, not the foot") {
    Plan p = upright({guy("back", 180, 45), guy("right", 100, 45), guy("left", 260, 45)});
    p.frame.legs[0].foot_m = {-1.2, 0, 0};
    p.frame.lean_deg = 20.0;  // head at -1.2 + 0.92
    CHECK(status(p, CheckId::FrontTie) == CheckStatus::Fail);
}

TEST_CASE("hanging: past a vertical edge everything does, behind it nothing") {
    Edge e;
    CHECK_FALSE(hangs_in_air({-1, 0, 3.0}, e));
    CHECK_FALSE(hangs_in_air({0, 0, 0}, e));
    CHECK(hangs_in_air({0.001, 0, 0}, e));
    CHECK(hangs_in_air({0.5, 0, -30}, e));
    e.face_deg = 110;
    CHECK(hangs_in_air({0.5, 0, -30}, e));
}

TEST_CASE("hanging: over a slope up to 0.3 m above the face is on it") {
    Edge e;
    e.face_deg = 45;
    CHECK_FALSE(hangs_in_air({2, 0, -2.5}, e));
    CHECK_FALSE(hangs_in_air({2, 0, -1.701}, e));
    CHECK(hangs_in_air({2, 0, -1.699}, e));
}

TEST_CASE("hanging: ground begins again where the opening ends") {
    Edge e;
    e.opening_m = 1.5;
    CHECK(hangs_in_air({1.499, 0, 0}, e));
    CHECK_FALSE(hangs_in_air({1.5, 0, 0}, e));
    CHECK_FALSE(hangs_in_air({4, 0, 0}, e));
}

TEST_CASE("hanging: an anchor or a foot in the air is NO-GO and named") {
    Plan p = usual_plan();
    CHECK(status(p, CheckId::AnchorHangs, 0) == CheckStatus::Pass);
    p.guys[1].anchor_m = Vec3(0.4, -3, 0);
    CHECK(status(p, CheckId::AnchorHangs, 1) == CheckStatus::Fail);
    CHECK(status(p, CheckId::AnchorHangs, 0) == CheckStatus::Pass);
    CHECK(status(p, CheckId::FootHangs) == CheckStatus::Pass);
    p.frame.legs[0].foot_m = {0.1, 0, -1};
    CHECK(status(p, CheckId::FootHangs) == CheckStatus::Fail);
}

TEST_CASE("edge zone: a foot nearer than 2 m cautions") {
    Plan p = usual_plan();
    p.frame.legs[0].foot_m.x = -2.0;
    CHECK(status(p, CheckId::EdgeZone) == CheckStatus::Pass);
    p.frame.legs[0].foot_m.x = -1.99;
    CHECK(status(p, CheckId::EdgeZone) == CheckStatus::Caution);
}

TEST_CASE("a team may tighten a limit: it is applied, and not called loosened") {
    Plan p = upright({guy("back", 180, 55)});  // 35 to the leg
    p.limits.guy_angle_min_deg = 40.0;
    CHECK(status(p, CheckId::GuyAngle) == CheckStatus::Fail);
    CHECK(drawn(p).find(CheckId::LimitLoosened, 0) == nullptr);
}

TEST_CASE("every limit: loosened it cautions by its own row, at or within common practice it does not") {
    for (std::size_t i = 0; i < k_limit_rules.size(); ++i) {
        const detail::LimitRule& rule = k_limit_rules[i];
        CAPTURE(std::string(rule.key));
        const double usual = Limits{}.*rule.value;
        Plan p = usual_plan();
        CHECK(drawn(p).find(CheckId::LimitLoosened, i) == nullptr);
        p.limits.*rule.value = rule.lower_is_looser ? usual * 0.99 : usual * 1.01;
        REQUIRE(drawn(p).find(CheckId::LimitLoosened, i) != nullptr);
        CHECK(drawn(p).find(CheckId::LimitLoosened, i)->status == CheckStatus::Caution);
        p.limits.*rule.value = rule.lower_is_looser ? usual * 1.01 : usual * 0.99;
        CHECK(drawn(p).find(CheckId::LimitLoosened, i) == nullptr);
    }
}

TEST_CASE("arrest, swing and measuring error: left out they caution, looked at they do not") {
    const auto left_out = [](auto change) {
        Plan p = usual_plan();
        change(p);
        const CheckTable table = drawn(p);
        std::vector<CheckId> found;
        for (const CheckId id : {CheckId::ArrestLeftOut, CheckId::SwingLeftOut, CheckId::ErrorLeftOut})
            if (const Check* c = table.find(id)) {
                CHECK(c->status == CheckStatus::Caution);
                found.push_back(id);
            }
        return found;
    };
    using Found = std::vector<CheckId>;
    CHECK(left_out([](Plan& p) { p.tolerances = Tolerances{}; }).empty());
    CHECK(left_out([](Plan& p) {
              p.actions = {.dynamic_factor = 1.1, .swing_deg = 1.0, .outward_deg = 0.0};
              p.tolerances = {1, 1, 1, 1, 0.01, 1, 5};
          }).empty());
    CHECK(left_out([](Plan& p) {
              p.tolerances = Tolerances{};
              p.actions.dynamic_factor = 1.0;
          }) == Found{CheckId::ArrestLeftOut});
    CHECK(left_out([](Plan& p) {
              p.tolerances = Tolerances{};
              p.actions.swing_deg = 0.0;
          }) == Found{CheckId::SwingLeftOut});
    for (double Tolerances::*error : {&Tolerances::bearing_deg, &Tolerances::inclination_deg, &Tolerances::lean_deg, &Tolerances::face_deg,
                                      &Tolerances::distance_m, &Tolerances::load_percent, &Tolerances::pretension_percent})
        CHECK(left_out([&](Plan& p) {
                  p.tolerances = Tolerances{};
                  p.tolerances.*error = 0.0;
              }) == Found{CheckId::ErrorLeftOut});
}

TEST_CASE("looser is: smaller angles to the leg, wider gaps, more movement, smaller safety factors") {
    // by name, so that a sign turned round in the table shows
    const auto lower_is_looser = [](std::string_view key) {
        for (const auto& r : k_limit_rules)
            if (r.key == key) return r.lower_is_looser;
        FAIL("no such limit");
        return false;
    };
    for (const char* key : {"guy_angle_min_deg", "guy_angle_good_deg", "head_to_edge_m", "edge_zone_m", "factor_soft", "factor_metal", "factor_anchor",
                            "arrest_factor_soft", "arrest_factor_metal", "arrest_factor_anchor"})
        CHECK(lower_is_looser(key));
    for (const char* key : {"bearing_gap_max_deg", "bearing_gap_good_deg", "applied_force_angle_good_deg", "head_shift_good_percent", "head_shift_max_percent"})
        CHECK_FALSE(lower_is_looser(key));
}
