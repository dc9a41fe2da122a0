#pragma once
#include "engine/plan/plan.hpp"

#include <array>
#include <cmath>
#include <vector>

// The rig's energy written a second time, from the design text and the plan alone: nothing of engine/model, equilibrium or
// cases is used. Long double, loops instead of vector algebra, derivatives only by differences: another road to the same
// place. Any number of legs.
namespace second {

using Real = long double;
using Point = std::array<Real, 3>;

enum class Motion { None, Holding, Raising, Lowering, Arrest };

/// An elastic member between a fixed point and the head. Pulls, pushes, or both.
struct Member {
    Point fixed;
    Real rest_m, k_N_m;
    bool pulls, pushes;
};

/// A rope side of constant tension: toward a point, or along a direction.
struct RopeSide {
    Real tension_N;
    bool hangs_free;
    Point at;
};

struct Rig {
    std::vector<Member> legs, guys;
    std::vector<RopeSide> sides;
    Real weight_N = 0;
    Point head{};
};

inline constexpr Real k_pi = 3.14159265358979323846264338327950288L;
inline constexpr Real k_g0 = 9.80665L;
inline Real rad(Real deg) { return deg * k_pi / 180; }

inline Real distance(const Point& a, const Point& b) {
    Real sum = 0;
    for (std::size_t i = 0; i < 3; ++i) sum += (a[i] - b[i]) * (a[i] - b[i]);
    return std::sqrt(sum);
}

inline Point foot_of(const guywright::Plan& p, std::size_t leg) {
    const auto& f = p.frame.legs[leg].foot_m;
    return {f.x, f.y, f.z};
}

/// The head where one leg leans as entered.
inline Point monopod_head(const guywright::Plan& p) {
    const Real length = p.frame.legs[0].length_m, lean = rad(p.frame.lean_deg), bearing = rad(p.frame.lean_bearing_deg);
    const Point foot = foot_of(p, 0);
    return {foot[0] + length * std::sin(lean) * std::cos(bearing), foot[1] - length * std::sin(lean) * std::sin(bearing), foot[2] + length * std::cos(lean)};
}

inline Point unit(const Point& v) {
    const Real size = distance(v, {0, 0, 0});
    return {v[0] / size, v[1] / size, v[2] / size};
}
inline Real dot(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

/// The head of two legs: by the cosine rule in the frame's own plane, which the lean has turned about the line of the feet.
inline Point a_frame_head(const guywright::Plan& p) {
    const Point a = foot_of(p, 0), b = foot_of(p, 1);
    const Real la = p.frame.legs[0].length_m, lb = p.frame.legs[1].length_m, apart = distance(a, b);
    const Real at_a = std::acos((la * la + apart * apart - lb * lb) / (2 * la * apart));
    const Point line = unit({b[0] - a[0], b[1] - a[1], b[2] - a[2]});
    // level, square to the line, on the side leaned to
    Point side = unit({-line[1], line[0], 0});
    const Real bearing = rad(p.frame.lean_bearing_deg);
    if (side[0] * std::cos(bearing) - side[1] * std::sin(bearing) < 0) side = {-side[0], -side[1], 0};
    // steepest direction square to the line
    const Point up = unit({-line[2] * line[0], -line[2] * line[1], 1 - line[2] * line[2]});
    const Real lean = rad(p.frame.lean_deg);
    Point head{};
    for (std::size_t i = 0; i < 3; ++i) head[i] = a[i] + la * (std::cos(at_a) * line[i] + std::sin(at_a) * (std::cos(lean) * up[i] + std::sin(lean) * side[i]));
    return head;
}

inline Point cross(const Point& a, const Point& b) { return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]}; }

/// The head of three legs: started high above the feet and moved by Newton's method until all three lengths fit.
inline Point tripod_head(const guywright::Plan& p) {
    Point head{};
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t k = 0; k < 3; ++k) head[k] += foot_of(p, i)[k] / 3;
        head[2] += static_cast<Real>(p.frame.legs[i].length_m) / 3;
    }
    for (int round = 0; round < 60; ++round) {
        std::array<Point, 3> leg{};
        Point missing{};
        for (std::size_t i = 0; i < 3; ++i) {
            const Point foot = foot_of(p, i);
            leg[i] = unit({head[0] - foot[0], head[1] - foot[1], head[2] - foot[2]});
            missing[i] = p.frame.legs[i].length_m - distance(head, foot);
        }
        const Point x = cross(leg[1], leg[2]), y = cross(leg[2], leg[0]), z = cross(leg[0], leg[1]);
        for (std::size_t k = 0; k < 3; ++k) head[k] += (missing[0] * x[k] + missing[1] * y[k] + missing[2] * z[k]) / dot(leg[0], x);
    }
    return head;
}

