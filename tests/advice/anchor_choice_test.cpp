#include "engine/advice/anchor_choice.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random.hpp"
#include "tests/support/within.hpp"

#include <set>

using namespace guywright;

namespace {

/// The sound rig with so many anchors found about it on level ground.
Plan with_anchors(int count, std::uint64_t number) {
    Plan p = support::go_plan();
    support::Random r(number);
    const Vec3 head_m = *drawn_head_of(p);
    for (int i = 0; i < count; ++i) {
        const double bearing_deg = 360.0 * i / count + r.between(-12.0, 12.0), away_m = r.between(2.8, 5.5);  // in this order with every compiler
        const Vec3 at_m = plumb_point(head_m) + away_m * along_bearing(radians(bearing_deg));
        p.candidate_anchors_m.push_back({std::min(at_m.x, -0.1), at_m.y, 0.0});
    }
    return p;
}

void finish(AnchorChoice& c, std::size_t slice = 100000) {
    while (!c.done()) c.advance(slice);
}

double least_of(const Evaluation& e) {
    double least = HUGE_VAL;
    e.worst.for_each([&](const Check& c) {
        if (anchors_decide(c.id)) least = std::min(least, margin_of(c));
    });
    return least;
}

}  // namespace

TEST_CASE("anchor choice: what is told of a choice is what a full verdict says of its plan, the best first, each once") {
    AnchorChoice c(with_anchors(6, 3));
    finish(c);
    REQUIRE(c.best_three().size() == AnchorChoice::k_told);
    REQUIRE(c.best_four().size() == AnchorChoice::k_told);
    for (const auto* best : {&c.best_three(), &c.best_four()}) {
        double last = HUGE_VAL;
        std::set<std::vector<std::size_t>> seen;
        for (const AnchorSet& s : *best) {
            const Evaluation e = evaluate(s.plan);
            CHECK(s.verdict == e.verdict);
            CHECK_WITHIN(s.margin, least_of(e), 0.0);
            CHECK(s.margin <= last);
            last = s.margin;
            CHECK(seen.insert(s.anchors).second);
            CHECK(s.anchors.size() == (best == &c.best_three() ? 3 : 4));
            REQUIRE(s.plan.guys.size() == s.anchors.size());
            for (std::size_t i = 0; i < s.anchors.size(); ++i) {
                CHECK(*s.plan.guys[i].anchor_m == s.plan.candidate_anchors_m[s.anchors[i]]);
                CHECK(s.plan.guys[i].pretension_kN == s.pretension_kN);
            }
        }
    }
}

TEST_CASE("anchor choice: no choice with any pretension tried is better by more than 3 % when every one is judged in full") {
    const Plan p = with_anchors(4, 11);
    AnchorChoice c(p);
    finish(c);
    REQUIRE_FALSE(c.best_three().empty());
    double best = -HUGE_VAL;
    for (std::size_t left_out = 0; left_out < 4; ++left_out)
        for (const double pretension_kN : k_tried_pretensions_kN) {
            Plan q = c.best_four()[0].plan;
            q.guys.erase(q.guys.begin() + static_cast<std::ptrdiff_t>(left_out));
            for (GuyPlan& g : q.guys) g.pretension_kN = pretension_kN;
            const Evaluation measured = evaluate_as_measured(q);
            if (least_of(measured) <= best) continue;  // the box only takes away
            best = std::max(best, least_of(evaluate(q)));
        }
    CHECK(c.best_three()[0].margin >= best - 0.03);
}

TEST_CASE("anchor choice: an anchor too weak for its guy is left out where its strength is known") {
    Plan p = with_anchors(6, 3);
    AnchorChoice free(p);
    finish(free);
    const std::size_t weak = free.best_four()[0].anchors[1];
    p.candidate_anchor_strengths_kN.assign(6, 20.0);
    p.candidate_anchor_strengths_kN[weak] = 0.2;
    AnchorChoice c(p);
    finish(c);
    REQUIRE_FALSE(c.best_four().empty());
    for (const std::size_t i : c.best_four()[0].anchors) CHECK(i != weak);
    for (const GuyPlan& g : c.best_four()[0].plan.guys) CHECK(g.anchor_strength_kN == 20.0);
}

TEST_CASE("anchor choice: without strengths an anchor is trusted as the weakest in use; kit comes from the guy nearest in bearing") {
    Plan p = with_anchors(5, 5);
    p.guys[1].anchor_strength_kN = 9.0;
    p.guys[0].parts = 2;
    AnchorChoice c(p);
    finish(c);
    const AnchorSet& s = c.best_four().at(0);
    for (const GuyPlan& g : s.plan.guys) CHECK(g.anchor_strength_kN == 9.0);
    const Vec3 head_m = *drawn_head_of(p);
    for (const GuyPlan& g : s.plan.guys) {
        const double bearing_deg = bearing_deg_of(*g.anchor_m - head_m);
        double to_first_deg = between_bearings_deg(bearing_deg, 145.0), nearest_deg = 360.0;
        for (const GuyPlan& own : p.guys) nearest_deg = std::min(nearest_deg, between_bearings_deg(bearing_deg, own.bearing_deg));
        CHECK(g.parts == (to_first_deg == nearest_deg ? 2 : 3));
    }
}

TEST_CASE("anchor choice: fewer than three anchors, or an input missing: nothing to choose") {
    AnchorChoice none(support::go_plan()), two(with_anchors(2, 1));
    CHECK(none.done());
    CHECK(two.done());
    Plan p = with_anchors(6, 3);
    p.not_measured = {"edge.face_deg"};
    CHECK(AnchorChoice(p).done());
    AnchorChoice three(with_anchors(3, 1));
    finish(three);
    CHECK(three.best_four().empty());
    CHECK(three.best_three().size() == 1);
}

TEST_CASE("anchor choice: one that comes down at some point of the box is told as NO-GO for that, and so that a full verdict agrees") {
    Plan p = with_anchors(5, 9);
    for (GuyPlan& g : p.guys) g.EA_kN = 2.0;  // far too soft to hold the head
    p.ropes[0].load_kg = 200.0;
    AnchorChoice c(p);
    finish(c);
    REQUIRE_FALSE(c.best_three().empty());
    for (const AnchorSet& s : c.best_three()) {
        CHECK(s.verdict == Verdict::NoGo);
        CHECK(s.margin < 0.0);
        CHECK(std::find(k_down_rules.begin(), k_down_rules.end(), s.governing.id) != k_down_rules.end());
        CHECK(comes_down(evaluate(s.plan).worst));
    }
}

TEST_CASE("anchor choice: slices of any size choose the same") {
    const Plan p = with_anchors(5, 9);
    AnchorChoice a(p), b(p);
    finish(a);
    finish(b, 37);
    REQUIRE(a.best_four().size() == b.best_four().size());
    for (std::size_t i = 0; i < a.best_four().size(); ++i) {
        CHECK(a.best_four()[i].anchors == b.best_four()[i].anchors);
        CHECK(a.best_four()[i].margin == b.best_four()[i].margin);
    }
}
