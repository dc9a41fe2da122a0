#include "wasm/screens/reasons.hpp"

#include <cctype>

#include "wasm/app/inputs.hpp"
#include "wasm/screens/lesson_items.hpp"
#include "wasm/widgets/verdict_mark.hpp"
#include "wasm/words/card.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

/// "the load of rope main" for "ropes[0].load_kg": what the slider is called, and whose it is. The path itself where there is none.
template <app::Tongue tongue>
std::string shown_name(const Plan& plan, std::string_view path) {
    const app::Speech speech{tongue, {}};
    const app::Input* input = app::find_input(path);
    if (input == nullptr) return std::string(path);
    std::string label(say(speech, input->label));
    if (static_cast<unsigned char>(label[0]) < 0x80U) label[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(label[0])));
    const std::size_t i = app::index_in(path);
    if (path.starts_with("guys[") && i < plan.guys.size()) return say(speech, words::k_input_of_guy, {{"{label}", label}, {"{name}", plan.guys[i].name}});
    if (path.starts_with("ropes[") && i < plan.ropes.size()) return say(speech, words::k_input_of_rope, {{"{label}", label}, {"{name}", plan.ropes[i].name}});
    const bool of_a_leg = path.find('[') != std::string::npos && plan.frame.legs.size() > 1;
    return say(speech, of_a_leg ? words::k_input_of_leg : words::k_the_input, {{"{label}", label}, {"{n}", std::to_string(i + 1)}});
}

}  // namespace

Telling telling(const app::State& state) {
    const app::Speech& speech = state.speech;
    return {language_of(speech), speech.units, speech.tongue == app::Tongue::French ? shown_name<app::Tongue::French> : shown_name<app::Tongue::English>};
}

std::string with_degree_signs(std::string text) {
    constexpr std::string_view word = " deg";
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        const std::size_t after = at + word.size();
        const bool ends = after >= text.size() || !std::isalpha(static_cast<unsigned char>(text[after]));
        const bool number = at > 0 && std::isdigit(static_cast<unsigned char>(text[at - 1]));
        if (ends && number) text.replace(at, word.size(), "\u00B0");
    }
    return text;
}

std::string check_sentence(const app::State& state, const Check& check) {
    return with_degree_signs(sentence(telling(state), state.plan, state.evaluation, check));
}

std::string reason(const app::State& state) {
    const Evaluation& e = state.evaluation;
    if (!e.faults.empty()) return fault_told(language_of(state.speech), e.faults.front());
    if (!e.not_measured.empty()) return say(state.speech, words::k_to_enter, e.not_measured.size());
    if (state.sweep && e.verdict == Verdict::NotChecked) return app::said(state, words::k_still_checking);
    return e.closest.empty() ? std::string() : check_sentence(state, e.closest.front());
}

Headline headline(const app::State& state) {
    const Verdict verdict = state.evaluation.verdict;
    const std::string_view word = language_of(state.speech).of(verdict);
    if (!state.practice) return {widgets::verdict_word(verdict), std::string(word), reason(state), verdict};
    if (state.practice->lesson) return {"PRACTICE", app::said(state, words::practice::k_practice_sign), lesson_line(state), std::nullopt};
    std::string why = app::said(state, state.practice->stage == app::Practising::Choosing ? words::practice::k_no_rig : words::practice::k_predict);
    if (!is_blind(state.practice)) why = app::said(state, words::practice::k_would_be, {{"{verdict}", std::string(word)}, {"{why}", reason(state)}});
    return {"PRACTICE", app::said(state, words::practice::k_practice_sign), std::move(why), std::nullopt};
}

int caution_count(const Evaluation& e) {
    int count = 0;
    e.worst.for_each([&](const Check& c) { count += c.status == CheckStatus::Caution ? 1 : 0; });
    return count;
}

}  // namespace guywright::screens
