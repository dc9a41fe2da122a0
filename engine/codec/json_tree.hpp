#pragma once
#include "engine/plan/fault.hpp"
#include "engine/plan/fault_text.hpp"

#include <nlohmann/json.hpp>

#include <cctype>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace guywright {

/// A JSON value as read: keys in the order given, numbers with the text they were written as.
struct JsonNode {
    enum class Kind : unsigned char { Null, Flag, Number, Text, List, Object };
    Kind kind = Kind::Null;
    bool flag = false;
    double number = 0.0;
    std::string text;               ///< of a text; of a number, its digits
    std::vector<JsonNode> items;    ///< of a list or an object
    std::vector<std::string> keys;  ///< of an object, one per item

    /// The first of that name; nullptr when there is none.
    [[nodiscard]] const JsonNode* find(std::string_view key) const {
        for (std::size_t i = 0; i < keys.size(); ++i)
            if (keys[i] == key) return &items[i];
        return nullptr;
    }
};

/// How deep lists and objects may stand inside each other; a plan needs five.
inline constexpr std::size_t k_deepest_nesting = 16;

struct JsonRead {
    bool whole = false;  ///< the text was JSON to its end; a key given twice is a fault all the same
    InputFaults faults;
    JsonNode root;
};

namespace detail {

/// "edge.face_deg" + "x"; the whole document is called "plan".
inline std::string joined(const std::string& path, std::string_view key) {
    const std::string shown = key.empty() ? "\"\"" : printable(key, k_longest_quote);
    return path.empty() ? shown : path + '.' + shown;
}
inline std::string path_or_plan(const std::string& path) { return path.empty() ? "plan" : path; }

struct Place {
    std::size_t line = 1, column = 1;  ///< both from 1; columns in characters
};

inline Place place_of(std::string_view text, std::size_t at) {
    Place place;
    for (std::size_t i = 0; i < at && i < text.size(); ++i) {
        const bool continues = (static_cast<unsigned char>(text[i]) & 0xC0u) == 0x80u;
        if (text[i] == '\n') place = {place.line + 1, 1};
        else if (!continues) ++place.column;
    }
    return place;
}

inline std::string at_place(std::string_view text, std::size_t at) {
    const Place place = place_of(text, at);
    return " at line " + std::to_string(place.line) + ", column " + std::to_string(place.column);
}

inline bool is_word(char c) {
    const auto u = static_cast<unsigned char>(c);
    return std::isalnum(u) != 0 || c == '+' || c == '-' || c == '.' || c == '_';
}

/// The word, text or single character that ends at a byte or stands around it.
struct Found {
    std::size_t begin = 0;
    std::string_view text;
};

inline Found found_around(std::string_view text, std::size_t at, bool is_text) {
    if (at >= text.size()) return {text.size(), {}};
    std::size_t begin = at, end = at;
    if (is_text && at > 0) begin = std::min(text.rfind('"', at - 1), at);
    while (begin > 0 && is_word(text[at]) && is_word(text[begin - 1])) --begin;
    while (end < text.size() && is_word(text[end])) ++end;
    if (end == at) end += std::max<std::size_t>(decode_utf8(text, at).bytes, 1);
    return {begin, text.substr(begin, end - begin)};
}

inline bool looks_like_number(std::string_view word) {
    if (word.empty()) return false;
    const bool begins = std::isdigit(static_cast<unsigned char>(word[0])) != 0 || word[0] == '-' || word[0] == '+' || word[0] == '.';
    return begins || word == "NaN" || word == "nan" || word == "Infinity" || word == "inf";
}

/// What JSON would have allowed, from the library's own reason: "syntax error while parsing X - REASON; expected Y".
inline std::string expected_json(std::string_view found, std::string_view why) {
    constexpr std::string_view mark = "; expected ", dash = " - ", last_read = "; last read";
    const bool wrong_sign = why.find(" - unexpected ") != std::string_view::npos;
    if (const std::size_t at = why.rfind(mark); wrong_sign && at != std::string_view::npos) {
        const std::string_view wanted = why.substr(at + mark.size());
        if (wanted == "'}'" || wanted == "']'") return "a comma or " + std::string(wanted);
        if (wanted == "string literal") return "a key in double quotes";
        if (wanted == "end of input") return "nothing after the last }";
        return wanted == "':'" ? "':'" : "a value";
    }
    if (looks_like_number(found)) return "a number as JSON writes it, such as 12 or 0.5, never NaN or Infinity";
    const std::size_t from = why.find(dash);
    if (from == std::string_view::npos) return "JSON";
    const std::string_view reason = why.substr(from + dash.size());
    return "JSON (" + printable(reason.substr(0, reason.find(last_read)), 2 * k_longest_quote) + ")";
}

/// Receives the library's events and builds the tree; stops at the first thing that is not JSON.
class TreeBuilder {
public:
    TreeBuilder(std::string_view text, JsonRead& out) : text_(text), out_(out) {}

