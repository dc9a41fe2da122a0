#pragma once
#include "engine/cases/edge_saving.hpp"
#include "engine/verdict/evaluate.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace guywright {

/// A number that a lesson reads out of an evaluation. In SI: radians, newtons, metres, a share or a count.
enum class Readout : unsigned char {
    ForceAngle,     ///< rad: resultant of the ropes off the leg, holding
    HardestGuy,     ///< N: the guy that works hardest, holding
    FirstGuy,       ///< N: guy 0, holding
    FirstGuyAngle,  ///< rad: guy 0 off the leg as drawn
    EdgeTurn,       ///< rad: what rope 0 turns over the edge
    EdgeAdds,       ///< share: what the edge adds to the tension above it, raising
    GroundAdds,     ///< share: the same were the rope to lie flat on the ground
    RaisePull,      ///< N: haul side of rope 0, raising
    RestWay,        ///< m: head from where it is drawn, holding
    SwingWay,       ///< m: head from where it rests holding, in the worse swing; 0 where the load does not swing
    SlackGuys,      ///< count: guys that hang loose, holding
    FatalGuys,      ///< count: guys without which the rig does not stand, holding
    FootUsed,       ///< share: push of foot 0 over what friction gives, holding
    FootPush,       ///< N: push of foot 0 sideways, holding
    FootHolds,      ///< N: what friction gives under foot 0, holding
    RopeTurn,       ///< rad: what rope 0 turns over the pulley, holding; 180 degrees is back on itself
    PulleyTimes,    ///< share: force on the pulley of rope 0 over its load, holding
    PulleyForce,    ///< N: the same as a force
    LegPush,        ///< N: leg that works hardest, holding
    CordUsed,       ///< share of its limit: the cord that is nearest to it, over all cases
    LeastSpare,     ///< share: what the closest rule has to spare over the box of measuring errors; only of a finished sweep
    IsGo            ///< 1 for GO, 0 for NO-GO; none while not checked
};
inline constexpr std::size_t k_readout_count = 22;

namespace detail {

/// What a reading is read from: a rig with a rope that stands as it holds the load.
struct HeldRig {
    const Plan& plan;
    const Evaluation& e;
    const Outcome& holding;
    const Rope& rope;
};

using ReadOut = std::optional<double>;

inline const Outcome* standing_case(const Evaluation& e, CaseId id) {
    for (const Outcome& o : e.outcomes)
        if (o.setup.id == id && o.equilibrium.status == SolveStatus::Solved && o.stable) return &o;
    return nullptr;
}

inline ReadOut most(const auto& values) {
    if (values.empty()) return std::nullopt;
    return *std::max_element(values.begin(), values.end());
}

inline ReadOut first_guy_angle_rad(const HeldRig& h) {
    const Model& m = h.e.model;
    if (m.guys.empty()) return std::nullopt;
    return angle_off_legs_rad(m, m.drawn_head_m, m.guys[0].anchor_m - m.drawn_head_m);
}

inline ReadOut raise_pull_N(const HeldRig& h) {
    const Outcome* raising = standing_case(h.e, CaseId::Raising);
    return raising != nullptr ? ReadOut(raising->setup.ropes[0].haul_side_N) : std::nullopt;
}

/// None where the load would bring the rig down as it swings.
inline ReadOut swing_way_m(const HeldRig& h) {
    double way_m = 0.0;
    for (const Outcome& o : h.e.outcomes) {
        if (o.setup.id != CaseId::SwingLeft && o.setup.id != CaseId::SwingRight) continue;
        if (o.equilibrium.status != SolveStatus::Solved || !o.stable) return std::nullopt;
        way_m = std::max(way_m, glm::length(o.equilibrium.head_m - h.holding.equilibrium.head_m));
    }
    return way_m;
}

inline ReadOut slack_guys(const HeldRig& h) {
    const auto& loose_m = h.holding.equilibrium.guy_loose_m;
    return static_cast<double>(std::count_if(loose_m.begin(), loose_m.end(), [](double m) { return m > k_slack_m; }));
}

inline ReadOut fatal_guys(const HeldRig& h) {
    return static_cast<double>(std::count_if(h.e.guys_lost.begin(), h.e.guys_lost.end(), [](const Outcome& o) { return !o.stable; }));
}

inline ReadOut foot_push_N(const HeldRig& h) {
    const Vec3 reaction_N = h.holding.foot_reaction_N[0];
    return std::hypot(reaction_N.x, reaction_N.y);
}

inline ReadOut foot_holds_N(const HeldRig& h) { return h.plan.feet[0].friction * std::max(0.0, h.holding.foot_reaction_N[0].z); }

inline ReadOut foot_used(const HeldRig& h) {
    const double holds_N = *foot_holds_N(h);
    return holds_N > 0.0 ? ReadOut(*foot_push_N(h) / holds_N) : std::nullopt;
}

/// Of the rope on its way over the pulley: straight on is 0.
inline ReadOut rope_turn_rad(const HeldRig& h) {
    const Pulls& pulls = h.holding.setup.pulls;
    if (!h.rope.has_haul || pulls.size() < 2) return std::nullopt;
    const Vec3 head_m = h.holding.equilibrium.head_m;
    return k_pi - angle_between(pull_force_N(pulls[0], head_m), pull_force_N(pulls[1], head_m));
}

inline ReadOut cord_used(const HeldRig& h) {
    ReadOut used;
    for (std::size_t i = 0; i < h.e.model.guys.size(); ++i)
        if (const Check* c = h.e.checks.find(CheckId::GuyStrength, i); c != nullptr && c->limit > 0.0) used = std::max(used.value_or(0.0), c->value / c->limit);
    return used;
}

inline ReadOut least_spare(const HeldRig& h) {
    if (!h.e.error_swept || h.e.closest.empty()) return std::nullopt;
    const Check& c = h.e.closest[0];
    return c.has_margin && std::isfinite(c.margin) ? ReadOut(c.margin) : std::nullopt;
}

inline ReadOut is_go(const HeldRig& h) { return h.e.verdict == Verdict::NotChecked ? std::nullopt : ReadOut(h.e.verdict == Verdict::Go ? 1.0 : 0.0); }

}  // namespace detail

