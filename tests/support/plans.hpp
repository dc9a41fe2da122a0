#pragma once
#include "engine/plan/plan.hpp"

namespace support {

inline guywright::GuyPlan guy(std::string name, double bearing_deg, double inclination_deg, int parts = 1) {
    guywright::GuyPlan g;
    g.name = std::move(name);
    g.bearing_deg = bearing_deg;
    g.inclination_deg = inclination_deg;
    g.parts = parts;
    return g;
}

/// Three steep guys, the back one of single cord. Leaning only 12 degrees with steep guys: not a rig to trust.
inline guywright::Plan steep_plan() {
    guywright::Plan p;
    p.title = "Spillway bench";
    p.frame.legs[0].foot_m = {-1.2, 0.0, 0.0};
    p.frame.lean_deg = 12.0;
    guywright::RopePlan rope;
    rope.load_kg = 200.0;
    rope.haul = guywright::Haul{180.0, 8.0, 0.6};
    p.ropes = {rope};
    p.guys = {guy("back", 180.0, 40.0), guy("right", 60.0, 40.0, 3), guy("left", 300.0, 40.0, 3)};
    guywright::FootPlan foot;
    foot.ties = {{0.0, 9.8}, {180.0, 9.8}};
    p.feet = {foot};
    return p;
}

/// A rig that keeps every rule at the measured values: foot 2.2 m back, leaning 22 degrees forward onto the pull, flat guys of
/// tripled cord, 200 kg. Its front anchors hang; measuring error brings it down.
inline guywright::Plan usual_plan() {
    guywright::Plan p = steep_plan();
    p.title = "Quarry dam inspection";
    p.frame.legs[0].foot_m = {-2.2, 0.0, 0.0};
    p.frame.lean_deg = 22.0;
    p.guys = {guy("back", 180.0, 22.0, 3), guy("right", 72.0, 34.0, 3), guy("left", 288.0, 34.0, 3)};
    return p;
}

/// A rig that must be GO, the usual measuring errors and an arrest with a swing included: foot 2.8 m back, leaning 20 degrees
/// forward onto the pull, four flat guys of tripled cord, 150 kg; bearings taped.
inline guywright::Plan go_plan() {
    guywright::Plan p = steep_plan();
    p.title = "Quarry dam inspection";
    p.edge.face_deg = 85.0;
    p.frame.legs[0].foot_m = {-2.8, 0.0, 0.0};
    p.frame.legs[0].rating_kN = 40.0;
    p.frame.lean_deg = 20.0;
    p.ropes[0].load_kg = 150.0;
    p.ropes[0].strength_kN = 40.0;
    p.ropes[0].knot_efficiency = 0.7;
    p.guys = {guy("back right", 145.0, 30.0, 3), guy("back left", 215.0, 30.0, 3), guy("right", 70.0, 30.0, 3), guy("left", 290.0, 30.0, 3)};
    p.feet[0].ties = {{0.0, 9.8}, {90.0, 9.8}, {180.0, 9.8}, {270.0, 9.8}};
    p.tolerances.bearing_deg = 5.0;
    return p;
}

/// The same rig measured without any error: the verdict is that of the measured values.
inline guywright::Plan exact(guywright::Plan p) {
    p.tolerances = {0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0};
    return p;
}

}  // namespace support
