#pragma once
#include "engine/codec/english.hpp"
#include "engine/codec/sentences.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace guywright::detail {

using Row = std::vector<std::string>;
using Table = std::vector<Row>;  ///< the first row heads the columns; a row of one cell runs on freely

/// What the tables are made from.
struct CardView {
    const Telling& telling;
    const Plan& plan;
    const Evaluation& e;
    const Language& words = telling.words;
};

/// "1 back": the number keeps long names apart when they are cut.
inline std::string numbered(std::size_t i, std::string_view name) { return std::to_string(i + 1) + " " + std::string(name); }

inline constexpr std::size_t k_narrowest_column = 7;

/// As many decimals as the unit has, as long as they fit the narrowest column, or powers of ten: a number is never cut.
inline std::string force_text(const Telling& t, double force_N) {
    const ShownUnit unit = shown_unit("kN", t.units);
    const double force = kilonewtons(force_N) * unit.per_kept;
    std::string text = number_told(t.words, force, std::abs(force) < 1000.0 ? unit.decimals : 0);
    if (text.size() <= k_narrowest_column) return text;
    char in_tens[32];
    std::snprintf(in_tens, sizeof in_tens, "%.0e", force);
    return in_tens;
}

inline std::string in_force_unit(const CardView& v, std::string_view heading) {
    return filled(heading, {{"{kN}", std::string(shown_unit("kN", v.telling.units).name)}});
}

/// One row per case; a case without an answer says so and shows no number.
template <class AddCells>
void add_case_rows(Table& table, const CardView& v, AddCells add_cells) {
    for (const Outcome& o : v.e.outcomes) {
        Row row{case_name(v.words, v.plan, o.setup)};
        if (o.equilibrium.status == SolveStatus::Solved) add_cells(row, o);
        else row[0] += ", " + std::string(v.words.card.no_answer);
        table.push_back(std::move(row));
    }
}

inline void add_allowed_row(Table& table, const CardView& v, std::string_view what, bool arrest, auto allowed_kN) {
    const auto kind = arrest ? v.words.card.arrest_case : v.words.card.static_cases;
    Row row{std::string(what) + ", " + std::string(kind)};
    for (const GuyPlan& g : v.plan.guys) row.push_back(force_text(v.telling, newtons(allowed_kN(g, factors_for(v.plan.limits, arrest)))));
    table.push_back(std::move(row));
}

inline Table guys_table(const CardView& v) {
    Table table;
    Row heads{std::string(v.words.card.case_column)};
    for (std::size_t i = 0; i < v.plan.guys.size(); ++i) heads.push_back(numbered(i, v.plan.guys[i].name));
    table.push_back(std::move(heads));
    add_case_rows(table, v, [&](Row& row, const Outcome& o) {
        for (const double tension_N : o.equilibrium.guy_tension_N) row.push_back(force_text(v.telling, tension_N));
    });
    for (const bool arrest : {false, true}) {
        add_allowed_row(table, v, v.words.card.cord_allows, arrest, [](const GuyPlan& g, const Factors& f) { return guy_strength_kN(g) / f.soft; });
        add_allowed_row(table, v, v.words.card.anchor_allows, arrest, [](const GuyPlan& g, const Factors& f) { return g.anchor_strength_kN / f.anchor; });
    }
    return table;
}

inline Table legs_table(const CardView& v) {
    const CardWords& w = v.words.card;
    Table table;
    Row heads{std::string(w.case_column)};
    const std::size_t legs = v.plan.frame.legs.size();
    for (std::size_t i = 0; i < legs; ++i)
        for (const std::string_view head : {w.push_column, w.side_column, w.down_column}) heads.push_back(legs > 1 ? numbered(i, head) : std::string(head));
    table.push_back(std::move(heads));
    add_case_rows(table, v, [&](Row& row, const Outcome& o) {
        for (std::size_t i = 0; i < o.foot_reaction_N.size(); ++i) {
            const Vec3 r = o.foot_reaction_N[i];
            for (const double force_N : {o.equilibrium.leg_compression_N[i], std::hypot(r.x, r.y), r.z}) row.push_back(force_text(v.telling, force_N));
        }
    });
    return table;
}

inline Table ropes_table(const CardView& v) {
    const CardWords& w = v.words.card;
    Table table;
    Row heads{std::string(w.case_column)};
    const std::size_t ropes = v.plan.ropes.size();
    for (std::size_t i = 0; i < ropes; ++i)
        for (const std::string_view head : {w.haul_column, w.pulley_column}) heads.push_back(ropes > 1 ? numbered(i, head) : std::string(head));
    table.push_back(std::move(heads));
    add_case_rows(table, v, [&](Row& row, const Outcome& o) {
        for (std::size_t i = 0; i < ropes; ++i) {
            const RopeState& s = o.setup.ropes[i];
            row.push_back(s.loaded ? force_text(v.telling, s.haul_side_N) : std::string(w.unloaded));
            row.push_back(s.loaded ? force_text(v.telling, o.pulley_N[i]) : std::string(w.unloaded));
        }
    });
    return table;
}

}  // namespace guywright::detail
