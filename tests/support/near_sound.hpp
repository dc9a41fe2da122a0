#pragma once
#include "tests/support/plans.hpp"
#include "tests/support/random.hpp"

namespace support {

/// The sound rig, everything on it a little otherwise: about half of these are GO. The same plan for the same number on
/// every machine.
inline guywright::Plan random_near_sound(std::uint64_t i) {
    Random r(i + 0x50000000u);
    guywright::Plan p = go_plan();
    p.actions.swing_deg = r.between(0.0, 12.0);
    p.ropes[0].load_kg = r.between(60.0, 200.0);
    p.frame.lean_deg += r.between(-6.0, 6.0);
    for (guywright::GuyPlan& g : p.guys) {
        g.bearing_deg += r.between(-12.0, 12.0);
        g.inclination_deg += r.between(-6.0, 6.0);
        g.pretension_kN = r.between(0.1, 0.5);
        g.EA_kN = r.between(20.0, 60.0);
    }
    return p;
}

/// An A-frame on a crest that must be GO: hobbled feet side by side, leaning onto the pull down a slope of 50 degrees, two guys
/// to the back and two down the slope.
inline guywright::Plan sound_a_frame() {
    guywright::Plan p = go_plan();
    p.title = "A-frame";
    p.edge.face_deg = 50.0;
    p.frame.kind = guywright::FrameKind::AFrame;
    p.frame.lean_deg = 12.0;
    p.frame.legs.assign(2, p.frame.legs[0]);
    p.frame.legs[0].foot_m = {-1.6, 1.1, 0.0};
    p.frame.legs[1].foot_m = {-1.6, -1.1, 0.0};
    p.frame.legs[0].length_m = p.frame.legs[1].length_m = 3.0;
    p.frame.hobbles = {{0, 1, 22.0}};
    p.feet[0] = {0.5, 0.0, {{0.0, 9.8}, {180.0, 9.8}}};
    p.feet.assign(2, p.feet[0]);
    p.guys = {guy("back left", 200.0, 30.0, 3), guy("back right", 160.0, 30.0, 3), guy("front left", 0.0, 30.0, 3), guy("front right", 0.0, 30.0, 3)};
    p.guys[2].anchor_m = guywright::Vec3(1.6, 1.8, -1.9);
    p.guys[3].anchor_m = guywright::Vec3(1.6, -1.8, -1.9);
    return p;
}

/// Any rig, everything on it a little otherwise.
inline guywright::Plan jittered(guywright::Plan p, std::uint64_t i) {
    Random r(i + 0x60000000u);
    p.actions.swing_deg = r.between(0.0, 10.0);
    for (guywright::RopePlan& rope : p.ropes) rope.load_kg *= r.between(0.6, 1.4);
    if (p.frame.kind != guywright::FrameKind::Tripod) p.frame.lean_deg += r.between(-5.0, 5.0);
    for (guywright::LegPlan& leg : p.frame.legs) {
        leg.foot_m += guywright::Vec3{r.between(-0.15, 0.15), r.between(-0.15, 0.15), 0.0};
        leg.length_m *= r.between(0.96, 1.04);
    }
    for (guywright::GuyPlan& g : p.guys) {
        if (!g.anchor_m) g.bearing_deg = std::fmod(g.bearing_deg + r.between(-10.0, 10.0) + 360.0, 360.0);
        if (!g.anchor_m) g.inclination_deg += r.between(-5.0, 5.0);
        g.pretension_kN *= r.between(0.5, 2.5);
    }
    return p;
}

namespace detail {

/// One thing on the rig that somebody got wrong, more or less.
inline void spoil(guywright::Plan& p, Random& r) {
    guywright::GuyPlan& g = p.guys[static_cast<std::size_t>(r.whole(0, static_cast<int>(p.guys.size()) - 1))];
    switch (r.whole(0, 11)) {
        case 0: g.parts = 1; break;
        case 1: g.strength_kN = r.between(2.0, 6.0); break;
        case 2: g.pretension_kN = r.between(0.0, 0.1); break;
        case 3: g.bearing_deg += r.between(-50.0, 50.0); break;
        case 4: g.inclination_deg += r.between(5.0, 30.0); break;
        case 5: p.frame.lean_deg -= r.between(5.0, 25.0); break;
        case 6: p.ropes[0].load_kg *= r.between(1.2, 1.8); break;
        case 7:
            for (guywright::FootPlan& f : p.feet) f.ties = {{90.0, 9.8}, {270.0, 9.8}};
            break;
        case 8: p.ropes[0].haul->bearing_deg += r.between(-60.0, 60.0); break;
        case 9:
            for (guywright::LegPlan& leg : p.frame.legs) leg.foot_m.x += r.between(0.2, 1.2);
            break;
        case 10:
            for (guywright::GuyPlan& each : p.guys) each.EA_kN = r.between(5.0, 12.0);
            break;
        default: p.guys.erase(p.guys.begin() + r.whole(0, static_cast<int>(p.guys.size()) - 1)); break;
    }
}

}  // namespace detail

/// A rig that is nearly sound, with one to three things wrong: mostly NO-GO, and often to be mended. Every fourth an A-frame.
inline guywright::Plan random_spoilt(std::uint64_t i) {
    Random r(i + 0x60000000u);
    guywright::Plan p = i % 4 == 0 ? sound_a_frame() : random_near_sound(i);
    for (int n = r.whole(1, 3); n > 0 && !p.guys.empty(); --n) detail::spoil(p, r);
    for (guywright::GuyPlan& g : p.guys) {
        g.bearing_deg = std::fmod(g.bearing_deg + 360.0, 360.0);
        if (r.chance(0.05)) g.anchor_m = guywright::Vec3(r.between(-6.0, -3.5), r.between(-3.0, 3.0), r.between(-0.2, 0.2));
    }
    return p;
}

}  // namespace support
