#pragma once
#include "wasm/screens/builder.hpp"

namespace guywright::screens {

/// A key that opens the list of parts by published least strength for the strength at `path`, and the list while it is open.
void add_standard_parts(Builder& b, const std::string& path);

}  // namespace guywright::screens
