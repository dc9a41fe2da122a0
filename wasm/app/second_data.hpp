#pragma once
#include <string>
#include <string_view>

#include "wasm/app/state.hpp"

// What web/second.js shows of the second check, as JSON. Numbers come and go as they are typed, in the units shown.
namespace guywright::app {

/// What the second person is asked, and nothing of what the first one has measured but `text`, which is no text to be shown:
/// {"language", "checking", "document", "title", "check_code", "text": of the plan, "measurements": [{"path", "label", "how", "unit",
///  "allowed", "signed"}], "preload": {"title", "note", "items", "people"}}. No measurements while nothing is judged.
[[nodiscard]] std::string second_json(const State& state);

/// `entries`: {"compare": flag, "typed": {path: text}}.
/// {"faults": [{"path", "message"}], "compared"}; the latter null unless it was asked for and every measurement was entered, else
/// {"verdict", "of_first", "of_second": {"key", "text"}, "why", "agrees", "may_be_signed", "rows": [{"path", "label", "first", "second", "difference",
///  "tolerance", "agrees"}], "readings": [{"path", "first", "second", "allowed", "agrees"}] in the units of the plan}.
[[nodiscard]] std::string second_entries_json(const State& state, std::string_view entries);

/// The engine's report of the plan in hand, for the log.
[[nodiscard]] std::string report_text(const State& state);

}  // namespace guywright::app
