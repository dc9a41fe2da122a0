#include "engine/plan/utf8.hpp"

#include <doctest/doctest.h>

using namespace guywright;

TEST_CASE("decode_utf8: first and last character of every length") {
    const auto decodes = [](std::string_view bytes, char32_t value) {
        const CodePoint c = decode_utf8(bytes, 0);
        CHECK(c.value == value);
        CHECK(c.bytes == bytes.size());
    };
    decodes("A", U'A');
    decodes("\xC2\x80", 0x80);
    decodes("\xDF\xBF", 0x7FF);
    decodes("\xE0\xA0\x80", 0x800);
    decodes("\xEF\xBF\xBF", 0xFFFF);
    decodes("\xF0\x90\x80\x80", 0x10000);
    decodes("\xF4\x8F\xBF\xBF", 0x10FFFF);
}

TEST_CASE("decode_utf8: what is not UTF-8 is refused") {
    const std::string_view bad[]{
        "\x80",      // continuation alone
        "\xC0\xAF",  // overlong two bytes
        "\xC1\xBF",
        "\xE0\x9F\xBF",      // overlong three
        "\xF0\x8F\xBF\xBF",  // overlong four
        "\xED\xA0\x80",      // surrogate
        "\xF4\x90\x80\x80",  // past U+10FFFF
        "\xF5\x80\x80\x80",
        "\xFF",
        "\xC2",  // cut off
        "\xE2\x82",
        "\xC2"
        "A",  // continuation missing
    };
    for (const std::string_view bytes : bad) {
        CAPTURE(bytes.size());
        CHECK(decode_utf8(bytes, 0).bytes == 0);
    }
}

TEST_CASE("look_at: counts characters, not bytes, and finds what hides words") {
    CHECK(look_at("h\xC3\xA9!").characters == 3);
    CHECK(look_at("").blank);
    CHECK(look_at(" \xC2\xA0 ").blank);
    CHECK_FALSE(look_at(" a").blank);
    CHECK(look_at("a\tb").control);
    CHECK(look_at("a\x7F").control);
    CHECK(look_at("a\xE2\x80\xAE"
                  "b")
              .control);  // U+202E turns the reading direction
    CHECK(look_at("a\nb").line_feed);
    CHECK_FALSE(look_at("a\nb").control);
    CHECK_FALSE(look_at("a\xFF").utf8);
}

TEST_CASE("printable: cuts at whole characters and cleans") {
    CHECK(printable("\xC3\xA9\xC3\xA9\xC3\xA9", 2) == "\xC3\xA9\xC3\xA9...");
    CHECK(printable("abc", 3) == "abc");
    CHECK(printable("a\x1B[31m\xFF", 40) == "a?[31m?");
    CHECK(printable("", 3).empty());
}
