#include "engine/codec/french.hpp"
#include "engine/codec/report.hpp"
#include "engine/codec/rig_sheet.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

#include <doctest/doctest.h>

#include <string>
#include <string_view>

using namespace guywright;

namespace {

struct Sheet {
    Plan plan;
    Evaluation e;
    OrderedJson json;

    explicit Sheet(Plan p, Telling telling = {k_english}) : plan(std::move(p)), e(evaluate(plan)) {
        json = rig_sheet(telling, plan, e, e.verdict == Verdict::NotChecked ? Tuning{} : tune(plan, e));
    }
    [[nodiscard]] const OrderedJson& section(std::string_view title) const {
        for (const OrderedJson& s : json["sections"])
            if (s["title"] == std::string(title)) return s;
        FAIL("no such section");
        return json;
    }
    [[nodiscard]] const OrderedJson& row(std::string_view title, const std::string& first) const {
        for (const OrderedJson& r : section(title)["rows"])
            if (r[0] == first) return r;
        FAIL("no such row");
        return json;
    }
};

detail::PaperPoint point(const OrderedJson& at) { return {at[0].get<double>(), at[1].get<double>()}; }

/// Every dot, line and text on the paper, and no text on another.
void check_drawn_whole(const OrderedJson& drawing) {
    const detail::PaperBox paper{{-0.01, -0.01}, point(drawing["size_mm"]) + 0.01};
    for (const OrderedJson& d : drawing["dots"]) CHECK(paper.holds({point(d["at"]), point(d["at"])}));
    for (const OrderedJson& l : drawing["lines"]) {
        CHECK(paper.holds({point(l["from"]), point(l["from"])}));
        CHECK(paper.holds({point(l["to"]), point(l["to"])}));
    }
    std::vector<detail::PaperBox> boxes;
    for (const OrderedJson& t : drawing["texts"]) {
        const detail::PaperPoint half = 0.5 * detail::text_size_mm(t["text"].get<std::string>()) - 0.02;  // told in hundredths
        boxes.push_back({point(t["at"]) - half, point(t["at"]) + half});
        CAPTURE(t["text"].get<std::string>());
        CHECK(paper.holds(boxes.back()));
    }
    for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(boxes[i].meets(boxes[j]));
}

}  // namespace

TEST_CASE("rig sheet: verdict, code and forces are those of the report") {
    const Sheet sheet(support::go_plan());
    const OrderedJson report = OrderedJson::parse(write_report(sheet.plan, sheet.e));
    CHECK(sheet.json["verdict"] == report["verdict"]);
    CHECK(sheet.json["check_code"] == report["check_code"]);
    CHECK(sheet.json["governs"] == sentence({k_english}, sheet.plan, sheet.e, sheet.e.closest[0]));
    for (const OrderedJson& c : report["cases"]) {
        const std::string name = c["name"];
        CAPTURE(name);
        const OrderedJson &guys = sheet.row("Guys and their anchors, kN", name), &legs = sheet.row("Legs and feet, kN", name);
        for (std::size_t i = 0; i < c["guys"].size(); ++i) CHECK(guys[i + 1] == fixed_text(c["guys"][i]["tension_kN"].get<double>(), 2));
        CHECK(legs[1] == fixed_text(c["legs"][0]["compression_kN"].get<double>(), 2));
        CHECK(legs[3] == fixed_text(c["legs"][0]["foot_reaction_kN"][2].get<double>(), 2));
    }
}

TEST_CASE("rig sheet: anchors by bearing, distance and paces as the plan has them") {
    Plan p = support::go_plan();
    p.edge.compass_out_deg = 350.0;
    const Sheet sheet(p);
    const OrderedJson& rows = sheet.section("Anchors, from the plumb point under the head")["rows"];
    for (std::size_t i = 0; i < p.guys.size(); ++i) {
        const OrderedJson& row = rows[i + 1];
        CHECK(row[1] == quantity({k_english}, p.guys[i].bearing_deg, "deg"));
        CHECK(row[2] == quantity({k_english}, std::fmod(p.guys[i].bearing_deg + 350.0, 360.0), "deg"));
        const double distance_m = (sheet.e.model.drawn_head_m.z - p.guys[i].anchor_height_m) / std::tan(radians(p.guys[i].inclination_deg));
        CHECK(row[3] == quantity({k_english}, distance_m, "m"));
        CHECK(row[4] == fixed_text(distance_m / 0.75, 1));
        CHECK(row[6] == quantity({k_english}, p.guys[i].inclination_deg, "deg"));
    }
}

TEST_CASE("rig sheet: bearings never read 360") {
    for (const double deg : {-0.2, 359.7, 360.0, 0.2, 719.9}) CHECK(detail::bearing_told({k_english}, deg) == "0 deg");
    CHECK(detail::bearing_told({k_english}, -90.0) == "270 deg");
}

