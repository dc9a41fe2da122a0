#pragma once
#include <array>

#include "engine/plan/catalogue.hpp"
#include "wasm/app/speech.hpp"

// Parts by their published strength.
namespace guywright::words {

using app::Said;

inline constexpr Said k_parts{"{what} by a standard", "{what} selon une norme"};
inline constexpr Said k_parts_close{"Close this list", "Fermer cette liste"};
inline constexpr Said k_parts_how{"Least breaking loads that standards ask for, without knots. What is printed on yours counts, less for wear.",
                                  "Charges de rupture minimales selon les normes, sans nœud. C'est la valeur marquée sur la pièce qui compte, moins l'usure."};
inline constexpr Said k_part{"{name}: {strength}, {standard}", "{name} : {strength}, {standard}"};

/// In the order of k_published_parts.
inline constexpr std::array<Said, k_published_parts.size()> k_part_names{{
    {"Cord 4 mm", "Cordelette 4 mm"},
    {"Cord 5 mm", "Cordelette 5 mm"},
    {"Cord 6 mm", "Cordelette 6 mm"},
    {"Cord 7 mm", "Cordelette 7 mm"},
    {"Cord 8 mm", "Cordelette 8 mm"},
    {"Rope type A", "Corde type A"},
    {"Rope type B", "Corde type B"},
    {"Rope, technical use", "Corde, usage technique"},
    {"Rope, general use", "Corde, usage général"},
    {"Pulley, technical use", "Poulie, usage technique"},
    {"Pulley, general use", "Poulie, usage général"},
    {"Connector B, H, A, T", "Connecteur B, H, A, T"},
    {"Connector K, Q", "Connecteur K, Q"},
    {"Connector X", "Connecteur X"},
    {"Connector, technical use", "Connecteur, usage technique"},
    {"Connector, general use", "Connecteur, usage général"},
    {"Picket, single, in firm loam", "Piquet seul, en terre ferme"},
    {"Pickets 1-1-1, in firm loam", "Piquets 1-1-1, en terre ferme"},
    {"Pickets 3-2-1, in firm loam", "Piquets 3-2-1, en terre ferme"},
}};

}  // namespace guywright::words
