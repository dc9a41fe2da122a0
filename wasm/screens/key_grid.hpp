#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "wasm/widgets/ui.hpp"

// Many keys on one sheet, each as large as a glove needs.
namespace guywright::screens {

inline constexpr float k_between_keys_px = 12.0F;

struct Key {
    std::string id, label;
    app::Command command;
    widgets::ButtonLook look = widgets::ButtonLook::Plain;
    bool enabled = true;
};

struct Grid {
    std::size_t rows = 1, columns = 1;
    [[nodiscard]] std::size_t cells() const { return rows * columns; }
};

/// As few columns as hold all, in keys no smaller than a glove needs; as many as fit where not all can be held.
[[nodiscard]] Grid grid_for(const widgets::Box& box, std::size_t count);

/// Column by column.
void draw_grid(widgets::Ui& ui, widgets::Box box, const std::vector<Key>& keys, const Grid& grid);

/// Side by side, equally wide.
void draw_row(widgets::Ui& ui, widgets::Box row, const std::vector<Key>& keys);

}  // namespace guywright::screens
