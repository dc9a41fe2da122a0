#include "engine/codec/english.hpp"
#include "engine/codec/sentences.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/screens/parts.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

std::string_view view_label(scene::View view) {
    switch (view) {
        case scene::View::Free: return "View: free";
        case scene::View::PlanView: return "View: above";
        case scene::View::Elevation: return "View: side";
    }
    return "";
}

scene::Highlight lit_up(const app::State& s) {
    const app::Input* input = app::find_input(s.last_touched);
    if (input == nullptr) return {};
    return {input->part, app::index_in(s.last_touched)};
}

/// A key on the picture, readable on whatever lies under it.
bool picture_key(Ui& ui, const Box& box, std::string_view id, const std::string& label) {
    return widgets::button(ui, box, {id, label});
}

/// Width at which a key of usual height holds the label.
float width_for(const Ui& ui, const std::string& label, float least) {
    float wide = least;
    while (wide < 2.0F * least && widgets::text_height(ui.fonts.strong, label, wide - 12.0F) > widgets::k_target_px - 12.0F) wide += 12.0F;
    return wide;
}

/// The finger that has just gone up had turned the picture.
bool was_dragged() {
    const ImGuiIO& io = ImGui::GetIO();
    return io.MouseReleased[0] && io.MouseDragMaxDistanceSqr[0] >= io.MouseDragThreshold * io.MouseDragThreshold;
}

}  // namespace

void draw_site(Ui& ui, const app::State& state, const Box& box) {
    ui.draw.PushClipRect(box.min(), box.max(), true);
    scene::draw(ui.draw, ui.fonts.strong, 18.0F, {box.min(), box.max()}, state.camera, state.view, state.plan, state.evaluation,
                state.shown_case, lit_up(state), ui.theme.scene);
    ui.draw.PopClipRect();
    Box keys = Box{box.x, box.y, box.w, box.h}.inner(8.0F);
    keys = keys.cut_bottom(widgets::k_target_px);
    constexpr float wide = 92.0F;
    if (picture_key(ui, keys.cut_right(wide), "view", std::string(view_label(state.view)))) ui.wish(app::NextView{});
    if (state.shown_case < state.evaluation.outcomes.size()) {
        const Case& setup = state.evaluation.outcomes[state.shown_case].setup;
        const std::string label = "Case: " + case_name(k_english, state.plan, setup);
        if (picture_key(ui, keys.cut_left(width_for(ui, label, wide)), "case", label)) ui.wish(app::NextCase{});
    }
    if (state.site_large && picture_key(ui, {box.x + (box.w - wide) / 2.0F, keys.y, wide, keys.h}, "smaller", "Back")) ui.wish(app::ToggleLargeSite{});
    const bool tapped = widgets::touch(ui, {box.x, box.y, box.w, box.h - widgets::k_target_px - 16.0F}, "scene") && !was_dragged();
    if (tapped) ui.wish(app::ToggleLargeSite{});
    if (ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left)) {
        const ImVec2 moved = ImGui::GetIO().MouseDelta;
        if (moved.x != 0.0F || moved.y != 0.0F) ui.wish(app::TurnScene{moved.x, moved.y});
    }
    if (ImGui::IsItemHovered() && ImGui::GetIO().MouseWheel != 0.0F) ui.wish(app::ZoomScene{ImGui::GetIO().MouseWheel > 0.0F ? 1.1F : 1.0F / 1.1F});
    ui.mirror.push_back({"scene", "image", state.site_large ? "The site, large" : "The site", "", box});
}

}  // namespace guywright::screens
