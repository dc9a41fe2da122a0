#pragma once
#include <imgui.h>

#include <algorithm>

namespace guywright::widgets {

/// A piece of the screen, CSS pixels. Screens are laid out by cutting pieces off.
struct Box {
    float x = 0.0F, y = 0.0F, w = 0.0F, h = 0.0F;

    [[nodiscard]] ImVec2 min() const { return {x, y}; }
    [[nodiscard]] ImVec2 max() const { return {x + w, y + h}; }
    [[nodiscard]] ImVec2 centre() const { return {x + w / 2.0F, y + h / 2.0F}; }
    [[nodiscard]] Box inner(float margin) const { return {x + margin, y + margin, w - 2.0F * margin, h - 2.0F * margin}; }

    /// Takes `height` off the top (at most all) and returns it; `gap` below it is left empty.
    Box cut_top(float height, float gap = 0.0F) {
        height = std::min(height, h);
        const Box cut{x, y, w, height};
        const float used = std::min(height + gap, h);
        y += used;
        h -= used;
        return cut;
    }
    Box cut_bottom(float height, float gap = 0.0F) {
        height = std::min(height, h);
        const Box cut{x, y + h - height, w, height};
        h = std::max(0.0F, h - height - gap);
        return cut;
    }
    Box cut_left(float width, float gap = 0.0F) {
        width = std::min(width, w);
        const Box cut{x, y, width, h};
        const float used = std::min(width + gap, w);
        x += used;
        w -= used;
        return cut;
    }
    Box cut_right(float width, float gap = 0.0F) {
        width = std::min(width, w);
        const Box cut{x + w - width, y, width, h};
        w = std::max(0.0F, w - width - gap);
        return cut;
    }
};

}  // namespace guywright::widgets
