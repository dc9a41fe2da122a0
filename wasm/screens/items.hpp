#pragma once
#include <functional>
#include <string>
#include <vector>

#include "wasm/app/state.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::screens {

/// One thing on a page: as high as it needs to be, never cut in two.
struct Item {
    float height_px = 0.0F;
    bool starts_group = false;        ///< a heading: it and what follows are kept on one page where they fit
    std::string path;                 ///< of the number it slides, empty for anything else
    std::function<void(widgets::Ui&, const widgets::Box&)> draw;
};

/// What a step shows, from top to bottom, laid out for `width`. Reads the state, changes nothing.
[[nodiscard]] std::vector<Item> items_of(const widgets::Ui& ui, const app::State& state, app::Step step, float width);

/// "Edge", "Frame", ...
[[nodiscard]] std::string_view title_of(app::Step step);

/// Index of the item that slides `path` in its step; 0 if there is none.
[[nodiscard]] std::size_t item_with_path(const std::vector<Item>& items, std::string_view path);

/// The step on which a path of the plan is entered.
[[nodiscard]] app::Step step_of(std::string_view path);

}  // namespace guywright::screens
