#include "engine/command_line/layout.hpp"

#include <doctest/doctest.h>

using namespace guywright;

TEST_CASE("wrapped: breaks at spaces, indents the rest, breaks a word that has no place") {
    CHECK(wrapped("one two", "  - ") == "  - one two\n");
    CHECK(wrapped("", "  ").empty());
    const std::string words = std::string(60, 'a') + " " + std::string(60, 'b');
    CHECK(wrapped(words, "> ") == "> " + std::string(60, 'a') + "\n  " + std::string(60, 'b') + "\n");
    CHECK(wrapped(std::string(150, 'x'), "") == std::string(100, 'x') + "\n" + std::string(50, 'x') + "\n");
    CHECK(wrapped(std::string(100, 'x'), "") == std::string(100, 'x') + "\n");
}

TEST_CASE("wrapped: counts characters, not bytes") {
    std::string accents;
    for (int i = 0; i < 100; ++i) accents += "\xC3\xA9";
    CHECK(wrapped(accents, "") == accents + "\n");
}

TEST_CASE("padded: to the width, cut at whole characters") {
    CHECK(padded_right("ab", 4) == "ab  ");
    CHECK(padded_left("ab", 4) == "  ab");
    CHECK(padded_left("\xC3\xA9\xC3\xA9", 3) == " \xC3\xA9\xC3\xA9");
    CHECK(padded_right("\xC3\xA9\xC3\xA9", 1) == "\xC3\xA9");
}

TEST_CASE("TextTable: as many as nine columns fit the card") {
    for (const std::size_t columns : {std::size_t{1}, std::size_t{8}, std::size_t{9}}) {
        TextTable table;
        table.rows.push_back(std::vector<std::string>(columns + 1, "123456789012345678901234567890"));
        const std::string text = table.text();
        CHECK(characters(text) - 1 <= k_card_columns);
    }
    TextTable table;
    table.rows = {{"case", "a"}, {"a row that has only this one cell and runs on"}, {"x", "1.00"}};
    CHECK(table.text() == "  case                            a\n  a row that has only this one cell and runs on\n  x                            1.00\n");
}
