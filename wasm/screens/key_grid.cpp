#include "wasm/screens/key_grid.hpp"

#include <algorithm>
#include <cmath>

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

constexpr float k_narrowest_key_px = 118.0F;
constexpr float k_widest_column_px = 380.0F;
constexpr float k_widest_in_row_px = 600.0F;  ///< a panel's whole width, and less than a desk's

void draw_key(Ui& ui, const Box& box, const Key& key) {
    if (widgets::button(ui, box, {key.id, key.label, key.look, key.enabled})) ui.wish(key.command);
}

}  // namespace

Grid grid_for(const Box& box, std::size_t count) {
    const auto most = [](float room, float key) {
        return static_cast<std::size_t>(std::max(1.0F, std::floor((room + k_between_keys_px) / (key + k_between_keys_px))));
    };
    const std::size_t rows = most(box.h, widgets::k_target_px), columns = most(box.w, k_narrowest_key_px);
    const std::size_t needed = std::max(std::min<std::size_t>(2, columns), (count + rows - 1) / rows);
    return {rows, std::min(columns, needed)};
}

void draw_grid(Ui& ui, Box box, const std::vector<Key>& keys, const Grid& grid) {
    const auto columns = static_cast<float>(grid.columns);
    const float wide = std::min(k_widest_column_px, (box.w - (columns - 1.0F) * k_between_keys_px) / columns);
    const std::size_t rows = (keys.size() + grid.columns - 1) / grid.columns;
    for (std::size_t at = 0; at < keys.size();) {
        Box column = box.cut_left(wide, k_between_keys_px);
        for (std::size_t row = 0; row < rows && at < keys.size(); ++row, ++at) draw_key(ui, column.cut_top(widgets::k_target_px, k_between_keys_px), keys[at]);
    }
}

void draw_row(Ui& ui, Box row, const std::vector<Key>& keys) {
    const auto count = static_cast<float>(keys.size());
    const float wide = std::min(k_widest_in_row_px, (row.w - (count - 1.0F) * k_between_keys_px) / count);
    for (const Key& key : keys) draw_key(ui, row.cut_left(wide, k_between_keys_px), key);
}

}  // namespace guywright::screens
