#pragma once
#include <array>

#include "engine/practice/lesson.hpp"
#include "wasm/app/speech.hpp"

// The course. In what a lesson says: {r} is its first reading now and {r0} as it began, {s}, {t} and {u} the further ones, {m} and {n} what was
// moved; {load} the load on the rope and {weight} its weight, {names} the guys that the question was about.
namespace guywright::words::lessons {

using app::Said;

/// One lesson: its name, what it is about, and what came out.
struct LessonWords {
    Said title, idea, closing;
};

inline constexpr std::array<LessonWords, k_lesson_count> k_lessons{{
    {{"Pull at the head", "La force en tête"},
     {"Both sides of the rope pull at the head: together one pull, halfway between them. Bring the leg under it.",
      "Les deux brins tirent en tête : ensemble une seule force, à mi-chemin. Amenez la jambe dessous."},
     {"{r0} off the leg, the hardest guy carried {s0}. At {r} it carries {s}: the leg takes the pull, the guys only keep it there.",
      "À {r0} de la jambe, le hauban le plus chargé portait {s0}. À {r}, {s} : la jambe prend la force, les haubans la gardent en place."}},
    {{"Guy angle", "L'angle du hauban"},
     {"The nearer a guy runs to the leg, the harder it works for the same hold, and all of it presses the leg. Move its anchor out.",
      "Plus un hauban longe la jambe, plus il force pour tenir autant, et tout appuie sur la jambe. Éloignez son amarrage."},
     {"{s0} off the leg the guy carried {r0} and the leg {t0}. At {s} it is {r} and {t}, for the same pull at the head.",
      "À {s0} de la jambe, le hauban portait {r0} et la jambe {t0}. À {s} : {r} et {t}, pour la même force en tête."}},
    {{"Rope on the edge", "La corde sur le bord"},
     {"What the rope turns over the edge is paid for in raising. Bring the head out, or up, until it hardly touches.",
      "Ce que la corde tourne sur le bord se paie à la montée. Amenez la tête dehors, ou plus haut, jusqu'à ce qu'elle touche à peine."},
     {"Turning {t0} over the edge, raising took {s0}. At {t} it takes {s}. Flat on the ground the edge would add {u}.",
      "Avec {t0} sur le bord, monter demandait {s0}. Avec {t}, {s}. À plat sur le sol, le bord ajouterait {u}."}},
    {{"Slack guys", "Haubans mous"},
     {"At rest nobody sees a slack guy. Let the load swing, and the head goes until something is tight. Try it with four guys.",
      "Au repos, un hauban mou ne se voit pas. Au balancement, la tête part jusqu'à ce que ça tende. Essayez avec quatre haubans."},
     {"Three guys, swing {m0}: the head goes {r0}. Four, swing {m}: {r}. At rest you saw {t0} and {t}.",
      "Trois haubans, balancement {m0} : la tête part de {r0}. Quatre, {m} : {r}. Au repos, on voyait {t0} et {t}."}},
    {{"One guy gone", "Un hauban en moins"},
     {"A leg stands without one guy only if those left still hold all round. Move the fifth to where it helps.",
      "Sans un hauban, la jambe ne tient que si les autres tiennent encore tout autour. Déplacez le cinquième là où il aide."},
     {"At {m0} the fifth helped nobody: without {names} the leg went. At {m} any one guy may go while the load hangs still.",
      "À {m0}, le cinquième n'aidait pas : sans {names}, la jambe partait. À {m}, n'importe lequel peut lâcher, charge immobile."}},
    {{"The foot", "Le pied"},
     {"Leaning, the leg pushes its foot away. How much of the friction that uses is a matter of lean, hardly of load. Try both.",
      "Penchée, la jambe pousse son pied. La part de frottement prise dépend de l'inclinaison, à peine de la charge. Essayez les deux."},
     {"Lean {m0}, {n0}: {s0} of push on {t0} of friction. Lean {m}, {n}: {s} on {t}. A foot that must lean further needs a tie.",
      "Inclinaison {m0}, {n0} : {s0} de poussée pour {t0} de frottement. À {m}, {n} : {s} pour {t}. Au-delà, il faut un lien."}},
    {{"Load on the pulley", "La charge sur la poulie"},
     {"Both sides of the rope hang on the connector. Take the haul away from under the head, and the turn opens.",
      "Les deux brins pendent au connecteur. Éloignez le halage de l'aplomb de la tête : l'angle s'ouvre."},
     {"{weight} on the rope. Turned {t0} it puts {s0} on the connector, turned {t} still {s}: what holds the pulley must carry that.",
      "{weight} sur la corde. Tournée de {t0}, elle met {s0} au connecteur, de {t} encore {s} : ce qui tient la poulie doit porter cela."}},
    {{"Pretension", "La prétension"},
     {"Too little, and the head wanders in the swing. Too much, and cord and leg are used up before the load comes. Find the place between.",
      "Trop peu, et la tête se promène au balancement. Trop, et cordelette et jambe sont prises avant la charge. Trouvez entre les deux."},
     {"{m0} a guy: the head goes {r0}, the leg carries {t0}. {m}: {r} and {t}. More would only eat leg and cord.",
      "{m0} par hauban : la tête part de {r0}, la jambe porte {t0}. {m} : {r} et {t}. Plus ne ferait que manger jambe et cordelette."}},
    {{"Measuring error", "L'erreur de mesure"},
     {"The rig stays as it is. Only how well it was measured changes: bearings by compass or taped, the lean by eye or by a level.",
      "Le montage reste. Seule change la qualité des mesures : directions à la boussole ou au mètre, inclinaison à l'œil ou au niveau."},
     {"Bearings within {m0}, lean within {n0}: {r0}. Within {m} and {n}: {r}, with {s} to spare. Nobody touched the rig.",
      "Relèvements à {m0} près, inclinaison à {n0} : {r0}. À {m} et {n} : {r}, avec {s} de marge. Personne n'a touché au montage."}},
    {{"Order of work", "L'ordre du montage"},
     {"A heavy pole near the edge, foot tied, nothing else. Which guy is made fast next?",
      "Une perche lourde près du bord, pied lié, rien d'autre. Quel hauban attache-t-on ensuite ?"},
     {"By itself after {r} guys. Until then somebody held up to {s} at the head, in the wrong order longer.",
      "Elle tient seule après {r} haubans. Jusque-là, quelqu'un retenait jusqu'à {s} en tête ; dans le mauvais ordre, plus longtemps."}},
}};

/// In the order of Readout.
inline constexpr std::array<Said, k_readout_count> k_readouts{{
    {"Pull off the leg", "Force hors de la jambe"},
    {"Hardest guy", "Hauban le plus chargé"},
    {"Back guy", "Hauban arrière"},
    {"Guy off the leg", "Hauban, de la jambe"},
    {"Turn over the edge", "Angle sur le bord"},
    {"The edge adds", "Le bord ajoute"},
    {"Flat it would add", "À plat, il ajouterait"},
    {"Pull to raise", "Effort pour monter"},
    {"Head at rest", "Tête au repos"},
    {"Head in the swing", "Tête au balancement"},
    {"Slack guys", "Haubans mous"},
    {"Guys it cannot lose", "Haubans vitaux"},
    {"Friction used", "Frottement utilisé"},
    {"Foot pushes", "Le pied pousse"},
    {"Friction gives", "Le frottement tient"},
    {"Rope turns", "La corde tourne"},
    {"On the connector", "Sur le connecteur"},
    {"That is", "Soit"},
    {"Leg", "Jambe"},
    {"Cord used", "Cordelette utilisée"},
    {"To spare", "Marge"},
    {"Verdict", "Verdict"},
}};

// Questions.
inline constexpr Said k_ask_slack{"{load} comes on the rope. Which guy goes slack?", "{load} viennent sur la corde. Quel hauban prend du mou ?"};
inline constexpr Said k_ask_fatal{"{load} on the rope, and one guy breaks. Which one takes the leg with it?",
                                  "{load} sur la corde, et un hauban lâche. Lequel emporte la jambe ?"};
inline constexpr Said k_ask_times{"{weight} on the rope, hauled straight down beside it. What comes on the connector of the pulley?",
                                  "{weight} sur la corde, halée droit vers le bas. Que reçoit le connecteur de la poulie ?"};
inline constexpr Said k_ask_go{"As measured it holds. But bearings are good to {m} only, the lean to {n}. GO?",
                               "Tel que mesuré, ça tient. Mais les directions sont à {m} près, l'inclinaison à {n}. GO ?"};
inline constexpr Said k_and{" and ", " et "};
inline constexpr Said k_right{"Right: {names}.", "Juste : {names}."};
inline constexpr Said k_wrong{"No: {names}.", "Non : {names}."};

// Goals.
inline constexpr Said k_or_less{"Goal: {limit} or less", "But : {limit} ou moins"};
inline constexpr Said k_or_more{"Goal: {limit} or more", "But : {limit} ou plus"};
inline constexpr Said k_goal{"Goal: {limit}", "But : {limit}"};
inline constexpr Said k_falls{"falls", "tombe"};
inline constexpr Said k_checking{"checking", "contrôle"};
inline constexpr Said k_times{"{n} times", "{n} fois"};

// The order of work.
inline constexpr Said k_to_hold{"Somebody must hold", "Quelqu'un doit retenir"};
inline constexpr Said k_by_itself{"Stands by itself", "Tient seule"};
inline constexpr Said k_nothing_left{"Goal: all tied, none held", "But : rien à retenir"};
inline constexpr Said k_is_on{"Guy {guy} is on.", "Hauban {guy} : attaché."};
inline constexpr Said k_not_first{"Guy {guy} first? At the edge the one behind comes first: guy {back} keeps pole and people from going over.",
                                  "Hauban {guy} d'abord ? Au bord, l'arrière d'abord : hauban {back}, qui retient la perche et les gens."};
inline constexpr Said k_not_next{"Guy {guy} leaves {hold} to hold and a gap of {gap}. Guy {better} leaves {hold_better} and {gap_better}.",
                                 "Hauban {guy} : {hold} à retenir, un écart de {gap}. Hauban {better} : {hold_better} et {gap_better}."};
inline constexpr Said k_take_off{"Take guy {guy} off again", "Détacher le hauban {guy}"};
inline constexpr Said k_tie{"Tie {guy}", "Attacher {guy}"};

// Keys.
inline constexpr Said k_course{"Course", "Cours"};
inline constexpr Said k_course_about{"Ten ideas that decide whether a leg stands. Move, read, go on.",
                                     "Dix idées qui décident si une jambe tient. Bougez, lisez, avancez."};
inline constexpr Said k_done_count{"{n} of {all} done", "{n} sur {all} faites"};
inline constexpr Said k_next_lesson{"Next lesson", "Leçon suivante"};
inline constexpr Said k_again{"Again", "Refaire"};
inline constexpr Said k_list{"List", "Liste"};
inline constexpr Said k_three_guys{"Three guys", "Trois haubans"};
inline constexpr Said k_four_guys{"Four guys", "Quatre haubans"};
inline constexpr Said k_of_guy{"Guy {guy}: {what}", "Hauban {guy} : {what}"};
inline constexpr Said k_all_guys{"{what}, all guys", "{what}, tous"};

}  // namespace guywright::words::lessons
