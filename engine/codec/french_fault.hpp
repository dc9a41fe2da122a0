#pragma once
#include "engine/codec/fault_words.hpp"

#include <array>

namespace guywright {

// Longer phrases before those that they contain. The JSON library gives its reasons in English only; they are left out.
inline constexpr std::array k_french_fault_phrases{
    // Quoted texts.
    FaultWords{"{} (not UTF-8)", "{} (pas en UTF-8)"},
    FaultWords{"{} (holds a control character)", "{} (contient un caractère de commande)"},
    FaultWords{"{} (used twice)", "{} (pris deux fois)"},
    FaultWords{"{} (listed twice)", "{} (cité deux fois)"},
    FaultWords{"{} (text)", "{} (du texte)"},
    FaultWords{"{} (the shares add up to {})", "{} (les parts font {} en tout)"},
    // Files.
    FaultWords{"{}; this program is older than the {}: update it", "{} ; ce programme est plus ancien que le fichier ({}) : mettez-le à jour"},
    FaultWords{"not JSON (found {} at line {}, column {})", "pas du JSON ({} trouvé ligne {}, colonne {})"},
    FaultWords{"not UTF-8 at line {}, column {}", "pas de l'UTF-8 ligne {}, colonne {}"},
    FaultWords{"a control character at line {}, column {}", "un caractère de commande ligne {}, colonne {}"},
    FaultWords{"JSON ({})", "du JSON correct"},
    FaultWords{"JSON", "du JSON"},
    FaultWords{"the end of the file", "la fin du fichier"},
    FaultWords{"a line break", "un saut de ligne"},
    FaultWords{"a comma or {}", "une virgule ou {}"},
    FaultWords{"a key in double quotes", "une clé entre guillemets doubles"},
    FaultWords{"nothing after the last }", "rien après le dernier }"},
    FaultWords{"a value", "une valeur"},
    FaultWords{"a number as JSON writes it, such as 12 or 0.5, never NaN or Infinity",
               "un nombre comme l'écrit JSON, tel que 12 ou 0.5, jamais NaN ni Infinity"},
    FaultWords{"{} bytes long", "{} octets"},
    FaultWords{"at most {} bytes", "{} octets au plus"},
    FaultWords{"a {} file", "un fichier ({})"},
    FaultWords{"plan", "plan"},
    FaultWords{"catalogue", "catalogue"},
    FaultWords{"nested too deep", "imbriqué trop profond"},
    FaultWords{"at most {} levels", "{} niveaux au plus"},
    FaultWords{"given more than once", "donné plus d'une fois"},
    FaultWords{"each key once", "chaque clé une fois"},
    FaultWords{"missing", "manquant"},
    FaultWords{"not a key of this format", "pas une clé de ce format"},
    FaultWords{"only known keys; did you mean {}?", "seules les clés connues ; vouliez-vous {} ?", true},
    FaultWords{"only known keys", "seules les clés connues"},
    FaultWords{"given beside anchor_m", "donné avec anchor_m"},
    FaultWords{"one of the two ways to place an anchor", "une seule des deux façons de placer un amarrage"},
    FaultWords{"true or false", "true ou false"},
    FaultWords{"null", "null"},
    FaultWords{"true", "true"},
    FaultWords{"false", "false"},
    FaultWords{"an object or null", "un objet ou null"},
    FaultWords{"an object", "un objet"},
    FaultWords{"UTF-8 text", "du texte UTF-8"},
    FaultWords{"text without control characters", "du texte sans caractère de commande"},
    FaultWords{"text", "du texte"},
    // Lists.
    FaultWords{"a list of {}, one per leg, each {}", "une liste de {}, un par jambe, chacun : {}"},
    FaultWords{"a list of {}", "une liste de {}"},
    FaultWords{"{} to {} entries", "{} à {} éléments"},
    FaultWords{"{}, one per leg", "{}, un par jambe"},
    FaultWords{"{}, one per candidate anchor, or none", "{}, un par amarrage possible, ou aucun"},
    FaultWords{"1 entry", "1 élément"},
    FaultWords{"{} entries", "{} éléments"},
    FaultWords{"a point [x, y, z], each {}", "un point [x, y, z], chacun : {}"},
    FaultWords{"a point [x, y, z]", "un point [x, y, z]"},
    // Names.
    FaultWords{"{} characters long", "{} caractères"},
    FaultWords{"empty", "vide"},
    FaultWords{"blank", "que des espaces"},
    FaultWords{"a name of its own", "un nom différent des autres"},
    FaultWords{"a name", "un nom"},
    FaultWords{"the path of a number in this plan, such as edge.face_deg", "le chemin d'un nombre de ce plan, tel que edge.face_deg"},
    FaultWords{"each path once", "chaque chemin une fois"},
    // Numbers that depend on others.
    FaultWords{"1, or shares that add up to 1: nothing would carry the rest", "1, ou des parts qui font 1 en tout : rien ne porterait le reste"},
    FaultWords{"at most half of the diameter, {}; 0 is solid", "au plus la moitié du diamètre, {} ; 0 est une perche pleine"},
    FaultWords{"at least {}, where NO-GO begins", "au moins {}, là où commence NO-GO"},
    FaultWords{"at most {}, where NO-GO begins", "au plus {}, là où commence NO-GO"},
    FaultWords{"at most {}", "au plus {}"},
    FaultWords{"{}, a leg of this frame", "{}, une des jambes de ce plan"},
    FaultWords{"another leg than from", "une autre jambe que « from »"},
    // The place of head, anchors and haul.
    FaultWords{"legs that meet above the line between their feet, feet side by side, and a lean across that line",
               "des jambes qui se joignent au-dessus de la ligne de leurs pieds, des pieds côte à côte, et une inclinaison en travers de cette ligne"},
    FaultWords{"legs that meet above their feet, and feet that do not stand in one line",
               "des jambes qui se joignent au-dessus de leurs pieds, et des pieds non alignés"},
    FaultWords{"below the head, which is at {}; for a higher anchor enter its position as anchor_m",
               "sous la tête, qui est à {} ; pour un amarrage plus haut, saisissez sa position (anchor_m)"},
    FaultWords{"at the head", "à la tête"},
    FaultWords{"away from the head, so that the guy has a length", "loin de la tête, pour que le hauban ait une longueur"},
    FaultWords{"not at the head itself", "pas à la tête même"},
    // Ranges.
    FaultWords{"a number, {}, or null", "un nombre, {}, ou null"},
    FaultWords{"a number, {}", "un nombre, {}"},
    FaultWords{"a whole number, {}", "un nombre entier, {}"},
    FaultWords{"{} or null", "{} ou null"},
    FaultWords{"{} to {}", "{} à {}"},
};

inline constexpr FaultLanguage k_french_faults{"{path} : {value} ; admis : {allowed}", k_french_fault_phrases};

}  // namespace guywright
