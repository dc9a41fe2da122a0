#pragma once
#include "engine/advice/tuning.hpp"

#include <array>
#include <string_view>

namespace guywright {

/// Every sentence about the guys' tuning. Marks: {name} a guy, {other} another, {force} {limit} {way} {slack} {angle} {before} {after}
/// quantities with their unit, {when} a case, {rule} a sentence about a rule, {list} the parts of a list.
enum class TuningText : unsigned char {
    TiesRigged,
    TiesHolding,
    LineUpHeading,
    PretensionHeading,
    UpHeading,
    DownHeading,
    TakeIn,
    Felt,
    FeltUntilSlack,
    SlackFirst,
    NoTies,
    NoPlace,
    ThreeLegs,
    InLine,
    LinedUp,
    LinedUpFrom,
    LeanToward,
    NotMoved,
    StoppedBy,
    LeanEnds,
    TakeInBy,
    PayOutBy,
    OfCord,
    Order,
    OrderIn,
    OrderOut,
    OrderSlackAtStart,
    OrderFallsAtStart,
    OrderNotFound,
    LeastByHand,
    LeastMechanical,
    LeastSlack,
    LeastTight,
    LeastFalls,
    LeastNoBalance,
    LeastUnknown,
    FrontTieMissing,
    StandsNow,
    HoldStands,
    Hold,
    Steady,
    ManyHands,
    HoldFoot
};
inline constexpr std::size_t k_tuning_text_count = 43;

struct TuningLine {
    TuningText id;
    std::string_view text;
};
struct StepLine {
    StepKind kind;
    std::string_view text;  ///< {name} the guy, {force} its tension then, {way} from the edge
};

struct TuningWords {
    std::array<TuningLine, k_tuning_text_count> lines;
    std::array<StepLine, k_step_kind_count> steps;
    std::string_view eases;  ///< after TightenLast, where it does: {other}
    std::string_view lean;   ///< after Check, of one and two legs: {way}

    [[nodiscard]] constexpr std::string_view of(TuningText id) const { return lines[static_cast<std::size_t>(id)].text; }
    [[nodiscard]] constexpr std::string_view of(StepKind kind) const { return steps[static_cast<std::size_t>(kind)].text; }
    [[nodiscard]] constexpr bool in_order() const {
        for (std::size_t i = 0; i < lines.size(); ++i)
            if (lines[i].id != static_cast<TuningText>(i) || lines[i].text.empty()) return false;
        for (std::size_t i = 0; i < steps.size(); ++i)
            if (steps[i].kind != static_cast<StepKind>(i) || steps[i].text.empty()) return false;
        return !eases.empty() && !lean.empty();
    }
};

}  // namespace guywright
