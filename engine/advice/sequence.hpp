#pragma once
#include "engine/advice/standing.hpp"
#include "engine/advice/tie_matrix.hpp"
#include "engine/cases/build_cases.hpp"
#include "engine/checks/drawing_checks.hpp"
#include "engine/verdict/evaluate.hpp"

namespace guywright {

enum class StepKind : unsigned char {
    // up
    TieInPeople,     ///< the foot or an anchor is near or over the edge
    BackTieFirst,    ///< part: a guy anchored behind, made fast to the kit before it comes near the edge
    BackLine,        ///< no guy is anchored behind: a line of its own holds the kit back
    AnchorOverEdge,  ///< part: a guy anchored past the edge; its anchor is out of reach later
    FixFeet,         ///< ties, pins, hobbles
    HoldFeet,        ///< nothing fixes a foot: somebody stands by it
    LayOut,          ///< guys and pulleys made fast to the head while it lies
    Raise,
    TieOn,        ///< part: a guy brought just tight
    Tighten,      ///< part: a guy brought to its pretension
    TightenLast,  ///< part: the guy whose take-up tightens all others most
    Check,        ///< what the rig must then be
    LoadSlowly,
    // down
    Unload,
    Loosen,   ///< part
    TakeOff,  ///< part
    Lower,
    FreeFeet,
    ClearEdge,   ///< part: the guy anchored past the edge
    BackTieLast  ///< part: the guy that held the kit back
};
inline constexpr std::size_t k_step_kind_count = 20;

struct SequenceStep {
    StepKind kind = StepKind::Check;
    std::size_t part = 0;            ///< guy, where the kind is about one
    bool computed = false;           ///< the frame is up: `after` is known
    Standing after;                  ///< once it is done
    bool hold = false;               ///< the head must be held while it is done: it does not stand by itself before or after
    double hold_N = 0.0;             ///< the larger of the two; to raise or lower, what lifting the head off the ground takes
    double share = 1.0;              ///< Tighten, Loosen: of the pretension that it then has
    std::size_t eases = k_max_guys;  ///< TightenLast: the guy it eases most, if any
    double behind_edge_m = 0.0;      ///< TieInPeople: of the foot nearest the edge
};

inline constexpr std::size_t k_most_sequence_steps = 64;
using SequenceSteps = Bounded<SequenceStep, k_most_sequence_steps>;

/// How to rig and how to take down, so that nothing tips over on the way.
struct Sequence {
    bool computed = false;  ///< false: the plan has no model
    SequenceSteps up, down;
    bool front_tie_missing = false;  ///< one is needed and none is anchored ahead of the head
};

namespace detail {

/// Of every guy the share of its pretension: 0 just tight where the head is drawn, below 0 not on at all.
using TieShares = std::array<double, k_max_guys>;
inline constexpr double k_tie_off = -1.0;

inline Model partly_tied(const Model& whole, const TieShares& shares) {
    Model m = whole;
    for (std::size_t i = 0; i < m.guys.size(); ++i) {
        const double pretensioned_m = glm::length(m.drawn_head_m - m.guys[i].anchor_m) - m.guys[i].rest_length_m;
        if (shares[i] < 0.0) m = without_guy(m, i);
        else take_up(m, i, (shares[i] - 1.0) * pretensioned_m);
    }
    return m;
}

/// Largest gap between the bearings of the guys that are on, degrees.
inline double gap_of_tied(const Model& whole, const TieShares& ties) {
    Model m = whole;
    m.guys.clear();
    for (std::size_t i = 0; i < whole.guys.size(); ++i)
        if (ties[i] >= 0.0) m.guys.push_back(whole.guys[i]);
    return largest_bearing_gap_deg(m);
}

/// Whether the state `a` leaves less to hold than `b`; among equals whether it leaves the smaller gap all round.
inline bool is_safer(const Standing& a, double gap_a_deg, const Standing& b, double gap_b_deg) {
    if (a.by_itself != b.by_itself) return a.by_itself;
    if (std::abs(a.hold_N - b.hold_N) > 0.5) return a.hold_N < b.hold_N;
    return gap_a_deg < gap_b_deg - k_angle_rounding_deg;
}

/// Finds the order up, and takes the same way down, each state looked at anew.
class SequenceFinder {
public:
    SequenceFinder(const Plan& plan, const Model& whole) : plan_(plan), whole_(whole) {}

