#pragma once
#include "engine/model/geometry.hpp"
#include "engine/plan/plan.hpp"
#include "engine/practice/draw.hpp"
#include "engine/practice/flaw.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

namespace guywright {

/// Places of the invented quarry dam; a drawn site is at one of them.
inline constexpr std::array<std::string_view, 12> k_site_places{"Spillway bench", "Dam crest",      "Drain shaft",      "Gate tower",
                                                                "Sluice gallery", "Quarry face",    "Crusher ledge",    "Intake wall",
                                                                "Lower berm",     "Haul road edge", "Valve house roof", "Old loading deck"};

/// What guys are called, by the eighth of the way round they stand in; 0 is straight out.
inline constexpr std::array<std::string_view, 8> k_guy_ways{"front", "front right", "right", "back right", "back", "back left", "left", "front left"};

namespace detail {

/// Builds one rig by chance. All numbers are whole steps of what a person would enter.
class RigDrawing {
public:
    RigDrawing(Draw& draw, int level) : d_(draw), level_(level) {}

    Plan rig() {
        p_.title = std::string(d_.one_of(k_site_places));
        p_.tolerances.bearing_deg = 5.0;
        draw_edge();
        if (level_ <= 3) draw_monopod();
        else if (level_ == 4) draw_a_frame();
        else draw_tripod();
        draw_ropes();
        return std::move(p_);
    }

private:
    [[nodiscard]] bool slopes() const { return level_ >= 4; }

    void draw_edge() {
        if (slopes()) p_.edge.face_deg = d_.stepped(40, 60, 5);
        else if (level_ >= 2) p_.edge.face_deg = d_.stepped(75, 100, 5);
        p_.edge.rope_friction = d_.hundredths(10, level_ == 1 ? 30 : 40, 10);
        p_.actions.swing_deg = level_ == 3 ? d_.stepped(5, 15, 5) : level_ == 5 ? 5.0 : 10.0;
    }

    LegPlan leg() {
        LegPlan l;
        l.length_m = d_.hundredths(240, 320, 10);
        l.rating_kN = d_.stepped(36, 50, 2);
        l.mass_kg = d_.stepped(6, 10, 1);
        l.held_down = level_ == 5 || (level_ == 4 && d_.one_in(2));  // as bolted down
        return l;
    }

    /// Held by a pin, or by ties all round.
    FootPlan foot() {
        FootPlan f;
        f.friction = d_.hundredths(30, 50, 5);
        if (d_.one_in(2)) f.pin_shear_kN = d_.stepped(16, 30, 2);
        else
            for (const double way_deg : {0.0, 90.0, 180.0, 270.0}) f.ties.push_back({way_deg, 12.8});
        return f;
    }

    // Two draws never stand side by side as arguments or operands, whose order is the compiler's; in braces they go from left to right.
    struct Way {
        double bearing_deg, inclination_deg;
    };
    struct Spot {
        double x_m, y_m;
    };

    GuyPlan guy(Way way) {
        GuyPlan g;
        g.bearing_deg = std::fmod(way.bearing_deg + 360.0, 360.0);
        g.inclination_deg = way.inclination_deg;
        g.EA_kN = d_.stepped(25, 40, 5);
        g.strength_kN = d_.one_in(2) ? 9.8 : 12.8;
        g.parts = 3;
        g.pretension_kN = d_.hundredths(20, 50, 10);
        g.anchor_strength_kN = d_.stepped(16, 26, 2);
        if (level_ == 2 || level_ == 3) g.anchor_height_m = d_.hundredths(-30, 40, 10);
        return g;
    }

    void add_guy(GuyPlan g) {
        const auto eighth = static_cast<std::size_t>(std::lround(g.bearing_deg / 45.0)) % k_guy_ways.size();
        g.name = std::string(k_guy_ways[eighth]);
        for (const GuyPlan& other : p_.guys)
            if (other.name == g.name) return;  // two of one name would be one on the radio
        p_.guys.push_back(std::move(g));
    }

