#include "wasm/screens/screen.hpp"

#include "wasm/screens/parts.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;

constexpr float k_strip_px = 88.0F;
constexpr float k_margin_px = 12.0F;
constexpr float k_widest_panel_px = 620.0F;

struct Layout {
    Box strip, site, panel;
};

/// Side by side where the screen is wider than tall, else the site above the panel.
Layout lay_out(Box screen) {
    Layout l;
    l.strip = screen.cut_top(k_strip_px);
    const bool wide = screen.w > screen.h && screen.w >= 640.0F;
    if (wide) {
        l.panel = screen.cut_right(std::min(k_widest_panel_px, std::max(390.0F, screen.w * 0.42F)));
        l.site = screen;
    } else {
        l.site = screen.cut_top(std::max(170.0F, screen.h * 0.29F));
        l.panel = screen;
    }
    l.panel = l.panel.inner(k_margin_px);
    return l;
}

}  // namespace

void draw_screen(widgets::Ui& ui, const app::State& state, const app::View& view) {
    const Box screen{view.inset_left_px, view.inset_top_px, view.width_px - view.inset_left_px - view.inset_right_px,
                     view.height_px - view.inset_top_px - view.inset_bottom_px};
    ui.draw.AddRectFilled({0.0F, 0.0F}, {view.width_px, view.height_px}, ui.theme.field);
    const Layout l = lay_out(screen);
    const Box below_strip = Box{screen.x, screen.y + k_strip_px, screen.w, screen.h - k_strip_px}.inner(k_margin_px);
    if (!state.message.empty()) draw_message(ui, state, below_strip);
    else if (state.menu_open) draw_menu(ui, state, below_strip);
    else {
        draw_site(ui, state, l.site);
        if (state.keypad) draw_keypad(ui, state, l.panel);
        else draw_walk(ui, state, l.panel);
    }
    draw_strip(ui, state, l.strip);
}

}  // namespace guywright::screens
