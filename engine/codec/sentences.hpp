#pragma once
#include "engine/base/shown_unit.hpp"
#include "engine/cases/edge_saving.hpp"
#include "engine/codec/words.hpp"
#include "engine/plan/kind_name.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace guywright {

/// `v` with so many decimals, "-0.0" as "0.0".
[[nodiscard]] inline std::string fixed_text(double v, int decimals) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, v);
    std::string out = text;
    const bool zero = out.find_first_not_of("-0.") == std::string::npos;
    return zero && out.front() == '-' ? out.substr(1) : out;
}

/// "12 deg", "0.43 kN", "14 %"
[[nodiscard]] inline std::string with_unit(std::string text, std::string_view unit) {
    if (!unit.empty()) text.append(" ").append(unit);
    return text;
}

/// What the plan calls the number at `path`, for people: "guys[1].bearing_deg" of a guy named left is "left: bearing_deg".
[[nodiscard]] inline std::string measurement_name(const Plan& plan, std::string_view path) {
    const auto named = [&](std::string_view list, const auto& items) -> std::string {
        const std::size_t at = list.size() + 1;
        if (!path.starts_with(list) || path.size() <= at || path[list.size()] != '[') return {};
        const auto index = static_cast<std::size_t>(path[at] - '0');
        const std::size_t key = path.find("].");
        return index < items.size() && key != std::string_view::npos ? items[index].name + ": " + std::string(path.substr(key + 2)) : std::string();
    };
    std::string name = named("guys", plan.guys);
    if (name.empty()) name = named("ropes", plan.ropes);
    return name.empty() ? std::string(path) : name;
}

/// What to call the measurement at a path of the plan.
using NameOfMeasurement = std::string (*)(const Plan& plan, std::string_view path);

/// How things are told: the language, the units, and what measurements are called.
struct Telling {
    const Language& words;
    UnitSystem units = UnitSystem::Metric;
    NameOfMeasurement name_of = measurement_name;
};

/// `v` with so many decimals and the language's decimal mark: "0.43", "0,43".
[[nodiscard]] inline std::string number_told(const Language& words, double v, int decimals) {
    std::string text = fixed_text(v, decimals);
    std::replace(text.begin(), text.end(), '.', words.decimal_mark);
    return text;
}

/// A quantity kept in `unit`, as it is told: "0.43 kN".
[[nodiscard]] inline std::string quantity(const Telling& t, double kept, std::string_view unit) {
    const ShownUnit shown = shown_unit(unit, t.units);
    return with_unit(number_told(t.words, kept * shown.per_kept, shown.decimals), shown.name);
}

namespace detail {

struct ValueAndLimit {
    std::string value, limit;
};

/// Both with as many decimals as it takes to see which is larger: never "30 deg, at least 30 deg".
inline ValueAndLimit value_and_limit(const Telling& t, const Check& c) {
    constexpr int most_decimals = 6;
    const ShownUnit unit = shown_unit(info(c.id).unit, t.units);
    for (int decimals = unit.decimals;; ++decimals) {
        std::string value = number_told(t.words, c.value * unit.per_kept, decimals);
        std::string limit = number_told(t.words, c.limit * unit.per_kept, decimals);
        if (value != limit || c.value == c.limit || decimals == most_decimals)
            return {with_unit(std::move(value), unit.name), with_unit(std::move(limit), unit.name)};
    }
}

struct Replacement {
    std::string_view mark;
    std::string with;
};

/// Puts the replacements in place of their marks; what is put in is not searched again.
inline std::string filled(std::string_view words, std::initializer_list<Replacement> replacements) {
    std::string out;
    while (!words.empty()) {
        const Replacement* hit = nullptr;
        for (const Replacement& r : replacements)
            if (words.starts_with(r.mark)) hit = &r;
        if (hit != nullptr) out += hit->with;
        else out += words.front();
        words.remove_prefix(hit != nullptr ? hit->mark.size() : 1);
    }
    return out;
}

/// The first letter, of ASCII or of Latin-1 in UTF-8, large.
inline void capitalise(std::string& sentence) {
    const auto byte = [&](std::size_t i) { return i < sentence.size() ? static_cast<unsigned char>(sentence[i]) : 0U; };
    if (byte(0) >= 'a' && byte(0) <= 'z') sentence[0] = static_cast<char>(byte(0) - 'a' + 'A');
    const bool latin_1 = byte(0) == 0xC3U && byte(1) >= 0xA0U && byte(1) <= 0xBEU && byte(1) != 0xB7U;  // not the sign of division
    if (latin_1) sentence[1] = static_cast<char>(byte(1) - 0x20U);
}

/// The rope or guy a case is about.
inline std::string part_name(const Plan& plan, const Case& c) {
    if (c.id == CaseId::GuyLost) return c.part < plan.guys.size() ? plan.guys[c.part].name : "";
    return c.part < plan.ropes.size() ? plan.ropes[c.part].name : "";
}

/// Where a check measures from the edge line: the sign differs, see check_drawing().
inline std::string edge_text(const Telling& t, const Check& c) {
    const bool is_x = c.id == CheckId::AnchorHangs || c.id == CheckId::FootHangs;
    const double behind_m = is_x ? -c.value : c.value;
    return filled(behind_m < 0.0 ? t.words.past_edge : t.words.behind_edge, {{"{d}", quantity(t, std::abs(behind_m), "m")}});
}

}  // namespace detail

