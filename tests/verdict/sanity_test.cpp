#include "engine/base/shown_unit.hpp"
#include "engine/plan/numbers.hpp"
#include "engine/verdict/evaluate.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

// What must hold of any rig, and the conditions under which it must.

using namespace guywright;

namespace {

bool all_stable(const Evaluation& e) {
    return e.faults.empty() && std::all_of(e.outcomes.begin(), e.outcomes.end(), [](const Outcome& o) { return o.stable; });
}

double largest_leg_force_N(const Evaluation& e) {
    double most = 0.0;
    for (const Outcome& o : e.outcomes) most = std::max(most, std::abs(o.equilibrium.leg_compression_N[0]));
    return most;
}

double other_side_deg(double bearing_deg) { return bearing_deg == 0.0 ? 0.0 : 360.0 - bearing_deg; }

/// The rig in a mirror that stands square to the edge.
Plan mirrored(Plan p) {
    for (LegPlan& leg : p.frame.legs) leg.foot_m.y *= -1.0;
    p.frame.lean_bearing_deg = other_side_deg(p.frame.lean_bearing_deg);
    for (RopePlan& r : p.ropes) {
        r.swing_deg *= -1.0;
        if (r.edge_y_m) *r.edge_y_m *= -1.0;
        if (r.haul) r.haul->bearing_deg = other_side_deg(r.haul->bearing_deg);
    }
    for (GuyPlan& g : p.guys) {
        g.bearing_deg = other_side_deg(g.bearing_deg);
        if (g.anchor_m) g.anchor_m->y *= -1.0;
    }
    for (FootPlan& f : p.feet)
        for (FootTie& t : f.ties) t.bearing_deg = other_side_deg(t.bearing_deg);
    return p;
}

CaseId in_mirror(CaseId id) {
    if (id == CaseId::ArrestSwingLeft) return CaseId::ArrestSwingRight;
    if (id == CaseId::ArrestSwingRight) return CaseId::ArrestSwingLeft;
    if (id == CaseId::SwingLeft) return CaseId::SwingRight;
    return id == CaseId::SwingRight ? CaseId::SwingLeft : id;
}

const Outcome& outcome_of(const Evaluation& e, CaseId id, std::size_t rope) {
    for (const Outcome& o : e.outcomes)
        if (o.setup.id == id && o.setup.part == rope) return o;
    FAIL("no such case");
    return e.outcomes[0];
}

/// A rig whose rope hangs clear whatever way it is turned: on a ledge 20 m out, over nothing.
Plan far_out(Plan p, double turn_deg) {
    const auto turn = [&](double deg) { return std::fmod(deg + turn_deg + 720.0, 360.0); };
    p.edge.face_deg = 90.0;
    p.edge.opening_m = 0.1;
    p.frame.legs[0].foot_m = {20.0, 0.0, 0.0};
    p.frame.legs[0].mass_kg = std::max(p.frame.legs[0].mass_kg, 1.0);
    p.frame.lean_bearing_deg = turn(p.frame.lean_bearing_deg);
    for (RopePlan& r : p.ropes) {
        r.swing_deg = r.outward_deg = 0.0;
        r.edge_y_m.reset();
        if (r.haul) r.haul->bearing_deg = turn(r.haul->bearing_deg);
    }
    for (GuyPlan& g : p.guys) g.bearing_deg = turn(g.bearing_deg);
    p.actions.swing_deg = p.actions.outward_deg = 0.0;
    return p;
}

}  // namespace

// Condition: the rig stands in every case at both loads (a falling one has no leg force), and nothing else changes.
TEST_CASE("more load never lowers the largest leg force, as long as the rig stands under both") {
    int compared = 0;
    for (std::uint64_t i = 1; i <= 400; ++i) {
        const Plan light = support::exact(support::only_physics(support::random_monopod(i)));
        for (const double factor : {1.02, 1.5}) {
            Plan heavy = light;
            for (RopePlan& r : heavy.ropes) r.load_kg *= factor;
            const Evaluation a = evaluate(light), b = evaluate(heavy);
            if (!all_stable(a) || !all_stable(b)) continue;
            ++compared;
            CAPTURE(i);
            CHECK(largest_leg_force_N(b) >= largest_leg_force_N(a) * (1.0 - 1e-9));
        }
    }
    CHECK(compared > 400);
}

