#pragma once
#include "engine/plan/plan.hpp"
#include "tests/support/random.hpp"

#include <string>

namespace support {

inline guywright::RopePlan random_rope(Random& r, int i) {
    guywright::RopePlan rope;
    rope.name = "rope " + std::to_string(i);
    rope.load_kg = r.between(20.0, 400.0);
    rope.swing_deg = r.chance(0.5) ? r.between(-20.0, 20.0) : 0.0;
    rope.outward_deg = r.chance(0.3) ? r.between(0.0, 15.0) : 0.0;
    if (r.chance(0.3)) rope.edge_y_m = r.between(-0.5, 0.5);
    if (r.chance(0.7)) rope.haul = guywright::Haul{r.between(150.0, 210.0), r.between(1.0, 20.0), r.between(0.0, 1.2)};
    rope.pulley_efficiency = r.between(0.6, 1.0);
    return rope;
}

inline guywright::GuyPlan random_guy(Random& r, int i, double bearing_deg) {
    guywright::GuyPlan g;
    g.name = "guy " + std::to_string(i);
    g.bearing_deg = bearing_deg;
    g.inclination_deg = r.between(12.0, 50.0);
    g.anchor_height_m = r.between(-1.5, 1.0);
    g.EA_kN = r.between(5.0, 400.0);
    g.parts = r.whole(1, 5);
    g.pretension_kN = r.chance(0.15) ? 0.0 : r.between(0.0, 1.5);
    return g;
}

inline void add_random_ropes(guywright::Plan& p, Random& r) {
    const int ropes = r.whole(1, 2);
    for (int i = 0; i < ropes; ++i) p.ropes.push_back(random_rope(r, i));
    if (ropes == 2) p.ropes[0].share = p.ropes[1].share = 0.5;
}

/// All round, about evenly.
inline void add_random_guys(guywright::Plan& p, Random& r, int fewest, int most) {
    const int guys = r.whole(fewest, most);
    const double first_deg = r.between(0.0, 360.0);
    for (int i = 0; i < guys; ++i) {
        const double bearing_deg = first_deg + (360.0 / guys) * (i + r.between(-0.3, 0.3));
        p.guys.push_back(random_guy(r, i, std::fmod(bearing_deg + 720.0, 360.0)));
    }
}

/// A single leg on uneven ground with three to six guys all round, one or two ropes over it: mostly rigs that stand, some that
/// do not. The same plan for the same number on every machine.
inline guywright::Plan random_monopod(std::uint64_t number) {
    Random r(number);
    guywright::Plan p;
    p.title = "random " + std::to_string(number);
    p.edge.face_deg = r.between(25.0, 120.0);
    p.edge.rope_friction = r.between(0.0, 0.7);
    auto& leg = p.frame.legs[0];
    leg.foot_m = {r.between(-3.0, -0.3), r.between(-1.0, 1.0), r.between(-0.5, 0.3)};
    leg.length_m = r.between(1.5, 6.0);
    leg.EA_kN = std::exp(r.between(std::log(500.0), std::log(1e6)));
    leg.mass_kg = r.chance(0.1) ? 0.0 : r.between(0.0, 40.0);
    leg.held_down = r.chance(0.2);
    p.frame.lean_deg = r.between(-5.0, 35.0);
    p.frame.lean_bearing_deg = r.chance(0.5) ? r.between(0.0, 25.0) : r.between(335.0, 360.0);
    add_random_ropes(p, r);
    add_random_guys(p, r, 3, 6);
    p.feet.resize(1);
    return p;
}

inline guywright::LegPlan random_leg(Random& r, double length_m) {
    guywright::LegPlan leg;
    leg.length_m = length_m;
    leg.EA_kN = std::exp(r.between(std::log(500.0), std::log(1e6)));
    leg.mass_kg = r.between(0.0, 25.0);
    leg.held_down = r.chance(0.3);
    return leg;
}

/// Two legs of about the same length, their feet along the edge or in line with the pull, two to six guys.
inline guywright::Plan random_a_frame(std::uint64_t number) {
    Random r(number + 0xA0000000u);
    guywright::Plan p;
    p.title = "random A-frame " + std::to_string(number);
    p.edge.face_deg = r.between(25.0, 120.0);
    p.edge.rope_friction = r.between(0.0, 0.7);
    p.frame.kind = guywright::FrameKind::AFrame;
    const double length_m = r.between(1.5, 5.0), apart_m = length_m * r.between(0.3, 1.1);
    const bool along_edge = r.chance(0.6);
    const guywright::Vec3 middle_m{r.between(-3.0, -0.8), r.between(-1.0, 1.0), r.between(-0.3, 0.3)};
    const guywright::Vec3 half_m = 0.5 * apart_m * (along_edge ? guywright::Vec3(0, 1, 0) : guywright::Vec3(1, 0, 0));
    p.frame.legs = {random_leg(r, length_m * r.between(0.9, 1.1)), random_leg(r, length_m * r.between(0.9, 1.1))};
    p.frame.legs[0].foot_m = middle_m + half_m + r.point(0.15);
    p.frame.legs[1].foot_m = middle_m - half_m + r.point(0.15);
    p.frame.lean_deg = along_edge ? r.between(-5.0, 30.0) : r.between(-8.0, 8.0);
    p.frame.lean_bearing_deg = along_edge ? r.between(0.0, 20.0) : r.between(70.0, 110.0);
    add_random_ropes(p, r);
    add_random_guys(p, r, 2, 6);
    p.feet.resize(2);
    return p;
}

/// Three legs on uneven ground, one of them often over the edge, and none to four guys.
inline guywright::Plan random_tripod(std::uint64_t number) {
    Random r(number + 0x30000000u);
    guywright::Plan p;
    p.title = "random tripod " + std::to_string(number);
    p.edge.face_deg = r.between(25.0, 120.0);
    p.edge.rope_friction = r.between(0.0, 0.7);
    p.frame.kind = guywright::FrameKind::Tripod;
    const double length_m = r.between(1.5, 4.0), radius_m = length_m * r.between(0.3, 0.7), first = r.between(0.0, 2.0);
    const guywright::Vec3 middle_m{r.between(-2.0, 0.5), r.between(-1.0, 1.0), r.between(-0.3, 0.3)};
    p.frame.legs.clear();
    for (int i = 0; i < 3; ++i) {
        p.frame.legs.push_back(random_leg(r, length_m * r.between(0.85, 1.15)));
        const double around = first + 2.0 * guywright::k_pi * (i + r.between(-0.15, 0.15)) / 3.0;
        p.frame.legs.back().foot_m = middle_m + radius_m * guywright::along_bearing(around) + r.point(0.2);
    }
    add_random_ropes(p, r);
    add_random_guys(p, r, 0, 4);
    p.feet.resize(3);
    return p;
}

/// The same rig with every strength beyond need, ground everywhere and the rules of thumb switched off: what is left to fail
/// is only the computation - an answer missing, a leg that falls or lifts.
inline guywright::Plan only_physics(guywright::Plan p) {
    for (auto& g : p.guys) g.strength_kN = g.anchor_strength_kN = 1000.0;
    for (auto& r : p.ropes) r.pulley_strength_kN = r.connector_strength_kN = 1000.0;
    for (auto& leg : p.frame.legs) leg.rating_kN = 1000.0;
    for (auto& f : p.feet) f.pin_shear_kN = 1000.0;
    p.edge.opening_m = 0.1;
    p.limits.guy_angle_min_deg = p.limits.guy_angle_good_deg = 0.0;
    p.limits.bearing_gap_max_deg = p.limits.bearing_gap_good_deg = 360.0;
    p.limits.head_to_edge_m = 0.0;
    p.limits.head_shift_max_percent = 25.0;
    return p;
}

}  // namespace support
