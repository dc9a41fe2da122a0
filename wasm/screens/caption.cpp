#include "engine/codec/sentences.hpp"
#include "engine/plan/fault_text.hpp"
#include "wasm/scene/force_polygon.hpp"
#include "wasm/screens/site.hpp"

namespace guywright::screens {
namespace {

constexpr const char* k_not_computed = "Nothing is computed yet: something that is needed is missing or cannot be used.";
constexpr const char* k_no_answer = "No forces in this case: the head finds no rest.";
constexpr const char* k_falls = "No forces in this case: the rig does not stand.";
constexpr const char* k_still = "The head moves less than 1 mm.";
constexpr const char* k_moves = "The head moves ";
constexpr const char* k_true = ", drawn as it is.";
constexpr const char* k_drawn = ", drawn ";
constexpr const char* k_dashed = ", dashed ";
constexpr const char* k_times = " times larger.";
constexpr const char* k_dashed_measured = " Dashed: as measured.";
constexpr const char* k_as_measured = "As measured. ";
constexpr const char* k_tail_to_tip = "Every force on the head, tail to tip, to scale. Left over: ";

std::string millimetres(double m) { return fixed_text(1000.0 * m, 0) + " mm"; }

std::string movement(const app::State& s, const Outcome& o) {
    constexpr double k_least_m = 0.0005;
    if (o.head_shift_m < k_least_m) return k_still;
    const double larger = scene::enlargement(s.evaluation);
    const std::string moves = k_moves + millimetres(o.head_shift_m);
    if (larger == 1.0) return moves + k_true + (scene::has_dimensions(s.view) ? "" : k_dashed_measured);
    const std::string times = number_text(larger) + k_times;
    return scene::has_dimensions(s.view) ? k_as_measured + moves + k_dashed + times : moves + k_drawn + times + k_dashed_measured;
}

std::string no_forces(const app::State& s) {
    if (s.shown_case >= s.evaluation.outcomes.size()) return k_not_computed;
    return s.evaluation.outcomes[s.shown_case].equilibrium.status == SolveStatus::Collapsed ? k_falls : k_no_answer;
}

}  // namespace

std::string caption(const app::State& s) {
    const Outcome* o = scene::solved_outcome(s.evaluation, s.shown_case);
    if (o == nullptr) return no_forces(s);
    if (s.view != scene::View::Forces) return movement(s, *o);
    return k_tail_to_tip + fixed_text(kilonewtons(scene::left_over_N(scene::forces_at_head(s.evaluation.model, *o))), 2) + " kN.";
}

}  // namespace guywright::screens
