#include "wasm/app/unusable_file.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace guywright;
using namespace guywright::app;

TEST_CASE("a file that cannot be used: its faults are told in the language chosen, and no more of them than are read") {
    const PlanRead read = read_plan(R"({"format":"guywright-plan","version":1,"a":1,"b":1,"c":1,"d":1,"e":1,"f":1,"g":1,"h":1,"i":1,"j":1})");
    REQUIRE_FALSE(read.ok());
    const std::string english = unusable_file_told(read, {Tongue::English}), french = unusable_file_told(read, {Tongue::French});
    CHECK(english.starts_with("This file cannot be used."));
    CHECK(french.starts_with("Ce fichier est inutilisable."));
    CHECK(french.find("allowed") == std::string::npos);
    CHECK(english.find("allowed") != std::string::npos);
    CHECK(std::count(english.begin(), english.end(), '\n') == 10);  // an empty line, eight faults, and how many more
    const std::size_t last = english.rfind("\u00B7 ");
    CHECK(english.substr(last).starts_with("\u00B7 and "));
    CHECK(english.substr(last).ends_with(" more"));
}
