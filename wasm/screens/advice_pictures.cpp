#include "wasm/screens/advice_pictures.hpp"

#include "wasm/screens/advice_drawings.hpp"
#include "wasm/screens/advice_items.hpp"

namespace guywright::screens {

bool is_picture_step(app::Step step) { return step == app::Step::Ties || step == app::Step::Directions || step == app::Step::Why; }

bool has_advice_picture(const app::State& s) {
    const app::Advisor* a = answers(s);
    if (s.step == app::Step::Anchors) return !s.plan.candidate_anchors_m.empty() && s.evaluation.faults.empty();
    if (a == nullptr) return false;
    if (s.step == app::Step::Ties) return a->done(app::Question::Ties) && !s.plan.guys.empty();
    if (s.step == app::Step::LineUp) return a->done(app::Question::LineUp) && !a->tuning().line_up.take_up_m.empty();
    return s.step == app::Step::Directions && a->done(app::Question::Directions);
}

void draw_advice_picture(widgets::Ui& ui, const app::State& s, const widgets::Box& box) {
    ui.draw.PushClipRect(box.min(), box.max(), true);
    if (s.step == app::Step::Anchors) draw_anchor_plan(ui, s, box);
    else if (s.step == app::Step::Ties) draw_tie_plan(ui, s, *answers(s), box);
    else if (s.step == app::Step::LineUp) draw_line_up(ui, s, *answers(s), box);
    else draw_direction_chart(ui, s, *answers(s)->directions(), box);
    ui.draw.PopClipRect();
}

}  // namespace guywright::screens