TEST_CASE("rig sheet: cord is never cut too short, and never a step too long") {
    support::Random r(5);
    for (int i = 0; i < 500; ++i) {
        const double length_m = r.between(0.5, 15.0), tail_m = r.between(0.0, 2.0);
        const int parts = r.whole(1, 9);
        for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Imperial}) {
            const double needed_m = parts * length_m + 2.0 * detail::k_end_knot_m + tail_m, cut_m = detail::cut_length_m(length_m, parts, tail_m, units);
            CHECK(cut_m >= needed_m - 1e-6);
            CHECK(cut_m < needed_m + detail::cut_step_m(units));
        }
    }
    CHECK_WITHIN(detail::cut_length_m(3.0, 3, 1.5, UnitSystem::Metric), 11.5, 1e-9);
}

TEST_CASE("rig sheet: the drawings are to the scale that they name") {
    const Sheet sheet(support::go_plan());
    const Model& m = sheet.e.model;
    for (const OrderedJson& drawing : sheet.json["drawings"]) {
        const bool above = drawing["title"].get<std::string>().starts_with("Seen from above");
        CHECK(drawing["title"].get<std::string>().ends_with("scale 1 : " + std::to_string(drawing["scale"].get<int>())));
        const detail::PaperPoint head = point(drawing["dots"].back()["at"]);
        for (std::size_t i = 0; i < m.guys.size(); ++i) {
            const Vec3 way_m = m.guys[i].anchor_m - m.drawn_head_m;
            const detail::PaperPoint way = (point(drawing["dots"][i]["at"]) - head) * (drawing["scale"].get<double>() / 1000.0);
            CHECK_WITHIN(way.x, above ? -way_m.y : way_m.x, 0.02);
            CHECK_WITHIN(way.y, above ? way_m.x : way_m.z, 0.02);
        }
    }
}

TEST_CASE("rig sheet: everything is on the paper and can be read, whatever the rig") {
    for (std::uint64_t i = 0; i < 40; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            const Evaluation e = evaluate_as_measured(p);
            if (!e.faults.empty() || e.outcomes.empty()) continue;
            CAPTURE(p.title);
            const Telling telling{k_french, UnitSystem::Imperial};
            const detail::CardView v{telling, p, e};
            check_drawn_whole(detail::drawing_json(v, detail::PaperView::Above, {102.0, 92.0}));
            check_drawn_whole(detail::drawing_json(v, detail::PaperView::Side, {80.0, 92.0}));
        }
}

TEST_CASE("rig sheet: in French and feet no metre, no kN and no English heading is left") {
    const Sheet sheet(support::go_plan(), {k_french, UnitSystem::Imperial});
    const std::string text = sheet.json.dump();
    CHECK(text.find(" kN") == std::string::npos);
    CHECK(text.find(" m\"") == std::string::npos);
    CHECK(text.find("Anchors") == std::string::npos);
    CHECK(text.find("Amarrages, depuis l'aplomb") != std::string::npos);
    CHECK(sheet.json["sections"].size() == Sheet(support::go_plan()).json["sections"].size());
    CHECK(sheet.json["check_code"] == check_code(sheet.plan));
}

TEST_CASE("rig sheet: while inputs are missing there is no number on it") {
    Plan p = support::go_plan();
    p.not_measured = {"guys[0].bearing_deg"};
    const Sheet sheet(p);
    CHECK(sheet.json["verdict"] == "NOT CHECKED");
    CHECK(sheet.json["drawings"].empty());
    CHECK(sheet.json["governs"] == "");
    REQUIRE(sheet.json["sections"].size() == 1);
    CHECK(sheet.json["sections"][0]["items"][0] == measurement_name(p, "guys[0].bearing_deg"));
}

TEST_CASE("rig sheet: what is the same twice stands once in the kit list") {
    Plan p = support::go_plan();
    p.feet[0].ties = {{0.0, 9.8}, {180.0, 9.8}, {90.0, 5.0}};
    const Sheet sheet(p);
    int ties = 0;
    for (const OrderedJson& row : sheet.section("Kit")["rows"])
        if (row[0] == "Foot tie") {
            ++ties;
            CHECK(row[1] == (row[2] == "9.80 kN" ? "2" : "1"));
        }
    CHECK(ties == 2);
}

TEST_CASE("rig sheet: nobody signs for the load on a rig that does not stand") {
    const Sheet sheet(support::steep_plan());
    REQUIRE(sheet.json["verdict"] == "NO-GO");
    for (const OrderedJson& s : sheet.json["sections"]) CHECK(s["kind"] != "preload");
    CHECK(sheet.json["sections"].size() > 5);
}

TEST_CASE("rig sheet: the list before loading has its boxes for two") {
    const Sheet sheet(support::go_plan());
    const OrderedJson& list = sheet.section("Before the load goes on");
    CHECK(list["kind"] == "preload");
    CHECK(list["items"].size() == 7);
    CHECK(list["people"].size() == 2);
}