    [[nodiscard]] Sequence find() {
        Sequence out;
        out.computed = true;
        out.front_tie_missing = lacks_front_tie(whole_, plan_.limits);
        back_ = guy_behind();
        near_edge_ = is_near_edge();
        on_the_ground(out.up);
        raise(out.up);
        tie_on(out.up);
        tighten(out.up);
        out.up.push_back(stepped(StepKind::Check, 0));
        if (before_.by_itself) out.up.push_back({.kind = StepKind::LoadSlowly, .after = {}});
        take_down(out.down);
        return out;
    }

private:
    [[nodiscard]] bool has_back() const { return back_ < whole_.guys.size(); }
    [[nodiscard]] bool past_edge(std::size_t guy) const { return whole_.guys[guy].anchor_m.x > 0.0; }

    /// Behind the edge, of the foot nearest to it.
    [[nodiscard]] double nearest_to_edge_m() const {
        double nearest_m = HUGE_VAL;
        for (const Leg& leg : whole_.legs)
            if (std::abs(leg.foot_m.x) < std::abs(nearest_m)) nearest_m = -leg.foot_m.x;
        return nearest_m;
    }
    [[nodiscard]] bool is_near_edge() const {
        return std::any_of(whole_.legs.begin(), whole_.legs.end(), [&](const Leg& leg) { return is_in_edge_zone(leg.foot_m, plan_.limits); });
    }

    /// The guy that pulls straightest back from the edge; none where none is anchored behind the head.
    [[nodiscard]] std::size_t guy_behind() const {
        std::size_t best = whole_.guys.size();
        double best_x = -0.17;  // within 80 degrees of straight back
        for (std::size_t i = 0; i < whole_.guys.size(); ++i) {
            const Vec3 offset_m = whole_.guys[i].anchor_m - whole_.drawn_head_m;
            const double x = offset_m.x / std::max(std::hypot(offset_m.x, offset_m.y), k_same_point_m);
            if (!(x < best_x)) continue;
            best_x = x;
            best = i;
        }
        return best;
    }

    void on_the_ground(SequenceSteps& up) const {
        bool over_edge = false;
        for (std::size_t i = 0; i < whole_.guys.size(); ++i) over_edge = over_edge || past_edge(i);
        if (near_edge_ || over_edge) up.push_back({.kind = StepKind::TieInPeople, .after = {}, .behind_edge_m = nearest_to_edge_m()});
        if (near_edge_) up.push_back({.kind = has_back() ? StepKind::BackTieFirst : StepKind::BackLine, .part = has_back() ? back_ : 0, .after = {}});
        for (std::size_t i = 0; i < whole_.guys.size(); ++i)
            if (past_edge(i)) up.push_back({.kind = StepKind::AnchorOverEdge, .part = i, .after = {}});
        up.push_back({.kind = StepKind::LayOut, .after = {}});
        set_feet(up);
    }

    void set_feet(SequenceSteps& up) const {
        std::size_t fixed = 0;
        for (std::size_t i = 0; i < whole_.legs.size(); ++i) fixed += is_fixed(plan_, i) ? 1 : 0;
        if (fixed > 0) up.push_back({.kind = StepKind::FixFeet, .after = {}});
        if (fixed < whole_.legs.size()) up.push_back({.kind = StepKind::HoldFeet, .after = {}});
    }

    [[nodiscard]] Standing standing_with(const TieShares& ties) const { return find_standing(plan_, partly_tied(whole_, ties)); }

