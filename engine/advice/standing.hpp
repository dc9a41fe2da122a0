#pragma once
#include "engine/advice/take_up.hpp"
#include "engine/cases/outcome.hpp"
#include "engine/checks/foot_hold.hpp"
#include "engine/equilibrium/solve.hpp"
#include "engine/model/geometry.hpp"

namespace guywright {

// A rig half built, without rope and load: whether it stands by itself, and if not, what a person holding the head must hold.

/// A bump in passing, newtons, that a head must stand to count as standing by itself (common practice, no source).
inline constexpr double k_bump_N = 50.0;

/// How far a head in a person's hands strays from where it is drawn: an angle about the feet (our own).
inline constexpr double k_stray_rad = radians(5.0);

/// One state of the building.
struct Standing {
    bool by_itself = false;                     ///< stays, with every foot down, also when bumped to any side
    double hold_N = 0.0;                        ///< else: the most that weight and ties ask of whoever holds the head, the bump not counted
    bool foot_slides = false;                   ///< a foot with neither tie, pin nor hobble is pushed harder than friction holds
    Bounded<double, k_max_guys> guy_tension_N;  ///< where it rests, or held where it is drawn
    Bounded<double, k_max_legs> leg_compression_N;
};

namespace detail {

/// Unit vectors along which the head can fall with the legs as long as they are: all round one leg, to both sides of two; three legs
/// have none, and only a bump that lifts a foot brings them down.
inline Bounded<Vec3, 12> ways_to_fall(const Model& m) {
    Bounded<Vec3, 12> ways;
    const Vec3 head_m = m.drawn_head_m;
    if (m.legs.size() == 2) {
        const Vec3 across = plane_of_legs(m, head_m);
        ways.push_back(across);
        ways.push_back(-across);
    }
    if (m.legs.size() != 1) return ways;
    const Vec3 along = glm::normalize(head_m - m.legs[0].foot_m);
    const Vec3 aside = glm::normalize(std::abs(along.y) < 0.9 ? glm::cross(along, Vec3(0, 1, 0)) : glm::cross(along, Vec3(1, 0, 0)));
    const Vec3 other = glm::cross(along, aside);
    for (int i = 0; i < 12; ++i) {
        const double around = 2.0 * k_pi * i / 12.0;
        ways.push_back(std::cos(around) * aside + std::sin(around) * other);
    }
    return ways;
}

inline Vec3 horizontal_way(int of_twelve) { return along_bearing(2.0 * k_pi * of_twelve / 12.0); }

/// At rest near where it is drawn, every foot down.
inline bool rests(const Model& m, const Equilibrium& e, double farthest_share) {
    if (!is_stable(e) || !(glm::length(e.head_m - m.drawn_head_m) <= farthest_share * m.shortest_leg_m)) return false;
    return std::none_of(e.leg_gap_m.begin(), e.leg_gap_m.end(), [](double gap_m) { return gap_m > k_slack_m; });
}

inline bool withstands_bumps(const Model& m, const Equilibrium& rest, double farthest_share) {
    for (int i = 0; i < 12; ++i) {
        Pulls bump;
        bump.push_back({k_bump_N, false, horizontal_way(i)});
        if (!rests(m, solve_equilibrium(m, bump, rest.head_m), farthest_share)) return false;
    }
    return true;
}

/// What the legs push at a head held at one place, and what is left for the hand: the least.
struct Held {
    Bounded<double, k_max_legs> push_N;
    Vec3 hand_N{};
};

/// Best pushes of the legs in `which` (bits) alone, by least squares.
inline bool push_of(const Model& m, Vec3 head_m, Vec3 load_N, unsigned which, Held& out) {
    std::array<Vec3, k_max_legs> up{};
    Sym3 overlap{.xx = 1.0, .yy = 1.0, .zz = 1.0};
    for (std::size_t i = 0; i < m.legs.size(); ++i)
        if ((which >> i & 1u) != 0) up[i] = glm::normalize(head_m - m.legs[i].foot_m);
    overlap.xy = glm::dot(up[0], up[1]);
    overlap.xz = glm::dot(up[0], up[2]);
    overlap.yz = glm::dot(up[1], up[2]);
    const Vec3 wanted{-glm::dot(load_N, up[0]), -glm::dot(load_N, up[1]), -glm::dot(load_N, up[2])};
    Vec3 push_N;
    if (!solve_positive(overlap, wanted, push_N)) return false;
    out = {};
    out.hand_N = -load_N;
    for (std::size_t i = 0; i < m.legs.size(); ++i) {
        const double p_N = push_N[static_cast<int>(i)];
        if (p_N < 0.0 && !m.legs[i].held_down) return false;
        out.push_N.push_back((which >> i & 1u) != 0 ? p_N : 0.0);
        out.hand_N -= out.push_N[i] * up[i];
    }
    return true;
}

/// A head held by hand at `head_m`: the legs push with what leaves least to the hand.
inline Held hold_at(const Model& m, Vec3 head_m) {
    Vec3 load_N{0.0, 0.0, -m.head_weight_N};
    for (const Guy& g : m.guys) load_N += std::max(0.0, signed_tension_N(g, head_m)) * glm::normalize(g.anchor_m - head_m);
    Held best;
    double least_N = HUGE_VAL;
    for (unsigned which = 0; which < 1u << m.legs.size(); ++which) {
        Held held;
        if (!push_of(m, head_m, load_N, which, held) || !(glm::length(held.hand_N) < least_N)) continue;
        least_N = glm::length(held.hand_N);
        best = held;
    }
    return best;
}

/// The most a hand must hold, where the head is drawn and where it may stray to; what pulls it back needs no hand.
inline double most_held_N(const Model& m) {
    double most_N = glm::length(hold_at(m, m.drawn_head_m).hand_N);
    const double stray_m = k_stray_rad * m.shortest_leg_m;
    for (const Vec3 way : ways_to_fall(m)) {
        const Vec3 hand_N = hold_at(m, turn_about_feet(m, m.drawn_head_m, stray_m * way)).hand_N;
        if (glm::dot(hand_N, way) < 0.0) most_N = std::max(most_N, glm::length(hand_N));
    }
    return most_N;
}

inline bool is_fixed(const Plan& plan, std::size_t leg) {
    const bool hobbled = std::any_of(plan.frame.hobbles.begin(), plan.frame.hobbles.end(),
                                     [&](const Hobble& h) { return h.from == static_cast<int>(leg) || h.to == static_cast<int>(leg); });
    return hobbled || plan.feet[leg].pin_shear_kN > 0.0 || !plan.feet[leg].ties.empty();
}

inline bool any_foot_slides(const Plan& plan, const Model& m, Vec3 head_m, const Bounded<double, k_max_legs>& push_N) {
    for (std::size_t i = 0; i < m.legs.size(); ++i) {
        const Leg& leg = m.legs[i];
        const Vec3 along = glm::normalize(head_m - leg.foot_m);
        const Vec3 reaction_N = seen_from_ground(push_N[i] * along + Vec3{0.0, 0.0, leg.weight_N / 2.0}, leg.ground_slope_rad);
        if (!is_fixed(plan, i) && std::hypot(reaction_N.x, reaction_N.y) > plan.feet[i].friction * std::max(0.0, reaction_N.z)) return true;
    }
    return false;
}

}  // namespace detail

/// The rig of `m` under its own weight alone. By itself: it rests within the movement the plan allows a head, with every foot
/// down, also when bumped. Else a person holds it where it is drawn, and the forces are those.
[[nodiscard]] inline Standing find_standing(const Plan& plan, const Model& m) {
    Standing s;
    const double farthest_share = plan.limits.head_shift_max_percent / 100.0;
    const Equilibrium rest = solve_equilibrium(m, {}, m.drawn_head_m);
    s.by_itself = detail::rests(m, rest, farthest_share) && detail::withstands_bumps(m, rest, farthest_share);
    if (s.by_itself) {
        s.guy_tension_N = rest.guy_tension_N;
        s.leg_compression_N = rest.leg_compression_N;
        s.foot_slides = detail::any_foot_slides(plan, m, rest.head_m, rest.leg_compression_N);
        return s;
    }
    for (const Guy& g : m.guys) s.guy_tension_N.push_back(std::max(0.0, signed_tension_N(g, m.drawn_head_m)));
    s.leg_compression_N = detail::hold_at(m, m.drawn_head_m).push_N;
    s.hold_N = detail::most_held_N(m);
    s.foot_slides = detail::any_foot_slides(plan, m, m.drawn_head_m, s.leg_compression_N);
    return s;
}

}  // namespace guywright