// Condition: stronger means a higher breaking strength. A stiffer cord draws more of the load and may overload its anchor.
TEST_CASE("a stronger cord, anchor, leg or pulley never turns GO to NO-GO") {
    int go = 0, turned_go = 0;
    for (std::uint64_t i = 1; i <= 600; ++i) {
        support::Random r(i + 90000);
        Plan weak = support::exact(support::only_physics(support::random_monopod(i)));
        for (GuyPlan& g : weak.guys) g.strength_kN = std::exp(r.between(std::log(2.0), std::log(60.0)));
        Plan strong = weak;
        for (GuyPlan& g : strong.guys) {
            g.strength_kN *= r.between(1.0, 5.0);
            g.knot_efficiency = std::min(1.0, g.knot_efficiency * r.between(1.0, 1.5));
        }
        const Evaluation a = evaluate(weak), b = evaluate(strong);
        CAPTURE(i);
        if (a.verdict == Verdict::Go) CHECK(b.verdict == Verdict::Go);
        go += a.verdict == Verdict::Go;
        turned_go += a.verdict == Verdict::NoGo && b.verdict == Verdict::Go;
    }
    CHECK(go > 50);
    CHECK(turned_go > 20);  // so the strengths tried do matter
}

// Condition: none. Where a rig stands on a knife's edge the mirror falls the other way; such a one is not stable.
TEST_CASE("a mirrored rig gets the mirrored answer and the same verdict") {
    int compared = 0;
    for (std::uint64_t i = 1; i <= 400; ++i) {
        const Plan p = support::exact(support::only_physics(support::random_monopod(i)));
        const Evaluation a = evaluate(p), b = evaluate(mirrored(p));
        CAPTURE(i);
        CHECK(a.verdict == b.verdict);
        CHECK(a.faults.size() == b.faults.size());
        if (!a.faults.empty()) continue;
        for (const Outcome& o : a.outcomes) {
            const Outcome& m = outcome_of(b, in_mirror(o.setup.id), o.setup.part);
            CHECK(o.stable == m.stable);
            if (!o.stable || !m.stable) continue;
            ++compared;
            const Vec3 head_m = m.equilibrium.head_m;
            CHECK_VEC_WITHIN(Vec3(head_m.x, -head_m.y, head_m.z), o.equilibrium.head_m, 1e-6);
            for (std::size_t g = 0; g < p.guys.size(); ++g)
                CHECK_WITHIN(m.equilibrium.guy_tension_N[g], o.equilibrium.guy_tension_N[g], 0.01 + 1e-5 * o.equilibrium.guy_tension_N[g]);
        }
    }
    CHECK(compared > 2000);
}

// Condition: no rope touches the edge and none is swung or pulled outward, for those are measured from the edge; and the leg
// weighs something: a weightless one can rest anywhere among its slack guys, up to where one of them begins to pull.
TEST_CASE("turning the whole site about the vertical changes nothing where no rope touches the edge") {
    int compared = 0;
    for (std::uint64_t i = 1; i <= 200; ++i) {
        const Plan p = support::exact(support::only_physics(support::random_monopod(i)));
        const Evaluation a = evaluate(far_out(p, 0.0)), b = evaluate(far_out(p, 137.0));
        CAPTURE(i);
        REQUIRE(a.outcomes.size() == b.outcomes.size());
        for (std::size_t c = 0; c < a.outcomes.size(); ++c) {
            const Outcome &x = a.outcomes[c], &y = b.outcomes[c];
            if (!x.setup.ropes.empty() && x.setup.ropes[0].loaded) REQUIRE(x.setup.ropes[0].path.clear_of_edge);
            CHECK(x.stable == y.stable);
            if (!x.stable || !y.stable) continue;
            ++compared;
            for (std::size_t g = 0; g < p.guys.size(); ++g)
                CHECK_WITHIN(y.equilibrium.guy_tension_N[g], x.equilibrium.guy_tension_N[g], 0.01 + 1e-5 * x.equilibrium.guy_tension_N[g]);
            CHECK_WITHIN(y.applied_force_angle_rad, x.applied_force_angle_rad, 1e-6);
            CHECK_WITHIN(y.head_shift_m, x.head_shift_m, 1e-6);
        }
    }
    CHECK(compared > 400);
}

