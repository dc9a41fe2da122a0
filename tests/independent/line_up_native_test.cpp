#include "engine/advice/line_up.hpp"
#include "tests/independent/asked.hpp"
#include "tests/independent/minimise.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using second::Point;
using second::Real;

namespace {

/// The rig of the plan, its guys' rest lengths changed as told, the head where it is meant to come: written from the take-ups
/// alone, not from the plan that the line-up leaves. Its ropes run from the new head to where their points stood.
second::Rig taken_in(const Plan& p, const LineUp& l, second::Motion motion) {
    second::Rig rig = second::rig_of(p, second::head_of(p), second::Motion::None);
    for (std::size_t i = 0; i < rig.guys.size(); ++i) {
        const Real EA_N = rig.guys[i].k_N_m * rig.guys[i].rest_m;
        rig.guys[i].rest_m -= l.take_up_m[i];
        rig.guys[i].k_N_m = EA_N / rig.guys[i].rest_m;
    }
    const Point drawn = second::head_of(p);
    rig.head = second::point(l.head_m);
    if (motion == second::Motion::None) return rig;
    for (const RopePlan& r : p.ropes) {
        const std::size_t first = rig.sides.size();
        second::add_rope(rig, p, r, motion, 0);
        if (!r.haul) continue;  // paced from the plumb point of the first head
        rig.sides[first + 1].at[0] += drawn[0] - rig.head[0];
        rig.sides[first + 1].at[1] += drawn[1] - rig.head[1];
    }
    return rig;
}

Point from(const Point& a, const Point& b) { return second::unit({b[0] - a[0], b[1] - a[1], b[2] - a[2]}); }

/// Degrees between the rope's resultant and the leg, or the plane of two.
double angle_off_legs_deg(const second::Rig& rig, const Point& head) {
    Point sum{};
    for (const second::RopeSide& s : rig.sides) {
        const Point way = s.hangs_free ? s.at : from(head, s.at);
        for (std::size_t i = 0; i < 3; ++i) sum[i] += s.tension_N * way[i];
    }
    const Point pull = second::unit(sum), a = from(head, rig.legs[0].fixed);
    if (rig.legs.size() == 1) return static_cast<double>(std::acos(std::min<Real>(1, second::dot(pull, a))) * 180 / second::k_pi);
    const Point normal = second::unit(second::cross(a, from(head, rig.legs[1].fixed)));
    return static_cast<double>(std::asin(std::min<Real>(1, std::abs(second::dot(pull, normal)))) * 180 / second::k_pi);
}

}  // namespace

TEST_CASE("independent: taken in as told, the force comes to the angle that the line-up says, by a second energy") {
    int compared = 0, lined_up = 0;
    for (std::uint64_t i = 1; i <= 60; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i)}) {
            const BuiltModel built = build_model(p);
            if (!built.faults.empty()) continue;
            const LineUp l = find_line_up(p, built.model);
            if (l.take_up_m.empty()) continue;
            CAPTURE(p.title);
            const second::Minimum rigged = second::minimise(taken_in(p, l, second::Motion::None));
            second::Rig loaded = taken_in(p, l, second::Motion::Holding);
            loaded.head = rigged.head;
            CHECK_WITHIN(angle_off_legs_deg(loaded, second::minimise(loaded).head), degrees(l.angle_after_rad), 0.2);
            ++compared;
            lined_up += l.status == LineUpStatus::LinedUp;
        }
    CHECK(compared > 50);
    CHECK(lined_up > 20);
}
