#include "wasm/screens/screen.hpp"

#include "wasm/screens/advice_pictures.hpp"
#include "wasm/screens/lesson_items.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/screens/practice_picture.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/screens/site.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;

constexpr float k_strip_px = 88.0F;
constexpr float k_card_strip_px = 128.0F;  ///< the card is read at arm's length
constexpr float k_margin_px = 12.0F;
constexpr float k_widest_panel_px = 620.0F;
constexpr float k_narrowest_panel_px = 390.0F;
constexpr float k_lowest_site_px = 170.0F;
constexpr float k_least_site_px = widgets::k_target_px + 40.0F;  ///< lower, it is all keys and no picture
constexpr float k_lesson_site_px = 240.0F;                       ///< lower, and nobody sees what a lesson moves
constexpr float k_lock_px = 300.0F;
constexpr float k_low_px = 480.0F;           ///< a phone on its side
constexpr float k_picture_keys_px = 300.0F;  ///< column of keys beside a large picture

constexpr float k_widest_sheet_px = 960.0F;  ///< of pages without a picture: longer lines and keys are lost on a desk
constexpr float k_drawn_panel_px = 380.0F;   ///< beside an answer that is mostly its drawing: a row of keys and a few lines

struct Layout {
    Box strip, site, panel, sheet;  ///< `sheet` takes menu and messages
};

/// A phone on its side: the panel has the whole height and the strip stands over the picture alone.
Layout side_by_side_low(Box screen) {
    Layout l;
    l.panel = screen.cut_right(std::max(k_narrowest_panel_px, screen.w * 0.5F));
    l.strip = screen.cut_top(k_strip_px);
    l.site = screen;
    return l;
}

Layout side_by_side(Box screen, float strip_px) {
    Layout l;
    l.strip = screen.cut_top(strip_px);
    l.panel = screen.cut_right(std::min(k_widest_panel_px, std::max(k_narrowest_panel_px, screen.w * 0.42F)));
    l.site = screen;
    return l;
}

/// The picture above a panel for two sliders, or three where the screen is tall; the picture takes the rest. On a small screen
/// there is at least room for one slider with two lines of how.
/// `wanted_px`: what the panel needs, where it is not one of sliders.
Layout one_above_the_other(Box screen, float strip_px, std::optional<float> wanted_px) {
    Layout l;
    l.strip = screen.cut_top(strip_px);
    const float panel_px = wanted_px.value_or(walk_height(screen.h > 900.0F ? 3 : 2) + 2.0F * k_margin_px);
    const float least_panel_px = std::min(panel_px, walk_height(1) + widgets::k_line_px + 2.0F * k_margin_px);
    const float most_site_px = std::max(0.0F, screen.h - least_panel_px);
    const float site_px = std::min(most_site_px, std::max(k_lowest_site_px, screen.h - panel_px));
    l.site = screen.cut_top(site_px < k_least_site_px ? 0.0F : site_px);
    l.panel = screen;
    return l;
}

bool is_wide(const Box& screen) { return screen.w > screen.h && screen.w >= 640.0F; }

/// The picture alone, with its keys beside it on a wide screen and below it on a tall one.
Layout with_large_picture(Box screen) {
    Layout l;
    const bool wide = is_wide(screen), low = wide && screen.h < k_low_px;
    if (!low) l.strip = screen.cut_top(k_strip_px);
    const float margin_px = low ? 8.0F : k_margin_px;
    if (wide) l.panel = screen.cut_right(k_picture_keys_px);
    else l.panel = screen.cut_bottom(picture_keys_height(screen.w - 2.0F * margin_px) + 2.0F * margin_px);
    l.panel = l.panel.inner(margin_px);
    if (low) l.strip = screen.cut_top(k_strip_px);
    l.site = screen;
    return l;
}

Layout lay_out(Box screen, bool card, std::optional<float> wanted_px) {
    const bool wide = is_wide(screen), low = wide && screen.h < k_low_px;
    const float strip_px = card && screen.h > 600.0F ? k_card_strip_px : k_strip_px;
    Layout l = low ? side_by_side_low(screen) : wide ? side_by_side(screen, strip_px) : one_above_the_other(screen, strip_px, wanted_px);
    l.panel = l.panel.inner(low ? 8.0F : k_margin_px);
    l.sheet = Box{screen.x, l.strip.y + l.strip.h, screen.w, screen.y + screen.h - l.strip.y - l.strip.h}.inner(low ? 8.0F : k_margin_px);
    return l;
}

/// Practice begins without a picture: there is no site yet.
bool is_pictureless(const app::State& s) { return s.practice && s.practice->stage == app::Practising::Choosing; }

Box in_the_middle(const Box& sheet) {
    const float wide = std::min(sheet.w, k_widest_sheet_px);
    return {sheet.x + 0.5F * (sheet.w - wide), sheet.y, wide, sheet.h};
}

