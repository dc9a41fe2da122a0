#pragma once
#include "engine/base/vec.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace guywright {

inline constexpr std::size_t k_max_legs = 3;
inline constexpr std::size_t k_max_guys = 8;
inline constexpr std::size_t k_max_ropes = 4;
inline constexpr std::size_t k_max_foot_ties = 6;
inline constexpr std::size_t k_max_hobbles = 3;
inline constexpr std::size_t k_max_candidate_anchors = 12;

// The plan holds what a person entered, in the units of the plan file (m, kN, kg, degrees), so that reading and writing
// change no digit. build_model() turns it into SI. Bearings: degrees clockwise from above, 0 straight out over the edge.

struct Edge {
    double face_deg = 90.0;                 ///< how steeply the face falls below horizontal; over 90 overhangs
    double rope_friction = 0.3;             ///< rope on the edge
    std::optional<double> compass_out_deg;  ///< compass bearing of "straight out"
    std::optional<double> opening_m;        ///< where ground begins again beyond the edge, as across a shaft
    bool operator==(const Edge&) const = default;
};

enum class FrameKind : unsigned char { Monopod, AFrame, Tripod };

struct LegPlan {
    Vec3 foot_m{-2.0, 0.0, 0.0};
    double length_m = 2.7;
    double EA_kN = 20000.0;   ///< axial stiffness
    double rating_kN = 22.0;  ///< compression at which the leg fails, as the maker gives it
    double mass_kg = 7.0;
    bool held_down = false;  ///< the foot cannot lift
    // An improvised pole, pinned at both ends: its buckling load is computed. Diameter 0: a made leg, the rating counts alone.
    double pole_diameter_mm = 0.0;
    double pole_wall_mm = 0.0;  ///< 0: solid
    double pole_E_GPa = 10.0;   ///< Young's modulus; spruce about 10
    bool operator==(const LegPlan&) const = default;
};

/// A tie between two feet of an A-frame or tripod.
struct Hobble {
    int from = 0, to = 1;  ///< legs
    double strength_kN = 9.8;
    bool operator==(const Hobble&) const = default;
};

struct Frame {
    FrameKind kind = FrameKind::Monopod;
    std::vector<LegPlan> legs{1};
    std::vector<Hobble> hobbles;
    double lean_deg = 0.0;  ///< from upright toward lean_bearing_deg; of an A-frame its plane; a tripod has none
    double lean_bearing_deg = 0.0;
    bool operator==(const Frame&) const = default;
};

/// Where the hauling side goes: from the plumb point under the head.
struct Haul {
    double bearing_deg = 180.0;
    double distance_m = 8.0;
    double height_m = 0.5;  ///< above z = 0
    bool operator==(const Haul&) const = default;
};

struct RopePlan {
    std::string name = "main";
    double load_kg = 100.0;
    double share = 1.0;              ///< of the load, where several ropes carry it
    double swing_deg = 0.0;          ///< of the load side, + to the right
    double outward_deg = 0.0;        ///< of the load side, away from the face
    std::optional<double> edge_y_m;  ///< where it crosses the edge; none: where it lies by itself, straight ahead without swing
    std::optional<Haul> haul;        ///< none: tied off at the head
    double pulley_efficiency = 0.9;
    double pulley_strength_kN = 36.0;
    double connector_strength_kN = 27.0;
    std::optional<double> strength_kN;  ///< of the rope itself; none: the rope is not checked, and the card says so
    double knot_efficiency = 0.6;
    bool operator==(const RopePlan&) const = default;
};

struct GuyPlan {
    std::string name = "guy";
    std::optional<Vec3> anchor_m;   ///< replaces the next three
    double bearing_deg = 0.0;       ///< of the anchor from the plumb point under the head
    double inclination_deg = 30.0;  ///< of the guy above horizontal, seen from its anchor
    double anchor_height_m = 0.0;   ///< above z = 0
    double EA_kN = 30.0;            ///< of one part
    double strength_kN = 9.8;       ///< of one part
    int parts = 1;
    double knot_efficiency = 0.6;
    double pretension_kN = 0.3;
    double anchor_strength_kN = 15.0;
    bool operator==(const GuyPlan&) const = default;
};

/// Along the ground.
struct FootTie {
    double bearing_deg = 180.0;
    double strength_kN = 9.8;
    bool operator==(const FootTie&) const = default;
};

struct FootPlan {
    double friction = 0.4;
    double pin_shear_kN = 0.0;  ///< 0: no pin
    std::vector<FootTie> ties;
    bool operator==(const FootPlan&) const = default;
};

struct Actions {
    double dynamic_factor = 2.0;  ///< arrest: rope tension over the load's weight
    double swing_deg = 10.0;
    double outward_deg = 5.0;
    bool guy_loss_must_hold = false;  ///< the loss of any one guy is judged, not only reported
    bool operator==(const Actions&) const = default;
};

/// Half-widths of the measurements.
struct Tolerances {
    double bearing_deg = 10.0;
    double inclination_deg = 3.0;
    double lean_deg = 3.0;
    double face_deg = 5.0;
    double distance_m = 0.1;
    double load_percent = 10.0;
    double pretension_percent = 30.0;
    bool operator==(const Tolerances&) const = default;
};

/// The trade's rules as data; defaults are common practice, no source.
struct Limits {
    double guy_angle_min_deg = 30.0;
    double guy_angle_good_deg = 45.0;
    double bearing_gap_max_deg = 180.0;
    double bearing_gap_good_deg = 150.0;
    double applied_force_angle_good_deg = 15.0;
    double head_to_edge_m = 0.5;
    double edge_zone_m = 2.0;
    double head_shift_good_percent = 5.0;
    double head_shift_max_percent = 15.0;
    double factor_soft = 10.0;
    double factor_metal = 5.0;
    double factor_anchor = 4.0;
    double arrest_factor_soft = 4.0;
    double arrest_factor_metal = 3.0;
    double arrest_factor_anchor = 2.0;
    bool operator==(const Limits&) const = default;
};

struct Plan {
    std::string title;
    std::string note;
    Edge edge;
    Frame frame;
    std::vector<RopePlan> ropes;
    std::vector<GuyPlan> guys;
    std::vector<FootPlan> feet;
    Actions actions;
    Tolerances tolerances;
    Limits limits;
    std::vector<Vec3> candidate_anchors_m;
    std::vector<double> candidate_anchor_strengths_kN;  ///< one for each candidate, or none at all: then as the weakest anchor in use
    /// Paths of inputs that still show a starting value nobody has measured. While any is left the verdict is NOT CHECKED.
    std::vector<std::string> not_measured;
    bool operator==(const Plan&) const = default;
};

}  // namespace guywright
