#include "wasm/widgets/ui.hpp"

namespace guywright::widgets {
namespace {

constexpr float k_round_px = 8.0F;
constexpr float k_border_px = 3.0F;

const char* end_of(std::string_view text) { return text.data() + text.size(); }

/// As much of the text as fits, with an ellipsis where something is left out.
std::string shortened(ImFont* font, std::string_view text, float width) {
    if (text_width(font, text) <= width) return std::string(text);
    std::string cut(text);
    while (!cut.empty()) {
        do cut.pop_back();
        while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0U) == 0x80U);
        if (text_width(font, cut + "\u2026") <= width) break;
        if (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0x80U) != 0U)
            while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0U) == 0x80U) cut.pop_back();
    }
    return cut + "\u2026";
}

}  // namespace

float text_height(ImFont* font, std::string_view text, float width) {
    return font->CalcTextSizeA(font->FontSize * ImGui::GetIO().FontGlobalScale, FLT_MAX, width, text.data(), end_of(text)).y;
}

float text_width(ImFont* font, std::string_view text) {
    return font->CalcTextSizeA(font->FontSize * ImGui::GetIO().FontGlobalScale, FLT_MAX, 0.0F, text.data(), end_of(text)).x;
}

float write(Ui& ui, ImFont* font, const Box& box, std::string_view text, ImU32 colour) {
    ui.draw.AddText(font, font->FontSize * ImGui::GetIO().FontGlobalScale, box.min(), colour, text.data(), end_of(text), box.w);
    return text_height(font, text, box.w);
}

void write_line(Ui& ui, ImFont* font, const Box& box, std::string_view text, ImU32 colour, Align align) {
    const std::string shown = shortened(font, text, box.w);
    const float size = font->FontSize * ImGui::GetIO().FontGlobalScale;
    const float spare = box.w - text_width(font, shown);
    const float shift = align == Align::Left ? 0.0F : align == Align::Centre ? spare / 2.0F : spare;
    ui.draw.AddText(font, size, {box.x + shift, box.y + (box.h - size) / 2.0F}, colour, shown.data(), end_of(shown));
}

bool touch(Ui&, const Box& box, std::string_view id, bool repeats) {
    ImGui::SetCursorScreenPos(box.min());
    ImGui::PushButtonRepeat(repeats);
    const std::string name(id);
    const bool pressed = ImGui::InvisibleButton(name.c_str(), {std::max(1.0F, box.w), std::max(1.0F, box.h)});
    ImGui::PopButtonRepeat();
    return pressed;
}

bool button(Ui& ui, const Box& box, const ButtonText& text) {
    const bool pressed = touch(ui, box, text.id, text.repeats) && text.enabled;
    const bool held = ImGui::IsItemActive() && text.enabled, focused = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
    const bool filled = (text.look != ButtonLook::Plain) != held;
    const ImU32 face = filled ? (text.look == ButtonLook::Action ? ui.theme.action : ui.theme.ink) : ui.theme.raised;
    const ImU32 label = filled ? (text.look == ButtonLook::Action ? ui.theme.action_ink : ui.theme.field) : ui.theme.ink;
    if (text.enabled) ui.draw.AddRectFilled(box.min(), box.max(), face, k_round_px);
    if (text.enabled) ui.draw.AddRect(box.min(), box.max(), ui.theme.ink, k_round_px, 0, focused ? 2.0F * k_border_px : k_border_px);
    if (!text.enabled) ui.draw.AddRect(box.min(), box.max(), ui.theme.ink, k_round_px, 0, 1.0F);
    const Box inside = box.inner(6.0F);
    const bool sign = text.label.size() <= 3;   // a single sign, perhaps in three bytes
    if (sign) write_line(ui, ui.fonts.large, inside, text.label, label, Align::Centre);
    const float tall = text_height(ui.fonts.strong, text.label, inside.w);
    if (!sign && (tall <= k_line_px || tall > box.h)) write_line(ui, ui.fonts.strong, inside, text.label, label, Align::Centre);
    else if (!sign) write(ui, ui.fonts.strong, {inside.x, box.y + (box.h - tall) / 2.0F, inside.w, tall}, text.label, label);
    ui.mirror.push_back({std::string(text.id), "button", std::string(text.label), text.enabled ? "" : "off", box});
    return pressed;
}

}  // namespace guywright::widgets
