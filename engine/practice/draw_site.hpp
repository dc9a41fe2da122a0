#pragma once
#include "engine/practice/draw_rig.hpp"
#include "engine/practice/site.hpp"

#include <memory>

namespace guywright {

// A site is handed out only where its answer is clear-cut:
// - GO: at the worst of measuring error every rule keeps a tenth of its limit free;
// - NO-GO: broken as measured, by a tenth of the limit or, for a rule without a margin, plainly (plainly_broken());
// - the rule that decides is one of those that the flaw was drawn for;
// - while holding the head is at rest, and the guy that works hardest has a tenth more than the next.

inline constexpr double k_clear_share = 0.1;

namespace detail {

/// A rule that knows only kept and broken is broken by so much that nobody argues.
inline bool plainly_broken(const Plan& plan, const Evaluation& e, const Check& c) {
    constexpr double k_lifted_m = 0.02, k_outside_deg = 3.0;
    switch (c.id) {
        case CheckId::FrontTie: return c.value <= (1.0 - k_clear_share) * c.limit;
        case CheckId::AnchorHangs: return height_above_face_m(e.model.guys[c.subject].anchor_m, plan.edge.face_deg) >= (1.0 + k_clear_share) * k_rough_rock_m;
        case CheckId::FootHangs: return height_above_face_m(e.model.legs[c.subject].foot_m, plan.edge.face_deg) >= (1.0 + k_clear_share) * k_rough_rock_m;
        case CheckId::FootLifts: return c.value >= k_lifted_m;
        case CheckId::ForceInside: return c.value <= -k_outside_deg;
        case CheckId::Standing: return true;
        default: return c.has_margin && c.margin <= -k_clear_share;
    }
}

inline bool hardest_is_clear(const SiteAnswer& a) {
    constexpr double k_least_N = 100.0;
    return a.hardest_N >= k_least_N && a.hardest_N >= (1.0 + k_clear_share) * a.next_N;
}

}  // namespace detail

/// Whether the finished evaluation of a plan is clear-cut, as described above; `flaw` as it was drawn for.
[[nodiscard]] inline bool is_clear_cut(const Plan& plan, const Evaluation& e, Flaw flaw) {
    const auto answer = answer_of(e);
    if (!answer || !detail::hardest_is_clear(*answer)) return false;
    if (flaw == Flaw::None) return e.verdict == Verdict::Go && answer->governs.has_margin && answer->governs.margin >= k_clear_share;
    return e.verdict == Verdict::NoGo && breaks(flaw, answer->governs.id) && detail::plainly_broken(plan, e, answer->governs);
}

/// Draws rigs until one is clear-cut, in slices. The same seed and level give the same site on every machine.
class SiteDrawing {
public:
    static constexpr std::size_t k_most_rigs = 2000;  ///< then it gives up: about ten times the most that a seed has needed

    SiteDrawing(std::uint32_t seed, int level) : site_{seed, std::clamp(level, k_first_site_level, k_last_site_level), {}} {
        Draw draw(key(0));
        const FlawList& flaws = k_level_flaws[static_cast<std::size_t>(site_.level - k_first_site_level)];
        go_ = draw.one_in(2);
        first_flaw_ = static_cast<std::size_t>(draw.whole(0, static_cast<int>(flaws.size()) - 1));
    }

    /// One rig as measured, or some points of the check of measuring error of one that seems to stand.
    void advance(std::size_t points = 4) {
        if (done_) return;
        if (!sweep_) return look_at_next();
        sweep_->advance(points);
        const bool broken = spoiled();
        if (!broken && !sweep_->done()) return;
        if (!broken) {
            take_in(e_, *sweep_);
            if (is_clear_cut(site_.plan, e_, Flaw::None)) return finish();
        }
        sweep_.reset();
    }
    [[nodiscard]] bool done() const { return done_; }
    /// Once done; none where no rig was clear-cut.
    [[nodiscard]] const DrawnSite* site() const { return done_ && found_ ? &site_ : nullptr; }
    [[nodiscard]] std::size_t rigs() const { return rigs_; }  ///< looked at so far

private:
    /// Of the site and the rig of it that is drawn next.
    [[nodiscard]] std::uint64_t key(std::size_t rig) const {
        return (static_cast<std::uint64_t>(site_.seed) << 32U) ^ (static_cast<std::uint64_t>(site_.level) << 24U) ^ rig;
    }

    [[nodiscard]] Flaw flaw() const {
        constexpr std::size_t k_rigs_a_flaw = 40;  // then the next of the list
        if (go_) return Flaw::None;
        const FlawList& flaws = k_level_flaws[static_cast<std::size_t>(site_.level - k_first_site_level)];
        return flaws[(first_flaw_ + rigs_ / k_rigs_a_flaw) % flaws.size()];
    }

    void look_at_next() {
        if (rigs_ == k_most_rigs) return void(done_ = true);
        const Flaw wrong = flaw();
        Draw draw(key(++rigs_));
        site_.plan = draw_rig(draw, site_.level, wrong);
        e_ = evaluate_as_measured(site_.plan);
        if (wrong != Flaw::None) {
            if (is_clear_cut(site_.plan, e_, wrong)) finish();
        } else if (may_go()) {
            sweep_ = std::make_unique<ErrorSweep>(site_.plan, e_.checks);
        }
    }

    /// Nothing is broken as measured, and all has enough to spare that the sweep is worth its time.
    [[nodiscard]] bool may_go() const {
        constexpr double k_worth_it = 0.2;
        if (!e_.faults.empty() || e_.verdict == Verdict::NoGo || e_.closest.empty() || e_.closest.front().margin < k_worth_it) return false;
        const Outcome& holding = e_.outcomes[k_holding];
        if (holding.equilibrium.status != SolveStatus::Solved) return false;
        Evaluation as_if = e_;
        as_if.verdict = Verdict::Go;
        const auto answer = answer_of(as_if);
        return answer && detail::hardest_is_clear(*answer);
    }

    /// So far the sweep has found a rule with too little to spare.
    [[nodiscard]] bool spoiled() const {
        bool spoiled = false;
        sweep_->worst().for_each([&](const Check& c) { spoiled = spoiled || c.status == CheckStatus::Fail || (c.has_margin && c.margin < k_clear_share); });
        return spoiled;
    }

    void finish() { done_ = found_ = true; }

    DrawnSite site_;
    bool go_ = false, done_ = false, found_ = false;
    std::size_t first_flaw_ = 0, rigs_ = 0;
    Evaluation e_;
    std::unique_ptr<ErrorSweep> sweep_;
};

/// The whole search at once; none where no rig was clear-cut.
[[nodiscard]] inline std::optional<DrawnSite> drawn_site(std::uint32_t seed, int level) {
    SiteDrawing drawing(seed, level);
    while (!drawing.done()) drawing.advance(k_box_points);
    const DrawnSite* site = drawing.site();
    return site != nullptr ? std::optional(*site) : std::nullopt;
}

}  // namespace guywright
