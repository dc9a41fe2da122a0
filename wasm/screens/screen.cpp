#include "wasm/screens/screen.hpp"

#include "wasm/screens/parts.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;

constexpr float k_strip_px = 88.0F;
constexpr float k_card_strip_px = 128.0F;   ///< the card is read at arm's length
constexpr float k_margin_px = 12.0F;
constexpr float k_widest_panel_px = 620.0F;

struct Layout {
    Box strip, site, panel;
};

/// Side by side where the screen is wider than tall, else the site above the panel.
Layout lay_out(Box screen, bool card) {
    Layout l;
    l.strip = screen.cut_top(card && screen.h > 600.0F ? k_card_strip_px : k_strip_px);
    const bool wide = screen.w > screen.h && screen.w >= 640.0F;
    if (wide) {
        l.panel = screen.cut_right(std::min(k_widest_panel_px, std::max(390.0F, screen.w * 0.42F)));
        l.site = screen;
    } else {
        // a panel for two sliders on a phone and three on a tablet; the picture takes the rest
        const float panel_px = screen.h > 1000.0F ? 640.0F : card ? 500.0F : 484.0F;
        l.site = screen.cut_top(std::max(170.0F, screen.h - panel_px));
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
    const bool card = state.step == app::Step::Card && !state.menu_open && state.message.empty() && !state.keypad;
    const Layout l = lay_out(screen, card);
    const float below_y = l.strip.y + l.strip.h;
    const Box below_strip = Box{screen.x, below_y, screen.w, screen.y + screen.h - below_y}.inner(k_margin_px);
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