// Condition: typed with every digit; a person rounds.
TEST_CASE("the same plan entered in ft, lb and lbf gets the same verdict and the same margins") {
    int compared = 0;
    for (const Plan& start : {support::go_plan(), support::usual_plan(), support::steep_plan()}) {
        Plan entered = start;
        for_each_number(entered, [&](const std::string& path, double& v, const Range&) {
            const double per_kept = shown_unit(unit_of_path(path), UnitSystem::Imperial).per_kept;
            char typed[64];
            std::snprintf(typed, sizeof typed, "%.17g", v * per_kept);
            v = std::strtod(typed, nullptr) / per_kept;
            compared += per_kept != 1.0;
        });
        const Evaluation a = evaluate(start), b = evaluate(entered);
        CHECK(a.verdict == b.verdict);
        REQUIRE(a.closest.size() == b.closest.size());
        for (std::size_t i = 0; i < a.closest.size(); ++i)
            if (std::isfinite(a.closest[i].margin)) CHECK_WITHIN(b.closest[i].margin, a.closest[i].margin, 1e-6);
    }
    CHECK(compared > 60);
}

// Condition: as measured. The points in the box of errors are dealt out in the order of the plan.
TEST_CASE("listing guys, ropes and foot ties in another order changes no verdict and no margin") {
    for (const Plan& start : {support::exact(support::usual_plan()), support::exact(support::steep_plan())}) {
        Plan p = start;
        p.ropes.push_back(p.ropes[0]);
        p.ropes[0].share = 0.6;
        p.ropes[1].share = 0.4;
        p.ropes[1].name = "second";
        p.ropes[1].haul.reset();
        Plan q = p;
        std::rotate(q.guys.begin(), q.guys.begin() + 1, q.guys.end());
        std::swap(q.ropes[0], q.ropes[1]);
        std::swap(q.feet[0].ties[0], q.feet[0].ties[1]);
        const Evaluation a = evaluate(p), b = evaluate(q);
        CHECK(a.verdict == b.verdict);
        REQUIRE(a.closest.size() == b.closest.size());
        for (std::size_t i = 0; i < a.closest.size(); ++i) CHECK_WITHIN(b.closest[i].margin, a.closest[i].margin, 1e-6);
    }
}

TEST_CASE("the same plan gives the same bits every time") {
    const Evaluation a = evaluate(support::usual_plan()), b = evaluate(support::usual_plan());
    REQUIRE(a.outcomes.size() == b.outcomes.size());
    for (std::size_t i = 0; i < a.outcomes.size(); ++i) CHECK(a.outcomes[i].equilibrium.head_m == b.outcomes[i].equilibrium.head_m);
}

// Condition: switched to only the computation, so that GO hangs on nothing but answers and stability.
TEST_CASE("with every rule of thumb off, GO still needs every case answered and stable") {
    int go = 0, unstable = 0;
    for (std::uint64_t i = 1; i <= 1500; ++i) {
        const Evaluation e = evaluate(support::exact(support::only_physics(support::random_monopod(i))));
        if (!e.faults.empty()) continue;
        CAPTURE(i);
        const bool stands = all_stable(e);
        unstable += !stands;
        go += e.verdict == Verdict::Go;
        if (!stands) CHECK(e.verdict == Verdict::NoGo);
    }
    CHECK(go > 500);
    CHECK(unstable > 100);
}
