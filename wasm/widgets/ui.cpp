#include "wasm/widgets/ui.hpp"

#include <imgui_internal.h>

#include <algorithm>

namespace guywright::widgets {
namespace {

constexpr float k_round_px = 8.0F;
constexpr float k_border_px = 3.0F;

const char* end_of(std::string_view text) { return text.data() + text.size(); }

float font_px(const ImFont* font) { return font->FontSize * ImGui::GetIO().FontGlobalScale; }

float shift_for(Align align, float spare) { return align == Align::Left ? 0.0F : align == Align::Centre ? spare / 2.0F : spare; }

bool continues_sign(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// True where a sign would be drawn as a question mark.
bool lacks_sign(ImFont* font, std::string_view text) {
    for (const char* at = text.data(); at < end_of(text);) {
        unsigned c = 0;
        at += std::max(1, ImTextCharFromUtf8(&c, at, end_of(text)));
        if (c >= 0x20U && font->FindGlyphNoFallback(static_cast<ImWchar>(c)) == nullptr) return true;
    }
    return false;
}

/// How much of a word fits; at least one sign.
std::size_t fitting(ImFont* font, std::string_view word, float width) {
    std::size_t count = word.size();
    while (count > 1 && (text_width(font, word.substr(0, count)) > width || (count < word.size() && continues_sign(word[count])))) --count;
    return count;
}

/// True for the space that French has before a sign and inside its quotation marks.
bool belongs_to_sign(std::string_view text, std::size_t space) {
    constexpr std::string_view k_opening = "\u00AB", k_closing = "\u00BB";
    const std::string_view before = text.substr(0, space), after = text.substr(space + 1);
    return before.ends_with(k_opening) || after.starts_with(k_closing) ||
           (!after.empty() && std::string_view(":;?!%").find(after.front()) != std::string_view::npos);
}

/// True for a space at which no line may end: of a sign, or between a number and its unit.
bool keeps_together(std::string_view text, std::size_t space) {
    if (belongs_to_sign(text, space)) return true;
    constexpr std::size_t k_longest_unit = 3;
    const std::size_t end = std::min(text.find_first_of(" ,.;:)\n", space + 1), text.size());
    const auto is_digit = [&](std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; };
    return space > 0 && is_digit(space - 1) && !is_digit(space + 1) && end - space - 1 <= k_longest_unit;
}

/// One paragraph, wrapped at spaces alone: "2.22 kN" never breaks after its point, nor before its unit, nor a line before a colon.
/// A word wider than a line is broken.
void add_lines(std::vector<std::string_view>& lines, ImFont* font, std::string_view text, float width) {
    while (text_width(font, text) > width) {
        std::size_t end = 0;  // of what fits, a space or 0
        for (std::size_t at = text.find(' '); at != std::string_view::npos && text_width(font, text.substr(0, at)) <= width; at = text.find(' ', at + 1))
            if (!keeps_together(text, at)) end = at;
        const bool whole_words = end > 0;
        if (!whole_words) end = fitting(font, text.substr(0, text.find(' ')), width);
        lines.push_back(text.substr(0, end));
        text.remove_prefix(end + (end < text.size() && text[end] == ' ' ? 1 : 0));
    }
    lines.push_back(text);
}

std::vector<std::string_view> lines_of(ImFont* font, std::string_view text, float width) {
    std::vector<std::string_view> lines;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        add_lines(lines, font, text.substr(at, end - at), width);
        at = end + 1;
    }
    return lines;
}

/// As much of the text as fits, with an ellipsis where something is left out.
std::string shortened(ImFont* font, std::string_view text, float width) {
    if (text_width(font, text) <= width) return std::string(text);
    std::string cut(text);
    while (!cut.empty()) {
        std::size_t last = cut.size() - 1;
        while (last > 0 && continues_sign(cut[last])) --last;
        cut.resize(last);
        if (text_width(font, cut + "\u2026") <= width) break;
    }
    return cut + "\u2026";
}

}  // namespace

float text_height(ImFont* font, std::string_view text, float width) { return static_cast<float>(lines_of(font, text, width).size()) * font_px(font); }

float text_width(ImFont* font, std::string_view text) { return font->CalcTextSizeA(font_px(font), FLT_MAX, 0.0F, text.data(), end_of(text)).x; }

float write(Ui& ui, ImFont* font, const Box& box, std::string_view text, ImU32 colour, Align align) {
    float y = box.y;
    for (const std::string_view line : lines_of(font, text, box.w)) {
        ui.draw.AddText(font, font_px(font), {box.x + shift_for(align, box.w - text_width(font, line)), y}, colour, line.data(), end_of(line));
        y += font_px(font);
    }
    if (y - box.y > box.h + 1.0F || lacks_sign(font, text)) ui.cut.emplace_back(text);
    return y - box.y;
}

void write_line(Ui& ui, ImFont* font, const Box& box, std::string_view text, ImU32 colour, Align align) {
    const std::string shown = shortened(font, text, box.w);
    if (shown != text || lacks_sign(font, text)) ui.cut.emplace_back(text);
    const float shift = shift_for(align, box.w - text_width(font, shown));
    ui.draw.AddText(font, font_px(font), {box.x + shift, box.y + (box.h - font_px(font)) / 2.0F}, colour, shown.data(), end_of(shown));
}

bool touch(Ui& ui, const Box& box, std::string_view id, bool repeats) {
    ImGui::SetCursorScreenPos(box.min());
    ImGui::PushButtonRepeat(repeats);
    const std::string name(id);
    const bool pressed = ImGui::InvisibleButton(name.c_str(), {std::max(1.0F, box.w), std::max(1.0F, box.h)});
    ImGui::PopButtonRepeat();
    ui.goes_on = ui.goes_on || (repeats && ImGui::IsItemActive());
    if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible) {
        ui.focus = box;
        ui.focus_id = name;
    }
    return pressed;
}