inline Point head_of(const guywright::Plan& p) {
    switch (p.frame.kind) {
        case guywright::FrameKind::Monopod: return monopod_head(p);
        case guywright::FrameKind::AFrame: return a_frame_head(p);
        case guywright::FrameKind::Tripod: return tripod_head(p);
    }
    return {};
}

/// Unstretched length of a tie that is `drawn_m` long under its pretension.
inline Real rest_of(Real drawn_m, Real pretension_N, Real EA_N) { return drawn_m * EA_N / (EA_N + pretension_N); }

inline Member guy_of(const guywright::GuyPlan& g, const Point& head) {
    Point anchor{};
    if (g.anchor_m) {
        anchor = {g.anchor_m->x, g.anchor_m->y, g.anchor_m->z};
    } else {
        const Real away = (head[2] - g.anchor_height_m) / std::tan(rad(g.inclination_deg));
        anchor = {head[0] + away * std::cos(rad(g.bearing_deg)), head[1] - away * std::sin(rad(g.bearing_deg)), g.anchor_height_m};
    }
    const Real EA_N = 1000 * static_cast<Real>(g.EA_kN) * g.parts;
    const Real rest = rest_of(distance(anchor, head), 1000 * static_cast<Real>(g.pretension_kN), EA_N);
    return {anchor, rest, EA_N / rest, true, false};
}

/// The load side: direction of fall below the edge, whether it clears the edge, and where it touches.
struct LoadSide {
    Point below;
    bool clear;
    Point contact;
    Real wrap;
};

inline LoadSide load_side(const guywright::Plan& p, const guywright::RopePlan& r, const Point& head, Real added_swing_deg, Real added_out_deg) {
    const Real own = rad(r.swing_deg), swing = rad(r.swing_deg + added_swing_deg);
    Real fall = rad(std::min<Real>(p.edge.face_deg, 90) - r.outward_deg - added_out_deg);
    if (fall < 0) fall = 0;
    LoadSide s{};
    s.below = {std::cos(fall) * std::cos(swing), -std::sin(swing), -std::sin(fall) * std::cos(swing)};
    s.clear = head[0] * std::sin(fall) + head[2] * std::cos(fall) > 0;
    // unrolled over the edge a rope without friction is one straight line: the same slope along the edge on both sides
    const Real run = std::sqrt(head[0] * head[0] + head[2] * head[2]);
    const Real at_rest = r.edge_y_m ? static_cast<Real>(*r.edge_y_m) : head[1] - run * std::tan(own);
    s.contact = {0, at_rest + run * (std::tan(own) - std::tan(swing)), 0};
    Real dot = 0;
    for (std::size_t i = 0; i < 3; ++i) dot += (s.contact[i] - head[i]) * s.below[i];
    s.wrap = s.clear ? 0 : std::acos(std::min<Real>(1, std::max<Real>(-1, dot / distance(s.contact, head))));
    return s;
}

inline void add_rope(Rig& rig, const guywright::Plan& p, const guywright::RopePlan& r, Motion motion, Real added_swing_deg) {
    const LoadSide s = load_side(p, r, rig.head, added_swing_deg, 0);
    const Real edge = std::exp(static_cast<Real>(p.edge.rope_friction) * s.wrap);
    Real head_side = static_cast<Real>(r.load_kg) * r.share * k_g0, haul_side = head_side;
    if (motion == Motion::Raising) {
        head_side *= edge;
        haul_side = head_side / r.pulley_efficiency;
    } else if (motion == Motion::Lowering) {
        head_side /= edge;
        haul_side = head_side * r.pulley_efficiency;
    } else if (motion == Motion::Arrest) {
        head_side *= p.actions.dynamic_factor;
        haul_side = head_side;
    }
    rig.sides.push_back({head_side, s.clear, s.clear ? s.below : s.contact});
    if (!r.haul) return;
    const Real b = rad(r.haul->bearing_deg), d = r.haul->distance_m;
    rig.sides.push_back({haul_side, false, {rig.head[0] + d * std::cos(b), rig.head[1] - d * std::sin(b), r.haul->height_m}});
}

