#pragma once
#include "engine/codec/plan_reader.hpp"
#include "engine/codec/plan_writer.hpp"

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace guywright {

struct PlanRead {
    InputFaults faults;  ///< all of them, the first 100 listed; the plan is usable only when this is empty
    std::size_t faults_not_listed = 0;
    Plan plan;  ///< after a fault an empty Plan{}, which find_faults() refuses
    [[nodiscard]] bool ok() const { return faults.empty(); }
};

namespace detail {

inline constexpr const char* k_format_key = "format";
inline constexpr const char* k_version_key = "version";

/// What a file says of itself.
struct Format {
    std::string_view name;
    int version;
    std::string_view what;  ///< for people
};

/// False when the file is of another kind or version: its other keys would only make noise.
inline bool check_header(const JsonNode& root, const Format& wanted, FaultList& faults) {
    const JsonNode* format = root.find(k_format_key);
    const bool is_text = format != nullptr && format->kind == JsonNode::Kind::Text;
    if (!is_text || format->text != wanted.name) faults.add(k_format_key, format == nullptr ? "missing" : described(*format), in_quotes(wanted.name));
    if (is_text && format->text != wanted.name) return false;

    const std::string allowed = std::to_string(wanted.version);
    const JsonNode* version = root.find(k_version_key);
    const bool is_number = version != nullptr && version->kind == JsonNode::Kind::Number;
    if (is_number && version->number == wanted.version) return true;
    const bool newer = is_number && version->number > wanted.version;
    faults.add(k_version_key, version == nullptr ? "missing" : described(*version),
               newer ? allowed + "; this program is older than the " + std::string(wanted.what) + ": update it" : allowed);
    return !is_number;
}

/// Adds what find_faults() says, except about keys that could not even be read.
inline void add_range_faults(const auto& whole, FaultList& faults) {
    std::set<std::string> told;
    for (const InputFault& f : faults.listed) told.insert(f.path);
    for (InputFault& f : find_faults(whole)) {
        const bool inside_told = std::any_of(told.begin(), told.end(), [&](const std::string& t) {
            return f.path.starts_with(t) && (f.path.size() == t.size() || f.path[t.size()] == '.' || f.path[t.size()] == '[');
        });
        if (!inside_told) faults.add(std::move(f.path), std::move(f.value), std::move(f.allowed));
    }
}

inline bool has_fitting_size(std::string_view utf8, const Format& wanted, FaultList& faults) {
    if (utf8.empty()) faults.add(std::string(wanted.what), "empty", "a " + std::string(wanted.what) + " file");
    if (utf8.size() > k_most_plan_bytes)
        faults.add(std::string(wanted.what), std::to_string(utf8.size()) + " bytes long", "at most " + std::to_string(k_most_plan_bytes) + " bytes");
    return faults.empty();
}

inline void read_tree(const JsonNode& root, const Format& wanted, auto& whole, FaultList& faults) {
    if (root.kind != JsonNode::Kind::Object) return faults.add(std::string(wanted.what), described(root), "an object");
    if (!check_header(root, wanted, faults)) return;
    PlanReader(root, faults).read(whole, {k_format_key, k_version_key});
    add_range_faults(whole, faults);
}

/// Any bytes into a plan or a catalogue; left as made where there are faults.
template <class Whole>
FaultList read_document(std::string_view utf8, const Format& wanted, Whole& whole) {
    FaultList faults;
    if (!has_fitting_size(utf8, wanted, faults)) return faults;
    JsonRead json = read_json(utf8);
    for (InputFault& f : json.faults) faults.add(std::move(f.path), std::move(f.value), std::move(f.allowed));
    if (json.whole) read_tree(json.root, wanted, whole, faults);
    if (!faults.empty()) whole = Whole{};
    return faults;
}

}  // namespace detail

/// Reads a plan file of any bytes. Every fault names its path, what was found and what is allowed.
[[nodiscard]] inline PlanRead read_plan(std::string_view utf8) {
    PlanRead read;
    detail::FaultList faults = detail::read_document(utf8, {k_plan_format, k_plan_version, "plan"}, read.plan);
    read.faults = std::move(faults.listed);
    read.faults_not_listed = faults.more;
    return read;
}

/// The plan file, for people: two spaces, keys in the order of the format, every tolerance and limit written out so that
/// a saved plan keeps what it was judged by.
[[nodiscard]] inline std::string write_plan(const Plan& plan) { return json_text(detail::plan_json(plan), 2) + "\n"; }

/// The same on one line: what a check code or a share code is made from.
[[nodiscard]] inline std::string canonical_plan_text(const Plan& plan) { return json_text(detail::plan_json(plan), -1); }

}  // namespace guywright
