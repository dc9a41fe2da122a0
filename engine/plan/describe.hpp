#pragma once
#include "engine/plan/plan.hpp"
#include "engine/plan/ranges.hpp"

#include <concepts>
#include <type_traits>

namespace guywright {

// The one place that lists every key of the plan with its range. A visitor `v` decides what is done with it: the codec
// reads and writes, find_faults() checks, the screens look up a slider. Visitors offer:
//   number(key, double|int&, Range)            required
//   number_or_null(key, optional<double>&, Range)   required, may be null
//   optional_number(key, double|optional<double>&, Range)   may be left out
//   text(key, string&, longest), optional_text(key, string&, longest)
//   number_column, optional_number_column, point_column, optional_flag_column: one array entry per leg, see describe(Frame)
//   optional_flag(key, bool&)
//   object(key, T&), optional_object(key, T&), object_or_null(key, optional<T>&)
//   list(key, vector<T>&, fewest, most), optional_list(key, vector<T>&, most), optional_points(key, vector<Vec3>&, most, Range), optional_numbers(key, vector<double>&, most, Range), optional_texts(key, vector<string>&, most)
//   point_or(key, optional<Vec3>&, Range, else_function)   the point, or what else_function describes

template <class T, class U>
concept Like = std::same_as<std::remove_const_t<T>, U>;

inline constexpr std::size_t k_longest_name = 40;
inline constexpr std::size_t k_longest_title = 80;
inline constexpr std::size_t k_longest_note = 2000;
inline constexpr std::size_t k_most_not_measured = 200;

template <class V, Like<Edge> T>
void describe(V& v, T& e) {
    v.number("face_deg", e.face_deg, range::face_deg);
    v.number("rope_friction", e.rope_friction, range::friction);
    v.number_or_null("compass_out_deg", e.compass_out_deg, range::exact_bearing_deg);
    v.optional_number("opening_m", e.opening_m, range::opening_m);
}

template <class V, Like<Hobble> T>
void describe(V& v, T& h) {
    v.number("from", h.from, range::leg_index);
    v.number("to", h.to, range::leg_index);
    v.number("strength_kN", h.strength_kN, range::strength_kN);
}

template <class V, Like<Frame> T>
void describe(V& v, T& f) {
    v.kind("kind", f.kind);
    v.point_column("foot_m", f.legs, &LegPlan::foot_m, range::coordinate_m);
    v.number_column("leg_length_m", f.legs, &LegPlan::length_m, range::leg_length_m);
    v.number("lean_deg", f.lean_deg, range::lean_deg);
    v.number("lean_bearing_deg", f.lean_bearing_deg, range::bearing_deg);
    v.number_column("leg_EA_kN", f.legs, &LegPlan::EA_kN, range::leg_EA_kN);
    v.number_column("leg_rating_kN", f.legs, &LegPlan::rating_kN, range::strength_kN);
    v.number_column("leg_mass_kg", f.legs, &LegPlan::mass_kg, range::leg_mass_kg);
    v.optional_flag_column("foot_held_down", f.legs, &LegPlan::held_down);
    v.optional_number_column("pole_diameter_mm", f.legs, &LegPlan::pole_diameter_mm, range::diameter_mm);
    v.optional_number_column("pole_wall_mm", f.legs, &LegPlan::pole_wall_mm, range::wall_mm);
    v.optional_number_column("pole_E_GPa", f.legs, &LegPlan::pole_E_GPa, range::modulus_GPa);
    v.optional_list("hobbles", f.hobbles, k_max_hobbles);
}

template <class V, Like<Haul> T>
void describe(V& v, T& h) {
    v.number("bearing_deg", h.bearing_deg, range::bearing_deg);
    v.number("distance_m", h.distance_m, range::haul_distance_m);
    v.number("height_m", h.height_m, range::height_m);
}

template <class V, Like<RopePlan> T>
void describe(V& v, T& r) {
    v.text("name", r.name, k_longest_name);
    v.number("load_kg", r.load_kg, range::load_kg);
    v.number("share", r.share, range::share);
    v.number("swing_deg", r.swing_deg, range::swing_deg);
    v.number("outward_deg", r.outward_deg, range::outward_deg);
    v.number_or_null("edge_y_m", r.edge_y_m, range::coordinate_m);
    v.object_or_null("haul", r.haul);
    v.number("pulley_efficiency", r.pulley_efficiency, range::efficiency);
    v.number("pulley_strength_kN", r.pulley_strength_kN, range::strength_kN);
    v.number("connector_strength_kN", r.connector_strength_kN, range::strength_kN);
    v.optional_number("strength_kN", r.strength_kN, range::strength_kN);
    v.optional_number("knot_efficiency", r.knot_efficiency, range::knot_efficiency);
}

template <class V, Like<GuyPlan> T>
void describe(V& v, T& g) {
    v.text("name", g.name, k_longest_name);
    v.point_or("anchor_m", g.anchor_m, range::coordinate_m, [&] {
        v.number("bearing_deg", g.bearing_deg, range::bearing_deg);
        v.number("inclination_deg", g.inclination_deg, range::inclination_deg);
        v.number("anchor_height_m", g.anchor_height_m, range::height_m);
    });
    v.number("EA_kN", g.EA_kN, range::guy_EA_kN);
    v.number("strength_kN", g.strength_kN, range::strength_kN);
    v.number("parts", g.parts, range::parts);
    v.number("knot_efficiency", g.knot_efficiency, range::knot_efficiency);
    v.number("pretension_kN", g.pretension_kN, range::pretension_kN);
    v.number("anchor_strength_kN", g.anchor_strength_kN, range::strength_kN);
}

template <class V, Like<FootTie> T>
void describe(V& v, T& t) {
    v.number("bearing_deg", t.bearing_deg, range::bearing_deg);
    v.number("strength_kN", t.strength_kN, range::strength_kN);
}

template <class V, Like<FootPlan> T>
void describe(V& v, T& f) {
    v.number("friction", f.friction, range::friction);
    v.number("pin_shear_kN", f.pin_shear_kN, range::pin_shear_kN);
    v.list("ties", f.ties, 0, k_max_foot_ties);
}

template <class V, Like<Actions> T>
void describe(V& v, T& a) {
    v.number("dynamic_factor", a.dynamic_factor, range::dynamic_factor);
    v.number("swing_deg", a.swing_deg, range::action_deg);
    v.number("outward_deg", a.outward_deg, range::action_deg);
    v.optional_flag("guy_loss_must_hold", a.guy_loss_must_hold);
}

template <class V, Like<Tolerances> T>
void describe(V& v, T& t) {
    v.optional_number("bearing_deg", t.bearing_deg, range::error_deg);
    v.optional_number("inclination_deg", t.inclination_deg, range::error_deg);
    v.optional_number("lean_deg", t.lean_deg, range::error_deg);
    v.optional_number("face_deg", t.face_deg, range::error_deg);
    v.optional_number("distance_m", t.distance_m, range::error_m);
    v.optional_number("load_percent", t.load_percent, range::error_percent);
    v.optional_number("pretension_percent", t.pretension_percent, range::error_percent);
}

template <class V, Like<Limits> T>
void describe(V& v, T& l) {
    v.optional_number("guy_angle_min_deg", l.guy_angle_min_deg, range::limit_angle_deg);
    v.optional_number("guy_angle_good_deg", l.guy_angle_good_deg, range::limit_angle_deg);
    v.optional_number("bearing_gap_max_deg", l.bearing_gap_max_deg, range::limit_gap_deg);
    v.optional_number("bearing_gap_good_deg", l.bearing_gap_good_deg, range::limit_gap_deg);
    v.optional_number("applied_force_angle_good_deg", l.applied_force_angle_good_deg, range::limit_angle_deg);
    v.optional_number("head_to_edge_m", l.head_to_edge_m, range::limit_m);
    v.optional_number("edge_zone_m", l.edge_zone_m, range::limit_m);
    v.optional_number("head_shift_good_percent", l.head_shift_good_percent, range::limit_percent);
    v.optional_number("head_shift_max_percent", l.head_shift_max_percent, range::limit_percent);
    v.optional_number("factor_soft", l.factor_soft, range::factor);
    v.optional_number("factor_metal", l.factor_metal, range::factor);
    v.optional_number("factor_anchor", l.factor_anchor, range::factor);
    v.optional_number("arrest_factor_soft", l.arrest_factor_soft, range::factor);
    v.optional_number("arrest_factor_metal", l.arrest_factor_metal, range::factor);
    v.optional_number("arrest_factor_anchor", l.arrest_factor_anchor, range::factor);
}

/// Everything but "format" and "version", which are the codec's.
template <class V, Like<Plan> T>
void describe(V& v, T& p) {
    v.text("title", p.title, k_longest_title);
    v.optional_text("note", p.note, k_longest_note);
    v.object("edge", p.edge);
    v.object("frame", p.frame);
    v.list("ropes", p.ropes, 1, k_max_ropes);
    v.list("guys", p.guys, 0, k_max_guys);
    v.list("feet", p.feet, 1, k_max_legs);
    v.object("actions", p.actions);
    v.optional_object("tolerances", p.tolerances);
    v.optional_object("limits", p.limits);
    v.optional_points("candidate_anchors_m", p.candidate_anchors_m, k_max_candidate_anchors, range::coordinate_m);
    v.optional_numbers("candidate_anchor_strengths_kN", p.candidate_anchor_strengths_kN, k_max_candidate_anchors, range::strength_kN);
    v.optional_texts("not_measured", p.not_measured, k_most_not_measured, k_longest_name * 2);
}

}  // namespace guywright