/// The guy, rope or limit a row is about; a leg's number where there are several; else nothing.
[[nodiscard]] inline std::string subject_name(const Language& words, const Plan& plan, const Check& c) {
    switch (info(c.id).subject) {
        case Subject::Site: return "";
        case Subject::Guy: return plan.guys[c.subject].name;
        case Subject::Rope: return plan.ropes[c.subject].name;
        case Subject::Limit: return std::string(k_limit_rules[c.subject].key);
        case Subject::Side: return std::string(words.sides[c.subject]);
        case Subject::Hobble: {
            const Hobble& h = plan.frame.hobbles[c.subject];
            return std::to_string(h.from + 1) + "-" + std::to_string(h.to + 1);
        }
        case Subject::Leg: return plan.frame.legs.size() > 1 ? std::to_string(c.subject + 1) : "";
    }
    return "";
}

/// "one rope takes all: main"
[[nodiscard]] inline std::string case_name(const Language& words, const Plan& plan, const Case& c) {
    return detail::filled(words.of(c.id).name, {{"{name}", detail::part_name(plan, c)}});
}

/// "when rope main takes all"; nothing for a check of the drawing.
[[nodiscard]] inline std::string case_phrase(const Language& words, const Plan& plan, const Evaluation& e, const Check& c) {
    if (c.case_index == k_no_case) return "";
    const Case& setup = e.outcomes[static_cast<std::size_t>(c.case_index)].setup;
    return detail::filled(words.of(setup.id).when, {{"{name}", detail::part_name(plan, setup)}});
}

namespace detail {

inline std::string_view form_of(const CheckWords& w, const Check& c) {
    if (c.at_worst && c.status == CheckStatus::Caution && !w.could.empty()) return w.could;
    return c.status == CheckStatus::Pass ? w.pass : c.status == CheckStatus::Caution ? w.caution : w.fail;
}

/// "This is the worst within measuring error, ..." after a sentence that does not say so itself.
inline std::string worst_text(const Telling& t, const Plan& plan, const Evaluation& e, const Check& c) {
    if (!c.at_worst || !c.has_margin || !t.words.of(c.id).could.empty()) return {};
    const auto spoiler = static_cast<std::size_t>(c.spoiler);
    if (c.spoiler == k_no_spoiler || spoiler >= e.spoilers.size()) return std::string(t.words.at_worst);
    return filled(t.words.at_worst_of, {{"{what}", t.name_of(plan, e.spoilers[spoiler])}});
}

}  // namespace detail

/// One plain sentence: subject, value, limit, case; and a second one where measuring error is in it.
[[nodiscard]] inline std::string sentence(const Telling& t, const Plan& plan, const Evaluation& e, const Check& c) {
    const std::string name = subject_name(t.words, plan, c);
    const bool one_of_several_legs = info(c.id).subject == Subject::Leg && !name.empty();
    const detail::ValueAndLimit numbers = detail::value_and_limit(t, c);
    std::string out =
        detail::filled(detail::form_of(t.words.of(c.id), c), {{"{name}", name},
                                                              {"{leg}", one_of_several_legs ? detail::filled(t.words.leg_prefix, {{"{n}", name}}) : ""},
                                                              {"{value}", numbers.value},
                                                              {"{limit}", numbers.limit},
                                                              {"{edge}", detail::edge_text(t, c)},
                                                              {"{when}", case_phrase(t.words, plan, e, c)}});
    detail::capitalise(out);
    return out.empty() ? out : out + detail::worst_text(t, plan, e, c);
}

/// "Rope main: raising takes 1.00 times the load at the edge; flat on the ground it would take 1.60 times."
[[nodiscard]] inline std::string edge_saving_sentence(const Telling& t, const Plan& plan, const Evaluation& e, std::size_t rope) {
    const EdgeSaving s = edge_saving(e.model, e.model.ropes[rope]);
    return detail::filled(
        t.words.edge_saving,
        {{"{name}", plan.ropes[rope].name}, {"{rigged}", number_told(t.words, s.as_rigged, 2)}, {"{ground}", number_told(t.words, s.on_ground, 2)}});
}

}  // namespace guywright
