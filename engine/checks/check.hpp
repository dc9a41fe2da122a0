#pragma once
#include "engine/base/bounded.hpp"
#include "engine/plan/plan.hpp"

#include <array>
#include <string_view>

namespace guywright {

enum class CheckId : unsigned char {
    // of the drawing
    GuyAngle,
    BearingGap,
    SideTie,
    FrontTie,
    AnchorHangs,
    FootHangs,
    EdgeZone,
    LimitLoosened,
    ArrestLeftOut,
    SwingLeftOut,
    ErrorLeftOut,
    // of every case
    Solved,
    Standing,
    FootLifts,
    HeadShift,
    GuyAngleOverForce,
    AppliedForceAngle,
    ForceInside,
    GuySlack,
    GuyStrength,
    AnchorStrength,
    LegStrength,
    LegBuckling,
    RopeStrength,
    PulleyStrength,
    ConnectorStrength,
    FootFriction,
    FootPin,
    FootTies,
    FootHeldDown,
    HobbleStrength,
    // of the loss of a guy, where the plan wants it judged
    GuyLost
};
inline constexpr std::size_t k_check_count = static_cast<std::size_t>(CheckId::GuyLost) + 1;

enum class Subject : unsigned char { Site, Guy, Leg, Rope, Limit, Side, Hobble };
enum class CheckStatus : unsigned char { Pass, Caution, Fail };  // larger = worse news

/// What is the same for every row of one check.
struct CheckInfo {
    CheckId id;
    std::string_view key;   ///< in the report
    std::string_view unit;  ///< of value and limit
    Subject subject;
    bool lower_is_bad;  ///< the limit is the least allowed, not the most
    std::string_view source;
};

inline constexpr std::string_view k_common_practice = "common practice, no source";
inline constexpr std::string_view k_left_out = "our own caution: the plan leaves it out";
inline constexpr std::string_view k_computed = "equilibrium of the plan";

inline constexpr std::array<CheckInfo, k_check_count> k_checks{{
    {CheckId::GuyAngle, "guy_angle", "deg", Subject::Guy, true, k_common_practice},
    {CheckId::BearingGap, "bearing_gap", "deg", Subject::Site, false, k_common_practice},
    {CheckId::SideTie, "side_tie", "deg", Subject::Side, true, k_common_practice},
    {CheckId::FrontTie, "front_tie", "m", Subject::Site, true, k_common_practice},
    {CheckId::AnchorHangs, "anchor_hangs", "m", Subject::Guy, false, "geometry"},
    {CheckId::FootHangs, "foot_hangs", "m", Subject::Leg, false, "geometry"},
    {CheckId::EdgeZone, "edge_zone", "m", Subject::Leg, true, k_common_practice},
    {CheckId::LimitLoosened, "limit_loosened", "", Subject::Limit, false, k_common_practice},
    {CheckId::ArrestLeftOut, "arrest_left_out", "", Subject::Site, true, k_left_out},
    {CheckId::SwingLeftOut, "swing_left_out", "deg", Subject::Site, true, k_left_out},
    {CheckId::ErrorLeftOut, "error_left_out", "", Subject::Site, true, k_left_out},
    {CheckId::Solved, "solved", "", Subject::Site, false, k_computed},
    {CheckId::Standing, "standing", "kN/m", Subject::Site, true, k_computed},
    {CheckId::FootLifts, "foot_lifts", "m", Subject::Leg, false, k_computed},
    {CheckId::HeadShift, "head_shift", "%", Subject::Site, false, "our own limit: past it the drawing no longer holds"},
    {CheckId::GuyAngleOverForce, "guy_angle_over_force", "deg", Subject::Guy, true, k_common_practice},
    {CheckId::AppliedForceAngle, "applied_force_angle", "deg", Subject::Site, false, k_common_practice},
    {CheckId::ForceInside, "force_inside_legs", "deg", Subject::Site, true, k_common_practice},
    {CheckId::GuySlack, "guy_slack", "mm", Subject::Guy, false, k_computed},
    {CheckId::GuyStrength, "guy_strength", "kN", Subject::Guy, false, "safety factor of the plan; default common practice"},
    {CheckId::AnchorStrength, "anchor_strength", "kN", Subject::Guy, false, "safety factor of the plan; default common practice"},
    {CheckId::LegStrength, "leg_strength", "kN", Subject::Leg, false, "safety factor of the plan; default common practice"},
    {CheckId::LegBuckling, "leg_buckling", "kN", Subject::Leg, false,
     "Euler, pinned ends: Gere, Mechanics of Materials, ch. 11 (READ); safety factor of the plan"},
    {CheckId::RopeStrength, "rope_strength", "kN", Subject::Rope, false, "safety factor of the plan; default common practice"},
    {CheckId::PulleyStrength, "pulley_strength", "kN", Subject::Rope, false, "safety factor of the plan; default common practice"},
    {CheckId::ConnectorStrength, "connector_strength", "kN", Subject::Rope, false, "safety factor of the plan; default common practice"},
    {CheckId::FootFriction, "foot_friction", "kN", Subject::Leg, false, "Coulomb friction; our own caution where less than a third of it is to spare"},
    {CheckId::FootPin, "foot_pin", "kN", Subject::Leg, false, "safety factor of the plan; default common practice"},
    {CheckId::FootTies, "foot_ties", "kN", Subject::Leg, false, "safety factor of the plan; default common practice"},
    {CheckId::FootHeldDown, "foot_held_down", "kN", Subject::Leg, false, k_computed},
    {CheckId::HobbleStrength, "hobble_strength", "kN", Subject::Hobble, false, "safety factor of the plan; default common practice"},
    {CheckId::GuyLost, "guy_lost", "", Subject::Guy, false, "the plan asks for it"},
}};

namespace detail {

constexpr bool checks_in_order() {
    for (std::size_t i = 0; i < k_check_count; ++i)
        if (k_checks[i].id != static_cast<CheckId>(i) || k_checks[i].key.empty() || k_checks[i].source.empty()) return false;
    return true;
}

}  // namespace detail
static_assert(detail::checks_in_order(), "k_checks has one row for each CheckId, in its order");

constexpr const CheckInfo& info(CheckId id) { return k_checks[static_cast<std::size_t>(id)]; }

inline constexpr int k_no_case = -1;
inline constexpr int k_no_spoiler = -1;

/// One row: one rule on one part, at the case where it comes out worst.
struct Check {
    CheckId id = CheckId::Solved;
    std::size_t subject = 0;  ///< index of the guy, leg, rope, hobble, limit or side (0, 1) of an A-frame
    CheckStatus status = CheckStatus::Pass;
    double value = 0.0, limit = 0.0;  ///< in info(id).unit
    bool has_margin = false;          ///< false for a yes-or-no rule
    double margin = 0.0;              ///< share of the limit still free; below 0 it is broken
    int case_index = k_no_case;
    bool at_worst = false;       ///< the worst over the box of measuring errors, not the value as measured
    int spoiler = k_no_spoiler;  ///< the measurement whose error spoils this row most, where it stands at its worst
};

inline constexpr std::size_t k_most_subjects = 16;
inline constexpr std::size_t k_slot_count = k_check_count * k_most_subjects;

/// The worst row of every check and part, found by index, in the order of CheckId.
class CheckTable {
public:
    void add(const Check& c) {
        Slot& slot = slots_[slot_of(c.id, c.subject)];
        if (!slot.used || is_worse(c, slot.check)) slot = {true, c};
    }
    /// Calls f(check) for every row there is.
    template <class F>
    void for_each(F f) const {
        for (const Slot& s : slots_)
            if (s.used) f(s.check);
    }
    /// The row, or null where the rule does not apply.
    [[nodiscard]] const Check* find(CheckId id, std::size_t subject = 0) const {
        const Slot& s = slots_[slot_of(id, subject)];
        return s.used ? &s.check : nullptr;
    }

