#pragma once
#include "engine/codec/edit_distance.hpp"
#include "engine/codec/json_tree.hpp"
#include "engine/codec/plan_keys.hpp"
#include "engine/plan/describe.hpp"
#include "engine/plan/find_faults.hpp"
#include "engine/plan/kind_name.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace guywright::detail {

/// Faults are listed up to here; the rest are counted.
inline constexpr std::size_t k_most_faults_listed = 100;

struct FaultList {
    InputFaults listed;
    std::size_t more = 0;

    void add(std::string path, std::string value, std::string allowed) {
        if (listed.size() < k_most_faults_listed) listed.push_back({std::move(path), std::move(value), std::move(allowed)});
        else ++more;
    }
    [[nodiscard]] bool full() const { return listed.size() >= k_most_faults_listed; }
    [[nodiscard]] bool empty() const { return listed.empty(); }
};

inline std::string described(const JsonNode& node) {
    switch (node.kind) {
        case JsonNode::Kind::Null: return "null";
        case JsonNode::Kind::Flag: return node.flag ? "true" : "false";
        case JsonNode::Kind::Number: return printable(node.text, k_longest_quote);
        case JsonNode::Kind::Text: return in_quotes(node.text) + " (text)";
        case JsonNode::Kind::List: return "a list of " + count_text(node.items.size(), node.items.size());
        case JsonNode::Kind::Object: return "an object";
    }
    return "";
}

/// Takes a plan, or a catalogue, out of a JSON tree: right keys, right types, right counts. Whether the numbers are in range is asked
/// afterwards of find_faults(). What cannot be read is left so that no rule across keys stumbles over it.
class PlanReader {
public:
    PlanReader(const JsonNode& root, FaultList& faults) : object_(&root), faults_(faults) {}

    void read(auto& whole, std::vector<std::string_view> keys_already_read) {
        known_ = std::move(keys_already_read);
        describe(*this, whole);
        report_unknown_keys();
    }

    void number(std::string_view key, auto& v, const Range& r) {
        if (excluded_) return exclude(key);
        forget(v);
        required(key, "a number, " + range_text(r), [&](const JsonNode& n) { read_number(n, v, r); });
    }
    void number_or_null(std::string_view key, std::optional<double>& v, const Range& r) {
        required(key, range_text(r) + " or null", [&](const JsonNode& n) { read_number_or_null(n, v, r); });
    }
    void optional_number(std::string_view key, double& v, const Range& r) {
        optional(key, [&](const JsonNode& n) { read_number(n, v, r); });
    }
    void optional_number(std::string_view key, std::optional<double>& v, const Range& r) {
        optional(key, [&](const JsonNode& n) { read_number_or_null(n, v, r); });
    }
    void text(std::string_view key, std::string& t, std::size_t) {
        required(key, "text", [&](const JsonNode& n) { read_text(n, t); });
    }
    void optional_text(std::string_view key, std::string& t, std::size_t) {
        optional(key, [&](const JsonNode& n) { read_text(n, t); });
    }
    void kind(std::string_view key, FrameKind& kind) {
        std::string names;
        for (const KindName& k : k_kind_names) names.append(names.empty() ? "" : ", ").append(in_quotes(k.name));
        std::optional<FrameKind> read;
        required(key, names, [&](const JsonNode& n) {
            for (const KindName& k : k_kind_names)
                if (n.kind == JsonNode::Kind::Text && names_kind(n.text, k.name)) read = k.kind;
            if (!read) fault(n.kind == JsonNode::Kind::Text ? in_quotes(n.text) : described(n), names);
        });
        kind = read.value_or(kind_by_feet());
        leg_count_ = legs_of(kind);
    }

