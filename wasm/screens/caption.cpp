#include "wasm/scene/force_polygon.hpp"
#include "wasm/screens/site.hpp"
#include "wasm/words/picture.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

constexpr double k_least_mm = 1.0;

std::string movement(const app::State& s, const Outcome& o) {
    if (1000.0 * o.head_shift_m < 0.5 * k_least_mm) return said(s, words::k_still, {{"{least}", app::amount(s.speech, k_least_mm, "mm")}});
    const double larger = scene::enlargement(seen(s));
    const std::string by = app::amount(s.speech, 1000.0 * o.head_shift_m, "mm"), times = app::short_number(s.speech, larger);
    const bool dimensions = scene::has_dimensions(s.view);
    if (dimensions && larger != 1.0) return said(s, words::k_moves_dashed, {{"{by}", by}, {"{n}", times}});
    const std::string moves = larger == 1.0 ? said(s, words::k_moves_true, {{"{by}", by}}) : said(s, words::k_moves_drawn, {{"{by}", by}, {"{n}", times}});
    return dimensions ? moves : moves + " " + said(s, words::k_dashed_measured);
}

std::string no_forces(const app::State& s) {
    if (s.shown_case >= seen(s).outcomes.size()) return said(s, words::k_not_computed);
    const bool falls = seen(s).outcomes[s.shown_case].equilibrium.status == SolveStatus::Collapsed;
    return said(s, falls ? words::k_falls : words::k_no_rest);
}

}  // namespace

std::string caption(const app::State& s) {
    if (is_blind(s.practice)) return said(s, words::practice::k_as_drawn);
    const Outcome* o = scene::solved_outcome(seen(s), s.shown_case);
    if (o == nullptr) return no_forces(s);
    if (s.view != scene::View::Forces) return movement(s, *o);
    const double left_N = scene::left_over_N(scene::forces_at_head(seen(s).model, *o));
    return said(s, words::k_tail_to_tip, {{"{force}", app::amount(s.speech, kilonewtons(left_N), "kN")}});
}

}  // namespace guywright::screens
