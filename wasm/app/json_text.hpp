#pragma once
#include <nlohmann/json.hpp>
#include <string>

namespace guywright::app {

using Json = nlohmann::ordered_json;

/// What the page is told. Bytes that are no UTF-8, in a name from outside, are replaced.
inline std::string text_of(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

}  // namespace guywright::app
