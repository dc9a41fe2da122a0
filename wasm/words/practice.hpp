#pragma once
#include "wasm/app/speech.hpp"

// Practice on plans that are nobody's rig.
namespace guywright::words::practice {

using app::Said;

inline constexpr Said k_practice{"Practice", "Exercice"};
inline constexpr Said k_practice_sign{"PRACTICE", "EXERCICE"};
inline constexpr Said k_no_rig{"Nothing here is a checked rig. Your own plan lies aside as it was.", "Rien ici n'est un montage contrôlé. Votre plan est mis de côté tel quel."};
inline constexpr Said k_predict{"A drawn site. Predict it before the answer is shown.", "Un site tiré au sort. Prédisez avant de voir la réponse."};
inline constexpr Said k_would_be{"Would be {verdict}. {why}", "Serait {verdict}. {why}"};
inline constexpr Said k_leave{"Back to my plan", "Retour à mon plan"};
inline constexpr Said k_other{"Choose anew", "Autre choix"};
inline constexpr Said k_menu{"Menu", "Menu"};
inline constexpr Said k_back_to_practice{"Back to practice", "Retour à l'exercice"};

}  // namespace guywright::words::practice
