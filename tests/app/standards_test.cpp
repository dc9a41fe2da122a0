#include "wasm/words/standards.hpp"

#include <doctest/doctest.h>

using namespace guywright;

TEST_CASE("standards: each part is called in the app what the list of the engine calls it") {
    for (std::size_t i = 0; i < k_published_parts.size(); ++i) {
        INFO(k_published_parts[i].name);
        CHECK(words::k_part_names[i].english.starts_with(k_published_parts[i].name));
        CHECK(k_published_parts[i].source.find(k_published_parts[i].standard) != std::string_view::npos);
    }
}
