#pragma once
#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

namespace guywright {

/// One decoded character. `bytes` is 0 when the bytes are not UTF-8 (overlong forms, surrogates and values past U+10FFFF are not).
struct CodePoint {
    char32_t value = 0;
    std::size_t bytes = 0;
};

namespace detail {

inline std::size_t utf8_length(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead < 0xE0) return 2;
    if (lead >= 0xE0 && lead < 0xF0) return 3;
    return lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
}

inline bool is_scalar(char32_t c, std::size_t bytes) {
    const bool overlong = (bytes == 3 && c < 0x800) || (bytes == 4 && c < 0x10000);
    const bool surrogate = c >= 0xD800 && c < 0xE000;
    return !overlong && !surrogate && c <= 0x10FFFF;
}

}  // namespace detail

/// The character that starts at byte `at`, which must be inside the text.
inline CodePoint decode_utf8(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const std::size_t bytes = detail::utf8_length(byte(at));
    if (bytes == 0 || at + bytes > text.size()) return {};
    char32_t value = bytes == 1 ? byte(at) : byte(at) & (0x7Fu >> bytes);
    for (std::size_t i = at + 1; i < at + bytes; ++i) {
        if ((byte(i) & 0xC0u) != 0x80u) return {};
        value = (value << 6) | (byte(i) & 0x3Fu);
    }
    if (!detail::is_scalar(value, bytes)) return {};
    return {value, bytes};
}

/// Characters that draw nothing but change what is drawn: control characters, line separators and those that turn the
/// reading direction. On a card they could hide or reorder words.
inline constexpr bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0) || (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069); }

struct TextFacts {
    bool utf8 = true;
    bool control = false;  ///< holds a control character; a line feed is counted apart
    bool line_feed = false;
    bool blank = true;  ///< nothing but spaces
    std::size_t characters = 0;
};

inline TextFacts look_at(std::string_view text) {
    TextFacts facts;
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint c = decode_utf8(text, at);
        if (c.bytes == 0) facts.utf8 = false;
        else if (c.value == U'\n') facts.line_feed = true;
        else if (is_control(c.value)) facts.control = true;
        if (c.value != U' ' && c.value != 0xA0) facts.blank = false;
        ++facts.characters;
        at += std::max<std::size_t>(c.bytes, 1);
    }
    return facts;
}

/// A text that is safe to print: at most `longest` characters, then "..."; control characters and broken bytes become "?".
inline std::string printable(std::string_view text, std::size_t longest) {
    std::string out;
    std::size_t characters = 0;
    for (std::size_t at = 0; at < text.size(); ++characters) {
        if (characters == longest) return out + "...";
        const CodePoint c = decode_utf8(text, at);
        if (c.bytes == 0 || is_control(c.value)) out += '?';
        else out += text.substr(at, c.bytes);
        at += std::max<std::size_t>(c.bytes, 1);
    }
    return out;
}

}  // namespace guywright
