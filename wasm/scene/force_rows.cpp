#include "wasm/scene/force_polygon.hpp"
#include "wasm/scene/stage.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::scene {
namespace {

constexpr const char* k_letter_of_ropes = "R";

std::string leg_name(const app::Speech& speech, const Outcome& o, std::size_t i, std::size_t count) {
    const std::string name = std::string(say(speech, words::k_pushing_leg)) + (count > 1 ? " " + std::to_string(i + 1) : "");
    return o.equilibrium.leg_compression_N[i] < 0.0 ? say(speech, words::k_leg_pulls, {{"{leg}", name}}) : name;
}

/// "load side", and of which rope where there are several.
std::string side_name(const app::Speech& speech, const Plan& plan, std::size_t rope, const app::Said& side) {
    std::string name(say(speech, side));
    return plan.ropes.size() > 1 ? plan.ropes[rope].name + ", " + name : name;
}

std::string name_of(const app::Speech& speech, const Plan& plan, const Outcome& o, const HeadForce& f) {
    switch (f.kind) {
        case HeadForce::Kind::LoadSide: return side_name(speech, plan, f.index, words::k_load_side);
        case HeadForce::Kind::HaulSide: return side_name(speech, plan, f.index, words::k_haul_side);
        case HeadForce::Kind::Weight: return std::string(say(speech, words::k_weight));
        case HeadForce::Kind::Guy: return plan.guys[f.index].name;
        case HeadForce::Kind::RopesTogether: return std::string(say(speech, words::k_ropes));
        case HeadForce::Kind::Leg: return leg_name(speech, o, f.index, plan.frame.legs.size());
    }
    return {};
}

/// "ropes, 4\u00B0 off the leg"; of three legs the angle says nothing while the force goes down between them.
ForceRow ropes_together(const app::Speech& speech, const Model& m, const Outcome& o) {
    std::string name(say(speech, words::k_ropes));
    const app::Said& off = m.legs.size() == 1 ? words::k_off_leg : words::k_off_legs;
    if (m.legs.size() < 3) name += ", " + say(speech, off, {{"{angle}", degree_text(degrees(o.applied_force_angle_rad))}});
    return {k_letter_of_ropes, std::move(name), force_text(speech, glm::length(o.resultant_N)), {HeadForce::Kind::RopesTogether, 0, o.resultant_N}};
}

}  // namespace

std::vector<ForceRow> force_rows(const app::Speech& speech, const Plan& plan, const Evaluation& e, std::size_t shown) {
    const Outcome* outcome = solved_outcome(e, shown);
    std::vector<ForceRow> rows;
    if (outcome == nullptr) return rows;
    for (const HeadForce& f : forces_at_head(e.model, *outcome)) {
        const std::string letter(1, static_cast<char>('A' + static_cast<int>(rows.size())));
        rows.push_back({letter, name_of(speech, plan, *outcome, f), force_text(speech, glm::length(f.force_N)), f});
    }
    for (std::size_t i = 0; i < outcome->equilibrium.guy_tension_N.size(); ++i)
        if (!(outcome->equilibrium.guy_tension_N[i] > 0.0))
            rows.push_back({"", plan.guys[i].name, std::string(say(speech, words::k_slack)), {HeadForce::Kind::Guy, i, Vec3{0.0}}});
    if (glm::length(outcome->resultant_N) > 0.0) rows.push_back(ropes_together(speech, e.model, *outcome));
    return rows;
}

}  // namespace guywright::scene
