#pragma once
#include "engine/codec/practice_words.hpp"

namespace guywright {

// clang-format off
inline constexpr PracticeWords k_french_practice{
    .lines = {{
        {SiteText::RopeSides, "La corde {name} tire la tête vers la charge avec {force} et vers le halage avec {other}."},
        {SiteText::RopeTiedOff, "La corde {name} tire la tête vers la charge avec {force}."},
        {SiteText::Resultant, "Additionnés comme des flèches, tous les brins des cordes tirent avec {force}, à {angle} de la verticale."},
        {SiteText::OffLeg, "Cette traction est à {angle} de la jambe : l'angle de la force en tête."},
        {SiteText::OffLegs, "Cette traction est à {angle} du plan des deux jambes : l'angle de la force en tête."},
        {SiteText::InsideLegs, "Cette traction passe à {angle} à l'intérieur des trois jambes."},
        {SiteText::OutsideLegs, "Cette traction passe à {angle} à l'extérieur des trois jambes."},
        {SiteText::AlongLeg, "{force} vont droit dans la jambe ; il reste {other} en travers, que seuls des haubans peuvent tenir."},
        {SiteText::AlongLegs, "{force} sont dans le plan des jambes ; il reste {other} en travers, que seuls des haubans peuvent tenir."},
        {SiteText::IntoLegs, "Les trois jambes se partagent ces {force} ; les haubans ne font que les stabiliser."},
        {SiteText::HardestGuy, "Le hauban {name} travaille le plus, avec {force} : à {angle} de la jambe, il en tire {other} en travers."},
        {SiteText::HardestOfTwo, "Le hauban {name} travaille le plus, avec {force} : à {angle} du plan des jambes, il en tire {other} en travers."},
        {SiteText::SteadyingGuy, "Le hauban {name} travaille le plus, avec {force} ; il était tendu à {other} avant la charge."},
        {SiteText::ChosenGuy, "Le hauban {name}, votre choix, a {force} et en tire {other} en travers."},
        {SiteText::LegCarries, "{leg} porte {force} : sa part de la traction et ce que les haubans tirent vers le bas."},
        {SiteText::Rule, "Ce qui décide :"},
        {SiteText::Why, "Pourquoi cette règle :"},
        {SiteText::Mend, "Ce qui y remédierait :"},
    }},
    .reasons = {{
        {CheckId::GuyAngle, "un hauban proche de la jambe ne tire guère de côté, et ce qu'il tire comprime la jambe.", "un amarrage plus éloigné, pour que le hauban s'écarte de la jambe."},
        {CheckId::BearingGap, "un hauban ne fait que tirer : dans un vide d'un demi-tour, rien ne retient la tête.", "un hauban dans le vide, ou les autres répartis tout autour."},
        {CheckId::SideTie, "deux jambes ne tiennent que dans leur plan : il faut un hauban de chaque côté.", "un hauban du côté nu, bien écarté du plan des jambes."},
        {CheckId::FrontTie, "une tête près du bord peut retomber vers les amarrages arrière, et une personne est alors tirée par-dessus le bord.", "un hauban amarré en avant de la tête, ou toute la jambe plus en arrière."},
        {CheckId::AnchorHangs, "sans rien sous l'amarrage, rien ne le tient.", "un amarrage au sol : le long du bord ou plus bas dans la pente."},
        {CheckId::FootHangs, "un pied repose sur le sol ou sur rien.", "le pied ramené sur le sol."},
        {CheckId::EdgeZone, "près du bord le sol peut céder, et les personnes doivent être assurées.", "le pied plus en arrière."},
        {CheckId::LimitLoosened, "les limites usuelles gardent de la place pour ce que personne n'a mesuré.", "la limite usuelle."},
        {CheckId::ArrestLeftOut, "une corde qui arrête une chute tire plus fort que la charge immobile.", "un facteur d'arrêt de 2 ou plus."},
        {CheckId::SwingLeftOut, "une charge qui balance tire la tête de côté.", "un balancement aussi large que la charge peut aller."},
        {CheckId::ErrorLeftOut, "ce qui tient d'après les mesures peut ne pas tenir en vrai.", "des erreurs aussi grandes que les outils les font."},
        {CheckId::Solved, "ce qui n'a pas de réponse ne peut être jugé.", "une autre disposition des haubans."},
        {CheckId::Standing, "une tête qu'une petite poussée éloigne toujours plus tombe, si solides que soient les pièces.", "une inclinaison face à la traction, des haubans du côté opposé à la chute, ou plus de prétension."},
        {CheckId::FootLifts, "un pied en l'air ne porte rien, et retombe d'un coup.", "la traction ramenée entre les jambes, un hauban contre elle, ou les pieds boulonnés."},
        {CheckId::HeadShift, "une tête qui bouge beaucoup fait d'autres angles que ceux du dessin.", "des haubans plus raides, plus de brins, ou plus de prétension."},
        {CheckId::GuyAngleOverForce, "un hauban pas plus écarté de la jambe que la traction ne peut la ramener dans la jambe.", "la jambe inclinée vers la traction, le halage remis dans l'axe, ou l'amarrage plus éloigné."},
        {CheckId::AppliedForceAngle, "plus la traction s'écarte de la jambe, plus les haubans ont à tenir.", "la jambe inclinée vers la traction."},
        {CheckId::ForceInside, "une jambe pousse et ne tire pas : une force en dehors soulève un pied.", "le halage remis dans l'axe, ou les pieds plus écartés."},
        {CheckId::GuySlack, "un hauban mou ne tient rien avant que la tête ait bougé.", "plus de prétension."},
        {CheckId::GuyStrength, "nœuds, arêtes et âge prennent une bonne part de la résistance d'une cordelette ; le coefficient est pour eux.", "plus de brins, une cordelette plus forte, ou un angle qui demande moins de tension."},
        {CheckId::AnchorStrength, "un amarrage est moins bien connu que tout le reste du montage.", "un amarrage plus solide, deux amarrages répartis, ou un angle qui demande moins de tension."},
        {CheckId::LegStrength, "la jambe porte la traction et tout ce que les haubans tirent vers le bas ; le coefficient est pour ce que personne n'a mesuré.", "une jambe plus forte, moins de charge, ou des haubans plus plats."},
        {CheckId::LegBuckling, "une perche élancée flambe bien avant d'être écrasée.", "une perche plus épaisse ou plus courte."},
        {CheckId::RopeStrength, "nœuds, arêtes et âge prennent une bonne part de la résistance d'une corde ; le coefficient est pour eux.", "une corde plus forte, ou moins de charge."},
        {CheckId::PulleyStrength, "une poulie porte les deux brins de sa corde, jusqu'à deux fois la charge.", "une poulie plus forte, ou moins de charge."},
        {CheckId::ConnectorStrength, "ce qui tient la poulie porte les deux brins de la corde.", "un connecteur plus fort, ou moins de charge."},
        {CheckId::FootFriction, "une jambe inclinée repousse son pied, et le frottement ne prend qu'une part de ce qui appuie.", "une broche, des liens au pied, ou des entraves entre les pieds."},
        {CheckId::FootPin, "la broche prend ce que le frottement laisse.", "une broche plus forte, ou des liens en plus."},
        {CheckId::FootTies, "les liens prennent ce que le frottement laisse.", "des liens plus forts, ou davantage dans le sens de la poussée."},
        {CheckId::FootHeldDown, "un pied retenu peut tirer vers le haut, et le plan ne dit pas ce que tient sa retenue.", "plus de charge le long de la jambe, ou une retenue connue pour être assez solide."},
        {CheckId::HobbleStrength, "des pieds écartés se repoussent, et le lien entre eux les retient.", "un lien plus fort, ou les pieds brochés."},
        {CheckId::GuyLost, "le plan demande qu'un hauban puisse lâcher.", "un hauban de plus de ce côté."},
    }},
    .the_leg = "La jambe",
    .leg_of_several = "La jambe {n}",
};
static_assert(k_french_practice.in_order());
// clang-format on

}  // namespace guywright