    void draw_monopod() {
        p_.frame.legs[0] = leg();
        p_.frame.legs[0].foot_m = {-d_.hundredths(220, 320, 10), 0.0, 0.0};
        p_.frame.lean_deg = d_.stepped(14, 26, 1);
        if (level_ >= 2) p_.frame.lean_bearing_deg = std::fmod(d_.stepped(345, 375, 5), 360.0);
        p_.feet = {foot()};
        const int step_deg = level_ == 1 ? 10 : 5, low = level_ == 1 ? 28 : 24, high = level_ == 1 ? 32 : 38;
        const auto steep = [&] { return d_.stepped(low, high, level_ == 1 ? 2 : 1); };
        add_guy(guy({d_.stepped(125, 155, step_deg), steep()}));
        add_guy(guy({d_.stepped(205, 245, step_deg), steep()}));
        add_guy(guy({d_.stepped(60, 90, step_deg), steep()}));
        add_guy(guy({d_.stepped(270, 300, step_deg), steep()}));
        if (level_ >= 2 && d_.one_in(3)) p_.guys.pop_back();
        if (level_ >= 2 && d_.one_in(3)) add_guy(guy({d_.stepped(160, 200, 5), steep()}));
    }

    /// On the slope beyond the edge.
    void add_front_guy(Spot at, std::string_view name) {
        GuyPlan g = guy({0.0, 30.0});
        g.name = std::string(name);
        const double fall_m = std::tan(radians(p_.edge.face_deg)) * at.x_m;
        g.anchor_m = Vec3(at.x_m, at.y_m, -std::round(fall_m * 20.0) / 20.0);
        p_.guys.push_back(std::move(g));
    }

    void draw_a_frame() {
        p_.frame.kind = FrameKind::AFrame;
        const LegPlan each = leg();
        p_.frame.legs = {each, each};
        const double back_m = d_.hundredths(130, 190, 10), half_m = d_.hundredths(90, 130, 10);
        p_.frame.legs[0].foot_m = {-back_m, half_m, 0.0};
        p_.frame.legs[1].foot_m = {-back_m, -half_m, 0.0};
        p_.frame.lean_deg = d_.stepped(8, 18, 1);
        p_.frame.hobbles = {{0, 1, d_.stepped(18, 26, 2)}};
        p_.feet.assign(2, foot());
        for (FootPlan& f : p_.feet) f.friction = d_.hundredths(40, 60, 5);
        add_guy(guy({d_.stepped(140, 165, 5), d_.stepped(26, 38, 1)}));
        add_guy(guy({d_.stepped(195, 220, 5), d_.stepped(26, 38, 1)}));
        add_front_guy({d_.hundredths(120, 220, 10), d_.hundredths(100, 240, 10)}, "front left");
        add_front_guy({d_.hundredths(120, 220, 10), -d_.hundredths(100, 240, 10)}, "front right");
    }

    /// Two feet on the crest, one down the slope.
    void draw_tripod() {
        p_.frame.kind = FrameKind::Tripod;
        const LegPlan each = leg();
        p_.frame.legs = {each, each, each};
        const double back_m = d_.hundredths(110, 170, 10), half_m = d_.hundredths(90, 130, 10), out_m = d_.hundredths(40, 90, 10);
        p_.frame.legs[0].foot_m = {-back_m, half_m, 0.0};
        p_.frame.legs[1].foot_m = {-back_m, -half_m, 0.0};
        const double fall_m = std::round(std::tan(radians(p_.edge.face_deg)) * out_m * 20.0) / 20.0;
        p_.frame.legs[2].foot_m = {out_m, 0.0, -fall_m};
        p_.frame.legs[2].length_m = each.length_m + std::round(fall_m * 10.0) / 10.0;
        p_.frame.hobbles = {{0, 1, d_.stepped(18, 26, 2)}, {1, 2, d_.stepped(18, 26, 2)}, {2, 0, d_.stepped(18, 26, 2)}};
        p_.feet.assign(3, foot());
        for (FootPlan& f : p_.feet) f.friction = d_.hundredths(40, 60, 5);
        add_guy(guy({d_.stepped(120, 160, 5), d_.stepped(26, 40, 1)}));
        add_guy(guy({d_.stepped(200, 240, 5), d_.stepped(26, 40, 1)}));
        for (GuyPlan& g : p_.guys) g.pretension_kN = d_.hundredths(10, 30, 10);             // more, and they lift the front foot
        add_front_guy({d_.hundredths(160, 260, 20), d_.hundredths(-60, 60, 20)}, "front");  // without it those behind tip it over before the load comes
    }

