#pragma once
#include "engine/codec/share_walk.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace guywright::detail {

/// Words that plans hold, to guess the first letters of a code by. Part of the format: it never changes within a version.
inline constexpr std::string_view k_share_vocabulary =
    "back left right front main belay guy 1 guy 2 guy 3 guy 4 rope 1 rope 2 back left back right front left front right "
    "arri\xC3\xA8re gauche droite avant hauban corde principale assurance "
    "edge.face_deg edge.rope_friction frame.foot_m[0][0] frame.foot_m[0][1] frame.foot_m[0][2] frame.leg_length_m[0] frame.lean_deg "
    "frame.lean_bearing_deg ropes[0].load_kg ropes[0].swing_deg ropes[0].haul.bearing_deg ropes[0].haul.distance_m ropes[0].haul.height_m "
    "guys[0].bearing_deg guys[0].inclination_deg guys[0].anchor_height_m guys[0].pretension_kN guys[0].anchor_strength_kN "
    "guys[1].bearing_deg guys[1].inclination_deg guys[1].anchor_height_m guys[1].anchor_strength_kN feet[0].friction ";

/// A plan in which every key of version 1 has its usual value, to guess the first of each kind by.
inline Plan usual_plan() {
    Plan p;
    p.frame.hobbles.resize(1);
    p.ropes.resize(1);
    p.ropes[0].haul.emplace();
    p.guys.resize(1);
    p.feet.resize(1);
    p.feet[0].ties.resize(1);
    return p;
}

/// What both sides know before the first bit.
struct ShareStart {
    BitModels models;
    LastSeen seen;

    ShareStart() {
        BitWriter unread;
        BitModels forgotten;  // the order of keys must leave no trace: a later version may have more of them
        Plan usual = usual_plan();
        ShareWalk walk(unread, forgotten, seen);
        describe(walk, usual);
        ShareValues(unread, models).text(std::string(k_share_vocabulary), k_share_vocabulary.size());
    }
};

/// The plan as bits, without heading and checks.
inline std::string share_body(Plan plan, int version = k_share_version, std::span<const ShareKey> since = k_share_keys_since) {
    ShareStart start;
    BitWriter bits;
    ShareWalk walk(bits, start.models, start.seen, version, since);
    describe(walk, plan);
    return bits.finish();
}

/// Any bytes; nothing where they are no plan's.
inline std::optional<Plan> read_share_body(std::string_view bytes, int version = k_share_version, std::span<const ShareKey> since = k_share_keys_since) {
    ShareStart start;
    BitReader bits(bytes);
    Plan plan;
    ShareWalk walk(bits, start.models, start.seen, version, since);
    describe(walk, plan);
    return walk.sound() ? std::optional(std::move(plan)) : std::nullopt;
}

}  // namespace guywright::detail
