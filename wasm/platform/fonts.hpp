#pragma once
#include "wasm/app/app.hpp"

namespace guywright::platform {

/// Bakes B612 for a screen with `pixel_ratio` device pixels per CSS pixel into ImGui's font atlas, so that no glyph is
/// ever stretched. Replaces what was baked before; the renderer has to upload the atlas afterwards.
[[nodiscard]] app::Fonts bake_fonts(float pixel_ratio);

}  // namespace guywright::platform
