#pragma once
#include <optional>

#include "engine/verdict/evaluate.hpp"

namespace guywright::app {

/// Which changes of the verdict are to be felt in the hand: those that stand. While measuring error is still being looked at
/// NOT CHECKED comes and goes and says nothing; NO-GO is final at once.
class VerdictFeeler {
public:
    /// The verdict to be felt now, if any. The first one is the start of the app and is not.
    std::optional<Verdict> look(Verdict verdict, bool checking) {
        if (checking && verdict == Verdict::NotChecked) return std::nullopt;
        const bool is_new = last_ && *last_ != verdict;
        last_ = verdict;
        return is_new ? std::optional(verdict) : std::nullopt;
    }

private:
    std::optional<Verdict> last_;
};

}  // namespace guywright::app
