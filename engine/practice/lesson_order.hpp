#pragma once
#include "engine/advice/sequence.hpp"
#include "engine/practice/lesson.hpp"

namespace guywright {

// The order of work as a lesson: the trainee names the guy that is tied next, and sees what the pole then asks of whoever holds it.

/// The guys tied so far, in order.
using TiedGuys = Bounded<std::size_t, k_max_guys>;

/// One guy that could be tied next.
struct NextTie {
    std::size_t guy = 0;
    Standing after;        ///< with it tied just tight, under the own weight
    double gap_deg = 0.0;  ///< largest gap between the bearings tied then
    bool right = false;    ///< nothing else is safer; at the edge, first of all, what holds the kit back
};

namespace detail {

inline TieShares just_tight(const TiedGuys& tied) {
    TieShares ties;
    ties.fill(k_tie_off);
    for (const std::size_t guy : tied) ties[guy] = 0.0;
    return ties;
}

/// The guy that the engine's order has on before the kit comes near the edge; none where there is no edge near, or none behind.
inline std::optional<std::size_t> first_at_edge(const Plan& plan, const Model& whole) {
    for (const SequenceStep& step : find_sequence(plan, whole).up)
        if (step.kind == StepKind::BackTieFirst) return step.part;
    return std::nullopt;
}

}  // namespace detail

/// Every guy that is not tied yet, and which of them the engine's advice would have next.
[[nodiscard]] inline std::vector<NextTie> next_ties(const Plan& plan, const Model& whole, const TiedGuys& tied) {
    std::vector<NextTie> out;
    for (std::size_t i = 0; i < whole.guys.size(); ++i) {
        if (std::find(tied.begin(), tied.end(), i) != tied.end()) continue;
        TiedGuys tried = tied;
        tried.push_back(i);
        const detail::TieShares ties = detail::just_tight(tried);
        out.push_back({i, find_standing(plan, detail::partly_tied(whole, ties)), detail::gap_of_tied(whole, ties), false});
    }
    const std::optional<std::size_t> first = tied.empty() ? detail::first_at_edge(plan, whole) : std::nullopt;
    for (NextTie& t : out) {
        const auto safer = [&](const NextTie& other) { return detail::is_safer(other.after, other.gap_deg, t.after, t.gap_deg); };
        t.right = first ? t.guy == *first : std::none_of(out.begin(), out.end(), safer);
    }
    return out;
}

/// What the pole asks of whoever holds it with these guys tied.
[[nodiscard]] inline Standing standing_with(const Plan& plan, const Model& whole, const TiedGuys& tied) {
    return find_standing(plan, detail::partly_tied(whole, detail::just_tight(tied)));
}

/// The rig as it then stands, to be drawn: the guys tied so far, just tight.
[[nodiscard]] inline Plan tied_plan(const Plan& plan, const TiedGuys& tied) {
    Plan out = plan;
    out.guys.clear();
    for (const std::size_t guy : tied) {
        out.guys.push_back(plan.guys[guy]);
        out.guys.back().pretension_kN = 0.0;
    }
    return out;
}

/// The lesson is done: every guy is on.
[[nodiscard]] inline bool all_tied(const Plan& plan, const TiedGuys& tied) { return tied.size() == plan.guys.size(); }

}  // namespace guywright
