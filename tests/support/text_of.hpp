#pragma once
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace support {

/// Every byte of a file.
inline std::string text_of(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace support
