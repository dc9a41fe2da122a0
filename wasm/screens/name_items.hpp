#pragma once
#include "wasm/screens/builder.hpp"

// Keys for the name of a guy or rope and for its place on the list.
namespace guywright::screens {

void add_guy_name(Builder& b, std::size_t guy);
void add_rope_name(Builder& b, std::size_t rope);

}  // namespace guywright::screens
