#include "wasm/platform/fonts.hpp"

#include <algorithm>
#include <cmath>
#include <imgui.h>

#include "wasm/platform/assets.hpp"

namespace guywright::platform {
namespace {

/// A texture of 2048 x 2048 is the most that every WebGL device takes; the four sizes fit up to this ratio.
constexpr float k_largest_baked_ratio = 3.0F;

// The same characters as in wasm/CMakeLists.txt, where the font files are cut down. Pairs of first and last, then 0.
constexpr ImWchar k_all[] = {0x20,   0x7E,   0xA0,   0xFF,   0x152,  0x153,  0x160,  0x161,  0x178,  0x178,  0x192,  0x192,  0x2010, 0x2026,
                             0x20AC, 0x20AC, 0x2190, 0x2193, 0x2212, 0x2212, 0x2264, 0x2265, 0x26A0, 0x26A0, 0x2713, 0x2713, 0};
constexpr ImWchar k_basic[] = {0x20,   0x7E,   0xB0,   0xB1,   0xB7,   0xB7,   0xC9,   0xC9,   0xD7,   0xD7, 0x2190,
                               0x2193, 0x2212, 0x2212, 0x2264, 0x2265, 0x26A0, 0x26A0, 0x2713, 0x2713, 0};

/// The letters of GO, NO-GO and NOT CHECKED in every language.
constexpr ImWchar k_verdicts[] = {' ', ' ', '-', '-', 'C', 'I', 'K', 'K', 'N', 'O', 'R', 'R', 'T', 'T', 'V', 'V', 0xC9, 0xC9, 0};

ImFont* add(std::span<const unsigned char> file, float size_px, const ImWchar* glyphs) {
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    config.OversampleH = 1;
    config.PixelSnapH = true;
    // ImGui takes the data as writable and does not write.
    auto* data = const_cast<unsigned char*>(file.data());
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(data, static_cast<int>(file.size()), size_px, &config, glyphs);
}

}  // namespace

app::Fonts bake_fonts(float pixel_ratio) {
    ImGuiIO& io = ImGui::GetIO();
    const float ratio = std::clamp(pixel_ratio, 1.0F, k_largest_baked_ratio);
    const auto baked_px = [ratio](float css_px) { return std::round(css_px * ratio); };
    io.Fonts->Clear();
    const app::Fonts fonts{.text = add(assets::font_regular(), baked_px(18.0F), k_all),
                           .strong = add(assets::font_bold(), baked_px(18.0F), k_all),
                           .large = add(assets::font_bold(), baked_px(28.0F), k_all),
                           .huge = add(assets::font_bold(), baked_px(44.0F), k_basic),
                           .giant = add(assets::font_bold(), baked_px(84.0F), k_verdicts)};
    io.FontGlobalScale = 1.0F / ratio;
    return fonts;
}

}  // namespace guywright::platform