/// How a reading is read and shown.
struct ReadoutInfo {
    Readout id;
    std::string_view unit;  ///< of the plan: "deg", "kN", "mm", "%"; empty for a count and for times
    double per_SI;          ///< in `unit` = SI value * per_SI
    int decimals;           ///< shown in metric units
    detail::ReadOut (*of)(const detail::HeldRig&);
};

namespace detail {

using Of = ReadOut (*)(const HeldRig&);
inline constexpr ReadoutInfo in_degrees(Readout id, Of of) { return {id, "deg", degrees(1.0), 1, of}; }
inline constexpr ReadoutInfo in_kN(Readout id, Of of) { return {id, "kN", 0.001, 2, of}; }
inline constexpr ReadoutInfo in_mm(Readout id, Of of) { return {id, "mm", 1000.0, 0, of}; }
inline constexpr ReadoutInfo in_percent(Readout id, Of of) { return {id, "%", 100.0, 0, of}; }
inline constexpr ReadoutInfo in_times(Readout id, Of of) { return {id, "", 1.0, 2, of}; }
inline constexpr ReadoutInfo counted(Readout id, Of of) { return {id, "", 1.0, 0, of}; }

}  // namespace detail

inline constexpr std::array<ReadoutInfo, k_readout_count> k_readouts{{
    detail::in_degrees(Readout::ForceAngle, [](const detail::HeldRig& h) { return detail::ReadOut(h.holding.applied_force_angle_rad); }),
    detail::in_kN(Readout::HardestGuy, [](const detail::HeldRig& h) { return detail::most(h.holding.equilibrium.guy_tension_N); }),
    detail::in_kN(Readout::FirstGuy,
                  [](const detail::HeldRig& h) { return h.e.model.guys.empty() ? std::nullopt : detail::ReadOut(h.holding.equilibrium.guy_tension_N[0]); }),
    detail::in_degrees(Readout::FirstGuyAngle, detail::first_guy_angle_rad),
    detail::in_degrees(Readout::EdgeTurn, [](const detail::HeldRig& h) { return detail::ReadOut(h.holding.setup.ropes[0].path.wrap_rad); }),
    detail::in_percent(Readout::EdgeAdds, [](const detail::HeldRig& h) { return detail::ReadOut(edge_saving(h.e.model, h.rope).as_rigged - 1.0); }),
    detail::in_percent(Readout::GroundAdds, [](const detail::HeldRig& h) { return detail::ReadOut(edge_saving(h.e.model, h.rope).on_ground - 1.0); }),
    detail::in_kN(Readout::RaisePull, detail::raise_pull_N),
    detail::in_mm(Readout::RestWay, [](const detail::HeldRig& h) { return detail::ReadOut(h.holding.head_shift_m); }),
    detail::in_mm(Readout::SwingWay, detail::swing_way_m),
    detail::counted(Readout::SlackGuys, detail::slack_guys),
    detail::counted(Readout::FatalGuys, detail::fatal_guys),
    detail::in_percent(Readout::FootUsed, detail::foot_used),
    detail::in_kN(Readout::FootPush, detail::foot_push_N),
    detail::in_kN(Readout::FootHolds, detail::foot_holds_N),
    detail::in_degrees(Readout::RopeTurn, detail::rope_turn_rad),
    detail::in_times(Readout::PulleyTimes, [](const detail::HeldRig& h) { return detail::ReadOut(h.holding.pulley_N[0] / h.rope.weight_N); }),
    detail::in_kN(Readout::PulleyForce, [](const detail::HeldRig& h) { return detail::ReadOut(h.holding.pulley_N[0]); }),
    detail::in_kN(Readout::LegPush, [](const detail::HeldRig& h) { return detail::most(h.holding.equilibrium.leg_compression_N); }),
    detail::in_percent(Readout::CordUsed, detail::cord_used),
    detail::in_percent(Readout::LeastSpare, detail::least_spare),
    detail::counted(Readout::IsGo, detail::is_go),
}};

constexpr const ReadoutInfo& info(Readout id) { return k_readouts[static_cast<std::size_t>(id)]; }

namespace detail {

inline constexpr bool readings_in_order() {
    for (std::size_t i = 0; i < k_readout_count; ++i)
        if (k_readouts[i].id != static_cast<Readout>(i)) return false;
    return true;
}
static_assert(readings_in_order());

}  // namespace detail

/// What a reading comes to; `e` is the evaluation of `plan`. None where the rig does not stand in the case that it speaks of, or the
/// plan has no such part: nothing is read off numbers that are no equilibrium.
[[nodiscard]] inline std::optional<double> read(Readout reading, const Plan& plan, const Evaluation& e) {
    const Outcome* holding = detail::standing_case(e, CaseId::Holding);
    if (holding == nullptr || e.model.ropes.empty()) return std::nullopt;
    return info(reading).of({plan, e, *holding, e.model.ropes[0]});
}

}  // namespace guywright
