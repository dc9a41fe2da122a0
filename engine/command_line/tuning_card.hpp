#pragma once
#include "engine/codec/tuning_sentences.hpp"
#include "engine/command_line/layout.hpp"

#include <string>
#include <string_view>

namespace guywright::detail {

inline std::string tuning_section(std::string_view heading, const Sentences& sentences, bool numbered) {
    if (sentences.empty()) return {};
    std::string out = "\n" + std::string(heading) + "\n";
    for (std::size_t i = 0; i < sentences.size(); ++i) out += wrapped(sentences[i], numbered ? padded_left(std::to_string(i + 1), 4) + ". " : "  - ");
    return out;
}

/// What the guys can be told to do, in sections.
inline std::string tuning_text(const TuningView& v) {
    Sentences up = sequence_sentences(v, v.tuning.sequence.up);
    if (v.tuning.sequence.front_tie_missing) up.insert(up.begin(), std::string(v.of(TuningText::FrontTieMissing)));
    return tuning_section(v.of(TuningText::TiesRigged), tie_sentences(v, v.tuning.rigged, k_rigged), false) +
           tuning_section(v.of(TuningText::TiesHolding), tie_sentences(v, v.tuning.holding, k_holding), false) +
           tuning_section(v.of(TuningText::LineUpHeading), line_up_sentences(v), false) +
           tuning_section(v.of(TuningText::PretensionHeading), pretension_sentences(v), false) + tuning_section(v.of(TuningText::UpHeading), up, true) +
           tuning_section(v.of(TuningText::DownHeading), sequence_sentences(v, v.tuning.sequence.down), true);
}

}  // namespace guywright::detail
