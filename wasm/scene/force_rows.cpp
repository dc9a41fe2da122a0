#include "wasm/scene/force_polygon.hpp"
#include "wasm/scene/stage.hpp"

namespace guywright::scene {
namespace {

constexpr const char* k_load_side = ", load side";
constexpr const char* k_haul_side = ", haul side";
constexpr const char* k_weight = "weight at the head";
constexpr const char* k_leg = "leg";
constexpr const char* k_leg_pulls = " (pulls)";
constexpr const char* k_slack = "slack";
constexpr const char* k_ropes = "ropes";
constexpr const char* k_off_leg = " off the leg";
constexpr const char* k_off_legs = " off the legs";
constexpr const char* k_letter_of_ropes = "R";

std::string leg_name(const Outcome& o, std::size_t i, std::size_t count) {
    const std::string name = count > 1 ? std::string(k_leg) + " " + std::to_string(i + 1) : k_leg;
    return o.equilibrium.leg_compression_N[i] < 0.0 ? name + k_leg_pulls : name;
}

std::string name_of(const Plan& plan, const Outcome& o, const HeadForce& f) {
    switch (f.kind) {
        case HeadForce::Kind::LoadSide: return plan.ropes[f.index].name + k_load_side;
        case HeadForce::Kind::HaulSide: return plan.ropes[f.index].name + k_haul_side;
        case HeadForce::Kind::Weight: return k_weight;
        case HeadForce::Kind::Guy: return plan.guys[f.index].name;
        case HeadForce::Kind::RopesTogether: return k_ropes;
        case HeadForce::Kind::Leg: return leg_name(o, f.index, plan.frame.legs.size());
    }
    return {};
}

/// "ropes, 4° off the leg"; of three legs the angle says nothing while the force goes down between them.
ForceRow ropes_together(const Model& m, const Outcome& o) {
    std::string name = k_ropes;
    if (m.legs.size() < 3) name += ", " + degree_text(degrees(o.applied_force_angle_rad)) + (m.legs.size() == 1 ? k_off_leg : k_off_legs);
    return {k_letter_of_ropes, std::move(name), kilonewton_text(glm::length(o.resultant_N)), {HeadForce::Kind::RopesTogether, 0, o.resultant_N}};
}

}  // namespace

std::vector<ForceRow> force_rows(const Plan& plan, const Evaluation& e, std::size_t shown) {
    const Outcome* outcome = solved_outcome(e, shown);
    std::vector<ForceRow> rows;
    if (outcome == nullptr) return rows;
    for (const HeadForce& f : forces_at_head(e.model, *outcome)) {
        const std::string letter(1, static_cast<char>('A' + static_cast<int>(rows.size())));
        rows.push_back({letter, name_of(plan, *outcome, f), kilonewton_text(glm::length(f.force_N)), f});
    }
    for (std::size_t i = 0; i < outcome->equilibrium.guy_tension_N.size(); ++i)
        if (!(outcome->equilibrium.guy_tension_N[i] > 0.0)) rows.push_back({"", plan.guys[i].name, k_slack, {HeadForce::Kind::Guy, i, Vec3{0.0}}});
    if (glm::length(outcome->resultant_N) > 0.0) rows.push_back(ropes_together(e.model, *outcome));
    return rows;
}

}  // namespace guywright::scene
