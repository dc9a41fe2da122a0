#include "wasm/screens/site.hpp"

#include <imgui_internal.h>

#include "wasm/app/inputs.hpp"
#include "wasm/scene/force_polygon.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

constexpr float k_label_px = 18.0F;
constexpr float k_key_px = 92.0F;
constexpr float k_margin_px = 8.0F;

scene::Frame frame_of(const Box& box) { return {box.min(), box.max()}; }
scene::Vec2 vec(ImVec2 v) { return {static_cast<double>(v.x), static_cast<double>(v.y)}; }

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

/// The way of one key while the picture has the keyboard's focus; the key then does not move the focus on.
int steps_of(ImGuiKey key) {
    const ImGuiID owner = ImGui::GetItemID();
    const int steps = ImGui::IsKeyPressed(key, owner, ImGuiInputFlags_Repeat) ? 1 : 0;
    ImGui::SetKeyOwner(key, owner);  // from the next frame on
    return steps;
}

/// Arrows turn, or move what does not turn; plus and minus zoom; 0 and Home reset.
void keys_on_picture(Ui& ui, const Box& box) {
    if (!ImGui::IsItemFocused()) return;
    constexpr double k_arrow_px = 25.0, k_key_zoom = 1.25;
    const scene::ImageBox room = room_of_picture(box);
    const int right = steps_of(ImGuiKey_RightArrow) - steps_of(ImGuiKey_LeftArrow), down = steps_of(ImGuiKey_DownArrow) - steps_of(ImGuiKey_UpArrow);
    if (right != 0 || down != 0) ui.wish(app::DragScene{room, k_arrow_px * scene::Vec2{right, down}});
    const auto pressed = [](std::initializer_list<ImGuiKey> keys) {
        return std::any_of(keys.begin(), keys.end(), [](ImGuiKey key) { return ImGui::IsKeyPressed(key); });
    };
    const scene::Vec2 middle = vec(box.centre());
    if (pressed({ImGuiKey_Equal, ImGuiKey_KeypadAdd})) ui.wish(app::PinchScene{room, middle, middle, k_key_zoom});
    if (pressed({ImGuiKey_Minus, ImGuiKey_KeypadSubtract})) ui.wish(app::PinchScene{room, middle, middle, 1.0 / k_key_zoom});
    if (pressed({ImGuiKey_0, ImGuiKey_Keypad0, ImGuiKey_Home})) ui.wish(app::ResetView{});
}

/// One finger turns, the right or middle button of a mouse moves, its wheel zooms about where it points.
void hands_on_picture(Ui& ui, const Box& box) {
    const ImGuiIO& io = ImGui::GetIO();
    const scene::ImageBox room = room_of_picture(box);
    const bool moved = io.MouseDelta.x != 0.0F || io.MouseDelta.y != 0.0F;
    if (moved && ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left)) ui.wish(app::DragScene{room, vec(io.MouseDelta)});
    if (!ImGui::IsItemHovered()) return;
    const scene::Vec2 at = vec(io.MousePos);
    if (moved && (io.MouseDown[ImGuiMouseButton_Right] || io.MouseDown[ImGuiMouseButton_Middle]))
        ui.wish(app::PinchScene{room, at - vec(io.MouseDelta), at, 1.0});
    constexpr double k_notch = 1.1;
    if (io.MouseWheel != 0.0F) ui.wish(app::PinchScene{room, at, at, io.MouseWheel > 0.0F ? k_notch : 1.0 / k_notch});
}

std::string shown_view(const app::State& state) { return said(state, words::k_view_names[static_cast<std::size_t>(state.view)]); }

/// Returns how many dimensions found no room.
int draw_picture(Ui& ui, const app::State& state, const Box& box, const std::vector<Box>& keys) {
    scene::Picture picture{state.shown_case, 1.0, state.site_large, app::highlight_of(state.last_touched), {}, state.speech, app::is_blind(state.practice)};
    const Evaluation& e = seen(state);
    if (state.site_large) picture.enlarge = scene::enlargement(e);
    for (const Box& key : keys) picture.covered.push_back(frame_of(key.inner(-4.0F)));
    ui.draw.PushClipRect(box.min(), box.max(), true);
    const int left_out = scene::draw(ui.draw, ui.fonts.strong, k_label_px, frame_of(box), state.camera, state.view, state.plan, e, picture, ui.theme.scene);
    ui.draw.PopClipRect();
    return left_out;
}

