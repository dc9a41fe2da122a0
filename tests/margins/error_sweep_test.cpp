#include "engine/verdict/evaluate.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

CheckTable worst_of(const Plan& p, std::size_t slice) {
    const Evaluation e = evaluate_as_measured(p);
    REQUIRE(e.faults.empty());
    ErrorSweep sweep(p, e.checks);
    while (!sweep.done()) sweep.advance(slice);
    return sweep.worst();
}

Plan only_the_load_errs() {
    Plan p = support::exact(support::go_plan());
    p.tolerances.load_percent = 10.0;
    return p;
}

}  // namespace

TEST_CASE("sweep: slices of any size find the same to the last bit") {
    const CheckTable a = worst_of(support::go_plan(), 1), b = worst_of(support::go_plan(), 97);
    int rows = 0;
    a.for_each([&](const Check& c) {
        const Check* other = b.find(c.id, c.subject);
        REQUIRE(other != nullptr);
        CHECK(other->value == c.value);
        CHECK(other->margin == c.margin);
        CHECK(other->spoiler == c.spoiler);
        ++rows;
    });
    CHECK(rows >= 15);
}

TEST_CASE("sweep: no force rule is judged better than as measured") {
    for (std::uint64_t i = 1; i <= 30; ++i) {
        const Plan p = support::random_monopod(i);
        const Evaluation e = evaluate(p);
        if (!e.faults.empty()) continue;
        CAPTURE(i);
        e.worst.for_each([&](const Check& c) {
            const Check* measured = e.checks.find(c.id, c.subject);
            if (!is_force_rule(c.id) || measured == nullptr) return;
            CHECK(c.status >= measured->status);
            if (c.has_margin && measured->has_margin) CHECK(c.margin <= measured->margin);
        });
    }
}

TEST_CASE("sweep: where only the load errs, the pulley carries just so much more, and the load is named") {
    const Plan p = only_the_load_errs();
    const Evaluation e = evaluate(p);
    const Check *measured = e.checks.find(CheckId::PulleyStrength), *worst = e.worst.find(CheckId::PulleyStrength);
    REQUIRE(measured != nullptr);
    REQUIRE(worst != nullptr);
    CHECK(worst->at_worst);
    CHECK_WITHIN(worst->value / measured->value, 1.1, 2e-3);  // the head moves a little farther
    REQUIRE(worst->spoiler != k_no_spoiler);
    CHECK(e.spoilers[static_cast<std::size_t>(worst->spoiler)] == "ropes[0].load_kg");
}

TEST_CASE("sweep: GO as measured is not GO where an error could break it, and the reason says at the worst") {
    Plan p = support::go_plan();
    CHECK(evaluate(p).verdict == Verdict::Go);
    const Evaluation measured = evaluate_as_measured(p);
    const Check& leg = *measured.checks.find(CheckId::LegStrength);
    p.frame.legs[0].rating_kN *= 1.02 * leg.value / leg.limit;
    CHECK(evaluate(support::exact(p)).verdict == Verdict::Go);
    const Evaluation e = evaluate(p);
    CHECK(e.verdict == Verdict::NoGo);
    CHECK(e.worst.find(CheckId::LegStrength)->status == CheckStatus::Fail);
    CHECK(e.worst.find(CheckId::LegStrength)->at_worst);
}

TEST_CASE("sweep: a rule of angle kept as measured is only cautioned, with nothing to spare") {
    Plan p = support::go_plan();
    p.guys[0].bearing_deg = 180.0;
    p.guys[0].inclination_deg = 38.0;  // 90 - 20 - 38 = 32 degrees off the leg, and both angles may err by 3
    const Evaluation e = evaluate(p);
    const Check* angle = e.worst.find(CheckId::GuyAngle, 0);
    REQUIRE(angle != nullptr);
    CHECK(e.checks.find(CheckId::GuyAngle, 0)->value > 30.0);
    CHECK(angle->status == CheckStatus::Caution);
    CHECK(angle->value < 30.0);
    CHECK(angle->margin == 0.0);
}

TEST_CASE("sweep: corners and random points by themselves find nothing much worse") {
    Plan p = support::go_plan();
    const Evaluation e = evaluate(p);
    Plan moved = p;
    const std::vector<Measured> numbers = measured_numbers(moved);
    support::Random r(5);
    CheckTable found;
    for (int k = 0; k < 1500; ++k) {
        for (const Measured& m : numbers) m.move_to(k % 2 == 0 ? (r.between(-1.0, 1.0) < 0.0 ? -1.0 : 1.0) : r.between(-1.0, 1.0));
        const BuiltModel b = build_model(moved);
        Outcomes outcomes;
        solve_cases(b.model, build_cases(b.model, moved.actions), outcomes);
        for (std::size_t i = 0; i < outcomes.size(); ++i) check_forces(found, moved, b.model, outcomes[i], static_cast<int>(i));
    }
    for (const CheckId id : {CheckId::GuyStrength, CheckId::AnchorStrength, CheckId::LegStrength, CheckId::RopeStrength, CheckId::PulleyStrength})
        for (std::size_t s = 0; s < p.guys.size(); ++s) {
            if (found.find(id, s) == nullptr) continue;
            CAPTURE(std::string(info(id).key));
            CHECK(e.worst.find(id, s)->margin < found.find(id, s)->margin + 0.02);
        }
}
