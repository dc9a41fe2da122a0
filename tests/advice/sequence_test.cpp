#include "engine/advice/sequence.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

#include <map>

using namespace guywright;

namespace {

Model built_of(const Plan& p) { return build_model(p).model; }

Sequence sequence_of(const Plan& p) {
    const BuiltModel built = build_model(p);
    REQUIRE(built.faults.empty());
    return find_sequence(p, built.model);
}
long place_of(const SequenceSteps& steps, StepKind kind) {
    for (std::size_t i = 0; i < steps.size(); ++i)
        if (steps[i].kind == kind) return static_cast<long>(i);
    return -1;
}

/// The rig with only these guys, each just tight where the head is drawn (or at a share of its pretension), written anew.
Model rig_with(const Plan& p, const std::map<std::size_t, double>& on) {
    Plan q = p;
    q.guys.clear();
    for (const auto& [guy, share] : on) {
        q.guys.push_back(p.guys[guy]);
        q.guys.back().pretension_kN *= share;
    }
    return built_of(q);
}

bool stays_up(const Plan& p, const Model& m, const Pulls& pulls, Vec3 start_m) {
    const Equilibrium e = solve_equilibrium(m, pulls, start_m);
    for (const double gap_m : e.leg_gap_m)
        if (gap_m > k_slack_m) return false;
    return is_stable(e) && glm::length(e.head_m - m.drawn_head_m) <= p.limits.head_shift_max_percent / 100.0 * m.shortest_leg_m;
}

void check_stays_when_bumped(const Plan& p, const Model& m) {
    const Equilibrium rest = solve_equilibrium(m, {}, m.drawn_head_m);
    CHECK(stays_up(p, m, {}, m.drawn_head_m));
    for (int i = 0; i < 12; ++i) {
        Pulls bump;
        bump.push_back({k_bump_N, false, along_bearing(radians(30.0 * i))});
        CHECK(stays_up(p, m, bump, rest.head_m));
    }
}

}  // namespace

TEST_CASE("standing: a single leg in the hand weighs half of its weight times the sine of its lean, strayed by five degrees") {
    for (const double lean_deg : {0.0, 10.0, 22.0, -15.0}) {
        Plan p = support::usual_plan();
        p.frame.lean_deg = lean_deg;
        p.guys.clear();
        const Standing s = find_standing(p, built_of(p));
        CHECK_FALSE(s.by_itself);
        CHECK_WITHIN(s.hold_N, 3.5 * k_gravity * std::sin(radians(std::abs(lean_deg) + 5.0)), 0.02);
        REQUIRE(s.leg_compression_N.size() == 1);
        CHECK_WITHIN(s.leg_compression_N[0], 3.5 * k_gravity * std::cos(radians(lean_deg)), 1e-6);
    }
}

TEST_CASE("standing: an A-frame falls across its plane only") {
    Plan p = support::random_a_frame(4);
    p.guys.clear();
    p.frame.legs[0].foot_m = {-2.0, 1.0, 0.0};
    p.frame.legs[1].foot_m = {-2.0, -1.0, 0.0};
    for (LegPlan& leg : p.frame.legs) {
        leg.length_m = 3.0;
        leg.mass_kg = 10.0;
        leg.held_down = false;
    }
    p.frame.lean_deg = 12.0;
    p.frame.lean_bearing_deg = 0.0;
    const Standing s = find_standing(p, built_of(p));
    CHECK_FALSE(s.by_itself);
    // the head strays by 5 degrees of a leg's length, which is a little more of the frame's height
    const double height_m = std::sqrt(8.0), strayed_rad = radians(12.0) + radians(5.0) * 3.0 / height_m;
    CHECK_WITHIN(s.hold_N, 10.0 * k_gravity * std::sin(strayed_rad), 0.3);
}

TEST_CASE("standing: a heavy tripod stands a bump, a light one must be steadied") {
    Plan p = support::random_tripod(7);
    p.guys.clear();
    for (std::size_t i = 0; i < 3; ++i) {
        p.frame.legs[i].foot_m = 1.2 * along_bearing(radians(120.0 * static_cast<double>(i)));
        p.frame.legs[i].length_m = 2.5;
        p.frame.legs[i].held_down = false;
        p.frame.legs[i].mass_kg = 60.0;
    }
    CHECK(find_standing(p, built_of(p)).by_itself);
    for (LegPlan& leg : p.frame.legs) leg.mass_kg = 2.0;
    const Standing light = find_standing(p, built_of(p));
    CHECK_FALSE(light.by_itself);
    CHECK_WITHIN(light.hold_N, 0.0, 1e-6);
}