int arrow_pressed() {
    if (!ImGui::IsItemFocused()) return 0;
    const ImGuiID owner = ImGui::GetItemID();
    int steps = 0;
    for (const auto& [key, step] : {std::pair{ImGuiKey_LeftArrow, -1}, std::pair{ImGuiKey_RightArrow, 1}}) {
        if (ImGui::IsKeyPressed(key, owner, ImGuiInputFlags_Repeat)) steps += step;
        ImGui::SetKeyOwner(key, owner);  // from the next frame on
    }
    return steps;
}

void draw_focus(Ui& ui) {
    if (ui.focus.w <= 0.0F) return;
    const Box rim = ui.focus.inner(-5.0F);
    ui.draw.AddRect(rim.min(), rim.max(), ui.theme.ink, k_round_px + 4.0F, 0, 8.0F);
    ui.draw.AddRect(rim.min(), rim.max(), ui.theme.caution, k_round_px + 4.0F, 0, 4.0F);
}

bool button(Ui& ui, const Box& box, const ButtonText& text) {
    const bool pressed = touch(ui, box, text.id, text.repeats) && text.enabled;
    const bool held = ImGui::IsItemActive() && text.enabled;
    const bool filled = (text.look != ButtonLook::Plain) != held;
    const ImU32 face = filled ? (text.look == ButtonLook::Action ? ui.theme.action : ui.theme.ink) : ui.theme.raised;
    const ImU32 label = filled ? (text.look == ButtonLook::Action ? ui.theme.action_ink : ui.theme.field) : ui.theme.ink;
    if (text.enabled) ui.draw.AddRectFilled(box.min(), box.max(), face, k_round_px);
    if (text.enabled) ui.draw.AddRect(box.min(), box.max(), ui.theme.ink, k_round_px, 0, k_border_px);
    if (!text.enabled) ui.draw.AddRect(box.min(), box.max(), ui.theme.ink, k_round_px, 0, 1.0F);
    const Box inside = box.inner(6.0F);
    // Only a single sign: of two words side by side, such as GO and NO-GO, the shorter must not be the larger.
    const bool sign = std::count_if(text.label.begin(), text.label.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }) == 1;
    if (sign) write_line(ui, ui.fonts.large, inside, text.label, label, Align::Centre);
    const float tall = text_height(ui.fonts.strong, text.label, inside.w);
    if (!sign && (tall <= k_line_px || tall > box.h)) write_line(ui, ui.fonts.strong, inside, text.label, label, Align::Centre);
    else if (!sign) write(ui, ui.fonts.strong, {inside.x, box.y + (box.h - tall) / 2.0F, inside.w, tall}, text.label, label, Align::Centre);
    ui.mirror.push_back({std::string(text.id), "button", std::string(text.label), text.enabled ? "" : "off", box});
    return pressed;
}

}  // namespace guywright::widgets
