#pragma once
#include <span>
#include <string_view>

namespace guywright {

/// A phrase of an input fault in another language. {} are numbers, quoted texts and other phrases, in the same order in both.
struct FaultWords {
    std::string_view english, told;
    bool names = false;  ///< what stands in the holes is a name: it stays as it is
};

/// How a language tells input faults, which the engine makes in English. Phrases are tried from the first to the last.
struct FaultLanguage {
    std::string_view sentence{};  ///< {path}, {value}, {allowed}
    std::span<const FaultWords> phrases{};
};

}  // namespace guywright
