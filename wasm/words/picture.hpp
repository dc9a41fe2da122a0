#pragma once
#include <array>

#include "wasm/app/speech.hpp"

// The picture of the site: its labels, dimensions and keys, and what stands below it.
namespace guywright::words {

using app::Said;

// Places.
inline constexpr Said k_out{"OUT", "VIDE"};
inline constexpr Said k_edge_line{"edge", "bord"};
inline constexpr Said k_drop{"drop", "à-pic"};
inline constexpr Said k_zone{"{d} zone", "zone {d}"};
inline constexpr Said k_haul{"haul", "halage"};
inline constexpr Said k_slack{"slack", "mou"};

// Dimensions.
inline constexpr Said k_foot_at{"foot {d}", "pied {d}"};
inline constexpr Said k_feet_apart{"feet {d}", "pieds {d}"};
inline constexpr Said k_head_at{"head {d}", "tête {d}"};
inline constexpr Said k_head_up{"head up {d}", "tête à {d}"};
inline constexpr Said k_leg_long{"leg {d}", "jambe {d}"};
inline constexpr Said k_lean_of{"lean {d}", "incl. {d}"};
inline constexpr Said k_face_of{"face {d}", "paroi {d}"};
inline constexpr Said k_to_the_left{"{d} left", "{d} gauche"};
inline constexpr Said k_to_the_right{"{d} right", "{d} droite"};
inline constexpr Said k_in_line{"in line", "dans l'axe"};
inline constexpr Said k_guy_is{"{name}: {d}", "{name} : {d}"};

// Forces.
inline constexpr Said k_off_leg{"{angle} off the leg", "{angle} de la jambe"};
inline constexpr Said k_off_legs{"{angle} off the legs", "{angle} des jambes"};
inline constexpr Said k_ropes_together{"ropes together {force}", "résultante cordes {force}"};
inline constexpr Said k_ropes{"ropes", "cordes"};
inline constexpr Said k_load_side{"load side", "côté charge"};
inline constexpr Said k_haul_side{"haul side", "côté halage"};
inline constexpr Said k_weight{"weight at the head", "poids en tête"};
inline constexpr Said k_pushing_leg{"leg", "jambe"};
inline constexpr Said k_leg_pulls{"{leg} (pulls)", "{leg} (tire)"};
inline constexpr Said k_no_forces{"No forces: this case has no answer.", "Pas de forces : ce cas n'a pas de solution."};

// The way it goes.
inline constexpr Said k_goes{"goes this way", "tombe par là"};
inline constexpr Said k_goes_at{"goes this way at {n} times the load", "tombe par là à {n} fois la charge"};
inline constexpr Said k_weakest{"weakest this way", "sens le plus faible"};

// Keys and names of the picture.
inline constexpr Said k_site{"The site", "Le site"};
inline constexpr Said k_site_large{"The site, large", "Le site, en grand"};
inline constexpr Said k_view{"View: {view}", "Vue : {view}"};
inline constexpr Said k_case{"Case: {case}", "Cas : {case}"};
inline constexpr Said k_case_slider{"Case", "Cas"};
inline constexpr Said k_reset{"Reset view", "Vue de départ"};
inline constexpr Said k_no_case{"No case yet", "Pas encore de cas"};
inline constexpr Said k_of{"{n} of {all}", "{n} sur {all}"};
inline constexpr std::array k_view_keys{Said{"Free", "Libre"}, Said{"Above", "Dessus"}, Said{"Side", "Côté"}, Said{"Behind", "Arrière"},
                                        Said{"Forces", "Forces"}};
inline constexpr std::array k_view_names{Said{"free", "libre"}, Said{"above", "dessus"}, Said{"side", "côté"}, Said{"behind", "arrière"},
                                         Said{"forces", "forces"}};

// Below the picture.
inline constexpr Said k_not_computed{"Nothing is computed yet: something that is needed is missing or cannot be used.",
                                     "Rien n'est encore calculé : une donnée nécessaire manque ou est inutilisable."};
inline constexpr Said k_no_rest{"No forces in this case: the head finds no rest.", "Pas de forces dans ce cas : aucun équilibre de la tête n'est trouvé."};
inline constexpr Said k_falls{"No forces in this case: the rig does not stand.", "Pas de forces dans ce cas : le montage ne tient pas."};
inline constexpr Said k_still{"The head moves less than {least}.", "La tête bouge de moins de {least}."};
inline constexpr Said k_moves_true{"The head moves {by}, drawn as it is.", "La tête bouge de {by}, dessiné tel quel."};
inline constexpr Said k_moves_drawn{"The head moves {by}, drawn {n} times larger.", "La tête bouge de {by}, dessiné {n} fois plus grand."};
inline constexpr Said k_moves_dashed{"As measured. The head moves {by}, dashed {n} times larger.",
                                     "Tel que mesuré. La tête bouge de {by}, en pointillé {n} fois plus grand."};
inline constexpr Said k_dashed_measured{"Dashed: as measured.", "En pointillé : tel que mesuré."};
inline constexpr Said k_tail_to_tip{"Every force on the head, tail to tip, to scale. Left over: {force}.",
                                    "Toutes les forces en tête, bout à bout, à l'échelle. Reste : {force}."};

}  // namespace guywright::words
