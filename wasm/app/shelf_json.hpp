#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "wasm/app/shelf.hpp"

// What program and page tell each other about kept plans. Both ends are ours; what came out of storage may still be damaged.
namespace guywright::app {

[[nodiscard]] std::string save_json(const Save& save);
[[nodiscard]] std::string_view act_name(ShelfAct act);  ///< "open", "bring back", ...

/// { plans: [{ id, title, changed, readable, open }], deleted: title or null, keeping: "protected" | "may be cleared" | "denied" | "full" }
[[nodiscard]] std::optional<Shelf> read_shelf(std::string_view json);

}  // namespace guywright::app
