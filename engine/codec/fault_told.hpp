#pragma once
#include "engine/codec/sentences.hpp"
#include "engine/plan/fault.hpp"

#include <algorithm>
#include <cctype>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace guywright {
namespace detail {

inline constexpr std::string_view k_phrase_hole = "{}";

/// A text that stands as it is in every language: a number with or without a unit, several of them, a quotation, a bare sign.
inline bool needs_no_words(std::string_view text) {
    if (text.empty() || (text.size() > 1 && (text.front() == '"' || text.front() == '\'' || text.front() == '`') && text.back() == text.front())) return true;
    const bool number = std::isdigit(static_cast<unsigned char>(text.front())) != 0 || ((text.front() == '-' || text.front() == '+') && text.size() > 1);
    return number || text == "NaN" || text == "Infinity" || text == "-Infinity" || text.size() == 1;
}

inline std::string comma_in_numbers(std::string_view text, char mark) {
    std::string out(text);
    if (!text.empty() && std::isdigit(static_cast<unsigned char>(text.front())) == 0 && text.front() != '-') return out;
    for (std::size_t i = 1; i + 1 < out.size(); ++i)
        if (out[i] == '.' && std::isdigit(static_cast<unsigned char>(out[i - 1])) != 0 && std::isdigit(static_cast<unsigned char>(out[i + 1])) != 0)
            out[i] = mark;
    return out;
}

/// Where the text of a hole ends, before `until`; a quotation is not left before its end. npos where it is not there.
inline std::size_t end_of_hole(std::string_view text, std::string_view until, bool last) {
    if (until.empty()) return text.empty() ? std::string_view::npos : text.size();
    if (last) return text.size() > until.size() && text.ends_with(until) ? text.size() - until.size() : std::string_view::npos;
    const bool quoted = !text.empty() && (text.front() == '"' || text.front() == '`');
    std::size_t end = text.find(until, 1);
    while (quoted && end != std::string_view::npos && (end < 2 || text.substr(0, end).find(text.front(), 1) == std::string_view::npos))
        end = text.find(until, end + 1);
    return end;
}

/// What stands in the holes of `phrase` where `text` is that phrase; a hole holds something and is as short as can be.
inline std::optional<std::vector<std::string_view>> holes_in(std::string_view phrase, std::string_view text) {
    std::vector<std::string_view> held;
    for (;;) {
        const std::size_t hole = phrase.find(k_phrase_hole);
        if (hole == std::string_view::npos) return phrase == text ? std::optional(held) : std::nullopt;
        if (!text.starts_with(phrase.substr(0, hole))) return std::nullopt;
        text.remove_prefix(hole);
        phrase.remove_prefix(hole + k_phrase_hole.size());
        const std::string_view until = phrase.substr(0, phrase.find(k_phrase_hole));
        const std::size_t end = end_of_hole(text, until, until.size() == phrase.size());
        if (end == std::string_view::npos) return std::nullopt;
        held.push_back(text.substr(0, end));
        text.remove_prefix(end);
    }
}

inline std::optional<std::string> phrase_told(const FaultLanguage& faults, char mark, std::string_view text);

/// The phrase with what its holes hold in words of the same language; nothing where one of them has none.
inline std::optional<std::string> filled_phrase(const FaultLanguage& faults, char mark, const FaultWords& words, const std::vector<std::string_view>& held) {
    std::string_view phrase = words.told;
    std::string out;
    for (const std::string_view inside : held) {
        const std::size_t hole = phrase.find(k_phrase_hole);
        if (hole == std::string_view::npos) break;  // this language leaves it out
        const std::optional<std::string> told = words.names ? std::string(inside) : phrase_told(faults, mark, inside);
        if (!told) return std::nullopt;
        out.append(phrase.substr(0, hole)).append(*told);
        phrase.remove_prefix(hole + k_phrase_hole.size());
    }
    return out.append(phrase);
}

/// Nothing where the language has no words for it.
inline std::optional<std::string> phrase_told(const FaultLanguage& faults, char mark, std::string_view text) {
    for (const FaultWords& words : faults.phrases)
        if (const auto held = holes_in(words.english, text))
            if (auto told = filled_phrase(faults, mark, words, *held)) return told;
    if (needs_no_words(text)) return comma_in_numbers(text, mark);
    return std::nullopt;
}

}  // namespace detail

/// True where the language has words for every part of the fault.
[[nodiscard]] inline bool has_words_for(const Language& words, const InputFault& f) {
    if (words.faults.sentence.empty()) return true;
    return detail::phrase_told(words.faults, words.decimal_mark, f.value).has_value() &&
           detail::phrase_told(words.faults, words.decimal_mark, f.allowed).has_value();
}

/// "guys[1].inclination_deg is 95; allowed: 2 to 88 deg". A part without words is told in English.
[[nodiscard]] inline std::string fault_told(const Language& words, const InputFault& f) {
    if (words.faults.sentence.empty()) return to_string(f);
    const auto told = [&](const std::string& text) { return detail::phrase_told(words.faults, words.decimal_mark, text).value_or(text); };
    return detail::filled(words.faults.sentence, {{"{path}", f.path}, {"{value}", told(f.value)}, {"{allowed}", told(f.allowed)}});
}

}  // namespace guywright
