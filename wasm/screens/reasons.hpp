#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "engine/codec/sentences.hpp"
#include "wasm/app/state.hpp"

// The engine's sentences as they stand on screen.
namespace guywright::screens {

/// How the engine's sentences are told on screen and paper.
[[nodiscard]] Telling telling(const app::State& state);

/// "30 deg" as "30\u00B0": the command line keeps to plain letters, screen and paper need not.
[[nodiscard]] std::string with_degree_signs(std::string text);

/// Why the verdict is what it is, in one plain sentence.
[[nodiscard]] std::string reason(const app::State& state);

/// One row of the checks as a sentence, with degree signs.
[[nodiscard]] std::string check_sentence(const app::State& state, const Check& check);

/// What stands over every screen: the verdict and why; while practising that it is practice, and once it may be told what it
/// would be.
struct Headline {
    std::string_view key;  ///< in every language
    std::string word, why;
    std::optional<Verdict> verdict;  ///< none while practising: what is practised on is never shown as a verdict
};
[[nodiscard]] Headline headline(const app::State& state);

[[nodiscard]] int caution_count(const Evaluation& evaluation);

}  // namespace guywright::screens
