#pragma once
#include <span>
#include <string_view>

/// Files built into the program: wasm/embed.cmake writes the definitions.
namespace guywright::assets {

struct Example {
    std::string_view name;  ///< file name without ".json"
    std::string_view text;  ///< a plan file
};

[[nodiscard]] std::span<const unsigned char> font_regular();
[[nodiscard]] std::span<const unsigned char> font_bold();
[[nodiscard]] std::span<const Example> examples();  ///< assets/examples/*.json, by name

}  // namespace guywright::assets
