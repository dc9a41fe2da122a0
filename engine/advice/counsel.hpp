#pragma once
#include "engine/advice/anchor_choice.hpp"
#include "engine/advice/direction_map.hpp"
#include "engine/advice/smallest_change.hpp"

#include <memory>

namespace guywright {

/// What can be said beside the verdict; what is null was not computed. A screen runs the parts in slices, one after the other.
struct Counsel {
    std::unique_ptr<SmallestChange> change;
    std::unique_ptr<AnchorChoice> anchors;
    std::unique_ptr<DirectionMap> map;
};

/// Directions in a report: every 7.5 degrees off straight down, every 10 degrees of bearing.
inline constexpr std::size_t k_report_rings = 12, k_report_bearings = 36;

/// Everything at once, for a plan that has a verdict: the change where it is NO-GO, the anchors where some were found on site.
inline Counsel counsel_for(const Plan& plan, const Evaluation& e) {
    constexpr std::size_t at_a_time = 4096;
    Counsel out;
    if (e.verdict == Verdict::NotChecked || e.outcomes.empty()) return out;
    if (e.verdict == Verdict::NoGo) {
        out.change = std::make_unique<SmallestChange>(plan);
        while (!out.change->done()) out.change->advance(at_a_time);
    }
    if (!plan.candidate_anchors_m.empty()) {
        out.anchors = std::make_unique<AnchorChoice>(plan);
        while (!out.anchors->done()) out.anchors->advance(at_a_time);
    }
    out.map = std::make_unique<DirectionMap>(plan, e, k_report_rings, k_report_bearings);
    while (!out.map->done()) out.map->advance(at_a_time);
    return out;
}

}  // namespace guywright
