#include "engine/codec/check_code.hpp"
#include "tests/support/full_plan.hpp"

#include <doctest/doctest.h>

#include <array>
#include <set>
#include <string>

using namespace guywright;

TEST_CASE("check_code: six signs that are not mistaken for each other") {
    const std::string code = check_code(support::full_plan());
    CHECK(code.size() == 6);
    for (const char c : code) CHECK(k_check_code_signs.find(c) != std::string_view::npos);
    for (const char c : std::string_view("01IO")) CHECK(k_check_code_signs.find(c) == std::string_view::npos);
    CHECK(std::set<char>(k_check_code_signs.begin(), k_check_code_signs.end()).size() == 32);
    CHECK(k_check_code_count == 1073741824u);
}

TEST_CASE("check_code: the same for the same plan, however its file is laid out") {
    const Plan p = support::full_plan();
    CHECK(check_code(read_plan(write_plan(p)).plan) == check_code(p));
    CHECK(check_code(read_plan(canonical_plan_text(p)).plan) == check_code(p));
}

TEST_CASE("check_code: the smallest change of any number changes it") {
    Plan p = support::full_plan();
    const std::string before = check_code(p);
    int changed = 0, numbers = 0;
    for_each_number(support::full_plan(), [&](const std::string& path, double v, const Range& r) {
        const NumberRef number = find_number(p, path);
        const double other = number.whole != nullptr ? v + 1.0 : std::nextafter(v, v < r.max ? r.max : r.min);
        REQUIRE(number.set(other));
        ++numbers;
        if (check_code(p) != before) ++changed;
        number.set(v);
    });
    CHECK(numbers > 85);
    CHECK(changed == numbers);  // one in 32^6 could stay by chance: none of these does
}

TEST_CASE("check_code: changes of words and of what is measured change it") {
    const Plan p = support::full_plan();
    Plan q = p;
    q.title += ".";
    CHECK(check_code(q) != check_code(p));
    q = p;
    q.not_measured.pop_back();
    CHECK(check_code(q) != check_code(p));
    q = p;
    std::swap(q.guys[1], q.guys[2]);
    CHECK(check_code(q) != check_code(p));
}

TEST_CASE("check_code: every sign is about as likely in every place") {
    std::array<std::array<int, 256>, k_check_code_length> count{};
    std::set<std::string> codes;
    const int plans = 6400;
    for (int i = 0; i < plans; ++i) {
        const std::string code = check_code_of(std::to_string(i));
        codes.insert(code);
        for (std::size_t place = 0; place < code.size(); ++place) ++count[place][static_cast<unsigned char>(code[place])];
    }
    // 200 expected of each: six standard deviations are 84
    for (const auto& place : count)
        for (const char sign : k_check_code_signs) {
            CHECK(place[static_cast<unsigned char>(sign)] > 200 - 84);
            CHECK(place[static_cast<unsigned char>(sign)] < 200 + 84);
        }
    CHECK(codes.size() == plans);
}
