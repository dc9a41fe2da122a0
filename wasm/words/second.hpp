#pragma once
#include "wasm/app/speech.hpp"

// The second check: what is asked for, and why an entry was not taken. What the page itself says of it is in web/second_words.js.
namespace guywright::words {

using app::Said;

inline constexpr Said k_asked_of_guy{"{what}, guy {name}", "{what}, hauban {name}"};
inline constexpr Said k_asked_of_rope{"{what}, rope {name}", "{what}, corde {name}"};
inline constexpr Said k_asked_of_leg{"{what}, leg {name}", "{what}, jambe {name}"};
inline constexpr Said k_asked_range{"Allowed: {from} to {to}", "Admis : {from} à {to}"};
inline constexpr Said k_no_entry{"{label}: nothing is entered yet. {allowed}.", "{label} : rien n'est encore saisi. {allowed}."};
inline constexpr Said k_no_number{"{label}: \u201C{typed}\u201D is no number. {allowed}.", "{label} : « {typed} » n'est pas un nombre. {allowed}."};
inline constexpr Said k_out_of_range{"{label}: {typed} is not possible here. {allowed}.", "{label} : {typed} n'est pas possible ici. {allowed}."};
inline constexpr Said k_not_asked{"{label} is not asked for in this plan any more.", "{label} n'est plus demandé dans ce plan."};

}  // namespace guywright::words
