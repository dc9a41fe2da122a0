#include "wasm/app/inputs.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "wasm/words/keys.hpp"

namespace guywright::app {
namespace {

using Part = scene::Highlight::Part;

constexpr std::string_view k_degree_sign = "\u00B0";

// As the plan keeps them; feet and pounds have slides of their own, in round steps.
// clang-format off
constexpr std::array k_inputs{
    Input{"edge.face_deg", {"Edge angle", "Angle du bord"},
          {"How steeply it falls; 90 is a straight drop.", "Pente de la paroi ; 90 : à la verticale."}, "deg", {{10, 120, 1, 0}}, 1, Part::Edge},
    Input{"edge.rope_friction", {"Friction at the edge", "Frottement au bord"},
          {"About 0.3 on rock or concrete, 0.1 on rollers.", "Env. 0,3 sur roche ou béton, 0,1 sur rouleaux."}, "", {{0, 1, 0.05, 2}}, 1, Part::Edge},
    Input{"edge.compass_out_deg", {"Compass, straight out", "Boussole vers le vide"},
          {"Heading straight out over the edge, not corrected.", "Cap droit vers le vide, sans correction."}, "deg", {{0, 360, 1, 0}}, 1, Part::Edge},
    Input{"edge.opening_m", {"Ground again after", "Largeur de l'ouverture"},
          {"Tape from this edge across to the far one.", "Au mètre, de ce bord à celui d'en face."}, "m", {{0.5, 10, 0.05, 2}, {1.5, 33, 0.1, 2}}, 1, Part::Edge},
    Input{"frame.foot_m[#][0]", {"Foot behind the edge", "Pied en retrait du bord"},
          {"Tape straight back; minus is past the edge.", "Au mètre, tout droit ; moins : au-delà du bord."}, "m", {{-4, 8, 0.05, 2}, {-13, 26, 0.1, 2}}, -1, Part::Foot},
    Input{"frame.foot_m[#][1]", {"Foot to the left", "Pied vers la gauche"},
          {"Of the line straight out; minus is right.", "De l'axe vers le vide ; moins : à droite."}, "m", {{-5, 5, 0.05, 2}, {-16, 16, 0.1, 2}}, 1, Part::Foot},
    Input{"frame.foot_m[#][2]", {"Foot height", "Hauteur du pied"},
          {"Above the edge; minus is lower.", "Au-dessus du bord ; moins : plus bas."}, "m", {{-3, 3, 0.05, 2}, {-10, 10, 0.1, 2}}, 1, Part::Foot},
    Input{"frame.leg_length_m[#]", {"Leg length", "Longueur de jambe"},
          {"From the foot to the eye of the head.", "Du pied à l'œil de la tête."}, "m", {{0.5, 6, 0.05, 2}, {1.5, 20, 0.1, 2}}, 1, Part::Leg},
    Input{"frame.lean_deg", {"Lean", "Inclinaison de jambe"},
          {"From upright; plus is out over the edge.", "Depuis la verticale ; plus : vers le vide."}, "deg", {{-30, 60, 1, 0}}, 1, Part::Lean},
    Input{"frame.lean_bearing_deg", {"Lean toward", "Penche vers"},
          {"Bearing: 0 straight out, 90 right, 180 back.", "0 vers le vide, 90 à droite, 180 en arrière."}, "deg", {{0, 360, 5, 0}}, 1, Part::Lean},
    Input{"frame.leg_rating_kN[#]", {"Leg strength", "Résistance de jambe"},
          {"Compression at which it fails, on its plate.", "Compression de rupture, sur sa plaque."}, "kN", {{1, 100, 0.5, 1}, {200, 22500, 100, 0}}, 1, Part::Leg},
    Input{"frame.leg_mass_kg[#]", {"Leg mass", "Masse de jambe"},
          {"With its share of the head and its kit.", "Avec sa part de la tête et du matériel."}, "kg", {{0, 60, 0.5, 1}, {0, 130, 1, 1}}, 1, Part::Leg},
    Input{"frame.leg_EA_kN[#]", {"Leg stiffness EA", "Raideur EA de jambe"},
          {"{a} is a usual aluminium tube.", "{a} : un tube d'aluminium courant."}, "kN", {{1000, 100000, 1000, 0}, {200000, 22500000, 100000, 0}}, 1, Part::Leg, {20000}},
    Input{"frame.pole_diameter_mm[#]", {"Pole diameter", "Diamètre de perche"},
          {"At its thinnest, without bark.", "Au plus mince, sans écorce."}, "mm", {{40, 300, 5, 0}, {1.5, 12, 0.25, 2}}, 1, Part::Leg},
    Input{"frame.pole_wall_mm[#]", {"Pole wall", "Épaisseur du tube"},
          {"Thickness of a tube's wall; 0 is solid.", "De la paroi ; 0 : perche pleine."}, "mm", {{0, 30, 0.5, 1}, {0, 1.2, 0.02, 2}}, 1, Part::Leg},
    Input{"frame.pole_E_GPa[#]", {"Pole stiffness E", "Module E de perche"},
          {"About 10 for sound spruce, 69 for aluminium.", "Env. 10 : épicéa sain, 69 : aluminium."}, "GPa", {{1, 210, 1, 0}}, 1, Part::Leg},
    Input{"frame.hobbles[#].strength_kN", {"Strength between the feet", "Résistance entre pieds"},
          {"Breaking load of the tie with its knots.", "Rupture du lien avec ses nœuds."}, "kN", {{1, 60, 0.1, 1}, {200, 13500, 50, 0}}, 1, Part::Hobble},
    Input{"ropes[#].load_kg", {"Load", "Charge"},
          {"All that hangs on the rope, people and kit.", "Tout ce qui pend : personnes et matériel."}, "kg", {{10, 500, 5, 0}, {20, 1100, 10, 0}}, 1, Part::Rope},
    Input{"ropes[#].share", {"Share of the load", "Part de la charge"},
          {"What this rope carries while all are tight.", "Portée par cette corde, toutes tendues."}, "", {{0.1, 1, 0.05, 2}}, 1, Part::Rope},
    Input{"ropes[#].haul.bearing_deg", {"Haul side bearing", "Direction du halage"},
          {"From below the head; 180 is straight back.", "De l'aplomb de la tête ; 180 : en arrière."}, "deg", {{0, 360, 5, 0}}, 1, Part::Haul},
    Input{"ropes[#].haul.distance_m", {"Haul side distance", "Distance du halage"},
          {"From below the head to the first redirect.", "De l'aplomb de la tête au premier renvoi."}, "m", {{0, 30, 0.1, 1}, {0, 100, 0.5, 1}}, 1, Part::Haul},
    Input{"ropes[#].haul.height_m", {"Haul side height", "Hauteur du halage"},
          {"Of the first redirect above the edge.", "Du premier renvoi au-dessus du bord."}, "m", {{-2, 4, 0.1, 1}, {-6, 13, 0.2, 1}}, 1, Part::Haul},
    Input{"ropes[#].swing_deg", {"Rope to the side", "Corde de côté"},
          {"How far it hangs to the right; minus is left.", "Écart vers la droite ; moins : à gauche."}, "deg", {{-45, 45, 1, 0}}, 1, Part::Rope},
    Input{"ropes[#].outward_deg", {"Rope pulled outward", "Corde tirée vers le vide"},
          {"How far it is held away from the face.", "Angle dont on l'écarte de la paroi."}, "deg", {{0, 60, 1, 0}}, 1, Part::Rope},
    Input{"ropes[#].pulley_efficiency", {"Pulley efficiency", "Rendement de poulie"},
          {"0.9 with bearings, 0.7 on a plain sheave.", "0,9 sur roulement, 0,7 sur réa lisse."}, "", {{0.3, 1, 0.05, 2}}, 1, Part::Head},
    Input{"ropes[#].pulley_strength_kN", {"Pulley strength", "Résistance de poulie"},
          {"Breaking load marked on it.", "Charge de rupture marquée dessus."}, "kN", {{5, 60, 1, 0}, {1000, 13500, 250, 0}}, 1, Part::Head},
    Input{"ropes[#].connector_strength_kN", {"Connector strength", "Résistance connecteur"},
          {"Of what holds the pulley, gate locked.", "De ce qui tient la poulie, doigt verrouillé."}, "kN", {{5, 60, 1, 0}, {1000, 13500, 250, 0}}, 1, Part::Head},
    Input{"ropes[#].strength_kN", {"Rope strength", "Résistance de corde"},
          {"Breaking load without knots, from its sheet.", "Rupture sans nœud, selon sa notice."}, "kN", {{1, 60, 0.5, 1}, {200, 13500, 100, 0}}, 1, Part::Rope},
    Input{"ropes[#].knot_efficiency", {"Rope left after knots", "Corde, reste après nœuds"},
          {"Share that knots leave: 0.6 to be safe.", "Part de résistance gardée : 0,6 par prudence."}, "", {{0.3, 1, 0.05, 2}}, 1, Part::Rope},
    Input{"guys[#].bearing_deg", {"Bearing", "Direction"},
          {"Below the head: 0 out, 90 right, 180 back.", "De l'aplomb : 0 vide, 90 droite, 180 arrière."}, "deg", {{0, 360, 5, 0}}, 1, Part::Guy},
    Input{"guys[#].inclination_deg", {"Inclination", "Inclinaison du hauban"},
          {"Of the guy above horizontal, at its anchor.", "Sur l'horizontale, à son amarrage."}, "deg", {{5, 85, 1, 0}}, 1, Part::Guy},
    Input{"guys[#].anchor_height_m", {"Anchor height", "Hauteur d'amarrage"},
          {"Above the edge; minus is lower.", "Au-dessus du bord ; moins : plus bas."}, "m", {{-3, 3, 0.05, 2}, {-10, 10, 0.1, 2}}, 1, Part::Guy},
    Input{"guys[#].anchor_m[0]", {"Anchor behind the edge", "Amarrage en retrait"},
          {"Tape straight back; minus is past the edge.", "Au mètre, tout droit ; moins : au-delà du bord."}, "m", {{-5, 15, 0.05, 2}, {-16, 50, 0.1, 2}}, -1, Part::Guy},
    Input{"guys[#].anchor_m[1]", {"Anchor to the left", "Amarrage vers la gauche"},
          {"Of the line straight out; minus is right.", "De l'axe vers le vide ; moins : à droite."}, "m", {{-10, 10, 0.05, 2}, {-33, 33, 0.1, 2}}, 1, Part::Guy},
    Input{"guys[#].anchor_m[2]", {"Anchor height", "Hauteur d'amarrage"},
          {"Above the edge; minus is lower.", "Au-dessus du bord ; moins : plus bas."}, "m", {{-5, 5, 0.05, 2}, {-16, 16, 0.1, 2}}, 1, Part::Guy},
    Input{"guys[#].pretension_kN", {"Pretension", "Prétension"},
          {"Before the load comes; by hand about {a}.", "Avant la charge ; à la main env. {a}."}, "kN", {{0, 3, 0.05, 2}, {0, 680, 10, 0}}, 1, Part::Guy, {0.3}},
    Input{"guys[#].anchor_strength_kN", {"Anchor strength", "Résistance d'amarrage"},
          {"Force at which it fails, not what it may carry.", "Force de rupture, non la charge permise."}, "kN", {{1, 60, 0.5, 1}, {200, 13500, 100, 0}}, 1, Part::Guy},
    Input{"guys[#].parts", {"Parts", "Brins"},
          {"Strands that run between head and anchor.", "Entre la tête et l'amarrage."}, "", {{1, 9, 1, 0}}, 1, Part::Guy},
    Input{"guys[#].strength_kN", {"Cord strength", "Résistance cordelette"},
          {"One strand, no knots: 7 mm {a}, 8 mm {b}.", "Un brin, sans nœud : 7 mm {a}, 8 mm {b}."}, "kN", {{1, 60, 0.1, 1}, {200, 13500, 50, 0}}, 1, Part::Guy, {9.8, 12.8}},
    Input{"guys[#].knot_efficiency", {"Left after knots", "Reste après nœuds"},
          {"Share that knots leave: 0.6 to be safe.", "Part de résistance gardée : 0,6 par prudence."}, "", {{0.3, 1, 0.05, 2}}, 1, Part::Guy},
    Input{"guys[#].EA_kN", {"Cord stiffness EA", "Raideur EA cordelette"},
          {"Of one strand: {a} for thin nylon cord.", "D'un brin : {a} pour du nylon mince."}, "kN", {{5, 500, 5, 0}, {1000, 110000, 1000, 0}}, 1, Part::Guy, {30}},
    Input{"feet[#].friction", {"Friction under the foot", "Frottement sous le pied"},
          {"0.3 to 0.4 on rock, less when wet or on metal.", "0,3 à 0,4 sur roche, moins si mouillé ou métal."}, "", {{0, 1, 0.05, 2}}, 1, Part::Foot},
    Input{"feet[#].pin_shear_kN", {"Pin or screw", "Broche ou vis"},
          {"Force at which it shears; 0 if there is none.", "Force de cisaillement ; 0 s'il n'y en a pas."}, "kN", {{0, 60, 0.5, 1}, {0, 13500, 100, 0}}, 1, Part::Foot},
    Input{"feet[#].ties[#].bearing_deg", {"Foot tie bearing", "Direction du lien"},
          {"From the foot: 0 straight out, 90 right.", "Depuis le pied : 0 vers le vide, 90 à droite."}, "deg", {{0, 360, 5, 0}}, 1, Part::FootTie},
    Input{"feet[#].ties[#].strength_kN", {"Foot tie strength", "Résistance du lien"},
          {"Tie or its anchor, whichever fails first.", "Du lien ou de son amarrage, le plus faible."}, "kN", {{1, 60, 0.1, 1}, {200, 13500, 50, 0}}, 1, Part::FootTie},
    Input{"candidate_anchors_m[#][0]", {"Bearing", "Direction"},
          {"Below the head: 0 out, 90 right, 180 back.", "De l'aplomb : 0 vide, 90 droite, 180 arrière."}, "deg", {{0, 360, 5, 0}}, 1, Part::None},
    Input{"candidate_anchors_m[#][1]", {"Distance", "Distance"},
          {"Level, from below the head.", "À l'horizontale, de l'aplomb de la tête."}, "m", {{0.5, 15, 0.1, 1}, {2, 50, 0.5, 1}}, 1, Part::None},
    Input{"candidate_anchors_m[#][2]", {"Anchor height", "Hauteur d'amarrage"},
          {"Above the edge; minus is lower.", "Au-dessus du bord ; moins : plus bas."}, "m", {{-5, 5, 0.05, 2}, {-16, 16, 0.2, 1}}, 1, Part::None},
    Input{"candidate_anchor_strengths_kN[#]", {"Anchor strength", "Résistance d'amarrage"},
          {"Force at which it fails, not what it may carry.", "Force de rupture, non la charge permise."}, "kN", {{1, 60, 0.5, 1}, {200, 13500, 100, 0}}, 1, Part::None},
    Input{"actions.dynamic_factor", {"Arrest factor", "Facteur d'arrêt"},
          {"Rope tension in a fall over the load's weight.", "Tension à l'arrêt d'une chute, en fois le poids."}, "", {{1, 5, 0.1, 1}}, 1, Part::AllRopes},
    Input{"actions.swing_deg", {"Swing of the load", "Balancement"},
          {"To both sides, as far as it might go.", "De chaque côté, le pire écart à craindre."}, "deg", {{0, 45, 1, 0}}, 1, Part::AllRopes},
    Input{"actions.outward_deg", {"Pull away from the face", "Traction hors paroi"},
          {"By a tag line or a person pushing off.", "Corde de guidage, ou poussée contre la paroi."}, "deg", {{0, 45, 1, 0}}, 1, Part::AllRopes},
    Input{"tolerances.bearing_deg", {"Error of bearings", "Erreur de direction"},
          {"Either way: a compass errs more than a tape.", "De part et d'autre ; plus à la boussole."}, "deg", {{0, 20, 0.5, 1}}, 1, Part::Anchors},
    Input{"tolerances.lean_deg", {"Error of the lean", "Erreur d'inclinaison"},
          {"Either way: the eye errs more than a level.", "De part et d'autre ; plus à l'œil qu'au niveau."}, "deg", {{0, 20, 0.5, 1}}, 1, Part::Lean},
    Input{"limits.factor_soft", {"Safety factor, cord", "Coefficient, cordelette"},
          {"Breaking load over load, at rest.", "Rupture divisée par charge, en statique."}, "", {{3, 15, 0.5, 1}}, 1, Part::Cord},
    Input{"limits.factor_metal", {"Safety factor, metal", "Coefficient, métal"},
          {"Leg, pulley and connectors, at rest.", "Jambe, poulie et connecteurs, en statique."}, "", {{2, 10, 0.5, 1}}, 1, Part::Metal},
    Input{"limits.factor_anchor", {"Safety factor, anchors", "Coefficient, amarrages"},
          {"Load at rest.", "Charge statique."}, "", {{2, 10, 0.5, 1}}, 1, Part::Anchors},
    Input{"limits.arrest_factor_soft", {"Cord, fall caught", "Cordelette, chute"},
          {"Safety factor while a fall is caught.", "Coefficient pendant l'arrêt d'une chute."}, "", {{2, 15, 0.5, 1}}, 1, Part::Cord},
    Input{"limits.arrest_factor_metal", {"Metal, fall caught", "Métal, chute"},
          {"Safety factor while a fall is caught.", "Coefficient pendant l'arrêt d'une chute."}, "", {{1, 10, 0.5, 1}}, 1, Part::Metal},
    Input{"limits.arrest_factor_anchor", {"Anchors, fall caught", "Amarrages, chute"},
          {"Safety factor while a fall is caught.", "Coefficient pendant l'arrêt d'une chute."}, "", {{1, 10, 0.5, 1}}, 1, Part::Anchors},
};
// clang-format on

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

namespace {

/// The exact decimal that was meant, without the dust of a conversion: 13.94 ft is 4.248912 m.
double without_dust(double kept) {
    char text[40];
    std::snprintf(text, sizeof text, "%.12g", kept);
    return std::strtod(text, nullptr);
}

std::string_view shown_sign(std::string_view unit) { return unit == "deg" ? k_degree_sign : unit; }

/// Of an end of what is allowed, so that it can be typed as it is shown.
std::string end_text(const Scale& scale, const Speech& speech, double shown, bool upper) {
    if (scale.per_kept == 1.0) return short_number(speech, shown);
    const double tens = std::pow(10.0, scale.slide.decimals), dust = 1e-6;
    return short_number(speech, (upper ? std::floor(shown * tens + dust) : std::ceil(shown * tens - dust)) / tens);
}

/// An example of a value, about: to whole steps.
std::string about_text(const Input& input, const Speech& speech, double kept) {
    const Scale scale = scale_of(input, speech);
    return short_number(speech, without_dust(std::round(scale.shown(kept) / scale.slide.step) * scale.slide.step));
}

}  // namespace

double Scale::kept(double shown_value) const { return per_kept == 1.0 ? sign * shown_value : without_dust(sign * shown_value / per_kept); }

Scale scale_of(const Input& input, const Speech& speech) {
    const bool imperial = speech.units == UnitSystem::Imperial;
    const ShownUnit unit = shown_unit(input.unit, speech.units);
    const Slide& slide = imperial ? input.slides.imperial : input.slides.metric;
    return {shown_sign(unit.name), unit.per_kept, input.sign, slide};
}

std::string how_text(const Input& input, const Speech& speech) {
    return say(speech, input.how, {{"{a}", about_text(input, speech, input.examples[0])}, {"{b}", about_text(input, speech, input.examples[1])}});
}

std::string shown_number(const Input& input, const Speech& speech, double plan_value) {
    const Scale scale = scale_of(input, speech);
    return number(speech, scale.shown(plan_value), scale.slide.decimals);
}

std::string with_unit(const Input& input, const Speech& speech, std::string text) {
    const std::string_view unit = scale_of(input, speech).unit;
    if (unit.empty()) return text;
    return text + (unit == k_degree_sign ? "" : " ") + std::string(unit);
}

std::string shown_value(const Input& input, const Speech& speech, double plan_value) {
    return with_unit(input, speech, shown_number(input, speech, plan_value));
}

AllowedEnds allowed_ends(const Input& input, const Speech& speech, const Range& range) {
    const Scale scale = scale_of(input, speech);
    const double a = scale.shown(range.min), b = scale.shown(range.max);
    return {end_text(scale, speech, std::min(a, b), false), end_text(scale, speech, std::max(a, b), true)};
}

std::string allowed_text(const Input& input, const Speech& speech, const Range& range) {
    const AllowedEnds ends = allowed_ends(input, speech, range);
    return say(speech, words::k_allowed, {{"{least}", ends.least}, {"{most}", with_unit(input, speech, ends.most)}});
}

std::string error_text(const Input& input, const Speech& speech, const Tolerances& t, const Range& range, double plan_value) {
    const Scale scale = scale_of(input, speech);
    const auto in_unit = [&](double by) {
        const std::string text = scale.per_kept == 1.0 ? short_number(speech, by) : number(speech, by * scale.per_kept, scale.slide.decimals);
        return "\u00B1 " + with_unit(input, speech, text);
    };
    const auto percent = [&](double by) { return plan_value > 0.0 ? "\u00B1 " + short_number(speech, by) + " %" : std::string(); };
    switch (range.error) {
        case ErrorKind::None: return {};
        case ErrorKind::Bearing: return in_unit(t.bearing_deg);
        case ErrorKind::Inclination: return in_unit(t.inclination_deg);
        case ErrorKind::Lean: return in_unit(t.lean_deg);
        case ErrorKind::Face: return in_unit(t.face_deg);
        case ErrorKind::Distance: return in_unit(t.distance_m);
        case ErrorKind::Load: return percent(t.load_percent);
        case ErrorKind::Pretension: return percent(t.pretension_percent);
    }
    return {};
}

std::optional<double> typed_number(std::string text) {
    constexpr std::string_view k_minus_sign = "\u2212";
    std::erase(text, ' ');
    if (text.starts_with(k_minus_sign)) text.replace(0, k_minus_sign.size(), "-");
    std::replace(text.begin(), text.end(), ',', '.');
    if (text.find_first_not_of("+-.0123456789") != std::string::npos) return std::nullopt;  // "0x20" and "nan" are numbers elsewhere
    char* end = nullptr;
    const double v = std::strtod(text.c_str(), &end);
    if (text.empty() || *end != '\0' || !std::isfinite(v)) return std::nullopt;
    return v;
}

}  // namespace guywright::app
