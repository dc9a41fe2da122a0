#pragma once
#include "engine/plan/catalogue.hpp"
#include "engine/plan/fault.hpp"
#include "engine/plan/fault_text.hpp"
#include "engine/plan/numbers.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace guywright {

/// Legs, and so feet, that a frame stands on.
[[nodiscard]] constexpr std::size_t legs_of(FrameKind kind) {
    switch (kind) {
        case FrameKind::Monopod: return 1;
        case FrameKind::AFrame: return 2;
        case FrameKind::Tripod: return 3;
    }
    return 0;
}

/// Ropes that share one load must carry all of it between them; three at 0.33 do.
inline constexpr double k_least_sum_of_shares = 0.985;

namespace detail {

/// What each key may be by itself.
struct RangeChecker : SeesNothing {
    InputFaults& faults;
    explicit RangeChecker(InputFaults& out) : faults(out) {}

    void number(const std::string& path, const auto& v, const Range& r) {
        if (!r.holds(v)) faults.push_back({path, number_text(v), range_text(r)});
    }
    void text(const std::string& path, const std::string& t, std::size_t longest, bool lines_allowed) {
        const TextFacts facts = look_at(t);
        if (facts.characters > longest) faults.push_back({path, std::to_string(facts.characters) + " characters long", "at most " + std::to_string(longest)});
        if (!facts.utf8) faults.push_back({path, in_quotes(t) + " (not UTF-8)", "UTF-8 text"});
        if (facts.control || (facts.line_feed && !lines_allowed))
            faults.push_back({path, in_quotes(t) + " (holds a control character)", "text without control characters"});
    }
    void list(const std::string& path, std::size_t count, std::size_t fewest, std::size_t most) {
        if (count >= fewest && count <= most) return;
        faults.push_back({path, "a list of " + count_text(count, count), count_text(fewest, most)});
    }
};

inline void check_leg_counts(const Plan& p, InputFaults& faults) {
    const std::size_t needed = legs_of(p.frame.kind);
    const auto check = [&](const char* path, std::size_t count) {
        if (count == needed) return;
        faults.push_back({path, "a list of " + count_text(count, count), count_text(needed, needed) + ", one per leg"});
    };
    check("frame.foot_m", p.frame.legs.size());
    check("feet", p.feet.size());
}

inline void check_candidate_strengths(const Plan& p, InputFaults& faults) {
    const std::size_t given = p.candidate_anchor_strengths_kN.size(), anchors = p.candidate_anchors_m.size();
    if (given == 0 || given == anchors) return;
    faults.push_back(
        {"candidate_anchor_strengths_kN", "a list of " + count_text(given, given), count_text(anchors, anchors) + ", one per candidate anchor, or none"});
}

inline void check_hobbles(const Frame& f, InputFaults& faults) {
    const int legs = static_cast<int>(f.legs.size());
    for (std::size_t i = 0; i < f.hobbles.size(); ++i) {
        const Hobble& h = f.hobbles[i];
        const std::string path = "frame.hobbles[" + std::to_string(i) + "].";
        const auto check = [&](const char* key, int leg) {
            if (leg < legs || !range::leg_index.holds(leg)) return;
            faults.push_back({path + key, std::to_string(leg), "0 to " + std::to_string(legs - 1) + ", a leg of this frame"});
        };
        check("from", h.from);
        check("to", h.to);
        if (h.from == h.to) faults.push_back({path + "to", std::to_string(h.to), "another leg than from"});
    }
}

inline void check_poles(const Frame& f, InputFaults& faults) {
    for (std::size_t i = 0; i < f.legs.size(); ++i) {
        const double diameter_mm = f.legs[i].pole_diameter_mm, wall_mm = f.legs[i].pole_wall_mm;
        if (!range::diameter_mm.holds(diameter_mm) || !(wall_mm > diameter_mm / 2.0)) continue;
        faults.push_back({"frame.pole_wall_mm[" + std::to_string(i) + "]", number_text(wall_mm),
                          "at most half of the diameter, " + number_text(diameter_mm / 2.0) + " mm; 0 is solid"});
    }
}

/// Names tell guys and ropes apart on the card.
inline void check_names(const auto& items, std::string_view list, InputFaults& faults) {
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::string path = std::string(list) + "[" + std::to_string(i) + "].name";
        const std::string& name = items[i].name;
        if (look_at(name).blank) faults.push_back({path, name.empty() ? "empty" : "blank", "a name"});
        else if (!seen.insert(name).second) faults.push_back({path, in_quotes(name) + " (used twice)", "a name of its own"});
    }
}

