#pragma once
#include "engine/codec/force_tables.hpp"
#include "engine/codec/tuning_sentences.hpp"

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

namespace guywright::detail {

// What a person brings to the tape: common practice, no source. The sheet tells each of them.
inline constexpr double k_pace_m = 0.75;
inline constexpr double k_end_knot_m = 0.5;      ///< of cord that a knot takes, with its tail
inline constexpr double k_pulling_tail_m = 1.5;  ///< left to pull and tie off with

/// Cut lengths are rounded up to what a tape is read by: 0.1 m or half a foot.
inline double cut_step_m(UnitSystem units) { return units == UnitSystem::Imperial ? 0.5 * k_m_per_foot : 0.1; }

/// Metres of cord for `parts` of `length_m` each.
inline double cut_length_m(double length_m, int parts, double tail_m, UnitSystem units) {
    constexpr double hair = 1e-9;  // a length that is a whole number of steps stays one
    const double step_m = cut_step_m(units);
    return std::ceil((parts * length_m + 2.0 * k_end_knot_m + tail_m) / step_m - hair) * step_m;
}

/// Whole degrees, never 360.
inline std::string bearing_told(const Telling& t, double bearing_deg) {
    const double whole = std::round(std::fmod(bearing_deg + 720.0, 360.0));
    return quantity(t, whole >= 360.0 ? 0.0 : whole, "deg");
}

/// A point as it is found on the ground: from the plumb point under the head.
struct GroundPlace {
    double bearing_deg = 0.0, distance_m = 0.0, height_m = 0.0, below_head_m = 0.0;
};
inline GroundPlace place_from(Vec3 head_m, Vec3 at_m) {
    const Vec3 to = at_m - head_m;
    return {bearing_deg_of(to), std::hypot(to.x, to.y), at_m.z, -to.z};
}

inline std::string filled_name(std::string_view words, std::string_view name) { return filled(words, {{"{name}", std::string(name)}}); }

/// What the verdict is about: loads, lean, face.
inline Table rig_table(const CardView& v, const TuningView& tuned) {
    const SheetWords& w = v.words.sheet;
    Table table{{std::string(w.what_column), std::string(w.planned_column)}};
    for (const RopePlan& r : v.plan.ropes) {
        std::string load = quantity(v.telling, r.load_kg, "kg");
        if (r.share < 1.0) load += " x " + number_told(v.words, 100.0 * r.share, 0) + " %";
        table.push_back({filled_name(w.load, r.name), std::move(load)});
    }
    if (v.plan.frame.legs.size() < 3) table.push_back({std::string(w.lean), lean_told(tuned, {v.plan.frame.lean_deg, v.plan.frame.lean_bearing_deg})});
    table.push_back({std::string(w.face), quantity(v.telling, v.plan.edge.face_deg, "deg")});
    table.push_back({std::string(w.arrest), number_told(v.words, v.plan.actions.dynamic_factor, 1)});
    return table;
}

inline Row place_row(const CardView& v, std::string name, Vec3 at_m) {
    const GroundPlace p = place_from(v.e.model.drawn_head_m, at_m);
    Row row{std::move(name), bearing_told(v.telling, p.bearing_deg)};
    if (v.plan.edge.compass_out_deg) row.push_back(bearing_told(v.telling, p.bearing_deg + *v.plan.edge.compass_out_deg));
    row.push_back(quantity(v.telling, p.distance_m, "m"));
    row.push_back(number_told(v.words, p.distance_m / k_pace_m, 1));
    row.push_back(quantity(v.telling, p.height_m, "m"));
    row.push_back(quantity(v.telling, degrees(std::atan2(p.below_head_m, p.distance_m)), "deg"));
    return row;
}

inline Table anchors_table(const CardView& v) {
    const SheetWords& w = v.words.sheet;
    Row heads{std::string(w.anchor_column), std::string(w.bearing_column)};
    if (v.plan.edge.compass_out_deg) heads.emplace_back(w.compass_column);
    for (const std::string_view head : {w.distance_column, w.paces_column, w.height_column, w.inclination_column}) heads.emplace_back(head);
    Table table{std::move(heads)};
    for (std::size_t i = 0; i < v.e.model.guys.size(); ++i) table.push_back(place_row(v, numbered(i, v.plan.guys[i].name), v.e.model.guys[i].anchor_m));
    for (std::size_t i = 0; i < v.e.model.ropes.size(); ++i)
        if (v.e.model.ropes[i].has_haul) table.push_back(place_row(v, filled_name(w.haul, v.plan.ropes[i].name), v.e.model.ropes[i].haul_m));
    return table;
}

inline std::string anchors_note(const CardView& v) {
    std::string out = filled(v.words.sheet.pace_note, {{"{pace}", quantity(v.telling, k_pace_m, "m")}});
    if (v.plan.edge.compass_out_deg) out += " " + filled(v.words.sheet.compass_out, {{"{n}", bearing_told(v.telling, *v.plan.edge.compass_out_deg)}});
    return out;
}

inline Table cords_table(const CardView& v) {
    const SheetWords& w = v.words.sheet;
    Table table{
        {std::string(w.cord_column), std::string(w.parts_column), std::string(w.one_part_column), std::string(w.pretension_column), std::string(w.cut_column)}};
    const auto add = [&](std::string name, double length_m, int parts, std::string pretension, double tail_m) {
        table.push_back({std::move(name), std::to_string(parts), quantity(v.telling, length_m, "m"), std::move(pretension),
                         quantity(v.telling, cut_length_m(length_m, parts, tail_m, v.telling.units), "m")});
    };
    for (std::size_t i = 0; i < v.plan.guys.size(); ++i) {
        const GuyPlan& g = v.plan.guys[i];
        add(numbered(i, g.name), glm::length(v.e.model.drawn_head_m - v.e.model.guys[i].anchor_m), g.parts, quantity(v.telling, g.pretension_kN, "kN"),
            k_pulling_tail_m);
    }
    for (const Hobble& h : v.plan.frame.hobbles) {
        const std::string name = std::to_string(h.from + 1) + "-" + std::to_string(h.to + 1);
        const Vec3 apart_m = v.e.model.legs[static_cast<std::size_t>(h.from)].foot_m - v.e.model.legs[static_cast<std::size_t>(h.to)].foot_m;
        add(filled_name(w.hobble, name), glm::length(apart_m), 1, "", 0.0);
    }
    return table;
}

inline std::string cords_note(const CardView& v) {
    return filled(v.words.sheet.cord_note, {{"{knot}", quantity(v.telling, k_end_knot_m, "m")},
                                            {"{tail}", quantity(v.telling, k_pulling_tail_m, "m")},
                                            {"{step}", quantity(v.telling, cut_step_m(v.telling.units), "m")}});
}

/// Every check with a margin, the closest first.
inline Table margins_table(const CardView& v, std::size_t most) {
    Table table{{std::string(v.words.sheet.spare_column), std::string(v.words.sheet.check_column)}};
    for (const Check& c : v.e.closest) {
        if (!tells_margin(c) || table.size() > most) continue;
        table.push_back({fixed_text(std::floor(100.0 * c.margin), 0) + " %", sentence(v.telling, v.plan, v.e, c)});
    }
    return table;
}

/// Lines of the kit list; what is the same twice stands once, counted.
class Kit {
public:
    explicit Kit(const CardView& v)
        : v_(v), table_{{std::string(v.words.sheet.item_column), std::string(v.words.sheet.count_column), std::string(v.words.sheet.least_column)}} {}

