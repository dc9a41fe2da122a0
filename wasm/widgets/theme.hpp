#pragma once
#include <imgui.h>

#include "wasm/scene/scene.hpp"

namespace guywright::widgets {

enum class ThemeName : unsigned char { Sun, Dim, Night };
inline constexpr int k_theme_count = 3;

/// Every colour on screen. Text pairs (ink on field, ink on raised, action_ink on action, no_go_ink on no_go,
/// caution_ink on caution, go on field) are at least 7:1 in sun and dim; night trades colour for the eyes' darkness and is large text only.
struct Theme {
    ImU32 field;          ///< background
    ImU32 ink;            ///< text, borders, marks
    ImU32 raised;         ///< what can be touched
    ImU32 action;         ///< the one thing to do next
    ImU32 action_ink;
    ImU32 go;             ///< mark of GO, drawn on the open field
    ImU32 no_go;          ///< solid fill of NO-GO
    ImU32 no_go_ink;
    ImU32 caution;
    ImU32 caution_ink;
    scene::Look scene;
};

[[nodiscard]] const Theme& theme(ThemeName name);

}  // namespace guywright::widgets
