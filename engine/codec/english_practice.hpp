#pragma once
#include "engine/codec/practice_words.hpp"

namespace guywright {

// clang-format off
inline constexpr PracticeWords k_english_practice{
    .lines = {{
        {SiteText::RopeSides, "Rope {name} pulls the head toward the load with {force} and toward the haul with {other}."},
        {SiteText::RopeTiedOff, "Rope {name} pulls the head toward the load with {force}."},
        {SiteText::Resultant, "Added as arrows, all sides of the ropes pull with {force}, {angle} off straight down."},
        {SiteText::OffLeg, "That pull is {angle} off the leg: the applied-force angle."},
        {SiteText::OffLegs, "That pull is {angle} off the plane of the two legs: the applied-force angle."},
        {SiteText::InsideLegs, "That pull falls {angle} inside the three legs."},
        {SiteText::OutsideLegs, "That pull falls {angle} outside the three legs."},
        {SiteText::AlongLeg, "{force} of it goes straight into the leg; {other} is left across it, and only guys can hold that."},
        {SiteText::AlongLegs, "{force} of it lies in the plane of the legs; {other} is left across it, and only guys can hold that."},
        {SiteText::IntoLegs, "The three legs share all {force} of it; the guys only steady them."},
        {SiteText::HardestGuy, "Guy {name} works hardest, with {force}: it stands {angle} off the leg, so {other} of its tension pulls across."},
        {SiteText::HardestOfTwo, "Guy {name} works hardest, with {force}: it stands {angle} off the plane of the legs, so {other} of its tension pulls across."},
        {SiteText::SteadyingGuy, "Guy {name} works hardest, with {force}; it was tightened to {other} before the load came."},
        {SiteText::ChosenGuy, "Guy {name}, which you chose, has {force}, and {other} of it pulls across."},
        {SiteText::LegCarries, "{leg} carries {force}: its part of the pull, and what the guys pull down with."},
        {SiteText::Rule, "What decides:"},
        {SiteText::Why, "Why that is a rule:"},
        {SiteText::Mend, "What would mend it:"},
    }},
    .reasons = {{
        {CheckId::GuyAngle, "a guy close to the leg hardly pulls sideways, and what it does pull presses the leg.", "an anchor farther out, so that the guy leaves the leg at a wider angle."},
        {CheckId::BearingGap, "guys only pull: into a gap of half a turn nothing keeps the head from falling.", "a guy in the gap, or the others spread all round."},
        {CheckId::SideTie, "two legs stand in their plane alone: each side of it needs a guy that holds.", "a guy on the bare side, well off the plane of the legs."},
        {CheckId::FrontTie, "a head near the edge can fall back toward the anchors behind it, and then a person is pulled over the edge.", "a guy anchored ahead of the head, or the whole leg farther back."},
        {CheckId::AnchorHangs, "where nothing is under an anchor there is nothing to hold it.", "an anchor on ground: along the edge, or down the slope."},
        {CheckId::FootHangs, "a foot stands on ground or on nothing.", "the foot back onto the ground."},
        {CheckId::EdgeZone, "close to the edge the ground may break, and people have to be tied in.", "the foot farther back."},
        {CheckId::LimitLoosened, "the usual limits have room for what nobody measured.", "the usual limit."},
        {CheckId::ArrestLeftOut, "a rope that stops a fall pulls harder than the load at rest.", "an arrest factor of 2 or more."},
        {CheckId::SwingLeftOut, "a load that swings pulls the head sideways.", "a swing as wide as the load can go."},
        {CheckId::ErrorLeftOut, "a rig that stands as measured may not stand as it is.", "errors as large as the tools make them."},
        {CheckId::Solved, "what has no answer cannot be judged.", "another arrangement of the guys."},
        {CheckId::Standing, "a head that a small push moves ever farther falls, however strong its parts are.", "a lean that meets the pull, guys on the side it falls away from, or more pretension."},
        {CheckId::FootLifts, "a foot off the ground carries nothing, and comes back with a blow.", "the pull back between the legs, a guy against it, or the feet bolted down."},
        {CheckId::HeadShift, "a head that moves far makes other angles than those drawn.", "stiffer guys, more strands, or more pretension."},
        {CheckId::GuyAngleOverForce, "a guy no farther off the leg than the pull cannot bring it back onto the leg.", "the leg leant toward the pull, the haul brought in line, or the anchor farther out."},
        {CheckId::AppliedForceAngle, "the farther the pull is off the leg, the more the guys have to hold.", "the leg leant toward the pull."},
        {CheckId::ForceInside, "legs push, they do not pull: a force outside them lifts a foot.", "the haul brought back in line, or the feet farther apart."},
        {CheckId::GuySlack, "a slack guy holds nothing until the head has moved.", "more pretension."},
        {CheckId::GuyStrength, "knots, edges and age take a good part of a cord's strength; the factor is for them.", "more strands, stronger cord, or an angle that asks for less tension."},
        {CheckId::AnchorStrength, "an anchor is known less well than anything else on the rig.", "a stronger anchor, two anchors shared, or an angle that asks for less tension."},
        {CheckId::LegStrength, "the leg carries the pull and all that the guys pull down; the factor is for what nobody measured.", "a stronger leg, less load, or flatter guys."},
        {CheckId::LegBuckling, "a slender pole bows out long before it is crushed.", "a thicker or a shorter pole."},
        {CheckId::RopeStrength, "knots, edges and age take a good part of a rope's strength; the factor is for them.", "a stronger rope, or less load."},
        {CheckId::PulleyStrength, "a pulley carries both sides of its rope, up to twice the load.", "a stronger pulley, or less load."},
        {CheckId::ConnectorStrength, "what holds the pulley carries both sides of the rope.", "a stronger connector, or less load."},
        {CheckId::FootFriction, "a leaning leg pushes its foot away, and friction takes only a share of what presses down.", "a pin, ties on the foot, or hobbles between the feet."},
        {CheckId::FootPin, "the pin takes what friction leaves over.", "a stronger pin, or ties beside it."},
        {CheckId::FootTies, "the ties take what friction leaves over.", "stronger ties, or more of them in the way of the push."},
        {CheckId::FootHeldDown, "a foot that is held can pull up, and the plan says nothing of how strong its hold is.", "more load along the leg, or a hold that is known to be strong."},
        {CheckId::HobbleStrength, "spread feet push apart, and the hobble holds them together.", "a stronger hobble, or the feet pinned."},
        {CheckId::GuyLost, "the plan asks that any one guy may fail.", "one more guy on that side."},
    }},
    .the_leg = "The leg",
    .leg_of_several = "Leg {n}",
};
static_assert(k_english_practice.in_order());
// clang-format on

}  // namespace guywright
