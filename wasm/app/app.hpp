#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>

struct ImFont;

namespace guywright::app {

/// What the shell knows of the screen. All lengths in CSS pixels.
struct View {
    float width_px = 0.0F;
    float height_px = 0.0F;
    float pixel_ratio = 1.0F;  ///< device pixels per CSS pixel
    float inset_top_px = 0.0F;  ///< kept free by the device: camera, rounded corner, home bar
    float inset_right_px = 0.0F;
    float inset_bottom_px = 0.0F;
    float inset_left_px = 0.0F;
    bool reduced_motion = false;
};

/// 18, 18 bold, 28 bold and 44 bold CSS px. `huge` holds Basic Latin and a few signs only.
/// Pixel sizes follow the screen, so these pointers hold for one frame.
struct Fonts {
    ImFont* text = nullptr;
    ImFont* strong = nullptr;
    ImFont* large = nullptr;
    ImFont* huge = nullptr;
};

/// The part of the program that has a plan and shows it. The shell calls it; it never calls the shell.
class App {
public:
    void draw(const View& view, const Fonts& fonts);  ///< one ImGui frame; called only when something changed
    [[nodiscard]] bool wants_frame() const;           ///< true while something animates or is still computed
    void open_plan(std::string_view text);            ///< a plan file the user chose, or the one kept from last time
    [[nodiscard]] std::string state_json() const;     ///< screen, verdict, widgets with id, label, value and rect in CSS px
    std::optional<std::string> take_save();           ///< plan text to keep, once per gesture
    std::optional<std::pair<std::string, std::string>> take_download();  ///< file name, text
    bool take_open_request();                                            ///< the app wants a file picker

private:
    struct Rect { float x = 0.0F, y = 0.0F, width = 0.0F, height = 0.0F; };
    int taps_ = 0;
    bool open_wanted_ = false;
    bool save_wanted_ = false;
    std::string opened_;
    Rect tap_rect_, open_rect_;
};

}  // namespace guywright::app
