#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "engine/plan/plan.hpp"

namespace guywright::app {

struct Signature {
    std::string name, role, time;  ///< local date and time, as on the device that it was given on
};

/// What two persons have signed, and for which plan. The page keeps them (web/log.js) and tells the program of those that stand.
struct Signatures {
    std::string id;  ///< of the entry in the log
    Plan plan;
    std::vector<Signature> people;
};

/// {"signed": [{"id", "plan": text, "people": [{"name", "role", "time"}]}]}; what says anything else is left out.
[[nodiscard]] std::vector<Signatures> read_signatures(std::string_view json);

/// The signatures of this very plan; null where there are none.
[[nodiscard]] const Signatures* signatures_of(const std::vector<Signatures>& all, const Plan& plan);

/// A plan was changed: takes away what was signed for it as it was before, for good. Undo brings back the numbers, but not the
/// certainty that nobody has acted on others meanwhile. Returns the ids of what fell away.
[[nodiscard]] std::vector<std::string> fall_away(std::vector<Signatures>& all, const Plan& before);

}  // namespace guywright::app
