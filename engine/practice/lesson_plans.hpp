#pragma once
#include "engine/plan/plan.hpp"

#include <utility>

namespace guywright {

// What the lessons begin with: rigs at the quarry dam, all measured, sound but for what the lesson is about.

namespace detail {

inline GuyPlan dam_guy(std::string name, double bearing_deg, double inclination_deg) {
    GuyPlan g;
    g.name = std::move(name);
    g.bearing_deg = bearing_deg;
    g.inclination_deg = inclination_deg;
    g.parts = 3;
    g.anchor_strength_kN = 20.0;
    return g;
}

inline void pretension_all(Plan& p, double kN) {
    for (GuyPlan& g : p.guys) g.pretension_kN = kN;
}

/// One leg on the bench above the spillway, four guys, 150 kg over the head and hauled straight back: the leg leans onto the pull.
inline Plan spillway_bench() {
    Plan p;
    p.title = "Spillway bench inspection";
    p.edge.face_deg = 85.0;
    p.frame.legs[0].foot_m = {-2.8, 0.0, 0.0};
    p.frame.legs[0].rating_kN = 40.0;
    p.frame.legs[0].mass_kg = 8.0;
    p.frame.lean_deg = 20.0;
    RopePlan rope;
    rope.load_kg = 150.0;
    rope.haul = Haul{180.0, 8.0, 0.6};
    rope.strength_kN = 40.0;
    rope.knot_efficiency = 0.7;
    p.ropes = {rope};
    p.guys = {dam_guy("back right", 145.0, 30.0), dam_guy("back left", 215.0, 30.0), dam_guy("right", 75.0, 30.0), dam_guy("left", 285.0, 30.0)};
    FootPlan foot;
    foot.friction = 0.5;
    foot.ties = {{0.0, 9.8}, {90.0, 9.8}, {180.0, 9.8}, {270.0, 9.8}};
    p.feet = {foot};
    p.tolerances.bearing_deg = 5.0;
    return p;
}

/// Upright: the pull comes from well off the leg.
inline Plan upright_leg(std::size_t) {
    Plan p = spillway_bench();
    pretension_all(p, 0.1);
    p.frame.lean_deg = 0.0;
    return p;
}

/// One back guy that runs down close by the leg, and a haul near the foot: the guy alone holds what pulls forward.
inline Plan steep_back_guy(std::size_t) {
    Plan p = spillway_bench();
    p.guys = {dam_guy("back", 180.0, 56.0), dam_guy("right", 75.0, 30.0), dam_guy("left", 285.0, 30.0)};
    pretension_all(p, 0.1);
    for (GuyPlan& g : p.guys) g.EA_kN = 100.0;
    p.ropes[0].haul->distance_m = 1.5;
    return p;
}

/// A short leg far back: the rope comes off the head and bends hard over the edge.
inline Plan rope_on_the_edge(std::size_t) {
    Plan p = spillway_bench();
    p.edge.face_deg = 75.0;
    p.frame.legs[0].foot_m.x = -3.4;
    p.frame.legs[0].length_m = 2.2;
    for (GuyPlan& g : p.guys) g.inclination_deg = 45.0;
    return p;
}

/// Leaning past the pull, so that only what is behind is tight: one guy behind, or with `choice` 1 two.
inline Plan leaning_far_out(std::size_t choice) {
    Plan p = spillway_bench();
    p.frame.lean_deg = 28.0;
    if (choice == 0) p.guys = {dam_guy("back", 180.0, 30.0), dam_guy("right", 80.0, 30.0), dam_guy("left", 280.0, 30.0)};
    else p.guys[2].bearing_deg = 80.0, p.guys[3].bearing_deg = 280.0;
    for (GuyPlan& g : p.guys) g.parts = 2;
    pretension_all(p, 0.1);
    return p;
}

/// Five guys, of which the fifth stands beside another and helps nobody.
inline Plan fifth_guy(std::size_t) {
    Plan p = spillway_bench();
    p.frame.lean_deg = 25.0;
    p.guys.push_back(dam_guy("fifth", 100.0, 30.0));
    return p;
}

/// A foot that nothing but friction holds.
inline Plan free_foot(std::size_t) {
    Plan p = spillway_bench();
    p.frame.lean_deg = 32.0;
    p.feet[0].ties.clear();
    p.feet[0].friction = 0.4;
    return p;
}

/// Three legs over the drain shaft, the haul straight down beside the load.
inline Plan haul_straight_down(std::size_t) {
    Plan p = spillway_bench();
    p.title = "Drain shaft tripod";
    p.edge.face_deg = 90.0;
    p.edge.opening_m = 1.4;
    p.frame.kind = FrameKind::Tripod;
    p.frame.lean_deg = 0.0;
    LegPlan leg = p.frame.legs[0];
    leg.length_m = 2.8;
    leg.mass_kg = 6.0;
    leg.held_down = true;
    p.frame.legs.assign(3, leg);
    p.frame.legs[0].foot_m = {-0.7, 1.0, 0.0};
    p.frame.legs[1].foot_m = {-0.7, -1.0, 0.0};
    p.frame.legs[2].foot_m = {2.2, 0.0, 0.0};
    p.frame.hobbles = {{0, 1, 9.8}, {1, 2, 9.8}, {2, 0, 9.8}};
    p.guys.clear();
    p.feet.assign(3, FootPlan{0.5, 20.0, {}});
    p.ropes[0].haul = Haul{180.0, 0.2, 0.5};
    p.actions.swing_deg = 5.0;
    return p;
}

/// Guys of two parts that nobody has taken in yet.
inline Plan loose_guys(std::size_t) {
    Plan p = spillway_bench();
    p.frame.lean_deg = 26.0;
    p.actions.swing_deg = 15.0;
    for (GuyPlan& g : p.guys) g.parts = 2;
    pretension_all(p, 0.0);
    return p;
}

/// Good as measured; bearings by compass.
inline Plan by_compass(std::size_t) {
    Plan p = spillway_bench();
    p.frame.lean_deg = 26.0;
    p.tolerances.bearing_deg = 10.0;
    return p;
}

/// A heavy pole near the edge, to be raised with its guys.
inline Plan heavy_pole(std::size_t) {
    Plan p = spillway_bench();
    p.frame.legs[0].foot_m.x = -1.8;
    p.frame.legs[0].mass_kg = 25.0;
    p.guys = {dam_guy("back left", 225.0, 30.0), dam_guy("left", 285.0, 45.0), dam_guy("right", 75.0, 45.0), dam_guy("back", 180.0, 30.0)};
    return p;
}

}  // namespace detail
}  // namespace guywright
