#include "engine/cases/edge_saving.hpp"
#include "engine/model/build_model.hpp"
#include "tests/support/plans.hpp"
#include "tests/support/within.hpp"

using namespace guywright;

namespace {

EdgeSaving saving_of(const Plan& p) {
    const Model m = build_model(p).model;
    return edge_saving(m, m.ropes[0]);
}

}  // namespace

// exp(mu b) with mu 0.3 and 90 deg: 1.6020 (capstan equation: Baker & Haynes, Engineering Statics, ch. 9, READ; value computed).
TEST_CASE("over a vertical edge a rope flat on the ground takes 1.602 times its load, one over the head less") {
    Plan p = support::usual_plan();
    const EdgeSaving s = saving_of(p);
    CHECK_WITHIN(s.on_ground, 1.6020, 5e-5);
    // 2.7 m leaning 22 deg from a foot 2.2 m back: the rope turns by atan(1.1886 / 2.5034) = 25.396 deg at the edge
    CHECK_WITHIN(s.as_rigged, std::exp(0.3 * radians(25.396)), 1e-4);
}

TEST_CASE("clear of the edge nothing is lost there") {
    Plan p = support::usual_plan();
    p.frame.legs[0].foot_m.x = -0.5;
    CHECK(saving_of(p).as_rigged == 1.0);
    CHECK(saving_of(p).on_ground > 1.6);
}

TEST_CASE("on a slope the rope on the ground turns by the slope only") {
    Plan p = support::usual_plan();
    p.edge.face_deg = 45.0;
    CHECK_WITHIN(saving_of(p).on_ground, 1.2657, 5e-5);  // exp(0.3 * 45 deg)
}
