#include "engine/codec/french.hpp"
#include "engine/codec/report.hpp"
#include "engine/command_line/card_text.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"
#include "tests/support/within.hpp"
#include "tests/support/words.hpp"

#include <functional>
#include <set>
#include <string>

using namespace guywright;

namespace {

/// A plan with all that is computed for it.
struct Tuned {
    explicit Tuned(const Plan& p) : plan(p), e(evaluate_as_measured(p)), tuning(tune(p, e)) {}
    [[nodiscard]] OrderedJson report() const {
        Evaluation judged = e;
        judged.verdict = Verdict::NoGo;  // the sweep is not what is looked at here
        return OrderedJson::parse(write_report(plan, judged, tuning), nullptr, false);
    }
    [[nodiscard]] Sentences told(const Language& words, UnitSystem units = UnitSystem::Metric) const {
        const Telling t{words, units};
        const detail::TuningView v{t, plan, e, tuning};
        Sentences all;
        for (const Sentences& some : {tie_sentences(v, tuning.rigged, k_rigged), tie_sentences(v, tuning.holding, k_holding), line_up_sentences(v),
                                      pretension_sentences(v), sequence_sentences(v, tuning.sequence.up), sequence_sentences(v, tuning.sequence.down)})
            all.insert(all.end(), some.begin(), some.end());
        return all;
    }
    Plan plan;
    Evaluation e;
    Tuning tuning;
};

using support::holds;
using support::marks;

bool any_holds(const Sentences& all, const std::string& part) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& s) { return holds(s, part); });
}

}  // namespace

TEST_CASE("tuning report: the keys agreed on hold what was computed") {
    const Tuned go(support::go_plan());
    OrderedJson r = go.report();
    REQUIRE(r["tie_matrix_N_per_10mm"].size() == 4);
    for (std::size_t i = 0; i < 4; ++i)
        for (std::size_t j = 0; j < 4; ++j) CHECK_WITHIN(r["tie_matrix_N_per_10mm"][i][j].get<double>(), go.tuning.rigged.change_N_per_m[i][j] / 100.0, 1e-9);
    CHECK(r["tie_matrix_holding_N_per_10mm"].size() == 4);
    REQUIRE(r["least_pretension_kN"].size() == 4);
    for (std::size_t i = 0; i < 4; ++i) CHECK_WITHIN(r["least_pretension_kN"][i].get<double>(), go.tuning.least_pretension.guys[i].force_N / 1000.0, 1e-12);
    CHECK(r["pretension"]["status"] == "found");
    CHECK(r["pretension"]["guys"][0]["by_hand"] == false);
    CHECK(r["line_up"]["status"] == "in_line");
    CHECK_FALSE(r["line_up"].contains("take_up_m"));
    CHECK(r["sequence"]["up"].size() == go.tuning.sequence.up.size());

    const Tuned usual(support::usual_plan());
    r = usual.report();
    CHECK(r["line_up"]["status"] == "lined_up");
    REQUIRE(r["line_up"]["take_up_m"].size() == 3);
    CHECK_WITHIN(r["line_up"]["take_up_m"][0].get<double>(), usual.tuning.line_up.take_up_m[0], 1e-12);
    CHECK_WITHIN(r["line_up"]["head_m"][0].get<double>(), usual.tuning.line_up.head_m.x, 1e-12);
    CHECK(r["line_up"]["order"]["status"] == "found");
    CHECK(r["line_up"]["order"]["steps"].size() == usual.tuning.order.steps.size());
}

TEST_CASE("tuning report: what is not known has no key") {
    const OrderedJson steep = Tuned(support::steep_plan()).report();
    CHECK_FALSE(steep.contains("least_pretension_kN"));
    CHECK(steep["pretension"]["status"] == "not_in_range");
    CHECK(steep["pretension"].contains("falls_in"));
    Plan falls = support::usual_plan();
    falls.guys.resize(1);
    const OrderedJson r = Tuned(falls).report();
    CHECK_FALSE(r.contains("tie_matrix_holding_N_per_10mm"));
    const Plan p = support::go_plan();
    const OrderedJson untuned = OrderedJson::parse(write_report(p, evaluate(p)), nullptr, false);
    CHECK_FALSE(untuned.contains("line_up"));
    CHECK_FALSE(untuned.contains("sequence"));
}

