#pragma once
#include "engine/plan/describe.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace guywright {

/// What a walk tells nobody. A visitor inherits it and answers only to what it wants.
struct SeesNothing {
    /// False where nothing below this path matters: the walk goes round it.
    [[nodiscard]] bool may_hold(const std::string&) const { return true; }
    void number(const std::string&, const auto&, const Range&) {}
    void text(const std::string&, const std::string&, std::size_t /*longest*/, bool /*lines_allowed*/) {}
    void list(const std::string&, std::size_t /*count*/, std::size_t /*fewest*/, std::size_t /*most*/) {}
};

/// Visits everything that exists in a plan in document order, with its full path ("frame.foot_m[0][1]"). A number that
/// is null or left out does not exist; a default does.
template <class Seen>
class Walk {
public:
    explicit Walk(Seen& seen) : seen_(seen) {}

    void number(std::string_view key, auto& v, const Range& r) {
        at(key, [&] { seen_.number(path_, v, r); });
    }
    template <class O>
    void number_or_null(std::string_view key, O& v, const Range& r) {
        if (v) number(key, *v, r);
    }
    template <class N>
    void optional_number(std::string_view key, N& v, const Range& r) {
        if constexpr (Like<N, double>) number(key, v, r);
        else number_or_null(key, v, r);
    }
    void text(std::string_view key, auto& t, std::size_t longest) {
        at(key, [&] { seen_.text(path_, t, longest, false); });
    }
    void optional_text(std::string_view key, auto& t, std::size_t longest) {
        at(key, [&] { seen_.text(path_, t, longest, true); });
    }
    void kind(std::string_view, auto&) {}

    void number_column(std::string_view key, auto& rows, auto member, const Range& r) {
        at(key, [&] { each(rows, [&](auto& row) { seen_.number(path_, row.*member, r); }); });
    }
    void point_column(std::string_view key, auto& rows, auto member, const Range& r) {
        at(key, [&] { each(rows, [&](auto& row) { point(row.*member, r); }); });
    }
    void optional_number_column(std::string_view key, auto& rows, auto member, const Range& r) { number_column(key, rows, member, r); }
    void optional_flag_column(std::string_view, auto&, auto) {}
    void optional_flag(std::string_view, auto&) {}

    void object(std::string_view key, auto& o) {
        at(key, [&] { describe(*this, o); });
    }
    void optional_object(std::string_view key, auto& o) { object(key, o); }
    void object_or_null(std::string_view key, auto& o) {
        if (o) object(key, *o);
    }

    void list(std::string_view key, auto& items, std::size_t fewest, std::size_t most) {
        at(key, [&] {
            seen_.list(path_, items.size(), fewest, most);
            each(items, [&](auto& item) { describe(*this, item); });
        });
    }
    void optional_list(std::string_view key, auto& items, std::size_t most) { list(key, items, 0, most); }
    void optional_points(std::string_view key, auto& points, std::size_t most, const Range& r) {
        at(key, [&] {
            seen_.list(path_, points.size(), 0, most);
            each(points, [&](auto& p) { point(p, r); });
        });
    }
    void optional_numbers(std::string_view key, auto& numbers, std::size_t most, const Range& r) {
        at(key, [&] {
            seen_.list(path_, numbers.size(), 0, most);
            each(numbers, [&](auto& v) { seen_.number(path_, v, r); });
        });
    }
    void optional_texts(std::string_view key, auto& texts, std::size_t most, std::size_t longest) {
        at(key, [&] {
            seen_.list(path_, texts.size(), 0, most);
            each(texts, [&](auto& t) { seen_.text(path_, t, longest, false); });
        });
    }
    void point_or(std::string_view key, auto& p, const Range& r, auto otherwise) {
        if (p) at(key, [&] { point(*p, r); });
        else otherwise();
    }

private:
    void at(std::string_view key, auto act) {
        const std::size_t outer = path_.size();
        if (outer > 0) path_ += '.';
        path_ += key;
        if (seen_.may_hold(path_)) act();
        path_.resize(outer);
    }
    void each(auto& items, auto act) {
        const std::size_t outer = path_.size();
        for (std::size_t i = 0; i < items.size(); ++i) {
            path_.append("[").append(std::to_string(i)).append("]");
            if (seen_.may_hold(path_)) act(items[i]);
            path_.resize(outer);
        }
    }
    void point(auto& p, const Range& r) {
        std::array axes{&p.x, &p.y, &p.z};
        each(axes, [&](auto* axis) { seen_.number(path_, *axis, r); });
    }

    Seen& seen_;
    std::string path_;
};

/// Tells `seen` everything that exists in a plan, or in a catalogue.
template <class Seen, class Whole>
void walk(Whole& whole, Seen& seen) {
    Walk<Seen> visitor(seen);
    describe(visitor, whole);
}

}  // namespace guywright
