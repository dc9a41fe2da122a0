#pragma once
#include <string>
#include <vector>

#include "wasm/widgets/box.hpp"

namespace guywright::widgets {

/// What a person can touch or read on the present screen, in order: the view model of the page's text mirror and of the tests.
struct MirrorEntry {
    std::string id, kind, label, value;
    Box box;
};
using Mirror = std::vector<MirrorEntry>;

}  // namespace guywright::widgets
