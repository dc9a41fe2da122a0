#pragma once
#include "wasm/app/speech.hpp"

// The list of the plans kept, and what can be done with one.
namespace guywright::words {

using app::Said;

inline constexpr Said k_plans_heading{"Plans kept on this device", "Plans gardés sur cet appareil"};
inline constexpr Said k_none_kept{"No plan is kept yet. A plan is kept from its first change on.",
                                  "Aucun plan n'est encore gardé. Un plan est gardé dès son premier changement."};
inline constexpr Said k_no_title{"No name", "Sans nom"};
inline constexpr Said k_open_now{"Open now, {when}", "Ouvert, {when}"};
inline constexpr Said k_unreadable{"Cannot be read, {when}", "Illisible, {when}"};
inline constexpr Said k_why_unreadable{
    "This version of the app cannot read this plan: it is damaged, or from a newer version. It is kept as it is. Its text can be saved as a file.",
    "Cette version de l'appli ne peut pas lire ce plan : il est abîmé, ou d'une version plus récente. Il est gardé tel quel. Son texte peut être enregistré en fichier."};
inline constexpr Said k_more_of_plan{"More of {title}", "Plus sur {title}"};
inline constexpr Said k_back_to_list{"Back to the list", "Retour à la liste"};
inline constexpr Said k_bring_back{"Bring back", "Récupérer"};
inline constexpr Said k_next_page{"Next page", "Page suivante"};
inline constexpr Said k_deleted_last{"Deleted last: {title}.", "Effacé en dernier : {title}."};
inline constexpr Said k_open_plan{"Open this plan", "Ouvrir ce plan"};
inline constexpr Said k_duplicate{"Duplicate", "Dupliquer"};
inline constexpr Said k_save_its_file{"Save its file", "Enregistrer son fichier"};
inline constexpr Said k_delete_plan{"Delete", "Effacer"};

inline constexpr Said k_protected{"The browser has promised not to clear these plans.", "Le navigateur a promis de ne pas effacer ces plans."};
inline constexpr Said k_may_be_cleared{
    "The browser may clear these plans when space runs short or the app is long unused: save a file of what matters.",
    "Le navigateur peut effacer ces plans si la place manque ou si l'appli reste longtemps inutilisée : enregistrez en fichier ce qui compte."};
inline constexpr Said k_denied{"This browser keeps nothing: these plans are gone when the app closes. Save them as files.",
                               "Ce navigateur ne garde rien : ces plans sont perdus à la fermeture. Enregistrez-les en fichiers."};
inline constexpr Said k_full{"The storage is full and the last changes are not kept: save them as a file, and make space.",
                             "Le stockage est plein et les derniers changements ne sont pas gardés : enregistrez-les en fichier et faites de la place."};

}  // namespace guywright::words
