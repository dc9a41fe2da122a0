#include "engine/codec/check_code.hpp"
#include "engine/codec/english.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/plan_codec.hpp"
#include "engine/codec/practice_sentences.hpp"
#include "engine/practice/draw_site.hpp"
#include "engine/practice/what_if.hpp"
#include "tests/support/within.hpp"
#include "wasm/words/practice.hpp"

#include <doctest/doctest.h>

#include <array>
#include <map>
#include <set>
#include <string>

using namespace guywright;

namespace {

constexpr std::uint32_t k_seeds_a_level = 60;  // 300 sites in all

/// A drawn site with everything computed for it.
struct Judged {
    DrawnSite site;
    Evaluation e;
    SiteAnswer answer;
    std::size_t rigs;  ///< looked at before it was found
};

Judged judged(std::uint32_t seed, int level) {
    SiteDrawing drawing(seed, level);
    while (!drawing.done()) drawing.advance(k_box_points);
    REQUIRE(drawing.site() != nullptr);
    Evaluation e = evaluate(drawing.site()->plan);
    const auto answer = answer_of(e);
    REQUIRE(answer);
    return {*drawing.site(), std::move(e), *answer, drawing.rigs()};
}

/// Drawn once for all tests.
const std::vector<Judged>& all_sites() {
    static const std::vector<Judged> sites = [] {
        std::vector<Judged> out;
        for (int level = k_first_site_level; level <= k_last_site_level; ++level)
            for (std::uint32_t seed = 1; seed <= k_seeds_a_level; ++seed) out.push_back(judged(seed, level));
        return out;
    }();
    return sites;
}

template <class F>
void for_each_site(F f) {
    for (const Judged& j : all_sites()) f(j);
}

/// Of all guys, resultant and head weight what lies across one leg: nothing is left over at rest.
Vec3 across_sum_N(const Judged& j) {
    const Outcome& o = j.e.outcomes[k_holding];
    const Vec3 along = glm::normalize(j.e.model.legs[0].foot_m - o.equilibrium.head_m);
    Vec3 sum_N = o.resultant_N + Vec3{0.0, 0.0, -j.e.model.head_weight_N};
    for (std::size_t i = 0; i < j.e.model.guys.size(); ++i)
        sum_N += o.equilibrium.guy_tension_N[i] * glm::normalize(j.e.model.guys[i].anchor_m - o.equilibrium.head_m);
    return sum_N - glm::dot(sum_N, along) * along;
}

const ExplainStep* step_called(const std::vector<ExplainStep>& steps, SiteText text) {
    for (const ExplainStep& s : steps)
        if (s.text == text) return &s;
    return nullptr;
}

}  // namespace

TEST_CASE("drawn sites: the same number is the same site on every machine") {
    // Signs of the plans' canonical texts: native and wasm run this same list.
    std::string signs;
    for (int level = k_first_site_level; level <= k_last_site_level; ++level)
        for (const std::uint32_t seed : {1U, 2U, 3U, 9999U}) {
            const auto site = drawn_site(seed, level);
            REQUIRE(site);
            signs += check_code(site->plan) + " ";
        }
    CHECK(signs ==
          "UPYD23 JUGWRB YL2L7K H652ZK 5LEM4G PGPVHE GUA6MH 7XWBTR 5H8AEM 4SMDWX CNMKK4 AFRWB4 24PPED TN5NKT AX795Y Q4Q56D HP6PPU 3EBLJS 7MANF4 C5E7BE ");
}

TEST_CASE("drawn sites: how the search is sliced changes nothing") {
    for (int level = k_first_site_level; level <= k_last_site_level; ++level) {
        SiteDrawing drawing(7, level);
        while (!drawing.done()) drawing.advance(1);
        REQUIRE(drawing.site() != nullptr);
        CHECK(*drawing.site() == drawn_site(7, level));
    }
}

TEST_CASE("drawn sites: clear-cut, of both verdicts, for many reasons, and visibly different") {
    std::array<int, 5> go{};
    std::array<std::set<CheckId>, 5> reasons;
    std::set<std::string> texts;
    for_each_site([&](const Judged& j) {
        CAPTURE(j.site.seed);
        CAPTURE(j.site.level);
        const auto level = static_cast<std::size_t>(j.site.level - k_first_site_level);
        CHECK(j.e.faults.empty());
        CHECK(j.answer.hardest_N >= 1.1 * j.answer.next_N);
        CHECK(texts.insert(canonical_plan_text(j.site.plan)).second);
        if (j.answer.verdict == Verdict::Go) {
            ++go[level];
            CHECK(j.e.error_swept);
            for (const Check& c : j.e.closest) CHECK((!c.has_margin || c.margin >= 0.1));
            return;
        }
        const Evaluation measured = evaluate_as_measured(j.site.plan);
        CHECK(measured.verdict == Verdict::NoGo);
        CHECK(detail::plainly_broken(j.site.plan, measured, j.answer.governs));
        reasons[level].insert(j.answer.governs.id);
    });
    for (std::size_t level = 0; level < 5; ++level) {
        CAPTURE(level);
        CHECK(go[level] >= 0.35 * k_seeds_a_level);
        CHECK(go[level] <= 0.65 * k_seeds_a_level);
        CHECK(reasons[level].size() >= 5);
    }
}