    /// The step that has led to the ties as they now are.
    SequenceStep stepped(StepKind kind, std::size_t part) {
        SequenceStep s{.kind = kind, .part = part, .computed = true, .after = standing_with(ties_)};
        s.hold = !before_.by_itself || !s.after.by_itself;
        s.hold_N = std::max(before_.by_itself ? 0.0 : before_.hold_N, s.after.by_itself ? 0.0 : s.after.hold_N);
        before_ = s.after;
        return s;
    }

    /// The head is lifted off the ground with half of every leg's weight. Whoever lifts it goes on holding it if need be.
    void raise(SequenceSteps& up) {
        ties_.fill(k_tie_off);
        if (near_edge_ && has_back()) ties_[back_] = 0.0;
        before_.by_itself = true;
        SequenceStep s = stepped(StepKind::Raise, 0);
        s.hold = true;
        s.hold_N = std::max(s.hold_N, whole_.head_weight_N);
        up.push_back(s);
    }

    /// Next the guy after which least is left to hold; among equals the one that leaves the smallest gap all round.
    void tie_on(SequenceSteps& up) {
        for (std::size_t round = 0; round < whole_.guys.size(); ++round) {
            std::size_t best = whole_.guys.size();
            Standing best_state;
            double best_gap_deg = 0.0;
            for (std::size_t i = 0; i < whole_.guys.size(); ++i) {
                if (ties_[i] >= 0.0) continue;
                TieShares tried = ties_;
                tried[i] = 0.0;
                const Standing state = standing_with(tried);
                const double gap_deg = gap_of_tied(whole_, tried);
                if (best < whole_.guys.size() && !is_safer(state, gap_deg, best_state, best_gap_deg)) continue;
                best = i;
                best_state = state;
                best_gap_deg = gap_deg;
            }
            if (best == whole_.guys.size()) return;
            ties_[best] = 0.0;
            tied_.push_back(best);
            up.push_back(stepped(StepKind::TieOn, best));
        }
    }

    /// The guy whose take-up does most for whichever other guy it does least for; none known where the rig does not stand.
    [[nodiscard]] std::size_t last_to_tighten(std::size_t& eases) const {
        const TieMatrix t = tie_matrix(whole_, solve_equilibrium(whole_, {}, whole_.drawn_head_m));
        std::size_t best = t.guys;
        double best_N_m = -HUGE_VAL;
        for (std::size_t i = 0; t.computed && i < t.guys; ++i) {
            std::size_t least = i;
            for (std::size_t j = 0; j < t.guys; ++j)
                if (j != i && (least == i || t.change_N_per_m[i][j] < t.change_N_per_m[i][least])) least = j;
            if (least == i || !(t.change_N_per_m[i][least] > best_N_m)) continue;
            best = i;
            best_N_m = t.change_N_per_m[i][least];
            eases = best_N_m < 0.0 ? least : k_max_guys;
        }
        return best;
    }

    /// To their pretension: at one go each if nothing tips on the way, else in halves or quarters, all guys in turn.
    void tighten(SequenceSteps& up) {
        std::size_t eases = k_max_guys;
        const std::size_t last = last_to_tighten(eases);
        for (const int rounds : {1, 2, 4, 1}) {
            tightened_ = order_to_tighten(rounds, last);
            if (all_stand(tightened_)) break;
        }
        for (std::size_t k = 0; k < tightened_.size(); ++k) {
            const TieStep& t = tightened_[k];
            const bool is_last = k + 1 == tightened_.size() && t.guy == last;
            ties_[t.guy] = t.to;
            SequenceStep s = stepped(is_last ? StepKind::TightenLast : StepKind::Tighten, t.guy);
            s.share = t.to;
            if (is_last) s.eases = eases;
            up.push_back(s);
        }
    }

    struct TieStep {
        std::size_t guy = 0;
        double from = 0.0, to = 1.0;  ///< share of the pretension
    };
    using TieSteps = Bounded<TieStep, 4 * k_max_guys>;

