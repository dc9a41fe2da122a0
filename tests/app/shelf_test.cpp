#include "engine/codec/plan_codec.hpp"
#include "engine/plan/utf8.hpp"
#include "wasm/app/apply.hpp"
#include "wasm/app/shelf_json.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace guywright;
using namespace guywright::app;

TEST_CASE("copy_title: free, however many copies there are, and never too long") {
    std::vector<PlanEntry> plans;
    const auto copy = [&](const std::string& title) {
        const std::string found = copy_title(title, plans);
        plans.push_back({"", found, "", true, false});
        return found;
    };
    CHECK(copy("Dam") == "Dam, copy");
    CHECK(copy("Dam") == "Dam, copy 2");
    CHECK(copy("Dam, copy") == "Dam, copy 3");
    CHECK(copy("Dam, copy 2") == "Dam, copy 4");
    std::string umlauts;
    for (int i = 0; i < 80; ++i) umlauts += "\xC3\xBC";
    for (int i = 0; i < 20; ++i) {
        const TextFacts facts = look_at(copy(umlauts));
        CHECK(facts.utf8);
        CHECK(facts.characters <= 80);
    }
}

TEST_CASE("save_json: what the page reads") {
    const Save save{3, "Dam \"A\"", 1, 2, 4, true, false, {{1, "one"}, {2, "two"}}};
    const auto json = nlohmann::json::parse(save_json(save));
    CHECK(json["document"] == 3);
    CHECK(json["title"] == "Dam \"A\"");
    CHECK(json["first"] == 1);
    CHECK(json["number"] == 2);
    CHECK(json["last"] == 4);
    CHECK(json["begins"] == true);
    CHECK(json["untouched"] == false);
    CHECK(json["steps"] == nlohmann::json::parse(R"([[1,"one"],[2,"two"]])"));
}

TEST_CASE("read_shelf: the list, what can be brought back, how safe it is") {
    const auto shelf = read_shelf(R"({"plans":[{"id":"a","title":"Dam","changed":"2031-04-05 16:07","readable":true,"open":true},{"id":"b","title":7}],
                                      "deleted":"Old","keeping":"protected"})");
    REQUIRE(shelf.has_value());
    REQUIRE(shelf->plans.size() == 2);
    CHECK(shelf->plans[0].title == "Dam");
    CHECK(shelf->plans[0].open);
    CHECK_FALSE(shelf->plans[1].readable);
    CHECK(shelf->plans[1].title == "");
    CHECK(shelf->deleted_title == "Old");
    CHECK(shelf->has_deleted);
    CHECK(shelf->keeping == Keeping::Protected);
    CHECK_FALSE(read_shelf(R"({"plans":[],"deleted":null,"keeping":"?"})")->has_deleted);
    CHECK(read_shelf(R"({"plans":[],"keeping":"full"})")->keeping == Keeping::Full);
    for (const char* broken : {"", "[]", "{}", "{\"plans\":{}}", "null"}) CHECK_FALSE(read_shelf(broken).has_value());
}

TEST_CASE("a plan saved as a file: title and text are handed over, and the page names the file") {
    State s = first_state();
    apply(s, {SetText{"title", "Gate pier, \u00E9t\u00E9"}, SaveFile{}});
    REQUIRE(s.download);
    CHECK(s.download->first == "Gate pier, \u00E9t\u00E9");
    CHECK(read_plan(s.download->second).plan == s.plan);
}
