#pragma once
#include "wasm/app/speech.hpp"

// Menu, messages, lock, and the keys of the text view.
namespace guywright::words {

using app::Said;

inline constexpr Said k_lock{"Lock the screen", "Verrouiller l'écran"};
inline constexpr Said k_plans{"Plans kept here", "Plans gardés ici"};
inline constexpr Said k_new{"New plan", "Nouveau plan"};
inline constexpr Said k_open_file{"Open a plan file", "Ouvrir un fichier de plan"};
inline constexpr Said k_save_file{"Save plan file", "Enregistrer le plan"};
inline constexpr Said k_share{"Show as code", "Montrer en code"};
inline constexpr Said k_read_code{"Read a code", "Lire un code"};
inline constexpr Said k_sheet{"Rig sheet", "Fiche de montage"};
inline constexpr Said k_second{"Second check", "Second contrôle"};
inline constexpr Said k_log{"Log of signed verdicts", "Journal des verdicts signés"};
inline constexpr Said k_redo{"Redo", "Rétablir"};
inline constexpr Said k_sun{"Light: sun", "Lumière : soleil"};
inline constexpr Said k_dim{"Light: dim", "Lumière : pénombre"};
inline constexpr Said k_night{"Light: red night", "Lumière : nuit rouge"};
inline constexpr Said k_may_go_dark{"Screen may go dark", "L'écran peut s'éteindre"};
inline constexpr Said k_asking_awake{"Screen: asking\u2026", "Écran : demande\u2026"};
inline constexpr Said k_stays_on{"\u2713 Screen stays on", "\u2713 L'écran reste allumé"};
inline constexpr Said k_awake_refused{"Screen: device refuses to stay on", "Écran : l'appareil refuse de rester allumé"};
inline constexpr Said k_text{"Read as text", "Lire en texte"};
inline constexpr Said k_about{"About", "À propos"};
inline constexpr Said k_close_message{"Back to my plan", "Retour à mon plan"};

// In both languages, whichever is chosen: somebody who cannot read one of them has to find back.
inline constexpr Said k_language{"Language / Langue: English", "Langue / Language : français"};
inline constexpr Said k_metric{"Units / Unités: metric", "Unités / Units : métriques"};
inline constexpr Said k_imperial{"Units / Unités: imperial", "Unités / Units : impériales"};

// The lock.
inline constexpr Said k_locked{"Locked", "Verrouillé"};
inline constexpr Said k_nothing_changes{"No touch and no key changes anything.", "Aucun toucher, aucune touche ne change rien."};
inline constexpr Said k_how_to_open{"To open, hold 1 for a second, let go, then hold 2. The keys 1 and 2 do the same.",
                                    "Pour ouvrir, maintenez 1 une seconde, lâchez, puis maintenez 2. Les touches 1 et 2 font de même."};
inline constexpr Said k_now_second{"1 is done. Now hold 2 for a second.", "1 est fait. Maintenez 2 une seconde."};
inline constexpr Said k_hold_done{"done", "fait"};

// The text view.
inline constexpr Said k_case_shown{"Forces shown for: {case}", "Forces montrées pour : {case}"};
inline constexpr Said k_locked_how{"No touch and no key changes anything. To open, press the first key and then the second.",
                                   "Aucun toucher, aucune touche ne change rien. Pour ouvrir, pressez la première touche, puis la deuxième."};
inline constexpr Said k_open_first{"Open the lock, first key", "Ouvrir le verrou, première touche"};
inline constexpr Said k_open_second{"Open the lock, second key", "Ouvrir le verrou, deuxième touche"};
inline constexpr Said k_have_read{"I have read it", "Je l'ai lu"};
inline constexpr Said k_degrees{"degrees", "degrés"};
inline constexpr Said k_range{"Allowed {least} to {most}{unit}.", "Admis : {least} à {most}{unit}."};
inline constexpr Said k_range_within{"Allowed {least} to {most}{unit}, entered within {error}.", "Admis : {least} à {most}{unit}, saisi à {error} près."};

}  // namespace guywright::words