    /// In every round the next guy is always the one after which the slackest is tightest; `last` comes last.
    [[nodiscard]] TieSteps order_to_tighten(int rounds, std::size_t last) const {
        TieSteps out;
        TieShares ties = ties_;
        for (int round = 1; round <= rounds; ++round) {
            const double to = static_cast<double>(round) / rounds;
            for (std::size_t done = 0; done < whole_.guys.size(); ++done) {
                const std::size_t next = next_to_tighten(ties, to, done + 1 < whole_.guys.size() ? last : k_max_guys);
                out.push_back({next, ties[next], to});
                ties[next] = to;
            }
        }
        return out;
    }

    [[nodiscard]] std::size_t next_to_tighten(const TieShares& ties, double to, std::size_t not_yet) const {
        std::size_t best = whole_.guys.size();
        double best_N = -HUGE_VAL;
        for (std::size_t i = 0; i < whole_.guys.size(); ++i) {
            if (ties[i] >= to || i == not_yet) continue;
            TieShares tried = ties;
            tried[i] = to;
            const double least_N = least_tension_N(tried);
            if (best < whole_.guys.size() && !(least_N > best_N + 1e-6)) continue;
            best = i;
            best_N = least_N;
        }
        return best;
    }

    [[nodiscard]] bool all_stand(const TieSteps& steps) const {
        TieShares ties = ties_;
        for (const TieStep& t : steps) {
            ties[t.guy] = t.to;
            if (!standing_with(ties).by_itself) return false;
        }
        return true;
    }

    [[nodiscard]] double least_tension_N(const TieShares& ties) const {
        const Model m = partly_tied(whole_, ties);
        const Equilibrium e = solve_equilibrium(m, {}, m.drawn_head_m);
        if (!is_stable(e)) return -HUGE_VAL;
        double least_N = HUGE_VAL;
        for (const Guy& g : m.guys) least_N = std::min(least_N, signed_tension_N(g, e.head_m));
        return least_N;
    }

    void take_down(SequenceSteps& down) {
        down.push_back(stepped(StepKind::Unload, 0));
        for (std::size_t k = tightened_.size(); k-- > 0;) {
            ties_[tightened_[k].guy] = tightened_[k].from;
            down.push_back(stepped(StepKind::Loosen, tightened_[k].guy));
            down[down.size() - 1].share = tightened_[k].from;
        }
        for (std::size_t k = tied_.size(); k-- > 0;) {
            ties_[tied_[k]] = k_tie_off;
            down.push_back(stepped(StepKind::TakeOff, tied_[k]));
        }
        down.push_back(
            {.kind = StepKind::Lower, .after = {}, .hold = true, .hold_N = std::max(before_.by_itself ? 0.0 : before_.hold_N, whole_.head_weight_N)});
        for (std::size_t i = 0; i < whole_.legs.size(); ++i) {
            if (!is_fixed(plan_, i)) continue;
            down.push_back({.kind = StepKind::FreeFeet, .after = {}});
            break;
        }
        for (std::size_t i = 0; i < whole_.guys.size(); ++i)
            if (past_edge(i)) down.push_back({.kind = StepKind::ClearEdge, .part = i, .after = {}});
        if (near_edge_ && has_back()) down.push_back({.kind = StepKind::BackTieLast, .part = back_, .after = {}});
    }

    const Plan& plan_;
    const Model& whole_;
    TieShares ties_{};
    Standing before_;
    std::size_t back_ = 0;
    bool near_edge_ = false;
    Bounded<std::size_t, k_max_guys> tied_;
    TieSteps tightened_;
};

}  // namespace detail

/// Rigging and taking down, step by step, from the geometry and from the rest of every partial state under its own weight.
/// Rules of order (common practice, no source): near the edge the back tie is on before the kit comes there and off last; anchors
/// past the edge come before the frame; feet are fixed before it is raised.
[[nodiscard]] inline Sequence find_sequence(const Plan& plan, const Model& whole) { return detail::SequenceFinder(plan, whole).find(); }

}  // namespace guywright
