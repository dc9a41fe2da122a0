#pragma once
#include "engine/codec/plan_keys.hpp"
#include "engine/plan/describe.hpp"
#include "engine/plan/kind_name.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace guywright {

using OrderedJson = nlohmann::ordered_json;

/// A JSON number with the fewest digits that read back the same; whole numbers without ".0". NaN and infinity become
/// null, which no required key accepts.
[[nodiscard]] inline OrderedJson json_number(double v) {
    constexpr double whole_numbers_end = 9007199254740992.0;
    if (std::abs(v) < whole_numbers_end && std::floor(v) == v) return static_cast<std::int64_t>(v);
    return v;
}

[[nodiscard]] inline OrderedJson json_point(Vec3 p) { return OrderedJson::array({json_number(p.x), json_number(p.y), json_number(p.z)}); }

/// Bytes that are not UTF-8 are replaced: writing never fails.
[[nodiscard]] inline std::string json_text(const OrderedJson& j, int indent) { return j.dump(indent, ' ', false, OrderedJson::error_handler_t::replace); }

namespace detail {

class PlanWriter {
public:
    explicit PlanWriter(OrderedJson& out) : out_(&out) {}

    void number(const char* key, double v, const Range&) { (*out_)[key] = json_number(v); }
    void number_or_null(const char* key, const std::optional<double>& v, const Range&) { (*out_)[key] = v ? json_number(*v) : OrderedJson(nullptr); }
    void optional_number(const char* key, double v, const Range& r) { number(key, v, r); }
    void optional_number(const char* key, const std::optional<double>& v, const Range& r) {
        if (v) number(key, *v, r);
    }
    void text(const char* key, const std::string& t, std::size_t) { (*out_)[key] = t; }
    void optional_text(const char* key, const std::string& t, std::size_t longest) { text(key, t, longest); }
    void kind(const char* key, FrameKind k) { (*out_)[key] = std::string(name_of(k)); }

    void number_column(const char* key, const auto& rows, auto member, const Range&) {
        list_of(key, rows, [&](const auto& row) { return json_number(row.*member); });
    }
    void point_column(const char* key, const auto& rows, auto member, const Range&) {
        list_of(key, rows, [&](const auto& row) { return json_point(row.*member); });
    }
    void optional_flag_column(const char* key, const auto& rows, auto member) {
        list_of(key, rows, [&](const auto& row) { return OrderedJson(row.*member); });
    }

    void optional_number_column(const char* key, const auto& rows, auto member, const Range& r) { number_column(key, rows, member, r); }
    void optional_flag(const char* key, bool flag) { (*out_)[key] = flag; }

    void object(const char* key, const auto& o) { (*out_)[key] = written(o); }
    void optional_object(const char* key, const auto& o) { object(key, o); }
    void object_or_null(const char* key, const auto& o) { (*out_)[key] = o ? written(*o) : OrderedJson(nullptr); }
    void list(const char* key, const auto& items, std::size_t, std::size_t) {
        list_of(key, items, [&](const auto& item) { return written(item); });
    }
    void optional_list(const char* key, const auto& items, std::size_t most) { list(key, items, 0, most); }
    void optional_points(const char* key, const std::vector<Vec3>& points, std::size_t, const Range&) { list_of(key, points, json_point); }
    void optional_numbers(const char* key, const std::vector<double>& numbers, std::size_t, const Range&) {
        if (!numbers.empty()) list_of(key, numbers, json_number);
    }
    void optional_texts(const char* key, const std::vector<std::string>& texts, std::size_t, std::size_t) {
        if (!texts.empty()) list_of(key, texts, [](const std::string& t) { return OrderedJson(t); });
    }
    void point_or(const char* key, const std::optional<Vec3>& p, const Range&, auto otherwise) {
        if (p) (*out_)[key] = json_point(*p);
        else otherwise();
    }

private:
    static OrderedJson written(const auto& o) {
        OrderedJson inner = OrderedJson::object();
        PlanWriter writer(inner);
        describe(writer, o);
        return inner;
    }
    void list_of(const char* key, const auto& items, auto convert) {
        OrderedJson entries = OrderedJson::array();
        for (const auto& item : items) entries.push_back(convert(item));
        (*out_)[key] = std::move(entries);
    }

    OrderedJson* out_;
};

/// A plan or a catalogue, with its heading.
inline OrderedJson document_json(std::string_view format, int version, const auto& whole) {
    OrderedJson out = OrderedJson::object();
    out["format"] = std::string(format);
    out["version"] = version;
    PlanWriter writer(out);
    describe(writer, whole);
    return out;
}

/// A guy or a tie as it stands in a plan file.
inline OrderedJson written_part(const auto& part) {
    OrderedJson out = OrderedJson::object();
    PlanWriter writer(out);
    describe(writer, part);
    return out;
}

inline OrderedJson plan_json(const Plan& plan) { return document_json(k_plan_format, k_plan_version, plan); }

}  // namespace detail
}  // namespace guywright
