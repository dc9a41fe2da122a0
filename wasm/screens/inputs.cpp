#include "wasm/screens/inputs.hpp"

#include <array>
#include <cmath>
#include <cstdio>

namespace guywright::screens {
namespace {

using Part = scene::Highlight::Part;

constexpr std::array k_inputs{
    Input{"edge.face_deg", "Edge angle", "How steeply the face falls: 90 is a straight drop, more is an overhang.", "\u00B0", 10, 120, 1, 0, 1, Part::Edge},
    Input{"edge.rope_friction", "Friction at the edge", "Rope on the edge: about 0.3 on rock or concrete, 0.1 on rollers.", "", 0, 1, 0.05, 2, 1, Part::Edge},
    Input{"frame.foot_m[#][0]", "Foot to edge", "Tape straight back from the edge line to the foot.", "m", 0, 8, 0.05, 2, -1, Part::Foot},
    Input{"frame.foot_m[#][1]", "Foot to the left", "From the line straight out where the load goes down; minus is to the right.", "m", -5, 5, 0.05, 2, 1, Part::Foot},
    Input{"frame.foot_m[#][2]", "Foot height", "Above the edge; minus is lower.", "m", -3, 3, 0.05, 2, 1, Part::Foot},
    Input{"frame.leg_length_m[#]", "Leg length", "From the foot to the eye of the head.", "m", 0.5, 6, 0.05, 2, 1, Part::Leg},
    Input{"frame.lean_deg", "Lean", "Angle of the leg from upright, inclinometer on the leg.", "\u00B0", -30, 60, 1, 0, 1, Part::Lean},
    Input{"frame.lean_bearing_deg", "Lean toward", "Bearing it leans to: 0 straight out over the edge, 90 right.", "\u00B0", 0, 360, 5, 0, 1, Part::Lean},
    Input{"frame.leg_rating_kN[#]", "Leg strength", "Compression at which the leg fails, from the maker's plate.", "kN", 1, 100, 0.5, 1, 1, Part::Leg},
    Input{"frame.leg_mass_kg[#]", "Leg mass", "With the head and everything that hangs on it.", "kg", 0, 60, 0.5, 1, 1, Part::Leg},
    Input{"frame.leg_EA_kN[#]", "Leg stiffness EA", "Young's modulus times section; 20000 is a usual aluminium tube.", "kN", 1000, 100000, 1000, 0, 1, Part::Leg},
    Input{"ropes[#].load_kg", "Load", "Everything that hangs on the rope, people and kit.", "kg", 10, 500, 5, 0, 1, Part::Rope},
    Input{"ropes[#].haul.bearing_deg", "Haul side bearing", "From the point below the head to the first redirect: 180 is straight back.", "\u00B0", 0, 360, 5, 0, 1, Part::Haul},
    Input{"ropes[#].haul.distance_m", "Haul side distance", "Along the ground from below the head to the first redirect.", "m", 0, 30, 0.1, 1, 1, Part::Haul},
    Input{"ropes[#].haul.height_m", "Haul side height", "Of the first redirect above the edge.", "m", -2, 4, 0.1, 1, 1, Part::Haul},
    Input{"ropes[#].swing_deg", "Rope to the side", "How far the load side already hangs to the right; minus is left.", "\u00B0", -45, 45, 1, 0, 1, Part::Rope},
    Input{"ropes[#].outward_deg", "Rope pulled outward", "How far the load side is held away from the face.", "\u00B0", 0, 60, 1, 0, 1, Part::Rope},
    Input{"ropes[#].pulley_efficiency", "Pulley efficiency", "Force out over force in: 0.9 with bearings, 0.7 on a plain sheave.", "", 0.3, 1, 0.05, 2, 1, Part::Head},
    Input{"ropes[#].pulley_strength_kN", "Pulley strength", "Breaking load marked on it.", "kN", 5, 60, 1, 0, 1, Part::Head},
    Input{"ropes[#].connector_strength_kN", "Connector strength", "Breaking load of what holds the pulley to the head, gate locked.", "kN", 5, 60, 1, 0, 1, Part::Head},
    Input{"guys[#].bearing_deg", "Bearing", "From the point below the head to the anchor: 0 straight out, 90 right, 180 back.", "\u00B0", 0, 360, 5, 0, 1, Part::Guy},
    Input{"guys[#].inclination_deg", "Inclination", "Angle of the guy above horizontal, seen from its anchor.", "\u00B0", 5, 85, 1, 0, 1, Part::Guy},
    Input{"guys[#].anchor_height_m", "Anchor height", "Above the edge; minus is lower.", "m", -3, 3, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_m[0]", "Anchor out over the edge", "From the edge line; minus is behind it.", "m", -15, 5, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_m[1]", "Anchor to the left", "From the line straight out where the load goes down.", "m", -10, 10, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_m[2]", "Anchor height", "Above the edge; minus is lower.", "m", -5, 5, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].pretension_kN", "Pretension", "What it is tightened to before the load comes; by hand about 0.3.", "kN", 0, 3, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_strength_kN", "Anchor strength", "Force at which this anchor fails, not what it may carry.", "kN", 1, 60, 0.5, 1, 1, Part::Guy},
    Input{"guys[#].parts", "Parts", "How many strands run between head and anchor.", "", 1, 9, 1, 0, 1, Part::Guy},
    Input{"guys[#].strength_kN", "Cord strength", "Breaking load of one strand without knots: 7 mm cord 9.8, 8 mm 12.8.", "kN", 1, 60, 0.1, 1, 1, Part::Guy},
    Input{"guys[#].knot_efficiency", "Left after knots", "Share of the strength that knots and hitches leave: 0.6 to be safe.", "", 0.3, 1, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].EA_kN", "Cord stiffness EA", "Force that would double one strand's length: 30 for thin nylon cord.", "kN", 5, 500, 5, 0, 1, Part::Guy},
    Input{"feet[#].friction", "Friction under the foot", "About 0.3 to 0.4 on rock, less when wet or on metal.", "", 0, 1, 0.05, 2, 1, Part::Foot},
    Input{"feet[#].pin_shear_kN", "Pin or screw", "Force at which it shears; 0 if there is none.", "kN", 0, 60, 0.5, 1, 1, Part::Foot},
    Input{"feet[#].ties[#].bearing_deg", "Foot tie bearing", "From the foot: 0 straight out over the edge, 90 right.", "\u00B0", 0, 360, 5, 0, 1, Part::FootTies},
    Input{"feet[#].ties[#].strength_kN", "Foot tie strength", "Breaking load of the tie and its anchor, whichever is less.", "kN", 1, 60, 0.1, 1, 1, Part::FootTies},
    Input{"actions.dynamic_factor", "Arrest factor", "Rope tension when a fall is caught, over the load's weight.", "", 1, 5, 0.1, 1, 1, Part::Rope},
    Input{"actions.swing_deg", "Swing of the load", "To both sides, as far as it might go.", "\u00B0", 0, 45, 1, 0, 1, Part::Rope},
    Input{"actions.outward_deg", "Pull away from the face", "Tag line or a person pushing off.", "\u00B0", 0, 45, 1, 0, 1, Part::Rope},
    Input{"limits.factor_soft", "Safety factor, cord", "Breaking load over the load carried, cords and slings, load at rest.", "", 3, 15, 0.5, 1, 1, Part::None},
    Input{"limits.factor_metal", "Safety factor, metal", "Leg, pulley and connectors, load at rest.", "", 2, 10, 0.5, 1, 1, Part::None},
    Input{"limits.factor_anchor", "Safety factor, anchors", "Load at rest.", "", 2, 10, 0.5, 1, 1, Part::None},
};

/// True where the path is the pattern with every `#` filled by digits.
bool fits(std::string_view pattern, std::string_view path) {
    std::size_t at = 0;
    for (const char c : pattern) {
        if (c == '#') {
            const std::size_t from = at;
            while (at < path.size() && path[at] >= '0' && path[at] <= '9') ++at;
            if (at == from) return false;
        } else if (at >= path.size() || path[at++] != c) {
            return false;
        }
    }
    return at == path.size();
}

}  // namespace

const Input* find_input(std::string_view path) {
    for (const Input& input : k_inputs)
        if (fits(input.pattern, path)) return &input;
    return nullptr;
}

std::size_t index_in(std::string_view path) {
    const std::size_t bracket = path.find('[');
    return bracket == std::string_view::npos || bracket + 1 >= path.size() ? 0 : static_cast<std::size_t>(path[bracket + 1] - '0');
}

std::string path_at(std::string_view pattern, std::size_t index, std::size_t second) {
    std::string path;
    bool first = true;
    for (const char c : pattern) {
        if (c != '#') {
            path += c;
            continue;
        }
        path += std::to_string(first ? index : second);
        first = false;
    }
    return path;
}

std::string shown_number(const Input& input, double plan_value) {
    char text[32];
    const double shown = input.sign * plan_value;
    const double tidy = std::abs(shown) < 0.5 * std::pow(10.0, -input.decimals) ? 0.0 : shown;   // never "-0"
    std::snprintf(text, sizeof text, "%.*f", input.decimals, tidy);
    return text;
}

std::string shown_value(const Input& input, double plan_value) {
    const std::string number = shown_number(input, plan_value);
    if (input.unit.empty()) return number;
    return number + (input.unit == "\u00B0" ? "" : " ") + std::string(input.unit);
}

}  // namespace guywright::screens
