#include "engine/checks/check.hpp"
#include "tests/support/within.hpp"

#include <set>
#include <string_view>

using namespace guywright;

TEST_CASE("check table: keys all different") {  // its order is asserted where it stands
    std::set<std::string_view> keys;
    for (const CheckInfo& row : k_checks) CHECK(keys.insert(row.key).second);
}

TEST_CASE("limit_check: a most - at the limit it is kept, above it is broken") {
    const Check at = limit_check(CheckId::LegStrength, 2, 4.0, 4.0, 7);
    CHECK(at.status == CheckStatus::Pass);
    CHECK(at.margin == 0.0);
    CHECK(at.has_margin);
    CHECK(at.subject == 2);
    CHECK(at.case_index == 7);
    CHECK(limit_check(CheckId::LegStrength, 0, std::nextafter(4.0, 5.0), 4.0, 0).status == CheckStatus::Fail);
    CHECK_WITHIN(limit_check(CheckId::LegStrength, 0, 1.0, 4.0, 0).margin, 0.75, 1e-15);
    CHECK_WITHIN(limit_check(CheckId::LegStrength, 0, 6.0, 4.0, 0).margin, -0.5, 1e-15);
}

TEST_CASE("limit_check: a least - at the limit it is kept, below it is broken") {
    CHECK(limit_check(CheckId::GuyAngle, 0, 30.0, 30.0, 0).status == CheckStatus::Pass);
    CHECK(limit_check(CheckId::GuyAngle, 0, std::nextafter(30.0, 0.0), 30.0, 0).status == CheckStatus::Fail);
    CHECK_WITHIN(limit_check(CheckId::GuyAngle, 0, 45.0, 30.0, 0).margin, 0.5, 1e-15);
}

TEST_CASE("limit_check: a second limit cautions between it and the first") {
    const auto status = [](double v) { return limit_check(CheckId::GuyAngle, 0, v, 30.0, 45.0, 0).status; };
    CHECK(status(29.99) == CheckStatus::Fail);
    CHECK(status(30.0) == CheckStatus::Caution);
    CHECK(status(44.99) == CheckStatus::Caution);
    CHECK(status(45.0) == CheckStatus::Pass);
    const auto most = [](double v) { return limit_check(CheckId::HeadShift, 0, v, 15.0, 5.0, 0).status; };
    CHECK(most(5.0) == CheckStatus::Pass);
    CHECK(most(5.01) == CheckStatus::Caution);
    CHECK(most(15.01) == CheckStatus::Fail);
}

TEST_CASE("limit_check: what is not a number fails, as value and as limit") {
    const double nan = std::nan("");
    for (const CheckId id : {CheckId::LegStrength, CheckId::GuyAngle}) {
        CHECK(limit_check(id, 0, nan, 4.0, 0).status == CheckStatus::Fail);
        CHECK(limit_check(id, 0, 4.0, nan, 0).status == CheckStatus::Fail);
        CHECK(limit_check(id, 0, nan, 4.0, 5.0, 0).status == CheckStatus::Fail);
    }
}

TEST_CASE("limit_check: against a limit of nothing, nothing passes and anything more fails") {
    CHECK(limit_check(CheckId::FootFriction, 0, 0.0, 0.0, 0).status == CheckStatus::Pass);
    CHECK(limit_check(CheckId::FootFriction, 0, 0.01, 0.0, 0).status == CheckStatus::Fail);
    CHECK_WITHIN(limit_check(CheckId::FootFriction, 0, 0.01, 0.0, 0).margin, -0.01, 1e-15);
}

TEST_CASE("CheckTable: of one rule on one part only the worst case stays, whatever the order") {
    const Check mild = limit_check(CheckId::GuyStrength, 1, 1.0, 4.0, 3), hard = limit_check(CheckId::GuyStrength, 1, 3.0, 4.0, 5);
    const Check broken = limit_check(CheckId::GuyStrength, 1, 5.0, 4.0, 6);
    for (const bool hard_first : {true, false}) {
        CheckTable table;
        table.add(hard_first ? hard : mild);
        table.add(hard_first ? mild : hard);
        REQUIRE(table.find(CheckId::GuyStrength, 1) != nullptr);
        CHECK(table.find(CheckId::GuyStrength, 1)->case_index == 5);
        table.add(broken);
        table.add(mild);
        CHECK(table.find(CheckId::GuyStrength, 1)->case_index == 6);
        CHECK(table.find(CheckId::GuyStrength, 0) == nullptr);
        CHECK(table.find(CheckId::AnchorStrength, 1) == nullptr);
    }
}

TEST_CASE("CheckTable: a failure stays though a later case has the smaller margin but only cautions") {
    CheckTable table;
    table.add(yes_no_check(CheckId::FootLifts, 0, CheckStatus::Fail, 0.2, 0.0, 1));
    table.add(yes_no_check(CheckId::FootLifts, 0, CheckStatus::Pass, 0.9, 0.0, 2));
    CHECK(table.find(CheckId::FootLifts)->case_index == 1);
}

TEST_CASE("CheckTable: among answers without a margin the farther value stays") {
    CheckTable table;
    table.add(yes_no_check(CheckId::GuySlack, 0, CheckStatus::Caution, 3.0, 0.0, 1));
    table.add(yes_no_check(CheckId::GuySlack, 0, CheckStatus::Caution, 8.0, 0.0, 2));
    table.add(yes_no_check(CheckId::GuySlack, 0, CheckStatus::Caution, 5.0, 0.0, 3));
    CHECK(table.find(CheckId::GuySlack)->case_index == 2);
    table.add(yes_no_check(CheckId::EdgeZone, 0, CheckStatus::Caution, 1.0, 2.0, 1));
    table.add(yes_no_check(CheckId::EdgeZone, 0, CheckStatus::Caution, 0.5, 2.0, 2));
    CHECK(table.find(CheckId::EdgeZone)->case_index == 2);  // here less is worse
}

TEST_CASE("CheckTable: rows come in the order of the rules, then of the parts") {
    CheckTable table;
    table.add(limit_check(CheckId::FootTies, 0, 1, 2, 0));
    table.add(limit_check(CheckId::GuyAngle, 1, 40, 30, 0));
    table.add(limit_check(CheckId::GuyAngle, 0, 40, 30, 0));
    std::string seen;
    table.for_each([&](const Check& c) { seen += std::string(info(c.id).key) + std::to_string(c.subject) + " "; });
    CHECK(seen == "guy_angle0 guy_angle1 foot_ties0 ");
}
