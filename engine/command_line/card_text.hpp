#pragma once
#include "engine/codec/check_code.hpp"
#include "engine/codec/force_tables.hpp"
#include "engine/command_line/change_card.hpp"
#include "engine/command_line/layout.hpp"
#include "engine/command_line/tuning_card.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace guywright {

namespace detail {

inline constexpr std::size_t k_margins_shown = 3;

inline std::string heading(std::string_view words) { return "\n" + std::string(words) + "\n"; }

/// The sentences of every row with this status, leaving out the one already told.
inline std::string sentences_of(const CardView& v, CheckStatus status, const Check* told) {
    std::string out;
    v.e.worst.for_each([&](const Check& c) {
        const bool same = told != nullptr && c.id == told->id && c.subject == told->subject;
        if (c.status == status && !same) out += wrapped(sentence(v.telling, v.plan, v.e, c), "  - ");
    });
    return out;
}

inline std::string margin_line(const CardView& v, const Check& c) {
    const std::string percent = fixed_text(std::floor(100.0 * c.margin), 0) + " % ";
    const std::size_t width = std::max<std::size_t>(9, characters(percent));
    return wrapped(sentence(v.telling, v.plan, v.e, c), padded_left(percent, width));
}

inline std::string margins(const CardView& v) {
    std::string out;
    std::size_t shown = 0;
    for (const Check& c : v.e.closest) {
        if (!tells_margin(c) || shown == k_margins_shown) continue;
        out += margin_line(v, c);
        ++shown;
    }
    return out;
}

inline std::string section(std::string_view head, const std::string& body) { return body.empty() ? "" : heading(head) + body; }

inline std::string notes(const CardView& v, bool judged) {
    std::string out = "\n";
    if (judged) out += wrapped(v.words.card.measured_values, "");
    for (const std::string_view note : v.words.card.notes) out += wrapped(note, "");
    return out;
}

inline std::string judged_card(const CardView& v) {
    const CardWords& w = v.words.card;
    const Check* governing = v.e.closest.empty() ? nullptr : &v.e.closest[0];
    const std::string governs = governing == nullptr ? std::string(w.nothing_governs) : sentence(v.telling, v.plan, v.e, *governing);
    std::string out = heading(w.governs) + wrapped(governs, "  ");
    out += section(w.also_broken, sentences_of(v, CheckStatus::Fail, governing));
    out += section(w.margins, margins(v));
    const std::string cautions = sentences_of(v, CheckStatus::Caution, nullptr);
    out += heading(w.cautions) + (cautions.empty() ? "  " + std::string(w.none) + "\n" : cautions);
    if (!v.plan.guys.empty()) out += heading(in_force_unit(v, w.guys_table)) + TextTable{guys_table(v)}.text();
    out += heading(in_force_unit(v, w.legs_table)) + TextTable{legs_table(v)}.text();
    out += heading(in_force_unit(v, w.ropes_table)) + TextTable{ropes_table(v)}.text() + "\n";
    for (std::size_t i = 0; i < v.plan.ropes.size(); ++i) out += wrapped(edge_saving_sentence(v.telling, v.plan, v.e, i), "");
    return out;
}

inline std::string missing_inputs(const CardView& v) {
    std::string out;
    for (const std::string& path : v.e.not_measured) out += wrapped(path, "  - ");
    return heading(v.words.card.missing) + out;
}

}  // namespace detail

/// The card as text, at most 100 columns wide: the verdict first, why, what is near, what every part carries. While inputs
/// are missing it lists them and shows no number that could be mistaken for a result. Needs a plan without faults.
[[nodiscard]] inline std::string card_text(const Telling& telling, const Plan& plan, const Evaluation& e, const Tuning& tuning = {},
                                           const Counsel& counsel = {}) {
    const detail::CardView v{telling, plan, e};
    const Language& words = telling.words;
    const bool judged = e.verdict != Verdict::NotChecked;
    std::string out = std::string(words.of(e.verdict)) + "   " + std::string(words.card.check_code) + " " + check_code(plan) + "\n";
    if (!plan.title.empty()) out += wrapped(plan.title, "");
    out += judged ? detail::judged_card(v) : detail::missing_inputs(v);
    if (judged) out += detail::counsel_text(telling, plan, counsel);
    if (judged && tuning.computed) out += detail::tuning_text({telling, plan, e, tuning});
    return out + detail::notes(v, judged);
}

}  // namespace guywright
