#pragma once
#include "wasm/app/speech.hpp"

// What the steps show besides sliders: groups, choices, keys. Sliders are named in wasm/app/inputs.cpp.
namespace guywright::words {

using app::Said;

inline constexpr Said k_numbered{"{what} {n} of {all}", "{what} {n} sur {all}"};

// Edge.
inline constexpr Said k_edge{"Edge", "Bord"};
inline constexpr Said k_more_of_edge{"a shaft, compass", "un puits, boussole"};
inline constexpr Said k_more_compass{"compass", "boussole"};
inline constexpr Said k_ground_again{"Ground begins again across", "Le sol reprend en face"};
inline constexpr Said k_compass_known{"Compass heading of straight out", "Cap de la boussole vers le vide"};

// Frame.
inline constexpr Said k_frame{"Frame", "Jambes"};
inline constexpr Said k_monopod{"Monopod", "Monopode"};
inline constexpr Said k_a_frame{"A-frame", "Bipied"};
inline constexpr Said k_tripod{"Tripod", "Trépied"};
inline constexpr Said k_leg{"Leg", "Jambe"};
inline constexpr Said k_pole{"Leg is an improvised pole", "La jambe est une perche improvisée"};
inline constexpr Said k_more_of_monopod{"side, height, mass, pole", "côté, hauteur, masse, perche"};
inline constexpr Said k_more_of_lean{"side it leans to", "côté où il penche"};
inline constexpr Said k_more_of_leg{"height, mass, pole", "hauteur, masse, perche"};

// Ropes.
inline constexpr Said k_rope{"Rope", "Corde"};
inline constexpr Said k_more_of_rope{"pulley, name, second rope", "poulie, nom, 2e corde"};
inline constexpr Said k_rope_strength_known{"Rope strength is known", "Résistance de la corde connue"};
inline constexpr Said k_add_rope{"Add a rope", "Ajouter une corde"};
inline constexpr Said k_remove_rope{"Remove rope {name}", "Ôter la corde {name}"};
inline constexpr Said k_over_pulley{"Over the head pulley", "Sur la poulie de tête"};
inline constexpr Said k_tied_off{"Tied off at the head", "Fixée à la tête"};
inline constexpr Said k_name_rope{"Name this rope", "Nommer cette corde"};

// Guys.
inline constexpr Said k_guy{"Guy", "Hauban"};
inline constexpr Said k_more_of_guy{"cord, knots, name, order", "cordelette, nœuds, nom, ordre"};
inline constexpr Said k_by_bearing{"Anchor by bearing", "Amarrage par direction"};
inline constexpr Said k_by_position{"Anchor by position", "Amarrage par position"};
inline constexpr Said k_remove_guy{"Remove guy {name}", "Ôter le hauban {name}"};
inline constexpr Said k_no_guys{"No guys", "Aucun hauban"};
inline constexpr Said k_another_guy{"Another guy?", "Un autre hauban ?"};
inline constexpr Said k_add_guy{"Add a guy", "Ajouter un hauban"};
inline constexpr Said k_eight_guys{"Eight guys are the most that is computed.", "On ne calcule pas plus de huit haubans."};
inline constexpr Said k_name_guy{"Name this guy", "Nommer ce hauban"};
inline constexpr Said k_up{"Move up the list", "Monter dans la liste"};
inline constexpr Said k_down{"Move down the list", "Descendre dans la liste"};

// Feet.
inline constexpr Said k_foot{"Foot", "Pied"};
inline constexpr Said k_foot_can_lift{"Foot can lift", "Le pied peut se lever"};
inline constexpr Said k_foot_is_held{"Foot is held down", "Pied retenu au sol"};
inline constexpr Said k_more_of_foot{"pin, add a tie", "broche, un lien"};
inline constexpr Said k_add_tie{"Add a tie to this foot", "Ajouter un lien à ce pied"};
inline constexpr Said k_foot_tie{"Foot tie", "Lien de pied"};
inline constexpr Said k_tie_of_foot{"Foot {n}, tie", "Pied {n}, lien"};
inline constexpr Said k_remove_tie{"Remove this foot tie", "Ôter ce lien"};
inline constexpr Said k_feet_tied{"Feet tied together", "Pieds liés entre eux"};
inline constexpr Said k_untie{"Untie feet {a} and {b}", "Délier les pieds {a} et {b}"};
inline constexpr Said k_tie_together{"Tie feet {a} and {b} together", "Lier les pieds {a} et {b}"};

// Margins.
inline constexpr Said k_margins{"Margins", "Marges"};
inline constexpr Said k_more_of_margins{"safety factors, loss of a guy", "coefficients, hauban perdu"};
inline constexpr Said k_guy_loss{"Must stand with any one guy lost", "Doit tenir même si un hauban lâche"};
inline constexpr Said k_all_margins{"All margins, the closest first", "Toutes les marges"};

}  // namespace guywright::words
