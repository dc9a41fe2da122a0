#pragma once

struct ImFont;

namespace guywright::app {

/// What the shell knows of the screen. All lengths in layout pixels: CSS pixels on a phone, `scale` CSS pixels each where
/// everything is drawn larger.
struct View {
    float width_px = 0.0F;
    float height_px = 0.0F;
    float pixel_ratio = 1.0F;   ///< device pixels per layout pixel
    float scale = 1.0F;         ///< CSS pixels per layout pixel
    float inset_top_px = 0.0F;  ///< kept free by the device: camera, rounded corner, home bar
    float inset_right_px = 0.0F;
    float inset_bottom_px = 0.0F;
    float inset_left_px = 0.0F;
    bool reduced_motion = false;
    int fingers = 0;  ///< on the glass
};

/// 18, 18 bold, 28 bold, 44 bold and 84 bold CSS px. `huge` holds Basic Latin and a few signs only, `giant` the letters of
/// the verdicts.
/// Pixel sizes follow the screen, so these pointers hold for one frame.
struct Fonts {
    ImFont* text = nullptr;
    ImFont* strong = nullptr;
    ImFont* large = nullptr;
    ImFont* huge = nullptr;
    ImFont* giant = nullptr;
};

}  // namespace guywright::app