TEST_CASE("tuning report: no gap, no number that is none, for random rigs of every structure") {
    const std::function<void(const OrderedJson&)> whole = [&](const OrderedJson& j) {
        CHECK_FALSE(j.is_null());
        if (!j.is_structured()) return;
        for (const auto& entry : j.items()) whole(entry.value());
    };
    for (std::uint64_t i = 0; i < 8; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            const Tuned t(p);
            if (!t.tuning.computed) continue;
            OrderedJson r = t.report();
            REQUIRE(r.is_object());
            for (const char* key : {"line_up", "pretension", "sequence"}) {
                REQUIRE(r.contains(key));
                whole(r[key]);
            }
        }
}

TEST_CASE("tuning sentences: a rigger's words for one take-up") {
    const Tuned t(support::go_plan());
    const Telling telling{k_english};
    const Sentences ties = tie_sentences({telling, t.plan, t.e, t.tuning}, t.tuning.rigged, k_rigged);
    REQUIRE(ties.size() == 4);
    CHECK(ties[0].starts_with("Take in back right 10 mm: back right +"));
    CHECK(holds(ties[0], ", back left -"));
    CHECK(holds(ties[0], ", left +"));
    CHECK(any_holds(t.told(k_english, UnitSystem::Imperial), "lbf"));
    CHECK_FALSE(any_holds(t.told(k_english, UnitSystem::Imperial), " N"));
}

TEST_CASE("tuning sentences: a guy that would go slack on the way, and one that is") {
    Plan p = support::exact(support::go_plan());
    for (GuyPlan& g : p.guys) g.pretension_kN = 0.01;
    const Tuned t(p);
    CHECK(any_holds(t.told(k_english), "(slack after "));
    p.guys.push_back(support::guy("loose", 0.0, 30.0));
    p.guys.back().pretension_kN = 0.0;
    for (std::size_t i = 0; i < 2; ++i) p.guys[i].pretension_kN = 0.0;
    p.guys[2].pretension_kN = p.guys[3].pretension_kN = 1.0;  // the head comes forward
    CHECK(any_holds(Tuned(p).told(k_english), "Guy loose hangs slack: nothing happens until "));
}

TEST_CASE("tuning sentences: whole in both languages, for random rigs of every structure") {
    for (std::uint64_t i = 0; i < 8; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            const Tuned t(p);
            if (!t.tuning.computed) continue;
            for (const Language& words : {k_english, k_french})
                for (const std::string& s : t.told(words)) {
                    CAPTURE(s);
                    CHECK_FALSE(s.empty());
                    CHECK_FALSE(holds(s, "{"));
                    CHECK_FALSE(holds(s, "  "));
                    CHECK_FALSE(holds(s, " nan"));
                    CHECK_FALSE(holds(s, " inf"));
                    CHECK((s.ends_with(".") || s.ends_with(". ")));
                }
        }
}

TEST_CASE("tuning words: the two languages put in the same things") {
    for (std::size_t i = 0; i < k_tuning_text_count; ++i) {
        CAPTURE(std::string(k_english.tuning.lines[i].text));
        CHECK(marks(k_english.tuning.lines[i].text) == marks(k_french.tuning.lines[i].text));
    }
    for (std::size_t i = 0; i < k_step_kind_count; ++i) {
        CAPTURE(std::string(k_english.tuning.steps[i].text));
        CHECK(marks(k_english.tuning.steps[i].text) == marks(k_french.tuning.steps[i].text));
    }
    CHECK(marks(k_english.tuning.eases) == marks(k_french.tuning.eases));
    CHECK(marks(k_english.tuning.lean) == marks(k_french.tuning.lean));
}

TEST_CASE("card: with the tuning it has its sections, fits 100 columns, and shows none of it while inputs are missing") {
    const Plan p = support::usual_plan();
    const Evaluation e = evaluate(p);
    const Tuning tuning = tune(p, e);
    const std::string card = card_text({k_english}, p, e, tuning);
    for (const char* heading :
         {"What taking in a guy does, as rigged\n", "Lining up with the force\n", "Rigging, step by step\n", "Taking down, step by step\n"})
        CHECK(holds(card, heading));
    CHECK_FALSE(holds(card_text({k_english}, p, e), "step by step"));
    for (std::size_t at = 0, end = 0; at < card.size(); at = end + 1) {
        end = card.find('\n', at);
        CHECK(characters(std::string_view(card).substr(at, end - at)) <= k_card_columns);
    }
    const Plan missing = support::full_plan();
    const Evaluation not_checked = evaluate(missing);
    REQUIRE(not_checked.verdict == Verdict::NotChecked);
    CHECK_FALSE(holds(card_text({k_english}, missing, not_checked, tune(missing, not_checked)), "step by step"));
}
