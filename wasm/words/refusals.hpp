#pragma once
#include <array>

#include "wasm/app/speech.hpp"

// Why something was not done, and what new parts of a plan are called.
namespace guywright::words {

using app::Said;

inline constexpr Said k_gone{"There is no such part in this plan any more.", "Cette partie n'est plus dans le plan."};
inline constexpr Said k_number_gone{"The plan has this number no more.", "Ce nombre n'est plus dans le plan."};
inline constexpr Said k_is_locked{"The screen is locked; nothing was changed.", "L'écran est verrouillé ; rien n'a changé."};

// Numbers.
inline constexpr Said k_type_first{"Type a number first, for example {number}", "Tapez d'abord un nombre, par exemple {number}"};
inline constexpr Said k_not_possible{"{value} is not possible here; {allowed}", "{value} n'est pas possible ici ; {allowed}"};
inline constexpr Said k_hold_still{"Hold the device still first.", "Tenez d'abord l'appareil immobile."};

// Names.
inline constexpr Said k_title_label{"Name of this plan", "Nom de ce plan"};
inline constexpr Said k_guy_label{"Name of guy {name}", "Nom du hauban {name}"};
inline constexpr Said k_rope_label{"Name of rope {name}", "Nom de la corde {name}"};
inline constexpr Said k_empty_name{"Type a name first: at least one letter or digit.", "Tapez d'abord un nom : au moins une lettre ou un chiffre."};
inline constexpr Said k_too_long{"That is {n} characters; at most {most} fit.", "Cela fait {n} caractères ; {most} au plus."};
inline constexpr Said k_no_sign{
    "The app has no sign for {sign}. Write it with the letters of English, French or Spanish, digits and the usual signs.",
    "L'appli n'a pas de signe pour {sign}. Écrivez avec les lettres du français, de l'anglais ou de l'espagnol, des chiffres et les signes usuels."};
inline constexpr Said k_guy_name_taken{"Another guy is called {name}. Every guy needs a name of its own.",
                                       "Un autre hauban s'appelle {name}. À chaque hauban son propre nom."};
inline constexpr Said k_rope_name_taken{"Another rope is called {name}. Every rope needs a name of its own.",
                                        "Une autre corde s'appelle {name}. À chaque corde son propre nom."};
inline constexpr Said k_at_the_end{"It is at the end of the list already.", "C'est déjà au bout de la liste."};

// What cannot be added, removed or turned into something else.
inline constexpr Said k_feet_tied_already{"These feet are tied together already.", "Ces pieds sont déjà liés."};
inline constexpr Said k_most_ropes{"More than {most} ropes are not computed.", "On ne calcule pas plus de {most} cordes."};
inline constexpr Said k_most_guys{"More than {most} guys are not computed.", "On ne calcule pas plus de {most} haubans."};
inline constexpr Said k_most_ties{"More than {most} ties at one foot are not computed.", "On ne calcule pas plus de {most} liens par pied."};
inline constexpr Said k_one_rope{"A plan has at least one rope.", "Un plan a au moins une corde."};
inline constexpr Said k_not_by_position{"The anchor of guy {name} cannot be entered by position as things stand. It stays as it was.",
                                        "L'amarrage du hauban {name} ne peut pas être saisi par position à présent. Il reste comme il était."};
inline constexpr Said k_not_by_bearing{"The anchor of guy {name} cannot be entered by bearing as things stand. It stays as it was.",
                                       "L'amarrage du hauban {name} ne peut pas être saisi par direction à présent. Il reste comme il était."};
inline constexpr Said k_too_far{"It is more than {far} away.", "Il est à plus de {far}."};
inline constexpr Said k_too_high{"It stands too high for that.", "Il est trop haut pour cela."};
inline constexpr Said k_under_the_head{"It stands straight under the head.", "Il est juste à l'aplomb de la tête."};

// Files and steps.
inline constexpr Said k_step_unreadable{"The step in that direction was kept, but cannot be read any more. The plan stays as it is.",
                                        "L'étape de ce côté a été gardée, mais n'est plus lisible. Le plan reste comme il est."};
inline constexpr Said k_file_unusable{"This file cannot be used. Your plan is as it was.", "Ce fichier est inutilisable. Votre plan est comme il était."};
inline constexpr Said k_more_faults{"and {n} more", "et {n} de plus"};

// What begins under a name of its own.
inline constexpr Said k_new_plan{"New rig", "Nouveau montage"};
inline constexpr Said k_main_rope{"main", "principale"};
inline constexpr Said k_back_guy{"back", "arrière"};
inline constexpr Said k_right_guy{"right", "droite"};
inline constexpr Said k_left_guy{"left", "gauche"};

/// Titles, notes and names in assets/examples.
inline constexpr std::array k_example_names{
    Said{"Dam crest A-frame", "Bipied sur la crête du barrage"},
    Said{"Drain shaft tripod", "Trépied au puits de drainage"},
    Said{"Spillway bench inspection", "Banquette du déversoir"},
    k_main_rope,
    k_back_guy,
    k_right_guy,
    k_left_guy,
    Said{"back left", "arr. gauche"},
    Said{"back right", "arr. droite"},
    Said{"front left", "av. gauche"},
    Said{"front right", "av. droite"},
    Said{"front", "avant"},
    Said{"fifth", "cinquième"},
    Said{"A litter is raised up the downstream slope of the quarry dam, over its crest. Invented site.",
         "Une civière est remontée le long du parement aval du barrage de la carrière, par-dessus la crête. Site inventé."},
    Said{"One inspector goes down the drain shaft in the floor of the quarry; the tripod straddles it. Invented site.",
         "Une personne descend dans le puits de drainage, au fond de la carrière ; le trépied l'enjambe. Site inventé."},
    Said{"Two inspectors go down the spillway face of the quarry dam one after the other. Invented site.",
         "Deux personnes descendent l'une après l'autre la face du déversoir du barrage de la carrière. Site inventé."}};

inline constexpr Said k_new_rope{"rope", "corde"};
inline constexpr Said k_new_guy{"guy", "hauban"};
inline constexpr Said k_copy{", copy", ", copie"};

}  // namespace guywright::words
