#include "tests/support/plans.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/force_polygon.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

constexpr ImageBox k_room{{20, 10}, {370, 240}};

double largest_N(std::span<const HeadForce> forces) {
    double largest = 0.0;
    for (const HeadForce& f : forces) largest = std::max(largest, glm::length(f.force_N));
    return largest;
}

/// Left over is what the solver left, and nothing that the drawing forgot.
void check_closes(const Model& m, const Outcome& o) {
    const std::vector<HeadForce> forces = forces_at_head(m, o);
    if (o.equilibrium.status != SolveStatus::Solved) {
        CHECK(forces.empty());
        return;
    }
    const double rounding_N = 1e-9 * (1.0 + largest_N(forces));
    CHECK_WITHIN(left_over_N(forces), o.equilibrium.residual_N, rounding_N + 1e-6);
    CHECK(left_over_N(forces) <= o.equilibrium.residual_N + rounding_N + 1e-6);
    Vec3 ropes_N{0.0};
    for (std::size_t i = 0; i < end_of_ropes(forces); ++i) ropes_N += forces[i].force_N;
    CHECK_VEC_WITHIN(ropes_N, o.resultant_N, rounding_N);
}

}  // namespace

TEST_CASE("force polygon: closes in every case of a rig, and in rigs of every kind made up at random") {
    const Evaluation usual = evaluate_as_measured(support::usual_plan());
    REQUIRE(usual.outcomes.size() > 8);
    for (const Outcome& o : usual.outcomes) check_closes(usual.model, o);
    int solved = 0;
    for (std::uint64_t i = 0; i < 150; ++i) {
        const Plan plan = i % 3 == 0 ? support::random_monopod(i) : i % 3 == 1 ? support::random_a_frame(i) : support::random_tripod(i);
        const Evaluation e = evaluate_as_measured(plan);
        for (const Outcome& o : e.outcomes) {
            check_closes(e.model, o);
            solved += o.equilibrium.status == SolveStatus::Solved ? 1 : 0;
        }
    }
    CHECK(solved > 200);
}

TEST_CASE("force polygon: does not close when a guy is forgotten") {
    const Evaluation e = evaluate_as_measured(support::usual_plan());
    std::vector<HeadForce> forces = forces_at_head(e.model, e.outcomes[k_holding]);
    std::erase_if(forces, [](const HeadForce& f) { return f.kind == HeadForce::Kind::Guy && f.index == 1; });
    CHECK(left_over_N(forces) > 100.0);
}

TEST_CASE("force polygon: the tensions are the outcome's, a rope has two sides, what is slack is left out") {
    Plan plan = support::usual_plan();
    plan.guys[1].pretension_kN = plan.guys[2].pretension_kN = 0.0;
    plan.guys.push_back(support::guy("front", 20, 35));
    const Evaluation e = evaluate_as_measured(plan);
    const Equilibrium& rest = e.outcomes[k_holding].equilibrium;
    const std::vector<HeadForce> forces = forces_at_head(e.model, e.outcomes[k_holding]);
    CHECK(end_of_ropes(forces) == 2);
    std::size_t guys = 0, pulling = 0;
    for (const HeadForce& f : forces) {
        if (f.kind != HeadForce::Kind::Guy) continue;
        ++guys;
        CHECK_WITHIN(glm::length(f.force_N), rest.guy_tension_N[f.index], 1e-9);
        CHECK(glm::dot(f.force_N, e.model.guys[f.index].anchor_m - rest.head_m) > 0.0);  // it pulls
    }
    for (const double tension_N : rest.guy_tension_N) pulling += tension_N > 0.0 ? 1 : 0;
    CHECK(guys == pulling);
    CHECK(pulling < plan.guys.size());
    CHECK(end_of_ropes(forces_at_head(e.model, e.outcomes[k_rigged])) == 0);
}

TEST_CASE("force polygon: seen square to the plane it lies in, up as up, out to the right") {
    const std::vector<HeadForce> flat{
        {HeadForce::Kind::LoadSide, 0, {1000, 0, -1500}}, {HeadForce::Kind::HaulSide, 0, {-1500, 0, -300}}, {HeadForce::Kind::Leg, 0, {500, 0, 1800}}};
    const Eye eye = square_eye(flat);
    CHECK_VEC_WITHIN(eye.up, (Vec3{0, 0, 1}), 1e-9);
    CHECK_VEC_WITHIN(eye.right, (Vec3{1, 0, 0}), 1e-9);
    CHECK_VEC_WITHIN(eye.forward, (Vec3{0, 1, 0}), 1e-9);  // from the right, like the view from the side
    std::vector<HeadForce> across = flat;
    for (HeadForce& f : across) f.force_N = {0.0, -f.force_N.x, f.force_N.z};
    CHECK_VEC_WITHIN(square_eye(across).forward, (Vec3{1, 0, 0}), 1e-9);  // end on: looking out, left is left
}

TEST_CASE("force polygon: in the room when square, of the same size while it turns, its axes square") {
    const Evaluation e = evaluate_as_measured(support::usual_plan());
    const std::vector<HeadForce> forces = forces_at_head(e.model, e.outcomes[k_holding]);
    const Eye square = polygon_eye(forces, {}, k_room);
    const ImageBox seen = box_round(square, polygon_of(forces));
    for (int i = 0; i < 2; ++i) {
        CHECK(seen.min[i] >= k_room.min[i] - 0.01);
        CHECK(seen.max[i] <= k_room.max[i] + 0.01);
    }
    for (const float turn : {20.0F, 75.0F, 180.0F, 300.0F}) {
        const Eye turned = polygon_eye(forces, {.forces_yaw_deg = turn, .forces_pitch_deg = turn / 5.0F}, k_room);
        CHECK_WITHIN(turned.scale_px, square.scale_px, 1e-9);
        CHECK_WITHIN(glm::dot(turned.right, turned.up), 0.0, 1e-9);
        CHECK_VEC_WITHIN(glm::cross(turned.right, turned.forward), turned.up, 1e-9);
    }
}

TEST_CASE("forces from the head: every tip and that of the resultant is in the room") {
    const Evaluation e = evaluate_as_measured(support::usual_plan());
    const std::vector<HeadForce> forces = forces_at_head(e.model, e.outcomes[k_holding]);
    std::vector<Vec3> tips = tips_of(forces);
    tips.push_back((forces[0].force_N + forces[1].force_N) / 1000.0);  // of both sides of the rope
    for (const ImageBox& room : {k_room, ImageBox{{0, 0}, {700, 120}}}) {
        const ImageBox seen = box_round(polygon_eye(forces, {}, room, true), tips);
        for (int i = 0; i < 2; ++i) {
            CHECK(seen.min[i] >= room.min[i] - 0.01);
            CHECK(seen.max[i] <= room.max[i] + 0.01);
        }
    }
}

TEST_CASE("force polygon: the scale is a round length that fits") {
    for (const double px : {0.7, 3.0, 41.0, 260.0, 9000.0}) {
        const double kN = scale_bar(px, 130.0), mantissa = kN / std::pow(10.0, std::floor(std::log10(kN) + 1e-9));
        CHECK(kN * px <= 130.0 + 1e-9);
        CHECK(kN * px > 130.0 / 2.51);
        CHECK((std::abs(mantissa - 1.0) < 1e-9 || std::abs(mantissa - 2.0) < 1e-9 || std::abs(mantissa - 5.0) < 1e-9));
    }
}
