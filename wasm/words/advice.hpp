#pragma once
#include "wasm/app/speech.hpp"

// What the app says about advice, around the engine's own sentences. In braces: what is filled in.
namespace guywright::words::advice {

using app::Said;

inline constexpr Said k_advice{"Advice", "Conseil"};
inline constexpr Said k_would_go{"What would make it go", "Ce qui donnerait GO"};
inline constexpr Said k_ties{"Taking in a guy", "Reprendre un hauban"};
inline constexpr Said k_line_up{"Line up the leg", "Aligner la jambe"};
inline constexpr Said k_pretension{"How tight each guy", "Prétension des haubans"};
inline constexpr Said k_order{"Order of work", "Ordre des manœuvres"};
inline constexpr Said k_anchors{"Anchors found", "Amarrages trouvés"};
inline constexpr Said k_directions{"Directions of pull", "Directions de traction"};

inline constexpr Said k_looking{"Still looking\u2026", "Recherche en cours\u2026"};
inline constexpr Said k_looking_found{"Still looking\u2026 Found so far: {n}.", "Recherche en cours\u2026 Trouvé jusqu'ici : {n}."};
inline constexpr Said k_after_check{"It comes once measuring error has been checked\u2026", "Cela viendra quand l'erreur de mesure aura été vérifiée\u2026"};
inline constexpr Said k_enter_first{"Enter what is still missing first. Nothing is advised before.",
                                    "Saisissez d'abord ce qui manque. Rien n'est conseillé avant."};
inline constexpr Said k_go_to_missing{"Go to what is missing", "Aller à ce qui manque"};
inline constexpr Said k_is_go{"It is GO as it stands: nothing has to be changed.", "C'est GO tel quel : rien à changer."};
inline constexpr Said k_changed_since{"The plan has changed since this was found. Nothing was applied.",
                                      "Le plan a changé depuis ce résultat. Rien n'a été appliqué."};
inline constexpr Said k_apply{"Apply", "Appliquer"};
inline constexpr Said k_hardly_to_spare{"Then less than 1 % to spare.", "Marge alors : moins de 1 %."};
inline constexpr Said k_to_spare{"Then {n} % to spare.", "Marge alors : {n} %."};
inline constexpr Said k_least_effort{"The least effort first. Each was checked in full.",
                                     "Le moindre effort d'abord. Chaque changement est entièrement vérifié."};

inline constexpr Said k_as_rigged{"As rigged", "Au repos"};
inline constexpr Said k_loaded{"Holding the load", "En maintien"};
inline constexpr Said k_next_guy{"Next guy", "Hauban suivant"};
inline constexpr Said k_take_in{"take in 10 mm", "reprendre 10 mm"};
inline constexpr Said k_slack{"slack", "mou"};
inline constexpr Said k_no_guys{"There is no guy to take in.", "Il n'y a aucun hauban à reprendre."};

inline constexpr Said k_lean{"Lean", "Inclinaison"};
inline constexpr Said k_off_leg{"Force off the leg", "Angle force-jambe"};
inline constexpr Said k_from_to{"{from} \u2192 {to}", "{from} \u2192 {to}"};
inline constexpr Said k_apply_lean{"Put this lean into the plan", "Mettre cette inclinaison au plan"};
inline constexpr Said k_leg_now{"now {angle}", "à présent {angle}"};
inline constexpr Said k_leg_then{"then {angle}", "ensuite {angle}"};
inline constexpr Said k_takes_in{"{name}: take in", "{name} : reprendre"};
inline constexpr Said k_pays_out{"{name}: pay out", "{name} : donner"};
inline constexpr Said k_way_and_cord{"{way} (cord {cord})", "{way} (cordelette {cord})"};
inline constexpr Said k_steps_one_by_one{"Step by step", "Pas à pas"};

inline constexpr Said k_apply_pretension{"Put these into the plan", "Mettre ces valeurs au plan"};
inline constexpr Said k_pretension_kept{"The plan has at least these already.", "Le plan a déjà ces valeurs."};
inline constexpr Said k_no_guy_slack{"Least pull with which no guy goes slack in any case.",
                                     "Prétension minimale qui garde chaque hauban tendu dans tous les cas."};

inline constexpr Said k_up{"Rigging", "Montage"};
inline constexpr Said k_down{"Taking down", "Démontage"};

inline constexpr Said k_none_found{"Enter the anchors you find on site, up to {n}: the best three and the best four are chosen from them.",
                                   "Saisissez les amarrages trouvés sur place, {n} au plus : les trois et les quatre meilleurs sont choisis."};
inline constexpr Said k_most_anchors{"More than {most} anchors are not compared.", "On ne compare pas plus de {most} amarrages."};
inline constexpr Said k_anchor_name{"anchor {n}", "amarrage {n}"};
inline constexpr Said k_too_few{"At least three are needed.", "Il en faut au moins trois."};
inline constexpr Said k_add_anchor{"Add an anchor found", "Ajouter un amarrage trouvé"};
inline constexpr Said k_remove_anchor{"Remove anchor {n}", "Ôter l'amarrage {n}"};
inline constexpr Said k_one_anchor{"Anchor {n} of {count}", "Amarrage {n} sur {count}"};
inline constexpr Said k_enter_strengths{"Enter the anchors' strengths", "Saisir la résistance des amarrages"};
inline constexpr Said k_use_set{"Take these", "Prendre ceux-ci"};
inline constexpr Said k_show_set{"Show", "Voir"};

inline constexpr Said k_toward{"Pull toward {bearing}, {off} off straight down: {state}", "Traction vers {bearing}, à {off} de la verticale : {state}"};
inline constexpr Said k_straight_down{"Pull straight down: {state}", "Traction verticale : {state}"};
inline constexpr Said k_keeps{"{margin} % to spare, the least: {what}.", "{margin} % de marge, la plus faible : {what}."};
inline constexpr Said k_breaks{"broken: {what}.", "règle enfreinte : {what}."};
inline constexpr Said k_map_how{"Hatched: it breaks, as measured. Dots: pulls of the cases. Squares: guys.",
                                "Hachuré : une règle est enfreinte, tel que mesuré. Points : tractions des cas. Carrés : haubans."};
inline constexpr Said k_turn_left{"Turn left", "À gauche"};
inline constexpr Said k_turn_right{"Turn right", "À droite"};
inline constexpr Said k_steeper{"Steeper", "Plus raide"};
inline constexpr Said k_flatter{"Flatter", "Plus plat"};
inline constexpr Said k_out{"out", "dehors"};

}  // namespace guywright::words::advice
