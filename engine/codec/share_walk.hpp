#pragma once
#include "engine/codec/share_values.hpp"
#include "engine/plan/describe.hpp"
#include "engine/plan/kind_name.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace guywright {

/// What share codes call their format. A key that joins the plan raises it, with a line in k_share_keys_since.
inline constexpr int k_share_version = 1;

struct ShareKey {
    std::string_view path;  ///< without places in lists: "guys.strength_kN"
    int since;              ///< the version of share codes that first holds it
};

/// Keys that version 1 did not have. Codes from before them are read as if these were left out.
inline constexpr std::array<ShareKey, 0> k_share_keys_since{};

namespace detail {

/// What was last seen under each key: the best guess for what comes next there.
struct LastSeen {
    std::map<std::string, double> numbers;
    std::map<std::string, std::string> texts;
};

/// Visits a plan and codes it, over a BitWriter or a BitReader: one way for both, so that they cannot part. What is as it was
/// last under the same key takes a bit at most.
template <class Bits>
class ShareWalk {
public:
    ShareWalk(Bits& bits, BitModels& models, LastSeen& seen, int version = k_share_version, std::span<const ShareKey> since = k_share_keys_since)
        : bits_(bits), values_(bits, models), seen_(seen), version_(version), since_(since) {}

    /// False where the bits are no plan's.
    [[nodiscard]] bool sound() const { return sound_ && !bits_.ran_out(); }

    void number(std::string_view key, double& v, const Range&) {
        at(key, [&] { v = coded(v); });
    }
    void number(std::string_view key, int& v, const Range& r) {
        at(key, [&] {
            const double coded_value = coded(v);
            if (r.holds(coded_value)) v = static_cast<int>(coded_value);
            else sound_ = false;
        });
    }
    void number_or_null(std::string_view key, std::optional<double>& v, const Range&) {
        at(key, [&] {
            const double coded_value = coded(v.value_or(k_nothing));
            if (std::isnan(coded_value)) v.reset();
            else v = coded_value;
        });
    }
    void optional_number(std::string_view key, double& v, const Range& r) { number(key, v, r); }
    void optional_number(std::string_view key, std::optional<double>& v, const Range& r) { number_or_null(key, v, r); }

    void text(std::string_view key, std::string& t, std::size_t longest) {
        at(key, [&] { t = coded(t, longest); });
    }
    void optional_text(std::string_view key, std::string& t, std::size_t longest) { text(key, t, longest); }
    void kind(std::string_view key, FrameKind& kind) {
        at(key, [&] {
            const std::uint32_t place = values_.symbol(about_, 2, static_cast<std::uint32_t>(kind));
            if (place >= k_kind_names.size()) sound_ = false;
            else kind = static_cast<FrameKind>(place);
        });
        legs_ = legs_of(kind);
    }

    void number_column(std::string_view key, std::vector<LegPlan>& rows, double LegPlan::*member, const Range&) {
        column(key, rows, [&](LegPlan& leg) { leg.*member = coded(leg.*member); });
    }
    void optional_number_column(std::string_view key, std::vector<LegPlan>& rows, double LegPlan::*member, const Range& r) {
        number_column(key, rows, member, r);
    }
    void point_column(std::string_view key, std::vector<LegPlan>& rows, Vec3 LegPlan::*member, const Range&) {
        column(key, rows, [&](LegPlan& leg) { point(leg.*member); });
    }
    void optional_flag_column(std::string_view key, std::vector<LegPlan>& rows, bool LegPlan::*member) {
        column(key, rows, [&](LegPlan& leg) { leg.*member = values_.flag(about_, leg.*member); });
    }
    void optional_flag(std::string_view key, bool& flag) {
        at(key, [&] { flag = values_.flag(about_, flag); });
    }

