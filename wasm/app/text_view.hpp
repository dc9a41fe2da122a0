#pragma once
#include <optional>
#include <string>

#include "wasm/app/state.hpp"
#include "wasm/app/view.hpp"

// The app as text, for the page's own elements: the same items and the same commands as on the drawn screen.
namespace guywright::app {

/// {"verdict", "verdict_shown", "reason", "checking", "check_code", "locked", "colours"}: what changes while a finger moves.
[[nodiscard]] std::string verdict_json(const State& state);

/// The same with "title", "message", "notes" and
///   "sections": [{"id", "title", "groups": [{"title", "entries": [entry]}]}]   the steps; a reading in hand and the lock before them
///   "keys": [entry]                                                       what belongs to no step
/// entry: {"kind": "text" | "number" | "key", "id", "label", "value", "on", "enabled"}; a number also has "how", "unit", "range",
/// "measured", "device". Numbers are as shown: in the unit and with the sign of their sliders.
[[nodiscard]] std::string text_json(const State& state, const Fonts& fonts);

/// What a key of the text view stands for; none where there is no such key.
[[nodiscard]] std::optional<Command> wish_of(const std::string& id, const State& state, const Fonts& fonts, double now_s);

}  // namespace guywright::app
