#pragma once
#include <algorithm>
#include <string>

#include "engine/codec/plan_codec.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {

/// Why a plan file cannot be opened: its first faults, each on a line of its own, and how many more there are. `read` has faults.
[[nodiscard]] inline std::string unusable_file_told(const PlanRead& read, const Speech& speech) {
    constexpr std::size_t k_most_told = 8;
    std::string text = std::string(say(speech, words::k_file_unusable)) + "\n";
    const std::size_t told = std::min(read.faults.size(), k_most_told);
    for (std::size_t i = 0; i < told; ++i) text += "\n\u00B7 " + fault_told(language_of(speech), read.faults[i]);
    const std::size_t more = read.faults.size() - told + read.faults_not_listed;
    if (more > 0) text += "\n\u00B7 " + say(speech, words::k_more_faults, {{"{n}", std::to_string(more)}});
    return text;
}

}  // namespace guywright::app
