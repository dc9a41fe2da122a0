#pragma once
#include <string>

#include "engine/base/sym3.hpp"
#include "engine/verdict/evaluate.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/scene/camera.hpp"
#include "wasm/scene/rig.hpp"

namespace guywright::scene {

/// One force on the head, newtons, as the engine's equilibrium has it.
struct HeadForce {
    enum class Kind : unsigned char { LoadSide, HaulSide, Weight, Guy, Leg, RopesTogether } kind = Kind::Weight;  ///< the last: the sum of the first two
    std::size_t index = 0;                                                                                        ///< rope, guy or leg
    Vec3 force_N{0.0};
};

namespace detail {

inline void add_rope_sides(std::vector<HeadForce>& out, const Model& m, const Outcome& o) {
    std::size_t next = 0;  // pulls stand in the order of the ropes: load side, then haul side where there is one
    for (std::size_t i = 0; i < m.ropes.size() && i < o.setup.ropes.size(); ++i) {
        if (!o.setup.ropes[i].loaded) continue;
        out.push_back({HeadForce::Kind::LoadSide, i, pull_force_N(o.setup.pulls[next++], o.equilibrium.head_m)});
        if (m.ropes[i].has_haul) out.push_back({HeadForce::Kind::HaulSide, i, pull_force_N(o.setup.pulls[next++], o.equilibrium.head_m)});
    }
}

}  // namespace detail

/// Every force on the head in a solved case: rope sides first, so that their sum is the resultant, then weight, guys, legs.
/// What carries nothing is left out.
inline std::vector<HeadForce> forces_at_head(const Model& m, const Outcome& o) {
    std::vector<HeadForce> out;
    if (o.equilibrium.status != SolveStatus::Solved) return out;
    const Vec3 head_m = o.equilibrium.head_m;
    detail::add_rope_sides(out, m, o);
    out.push_back({HeadForce::Kind::Weight, 0, {0.0, 0.0, -m.head_weight_N}});
    for (std::size_t i = 0; i < m.guys.size(); ++i)
        out.push_back({HeadForce::Kind::Guy, i, o.equilibrium.guy_tension_N[i] * glm::normalize(m.guys[i].anchor_m - head_m)});
    for (std::size_t i = 0; i < m.legs.size(); ++i)
        out.push_back({HeadForce::Kind::Leg, i, o.equilibrium.leg_compression_N[i] * glm::normalize(head_m - m.legs[i].foot_m)});
    std::erase_if(out, [](const HeadForce& f) { return !(glm::length(f.force_N) > 0.0); });
    return out;
}

/// Tail to tip, kilonewtons, beginning at nothing: one corner more than there are forces. The last one is back at the first if
/// the forces balance.
inline std::vector<Vec3> polygon_of(std::span<const HeadForce> forces) {
    std::vector<Vec3> corners{Vec3{0.0}};
    for (const HeadForce& f : forces) corners.push_back(corners.back() + f.force_N / 1000.0);
    return corners;
}

/// Where the forces end if each begins at nothing, after that place itself; kilonewtons.
inline std::vector<Vec3> tips_of(std::span<const HeadForce> forces) {
    std::vector<Vec3> tips{Vec3{0.0}};
    for (const HeadForce& f : forces) tips.push_back(f.force_N / 1000.0);
    return tips;
}

/// What is left over at the end of the polygon, newtons.
inline double left_over_N(std::span<const HeadForce> forces) { return 1000.0 * glm::length(polygon_of(forces).back()); }

/// Corner at which the resultant of the ropes ends; 0 without a rope.
inline std::size_t end_of_ropes(std::span<const HeadForce> forces) {
    std::size_t count = 0;
    while (count < forces.size() && forces[count].kind <= HeadForce::Kind::HaulSide) ++count;
    return count;
}

namespace detail {

inline Vec3 rotated(Vec3 v, Vec3 axis, double angle) {
    return std::cos(angle) * v + std::sin(angle) * glm::cross(axis, v) + (1.0 - std::cos(angle)) * glm::dot(axis, v) * axis;
}

/// Unit normal of the plane that the forces nearly lie in.
inline Vec3 normal_of(std::span<const HeadForce> forces) {
    Sym3 spread;
    for (const HeadForce& f : forces) add_axial(spread, f.force_N, 1e-6, 0.0);
    return eigen(spread).vector[0];
}

}  // namespace detail

/// Looks square at the plane the forces nearly lie in, up as far up as that allows, out to the right; where out is seen end on,
/// looking out.
inline Eye square_eye(std::span<const HeadForce> forces) {
    constexpr double k_end_on = 0.2;
    Vec3 forward = detail::normal_of(forces);
    const Vec3 lying = std::abs(forward.z) < 0.9 ? Vec3{0, 0, 1} : Vec3{1, 0, 0};
    Eye eye;
    eye.up = glm::normalize(lying - glm::dot(lying, forward) * forward);
    const double out_right = glm::cross(forward, eye.up).x;
    if (std::abs(out_right) > k_end_on ? out_right < 0.0 : forward.x < 0.0) forward = -forward;
    eye.forward = forward;
    eye.right = glm::cross(forward, eye.up);
    return eye;
}

/// The eye for the polygon in `room`, or for the same forces all from the head: as large as fits when seen square, and of that size
/// while it is turned.
inline Eye polygon_eye(std::span<const HeadForce> forces, const Camera& camera, const ImageBox& room, bool from_head = false) {
    std::vector<Vec3> corners = from_head ? tips_of(forces) : polygon_of(forces);
    if (from_head) corners.push_back(polygon_of(forces)[end_of_ropes(forces)]);  // the resultant, too, is drawn from the head
    Eye eye = fit_parallel(square_eye(forces), corners, room, 1.0);
    const Vec3 up = eye.up;
    for (Vec3* axis : {&eye.forward, &eye.right}) *axis = detail::rotated(*axis, up, -radians(static_cast<double>(camera.forces_yaw_deg)));
    for (Vec3* axis : {&eye.forward, &eye.up}) *axis = detail::rotated(*axis, eye.right, -radians(static_cast<double>(camera.forces_pitch_deg)));
    eye.at_m = middle_of(corners) - 100.0 * eye.forward;
    centre(eye, corners, room, static_cast<double>(camera.zoom));
    apply_moved(eye, camera, room);
    return eye;
}

/// A round length for the scale, in a unit of force: 1, 2 or 5 times a power of ten, at most `most_px` long.
inline double scale_bar(double px_per_unit, double most_px) {
    const double most = most_px / px_per_unit, power = std::pow(10.0, std::floor(std::log10(most)));
    return power * (most >= 5.0 * power ? 5.0 : most >= 2.0 * power ? 2.0 : 1.0);
}

/// One line of the list beside the polygon.
struct ForceRow {
    std::string letter;  ///< stands at its vector too; empty for what is slack
    std::string name, amount;
    HeadForce force;
};

/// The forces of the case with their names and numbers, slack guys and what the ropes do together at the end. Empty where the case has no answer.
std::vector<ForceRow> force_rows(const app::Speech& speech, const Plan& plan, const Evaluation& e, std::size_t shown);

}  // namespace guywright::scene
