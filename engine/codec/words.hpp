#pragma once
#include "engine/cases/case.hpp"
#include "engine/checks/check.hpp"
#include "engine/codec/change_words.hpp"
#include "engine/codec/fault_words.hpp"
#include "engine/codec/practice_words.hpp"
#include "engine/codec/sheet_words.hpp"
#include "engine/codec/tuning_words.hpp"
#include "engine/verdict/evaluate.hpp"

#include <array>
#include <string_view>

namespace guywright {

// Every word of the card, as data: another language is another `Language`. In the templates {name} is the guy, rope or
// limit, {leg} "Leg 2: " (nothing where there is one leg), {value} and {limit} come with their unit, {edge} is a distance
// from the edge line, {when} the case.

struct CheckWords {
    CheckId id;
    std::string_view what;  ///< names the check in a list
    std::string_view pass, caution, fail;
    std::string_view could{};  ///< a rule of angle kept as measured that measuring error could break
};

struct CaseWords {
    CaseId id;
    std::string_view name;  ///< heads a row; {name} is the rope
    std::string_view when;  ///< inside a sentence
};

struct CardWords {
    std::string_view check_code, governs, nothing_governs, also_broken, margins, to_spare, cautions, none, missing;
    std::string_view guys_table, legs_table, ropes_table, case_column, push_column, side_column, down_column, haul_column, pulley_column, cord_allows,
        anchor_allows, static_cases, arrest_case, no_answer, unloaded;
    std::string_view measured_values;       ///< how measuring error is judged
    std::array<std::string_view, 3> notes;  ///< stand on every card
};

struct Language {
    std::string_view code;
    char decimal_mark;
    std::string_view at_worst, at_worst_of;   ///< after a sentence; {what} is the measurement
    std::array<std::string_view, 3> verdict;  ///< NOT CHECKED, GO, NO-GO
    std::string_view edge_saving;             ///< {name} of the rope, {rigged}, {ground}
    std::string_view leg_prefix, behind_edge, past_edge;
    std::array<std::string_view, 2> sides;  ///< of the plane of two legs
    std::array<CheckWords, k_check_count> checks;
    std::array<CaseWords, k_case_count> cases;
    CardWords card;
    ChangeWords changes;
    TuningWords tuning;
    FaultLanguage faults{};
    SheetWords sheet;
    PracticeWords practice;

    [[nodiscard]] constexpr std::string_view of(Verdict v) const { return verdict[static_cast<std::size_t>(v)]; }
    [[nodiscard]] constexpr const CheckWords& of(CheckId id) const { return checks[static_cast<std::size_t>(id)]; }
    [[nodiscard]] constexpr const CaseWords& of(CaseId id) const { return cases[static_cast<std::size_t>(id)]; }

    /// Each table has one entry per id, in order.
    [[nodiscard]] constexpr bool in_order() const {
        for (std::size_t i = 0; i < checks.size(); ++i)
            if (checks[i].id != static_cast<CheckId>(i) || checks[i].what.empty()) return false;
        for (std::size_t i = 0; i < cases.size(); ++i)
            if (cases[i].id != static_cast<CaseId>(i) || cases[i].name.empty()) return false;
        return true;
    }
};

}  // namespace guywright
