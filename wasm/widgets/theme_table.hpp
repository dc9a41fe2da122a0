#pragma once
#include <array>
#include <cstdint>
#include <string_view>

// The colours of every theme as plain numbers, 0xRRGGBB, and which of them stand on which: what the screens draw with, and
// what tests/widgets measures. Without ImGui, so that the native suite can read it.
namespace guywright::widgets {

// clang-format off
enum class ThemeName : unsigned char { Sun, Dim, Night };
inline constexpr int k_theme_count = 3;

using Rgb = std::uint32_t;

struct SceneColours {
    Rgb ground, face, edge, leg, guy, guy_slack, rope, load, resultant, text, plate, hazard, highlight;
    std::uint8_t plate_alpha, hazard_alpha;
};

/// Every colour on screen.
struct Colours {
    Rgb field;          ///< background
    Rgb ink;            ///< text, borders, marks
    Rgb raised;         ///< what can be touched
    Rgb action;         ///< the one thing to do next
    Rgb action_ink;
    Rgb go;             ///< mark of GO, drawn on the open field
    Rgb no_go;          ///< solid fill of NO-GO
    Rgb no_go_ink;
    Rgb caution;
    Rgb caution_ink;
    SceneColours scene;
};

// Bright sun: dark on light, no greys for text, colour last (polarity and shape carry the verdict).
inline constexpr Colours k_sun_colours{
    .field = 0xFFFFFF, .ink = 0x000000, .raised = 0xEDEDE6, .action = 0x00325A, .action_ink = 0xFFFFFF,
    .go = 0x004B87, .no_go = 0x8E1A00, .no_go_ink = 0xFFFFFF, .caution = 0xFFB000, .caution_ink = 0x000000,
    .scene = {.ground = 0xE9E4D6, .face = 0xC9BFA8, .edge = 0x000000, .leg = 0x1F1F1F, .guy = 0x004B87, .guy_slack = 0x6A6A6A, .rope = 0x7A3E00,
              .load = 0x3A3A3A, .resultant = 0x8A1600, .text = 0x000000, .plate = 0xFFFFFF, .hazard = 0xB88700, .highlight = 0xFFB000,
              .plate_alpha = 240, .hazard_alpha = 190}};

// Indoors, dusk: light on dark.
inline constexpr Colours k_dim_colours{
    .field = 0x14181C, .ink = 0xF2F2EC, .raised = 0x2A3138, .action = 0xF2F2EC, .action_ink = 0x14181C,
    .go = 0x8CC8FF, .no_go = 0xFFB4A0, .no_go_ink = 0x2A0600, .caution = 0xFFB000, .caution_ink = 0x000000,
    .scene = {.ground = 0x2B2F2A, .face = 0x3B372E, .edge = 0xF2F2EC, .leg = 0xE8E8E0, .guy = 0x8CC8FF, .guy_slack = 0x9A9A9A, .rope = 0xE0A860,
              .load = 0xC8C8C0, .resultant = 0xFF9A82, .text = 0xF2F2EC, .plate = 0x14181C, .hazard = 0xB88700, .highlight = 0xFFD060,
              .plate_alpha = 240, .hazard_alpha = 150}};

// Dark-adapted eyes: one colour on black, red with as much green as 7:1 needs and little blue; nothing is told by colour.
inline constexpr Colours k_night_colours{
    .field = 0x000000, .ink = 0xFF6F3C, .raised = 0x200300, .action = 0xFF6F3C, .action_ink = 0x000000,
    .go = 0xFF6F3C, .no_go = 0xFF6F3C, .no_go_ink = 0x000000, .caution = 0xFF6F3C, .caution_ink = 0x000000,
    .scene = {.ground = 0x1C0300, .face = 0x300600, .edge = 0xFF6F3C, .leg = 0xFF6F3C, .guy = 0xE05A2E, .guy_slack = 0x903A1C, .rope = 0xC04E28,
              .load = 0xC04E28, .resultant = 0xFF8A5E, .text = 0xFF6F3C, .plate = 0x000000, .hazard = 0x7A2E18, .highlight = 0xFFB08A,
              .plate_alpha = 240, .hazard_alpha = 190}};

[[nodiscard]] constexpr const Colours& colours(ThemeName name) {
    switch (name) {
        case ThemeName::Sun: return k_sun_colours;
        case ThemeName::Dim: return k_dim_colours;
        case ThemeName::Night: return k_night_colours;
    }
    return k_sun_colours;
}

/// Text or a mark, and what it stands on.
struct Pair {
    std::string_view what;
    Rgb Colours::*front;
    Rgb Colours::*back;
};

/// All that the screens write with: at least 7:1.
inline constexpr std::array k_text_pairs{
    Pair{"text on the field", &Colours::ink, &Colours::field},
    Pair{"text on a key", &Colours::ink, &Colours::raised},
    Pair{"text on a chosen key", &Colours::field, &Colours::ink},
    Pair{"text on the key to press next", &Colours::action_ink, &Colours::action},
    Pair{"text on NO-GO", &Colours::no_go_ink, &Colours::no_go},
    Pair{"mark on a caution", &Colours::caution_ink, &Colours::caution},
    Pair{"mark and frame of GO", &Colours::go, &Colours::field},
};

/// What has to be seen but not read: at least 3:1.
inline constexpr std::array k_mark_pairs{
    Pair{"fill of NO-GO", &Colours::no_go, &Colours::field},
    Pair{"thumb of a slider in hand", &Colours::action, &Colours::field},
    Pair{"frame of the keyboard's place", &Colours::ink, &Colours::field},
};

/// What the scene writes with, each on a plate of its own over anything that the scene draws, and over the field.
inline constexpr std::array k_scene_texts{&SceneColours::text, &SceneColours::resultant};
inline constexpr std::array k_under_scene_texts{&SceneColours::ground, &SceneColours::face, &SceneColours::edge, &SceneColours::leg, &SceneColours::guy,
                                                &SceneColours::guy_slack, &SceneColours::rope, &SceneColours::load, &SceneColours::hazard,
                                                &SceneColours::highlight};
// clang-format on

}  // namespace guywright::widgets