TEST_CASE("standing: a free foot pushed harder than friction holds slides") {
    Plan p = support::usual_plan();
    p.guys.clear();
    p.feet[0].ties.clear();
    p.feet[0].friction = 0.05;
    p.frame.lean_deg = 30.0;
    CHECK(find_standing(p, built_of(p)).foot_slides);
    p.feet[0].friction = 1.0;
    CHECK_FALSE(find_standing(p, built_of(p)).foot_slides);
    p.feet[0].friction = 0.05;
    p.feet[0].pin_shear_kN = 5.0;
    CHECK_FALSE(find_standing(p, built_of(p)).foot_slides);
    p.feet[0].pin_shear_kN = 0.0;
    p.frame.lean_deg = 0.0;
    CHECK_FALSE(find_standing(p, built_of(p)).foot_slides);
    p.edge.face_deg = 40.0;  // upright, but on a slope
    p.frame.legs[0].foot_m = {2.0, 0.0, -2.0 * std::tan(radians(40))};
    CHECK(find_standing(p, built_of(p)).foot_slides);
}

TEST_CASE("sequence: near the edge people and the back tie come first, and the back tie goes last") {
    const Plan p = support::steep_plan();  // foot 1.2 m behind the edge
    const Sequence s = sequence_of(p);
    CHECK(s.up[0].kind == StepKind::TieInPeople);
    CHECK_WITHIN(s.up[0].behind_edge_m, 1.2, 1e-12);
    CHECK(s.up[1].kind == StepKind::BackTieFirst);
    CHECK(p.guys[s.up[1].part].name == "back");
    CHECK(s.down[s.down.size() - 1].kind == StepKind::BackTieLast);
    CHECK(p.guys[s.down[s.down.size() - 1].part].name == "back");
    for (const SequenceStep& step : s.down) CHECK_FALSE((step.kind == StepKind::TakeOff && p.guys[step.part].name == "back"));
    const Sequence away = sequence_of(support::go_plan());  // 2.8 m behind it
    CHECK(place_of(away.up, StepKind::BackTieFirst) == -1);
    CHECK(place_of(away.down, StepKind::BackTieLast) == -1);
}

TEST_CASE("sequence: without a guy behind, a line of its own holds the kit back") {
    Plan p = support::steep_plan();
    p.guys[0].bearing_deg = 0.0;
    const Sequence s = sequence_of(p);
    CHECK(place_of(s.up, StepKind::BackLine) >= 0);
    CHECK(place_of(s.up, StepKind::BackTieFirst) == -1);
}

TEST_CASE("sequence: anchors past the edge and feet come before the frame is raised") {
    const Plan p = support::steep_plan();  // right and left are anchored past the edge
    const Sequence s = sequence_of(p);
    const long raised = place_of(s.up, StepKind::Raise);
    CHECK(place_of(s.up, StepKind::FixFeet) < raised);
    CHECK(place_of(s.up, StepKind::FixFeet) >= 0);
    int over = 0;
    for (long i = 0; i < raised; ++i) over += s.up[static_cast<std::size_t>(i)].kind == StepKind::AnchorOverEdge;
    CHECK(over == 2);
    Plan loose = p;
    loose.feet[0].ties.clear();
    CHECK(place_of(sequence_of(loose).up, StepKind::HoldFeet) >= 0);
    CHECK_FALSE(s.front_tie_missing);
    loose.guys.resize(1);
    loose.frame.lean_deg = 25.0;
    CHECK(sequence_of(loose).front_tie_missing);
}

TEST_CASE("sequence: three guys: held until the last is on, then it stands by itself; the last tightened raises the others") {
    const Plan p = support::usual_plan();
    const Sequence s = sequence_of(p);
    std::vector<bool> held;
    for (const SequenceStep& step : s.up)
        if (step.kind == StepKind::Raise || step.kind == StepKind::TieOn) held.push_back(!step.after.by_itself);
    CHECK(held == std::vector<bool>{true, true, true, false});
    const long last = place_of(s.up, StepKind::TightenLast);
    REQUIRE(last > 0);
    const SequenceStep& tightened = s.up[static_cast<std::size_t>(last)];
    CHECK(tightened.eases == k_max_guys);
    const SequenceStep& before = s.up[static_cast<std::size_t>(last - 1)];
    for (std::size_t i = 0; i < 3; ++i) CHECK(tightened.after.guy_tension_N[i] > before.after.guy_tension_N[i]);
}

