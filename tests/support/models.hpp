#pragma once
#include "engine/equilibrium/solve.hpp"
#include "tests/support/random.hpp"

namespace support {

using guywright::Model;
using guywright::Pull;
using guywright::Pulls;
using guywright::Vec3;

/// A constant force, however the head moves: as a free hang.
inline Pull force(Vec3 force_N) {
    const double size_N = glm::length(force_N);
    return {size_N, false, force_N / size_N};
}

/// A rope side of constant tension toward a point.
inline Pull toward(Vec3 point_m, double tension_N) { return {tension_N, true, point_m}; }

/// Starts a model whose head is meant to end up at `head_m`, drawn there.
inline Model model_with_head(Vec3 head_m) {
    Model m;
    m.drawn_head_m = head_m;
    return m;
}

/// Adds a leg that carries `compression_N` when the head is at the drawn head.
inline void add_leg_carrying(Model& m, Vec3 foot_m, double compression_N, double EA_N, bool held_down = false) {
    const double length_m = glm::length(m.drawn_head_m - foot_m);
    const double rest_m = length_m / (1.0 - compression_N / EA_N);
    m.legs.push_back({foot_m, rest_m, EA_N / rest_m, 0.0, held_down});
    m.shortest_leg_m = m.legs.size() == 1 ? rest_m : std::min(m.shortest_leg_m, rest_m);
}

/// Adds a guy that carries `tension_N` when the head is at the drawn head.
inline void add_guy_carrying(Model& m, Vec3 anchor_m, double tension_N, double EA_N) {
    const double rest_m = glm::length(m.drawn_head_m - anchor_m) / (1.0 + tension_N / EA_N);
    m.guys.push_back({anchor_m, rest_m, EA_N / rest_m});
}

/// Adds a guy that hangs `loose_m` longer than its span at the drawn head.
inline void add_loose_guy(Model& m, Vec3 anchor_m, double loose_m, double EA_N) {
    const double rest_m = glm::length(m.drawn_head_m - anchor_m) + loose_m;
    m.guys.push_back({anchor_m, rest_m, EA_N / rest_m});
}

/// Force of the members alone on a head at the drawn point: what the ropes and the weight must balance.
inline Vec3 member_force_N(const Model& m) { return -guywright::local_at(m, {}, m.drawn_head_m).gradient_N; }

/// The rope pull that holds a model in balance at its drawn head, as one constant force.
inline Pulls balancing_pull(const Model& m) {
    Pulls pulls;
    pulls.push_back(force(-member_force_N(m)));
    return pulls;
}

/// A leaning leg with four guys on no axis of symmetry: pretensions differ, nothing lines up.
inline Model skewed_model(bool held_down = false) {
    Model m = model_with_head({-0.6, 0.25, 2.4});
    add_leg_carrying(m, {-1.7, -0.1, 0.1}, 2600.0, 5e6, held_down);
    add_guy_carrying(m, {-5.0, 0.9, -0.4}, 310.0, 60e3);
    add_guy_carrying(m, {0.9, -3.9, 0.2}, 540.0, 90e3);
    add_guy_carrying(m, {1.4, 4.2, -0.1}, 280.0, 30e3);
    add_guy_carrying(m, {-3.2, -3.0, 0.5}, 120.0, 45e3);
    return m;
}

/// The same site seen after `map` has moved every point; `turn` moves directions.
template <class Map, class Turn>
Model mapped(const Model& m, Map map, Turn turn, Pulls& pulls) {
    Model out = m;
    for (auto& leg : out.legs) leg.foot_m = map(leg.foot_m);
    for (auto& g : out.guys) g.anchor_m = map(g.anchor_m);
    out.drawn_head_m = map(m.drawn_head_m);
    for (Pull& p : pulls) p.at = p.toward_point ? map(p.at) : turn(p.at);
    return out;
}

}  // namespace support