inline void check_shares(const Plan& p, InputFaults& faults) {
    double sum = 0.0;
    std::size_t last = p.ropes.size();
    for (std::size_t i = 0; i < p.ropes.size(); ++i) {
        if (!range::share.holds(p.ropes[i].share)) return;
        if (p.ropes[i].share == range::share.max) continue;
        sum += p.ropes[i].share;
        last = i;
    }
    if (last == p.ropes.size() || sum >= k_least_sum_of_shares) return;
    const std::string value = number_text(p.ropes[last].share) + " (the shares add up to " + number_text(sum) + ")";
    faults.push_back({"ropes[" + std::to_string(last) + "].share", value, "1, or shares that add up to 1: nothing would carry the rest"});
}

struct LimitPair {
    const char* good_path;
    double good, max_or_min;
    const Range& range;
    bool good_is_larger;
};

inline void check_limit(const LimitPair& l, InputFaults& faults) {
    const bool right = l.good_is_larger ? l.good >= l.max_or_min : l.good <= l.max_or_min;
    if (right || !l.range.holds(l.good) || !l.range.holds(l.max_or_min)) return;
    const std::string allowed = (l.good_is_larger ? "at least " : "at most ") + number_text(l.max_or_min) + ", where NO-GO begins";
    faults.push_back({l.good_path, number_text(l.good), allowed});
}

/// A caution must come before its NO-GO.
inline void check_limits(const Limits& l, InputFaults& faults) {
    check_limit({"limits.guy_angle_good_deg", l.guy_angle_good_deg, l.guy_angle_min_deg, range::limit_angle_deg, true}, faults);
    check_limit({"limits.bearing_gap_good_deg", l.bearing_gap_good_deg, l.bearing_gap_max_deg, range::limit_gap_deg, false}, faults);
    check_limit({"limits.head_shift_good_percent", l.head_shift_good_percent, l.head_shift_max_percent, range::limit_percent, false}, faults);
}

inline void check_not_measured(const Plan& p, InputFaults& faults) {
    if (p.not_measured.empty()) return;
    std::set<std::string> paths;
    for_each_number(p, [&](const std::string& path, double, const Range&) { paths.insert(path); });
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < p.not_measured.size(); ++i) {
        const std::string& wanted = p.not_measured[i];
        const std::string at = "not_measured[" + std::to_string(i) + "]";
        if (!paths.contains(wanted)) faults.push_back({at, in_quotes(wanted), "the path of a number in this plan, such as edge.face_deg"});
        else if (!seen.insert(wanted).second) faults.push_back({at, in_quotes(wanted) + " (listed twice)", "each path once"});
    }
}

/// A key with two faults is told the first: the second often follows from it.
inline void keep_first_of_each_path(InputFaults& faults) {
    std::set<std::string> seen;
    std::erase_if(faults, [&](const InputFault& f) { return !seen.insert(f.path).second; });
}

}  // namespace detail

/// Everything wrong with a plan that shows without computing any geometry, one fault per key. Empty: usable.
[[nodiscard]] inline InputFaults find_faults(const Plan& p) {
    InputFaults faults;
    detail::RangeChecker ranges(faults);
    walk(p, ranges);
    detail::check_leg_counts(p, faults);
    detail::check_names(p.ropes, "ropes", faults);
    detail::check_names(p.guys, "guys", faults);
    detail::check_shares(p, faults);
    detail::check_candidate_strengths(p, faults);
    detail::check_hobbles(p.frame, faults);
    detail::check_poles(p.frame, faults);
    detail::check_limits(p.limits, faults);
    detail::check_not_measured(p, faults);
    detail::keep_first_of_each_path(faults);
    return faults;
}

/// Everything that is wrong with a catalogue.
[[nodiscard]] inline InputFaults find_faults(const Catalogue& catalogue) {
    InputFaults faults;
    detail::RangeChecker ranges(faults);
    walk(catalogue, ranges);
    detail::check_names(catalogue.cords, "cords", faults);
    return faults;
}

}  // namespace guywright
