#pragma once
#include "engine/codec/sentences.hpp"
#include "engine/codec/share_code.hpp"

#include <string>
#include <string_view>

namespace guywright {

/// What is said of codes that were read. {have} and {total} count codes, {list} names those that are missing.
struct ShareWords {
    std::string_view foreign, damaged, newer, waiting;
};

inline constexpr ShareWords k_english_share{
    .foreign = "This is no code of a plan. Nothing was opened.",
    .damaged = "This code is damaged or cut off. Nothing was opened: show it again.",
    .newer = "This code is from a newer version of the app. Nothing was opened: update the app on this device first.",
    .waiting = "{have} of {total} codes read. Missing: {list}.",
};
inline constexpr ShareWords k_french_share{
    .foreign = "Ce n'est pas le code d'un plan. Rien n'a \u00E9t\u00E9 ouvert.",
    .damaged = "Ce code est ab\u00EEm\u00E9 ou tronqu\u00E9. Rien n'a \u00E9t\u00E9 ouvert : affichez-le de nouveau.",
    .newer = "Ce code vient d'une version plus r\u00E9cente. Rien n'a \u00E9t\u00E9 ouvert : mettez d'abord \u00E0 jour l'application sur cet appareil.",
    .waiting = "{have} codes sur {total} lus. Il manque : {list}.",
};

namespace detail {

inline std::string missing_pieces(const ShareRead& read) {
    std::string out;
    for (std::size_t i = 0; i < read.total; ++i)
        if (std::find(read.have.begin(), read.have.end(), i) == read.have.end()) out += (out.empty() ? "" : ", ") + std::to_string(i + 1);
    return out;
}

}  // namespace detail

/// Why there is no plan yet; nothing once it is whole.
[[nodiscard]] inline std::string share_message(const ShareWords& words, const ShareRead& read) {
    switch (read.state) {
        case ShareState::Whole: return {};
        case ShareState::Foreign: return std::string(words.foreign);
        case ShareState::Damaged: return std::string(words.damaged);
        case ShareState::Newer: return std::string(words.newer);
        case ShareState::Waiting: break;
    }
    return detail::filled(words.waiting,
                          {{"{have}", std::to_string(read.have.size())}, {"{total}", std::to_string(read.total)}, {"{list}", detail::missing_pieces(read)}});
}

}  // namespace guywright
