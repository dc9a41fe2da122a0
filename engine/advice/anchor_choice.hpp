#pragma once
#include "engine/advice/guy_kit.hpp"
#include "engine/advice/screen.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace guywright {

/// Rows that do not know where the guys are anchored: they must be kept for a GO and tell one choice of anchors from another in nothing.
inline constexpr bool anchors_decide(CheckId id) { return id != CheckId::RopeStrength && id != CheckId::PulleyStrength && id != CheckId::ConnectorStrength; }

/// How good a choice of anchors with its pretension is.
struct AnchorMargins {
    double all = -HUGE_VAL;     ///< least margin of the rows that the anchors decide
    double forces = -HUGE_VAL;  ///< of those that rest on forces, which pretension changes

    /// Where a rule of the drawing has the least margin, which pretension does not touch, the forces decide between equals.
    bool operator>(const AnchorMargins& other) const { return all != other.all ? all > other.all : forces > other.forces; }
};

inline AnchorMargins anchor_margins(const CheckTable& table) {
    AnchorMargins out{HUGE_VAL, HUGE_VAL};
    table.for_each([&](const Check& c) {
        if (!anchors_decide(c.id)) return;
        out.all = std::min(out.all, margin_of(c));
        if (is_force_rule(c.id)) out.forces = std::min(out.forces, margin_of(c));
    });
    return out;
}

/// Pretensions tried, kN, every guy the same. The last take a mechanical pull. Common practice, no source.
inline constexpr std::array k_tried_pretensions_kN{0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.65, 0.8, 1.0, 1.25, 1.5, 2.0};

/// A choice of anchors, fully judged.
struct AnchorSet {
    std::vector<std::size_t> anchors;  ///< into Plan::candidate_anchors_m, clockwise by bearing from the plumb point
    double pretension_kN = 0.0;        ///< of every guy
    Verdict verdict = Verdict::NotChecked;
    double margin =
        k_broken_margin;  ///< least margin over the box of errors of what the anchors decide, as Check::margin; of one that comes down at some point of it, up to there
    Check governing;  ///< the row that has it; of one that comes down, that it does
    Plan plan;        ///< the plan with these guys and no others
};

/// Of the anchors found on site the best three and the best four, with pretension, ranked by the least margin over the whole
/// box of measuring errors. Each guy gets the kit of the plan's guy nearest in bearing. Every choice is looked at as measured,
/// the most promising with every pretension and where others broke, and the best of these judged in full. Works in slices; the
/// same plan gives the same choice.
class AnchorChoice {
public:
    /// So many of each size are told.
    static constexpr std::size_t k_told = 3;

    /// `plan` must have no faults. While inputs are missing nothing is chosen.
    explicit AnchorChoice(Plan plan) : plan_(std::move(plan)) {
        const auto head_m = drawn_head_of(plan_);
        if (!head_m || !plan_.not_measured.empty()) return;
        head_m_ = *head_m;
        sort_by_bearing();
        for (const std::size_t size : {std::size_t{3}, std::size_t{4}}) add_sets(size);
        stage_ = sets_.empty() ? Stage::Done : Stage::All;
    }

    [[nodiscard]] bool done() const { return stage_ == Stage::Done; }
    /// Fully judged so far, the best first.
    [[nodiscard]] const std::vector<AnchorSet>& best_three() const { return best_[0]; }
    [[nodiscard]] const std::vector<AnchorSet>& best_four() const { return best_[1]; }

    /// Goes on by about `count` points of the box, each a solve of every case.
    void advance(std::size_t count) {
        const std::size_t end = points_ + count;
        while (!done() && points_ < end) points_ += step(end - points_);
    }
    [[nodiscard]] std::size_t points() const { return points_; }
    /// Full verdicts so far.
    [[nodiscard]] std::size_t judged() const { return judged_count_; }

private:
    enum class Stage : unsigned char { All, Promising, Judge, Done };
    struct Set {
        std::vector<std::size_t> anchors;
        double pretension_kN = 0.0;
        AnchorMargins margins;
    };
    static constexpr std::size_t k_promising = 10, k_judged = 4;  ///< of each size
    static constexpr std::array k_first_pretensions_kN{0.2, 0.5, 1.0};

