#pragma once
#include <algorithm>

namespace guywright::platform {

/// A tablet is held, and a desk screen stands, farther away than a phone: there everything is drawn larger.
inline constexpr float k_large_screen_px = 700.0F;
inline constexpr float k_large_screen_scale = 1.25F;
/// Layout pixels in which every page has its room: upright with the picture above the sliders, across with it beside them.
inline constexpr float k_upright_width_px = 360.0F, k_upright_height_px = 620.0F;
inline constexpr float k_across_width_px = 760.0F, k_across_height_px = 374.0F;
/// Upright without the picture: half of a phone beside another app.
inline constexpr float k_least_width_px = 360.0F, k_least_height_px = 584.0F;
/// Twice the usual size is as far as a person's own text size is followed.
inline constexpr float k_largest_text = 2.0F;

/// CSS pixels per layout pixel on a screen of `width` x `height` CSS px for a person who wants text `text` times as large as
/// usual. Text grows as far as every page still fits; on less room than the least layout needs everything is drawn smaller.
[[nodiscard]] inline float layout_scale(float width, float height, float text) {
    const float usual = std::min(width, height) >= k_large_screen_px ? k_large_screen_scale : 1.0F;
    const float upright = std::min(width / k_upright_width_px, height / k_upright_height_px);
    const float across = std::min(width / k_across_width_px, height / k_across_height_px);
    const float least = std::min(width / k_least_width_px, height / k_least_height_px);
    const float wanted = usual * std::clamp(text, 1.0F, k_largest_text);
    const float roomy = std::max(upright, across);
    return roomy >= 1.0F ? std::min(wanted, roomy) : std::min(1.0F, std::max(least, across));
}

}  // namespace guywright::platform