    void add(std::string item, std::string as_planned) {
        for (std::size_t i = 1; i < table_.size(); ++i)
            if (table_[i][0] == item && table_[i][2] == as_planned) {
                table_[i][1] = std::to_string(std::stoi(table_[i][1]) + 1);
                return;
            }
        table_.push_back({std::move(item), "1", std::move(as_planned)});
    }
    void add(std::string item, double strength_kN) { add(std::move(item), quantity(v_.telling, strength_kN, "kN")); }
    [[nodiscard]] Table take() { return std::move(table_); }

private:
    const CardView& v_;
    Table table_;
};

inline Table kit_table(const CardView& v) {
    const SheetWords& w = v.words.sheet;
    Kit kit(v);
    for (const LegPlan& leg : v.plan.frame.legs)
        kit.add(std::string(w.leg), quantity(v.telling, leg.length_m, "m") + ", " + quantity(v.telling, leg.rating_kN, "kN"));
    for (const RopePlan& r : v.plan.ropes) {
        if (r.strength_kN) kit.add(filled_name(w.rope, r.name), *r.strength_kN);
        else kit.add(filled_name(w.rope, r.name), std::string(w.rope_unknown));
        if (r.haul) kit.add(filled_name(w.pulley, r.name), r.pulley_strength_kN);
        kit.add(filled_name(w.connector, r.name), r.connector_strength_kN);
    }
    for (const GuyPlan& g : v.plan.guys) kit.add(filled_name(w.guy_cord, g.name), g.strength_kN);
    for (const GuyPlan& g : v.plan.guys) kit.add(filled_name(w.anchor, g.name), g.anchor_strength_kN);
    for (const Hobble& h : v.plan.frame.hobbles) kit.add(filled_name(w.hobble, std::to_string(h.from + 1) + "-" + std::to_string(h.to + 1)), h.strength_kN);
    for (const FootPlan& f : v.plan.feet) {
        for (const FootTie& tie : f.ties) kit.add(std::string(w.foot_tie), tie.strength_kN);
        if (f.pin_shear_kN > 0.0) kit.add(std::string(w.foot_pin), f.pin_shear_kN);
    }
    return kit.take();
}

}  // namespace guywright::detail
