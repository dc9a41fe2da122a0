#pragma once
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "wasm/app/state.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::screens {

/// Items that belong together, such as all of one guy. A group starts a page of its own, which bears its title.
struct Group {
    std::string title;
    std::string id;       ///< State::open_group when what few need is shown
    std::string more;     ///< what is left out: "pulley, strengths"; empty where nothing is
    std::string more_id;  ///< the first item left out
};

/// What an item says and offers to somebody who does not see it.
struct Spoken {
    enum class Kind : unsigned char { Text, Number, Key } kind = Kind::Text;
    std::string id;  ///< of a number its path
    std::string label{}, value{};
    std::optional<bool> on{};               ///< of a key that is in or out
    std::optional<app::Command> command{};  ///< of a key
};

/// One thing on a page: as high as it needs to be, never cut in two.
struct Item {
    float height_px = 0.0F;
    std::size_t group = 0;
    std::string id;  ///< path of the number it slides, or its own name
    std::function<void(widgets::Ui&, const widgets::Box&)> draw;
    std::vector<Spoken> spoken{};
};

/// What a step shows, from top to bottom.
struct StepItems {
    std::vector<Group> groups;
    std::vector<Item> items;
};

/// Laid out for `width`; `all`: with what few need. Reads the state, changes nothing.
[[nodiscard]] StepItems items_of(const widgets::Ui& ui, const app::State& state, app::Step step, float width, bool all = false);

/// "Edge", "Frame", ... in every language, for ids.
[[nodiscard]] std::string_view key_of(app::Step step);
/// The same as shown.
[[nodiscard]] std::string title_of(const app::State& state, app::Step step);

/// Index of the item called `id`; `otherwise` if there is none.
[[nodiscard]] std::size_t item_called(const std::vector<Item>& items, std::string_view id, std::size_t otherwise);

/// The step on which a path of the plan is entered.
[[nodiscard]] app::Step step_of(std::string_view path);

}  // namespace guywright::screens