    RopePlan rope(std::string_view name) {
        RopePlan r;
        r.name = std::string(name);
        r.load_kg = d_.stepped(80, level_ >= 4 ? 160 : 180, 10);
        r.strength_kN = 40.0;
        r.knot_efficiency = 0.7;
        Haul haul{180.0, d_.hundredths(400, 1000, 50), d_.hundredths(30, 90, 10)};
        if (level_ == 5) haul = {180.0, d_.hundredths(60, 140, 10), d_.hundredths(20, 60, 10)};  // down to the feet: a tripod is not hauled on
        if (level_ >= 2) haul.bearing_deg = d_.stepped(170, 190, 5);
        if (level_ == 3) {  // low, or to one side
            if (d_.one_in(2)) haul.height_m = d_.hundredths(-60, 20, 10);
            else haul.bearing_deg = d_.stepped(150, 210, 10);
            r.swing_deg = d_.stepped(-5, 5, 5);
        }
        r.haul = haul;
        r.pulley_efficiency = d_.hundredths(80, 95, 5);
        return r;
    }

    void draw_ropes() {
        p_.ropes = {rope("main")};
        if (level_ < 5) return;
        RopePlan safety = rope("safety");
        safety.load_kg = p_.ropes[0].load_kg;
        safety.share = p_.ropes[0].share = 0.5;
        p_.ropes.push_back(std::move(safety));
    }

