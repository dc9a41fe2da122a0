#pragma once
#include <array>

#include "wasm/app/speech.hpp"

// Keys that several screens have, and the names of the steps.
namespace guywright::words {

using app::Counted;
using app::Said;

inline constexpr Said k_back{"Back", "Retour"};
inline constexpr Said k_steps{"Steps", "Étapes"};
inline constexpr Said k_undo{"Undo", "Annuler"};
inline constexpr Said k_next{"Next", "Suite"};
inline constexpr Said k_more{"More", "Plus"};
inline constexpr Said k_more_what{"More: {what}", "Plus : {what}"};
inline constexpr Said k_take{"Take it", "Valider"};
inline constexpr Said k_cancel{"Cancel", "Renoncer"};
inline constexpr Said k_delete{"Delete", "Effacer"};
inline constexpr Said k_back_to_plan{"Back to the plan", "Retour au plan"};
inline constexpr Said k_name_plan{"Name this plan", "Nommer ce plan"};
inline constexpr Said k_page{"page {n} of {all}", "page {n} sur {all}"};
inline constexpr Counted k_right{{"The value with ? is right", "La valeur avec ? est juste"},
                                 {"The {n} values with ? are right", "Les {n} valeurs avec ? sont justes"}};

// Steps, in order; what they are called inside is in wasm/screens/items.cpp.
inline constexpr std::array k_step_titles{Said{"Edge", "Bord"},  Said{"Frame", "Jambes"},   Said{"Rope", "Corde"}, Said{"Guys", "Haubans"},
                                          Said{"Feet", "Pieds"}, Said{"Margins", "Marges"}, Said{"Card", "Fiche"}};

// Sliders, their values and the keypad.
inline constexpr Said k_take_short{"Take", "Mesurer"};
inline constexpr Said k_take_from_device{"Take from device", "Mesurer avec l'appareil"};
inline constexpr Said k_not_entered{"not entered", "non saisi"};
inline constexpr Said k_comma_not_entered{", not entered", ", non saisi"};
inline constexpr Said k_now{"now {value}", "à présent {value}"};
inline constexpr Said k_allowed{"allowed {least} to {most}", "admis : {least} à {most}"};

}  // namespace guywright::words