inline Rig rig_of(const guywright::Plan& p, const Point& head, Motion motion, Real added_swing_deg = 0) {
    Rig rig;
    rig.head = head;
    for (std::size_t i = 0; i < p.frame.legs.size(); ++i) {
        const auto& leg = p.frame.legs[i];
        rig.legs.push_back({foot_of(p, i), leg.length_m, 1000 * static_cast<Real>(leg.EA_kN) / leg.length_m, leg.held_down, true});
        rig.weight_N += leg.mass_kg * k_g0 / 2;
    }
    for (const auto& g : p.guys) rig.guys.push_back(guy_of(g, head));
    if (motion != Motion::None)
        for (const auto& r : p.ropes) add_rope(rig, p, r, motion, added_swing_deg);
    return rig;
}

/// Stretch that counts: past the rest length for what pulls, short of it for what pushes.
inline Real working_stretch(const Member& m, const Point& at) {
    const Real stretch = distance(m.fixed, at) - m.rest_m;
    return (stretch > 0 ? m.pulls : m.pushes) ? stretch : 0;
}

inline Real energy_J(const Rig& rig, const Point& at) {
    Real sum = rig.weight_N * at[2];
    for (const auto* members : {&rig.legs, &rig.guys})
        for (const Member& m : *members) {
            const Real stretch = working_stretch(m, at);
            sum += m.k_N_m * stretch * stretch / 2;
        }
    for (const RopeSide& s : rig.sides) {
        if (!s.hangs_free) sum += s.tension_N * distance(s.at, at);
        else
            for (std::size_t i = 0; i < 3; ++i) sum -= s.tension_N * s.at[i] * at[i];
    }
    return sum;
}

/// Central differences of the energy: the out-of-balance force with its sign turned, N.
inline Point slope_N(const Rig& rig, const Point& at) {
    constexpr Real h = 1e-7L;
    Point out{};
    for (std::size_t i = 0; i < 3; ++i) {
        Point plus = at, minus = at;
        plus[i] += h;
        minus[i] -= h;
        out[i] = (energy_J(rig, plus) - energy_J(rig, minus)) / (2 * h);
    }
    return out;
}

using Matrix = std::array<Point, 3>;

/// How far the head may move before a member that pulls or pushes only starts or stops to act.
inline Real way_to_kink_m(const Rig& rig, const Point& at) {
    Real nearest = 1;
    for (const auto* members : {&rig.legs, &rig.guys})
        for (const Member& m : *members)
            if (m.pulls != m.pushes) nearest = std::min(nearest, std::abs(distance(m.fixed, at) - m.rest_m));
    return nearest;
}

/// Below the smallest step the energy's own rounding (1e-19 of it) spoils second differences.
inline constexpr Real k_smallest_step_m = 2e-7L, k_largest_step_m = 2e-6L;
inline bool near_a_kink(const Rig& rig, const Point& at) { return way_to_kink_m(rig, at) < 4 * k_smallest_step_m; }

/// Second differences of the energy, N/m. Means nothing near a kink.
inline Matrix curvature_N_m(const Rig& rig, const Point& at) {
    const Real step = std::min(k_largest_step_m, std::max(k_smallest_step_m, way_to_kink_m(rig, at) / 4));
    Matrix out{};
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j) {
            Real sum = 0;
            for (const int si : {1, -1})
                for (const int sj : {1, -1}) {
                    Point p = at;
                    p[i] += si * step;
                    p[j] += sj * step;
                    sum += si * sj * energy_J(rig, p);
                }
            out[i][j] = sum / (4 * step * step);
        }
    return out;
}

/// Smallest root of the characteristic polynomial by the trigonometric formula (real for a symmetric matrix): no rotations.
inline Real smallest_eigenvalue(const Matrix& a) {
    const Real mean = (a[0][0] + a[1][1] + a[2][2]) / 3;
    Matrix b = a;
    for (std::size_t i = 0; i < 3; ++i) b[i][i] -= mean;
    Real square = 0;
    for (const Point& row : b)
        for (const Real v : row) square += v * v;
    const Real p = std::sqrt(square / 6);
    if (p == 0) return mean;
    const Real det = b[0][0] * (b[1][1] * b[2][2] - b[1][2] * b[2][1]) - b[0][1] * (b[1][0] * b[2][2] - b[1][2] * b[2][0]) +
                     b[0][2] * (b[1][0] * b[2][1] - b[1][1] * b[2][0]);
    const Real r = std::min<Real>(1, std::max<Real>(-1, det / (2 * p * p * p)));
    return mean + 2 * p * std::cos((std::acos(r) + 2 * k_pi) / 3);
}

}  // namespace second