TEST_CASE("sequence: rigged it is the rig that was judged") {
    for (const Plan& p : {support::usual_plan(), support::go_plan(), support::steep_plan()}) {
        const Sequence s = sequence_of(p);
        const Evaluation e = evaluate_as_measured(p);
        const SequenceStep& check = s.up[static_cast<std::size_t>(place_of(s.up, StepKind::Check))];
        REQUIRE(check.after.by_itself);
        for (std::size_t i = 0; i < p.guys.size(); ++i) CHECK_WITHIN(check.after.guy_tension_N[i], e.outcomes[k_rigged].equilibrium.guy_tension_N[i], 1e-3);
    }
}

TEST_CASE("sequence: what is told to stand by itself stays when bumped, with the guys written anew; held is said whenever it would not") {
    int alone = 0, by_hand = 0, in_parts = 0;
    for (std::uint64_t i = 0; i < 60; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            if (!build_model(p).faults.empty()) continue;
            CAPTURE(p.title);
            const Sequence s = sequence_of(p);
            std::map<std::size_t, double> on;
            std::map<std::size_t, int> tied;
            if (const long back = place_of(s.up, StepKind::BackTieFirst); back >= 0) {
                on[s.up[static_cast<std::size_t>(back)].part] = 0.0;
                ++tied[s.up[static_cast<std::size_t>(back)].part];
            }
            bool stood = false;
            for (const SequenceStep& step : s.up) {
                if (step.kind == StepKind::TieOn) {
                    on[step.part] = 0.0;
                    ++tied[step.part];
                }
                if (step.kind == StepKind::Tighten || step.kind == StepKind::TightenLast) on[step.part] = step.share;
                if (!step.computed) continue;
                CHECK(step.hold == (step.kind == StepKind::Raise || !stood || !step.after.by_itself));
                if (step.after.by_itself) check_stays_when_bumped(p, rig_with(p, on));
                if (step.after.by_itself) ++alone;
                else ++by_hand;
                in_parts += step.share < 1.0;
                stood = step.after.by_itself;
            }
            CHECK(tied.size() == p.guys.size());
            for (const auto& [guy, times] : tied) CHECK(times == 1);
            for (const auto& [guy, share] : on) CHECK(share == 1.0);
        }
    CHECK(alone > 200);
    CHECK(by_hand > 200);
    CHECK(in_parts > 0);
}

TEST_CASE("sequence: down, every guy is loosened to nothing and taken off once, and the head is held before the tie that keeps it goes") {
    for (std::uint64_t i = 0; i < 60; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            if (!build_model(p).faults.empty()) continue;
            CAPTURE(p.title);
            const Sequence s = sequence_of(p);
            std::map<std::size_t, int> off;
            std::map<std::size_t, double> share;
            bool stood = false;
            for (const SequenceStep& step : s.down) {
                if (step.kind == StepKind::Loosen) share[step.part] = step.share;
                if (step.kind == StepKind::TakeOff || step.kind == StepKind::BackTieLast) ++off[step.part];
                if (step.kind == StepKind::TakeOff && stood && !step.after.by_itself) CHECK(step.hold);
                if (step.kind == StepKind::Lower) CHECK(step.hold);
                if (step.computed) stood = step.after.by_itself;
            }
            CHECK(off.size() == p.guys.size());
            for (const auto& [guy, times] : off) CHECK(times == 1);
            for (const auto& [guy, left] : share) CHECK(left == 0.0);
            CHECK(share.size() == p.guys.size());
        }
}

TEST_CASE("sequence: a tripod that one guy at its full pretension would pull over is tightened in turns") {
    const Sequence s = sequence_of(support::random_tripod(7));
    bool in_turns = false;
    for (const SequenceStep& step : s.up) {
        in_turns = in_turns || (step.kind == StepKind::Tighten && step.share < 1.0);
        if (step.kind == StepKind::Tighten) CHECK(step.after.by_itself);
    }
    CHECK(in_turns);
}