TEST_CASE("drawn sites: the search is far from its bound") {
    std::size_t most = 0;
    for_each_site([&](const Judged& j) { most = std::max(most, j.rigs); });
    CHECK(most * 4 < SiteDrawing::k_most_rigs);
}

TEST_CASE("drawn sites: every name is known in both languages") {
    const auto known = [](const std::string& name) {
        const std::string bare = name.ends_with(" 2") ? name.substr(0, name.size() - 2) : name;
        return std::any_of(words::practice::k_site_names.begin(), words::practice::k_site_names.end(),
                           [&](const app::Said& said) { return said.english == bare; });
    };
    for (const std::string_view place : k_site_places) CHECK(known(std::string(place)));
    for (const std::string_view way : k_guy_ways) CHECK(known(std::string(way)));
    for_each_site([&](const Judged& j) {
        for (const GuyPlan& guy : j.site.plan.guys) CHECK_MESSAGE(known(guy.name), guy.name);
        for (const RopePlan& rope : j.site.plan.ropes) CHECK_MESSAGE(known(rope.name), rope.name);
    });
}

TEST_CASE("marks: right where right, wrong where deliberately wrong") {
    const Judged j = judged(3, 1);
    const bool go = j.answer.verdict == Verdict::Go;
    const std::size_t other = (j.answer.hardest_guy + 1) % j.site.plan.guys.size();
    CHECK(marks_of(j.answer, {go, j.answer.hardest_guy, j.answer.angle_deg + 4.9}).right() == 3);
    CHECK_FALSE(marks_of(j.answer, {!go, j.answer.hardest_guy, j.answer.angle_deg}).verdict);
    CHECK_FALSE(marks_of(j.answer, {go, other, j.answer.angle_deg}).guy);
    CHECK_FALSE(marks_of(j.answer, {go, j.answer.hardest_guy, j.answer.angle_deg - 5.1}).angle);
    CHECK(marks_of(j.answer, {!go, other, j.answer.angle_deg + 5.1}).right() == 0);
}

TEST_CASE("explanation: its numbers are those of the evaluation, and they add up") {
    for_each_site([&](const Judged& j) {
        if (j.site.seed > 12) return;
        CAPTURE(j.site.seed);
        CAPTURE(j.site.level);
        const Outcome& o = j.e.outcomes[k_holding];
        const std::size_t chosen = (j.answer.hardest_guy + 1) % j.site.plan.guys.size();
        const auto steps = explain(j.site.plan, j.e, j.answer, {true, chosen, 0.0});
        const ExplainStep* pull = step_called(steps, SiteText::Resultant);
        REQUIRE(pull != nullptr);
        CHECK_WITHIN(pull->force_N, glm::length(o.resultant_N), 1e-9);
        if (const ExplainStep* split = step_called(steps, j.e.model.legs.size() == 1 ? SiteText::AlongLeg : SiteText::AlongLegs)) {
            CHECK_WITHIN(std::hypot(split->force_N, split->other_N), pull->force_N, 1e-6);
            CHECK_WITHIN(degrees(std::atan2(split->other_N, split->force_N)), std::min(j.answer.angle_deg, 180.0 - j.answer.angle_deg), 1e-6);
        }
        if (j.e.model.legs.size() == 1) CHECK(glm::length(across_sum_N(j)) < 1.0);
        const ExplainStep* choice = step_called(steps, SiteText::ChosenGuy);
        REQUIRE(choice != nullptr);
        CHECK(choice->subject == chosen);
        CHECK_WITHIN(choice->force_N, o.equilibrium.guy_tension_N[chosen], 1e-9);
        const ExplainStep* rule = step_called(steps, SiteText::Rule);
        REQUIRE(rule != nullptr);
        CHECK(rule->rule.id == j.answer.governs.id);
        CHECK((step_called(steps, SiteText::Mend) != nullptr) == (j.answer.verdict == Verdict::NoGo));
        CHECK(step_called(explain(j.site.plan, j.e, j.answer, {true, j.answer.hardest_guy, 0.0}), SiteText::ChosenGuy) == nullptr);
    });
}

TEST_CASE("explanation: told in both languages and both systems, with nothing left unfilled") {
    for (int level = k_first_site_level; level <= k_last_site_level; ++level)
        for (const std::uint32_t seed : {1U, 2U, 3U, 4U}) {
            const Judged j = judged(seed, level);
            for (const Language* language : {&k_english, &k_french})
                for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Imperial})
                    for (const ExplainStep& step : explain(j.site.plan, j.e, j.answer, {true, 0, 0.0})) {
                        const std::string told = sentence(Telling{*language, units}, j.site.plan, j.e, step);
                        CHECK(told.find('{') == std::string::npos);
                        CHECK(told.size() > 20);
                        if (units == UnitSystem::Imperial) CHECK(told.find(" kN") == std::string::npos);
                    }
        }
}

TEST_CASE("what if: three or four numbers that the site has, and the first is what the deciding rule looks at") {
    for_each_site([&](const Judged& j) {
        const auto paths = what_if_paths(j.site.plan, j.answer);
        CHECK(paths.size() >= 3);
        CHECK(paths.size() <= k_most_what_ifs);
        Plan copy = j.site.plan;
        for (const std::string& path : paths) CHECK(find_number(copy, path));
        if (j.answer.governs.id == CheckId::LegBuckling) CHECK(paths.front().starts_with("frame.pole_diameter_mm"));
    });
}