    /// Calls f(slot, check) for every row there is; slots are the same in every table.
    template <class F>
    void for_each_slot(F f) {
        for (std::size_t i = 0; i < slots_.size(); ++i)
            if (slots_[i].used) f(i, slots_[i].check);
    }
    [[nodiscard]] static constexpr std::size_t slot_of(CheckId id, std::size_t subject) { return static_cast<std::size_t>(id) * k_most_subjects + subject; }
    [[nodiscard]] const Check* at_slot(std::size_t i) const { return slots_[i].used ? &slots_[i].check : nullptr; }
    void clear() {
        for (Slot& s : slots_) s.used = false;
    }

    static bool is_worse(const Check& a, const Check& b) {
        if (a.status != b.status) return a.status > b.status;
        if (a.has_margin != b.has_margin) return a.has_margin;
        return a.has_margin ? a.margin < b.margin : (info(a.id).lower_is_bad ? a.value < b.value : a.value > b.value);
    }

private:
    struct Slot {
        bool used = false;
        Check check;
    };
    std::array<Slot, k_slot_count> slots_{};
};

/// A value that must not exceed `limit` (or, where info says so, fall below it). NaN fails.
inline Check limit_check(CheckId id, std::size_t subject, double value, double limit, int case_index) {
    const double free = info(id).lower_is_bad ? value - limit : limit - value;
    Check c{id, subject, CheckStatus::Fail, value, limit, true, limit > 0.0 ? free / limit : free, case_index};
    if (free >= 0.0) c.status = CheckStatus::Pass;
    return c;
}

/// As limit_check, with a second limit that only cautions.
inline Check limit_check(CheckId id, std::size_t subject, double value, double limit, double caution, int case_index) {
    Check c = limit_check(id, subject, value, limit, case_index);
    const bool good = info(id).lower_is_bad ? value >= caution : value <= caution;
    if (c.status == CheckStatus::Pass && !good) c.status = CheckStatus::Caution;
    return c;
}

/// The head comes down in a case: nothing of it is left to measure.
inline Check fallen_check(int case_index) { return {CheckId::Standing, 0, CheckStatus::Fail, 0.0, 0.0, true, -1.0, case_index}; }

/// Whether people are told the margin: no number says how far a rig that comes down is from standing.
inline bool tells_margin(const Check& c) { return c.has_margin && !(c.id == CheckId::Standing && c.status == CheckStatus::Fail); }

/// A rule that is kept or not, without a margin.
inline Check yes_no_check(CheckId id, std::size_t subject, CheckStatus status, double value, double limit, int case_index) {
    return {id, subject, status, value, limit, false, 0.0, case_index};
}

}  // namespace guywright
