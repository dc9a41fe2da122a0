#include "wasm/app/lock.hpp"

#include "wasm/screens/parts.hpp"
#include "wasm/words/menu.hpp"

namespace guywright::screens {
namespace {

using app::Lock;
using widgets::Box;
using widgets::Ui;

constexpr float k_place_px = 112.0F;
constexpr float k_apart_px = 14.0F;
constexpr float k_strayed_px = 30.0F;  ///< a finger that is held still wanders less, a sleeve more

/// The two places stand at opposite corners, so that no sleeve rests on one after the other.
struct Places {
    Box first, second;
};

Places places_in(const Box& box) {
    const float side = std::min(k_place_px, (box.h - k_apart_px) / 2.0F);
    return {{box.x, box.y + box.h - side, side, side}, {box.x + box.w - side, box.y, side, side}};
}

bool holds(const Box& box, ImVec2 p) { return p.x >= box.x && p.x < box.x + box.w && p.y >= box.y && p.y < box.y + box.h; }

/// By where the finger came down: while it does not stray it is still there.
Lock::Touched touched_by_pointer(const Places& at, int fingers) {
    const ImGuiIO& io = ImGui::GetIO();
    if (!io.MouseDown[0]) return Lock::Touched::Nothing;
    const bool strayed = io.MouseDragMaxDistanceSqr[0] > k_strayed_px * k_strayed_px;
    if (strayed || fingers > 1) return Lock::Touched::Wrong;
    if (holds(at.first, io.MouseClickedPos[0])) return Lock::Touched::First;
    return holds(at.second, io.MouseClickedPos[0]) ? Lock::Touched::Second : Lock::Touched::Wrong;
}

Lock::Touched touched_by_key() {
    const bool first = ImGui::IsKeyDown(ImGuiKey_1) || ImGui::IsKeyDown(ImGuiKey_Keypad1);
    const bool second = ImGui::IsKeyDown(ImGuiKey_2) || ImGui::IsKeyDown(ImGuiKey_Keypad2);
    if (first && second) return Lock::Touched::Wrong;
    return first ? Lock::Touched::First : second ? Lock::Touched::Second : Lock::Touched::Nothing;
}

/// A place that fills while it is held; one that is done is solid.
void draw_place(Ui& ui, const app::Speech& speech, const Box& box, std::string_view number, float filled, std::string_view id) {
    ui.draw.AddRectFilled(box.min(), box.max(), ui.theme.raised, 16.0F);
    const float top = box.y + box.h * (1.0F - filled);
    ui.draw.PushClipRect({box.x, top}, box.max(), true);
    ui.draw.AddRectFilled(box.min(), box.max(), ui.theme.ink, 16.0F);
    write_line(ui, ui.fonts.huge, box, number, ui.theme.field, widgets::Align::Centre);
    ui.draw.PopClipRect();
    ui.draw.PushClipRect(box.min(), {box.x + box.w, top}, true);
    write_line(ui, ui.fonts.huge, box, number, ui.theme.ink, widgets::Align::Centre);
    ui.draw.PopClipRect();
    ui.draw.AddRect(box.min(), box.max(), ui.theme.ink, 16.0F, 0, 4.0F);
    ui.mirror.push_back({std::string(id), "hold", std::string(number), filled >= 1.0F ? std::string(say(speech, words::k_hold_done)) : std::string(), box});
}

void draw_words(Ui& ui, const app::Speech& speech, const Box& box, const Places& at, bool first_done) {
    const std::string_view locked = say(speech, words::k_locked), how = say(speech, first_done ? words::k_now_second : words::k_how_to_open);
    Box above{box.x, box.y, at.second.x - k_apart_px - box.x, at.first.y - k_apart_px - box.y};
    const float right = at.first.x + at.first.w + k_apart_px;
    const Box below{right, at.first.y, box.x + box.w - right, at.first.h};
    write_line(ui, ui.fonts.large, above.cut_top(32.0F, 4.0F), locked, ui.theme.ink);
    widgets::write(ui, ui.fonts.text, above, say(speech, words::k_nothing_changes), ui.theme.ink);
    widgets::write(ui, ui.fonts.strong, below, how, ui.theme.ink);
    ui.mirror.push_back({"locked", "text", std::string(locked), std::string(how), box});
}

}  // namespace

void draw_lock(Ui& ui, const app::State& state, const Box& box, int fingers) {
    const Places at = places_in(box);
    const Lock::Touched pointer = touched_by_pointer(at, fingers), key = touched_by_key();
    const bool both = pointer != Lock::Touched::Nothing && key != Lock::Touched::Nothing;
    const Lock::Touched touched = both ? Lock::Touched::Wrong : key != Lock::Touched::Nothing ? key : pointer;
    if (touched != Lock::Touched::Nothing || state.lock->waits()) ui.wish(app::LookAtLock{touched, ImGui::GetTime()});
    const bool first_done = state.lock->first_done();
    draw_place(ui, state.speech, at.first, "1", first_done ? 1.0F : state.lock->held(), "lock 1");
    draw_place(ui, state.speech, at.second, "2", first_done ? state.lock->held() : 0.0F, "lock 2");
    draw_words(ui, state.speech, box, at, first_done);
}

}  // namespace guywright::screens
