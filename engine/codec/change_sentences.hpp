#pragma once
#include "engine/advice/counsel.hpp"
#include "engine/codec/sentences.hpp"

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

namespace guywright {

namespace detail {

/// A quantity with as many decimals as it has, up to four: what is told must not round to the side that fails.
inline std::string whole_quantity(const Telling& t, double kept, std::string_view unit) {
    constexpr int most_decimals = 4;
    const ShownUnit shown = shown_unit(unit, t.units);
    const double v = kept * shown.per_kept;
    int decimals = unit.empty() ? 0 : shown.decimals;
    while (decimals < most_decimals && std::abs(v * std::pow(10.0, decimals) - std::round(v * std::pow(10.0, decimals))) > 1e-6) ++decimals;
    return with_unit(number_told(t.words, v, decimals), shown.name);
}

inline std::string input_name(const Plan& plan, const Change& c) {
    switch (c.input) {
        case Input::Pretension:
        case Input::Parts:
        case Input::Cord:
        case Input::GuyBearing:
        case Input::GuyInclination:
        case Input::GuyDistance: return plan.guys[c.subject].name;
        case Input::HaulBearing:
        case Input::HaulDistance:
        case Input::HaulHeight: return plan.ropes[c.subject].name;
        default: return {};
    }
}

/// Where a frame goes: +x is toward the edge, +y to the left.
inline std::string_view way_of(const ChangeWords& words, const Change& c) {
    const bool side = c.input == Input::FootSideAnchorsStay || c.input == Input::FootSideAnew;
    const std::size_t back = c.to < c.from ? 1 : 0;
    return words.ways[(side ? 2 : 0) + back];
}

inline std::string new_bearing(const Telling& t, const Plan& plan, const Change& c) {
    if (c.new_tie) return whole_quantity(t, c.new_tie->bearing_deg, "deg");
    const auto head_m = drawn_head_of(plan);
    if (!c.new_guy || !head_m) return {};
    return quantity(t, bearing_deg_of(anchor_of(*c.new_guy, *head_m) - *head_m), "deg");
}

inline double new_away_m(const Plan& plan, const Change& c) {
    const auto head_m = drawn_head_of(plan);
    if (!c.new_guy || !head_m) return c.away_to_m;
    const Vec3 offset_m = anchor_of(*c.new_guy, *head_m) - *head_m;
    return std::hypot(offset_m.x, offset_m.y);
}

}  // namespace detail

/// One change as a sentence. `plan` is the one it is made in.
[[nodiscard]] inline std::string sentence(const Telling& t, const Plan& plan, const Change& c) {
    const ChangeWords& words = t.words.changes;
    const std::string_view unit = info(c.input).unit;
    const bool several = plan.frame.legs.size() > 1;
    std::string out =
        detail::filled(words.of(c.input).says, {{"{name}", detail::input_name(plan, c)},
                                                {"{leg}", several ? detail::filled(t.words.leg_prefix, {{"{n}", std::to_string(c.subject + 1)}}) : ""},
                                                {"{to}", detail::whole_quantity(t, c.to, unit)},
                                                {"{from}", detail::whole_quantity(t, c.from, unit)},
                                                {"{by}", detail::whole_quantity(t, std::abs(c.to - c.from), unit)},
                                                {"{way}", std::string(detail::way_of(words, c))},
                                                {"{feet}", std::string(words.feet[several ? 1 : 0])},
                                                {"{bearing}", detail::new_bearing(t, plan, c)},
                                                {"{away}", quantity(t, detail::new_away_m(plan, c), "m")},
                                                {"{was_away}", quantity(t, c.away_from_m, "m")}});
    detail::capitalise(out);
    return out;
}

/// All of an advice: one sentence, or two that belong together.
[[nodiscard]] inline std::string sentence(const Telling& t, const Plan& plan, const Advice& a) {
    std::string out = a.changes.size() > 1 ? std::string(t.words.changes.together) : "";
    Plan now = plan;
    for (const Change& c : a.changes) {
        out += (out.empty() ? "" : " ") + sentence(t, now, c);
        detail::apply(c, now);
    }
    return out;
}

/// Which rule stays broken whatever is changed.
[[nodiscard]] inline std::string sentence(const Telling& t, const OutOfReach& o) {
    return detail::filled(t.words.changes.out_of_reach, {{"{what}", sentence(t, o.nearest, o.evaluation, o.check)}});
}

/// A choice of anchors, by their numbers in the plan from 1.
[[nodiscard]] inline std::string sentence(const Telling& t, const AnchorSet& s) {
    std::string names;
    for (const std::size_t i : s.anchors) names += (names.empty() ? "" : ", ") + std::to_string(i + 1);
    const ChangeWords& words = t.words.changes;
    return detail::filled(s.margin < 0.0 ? words.anchors_broken : words.anchors, {{"{names}", names},
                                                                                  {"{pretension}", quantity(t, s.pretension_kN, "kN")},
                                                                                  {"{verdict}", std::string(t.words.of(s.verdict))},
                                                                                  {"{margin}", number_told(t.words, std::floor(100.0 * s.margin), 0)},
                                                                                  {"{what}", std::string(t.words.of(s.governing.id).what)}});
}

}  // namespace guywright
