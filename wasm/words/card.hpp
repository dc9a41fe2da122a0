#pragma once
#include "wasm/app/speech.hpp"

// Card, strip and what says why.
namespace guywright::words {

using app::Counted;
using app::Said;

inline constexpr Said k_card{"Card", "Fiche"};
inline constexpr Said k_broken{"broken", "enfreint"};
inline constexpr Said k_kept{"kept", "respecté"};
inline constexpr Said k_over{"{n} % over", "{n} % de trop"};
inline constexpr Said k_to_spare{"{n} % to spare", "{n} % de marge"};
inline constexpr Said k_check_code{"Check code  {code}", "Code de contrôle  {code}"};
inline constexpr Said k_signed{"Signed: {name}, {role}, {time}", "Signé : {name}, {role}, {time}"};
inline constexpr Said k_cautions{"Cautions", "Mises en garde"};
inline constexpr Said k_no_cautions{"No cautions from the checks", "Aucune mise en garde"};
inline constexpr Said k_what_this_is_not{"What this is not", "Ce que ceci n'est pas"};
inline constexpr Said k_named{"{what}: {name}", "{what} : {name}"};
inline constexpr Counted k_missing{
    {"Not entered yet: {n}. Nothing is judged before every one is.", "Pas encore saisie : {n} valeur. Rien n'est jugé sans elle."},
    {"Not entered yet: {n}. Nothing is judged before every one is.", "Pas encore saisies : {n} valeurs. Rien n'est jugé sans elles."}};
inline constexpr Said k_go_to{"Go to: {what}", "Aller à : {what}"};

inline constexpr Said k_forces_of{"Forces, {case}", "Forces, {case}"};
inline constexpr Said k_force_of_guy{"Guy {name}", "Hauban {name}"};
inline constexpr Said k_force_of_leg{"Leg{n}", "Jambe{n}"};
inline constexpr Said k_foot_sideways{"Foot{n} sideways", "Pied{n} de côté"};
inline constexpr Said k_force_of_pulley{"Pulley, rope {name}", "Poulie, corde {name}"};
inline constexpr Said k_force_angle{"Applied-force angle", "Angle de la force en tête"};
inline constexpr Said k_head_moves{"Head moves", "La tête bouge"};

inline constexpr Counted k_to_enter{{"{n} value still to enter", "{n} valeur encore à saisir"}, {"{n} values still to enter", "{n} valeurs encore à saisir"}};
inline constexpr Said k_still_checking{"Still checking what measuring error could do\u2026", "Examen de l'effet des erreurs de mesure\u2026"};
inline constexpr Said k_caution_count{"cautions", "mises en garde"};

// What a sentence calls a number that was measured.
inline constexpr Said k_the_input{"the {label}", "{label}"};
inline constexpr Said k_input_of_guy{"the {label} of guy {name}", "{label}, hauban {name}"};
inline constexpr Said k_input_of_rope{"the {label} of rope {name}", "{label}, corde {name}"};
inline constexpr Said k_input_of_leg{"the {label}, leg {n}", "{label}, jambe {n}"};

}  // namespace guywright::words
