#pragma once
#include "engine/codec/change_words.hpp"

namespace guywright {

inline constexpr ChangeWords k_english_change{
    .inputs = {{
        {Input::Pretension, "Set the pretension of guy {name} to {to} (now {from})."},
        {Input::AllPretensions, "Bring the pretension of every guy to at least {to} (the least now {from})."},
        {Input::Parts, "Rig guy {name} with {to} parts (now {from})."},
        {Input::AllParts, "Rig every guy with at least {to} parts (the fewest now {from})."},
        {Input::Cord, "Take a cord of at least {to} for guy {name} (now {from}), no stretchier than now."},
        {Input::AllCords, "Take cords of at least {to} for all guys (the weakest now {from}), no stretchier than now."},
        {Input::LeanAnchorsStay, "Set the lean to {to} (now {from}) and bring every guy back to its pretension; anchors and haul stay where they are."},
        {Input::HaulBearing, "Haul rope {name} from bearing {to} (now {from})."},
        {Input::HaulDistance, "Haul rope {name} from {to} away (now {from})."},
        {Input::HaulHeight, "Lead the haul of rope {name} to a height of {to} (now {from})."},
        {Input::AddFootTie, "{leg}tie the foot toward bearing {bearing}."},
        {Input::GuyBearing, "Move the anchor of guy {name} to bearing {to} (now {from}), where it must hold as much."},
        {Input::GuyInclination,
         "Move the anchor of guy {name} until the guy rises at {to} (now {from}): {away} from the plumb point (now {was_away}), where it must hold as much."},
        {Input::GuyDistance, "Move the anchor of guy {name} to {away} from the plumb point (now {was_away}), where it must hold as much."},
        {Input::AddGuy, "Add a guy toward bearing {bearing}, anchored {away} from the plumb point, rigged and anchored like the guy beside it."},
        {Input::Load, "Bring the load down to {to} (now {from})."},
        {Input::FootOutAnchorsStay, "Move {feet} {by} {way}; anchors and haul stay where they are, every guy is brought back to its pretension."},
        {Input::FootSideAnchorsStay, "Move {feet} {by} {way}; anchors and haul stay where they are, every guy is brought back to its pretension."},
        {Input::LeanAnew,
         "Set the lean to {to} (now {from}) and place anchors and haul anew from the new plumb point, bearings and inclinations as they were; each must hold as much there."},
        {Input::FootOutAnew,
         "Move {feet} {by} {way} and place anchors and haul anew from the new plumb point, bearings and inclinations as they were; each must hold as much there."},
        {Input::FootSideAnew,
         "Move {feet} {by} {way} and place anchors and haul anew from the new plumb point, bearings and inclinations as they were; each must hold as much there."},
    }},
    .feet = {"the foot", "all feet together"},
    .ways = {"toward the edge", "away from the edge", "to the left", "to the right"},
    .heading = "What would change it, the least effort first",
    .together = "Both together:",
    .more = "{n} more in the report.",
    .out_of_reach = "No change in reach gives GO. The nearest that was tried still fails on this: {what}",
    .anchors_heading = "Best anchors of those found, guys and haul otherwise as entered",
    .anchors = "Anchors {names}, pretension {pretension}: {verdict}, {margin} % to spare at the least ({what}).",
    .anchors_broken = "Anchors {names}, pretension {pretension}: {verdict}, broken: {what}.",
};
static_assert(k_english_change.in_order());

}  // namespace guywright
