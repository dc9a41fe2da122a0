#pragma once
#include "wasm/app/speech.hpp"

// A number taken from the device.
namespace guywright::words {

using app::Said;

inline constexpr Said k_hold_inclination{"Lay the long edge along the guy, near its anchor, and keep still.",
                                         "Posez le grand côté le long du hauban, près de son amarrage, sans bouger."};
inline constexpr Said k_hold_leg{"Lay the long edge along the leg, the screen facing away from the side it leans to.",
                                 "Posez le grand côté le long de la jambe, l'écran à l'opposé du côté où elle penche."};
inline constexpr Said k_hold_plane{"Lay the back flat across both legs, the screen facing away from the side they lean to.",
                                   "Posez le dos à plat sur les deux jambes, l'écran à l'opposé du côté où elles penchent."};
inline constexpr Said k_hold_out{"First the line straight out: hold the device flat, away from steel, its upper edge pointing straight out.",
                                 "D'abord l'axe vers le vide : tenez l'appareil à plat, loin de l'acier, le haut pointé droit vers le vide."};
inline constexpr Said k_hold_guy{"Stand below the head, hold the device flat, away from steel, its upper edge pointing at the anchor.",
                                 "Sous la tête, tenez l'appareil à plat, loin de l'acier, le haut pointé vers l'amarrage."};
inline constexpr Said k_hold_haul{"Stand below the head, hold the device flat, away from steel, its upper edge pointing at the redirect.",
                                  "Sous la tête, tenez l'appareil à plat, loin de l'acier, le haut pointé vers le renvoi."};
inline constexpr Said k_hold_tie{"Stand at the foot, hold the device flat, away from steel, its upper edge pointing at the anchor of the tie.",
                                 "Au pied, tenez l'appareil à plat, loin de l'acier, le haut pointé vers l'amarrage du lien."};
inline constexpr Said k_straight_out{"Straight out", "Droit vers le vide"};
inline constexpr Said k_of_guy{"{what}, guy {name}", "{what}, hauban {name}"};

inline constexpr Said k_waiting{"Waiting for a steady reading\u2026", "En attente d'une mesure stable\u2026"};
inline constexpr Said k_moving{"It moves too much. Lean it on something.", "Il bouge trop. Appuyez-le sur quelque chose."};
inline constexpr Said k_flatter{"Hold it flatter: so steep, a compass does not tell where its edge points.",
                                "Tenez-le plus à plat : aussi incliné, la boussole ne dit pas où il pointe."};
inline constexpr Said k_turn_screen{"Turn the screen to face away from the side it leans to; so it does not tell which side that is.",
                                    "Tournez l'écran à l'opposé du côté où elle penche ; posé comme il est, il ne dit pas quel est ce côté."};
inline constexpr Said k_inaccurate{
    "The compass is not accurate enough. Go away from steel, move the device in a figure of eight, or enter the bearing by hand.",
    "La boussole n'est pas assez précise. Éloignez-vous de l'acier, faites un huit avec l'appareil, ou saisissez la direction à la main."};
inline constexpr Said k_refused{"The browser may not read the sensors here. Allow it in its settings, or enter the number by hand.",
                                "Le navigateur n'a pas accès aux capteurs. Autorisez-le dans ses réglages, ou saisissez le nombre à la main."};
inline constexpr Said k_spread{"Spread over two seconds {within}", "Écart sur deux secondes {within}"};
inline constexpr Said k_compass_told{"Compass {heading}, accuracy told {within}", "Boussole {heading}, précision donnée {within}"};
inline constexpr Said k_compass_not_told{"Compass {heading}, accuracy not told", "Boussole {heading}, précision non donnée"};
inline constexpr Said k_as_in_plan{"Counts as {within}, as the plan says.", "Compte pour {within}, comme le dit le plan."};
inline constexpr Said k_inclinations_grow{"Counts as {within}: taking it sets all inclinations of the plan from {before} to {within}.",
                                          "Compte pour {within} : valider porte la tolérance de toutes les inclinaisons de haubans de {before} à {within}."};
inline constexpr Said k_leans_grow{"Counts as {within}: taking it sets all leans of the plan from {before} to {within}.",
                                   "Compte pour {within} : valider porte la tolérance de toutes les inclinaisons de jambe de {before} à {within}."};
inline constexpr Said k_bearings_grow{"Counts as {within}: taking it sets all bearings of the plan from {before} to {within}.",
                                      "Compte pour {within} : valider porte la tolérance de toutes les directions du plan de {before} à {within}."};

}  // namespace guywright::words