    template <class T>
    void number_column(std::string_view key, std::vector<LegPlan>& rows, T member, const Range& r) {
        column(key, rows, "a number, " + range_text(r), [&](const JsonNode& n, LegPlan& leg) { read_number(n, leg.*member, r); });
    }
    template <class T>
    void point_column(std::string_view key, std::vector<LegPlan>& rows, T member, const Range& r) {
        column(key, rows, "a point [x, y, z]", [&](const JsonNode& n, LegPlan& leg) { read_point(n, leg.*member, r); });
    }
    template <class T>
    void optional_number_column(std::string_view key, std::vector<LegPlan>& rows, T member, const Range& r) {
        if (object_->find(key) == nullptr) known_.push_back(key);
        else number_column(key, rows, member, r);
    }
    template <class T>
    void optional_flag_column(std::string_view key, std::vector<LegPlan>& rows, T member) {
        if (object_->find(key) == nullptr) return known_.push_back(key);
        column(key, rows, "true or false", [&](const JsonNode& n, LegPlan& leg) { read_flag(n, leg.*member); });
    }
    void optional_flag(std::string_view key, bool& flag) {
        optional(key, [&](const JsonNode& n) { read_flag(n, flag); });
    }

    void object(std::string_view key, auto& o) {
        required(key, "an object", [&](const JsonNode& n) { read_object(n, o, "an object"); });
    }
    void optional_object(std::string_view key, auto& o) {
        optional(key, [&](const JsonNode& n) { read_object(n, o, "an object"); });
    }
    template <class T>
    void object_or_null(std::string_view key, std::optional<T>& o) {
        required(key, "an object or null", [&](const JsonNode& n) {
            if (n.kind != JsonNode::Kind::Null) read_object(n, o.emplace(), "an object or null");
        });
    }
    void list(std::string_view key, auto& items, std::size_t fewest, std::size_t most) {
        required(key, "a list of " + count_text(fewest, most), [&](const JsonNode& n) {
            read_list(n, items, fewest, most, [&](const JsonNode& entry, auto& item) { read_object(entry, item, "an object"); });
        });
    }
    void optional_list(std::string_view key, auto& items, std::size_t most) {
        optional(key,
                 [&](const JsonNode& n) { read_list(n, items, 0, most, [&](const JsonNode& entry, auto& item) { read_object(entry, item, "an object"); }); });
    }
    void optional_points(std::string_view key, std::vector<Vec3>& points, std::size_t most, const Range& r) {
        optional(key, [&](const JsonNode& n) { read_list(n, points, 0, most, [&](const JsonNode& entry, Vec3& p) { read_point(entry, p, r); }); });
    }
    void optional_numbers(std::string_view key, std::vector<double>& numbers, std::size_t most, const Range& r) {
        optional(key, [&](const JsonNode& n) { read_list(n, numbers, 0, most, [&](const JsonNode& entry, double& v) { read_number(entry, v, r); }); });
    }
    void optional_texts(std::string_view key, std::vector<std::string>& texts, std::size_t most, std::size_t) {
        optional(key, [&](const JsonNode& n) { read_list(n, texts, 0, most, [&](const JsonNode& entry, std::string& t) { read_text(entry, t); }); });
    }
    void point_or(std::string_view key, std::optional<Vec3>& p, const Range& r, auto otherwise) {
        optional(key, [&](const JsonNode& n) { read_point(n, p.emplace(), r); });
        excluded_ = p.has_value();
        otherwise();
        excluded_ = false;
    }

private:
    void fault(std::string value, std::string allowed) { faults_.add(path_or_plan(path_), std::move(value), std::move(allowed)); }

    void at(const std::string& inner, auto act) {
        std::string outer = std::exchange(path_, inner);
        act();
        path_ = std::move(outer);
    }
    void at_key(std::string_view key, auto act) { at(joined(path_, key), act); }
    void at_index(std::size_t i, auto act) { at(path_ + "[" + std::to_string(i) + "]", act); }

    void required(std::string_view key, const std::string& allowed, auto read) {
        if (object_->find(key) == nullptr) at_key(key, [&] { fault("missing", allowed); });
        optional(key, read);
    }
    void optional(std::string_view key, auto read) {
        known_.push_back(key);
        const JsonNode* node = object_->find(key);
        if (node != nullptr) at_key(key, [&] { read(*node); });
    }
    void exclude(std::string_view key) {
        optional(key, [&](const JsonNode&) { fault("given beside anchor_m", "one of the two ways to place an anchor"); });
    }

    /// A number that could not be read is NaN, which no rule across keys says anything about.
    static void forget(double& v) { v = std::nan(""); }
    static void forget(int&) {}