/// What can be touched of the picture, with what lies on it already submitted. True where it was tapped.
bool touch_picture(Ui& ui, const app::State& state, const Box& box) {
    const bool tapped = widgets::touch(ui, box, "scene") && !was_dragged();
    hands_on_picture(ui, box);
    keys_on_picture(ui, box);
    ui.mirror.push_back({"scene", "image", said(state, state.site_large ? words::k_site_large : words::k_site), shown_view(state), box});
    return tapped;
}

bool is_reset(const app::State& s) {
    scene::Camera fresh = s.camera;
    scene::reset(fresh, s.view == scene::View::Free);
    return fresh == s.camera;
}

}  // namespace

std::string_view view_name(scene::View view) {
    constexpr std::array<std::string_view, scene::k_view_count> k_names{"free", "above", "side", "behind", "forces"};
    return k_names[static_cast<std::size_t>(view)];
}

std::string shown_case_name(const app::State& state) {
    if (state.shown_case >= seen(state).outcomes.size()) return {};
    return case_name(language_of(state.speech), state.plan, seen(state).outcomes[state.shown_case].setup);
}

scene::ImageBox room_of_picture(const Box& box) { return scene::room_of(frame_of(box), k_label_px); }

void draw_site(Ui& ui, const app::State& state, const Box& box) {
    if (state.lock) {  // to be looked at only
        draw_picture(ui, state, box, {});
        ui.mirror.push_back({"scene", "image", said(state, words::k_site), shown_view(state), box});
        return;
    }
    Box row = box.inner(k_margin_px).cut_bottom(widgets::k_target_px);
    const Box view_key = row.cut_right(k_key_px);
    const std::string name = shown_case_name(state), label = said(state, words::k_case, {{"{case}", name}});
    std::vector<Box> keys{view_key};
    if (!name.empty()) keys.push_back(row.cut_left(width_for(ui, label, k_key_px)));
    draw_picture(ui, state, box, keys);
    if (widgets::button(ui, view_key, {"view", said(state, words::k_view, {{"{view}", shown_view(state)}})})) ui.wish(app::NextView{});
    if (!name.empty() && widgets::button(ui, keys[1], {"case", label})) ui.wish(app::NextCase{});
    if (touch_picture(ui, state, box)) ui.wish(app::ToggleLargeSite{});
}

void draw_large_picture(Ui& ui, const app::State& state, Box box) {
    const std::string words = caption(state);
    const Box below = box.cut_bottom(widgets::text_height(ui.fonts.text, words, box.w - 2.0F * k_margin_px) + 6.0F);
    const bool as_fitted = is_reset(state);
    Box corner = box.inner(k_margin_px);
    corner = corner.cut_top(widgets::k_target_px).cut_right(k_key_px);
    const int left_out = draw_picture(ui, state, box, as_fitted ? std::vector<Box>{} : std::vector<Box>{corner});
    if (as_fitted && left_out > 0) ui.cut.push_back(std::to_string(left_out) + " dimensions");
    widgets::write(ui, ui.fonts.text, {below.x + k_margin_px, below.y, below.w - 2.0F * k_margin_px, below.h}, words, ui.theme.ink);
    ui.mirror.push_back({"caption", "text", words, "", below});
    if (!as_fitted && widgets::button(ui, corner, {"reset view", say(state.speech, words::k_reset)})) ui.wish(app::ResetView{});
    touch_picture(ui, state, box);
    if (ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) ui.wish(app::ResetView{});
    if (state.view != scene::View::Forces) return;
    for (const scene::ForceRow& row : scene::force_rows(state.speech, state.plan, seen(state), state.shown_case))
        ui.mirror.push_back({"force " + row.name, "text", row.name, row.amount, box});
}

}  // namespace guywright::screens
