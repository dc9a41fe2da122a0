#include "wasm/app/names.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "engine/plan/fault_text.hpp"
#include "engine/plan/utf8.hpp"
#include "engine/plan/walk.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/app/plan_edits.hpp"

namespace guywright::app {
namespace {

// Lists of the plan.
constexpr const char* k_guys = "guys";
constexpr const char* k_ropes = "ropes";

// What people read.
constexpr const char* k_title_label = "Name of this plan";
constexpr const char* k_name_label = "Name of ";
constexpr const char* k_guy = "guy";
constexpr const char* k_rope = "rope";
constexpr const char* k_empty = "Type a name first: at least one letter or digit.";
constexpr const char* k_no_sign = "The app has no sign for ";
constexpr const char* k_other_signs = ". Write it with the letters of English, French or Spanish, digits and the usual signs.";
constexpr const char* k_gone = "There is no such part in this plan any more.";
constexpr const char* k_at_the_end = "It is at the end of the list already.";

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

/// Signs of wasm/platform/fonts.cpp that a name may hold: what is not drawn as it was typed is worse than refused.
bool is_drawn(char32_t c) { return (c >= 0x20 && c <= 0x7E) || (c > 0xA0 && c <= 0xFF && c != 0xAD) || (c >= 0x2010 && c <= 0x2026); }

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
bool says_something(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80U;
}

/// As the ear has them: "Back" and "back" are one name on the radio.
std::string as_heard(std::string_view text) {
    std::string heard(text);
    for (char& c : heard)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return heard;
}

std::string entry_of(std::string_view list, std::size_t index) { return std::string(list) + "[" + std::to_string(index) + "]"; }

template <class T>
std::string refuse_taken(const std::vector<T>& items, const char* list, const char* what, const std::string& path, const std::string& name) {
    for (std::size_t i = 0; i < items.size(); ++i)
        if (!path.starts_with(entry_of(list, i)) && as_heard(items[i].name) == as_heard(name))
            return std::string("Another ") + what + " is called " + in_quotes(items[i].name) + ". Every " + what + " needs a name of its own.";
    return {};
}

std::string refuse_text(const Plan& plan, const std::string& path, const std::string& text, std::size_t longest) {
    const std::size_t characters = look_at(text).characters;
    if (std::none_of(text.begin(), text.end(), says_something)) return k_empty;
    if (characters > longest) return "That is " + std::to_string(characters) + " characters; at most " + std::to_string(longest) + " fit.";
    if (const std::string sign = undrawn(text); !sign.empty()) return k_no_sign + in_quotes(sign) + k_other_signs;
    if (path.starts_with(k_guys)) return refuse_taken(plan.guys, k_guys, k_guy, path, text);
    if (path.starts_with(k_ropes)) return refuse_taken(plan.ropes, k_ropes, k_rope, path, text);
    return {};
}

template <class T>
Edited move_entry(Plan& plan, std::vector<T>& items, const char* list, std::size_t at, bool up) {
    if (at >= items.size()) return {k_gone, {}};
    if (up ? at == 0 : at + 1 == items.size()) return {k_at_the_end, {}};
    const std::size_t to = up ? at - 1 : at + 1;
    std::swap(items[at], items[to]);
    swap_not_measured(plan, list, at, to);
    return {{}, order_item(list, to), entry_of(list, to)};
}

}  // namespace

std::optional<TextWish> text_wish(const Plan& plan, std::string_view path) {
    Plan copy = plan;   // the finder hands out writable places
    const TextRef ref = find_text(copy, path);
    if (ref.text == nullptr) return std::nullopt;
    const std::string label = path == "title" ? k_title_label : k_name_label + std::string(path.starts_with(k_guys) ? k_guy : k_rope) + " " + *ref.text;
    return TextWish{std::string(path), label, *ref.text};
}

std::string order_item(std::string_view list, std::size_t index) { return "order of " + entry_of(list, index); }

Edited edit(Plan& plan, const SetText& wish) {
    const TextRef ref = find_text(plan, wish.path);
    if (ref.text == nullptr) return {k_gone, {}};
    std::string text = trimmed(wish.value);
    std::string refused = refuse_text(plan, wish.path, text, ref.longest);
    if (!refused.empty()) return {std::move(refused), {}};
    *ref.text = std::move(text);
    return {};
}

Edited edit(Plan& plan, const MoveGuy& wish) { return move_entry(plan, plan.guys, k_guys, wish.guy, wish.up); }

Edited edit(Plan& plan, const MoveRope& wish) { return move_entry(plan, plan.ropes, k_ropes, wish.rope, wish.up); }

}  // namespace guywright::app
