#include "wasm/widgets/theme.hpp"

namespace guywright::widgets {
namespace {

constexpr ImU32 rgb(unsigned hex, unsigned alpha = 255) {
    return IM_COL32((hex >> 16) & 255, (hex >> 8) & 255, hex & 255, alpha);
}

// Bright sun: dark on light, no greys for text, colour last (polarity and shape carry the verdict).
const Theme k_sun{
    .field = rgb(0xFFFFFF), .ink = rgb(0x000000), .raised = rgb(0xEDEDE6), .action = rgb(0x00325A), .action_ink = rgb(0xFFFFFF),
    .go = rgb(0x004B87), .no_go = rgb(0x8E1A00), .no_go_ink = rgb(0xFFFFFF), .caution = rgb(0xFFB000), .caution_ink = rgb(0x000000),
    .scene = {.ground = rgb(0xE9E4D6), .face = rgb(0xC9BFA8), .edge = rgb(0x000000), .leg = rgb(0x1F1F1F), .guy = rgb(0x004B87),
              .guy_slack = rgb(0x6A6A6A), .rope = rgb(0x7A3E00), .load = rgb(0x3A3A3A), .resultant = rgb(0x9B1C00),
              .text = rgb(0x000000), .text_halo = rgb(0xFFFFFF, 225), .hazard = rgb(0xB88700, 190), .highlight = rgb(0xFFB000),
              .sky = rgb(0xFFFFFF)}};

// Indoors, dusk: light on dark.
const Theme k_dim{
    .field = rgb(0x14181C), .ink = rgb(0xF2F2EC), .raised = rgb(0x2A3138), .action = rgb(0xF2F2EC), .action_ink = rgb(0x14181C),
    .go = rgb(0x8CC8FF), .no_go = rgb(0xFFB4A0), .no_go_ink = rgb(0x2A0600), .caution = rgb(0xFFB000), .caution_ink = rgb(0x000000),
    .scene = {.ground = rgb(0x2B2F2A), .face = rgb(0x3B372E), .edge = rgb(0xF2F2EC), .leg = rgb(0xE8E8E0), .guy = rgb(0x8CC8FF),
              .guy_slack = rgb(0x9A9A9A), .rope = rgb(0xE0A860), .load = rgb(0xC8C8C0), .resultant = rgb(0xFF8A70),
              .text = rgb(0xF2F2EC), .text_halo = rgb(0x14181C, 225), .hazard = rgb(0xB88700, 150), .highlight = rgb(0xFFD060),
              .sky = rgb(0x14181C)}};

// Dark-adapted eyes: red alone on black; nothing here is told by colour.
const Theme k_night{
    .field = rgb(0x000000), .ink = rgb(0xFF4A38), .raised = rgb(0x240400), .action = rgb(0xFF4A38), .action_ink = rgb(0x000000),
    .go = rgb(0xFF4A38), .no_go = rgb(0xFF4A38), .no_go_ink = rgb(0x000000), .caution = rgb(0xFF4A38), .caution_ink = rgb(0x000000),
    .scene = {.ground = rgb(0x1C0300), .face = rgb(0x300600), .edge = rgb(0xFF4A38), .leg = rgb(0xFF4A38), .guy = rgb(0xE03A2A),
              .guy_slack = rgb(0x902418), .rope = rgb(0xC03020), .load = rgb(0xC03020), .resultant = rgb(0xFF6A58),
              .text = rgb(0xFF4A38), .text_halo = rgb(0x000000, 225), .hazard = rgb(0x7A1E14, 190), .highlight = rgb(0xFF9A8A),
              .sky = rgb(0x000000)}};

}  // namespace

const Theme& theme(ThemeName name) {
    switch (name) {
        case ThemeName::Sun: return k_sun;
        case ThemeName::Dim: return k_dim;
        case ThemeName::Night: return k_night;
    }
    return k_sun;
}

}  // namespace guywright::widgets
