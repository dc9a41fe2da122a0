#include "wasm/screens/practice_picture.hpp"

#include "wasm/scene/force_polygon.hpp"
#include "wasm/scene/scene.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

constexpr float k_label_px = 18.0F;

scene::Highlight lit_by(const app::SiteInHand& site) {
    using Part = scene::Highlight::Part;
    if (site.explanation.empty()) return {};
    const ExplainStep& step = site.explanation[std::min(site.spoken, site.explanation.size() - 1)];
    switch (step.lit) {
        case SiteLit::RopeSides: return {Part::RopeSides, step.subject};
        case SiteLit::Resultant: return {Part::Resultant};
        case SiteLit::Legs: return {Part::Metal};
        case SiteLit::Guy: return {Part::Guy, step.subject};
        case SiteLit::None: break;
    }
    return {};
}

void draw_one(Ui& ui, const app::State& s, Box box, bool from_head) {
    const std::string title = said(s, from_head ? words::practice::k_diagram : words::practice::k_polygon);
    scene::Picture picture{.shown = k_holding, .highlight = lit_by(s.practice->site), .speech = s.speech, .from_head = from_head};
    write_line(ui, ui.fonts.strong, box.cut_top(widgets::k_line_px + 4.0F).inner(4.0F), title, ui.theme.ink);
    scene::draw(ui.draw, ui.fonts.strong, k_label_px, {box.min(), box.max()}, s.camera, scene::View::Forces, s.plan, s.evaluation, picture, ui.theme.scene);
    ui.mirror.push_back({from_head ? "head forces" : "force polygon", "image", title, "", box});
}

}  // namespace

void draw_head_forces(Ui& ui, const app::State& s, Box box) {
    constexpr float k_least_px = 300.0F;  // less than that for each of two, and the polygon is left out
    if (std::max(box.w, box.h) < 2.0F * k_least_px) return draw_one(ui, s, box, true);
    const bool across = box.w > box.h;
    draw_one(ui, s, across ? box.cut_left(box.w / 2.0F - 2.0F, 4.0F) : box.cut_top(box.h / 2.0F - 2.0F, 4.0F), true);
    draw_one(ui, s, box, false);
}

}  // namespace guywright::screens
