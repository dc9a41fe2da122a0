#pragma once
#include <imgui.h>

#include "wasm/scene/scene.hpp"
#include "wasm/widgets/theme_table.hpp"

namespace guywright::widgets {

/// The colours of theme_table.hpp as ImGui takes them.
struct Theme {
    ImU32 field, ink, raised, action, action_ink, go, no_go, no_go_ink, caution, caution_ink;  ///< as in Colours
    scene::Look scene;
};

[[nodiscard]] const Theme& theme(ThemeName name);

}  // namespace guywright::widgets
