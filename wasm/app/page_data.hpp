#pragma once
#include <string>
#include <string_view>

#include "wasm/app/state.hpp"

// What the page's own dialogs show, as JSON for web/share.js, web/read_code.js and web/sheet.js.
namespace guywright::app {

/// {"language", "title", "verdict", "check_code", "checking", "codes": [text], "plan": text of its file}
[[nodiscard]] std::string share_json(const State& state);

/// `lines`: texts of codes, one a line, the one just read last.
/// {"language", "state": "whole" | "waiting" | "foreign" | "damaged" | "newer", "message", "have": [place], "total"}, and of a whole one "title",
/// "check_code", "plan".
[[nodiscard]] std::string read_codes_json(const Speech& speech, std::string_view lines);

/// The same of a plan file: "whole" or "damaged".
[[nodiscard]] std::string look_at_json(const Speech& speech, std::string_view plan_text);

/// See engine/codec/rig_sheet.hpp; with "language", "checking" and "codes".
[[nodiscard]] std::string sheet_json(const State& state);

}  // namespace guywright::app
