#pragma once
#include <array>

#include "wasm/app/speech.hpp"

// Practice on plans that are nobody's rig.
namespace guywright::words::practice {

using app::Counted;
using app::Said;

inline constexpr Said k_practice{"Practice", "Exercice"};
inline constexpr Said k_practice_sign{"PRACTICE", "EXERCICE"};
inline constexpr Said k_no_rig{"Nothing here is a checked rig. Your own plan lies aside as it was.",
                               "Rien ici n'est un montage contrôlé. Votre plan est mis de côté tel quel."};
inline constexpr Said k_predict{"A drawn site. Predict it before the answer is shown.", "Un site tiré au sort. Prédisez avant de voir la réponse."};
inline constexpr Said k_would_be{"Would be {verdict}. {why}", "Serait {verdict}. {why}"};
inline constexpr Said k_leave{"Back to my plan", "Retour à mon plan"};
inline constexpr Said k_other{"Choose another site", "Choisir un autre site"};
inline constexpr Said k_menu{"Menu", "Menu"};
inline constexpr Said k_back_to_practice{"Back to practice", "Retour à l'exercice"};
inline constexpr Said k_as_drawn{"As drawn. The forces come with the answer.", "Tel que tiré. Les forces viennent avec la réponse."};

// The choice.
inline constexpr Said k_drawn_site{"A drawn site", "Un site tiré au sort"};
inline constexpr Said k_level{"Level {n}", "Niveau {n}"};
inline constexpr std::array k_level_words{
    Said{"Level 1: one leg, a vertical drop, four guys.", "Niveau 1 : une jambe, chute verticale, quatre haubans."},
    Said{"Level 2: one leg; bearings and inclinations vary.", "Niveau 2 : une jambe ; directions et inclinaisons variées."},
    Said{"Level 3: one leg; the haul low or to one side, the load swings.", "Niveau 3 : une jambe ; halage bas ou de côté, balancement."},
    Said{"Level 4: two legs on a slope.", "Niveau 4 : deux jambes sur une pente."},
    Said{"Level 5: three legs on a slope, two ropes.", "Niveau 5 : trois jambes sur une pente, deux cordes."}};
inline constexpr Said k_site_number{"Site {n}", "Site {n}"};
inline constexpr Said k_site_number_label{"Number of the site, 1 to {most}: the same number gives the same site to everyone",
                                          "Numéro du site, 1 à {most} : le même numéro donne le même site à tous"};
inline constexpr Said k_site_number_refused{"\"{typed}\" is no number from 1 to {most}.", "« {typed} » n'est pas un nombre de 1 à {most}."};
inline constexpr Said k_draw{"Draw this site", "Tirer ce site"};
inline constexpr Said k_drawing{"Drawing\u2026", "Tirage\u2026"};
inline constexpr Said k_none_found{"This number gives no site with a clear answer. Take another.",
                                   "Ce numéro ne donne aucun site à réponse nette. Prenez-en un autre."};
inline constexpr Said k_progress{"Progress", "Progrès"};

// The site, and what is asked.
inline constexpr Said k_level_and_site{"Level {level}, site {seed}", "Niveau {level}, site {seed}"};
inline constexpr Said k_look_first{"{place}. Look at it from all sides, read its numbers on the pages that follow, then predict.",
                                   "{place}. Regardez-le de tous côtés, lisez ses nombres aux pages suivantes, puis prédisez."};
inline constexpr Said k_numbers{"The site in numbers", "Le site en nombres"};
inline constexpr Said k_to_predictions{"Predict", "Prédire"};
inline constexpr Said k_to_answer{"See the answer", "Voir la réponse"};
inline constexpr Said k_will_it_stand{"1 of 3: will it stand?", "1 sur 3 : tiendra-t-il ?"};
inline constexpr Said k_stand_how{"GO only where no rule is broken in any case of the day, measuring error included.",
                                  "GO seulement si aucune règle n'est enfreinte, dans aucun cas, erreurs de mesure comprises."};
inline constexpr Said k_which_guy{"2 of 3: which guy works hardest?", "2 sur 3 : quel hauban travaille le plus ?"};
inline constexpr Said k_guy_how{"The one with the greatest tension while the load is held.", "Celui dont la tension est la plus grande, charge tenue."};
inline constexpr Said k_how_far{"3 of 3: how far is the pull off?", "3 sur 3 : écart de la traction ?"};
inline constexpr Said k_angle_how_one{"Angle between the pull of both sides of the rope and the leg, while holding. Within {n}\u00B0 counts.",
                                      "Angle entre la traction des deux brins de la corde et la jambe, charge tenue. À {n}\u00B0 près."};
inline constexpr Said k_angle_how_two{"Angle between the pull of both sides of the rope and the plane of the legs, while holding. Within {n}\u00B0 counts.",
                                      "Angle entre la traction des deux brins et le plan des jambes, charge tenue. À {n}\u00B0 près."};
inline constexpr Said k_angle_how_three{"How far the pull of the ropes falls inside the three legs, while holding; minus is outside. Within {n}\u00B0 counts.",
                                        "De combien la traction passe à l'intérieur des trois jambes ; moins : dehors. À {n}\u00B0 près."};
inline constexpr Said k_show_answer{"Show the answer", "Montrer la réponse"};

// The answer.
inline constexpr Said k_answer{"The answer", "La réponse"};
inline constexpr Said k_still_checking{"Measuring error is still being looked at\u2026", "L'erreur de mesure est encore examinée\u2026"};
inline constexpr Said k_verdict_asked{"Will it stand?", "Tiendra-t-il ?"};
inline constexpr Said k_guy_asked{"Guy that works hardest", "Hauban qui travaille le plus"};
inline constexpr Said k_angle_asked{"Angle of the pull", "Angle de la traction"};
inline constexpr Said k_you_and_true{"You: {said}. It is: {true}.", "Vous : {said}. C'est : {true}."};
inline constexpr Said k_right{"\u2713 right", "\u2713 juste"};
inline constexpr Said k_wrong{"\u2212 not right", "\u2212 pas juste"};
inline constexpr Said k_practice_only{"Practice only: no rig was checked here.", "Exercice seulement : aucun montage n'a été contrôlé."};
inline constexpr Said k_why{"Why", "Pourquoi"};
inline constexpr Said k_what_if{"What if", "Et si"};
inline constexpr Said k_next_site{"Next site", "Site suivant"};
inline constexpr Said k_sentence_of{"Why: {n} of {all}", "Pourquoi : {n} sur {all}"};
inline constexpr Said k_sentence_before{"\u2190 Before", "\u2190 Avant"};
inline constexpr Said k_sentence_after{"After \u2192", "Après \u2192"};
inline constexpr Said k_what_if_how{"Change one and watch. The mark is the site as drawn.", "Changez une valeur et regardez. La marque : le site tiré."};
inline constexpr Said k_drawn_value{"drawn: {value}", "tiré : {value}"};
inline constexpr Said k_diagram{"Forces on the head, to scale", "Forces sur la tête, à l'échelle"};
inline constexpr Said k_polygon{"The same, tail to tip", "Les mêmes, bout à bout"};

// Progress.
inline constexpr Said k_none_answered{"No site answered yet on this device.", "Aucun site répondu sur cet appareil."};
inline constexpr Counted k_sites_answered{{"{n} site answered", "{n} site répondu"}, {"{n} sites answered", "{n} sites répondus"}};
inline constexpr Said k_right_of{"{n} of {all} right", "{n} sur {all} justes"};
inline constexpr Said k_highest{"Highest level so far: {n}", "Niveau le plus haut : {n}"};

// Names in drawn sites: the engine's, and as they are said.
inline constexpr std::array k_site_names{Said{"Spillway bench", "Banquette du déversoir"},
                                         Said{"Dam crest", "Crête du barrage"},
                                         Said{"Drain shaft", "Puits de drainage"},
                                         Said{"Gate tower", "Tour des vannes"},
                                         Said{"Sluice gallery", "Galerie de vidange"},
                                         Said{"Quarry face", "Front de carrière"},
                                         Said{"Crusher ledge", "Rebord du concasseur"},
                                         Said{"Intake wall", "Mur de la prise"},
                                         Said{"Lower berm", "Berme basse"},
                                         Said{"Haul road edge", "Bord de la piste"},
                                         Said{"Valve house roof", "Toit du poste de vannes"},
                                         Said{"Old loading deck", "Ancien quai"},
                                         Said{"front", "avant"},
                                         Said{"front right", "avant droit"},
                                         Said{"right", "droit"},
                                         Said{"back right", "arrière droit"},
                                         Said{"back", "arrière"},
                                         Said{"back left", "arrière gauche"},
                                         Said{"left", "gauche"},
                                         Said{"front left", "avant gauche"},
                                         Said{"main", "principale"},
                                         Said{"safety", "secours"}};

}  // namespace guywright::words::practice
