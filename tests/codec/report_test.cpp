#include "engine/codec/report.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace guywright;

namespace {

OrderedJson report_of(const Plan& p) { return OrderedJson::parse(write_report(p, evaluate(p)), nullptr, false); }

void holds_no_null(const OrderedJson& j) {
    CHECK_FALSE(j.is_null());
    for (const auto& entry : j.items())
        if (entry.value().is_structured()) holds_no_null(entry.value());
        else CHECK_FALSE(entry.value().is_null());
}

}  // namespace

TEST_CASE("write_report: the verdict, the states and every case of a sound rig") {
    const Plan p = support::go_plan();
    const Evaluation e = evaluate(p);
    OrderedJson r = report_of(p);
    CHECK(r["verdict"] == "GO");
    CHECK(r["check_code"] == check_code(p));
    CHECK(r["states"]["rigged"]["name"] == "as rigged");
    CHECK(r["states"]["loaded"]["name"] == "holding");
    REQUIRE(r["cases"].size() == e.outcomes.size());
    const Outcome& holding = e.outcomes[k_holding];
    OrderedJson& loaded = r["states"]["loaded"];
    CHECK(loaded["stable"] == true);
    REQUIRE(loaded["guys"].size() == 4);
    CHECK(loaded["guys"][0]["name"] == "back right");
    CHECK_WITHIN(loaded["guys"][1]["tension_kN"].get<double>(), holding.equilibrium.guy_tension_N[1] / 1000.0, 1e-12);
    CHECK_WITHIN(loaded["legs"][0]["compression_kN"].get<double>(), holding.equilibrium.leg_compression_N[0] / 1000.0, 1e-12);
    CHECK_WITHIN(r["applied_force_angle_deg"].get<double>(), degrees(holding.applied_force_angle_rad), 1e-12);
    CHECK_WITHIN(r["head_m"][2].get<double>(), e.model.drawn_head_m.z, 1e-12);
    CHECK(loaded["ropes"][0].contains("clear_of_edge"));
    CHECK_FALSE(r["states"]["rigged"]["ropes"][0].contains("clear_of_edge"));
    holds_no_null(r);
}

TEST_CASE("write_report: utilisation is force over what the weakest part may carry in that case") {
    Plan p = support::usual_plan();
    p.guys[0].anchor_strength_kN = 1.0;  // weaker than the cord
    OrderedJson r = report_of(p);
    const double static_kN = r["states"]["loaded"]["guys"][0]["tension_kN"].get<double>();
    CHECK_WITHIN(r["states"]["loaded"]["guys"][0]["utilisation"].get<double>(), static_kN * p.limits.factor_anchor / 1.0, 1e-12);
    for (OrderedJson& c : r["cases"]) {
        if (c["name"] != "arrest") continue;
        const double arrest_kN = c["guys"][1]["tension_kN"].get<double>();
        CHECK_WITHIN(c["guys"][1]["utilisation"].get<double>(), arrest_kN * p.limits.arrest_factor_soft / (9.8 * 3 * 0.6), 1e-12);
    }
}

TEST_CASE("write_report: each check with its sentence, status and source; NO-GO has a failed one") {
    OrderedJson r = report_of(support::steep_plan());
    CHECK(r["verdict"] == "NO-GO");
    bool failed = false;
    for (OrderedJson& c : r["checks"]) {
        for (const char* key : {"id", "what", "value", "limit", "unit", "status", "source"}) CHECK(c.contains(key));
        CHECK_FALSE(c["source"].get<std::string>().empty());
        failed = failed || c["status"] == "fail";
    }
    CHECK(failed);
}

TEST_CASE("write_report: a case without equilibrium shows no number of its own") {
    Plan p = support::usual_plan();
    p.guys.resize(1);
    OrderedJson r = report_of(p);
    CHECK(r["verdict"] == "NO-GO");
    bool fell = false;
    for (OrderedJson& c : r["cases"]) {
        if (c.contains("head_m")) continue;
        fell = true;
        CHECK(c["stable"] == false);
        CHECK(c.size() == 2);
    }
    CHECK(fell);
    holds_no_null(r);
}

TEST_CASE("write_report: what is not measured is listed and nothing is computed from it") {
    OrderedJson r = report_of(support::full_plan());
    CHECK(r["verdict"] == "NOT CHECKED");
    CHECK(r["not_measured"].size() == 2);
    CHECK_FALSE(r.contains("cases"));
    CHECK_FALSE(r.contains("checks"));
}

TEST_CASE("write_fault_report: every fault with its three parts") {
    const PlanRead read = read_plan(R"({"format":"other"})");
    const OrderedJson r = OrderedJson::parse(write_fault_report(read.faults, 7), nullptr, false);
    CHECK(r["verdict"] == "NOT CHECKED");
    REQUIRE(r["faults"].size() == 1);
    CHECK(r["faults"][0]["path"] == "format");
    CHECK(r["faults_not_listed"] == 7);
}

TEST_CASE("write_report: JSON without a gap for many rigs, the verdict that of the evaluation") {
    for (std::uint64_t i = 0; i < 200; ++i) {
        const Plan p = support::random_monopod(i);
        OrderedJson r = report_of(p);
        REQUIRE(r.is_object());
        CHECK(r["verdict"] == std::string(k_english.of(evaluate(p).verdict)));
        holds_no_null(r);
    }
}
