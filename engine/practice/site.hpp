#pragma once
#include "engine/verdict/evaluate.hpp"

#include <cstdint>
#include <optional>

namespace guywright {

inline constexpr int k_first_site_level = 1, k_last_site_level = 5;
/// Seeds that two people can tell each other by voice.
inline constexpr std::uint32_t k_last_site_seed = 9999;

/// A site that nobody rigged, to be judged by a trainee.
struct DrawnSite {
    std::uint32_t seed = 0;
    int level = k_first_site_level;
    Plan plan;

    bool operator==(const DrawnSite&) const = default;
};

/// What is asked of a site: all of it while holding, but for the verdict.
struct SiteAnswer {
    Verdict verdict = Verdict::NotChecked;  ///< Go or NoGo
    Check governs;                          ///< the rule that decides: the broken one, or the one with least to spare
    std::size_t hardest_guy = 0;            ///< the one with the greatest tension
    double hardest_N = 0.0, next_N = 0.0;   ///< its tension, and that of the next
    double angle_deg = 0.0;                 ///< of the ropes' resultant: asked_angle_deg()
};

/// One and two legs: how far the resultant is off the leg, or off the plane of the legs (the applied-force angle). Three legs: how
/// far it falls inside them, negative outside: the applied-force angle of three is 0 wherever they stand by themselves.
inline double asked_angle_deg(const Outcome& holding) {
    const bool three = holding.equilibrium.leg_compression_N.size() == k_max_legs;
    return degrees(three ? holding.inside_legs_rad : holding.applied_force_angle_rad);
}

/// The row that decides. A verdict of NO-GO that stands as measured is told by what is broken there: measuring error may well add
/// something worse, but that is not what the trainee can see.
inline Check governing(const Evaluation& e) {
    const std::vector<Check> measured = ranked(e.checks);
    const bool broken = !measured.empty() && measured.front().status == CheckStatus::Fail;
    return broken ? measured.front() : e.closest.front();
}

/// The answer of a finished evaluation; none where it has no verdict, or the head comes to no rest while holding.
[[nodiscard]] inline std::optional<SiteAnswer> answer_of(const Evaluation& e) {
    if (e.verdict == Verdict::NotChecked || e.closest.empty() || e.outcomes.size() <= k_holding) return std::nullopt;
    const Outcome& holding = e.outcomes[k_holding];
    if (holding.equilibrium.status != SolveStatus::Solved || e.model.guys.empty()) return std::nullopt;
    SiteAnswer a{.verdict = e.verdict, .governs = governing(e), .angle_deg = asked_angle_deg(holding)};
    for (std::size_t i = 0; i < e.model.guys.size(); ++i) {
        const double tension_N = holding.equilibrium.guy_tension_N[i];
        if (tension_N > a.hardest_N) {
            a.next_N = a.hardest_N;
            a.hardest_N = tension_N;
            a.hardest_guy = i;
        } else if (tension_N > a.next_N) {
            a.next_N = tension_N;
        }
    }
    return a;
}

/// What the trainee says beforehand.
struct Prediction {
    bool go = false;
    std::size_t guy = 0;
    double angle_deg = 0.0;
};

/// An angle within this of the true one counts as right, degrees: as near as the eye takes it from a drawing.
inline constexpr double k_angle_counts_deg = 5.0;

struct Marks {
    bool verdict = false, guy = false, angle = false;
    [[nodiscard]] int right() const { return int{verdict} + int{guy} + int{angle}; }
};

[[nodiscard]] inline Marks marks_of(const SiteAnswer& answer, const Prediction& said) {
    return {said.go == (answer.verdict == Verdict::Go), said.guy == answer.hardest_guy, std::abs(said.angle_deg - answer.angle_deg) <= k_angle_counts_deg};
}

}  // namespace guywright
