#include "wasm/screens/reasons.hpp"

#include "engine/codec/english.hpp"
#include "engine/codec/sentences.hpp"

namespace guywright::screens {
namespace {

/// "30 deg" as "30\u00B0": the command line keeps to plain letters, the screen need not.
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

}  // namespace

std::string check_sentence(const app::State& state, const Check& check) {
    return with_degree_signs(sentence(k_english, state.plan, state.evaluation, check));
}

std::string reason(const app::State& state) {
    const Evaluation& e = state.evaluation;
    if (!e.faults.empty()) return to_string(e.faults.front());
    if (!e.not_measured.empty()) return std::to_string(e.not_measured.size()) + (e.not_measured.size() == 1 ? " value" : " values") + " still to enter";
    if (state.sweep && e.verdict == Verdict::NotChecked) return "Still checking what measuring error could do\u2026";
    return e.closest.empty() ? std::string() : check_sentence(state, e.closest.front());
}

int caution_count(const Evaluation& e) {
    int count = 0;
    e.worst.for_each([&](const Check& c) { count += c.status == CheckStatus::Caution ? 1 : 0; });
    return count;
}

}  // namespace guywright::screens
