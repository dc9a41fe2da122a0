#include <array>
#include <cmath>

#include "wasm/screens/site.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr float k_between_px = 8.0F;
constexpr float k_wide_px = 330.0F;  ///< from here on three keys stand side by side
constexpr std::size_t k_key_count = words::k_view_keys.size() + 1;
constexpr float k_thumb_px = 26.0F;
constexpr float k_rail_px = 8.0F;
constexpr float k_title_px = 30.0F;

std::size_t columns_for(float width) { return width >= k_wide_px ? 3 : 2; }

float rows_height(float width) {
    const auto rows = static_cast<float>((k_key_count + columns_for(width) - 1) / columns_for(width));
    return rows * widgets::k_target_px + (rows - 1.0F) * k_between_px;
}

/// Index after a drag of so many px: the thumb does not jump to the finger, and a case is never narrower than a finger can choose.
std::size_t dragged_to(double from, float px, float rail_px, std::size_t count) {
    constexpr float k_least_step_px = 18.0F;
    const float step_px = std::max(k_least_step_px, rail_px / static_cast<float>(count - 1));
    return static_cast<std::size_t>(std::clamp(std::round(from + static_cast<double>(px / step_px)), 0.0, static_cast<double>(count - 1)));
}

void drag_case(Ui& ui, const app::State& s, const Box& rail, std::size_t count) {
    const std::string hand = "case";
    if (ImGui::IsItemActivated()) ui.hand = {hand, static_cast<double>(s.shown_case)};
    if (!ImGui::IsItemActive() || ui.hand.path != hand || !ImGui::IsMouseDown(ImGuiMouseButton_Left)) return;
    const ImGuiIO& io = ImGui::GetIO();
    if (!ImGui::IsMousePosValid()) return;
    const std::size_t to = dragged_to(ui.hand.from_value, io.MousePos.x - io.MouseClickedPos[0].x, rail.w - k_thumb_px, count);
    if (to != s.shown_case) ui.wish(app::ShowCase{to});
}

void draw_rail(Ui& ui, const Box& rail, std::size_t at, std::size_t count, bool held) {
    const float y = rail.centre().y, left = rail.x + k_thumb_px / 2.0F, right = rail.x + rail.w - k_thumb_px / 2.0F;
    const float step = count > 1 ? (right - left) / static_cast<float>(count - 1) : 0.0F;
    ui.draw.AddRectFilled({left, y - k_rail_px / 2.0F}, {right, y + k_rail_px / 2.0F}, ui.theme.raised, 4.0F);
    ui.draw.AddRect({left, y - k_rail_px / 2.0F}, {right, y + k_rail_px / 2.0F}, ui.theme.ink, 4.0F, 0, 2.0F);
    for (std::size_t i = 0; i < count; ++i) {
        const float x = left + static_cast<float>(i) * step;
        ui.draw.AddLine({x, y - 12.0F}, {x, y + 12.0F}, ui.theme.ink, 2.0F);
    }
    const float x = left + static_cast<float>(at) * step;
    ui.draw.AddRectFilled({x - k_thumb_px / 2.0F, y - 22.0F}, {x + k_thumb_px / 2.0F, y + 22.0F}, held ? ui.theme.action : ui.theme.ink, 7.0F);
    ui.draw.AddRect({x - k_thumb_px / 2.0F, y - 22.0F}, {x + k_thumb_px / 2.0F, y + 22.0F}, ui.theme.ink, 7.0F, 0, 3.0F);
}

void draw_title(Ui& ui, const app::State& s, Box row, const std::string& name, std::size_t at, std::size_t count) {
    const std::string where = count > 0 ? said(s, words::k_of, {{"{n}", std::to_string(at + 1)}, {"{all}", std::to_string(count)}}) : std::string();
    write_line(ui, ui.fonts.text, row.cut_right(widgets::text_width(ui.fonts.text, where) + 1.0F, 8.0F), where, ui.theme.ink, widgets::Align::Right);
    write_line(ui, ui.fonts.strong, row, name.empty() ? said(s, words::k_no_case) : name, ui.theme.ink);
}

}  // namespace

float case_slider_height() { return k_title_px + widgets::k_target_px; }

void case_slider(Ui& ui, const app::State& s, Box box) {
    const std::size_t count = seen(s).outcomes.size(), at = s.shown_case;
    const std::string name = shown_case_name(s);
    draw_title(ui, s, box.cut_top(k_title_px), name, at, count);
    if (widgets::button(ui, box.cut_left(widgets::k_target_px, 10.0F), {"case before", "\u2212", ButtonLook::Plain, count > 0 && at > 0, true}))
        ui.wish(app::ShowCase{at - 1});
    if (widgets::button(ui, box.cut_right(widgets::k_target_px, 10.0F), {"case after", "+", ButtonLook::Plain, at + 1 < count, true}))
        ui.wish(app::ShowCase{at + 1});
    widgets::touch(ui, box, "slide case");
    if (const int steps = widgets::arrow_pressed(); steps != 0 && (steps > 0 || at > 0)) ui.wish(app::ShowCase{steps > 0 ? at + 1 : at - 1});
    if (count > 1) drag_case(ui, s, box, count);
    draw_rail(ui, box, at, count, ImGui::IsItemActive());
    ui.mirror.push_back({"slide case", "slider", said(s, words::k_case_slider), name, box});
}

float picture_keys_height(float width) { return case_slider_height() + 2.0F * k_between_px + rows_height(width); }

void draw_picture_keys(Ui& ui, const app::State& s, Box box) {
    Box keys = box.cut_bottom(rows_height(box.w), 2.0F * k_between_px);
    case_slider(ui, s, box.cut_bottom(case_slider_height()));
    const auto columns = static_cast<float>(columns_for(keys.w));
    const float wide = (keys.w - (columns - 1.0F) * k_between_px) / columns;
    Box row{};
    for (std::size_t i = 0; i < k_key_count; ++i) {
        if (i % columns_for(keys.w) == 0) row = keys.cut_top(widgets::k_target_px, k_between_px);
        const Box key = row.cut_left(wide, k_between_px);
        if (i == words::k_view_keys.size()) {
            if (widgets::button(ui, key, {"smaller", say(s.speech, words::k_back), ButtonLook::Action})) ui.wish(app::ToggleLargeSite{});
            continue;
        }
        const auto view = static_cast<scene::View>(i);
        const std::string id = "view " + std::string(view_name(view));
        if (widgets::button(ui, key, {id, say(s.speech, words::k_view_keys[i]), s.view == view ? ButtonLook::Chosen : ButtonLook::Plain}))
            ui.wish(app::SetView{view});
    }
}

}  // namespace guywright::screens
