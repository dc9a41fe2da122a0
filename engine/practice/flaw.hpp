#pragma once
#include "engine/checks/check.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>

namespace guywright {

/// What somebody got wrong on a drawn site that must not go.
enum class Flaw : unsigned char {
    None,
    SteepGuy,
    BunchedGuys,
    WrongLean,
    HeadForward,
    HangingAnchor,
    HaulAside,
    LiftedFoot,
    SideBare,
    SoftGuys,
    SlipperyFoot,
    WeakCord,
    WeakAnchor,
    WeakLeg,
    SlenderPole,
    WeakRope,
    WeakPulley,
    WeakHobble
};
inline constexpr std::size_t k_flaw_count = 18;

/// The rules of which one must decide, so that the site shows what it was drawn for.
struct FlawBreaks {
    Flaw flaw;
    std::array<CheckId, 3> rules;
};
inline constexpr std::array<FlawBreaks, k_flaw_count> k_flaw_breaks{{
    {Flaw::None, {CheckId::Solved, CheckId::Solved, CheckId::Solved}},
    {Flaw::SteepGuy, {CheckId::GuyAngle, CheckId::GuyAngle, CheckId::GuyAngle}},
    {Flaw::BunchedGuys, {CheckId::BearingGap, CheckId::BearingGap, CheckId::BearingGap}},
    {Flaw::WrongLean, {CheckId::GuyAngleOverForce, CheckId::Standing, CheckId::HeadShift}},
    {Flaw::HeadForward, {CheckId::FrontTie, CheckId::FrontTie, CheckId::FrontTie}},
    {Flaw::HangingAnchor, {CheckId::AnchorHangs, CheckId::AnchorHangs, CheckId::AnchorHangs}},
    {Flaw::HaulAside, {CheckId::GuyAngleOverForce, CheckId::Standing, CheckId::HeadShift}},
    {Flaw::LiftedFoot, {CheckId::ForceInside, CheckId::FootLifts, CheckId::Standing}},
    {Flaw::SideBare, {CheckId::SideTie, CheckId::SideTie, CheckId::FrontTie}},
    {Flaw::SoftGuys, {CheckId::HeadShift, CheckId::Standing, CheckId::HeadShift}},
    {Flaw::SlipperyFoot, {CheckId::FootFriction, CheckId::FootPin, CheckId::FootTies}},
    {Flaw::WeakCord, {CheckId::GuyStrength, CheckId::GuyStrength, CheckId::GuyStrength}},
    {Flaw::WeakAnchor, {CheckId::AnchorStrength, CheckId::AnchorStrength, CheckId::AnchorStrength}},
    {Flaw::WeakLeg, {CheckId::LegStrength, CheckId::LegStrength, CheckId::LegStrength}},
    {Flaw::SlenderPole, {CheckId::LegBuckling, CheckId::LegBuckling, CheckId::LegBuckling}},
    {Flaw::WeakRope, {CheckId::RopeStrength, CheckId::RopeStrength, CheckId::RopeStrength}},
    {Flaw::WeakPulley, {CheckId::PulleyStrength, CheckId::ConnectorStrength, CheckId::PulleyStrength}},
    {Flaw::WeakHobble, {CheckId::HobbleStrength, CheckId::HobbleStrength, CheckId::HobbleStrength}},
}};

constexpr bool breaks(Flaw flaw, CheckId rule) {
    const auto& rules = k_flaw_breaks[static_cast<std::size_t>(flaw)].rules;
    return std::find(rules.begin(), rules.end(), rule) != rules.end();
}

/// The flaws of a level, as a list that is gone through from wherever the seed says.
using FlawList = std::array<Flaw, 9>;
inline constexpr std::array<FlawList, 5> k_level_flaws{{
    {Flaw::SteepGuy, Flaw::BunchedGuys, Flaw::WeakCord, Flaw::WrongLean, Flaw::SlipperyFoot, Flaw::HeadForward, Flaw::WeakLeg, Flaw::BunchedGuys,
     Flaw::SteepGuy},
    {Flaw::SteepGuy, Flaw::WeakAnchor, Flaw::BunchedGuys, Flaw::SoftGuys, Flaw::HangingAnchor, Flaw::WeakCord, Flaw::WrongLean, Flaw::SlenderPole,
     Flaw::HeadForward},
    {Flaw::HaulAside, Flaw::WrongLean, Flaw::WeakPulley, Flaw::HangingAnchor, Flaw::WeakAnchor, Flaw::HaulAside, Flaw::SlipperyFoot, Flaw::SoftGuys,
     Flaw::WeakRope},
    {Flaw::SideBare, Flaw::WeakHobble, Flaw::LiftedFoot, Flaw::WeakCord, Flaw::WrongLean, Flaw::WeakAnchor, Flaw::SlipperyFoot, Flaw::SlenderPole,
     Flaw::HangingAnchor},
    {Flaw::LiftedFoot, Flaw::WeakRope, Flaw::WeakHobble, Flaw::SlipperyFoot, Flaw::WeakPulley, Flaw::LiftedFoot, Flaw::SlenderPole, Flaw::WeakCord,
     Flaw::WeakLeg},
}};

}  // namespace guywright