    Draw& d_;
    int level_;
    Plan p_;
};

inline GuyPlan& any_guy(Draw& d, Plan& p) { return p.guys[static_cast<std::size_t>(d.whole(0, static_cast<int>(p.guys.size()) - 1))]; }

/// To either side.
inline double turned(Draw& d, int low, int high, int step) {
    const double side = d.one_in(2) ? 1.0 : -1.0;
    return side * d.stepped(low, high, step);
}

/// So far forward that the force falls in front of the legs, and what stands behind holds it.
inline void lean_onto_back_guys(Draw& d, Plan& p) { p.frame.lean_deg += d.stepped(8, 18, 1); }

/// Guys crowded into one part of the way round, a wide gap left open.
inline void bunch_guys(Draw& d, Plan& p) {
    const auto count = static_cast<int>(p.guys.size());
    const double wide_deg = d.stepped(130, 160, 10);
    lean_onto_back_guys(d, p);
    for (int i = 0; i < count; ++i) {
        GuyPlan& g = p.guys[static_cast<std::size_t>(i)];
        g.bearing_deg = 180.0 + std::round((i - 0.5 * (count - 1)) * wide_deg / (count - 1) / 5.0) * 5.0;
        g.name = std::string(k_guy_ways[static_cast<std::size_t>(std::lround(g.bearing_deg / 45.0)) % k_guy_ways.size()]);
    }
    for (std::size_t i = 1; i < p.guys.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (p.guys[k].name == p.guys[i].name) p.guys[i].name += " 2";
}

inline void bring_forward(Draw& d, Plan& p) {
    for (LegPlan& l : p.frame.legs) l.foot_m.x += d.hundredths(80, 160, 10);
    lean_onto_back_guys(d, p);
    for (GuyPlan& g : p.guys)
        if (!g.anchor_m && (g.bearing_deg < 90.0 || g.bearing_deg > 270.0))
            g.bearing_deg = g.bearing_deg < 90.0 ? d.stepped(95, 110, 5) : d.stepped(250, 265, 5);
}

inline void make_poles(Draw& d, Plan& p) {
    const double diameter_mm = d.stepped(45, 65, 5);
    for (LegPlan& l : p.frame.legs) {
        l.pole_diameter_mm = diameter_mm;
        l.pole_E_GPa = 10.0;
    }
}

inline void let_foot_lift(Draw& d, Plan& p) {
    const double turn_deg = turned(d, 50, 90, 10), away_m = d.hundredths(400, 900, 50);
    for (RopePlan& r : p.ropes) r.haul = {std::fmod(r.haul->bearing_deg + turn_deg + 360.0, 360.0), away_m, r.haul->height_m};
}

inline void soften(Draw& d, Plan& p) {
    for (GuyPlan& g : p.guys) {
        g.EA_kN = d.stepped(5, 8, 1);
        g.parts = 1;
        g.strength_kN = 40.0;
        g.pretension_kN = d.hundredths(0, 10, 5);
    }
}

inline void bare_one_side(Draw& d, Plan& p) {
    lean_onto_back_guys(d, p);
    std::erase_if(p.guys, [](const GuyPlan& g) { return g.anchor_m.has_value(); });
}

inline void hang_anchor(Draw& d, Plan& p) {
    for (GuyPlan& g : p.guys) {
        if (g.anchor_m) return void(g.anchor_m->z += d.hundredths(80, 140, 20));
        if (g.bearing_deg > 0.0 && g.bearing_deg < 90.0) return void(g.bearing_deg = d.stepped(15, 35, 5));
    }
}

}  // namespace detail

/// Gets one thing on the rig wrong.
inline void spoil(Draw& d, Plan& p, Flaw flaw) {
    switch (flaw) {
        case Flaw::None: return;
        case Flaw::SteepGuy: detail::any_guy(d, p).inclination_deg = d.stepped(62, 74, 1); return;
        case Flaw::BunchedGuys: return detail::bunch_guys(d, p);
        case Flaw::WrongLean: p.frame.lean_deg -= d.stepped(16, 30, 1); return;
        case Flaw::HeadForward: return detail::bring_forward(d, p);
        case Flaw::HangingAnchor: return detail::hang_anchor(d, p);
        case Flaw::HaulAside: p.ropes[0].haul->bearing_deg = std::fmod(p.ropes[0].haul->bearing_deg + detail::turned(d, 60, 100, 5) + 360.0, 360.0); return;
        case Flaw::LiftedFoot: return detail::let_foot_lift(d, p);
        case Flaw::SideBare: return detail::bare_one_side(d, p);
        case Flaw::SoftGuys: return detail::soften(d, p);
        case Flaw::SlipperyFoot:
            for (FootPlan& f : p.feet) f = {d.hundredths(5, 25, 5), 0.0, {}};
            p.frame.hobbles.clear();
            return;
        case Flaw::WeakCord: {
            GuyPlan& g = detail::any_guy(d, p);
            g.parts = 1;
            g.strength_kN = d.hundredths(300, 700, 50);
            g.EA_kN = 90.0;  // as stiff as the others, but weak
            return;
        }
        case Flaw::WeakAnchor: detail::any_guy(d, p).anchor_strength_kN = d.hundredths(100, 250, 50); return;
        case Flaw::WeakLeg:
            for (LegPlan& l : p.frame.legs) l.rating_kN = d.stepped(p.frame.legs.size() == 1 ? 6 : 3, p.frame.legs.size() == 1 ? 14 : 8, 1);
            return;
        case Flaw::SlenderPole: return detail::make_poles(d, p);
        case Flaw::WeakRope:
            for (RopePlan& r : p.ropes) r.strength_kN = d.stepped(12, 20, 1);
            return;
        case Flaw::WeakPulley: p.ropes[0].pulley_strength_kN = d.stepped(6, 12, 1); return;
        case Flaw::WeakHobble:
            for (Hobble& h : p.frame.hobbles) h.strength_kN = d.hundredths(100, 250, 50);
            return;
    }
}

/// A rig of the level by chance, with one thing wrong or none that is meant: whether it stands is for the engine to say.
[[nodiscard]] inline Plan draw_rig(Draw& draw, int level, Flaw flaw) {
    Plan p = detail::RigDrawing(draw, level).rig();
    spoil(draw, p, flaw);
    return p;
}

}  // namespace guywright