    void object(std::string_view key, auto& o) {
        at(key, [&] { describe(*this, o); });
    }
    void optional_object(std::string_view key, auto& o) { object(key, o); }
    template <class T>
    void object_or_null(std::string_view key, std::optional<T>& o) {
        at(key, [&] {
            if (!values_.flag(about_, o.has_value())) return o.reset();
            if (!o) o.emplace();
            describe(*this, *o);
        });
    }
    void list(std::string_view key, auto& items, std::size_t, std::size_t most) {
        list_of(key, items, most, [&](auto& item) { describe(*this, item); });
    }
    void optional_list(std::string_view key, auto& items, std::size_t most) { list(key, items, 0, most); }
    void optional_points(std::string_view key, std::vector<Vec3>& points, std::size_t most, const Range&) {
        list_of(key, points, most, [&](Vec3& p) { point(p); });
    }
    void optional_numbers(std::string_view key, std::vector<double>& numbers, std::size_t most, const Range&) {
        list_of(key, numbers, most, [&](double& v) { v = coded(v); });
    }
    void optional_texts(std::string_view key, std::vector<std::string>& texts, std::size_t most, std::size_t longest) {
        list_of(key, texts, most, [&](std::string& t) { t = coded(t, longest); });
    }
    void point_or(std::string_view key, std::optional<Vec3>& p, const Range&, auto otherwise) {
        bool is_point = false;
        at(key, [&] {
            is_point = values_.flag(about_, p.has_value());
            if (!is_point) return p.reset();
            if (!p) p.emplace();
            point(*p);
        });
        if (!is_point) otherwise();
    }

private:
    /// Everything inside is about the key. A key that codes of this version do not hold stays as it is.
    void at(std::string_view key, auto act) {
        const std::size_t outer = path_.size();
        const std::uint32_t outer_about = about_;
        if (outer > 0) path_ += '.';
        path_ += key;
        about_ = hash_of_path();
        if (sound_ && holds(path_)) act();
        path_.resize(outer);
        about_ = outer_about;
    }

    [[nodiscard]] bool holds(std::string_view path) const {
        for (const ShareKey& key : since_)
            if (key.path == path) return version_ >= key.since;
        return true;
    }
    [[nodiscard]] std::uint32_t hash_of_path() const {
        std::uint32_t h = 2166136261u;
        for (const char c : path_) h = (h ^ static_cast<unsigned char>(c)) * 16777619u;
        return h;
    }

    double coded(double v) {
        double& last = seen_.numbers.try_emplace(path_, k_nothing).first->second;
        const bool same = values_.flag(about_, v == last || (std::isnan(v) && std::isnan(last)));
        return same ? last : last = values_.number(v);
    }
    std::string coded(const std::string& t, std::size_t longest) {
        constexpr std::size_t most_bytes_a_character = 4;
        std::string& last = seen_.texts[path_];
        if (!values_.flag(about_, t == last)) last = values_.text(t, longest * most_bytes_a_character);
        return last;
    }
    void point(Vec3& p) {
        at("x", [&] { p.x = coded(p.x); });
        at("y", [&] { p.y = coded(p.y); });
        at("z", [&] { p.z = coded(p.z); });
    }
    void column(std::string_view key, std::vector<LegPlan>& rows, auto code_row) {
        rows.resize(legs_);
        at(key, [&] {
            for (LegPlan& leg : rows) code_row(leg);
        });
    }
    void list_of(std::string_view key, auto& items, std::size_t most, auto code_item) {
        at(key, [&] {
            const std::uint64_t count = values_.whole(about_, items.size());
            if (count > most) sound_ = false;
            if (!sound()) return;
            items.resize(static_cast<std::size_t>(count));
            for (auto& item : items) code_item(item);
        });
    }

    Bits& bits_;
    ShareValues<Bits> values_;
    LastSeen& seen_;
    int version_;
    std::span<const ShareKey> since_;
    std::string path_;
    std::uint32_t about_ = 0;  ///< the key at hand, as models know it
    std::size_t legs_ = 1;
    bool sound_ = true;
};

}  // namespace detail
}  // namespace guywright