    void sort_by_bearing() {
        for (std::size_t i = 0; i < plan_.candidate_anchors_m.size(); ++i) order_.push_back(i);
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) { return bearing_deg(a) < bearing_deg(b); });
    }
    [[nodiscard]] double bearing_deg(std::size_t i) const { return bearing_deg_of(plan_.candidate_anchors_m[i] - head_m_); }

    /// Every choice of so many.
    void add_sets(std::size_t size) {
        const std::size_t count = order_.size();
        for (std::size_t bits = 0; bits < (std::size_t{1} << count); ++bits) {
            if (static_cast<std::size_t>(std::popcount(bits)) != size) continue;
            Set set;
            for (std::size_t i = 0; i < count; ++i)
                if ((bits >> i & 1U) != 0) set.anchors.push_back(order_[i]);
            sets_.push_back(std::move(set));
        }
    }

    [[nodiscard]] Plan plan_with(const std::vector<std::size_t>& anchors, double pretension_kN) const {
        Plan out = plan_;
        out.guys.clear();
        for (const std::size_t i : anchors) {
            GuyPlan g = kit_for_bearing(plan_, head_m_, bearing_deg(i));
            g.name = "anchor " + std::to_string(i + 1);
            g.anchor_m = plan_.candidate_anchors_m[i];
            g.pretension_kN = pretension_kN;
            if (!plan_.candidate_anchor_strengths_kN.empty()) g.anchor_strength_kN = plan_.candidate_anchor_strengths_kN[i];
            out.guys.push_back(std::move(g));
        }
        return out;
    }

    std::size_t step(std::size_t budget) {
        switch (stage_) {
            case Stage::All: return step_all();
            case Stage::Promising: return step_promising(budget);
            case Stage::Judge: return step_judge(budget);
            case Stage::Done: break;
        }
        return 0;
    }

    /// Goes on by one point with the next of the pretensions to try; true once all were tried and the set has the one with most to
    /// spare, as far as a screen knows.
    bool try_pretensions(Set& set, const Screen& screen, std::span<const double> pretensions_kN) {
        if (!rows_) {
            if (tried_ == 0) set.margins = {};
            rows_ = std::make_unique<RowsAtPoints>(plan_with(set.anchors, pretensions_kN[tried_]), screen);
        }
        rows_->step();
        const AnchorMargins margins = anchor_margins(rows_->table());
        const bool better = margins > set.margins;  // more points only make them less
        if (better && !rows_->done()) return false;
        if (better) {
            set.margins = margins;
            set.pretension_kN = pretensions_kN[tried_];
        }
        rows_.reset();
        if (++tried_ < pretensions_kN.size()) return false;
        tried_ = 0;
        return true;
    }

    std::size_t step_all() {
        if (next_ == sets_.size()) return keep_promising();
        if (try_pretensions(sets_[next_], screen_, k_first_pretensions_kN)) ++next_;
        return 1;
    }

    static bool better(const Set& a, const Set& b) { return a.margins > b.margins; }
    static bool is_four(const Set& s) { return s.anchors.size() == 4; }

    /// The best `most` of each size, threes first.
    void keep_best(std::size_t most) {
        std::stable_sort(sets_.begin(), sets_.end(), better);
        std::array<std::size_t, 2> kept{};
        std::erase_if(sets_, [&](const Set& s) { return ++kept[is_four(s) ? 1 : 0] > most; });
        std::stable_partition(sets_.begin(), sets_.end(), [](const Set& s) { return !is_four(s); });
        next_ = 0;
    }

    std::size_t keep_promising() {
        keep_best(k_promising);
        stage_ = Stage::Promising;
        return 0;
    }

    /// Where the best of the first look breaks or comes near it, the others may too.
    std::size_t step_promising(std::size_t budget) {
        if (next_ == sets_.size()) {
            keep_best(k_judged);
            stage_ = Stage::Judge;
            return 0;
        }
        if (sweep_) return go_on_learning(budget);
        Set& set = sets_[next_];
        const bool teaches = screen_.size() == 0 || (next_ + 1) * 2 == sets_.size();
        if (teaches && std::exchange(learned_from_, next_) != next_ && start_learning(set)) return 1;
        if (try_pretensions(set, screen_, k_tried_pretensions_kN)) ++next_;
        return 1;
    }

    bool start_learning(const Set& set) {
        Plan plan = plan_with(set.anchors, set.pretension_kN);
        const Evaluation e = evaluate_as_measured(plan);
        if (!e.outcomes.empty() && !comes_down(e.checks)) sweep_.emplace(std::move(plan), e.checks);
        return sweep_.has_value();
    }

    std::size_t go_on_learning(std::size_t budget) {
        constexpr std::size_t enough = k_box_points * 4;
        constexpr std::size_t between_looks = 16;  // however it is sliced, so that it always learns the same
        const std::size_t before = sweep_->points();
        sweep_->advance(std::min({budget, enough - before, between_looks - before % between_looks}));
        const std::size_t cost = sweep_->points() - before;
        const bool falls = sweep_->points() % between_looks == 0 && comes_down(sweep_->worst());  // the others need not
        if (!sweep_->done() && sweep_->points() < enough && !falls) return cost;
        screen_.learn(sweep_->close_points(k_near_margin));
        sweep_.reset();
        return cost;
    }
    static constexpr double k_near_margin = 0.3;

    /// A full verdict, then the pretension again with what that found, and again a verdict where it changed.
    std::size_t step_judge(std::size_t budget) {
        if (choosing_) return choose_pretension();
        if (!judged_) {
            if (next_ == sets_.size()) return finish();
            wanted_ = wanted_margin(sets_[next_]);
            if (!(sets_[next_].margins.all > wanted_)) return skip();
            judged_ = std::make_unique<Confirmation>(plan_with(sets_[next_].anchors, sets_[next_].pretension_kN), [wanted = wanted_](const CheckTable& so_far) {
                return comes_down(so_far) || !(anchor_margins(so_far).all > wanted);
            });
        }
        const std::size_t cost = judged_->advance(budget);
        if (!judged_->done()) return cost;
        take_in_judged();
        ++judged_count_;
        ++verdicts_;
        judged_->teach_close(screen_, k_near_margin);
        judged_.reset();
        judged_kN_ = sets_[next_].pretension_kN;
        choosing_ = true;
        return cost;
    }

    /// Only with more to spare than this is a choice told, or told anew.
    [[nodiscard]] double wanted_margin(const Set& set) {
        const std::vector<AnchorSet>& best = best_of(set);
        const auto same = told_already(set.anchors, best);
        if (same != best.end()) return same->margin < 0.0 ? std::min(same->margin + k_worth_a_verdict, 0.0) : same->margin + k_worth_a_verdict;
        return best.size() < k_told ? -HUGE_VAL : best.back().margin;
    }
    /// Another pretension that cannot spare so much more is not worth another verdict, unless it makes a GO of a NO-GO.
    static constexpr double k_worth_a_verdict = 0.02;
    static std::vector<AnchorSet>::const_iterator told_already(const std::vector<std::size_t>& anchors, const std::vector<AnchorSet>& best) {
        return std::find_if(best.begin(), best.end(), [&](const AnchorSet& s) { return s.anchors == anchors; });
    }

    std::size_t skip() {
        next_set();
        return 0;
    }

    std::size_t choose_pretension() {
        choosing_ = !try_pretensions(sets_[next_], screen_, k_tried_pretensions_kN);
        if (!choosing_ && (sets_[next_].pretension_kN == judged_kN_ || verdicts_ == k_most_verdicts)) next_set();
        return 1;
    }
    static constexpr int k_most_verdicts = 3;

    /// What the verdicts so far found is asked of the next choice before it is judged.
    void next_set() {
        ++next_;
        verdicts_ = 0;
        judged_kN_ = 0.0;
        choosing_ = next_ < sets_.size();
    }

    void take_in_judged() {
        const Evaluation& e = judged_->evaluation();
        if (!e.faults.empty()) return;
        AnchorSet out{sets_[next_].anchors, sets_[next_].pretension_kN, e.verdict, HUGE_VAL, {}, judged_->plan()};
        e.worst.for_each([&](const Check& c) {
            if (!anchors_decide(c.id)) return;
            if (says_down(c) || (!says_down(out.governing) && margin_of(c) < out.margin)) out.governing = c;
            out.margin = std::min(out.margin, margin_of(c));
        });
        std::vector<AnchorSet>& best = best_of(sets_[next_]);
        const auto same = told_already(out.anchors, best);
        if (same != best.end() && !(out.margin > wanted_)) return;  // the verdict stopped there: it may be less
        if (same != best.end()) best.erase(same);
        const auto after = std::upper_bound(best.begin(), best.end(), out, [](const AnchorSet& a, const AnchorSet& b) { return a.margin > b.margin; });
        best.insert(after, std::move(out));
        if (best.size() > k_told) best.pop_back();
    }
    std::vector<AnchorSet>& best_of(const Set& set) { return best_[is_four(set) ? 1 : 0]; }

    std::size_t finish() {
        stage_ = Stage::Done;
        return 0;
    }

    Plan plan_;
    Vec3 head_m_{};
    std::vector<std::size_t> order_;  ///< of the candidates, by bearing
    std::vector<Set> sets_;
    Screen screen_;
    std::size_t tried_ = 0;               ///< pretensions, of the set in hand
    std::unique_ptr<RowsAtPoints> rows_;  ///< of the next of them
    std::optional<ErrorSweep> sweep_;     ///< of a set that the screen learns from
    std::size_t learned_from_ = SIZE_MAX;
    bool choosing_ = false;   ///< the pretension of the set in hand
    double judged_kN_ = 0.0;  ///< that it was judged with
    double wanted_ = 0.0;     ///< margin that it was judged for
    int verdicts_ = 0;        ///< on the set in hand
    std::unique_ptr<Confirmation> judged_;
    std::array<std::vector<AnchorSet>, 2> best_;
    Stage stage_ = Stage::Done;
    std::size_t next_ = 0, points_ = 0, judged_count_ = 0;
};

}  // namespace guywright
