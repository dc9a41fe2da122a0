#include "engine/codec/english.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/sentences.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/words.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

using namespace guywright;

namespace {

using support::marks;

std::string told(const Check& c, const Plan& plan = support::usual_plan()) { return sentence({k_english}, plan, evaluate(plan), c); }

void check_whole(const std::string& s, std::string_view key) {
    INFO(std::string(key), " ", s);
    CHECK(s.size() > 10);
    CHECK(s.back() == '.');
    CHECK(s.find_first_of("{}") == std::string::npos);
    CHECK(s.find("  ") == std::string::npos);
}

}  // namespace

TEST_CASE("sentence: subject, value, limit and case in plain words") {
    CHECK(told(limit_check(CheckId::GuyStrength, 0, 2.1, 1.47, 6)) == "Guy back carries 2.10 kN in an arrest; its cord may carry only 1.47 kN.");
    CHECK(told(limit_check(CheckId::GuyStrength, 1, 1.2, 1.47, 2)) == "Guy right carries 1.20 kN when raising; its cord may carry 1.47 kN.");
    CHECK(told(limit_check(CheckId::GuyAngle, 2, 25.0, 30.0, k_no_case)).starts_with("Guy left stands 25 deg off the leg and must stand at least 30 deg off."));
    CHECK(told(yes_no_check(CheckId::FootLifts, 0, CheckStatus::Fail, 0.02, 0.0, 1)) == "The foot lifts by 0.02 m when holding.");
    CHECK(told(yes_no_check(CheckId::LimitLoosened, 9, CheckStatus::Caution, 8.0, 10.0, k_no_case)) ==
          "The limit factor_soft is set to 8.00; common practice is 10.00.");
}

TEST_CASE("sentence: distances from the edge say on which side") {
    CHECK(told(yes_no_check(CheckId::AnchorHangs, 0, CheckStatus::Fail, 0.94, 0.0, k_no_case)).starts_with("The anchor of guy back is 0.94 m past the edge"));
    CHECK(told(yes_no_check(CheckId::FootHangs, 0, CheckStatus::Fail, 0.5, 0.0, k_no_case)).starts_with("The foot is 0.50 m past the edge"));
    CHECK(told(yes_no_check(CheckId::EdgeZone, 0, CheckStatus::Caution, 1.2, 2.0, k_no_case))
              .starts_with("The foot is 1.20 m behind the edge, nearer than 2.00 m"));
    CHECK(told(yes_no_check(CheckId::FrontTie, 0, CheckStatus::Fail, 0.2, 0.5, k_no_case)).starts_with("The head is 0.20 m behind the edge"));
    CHECK(told(yes_no_check(CheckId::FrontTie, 0, CheckStatus::Fail, -0.2, 0.5, k_no_case)).starts_with("The head is 0.20 m past the edge"));
}

TEST_CASE("sentence: value and limit never read the same when they are not") {
    const std::string near = told(limit_check(CheckId::GuyAngle, 0, 29.997, 30.0, k_no_case));
    CHECK(near.find("29.997 deg") != std::string::npos);
    CHECK(near.find("30.000 deg") != std::string::npos);
    CHECK(told(limit_check(CheckId::GuyAngle, 0, 30.0, 30.0, k_no_case)).find("30 deg") != std::string::npos);
}

TEST_CASE("sentence: legs are numbered where there are several; names are put in as they are") {
    Plan p = support::usual_plan();
    p.guys[0].name = "{value} {when}";
    CHECK(told(limit_check(CheckId::GuyStrength, 0, 1.0, 2.0, 1), p).starts_with("Guy {value} {when} carries 1.00 kN"));
    const Evaluation one_leg = evaluate(p);
    p.frame.legs.resize(2);
    const std::string two = sentence({k_english}, p, one_leg, limit_check(CheckId::LegStrength, 1, 1.0, 2.0, 1));
    CHECK(two == "Leg 2: the leg carries 1.00 kN when holding; it may carry 2.00 kN.");
}

TEST_CASE("case_name: names the rope it is about") {
    const Plan p = support::full_plan();
    const Evaluation e = evaluate(p);
    std::set<std::string> names;
    for (const Outcome& o : e.outcomes) names.insert(case_name(k_english, p, o.setup));
    CHECK(names.size() == e.outcomes.size());
    CHECK(names.contains("one rope takes all: belay"));
    CHECK(names.contains("haul released: main"));
}

TEST_CASE("sentence: every row of many rigs has one, without a gap") {
    std::set<std::pair<CheckId, CheckStatus>> met;
    for (std::uint64_t i = 0; i < 400; ++i) {
        Plan p = support::random_monopod(i);
        if (i % 3 == 0) p.limits.factor_soft = 8.0;
        const Evaluation e = evaluate(p);
        REQUIRE(e.faults.empty());
        e.checks.for_each([&](const Check& c) {
            for (const Language& words : {k_english, k_french}) check_whole(sentence({words}, p, e, c), info(c.id).key);
            const std::string s = sentence({k_english}, p, e, c);
            CHECK(s.find("nan") == std::string::npos);
            met.insert({c.id, c.status});
        });
    }
    CHECK(met.size() > 30);
}

TEST_CASE("in imperial units a sentence says lbf and ft and means the same") {
    const Plan p = support::usual_plan();
    const Evaluation e = evaluate(p);
    const Check cord = limit_check(CheckId::GuyStrength, 0, 0.44482216152605, 2.2241108076302, 1);
    const std::string imperial = sentence({k_english, UnitSystem::Imperial}, p, e, cord);
    CHECK(imperial.find("100 lbf") != std::string::npos);
    CHECK(imperial.find("500 lbf") != std::string::npos);
    CHECK(imperial.find("kN") == std::string::npos);
    const Check hangs = yes_no_check(CheckId::AnchorHangs, 0, CheckStatus::Fail, 0.3048, 0.0, k_no_case);
    CHECK(sentence({k_english, UnitSystem::Imperial}, p, e, hangs).find("1.00 ft past the edge") != std::string::npos);
}

TEST_CASE("each language tells every rule and case with the same marks") {
    for (std::size_t i = 0; i < k_check_count; ++i) {
        const CheckWords &a = k_english.checks[i], &b = k_french.checks[i];
        INFO(std::string(info(a.id).key));
        CHECK(marks(a.pass) == marks(b.pass));
        CHECK(marks(a.caution) == marks(b.caution));
        CHECK(marks(a.fail) == marks(b.fail));
        CHECK(marks(a.could) == marks(b.could));
        CHECK(a.caution.empty() == b.caution.empty());
        CHECK(a.fail.empty() == b.fail.empty());
    }
    for (std::size_t i = 0; i < k_input_count; ++i) CHECK(marks(k_english.changes.inputs[i].says) == marks(k_french.changes.inputs[i].says));
    CHECK(marks(k_english.changes.anchors) == marks(k_french.changes.anchors));
    CHECK(marks(k_english.changes.anchors_broken) == marks(k_french.changes.anchors_broken));
    CHECK(marks(k_english.changes.out_of_reach) == marks(k_french.changes.out_of_reach));
    for (std::size_t i = 0; i < k_case_count; ++i) {
        CHECK(marks(k_english.cases[i].name) == marks(k_french.cases[i].name));
        CHECK(marks(k_english.cases[i].when) == marks(k_french.cases[i].when));
    }
}
