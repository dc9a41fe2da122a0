#pragma once
#include "engine/codec/change_sentences.hpp"
#include "engine/codec/force_tables.hpp"
#include "engine/command_line/layout.hpp"

#include <algorithm>
#include <cstddef>
#include <string>

namespace guywright::detail {

inline constexpr std::size_t k_advice_shown = 8;

inline std::string change_lines(const Telling& t, const Plan& plan, const SmallestChange& change) {
    std::string out = "\n" + std::string(t.words.changes.heading) + "\n";
    const std::size_t shown = std::min(k_advice_shown, change.advice().size());
    for (std::size_t i = 0; i < shown; ++i) out += wrapped(sentence(t, plan, change.advice()[i]), "  - ");
    if (const std::size_t more = change.advice().size() - shown; more > 0)
        out += wrapped(filled(t.words.changes.more, {{"{n}", std::to_string(more)}}), "    ");
    if (const OutOfReach* o = change.out_of_reach()) out += wrapped(sentence(t, *o), "  ");
    return out;
}

inline std::string anchor_lines(const Telling& t, const AnchorChoice& anchors) {
    std::string out;
    for (const auto* best : {&anchors.best_three(), &anchors.best_four()})
        if (!best->empty()) out += wrapped(sentence(t, best->front()), "  - ");
    return out.empty() ? out : "\n" + std::string(t.words.changes.anchors_heading) + "\n" + out;
}

/// What would change the verdict, and the best anchors of those found.
inline std::string counsel_text(const Telling& t, const Plan& plan, const Counsel& counsel) {
    std::string out;
    if (counsel.change) out += change_lines(t, plan, *counsel.change);
    if (counsel.anchors) out += anchor_lines(t, *counsel.anchors);
    return out;
}

}  // namespace guywright::detail
