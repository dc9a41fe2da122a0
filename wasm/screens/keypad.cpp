#include <imgui_internal.h>

#include <algorithm>
#include <array>

#include "wasm/app/found_anchors.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/words/keys.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr std::array<std::string_view, 12> k_keys{"7", "8", "9", "4", "5", "6", "1", "2", "3", "-", "0", "."};
constexpr float k_between_px = 10.0F;

std::string with_mark(std::string typed, const Language& language) {
    std::replace(typed.begin(), typed.end(), '.', language.decimal_mark);
    return typed;
}

/// The decimal mark is the language's; both are taken from a keyboard.
std::string sign_on(std::string_view key, const Language& language) { return key == "-" ? "\u2212" : with_mark(std::string(key), language); }

/// The keyboard's own digits, Enter and Escape do what the keys on screen do.
void read_keyboard(Ui& ui) {
    const ImGuiID owner = ImGui::GetID("keypad");
    for (int i = 0; i < 10; ++i)
        for (const ImGuiKey zero : {ImGuiKey_0, ImGuiKey_Keypad0})
            if (ImGui::IsKeyPressed(static_cast<ImGuiKey>(zero + i))) ui.wish(app::PressKey{static_cast<char>('0' + i)});
    for (const ImGuiKey key : {ImGuiKey_Period, ImGuiKey_Comma, ImGuiKey_KeypadDecimal})
        if (ImGui::IsKeyPressed(key)) ui.wish(app::PressKey{'.'});
    for (const ImGuiKey key : {ImGuiKey_Minus, ImGuiKey_KeypadSubtract})
        if (ImGui::IsKeyPressed(key)) ui.wish(app::PressKey{'-'});
    if (ImGui::IsKeyPressed(ImGuiKey_Backspace)) ui.wish(app::PressKey{'<'});
    if (ImGui::IsKeyPressed(ImGuiKey_Escape)) ui.wish(app::CloseKeypad{});
    for (const ImGuiKey key : {ImGuiKey_Enter, ImGuiKey_KeypadEnter}) {
        if (ImGui::IsKeyPressed(key, owner)) ui.wish(app::TakeKeypad{});
        ImGui::SetKeyOwner(key, owner);  // or Enter would also press the key that has the focus; Space does that
    }
}

void draw_keys(Ui& ui, const app::State& s, Box box) {
    const float high = (box.h - 3.0F * k_between_px) / 4.0F;
    const float wide = (box.w - 3.0F * k_between_px) / 4.0F;
    Box side = box.cut_right(wide, k_between_px);
    if (widgets::button(ui, side.cut_top(high, k_between_px), {"key <", say(s.speech, words::k_delete), ButtonLook::Plain, true, true}))
        ui.wish(app::PressKey{'<'});
    if (widgets::button(ui, side.cut_top(high, k_between_px), {"key cancel", say(s.speech, words::k_cancel)})) ui.wish(app::CloseKeypad{});
    if (widgets::button(ui, side, {"key take", say(s.speech, words::k_take), ButtonLook::Action})) ui.wish(app::TakeKeypad{});
    Box row{};
    for (std::size_t i = 0; i < k_keys.size(); ++i) {
        if (i % 3 == 0) row = box.cut_top(high, k_between_px);
        const std::string id = "key " + std::string(k_keys[i]);
        if (widgets::button(ui, row.cut_left(wide, k_between_px), {id, sign_on(k_keys[i], language_of(s.speech))})) ui.wish(app::PressKey{k_keys[i][0]});
    }
}

constexpr float k_name_px = 30.0F, k_entry_px = 56.0F, k_hint_px = 2.0F * widgets::k_line_px, k_apart_px = 4.0F;
constexpr float k_above_keys_px = k_name_px + k_apart_px + k_entry_px + k_apart_px + k_hint_px + 2.0F * k_apart_px;
constexpr float k_lowest_keys_px = 4.0F * widgets::k_target_px + 3.0F * k_between_px;
constexpr float k_highest_keys_px = 4.0F * 110.0F;

/// Name, what is typed, what is allowed.
void draw_entry(Ui& ui, const app::State& s, Box box, const app::Input& input, const app::Measure& number) {
    const app::Keypad& pad = *s.keypad;
    write_line(ui, ui.fonts.large, box.cut_top(k_name_px, k_apart_px), say(s.speech, input.label), ui.theme.ink);
    const Box entry = box.cut_top(k_entry_px, k_apart_px);
    ui.draw.AddRect(entry.min(), entry.max(), ui.theme.ink, 8.0F, 0, 3.0F);
    const std::string digits = with_mark(pad.typed, language_of(s.speech));
    const std::string typed =
        digits.empty() ? app::said(s, words::k_now, {{"{value}", app::shown_value(input, s.speech, number.value)}}) : with_unit(input, s.speech, digits);
    write_line(ui, pad.typed.empty() ? ui.fonts.text : ui.fonts.huge, entry.inner(8.0F), typed, ui.theme.ink, widgets::Align::Right);
    const std::string hint = pad.fault.empty() ? app::allowed_text(input, s.speech, app::range_in_hand(s, pad.path, number.range)) : pad.fault;
    widgets::write(ui, ui.fonts.strong, box, hint, ui.theme.ink);
    ui.mirror.push_back({"keypad", "text", hint, digits, entry});
}

}  // namespace

bool keypad_fits(const Box& box) { return box.h >= k_above_keys_px + k_lowest_keys_px; }

void draw_keypad(Ui& ui, const app::State& state, Box box, Box aside) {
    const app::Keypad& pad = *state.keypad;
    const app::Input* input = app::find_input(pad.path);
    const std::optional<app::Measure> number = app::measure_at(state.plan, pad.path);
    if (input == nullptr || !number) return ui.wish(app::CloseKeypad{});
    read_keyboard(ui);
    const bool below = keypad_fits(box);
    draw_entry(ui, state, below ? box.cut_top(k_above_keys_px - 2.0F * k_apart_px, 2.0F * k_apart_px) : box, *input, *number);
    const Box& keys = below ? box : aside;
    draw_keys(ui, state, {keys.x, keys.y, keys.w, std::min(keys.h, k_highest_keys_px)});
}

}  // namespace guywright::screens
