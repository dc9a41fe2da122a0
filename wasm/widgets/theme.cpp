#include "wasm/widgets/theme.hpp"

namespace guywright::widgets {
namespace {

constexpr ImU32 packed(Rgb c, unsigned alpha = 255) { return IM_COL32((c >> 16U) & 255U, (c >> 8U) & 255U, c & 255U, alpha); }

constexpr scene::Look look_of(const SceneColours& c) {
    return {.ground = packed(c.ground),
            .face = packed(c.face),
            .edge = packed(c.edge),
            .leg = packed(c.leg),
            .guy = packed(c.guy),
            .guy_slack = packed(c.guy_slack),
            .rope = packed(c.rope),
            .load = packed(c.load),
            .resultant = packed(c.resultant),
            .text = packed(c.text),
            .plate = packed(c.plate, c.plate_alpha),
            .hazard = packed(c.hazard, c.hazard_alpha),
            .highlight = packed(c.highlight)};
}

constexpr Theme theme_of(ThemeName name) {
    const Colours& c = colours(name);
    return {packed(c.field), packed(c.ink),       packed(c.raised),  packed(c.action),      packed(c.action_ink), packed(c.go),
            packed(c.no_go), packed(c.no_go_ink), packed(c.caution), packed(c.caution_ink), look_of(c.scene)};
}

constexpr Theme k_themes[k_theme_count]{theme_of(ThemeName::Sun), theme_of(ThemeName::Dim), theme_of(ThemeName::Night)};

}  // namespace

const Theme& theme(ThemeName name) { return k_themes[static_cast<std::size_t>(name)]; }

}  // namespace guywright::widgets
