#include "wasm/app/starters.hpp"

#include "wasm/app/not_measured.hpp"
#include "wasm/app/plan_edits.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

GuyPlan guy_at(std::string name, double bearing_deg) {
    GuyPlan g;
    g.name = std::move(name);
    g.bearing_deg = bearing_deg;
    g.parts = 3;  // one strand of usual cord with knots carries a tenth of 5.9 kN: seldom enough
    return g;
}

void put_in_language(std::string& name, const Speech& speech) {
    for (const Said& known : words::k_example_names)
        if (known.english == name || known.french == name) return void(name = std::string(say(speech, known)));
}

}  // namespace

void name_in_language(Plan& example, const Speech& speech) {
    put_in_language(example.title, speech);
    put_in_language(example.note, speech);
    for (GuyPlan& guy : example.guys) put_in_language(guy.name, speech);
    for (RopePlan& rope : example.ropes) put_in_language(rope.name, speech);
}

Plan new_plan(const Speech& speech) {
    const auto named = [&](const Said& name) { return std::string(say(speech, name)); };
    Plan plan;
    plan.title = named(words::k_new_plan);
    plan.ropes.push_back({});
    plan.ropes[0].name = named(words::k_main_rope);
    plan.ropes[0].haul = Haul{};
    plan.guys = {guy_at(named(words::k_back_guy), 180.0), guy_at(named(words::k_right_guy), 70.0), guy_at(named(words::k_left_guy), 290.0)};
    plan.feet.push_back({});
    plan.feet[0].ties = {{.bearing_deg = 0.0}, {.bearing_deg = 180.0}};
    for (const char* path : {"edge.face_deg", "frame.foot_m[0][0]", "frame.leg_length_m[0]", "frame.lean_deg", "frame.leg_rating_kN[0]", "ropes[0].load_kg"})
        mark_not_measured(plan, path);
    mark_haul_not_measured(plan, 0);
    for (std::size_t i = 0; i < plan.guys.size(); ++i) mark_guy_not_measured(plan, i);
    return plan;
}

}  // namespace guywright::app