/// Over menu and messages the strip has the whole width.
void draw_sheet(widgets::Ui& ui, const app::State& state, Layout& l, const Box& screen) {
    l.strip.w = screen.w;
    if (!state.message.empty()) draw_message(ui, state, l.sheet);
    else if (state.menu_open) draw_menu(ui, state, l.sheet);
    else if (state.plans_screen) draw_plans(ui, state, in_the_middle(l.sheet));
    else draw_walk(ui, state, in_the_middle(l.sheet));
}

/// Questions and answers that stand on one page: what they leave goes to the picture.
bool is_told_shortly(app::Step step) {
    using app::Step;
    return step == Step::SayVerdict || step == Step::SayGuy || step == Step::SayAngle || step == Step::Answer || step == Step::Advice ||
           step == Step::Pretension;
}

/// Height of the panel where the picture is what counts, or where all of a lesson is to be in view.
std::optional<float> wanted_panel_px(const widgets::Ui& ui, const app::State& s, const Box& screen) {
    if (is_picture_step(s.step)) return k_drawn_panel_px;
    if (is_told_shortly(s.step)) {
        const float px = told_height(ui, s, screen.w - 2.0F * k_margin_px) + 2.0F * k_margin_px;
        return px <= screen.h - k_strip_px - k_lowest_site_px ? std::optional(px) : std::nullopt;
    }
    if (app::lesson_in_hand(s) != nullptr)
        return lesson_height(ui, s, screen.w - 2.0F * k_margin_px, screen.h - k_strip_px - k_lesson_site_px - 2.0F * k_margin_px) + 2.0F * k_margin_px;
    return std::nullopt;
}

/// A number by keypad or from the device.
bool is_entering(const app::State& s) { return s.keypad || s.device.reading; }

void draw_picture_of_step(widgets::Ui& ui, const app::State& state, const Box& box) {
    if (state.step == app::Step::Why) draw_head_forces(ui, state, box);
    else if (has_advice_picture(state)) draw_advice_picture(ui, state, box);
    else draw_site(ui, state, box);
}

void draw_panels(widgets::Ui& ui, const app::State& state, const Layout& l) {
    if (state.site_large && !is_entering(state)) {
        draw_large_picture(ui, state, l.site);
        return draw_picture_keys(ui, state, l.panel);
    }
    const bool beside = state.keypad && !keypad_fits(l.panel);
    if (!beside && l.site.h > 0.0F) draw_picture_of_step(ui, state, l.site);
    if (state.keypad) draw_keypad(ui, state, beside ? l.site.inner(6.0F) : l.panel, l.panel);
    else if (state.device.reading) draw_reading(ui, state, l.panel);
    else if (state.step == app::Step::Lesson) draw_lesson(ui, state, l.panel);
    else draw_walk(ui, state, l.panel);
}

/// Verdict and picture stay in view; nothing of them can be touched.
void draw_locked(widgets::Ui& ui, const app::State& state, Layout& l, int fingers) {
    const Box lock = l.panel.cut_bottom(k_lock_px, k_margin_px);
    const std::string why = reason(state);
    const float why_px = widgets::text_height(ui.fonts.strong, why, l.panel.w);
    const bool stacked = l.panel.x < l.site.x + l.site.w - 1.0F;
    if (stacked) {
        const Box words = l.panel.cut_bottom(why_px, k_margin_px);
        l.site.h = words.y - k_margin_px - l.site.y;
        l.panel = words;
    }
    ImGui::BeginDisabled();
    if (l.site.h > 0.0F) draw_site(ui, state, l.site);
    draw_strip(ui, state, l.strip);
    ImGui::EndDisabled();
    if (l.panel.h >= why_px) widgets::write(ui, ui.fonts.strong, l.panel, why, ui.theme.ink);
    draw_lock(ui, state, lock, fingers);
}

}  // namespace

void draw_screen(widgets::Ui& ui, const app::State& state, const app::View& view) {
    const Box screen{view.inset_left_px, view.inset_top_px, view.width_px - view.inset_left_px - view.inset_right_px,
                     view.height_px - view.inset_top_px - view.inset_bottom_px};
    const bool sheet = state.menu_open || state.plans_screen || !state.message.empty() || is_pictureless(state);
    if (state.lock) {
        Layout locked = lay_out(screen, true, std::nullopt);
        return draw_locked(ui, state, locked, view.fingers);
    }
    const bool large_picture = state.site_large && !sheet && !is_entering(state);
    Layout l = large_picture ? with_large_picture(screen)
                             : lay_out(screen, state.step == app::Step::Card && !sheet && !is_entering(state),
                                       sheet || is_entering(state) ? std::nullopt : wanted_panel_px(ui, state, screen));
    if (sheet) draw_sheet(ui, state, l, screen);
    else draw_panels(ui, state, l);
    draw_strip(ui, state, l.strip);
    widgets::draw_focus(ui);
}

}  // namespace guywright::screens
