#include "wasm/app/names.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "engine/plan/fault_text.hpp"
#include "engine/plan/utf8.hpp"
#include "engine/plan/walk.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/app/plan_edits.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

// Lists of the plan.
constexpr const char* k_guys = "guys";
constexpr const char* k_ropes = "ropes";

struct TextRef {
    std::string* text = nullptr;
    std::size_t longest = 0;
};

struct TextFinder : SeesNothing {
    std::string_view wanted;
    TextRef found{};
    explicit TextFinder(std::string_view path) : wanted(path) {}
    void text(const std::string& path, std::string& t, std::size_t longest, bool lines_allowed) {
        if (path == wanted && !lines_allowed && !path.starts_with("not_measured")) found = {&t, longest};
    }
};

TextRef find_text(Plan& plan, std::string_view path) {
    TextFinder finder(path);
    walk(plan, finder);
    return finder.found;
}

std::string trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

/// Signs of wasm/platform/fonts.cpp that a name may hold: what is not drawn as it was typed is worse than refused. Of those
/// beyond Latin-1 the face has few letters.
bool is_drawn(char32_t c) {
    constexpr std::u32string_view k_letters = U"\u0152\u0153\u0160\u0161\u0178\u0192\u20AC", k_not_there = U"\u2011\u2012\u2017\u201B\u201F\u2024\u2025";
    if ((c >= 0x20 && c <= 0x7E) || (c > 0xA0 && c <= 0xFF && c != 0xAD)) return true;
    return k_letters.find(c) != std::u32string_view::npos || (c >= 0x2010 && c <= 0x2026 && k_not_there.find(c) == std::u32string_view::npos);
}

/// The first character that cannot be drawn; empty where there is none.
std::string undrawn(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint c = decode_utf8(text, at);
        const std::size_t bytes = std::max<std::size_t>(1, c.bytes);
        if (c.bytes == 0 || !is_drawn(c.value)) return std::string(text.substr(at, bytes));
        at += bytes;
    }
    return {};
}

/// A letter or a digit, or half of a sign beyond ASCII.
bool says_something(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80U; }

/// As the ear has them: "Back" and "back" are one name on the radio.
std::string as_heard(std::string_view text) {
    std::string heard(text);
    for (char& c : heard)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return heard;
}

std::string entry_of(std::string_view list, std::size_t index) { return std::string(list) + "[" + std::to_string(index) + "]"; }

template <class T>
std::string refuse_taken(const std::vector<T>& items, const char* list, const Speech& speech, const Said& why, const std::string& path,
                         const std::string& name) {
    for (std::size_t i = 0; i < items.size(); ++i)
        if (!path.starts_with(entry_of(list, i)) && as_heard(items[i].name) == as_heard(name)) return say(speech, why, {{"{name}", in_quotes(items[i].name)}});
    return {};
}

std::string refuse_text(const Plan& plan, const Speech& speech, const std::string& path, const std::string& text, std::size_t longest) {
    const std::size_t characters = look_at(text).characters;
    if (std::none_of(text.begin(), text.end(), says_something)) return std::string(say(speech, words::k_empty_name));
    if (characters > longest) return say(speech, words::k_too_long, {{"{n}", std::to_string(characters)}, {"{most}", std::to_string(longest)}});
    if (const std::string sign = undrawn(text); !sign.empty()) return say(speech, words::k_no_sign, {{"{sign}", in_quotes(sign)}});
    if (path.starts_with(k_guys)) return refuse_taken(plan.guys, k_guys, speech, words::k_guy_name_taken, path, text);
    if (path.starts_with(k_ropes)) return refuse_taken(plan.ropes, k_ropes, speech, words::k_rope_name_taken, path, text);
    return {};
}

template <class T>
Edited move_entry(Plan& plan, std::vector<T>& items, const char* list, std::size_t at, bool up, const Speech& speech) {
    if (at >= items.size()) return {std::string(say(speech, words::k_gone)), {}};
    if (up ? at == 0 : at + 1 == items.size()) return {std::string(say(speech, words::k_at_the_end)), {}};
    const std::size_t to = up ? at - 1 : at + 1;
    std::swap(items[at], items[to]);
    swap_not_measured(plan, list, at, to);
    return {{}, order_item(list, to), entry_of(list, to)};
}

std::string label_of(const Speech& speech, std::string_view path, const std::string& name) {
    if (path == "title") return std::string(say(speech, words::k_title_label));
    return say(speech, path.starts_with(k_guys) ? words::k_guy_label : words::k_rope_label, {{"{name}", name}});
}

}  // namespace

std::optional<TextWish> text_wish(const Plan& plan, std::string_view path, const Speech& speech) {
    Plan copy = plan;  // the finder hands out writable places
    const TextRef ref = find_text(copy, path);
    if (ref.text == nullptr) return std::nullopt;
    return TextWish{std::string(path), label_of(speech, path, *ref.text), *ref.text};
}

std::string order_item(std::string_view list, std::size_t index) { return "order of " + entry_of(list, index); }

Edited edit(Plan& plan, const SetText& wish, const Speech& speech) {
    const TextRef ref = find_text(plan, wish.path);
    if (ref.text == nullptr) return {std::string(say(speech, words::k_gone)), {}};
    std::string text = trimmed(wish.value);
    std::string refused = refuse_text(plan, speech, wish.path, text, ref.longest);
    if (!refused.empty()) return {std::move(refused), {}};
    *ref.text = std::move(text);
    return {};
}

Edited edit(Plan& plan, const MoveGuy& wish, const Speech& speech) { return move_entry(plan, plan.guys, k_guys, wish.guy, wish.up, speech); }

Edited edit(Plan& plan, const MoveRope& wish, const Speech& speech) { return move_entry(plan, plan.ropes, k_ropes, wish.rope, wish.up, speech); }

}  // namespace guywright::app
