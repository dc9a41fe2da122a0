#pragma once
#include "engine/codec/change_words.hpp"

namespace guywright {

inline constexpr ChangeWords k_french_change{
    .inputs = {{
        {Input::Pretension, "Mettre la prétension du hauban {name} à {to} (à présent {from})."},
        {Input::AllPretensions, "Amener la prétension de chaque hauban à {to} au moins (la plus faible à présent : {from})."},
        {Input::Parts, "Passer le hauban {name} à {to} brins (à présent {from})."},
        {Input::AllParts, "Passer chaque hauban à {to} brins au moins (le plus petit nombre à présent : {from})."},
        {Input::Cord, "Prendre pour le hauban {name} une cordelette d'au moins {to} (à présent {from}), pas plus élastique que l'actuelle."},
        {Input::AllCords,
         "Prendre pour tous les haubans des cordelettes d'au moins {to} (la plus faible à présent : {from}), pas plus élastiques que les actuelles."},
        {Input::LeanAnchorsStay,
         "Mettre l'inclinaison de jambe à {to} (à présent {from}) et ramener chaque hauban à sa prétension ; amarrages et halage restent en place."},
        {Input::HaulBearing, "Placer le halage de la corde {name} dans la direction {to} (à présent {from})."},
        {Input::HaulDistance, "Placer le halage de la corde {name} à {to} de l'aplomb de la tête (à présent {from})."},
        {Input::HaulHeight, "Placer le halage de la corde {name} à une hauteur de {to} (à présent {from})."},
        {Input::AddFootTie, "{leg}ajouter un lien de pied dans la direction {bearing}."},
        {Input::GuyBearing, "Placer l'amarrage du hauban {name} dans la direction {to} (à présent {from}), où il doit tenir autant."},
        {Input::GuyInclination,
         "Déplacer l'amarrage du hauban {name} jusqu'à une inclinaison du hauban de {to} (à présent {from}) : à {away} de l'aplomb de la tête (à présent {was_away}), où il doit tenir autant."},
        {Input::GuyDistance, "Placer l'amarrage du hauban {name} à {away} de l'aplomb de la tête (à présent {was_away}), où il doit tenir autant."},
        {Input::AddGuy, "Ajouter un hauban dans la direction {bearing}, amarré à {away} de l'aplomb de la tête, monté et amarré comme son voisin."},
        {Input::Load, "Réduire la charge à {to} (à présent {from})."},
        {Input::FootOutAnchorsStay, "Déplacer {feet} de {by} {way} ; amarrages et halage restent en place, chaque hauban est ramené à sa prétension."},
        {Input::FootSideAnchorsStay, "Déplacer {feet} de {by} {way} ; amarrages et halage restent en place, chaque hauban est ramené à sa prétension."},
        {Input::LeanAnew,
         "Mettre l'inclinaison de jambe à {to} (à présent {from}) et replacer amarrages et halage depuis le nouvel aplomb de la tête, directions et inclinaisons inchangées ; chacun doit y tenir autant."},
        {Input::FootOutAnew,
         "Déplacer {feet} de {by} {way} et replacer amarrages et halage depuis le nouvel aplomb de la tête, directions et inclinaisons inchangées ; chacun doit y tenir autant."},
        {Input::FootSideAnew,
         "Déplacer {feet} de {by} {way} et replacer amarrages et halage depuis le nouvel aplomb de la tête, directions et inclinaisons inchangées ; chacun doit y tenir autant."},
    }},
    .feet = {"le pied", "tous les pieds ensemble"},
    .ways = {"vers le bord", "en s'éloignant du bord", "vers la gauche", "vers la droite"},
    .heading = "Ce qui changerait le verdict, le moindre effort d'abord",
    .together = "Les deux ensemble :",
    .more = "{n} de plus dans le rapport.",
    .out_of_reach = "Aucun changement à portée ne donne GO. Le plus proche essayé échoue encore sur ceci : {what}",
    .anchors_heading = "Meilleurs amarrages parmi ceux trouvés, haubans et halage comme saisis",
    .anchors = "Amarrages {names}, prétension {pretension} : {verdict}, marge d'au moins {margin} % ({what}).",
    .anchors_broken = "Amarrages {names}, prétension {pretension} : {verdict}, règle enfreinte : {what}.",
};
static_assert(k_french_change.in_order());

}  // namespace guywright
