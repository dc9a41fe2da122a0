#pragma once
#include <imgui.h>

#include <string>
#include <string_view>
#include <vector>

#include "wasm/app/command.hpp"
#include "wasm/app/view.hpp"
#include "wasm/widgets/mirror.hpp"
#include "wasm/widgets/theme.hpp"

namespace guywright::widgets {

/// Smallest side of anything to be touched with a glove, and the gap between two of them, CSS px.
inline constexpr float k_target_px = 72.0F;
inline constexpr float k_gap_px = 16.0F;
inline constexpr float k_line_px = 24.0F;  ///< height of one line of the 18 px face

/// Texts that did not fit where they were written, or that the face has no signs for; for the tests.
using CutTexts = std::vector<std::string>;

/// What is being dragged: the value it had when the finger came down, as the plan keeps it.
struct Hand {
    std::string path;
    double from_value = 0.0;
};

/// Everything a screen needs to draw itself and to say what the person wants. Screens change nothing themselves.
struct Ui {
    ImDrawList& draw;
    const app::Fonts& fonts;
    const Theme& theme;
    Mirror& mirror;
    Hand& hand;
    CutTexts& cut;
    std::vector<app::Command>& wishes;
    Box focus{};  ///< what the keyboard would act on; drawn last, over everything
    std::string focus_id{};
    bool goes_on = false;  ///< a key that repeats is held: time alone presses it again

    void wish(app::Command c) { wishes.push_back(std::move(c)); }
};

enum class Align : unsigned char { Left, Centre, Right };

/// Height of `text` wrapped to `width` in `font`.
[[nodiscard]] float text_height(ImFont* font, std::string_view text, float width);
[[nodiscard]] float text_width(ImFont* font, std::string_view text);

/// Wrapped text from the top left of the box; returns its height. What does not fit is drawn all the same, so measure first.
float write(Ui& ui, ImFont* font, const Box& box, std::string_view text, ImU32 colour, Align align = Align::Left);
/// One line, centred vertically; shortened with an ellipsis where it would not fit.
void write_line(Ui& ui, ImFont* font, const Box& box, std::string_view text, ImU32 colour, Align align = Align::Left);

enum class ButtonLook : unsigned char { Plain, Action, Chosen };
struct ButtonText {
    std::string_view id, label;
    ButtonLook look = ButtonLook::Plain;
    bool enabled = true;
    bool repeats = false;  ///< goes on while held
};
/// True in the frame in which it is let go inside (or, repeating, at every repeat).
bool button(Ui& ui, const Box& box, const ButtonText& text);

/// The touchable area alone, for widgets that draw themselves.
bool touch(Ui& ui, const Box& box, std::string_view id, bool repeats = false);

/// -1 or +1 where the left or right arrow is pressed while the area touched last has the keyboard's focus, else 0. The arrow
/// then does not move the focus on.
[[nodiscard]] int arrow_pressed();

/// The frame around what the keyboard would act on; after everything else.
void draw_focus(Ui& ui);

}  // namespace guywright::widgets