    bool null() {
        add(JsonNode::Kind::Null);
        return true;
    }
    bool boolean(bool v) {
        add(JsonNode::Kind::Flag).flag = v;
        return true;
    }
    bool number_integer(std::int64_t v) { return add_number(static_cast<double>(v), std::to_string(v)); }
    bool number_unsigned(std::uint64_t v) { return add_number(static_cast<double>(v), std::to_string(v)); }
    bool number_float(double v, const std::string& digits) { return add_number(v, digits); }
    bool string(std::string& v) {
        add(JsonNode::Kind::Text).text = std::move(v);
        return true;
    }
    bool binary(nlohmann::json::binary_t&) { return false; }
    bool start_object(std::size_t) { return open(JsonNode::Kind::Object); }
    bool start_array(std::size_t) { return open(JsonNode::Kind::List); }
    bool end_array() { return close(); }
    bool end_object() {
        find_repeated_keys(*open_.back().node);
        return close();
    }
    bool key(std::string& k) {
        open_.back().node->keys.push_back(std::move(k));
        return true;
    }
    bool parse_error(std::size_t bytes_read, const std::string&, const nlohmann::detail::exception& why) {
        // The library counts the byte it stumbled over.
        const std::string_view reason = why.what();
        const bool is_text = reason.find("unexpected string literal") != std::string_view::npos;
        const Found found = found_around(text_, bytes_read > 0 ? bytes_read - 1 : 0, is_text);
        std::string what = found.text.empty() ? "the end of the file" : "`" + printable(found.text, k_longest_quote) + "`";
        if (found.text == "\n" || found.text == "\r") what = "a line break";
        const std::string value = "not JSON (found " + what + at_place(text_, found.begin) + ")";
        out_.faults.push_back({path_or_plan(path_here()), value, expected_json(found.text, reason)});
        return false;
    }

private:
    struct Open {
        JsonNode* node;
        std::string path;
    };

    JsonNode& add(JsonNode::Kind kind) {
        JsonNode& node = open_.empty() ? out_.root : open_.back().node->items.emplace_back();
        node.kind = kind;
        return node;
    }
    bool add_number(double v, std::string digits) {
        JsonNode& node = add(JsonNode::Kind::Number);
        node.number = v;
        node.text = std::move(digits);
        return true;
    }
    bool open(JsonNode::Kind kind) {
        std::string path = path_here();
        if (open_.size() == k_deepest_nesting) {
            const std::string allowed = "at most " + std::to_string(k_deepest_nesting) + " levels";
            out_.faults.push_back({path_or_plan(path), "nested too deep", allowed});
            return false;
        }
        // A node only grows while it is the innermost, so pointers to the outer ones stay good.
        JsonNode& node = add(kind);
        open_.push_back({&node, std::move(path)});
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }

    /// Where the next value belongs; between a value and the next key, the object.
    [[nodiscard]] std::string path_here() const {
        if (open_.empty()) return "";
        const auto& [node, path] = open_.back();
        if (node->kind == JsonNode::Kind::List) return path + "[" + std::to_string(node->items.size()) + "]";
        return node->keys.size() > node->items.size() ? joined(path, node->keys.back()) : path;
    }

    void find_repeated_keys(const JsonNode& object) {
        std::vector<std::string_view> sorted(object.keys.begin(), object.keys.end());
        std::sort(sorted.begin(), sorted.end());
        for (std::size_t i = 1; i < sorted.size(); ++i) {
            const bool again = sorted[i] == sorted[i - 1];
            if (again && (i < 2 || sorted[i] != sorted[i - 2]))
                out_.faults.push_back({joined(open_.back().path, sorted[i]), "given more than once", "each key once"});
        }
    }

    std::string_view text_;
    JsonRead& out_;
    std::vector<Open> open_;
};

/// Bytes that no JSON document may hold. The library would take a zero byte for the end of the text.
inline void find_bad_bytes(std::string_view text, InputFaults& faults) {
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint c = decode_utf8(text, at);
        const bool space = c.value == U'\n' || c.value == U'\t' || c.value == U'\r';
        if (c.bytes == 0) faults.push_back({"plan", "not UTF-8" + at_place(text, at), "UTF-8 text"});
        else if (c.value < 0x20 && !space) faults.push_back({"plan", "a control character" + at_place(text, at), "text"});
        if (!faults.empty()) return;
        at += c.bytes;
    }
}

}  // namespace detail

/// Any bytes in; a whole tree or the reasons why not.
/// Its size is bounded by the text's: one node of some 100 bytes needs at least two bytes of text.
[[nodiscard]] inline JsonRead read_json(std::string_view text) {
    JsonRead out;
    detail::find_bad_bytes(text, out.faults);
    if (!out.faults.empty()) return out;
    detail::TreeBuilder builder(text, out);
    out.whole = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
    return out;
}

}  // namespace guywright
