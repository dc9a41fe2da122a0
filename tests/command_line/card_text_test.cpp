#include "engine/codec/french.hpp"
#include "engine/command_line/card_text.hpp"
#include "engine/codec/english.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace guywright;

namespace {

std::string card_of(const Plan& p) { return card_text({k_english}, p, evaluate(p)); }

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::size_t widest_line(const std::string& text) {
    std::size_t widest = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = text.find('\n', at);
        widest = std::max(widest, characters(std::string_view(text).substr(at, end - at)));
        at = end + 1;
    }
    return widest;
}

}  // namespace

TEST_CASE("card_text: a sound rig is GO, with what governs, three margins and the standing cautions") {
    const Plan p = support::go_plan();
    const std::string card = card_of(p);
    CHECK(card.starts_with("GO   check code " + check_code(p)));
    CHECK(holds(card, "What governs\n"));
    CHECK(holds(card, "Closest margins\n"));
    CHECK_FALSE(holds(card, "Also broken"));
    CHECK(holds(card, "planning aid"));
    CHECK(holds(card, "maker's manual"));
    CHECK(holds(card, "are judged at the worst of measuring error"));
    std::size_t percents = 0;
    for (std::size_t at = 0; (at = card.find(" % ", at)) != std::string::npos; ++at) ++percents;
    CHECK(percents >= 3);
}

TEST_CASE("card_text: NO-GO says every broken rule") {
    Plan p = support::steep_plan();
    p.guys[0].anchor_strength_kN = 0.1;
    const Evaluation e = evaluate(p);
    const std::string card = card_of(p);
    CHECK(card.starts_with("NO-GO "));
    // lines are wrapped: compare without line breaks and indents
    std::string flat;
    for (const char c : card)
        if (c != '\n' && c != ' ') flat += c;
    int broken = 0;
    e.worst.for_each([&](const Check& c) {
        if (c.status != CheckStatus::Fail) return;
        std::string s;
        for (const char letter : sentence({k_english}, p, e, c))
            if (letter != ' ') s += letter;
        CHECK_MESSAGE(holds(flat, s), s);
        ++broken;
    });
    CHECK(broken >= 3);
}

TEST_CASE("card_text: what is not measured is listed, and no result is shown") {
    const std::string card = card_of(support::full_plan());
    CHECK(card.starts_with("NOT CHECKED "));
    CHECK(holds(card, "  - guys[1].inclination_deg\n"));
    CHECK_FALSE(holds(card, "kN"));
    CHECK_FALSE(holds(card, "Closest margins"));
    CHECK_FALSE(card.starts_with("GO"));
}

TEST_CASE("card_text: a rig that falls shows no force of that case") {
    Plan p = support::usual_plan();
    p.guys.resize(1);
    const std::string card = card_of(p);
    CHECK(card.starts_with("NO-GO"));
    CHECK(holds(card, "does not stand\n"));
}

TEST_CASE("card_text: fits 100 columns, whatever the names and the forces") {
    Plan p = support::usual_plan();
    const std::string wide(k_longest_name, 'W');
    p.title = std::string(2 * k_longest_name, 'T');
    p.ropes[0].load_kg = 2000.0;
    p.actions.dynamic_factor = 5.0;
    while (p.ropes.size() < k_max_ropes) p.ropes.push_back(p.ropes[0]);
    while (p.guys.size() < k_max_guys) p.guys.push_back(p.guys[p.guys.size() - 3]);
    for (std::size_t i = 0; i < p.guys.size(); ++i) p.guys[i].name = std::to_string(i) + wide.substr(1);
    for (std::size_t i = 0; i < p.ropes.size(); ++i) p.ropes[i].name = std::to_string(i) + wide.substr(1);
    REQUIRE(find_faults(p).empty());
    CHECK(widest_line(card_of(p)) <= k_card_columns);
    for (std::uint64_t i = 0; i < 100; ++i) CHECK(widest_line(card_of(support::random_monopod(i))) <= k_card_columns);
}

TEST_CASE("force_text: a number is never cut by the narrowest column") {
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Imperial})
        for (const double kN : {0.0, 9.994, -999.99, 1234.5, -99999.0})
            CHECK(detail::force_text({k_english, units}, kN * 1000.0).size() <= detail::k_narrowest_column);
    CHECK(detail::force_text({k_english}, -0.001) == "0.00");
    CHECK(detail::force_text({k_french}, 1234.0) == "1,23");
    CHECK(detail::force_text({k_english, UnitSystem::Imperial}, 4448.2216152605) == "1000");
    CHECK(detail::force_text({k_english, UnitSystem::Imperial}, -99999e3) == "-2e+07");
}
