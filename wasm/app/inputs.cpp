#include "wasm/app/inputs.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "engine/plan/fault_text.hpp"

namespace guywright::app {
namespace {

using Part = scene::Highlight::Part;

constexpr std::array k_inputs{
    Input{"edge.face_deg", "Edge angle", "How steeply it falls; 90 is a straight drop.", "\u00B0", 10, 120, 1, 0, 1, Part::Edge},
    Input{"edge.rope_friction", "Friction at the edge", "About 0.3 on rock or concrete, 0.1 on rollers.", "", 0, 1, 0.05, 2, 1, Part::Edge},
    Input{"edge.compass_out_deg", "Compass, straight out", "Heading straight out over the edge, not corrected.", "\u00B0", 0, 360, 1, 0, 1, Part::Edge},
    Input{"edge.opening_m", "Ground again after", "Tape from this edge across to the far one.", "m", 0.5, 10, 0.05, 2, 1, Part::Edge},
    Input{"frame.foot_m[#][0]", "Foot behind the edge", "Tape straight back; minus is past the edge.", "m", -4, 8, 0.05, 2, -1, Part::Foot},
    Input{"frame.foot_m[#][1]", "Foot to the left", "Of the line straight out; minus is right.", "m", -5, 5, 0.05, 2, 1, Part::Foot},
    Input{"frame.foot_m[#][2]", "Foot height", "Above the edge; minus is lower.", "m", -3, 3, 0.05, 2, 1, Part::Foot},
    Input{"frame.leg_length_m[#]", "Leg length", "From the foot to the eye of the head.", "m", 0.5, 6, 0.05, 2, 1, Part::Leg},
    Input{"frame.lean_deg", "Lean", "From upright; plus is out over the edge.", "\u00B0", -30, 60, 1, 0, 1, Part::Lean},
    Input{"frame.lean_bearing_deg", "Lean toward", "Bearing: 0 straight out, 90 right, 180 back.", "\u00B0", 0, 360, 5, 0, 1, Part::Lean},
    Input{"frame.leg_rating_kN[#]", "Leg strength", "Compression at which it fails, on its plate.", "kN", 1, 100, 0.5, 1, 1, Part::Leg},
    Input{"frame.leg_mass_kg[#]", "Leg mass", "With its share of the head and its kit.", "kg", 0, 60, 0.5, 1, 1, Part::Leg},
    Input{"frame.leg_EA_kN[#]", "Leg stiffness EA", "20000 is a usual aluminium tube.", "kN", 1000, 100000, 1000, 0, 1, Part::Leg},
    Input{"frame.pole_diameter_mm[#]", "Pole diameter", "At its thinnest, without bark.", "mm", 40, 300, 5, 0, 1, Part::Leg},
    Input{"frame.pole_wall_mm[#]", "Pole wall", "Thickness of a tube's wall; 0 is solid.", "mm", 0, 30, 0.5, 1, 1, Part::Leg},
    Input{"frame.pole_E_GPa[#]", "Pole stiffness E", "About 10 for sound spruce, 69 for aluminium.", "GPa", 1, 210, 1, 0, 1, Part::Leg},
    Input{"frame.hobbles[#].strength_kN", "Strength between the feet", "Breaking load of the tie with its knots.", "kN", 1, 60, 0.1, 1, 1, Part::Hobble},
    Input{"ropes[#].load_kg", "Load", "All that hangs on the rope, people and kit.", "kg", 10, 500, 5, 0, 1, Part::Rope},
    Input{"ropes[#].share", "Share of the load", "What this rope carries while all are tight.", "", 0.1, 1, 0.05, 2, 1, Part::Rope},
    Input{"ropes[#].haul.bearing_deg", "Haul side bearing", "From below the head; 180 is straight back.", "\u00B0", 0, 360, 5, 0, 1, Part::Haul},
    Input{"ropes[#].haul.distance_m", "Haul side distance", "From below the head to the first redirect.", "m", 0, 30, 0.1, 1, 1, Part::Haul},
    Input{"ropes[#].haul.height_m", "Haul side height", "Of the first redirect above the edge.", "m", -2, 4, 0.1, 1, 1, Part::Haul},
    Input{"ropes[#].swing_deg", "Rope to the side", "How far it hangs to the right; minus is left.", "\u00B0", -45, 45, 1, 0, 1, Part::Rope},
    Input{"ropes[#].outward_deg", "Rope pulled outward", "How far it is held away from the face.", "\u00B0", 0, 60, 1, 0, 1, Part::Rope},
    Input{"ropes[#].pulley_efficiency", "Pulley efficiency", "0.9 with bearings, 0.7 on a plain sheave.", "", 0.3, 1, 0.05, 2, 1, Part::Head},
    Input{"ropes[#].pulley_strength_kN", "Pulley strength", "Breaking load marked on it.", "kN", 5, 60, 1, 0, 1, Part::Head},
    Input{"ropes[#].connector_strength_kN", "Connector strength", "Of what holds the pulley, gate locked.", "kN", 5, 60, 1, 0, 1, Part::Head},
    Input{"ropes[#].strength_kN", "Rope strength", "Breaking load without knots, from its sheet.", "kN", 1, 60, 0.5, 1, 1, Part::Rope},
    Input{"ropes[#].knot_efficiency", "Rope left after knots", "Share that knots leave: 0.6 to be safe.", "", 0.3, 1, 0.05, 2, 1, Part::Rope},
    Input{"guys[#].bearing_deg", "Bearing", "Below the head: 0 out, 90 right, 180 back.", "\u00B0", 0, 360, 5, 0, 1, Part::Guy},
    Input{"guys[#].inclination_deg", "Inclination", "Of the guy above horizontal, at its anchor.", "\u00B0", 5, 85, 1, 0, 1, Part::Guy},
    Input{"guys[#].anchor_height_m", "Anchor height", "Above the edge; minus is lower.", "m", -3, 3, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_m[0]", "Anchor behind the edge", "Tape straight back; minus is past the edge.", "m", -5, 15, 0.05, 2, -1, Part::Guy},
    Input{"guys[#].anchor_m[1]", "Anchor to the left", "Of the line straight out; minus is right.", "m", -10, 10, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_m[2]", "Anchor height", "Above the edge; minus is lower.", "m", -5, 5, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].pretension_kN", "Pretension", "Before the load comes; by hand about 0.3.", "kN", 0, 3, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].anchor_strength_kN", "Anchor strength", "Force at which it fails, not what it may carry.", "kN", 1, 60, 0.5, 1, 1, Part::Guy},
    Input{"guys[#].parts", "Parts", "Strands that run between head and anchor.", "", 1, 9, 1, 0, 1, Part::Guy},
    Input{"guys[#].strength_kN", "Cord strength", "One strand, no knots: 7 mm 9.8, 8 mm 12.8.", "kN", 1, 60, 0.1, 1, 1, Part::Guy},
    Input{"guys[#].knot_efficiency", "Left after knots", "Share that knots leave: 0.6 to be safe.", "", 0.3, 1, 0.05, 2, 1, Part::Guy},
    Input{"guys[#].EA_kN", "Cord stiffness EA", "Of one strand: 30 for thin nylon cord.", "kN", 5, 500, 5, 0, 1, Part::Guy},
    Input{"feet[#].friction", "Friction under the foot", "0.3 to 0.4 on rock, less when wet or on metal.", "", 0, 1, 0.05, 2, 1, Part::Foot},
    Input{"feet[#].pin_shear_kN", "Pin or screw", "Force at which it shears; 0 if there is none.", "kN", 0, 60, 0.5, 1, 1, Part::Foot},
    Input{"feet[#].ties[#].bearing_deg", "Foot tie bearing", "From the foot: 0 straight out, 90 right.", "\u00B0", 0, 360, 5, 0, 1, Part::FootTie},
    Input{"feet[#].ties[#].strength_kN", "Foot tie strength", "Tie or its anchor, whichever fails first.", "kN", 1, 60, 0.1, 1, 1, Part::FootTie},
    Input{"actions.dynamic_factor", "Arrest factor", "Rope tension in a fall over the load's weight.", "", 1, 5, 0.1, 1, 1, Part::AllRopes},
    Input{"actions.swing_deg", "Swing of the load", "To both sides, as far as it might go.", "\u00B0", 0, 45, 1, 0, 1, Part::AllRopes},
    Input{"actions.outward_deg", "Pull away from the face", "By a tag line or a person pushing off.", "\u00B0", 0, 45, 1, 0, 1, Part::AllRopes},
    Input{"limits.factor_soft", "Safety factor, cord", "Breaking load over load, at rest.", "", 3, 15, 0.5, 1, 1, Part::Cord},
    Input{"limits.factor_metal", "Safety factor, metal", "Leg, pulley and connectors, at rest.", "", 2, 10, 0.5, 1, 1, Part::Metal},
    Input{"limits.factor_anchor", "Safety factor, anchors", "Load at rest.", "", 2, 10, 0.5, 1, 1, Part::Anchors},
    Input{"limits.arrest_factor_soft", "Cord, fall caught", "Safety factor while a fall is caught.", "", 2, 15, 0.5, 1, 1, Part::Cord},
    Input{"limits.arrest_factor_metal", "Metal, fall caught", "Safety factor while a fall is caught.", "", 1, 10, 0.5, 1, 1, Part::Metal},
    Input{"limits.arrest_factor_anchor", "Anchors, fall caught", "Safety factor while a fall is caught.", "", 1, 10, 0.5, 1, 1, Part::Anchors},
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

scene::Highlight highlight_of(std::string_view path) {
    const Input* input = find_input(path);
    if (input == nullptr) return {};
    const std::size_t second = path.find('[', path.find('[') + 1);
    return {input->part, index_in(path), second == std::string_view::npos ? 0 : index_in(path.substr(second))};
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

std::string with_unit(const Input& input, std::string number) {
    if (input.unit.empty()) return number;
    return number + (input.unit == "\u00B0" ? "" : " ") + std::string(input.unit);
}

std::string shown_value(const Input& input, double plan_value) { return with_unit(input, shown_number(input, plan_value)); }

std::string allowed_text(const Input& input, const Range& range) {
    const double a = input.sign * range.min, b = input.sign * range.max;
    return "allowed " + number_text(std::min(a, b)) + " to " + with_unit(input, number_text(std::max(a, b)));
}

}  // namespace guywright::app