    void read_number(const JsonNode& n, double& v, const Range& r) {
        forget(v);
        if (n.kind != JsonNode::Kind::Number) return fault(described(n), "a number, " + range_text(r));
        v = n.number;
    }
    void read_number(const JsonNode& n, int& v, const Range& r) {
        const bool whole = n.kind == JsonNode::Kind::Number && std::floor(n.number) == n.number;
        if (!whole || !r.holds(n.number)) return fault(described(n), "a whole number, " + range_text(r));
        v = static_cast<int>(n.number);
    }
    void read_number_or_null(const JsonNode& n, std::optional<double>& v, const Range& r) {
        if (n.kind == JsonNode::Kind::Null) v.reset();
        else if (n.kind != JsonNode::Kind::Number) fault(described(n), "a number, " + range_text(r) + ", or null");
        else v = n.number;
    }
    void read_flag(const JsonNode& n, bool& flag) {
        if (n.kind == JsonNode::Kind::Flag) flag = n.flag;
        else fault(described(n), "true or false");
    }
    void read_text(const JsonNode& n, std::string& t) {
        t = n.kind == JsonNode::Kind::Text ? n.text : path_;  // a path is a name that no other has
        if (n.kind != JsonNode::Kind::Text) fault(described(n), "text");
    }
    void read_point(const JsonNode& n, Vec3& p, const Range& r) {
        const bool three = n.kind == JsonNode::Kind::List && n.items.size() == 3;
        if (!three) return fault(described(n), "a point [x, y, z], each " + range_text(r));
        double* axes[]{&p.x, &p.y, &p.z};
        for (std::size_t i = 0; i < 3; ++i) at_index(i, [&] { read_number(n.items[i], *axes[i], r); });
    }
    void read_object(const JsonNode& n, auto& o, const char* allowed) {
        if (n.kind != JsonNode::Kind::Object) return fault(described(n), allowed);
        const JsonNode* outer_object = std::exchange(object_, &n);
        std::vector<std::string_view> outer_known = std::exchange(known_, {});
        describe(*this, o);
        report_unknown_keys();
        object_ = outer_object;
        known_ = std::move(outer_known);
    }
    /// A list that is too long or too short is one fault; its entries are then not looked at.
    void read_list(const JsonNode& n, auto& items, std::size_t fewest, std::size_t most, auto read_entry) {
        const bool fits = n.kind == JsonNode::Kind::List && n.items.size() >= fewest && n.items.size() <= most;
        if (!fits) return fault(described(n), "a list of " + count_text(fewest, most));
        items.resize(n.items.size());
        for (std::size_t i = 0; i < items.size(); ++i) at_index(i, [&] { read_entry(n.items[i], items[i]); });
    }
    void column(std::string_view key, std::vector<LegPlan>& rows, const std::string& entry, auto read_entry) {
        rows.resize(leg_count_);
        const std::string allowed = "a list of " + count_text(leg_count_, leg_count_) + ", one per leg, each " + entry;
        required(key, allowed, [&](const JsonNode& n) {
            const bool fits = n.kind == JsonNode::Kind::List && n.items.size() == leg_count_;
            if (!fits) return fault(described(n), allowed);
            for (std::size_t i = 0; i < leg_count_; ++i) at_index(i, [&] { read_entry(n.items[i], rows[i]); });
        });
    }

    /// Where the kind cannot be read, the one that fits the feet given: no second fault out of the first.
    [[nodiscard]] FrameKind kind_by_feet() const {
        const JsonNode* feet = object_->find("foot_m");
        for (const KindName& k : k_kind_names)
            if (feet != nullptr && feet->items.size() == legs_of(k.kind)) return k.kind;
        return FrameKind::Monopod;
    }

    void report_unknown_keys() {
        for (const std::string& key : object_->keys) {
            if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
            const std::string_view meant = faults_.full() ? std::string_view{} : nearest_word(key, known_);
            const std::string hint = meant.empty() ? "" : "; did you mean " + std::string(meant) + "?";
            faults_.add(joined(path_, key), "not a key of this format", "only known keys" + hint);
        }
    }

    const JsonNode* object_;
    FaultList& faults_;
    std::string path_;
    std::vector<std::string_view> known_;  ///< keys of the object at hand that were asked for
    std::size_t leg_count_ = 1;
    bool excluded_ = false;  ///< the keys asked for must not be there
};

}  // namespace guywright::detail
