#pragma once
#include "engine/advice/input.hpp"

#include <array>
#include <string_view>

namespace guywright {

// Words for what would change a verdict. In the templates {name} is the guy or rope, {leg} "Leg 2: ", {to} and {from} come with
// their unit, {by} is the size of a move and {way} where to, {feet} the foot or all of them, {away} and {was_away} an anchor's
// distance from the plumb point, {bearing} where something new goes.

struct InputWords {
    Input id;
    std::string_view says;
};

struct ChangeWords {
    std::array<InputWords, k_input_count> inputs;
    std::array<std::string_view, 2> feet;  ///< one foot, several
    std::array<std::string_view, 4> ways;  ///< toward the edge, away from it, left, right
    std::string_view heading;              ///< of the list, the least effort first
    std::string_view together;             ///< before two changes that only work together
    std::string_view more;                 ///< {n} more that are not listed
    std::string_view out_of_reach;         ///< where there is none; {what} is the rule that stays broken
    std::string_view anchors_heading;      ///< of the choice of anchors
    std::string_view anchors;              ///< {names}, {verdict}, {pretension}, {margin} in percent, {what} the rule
    std::string_view anchors_broken;       ///< the same where it is no GO

    [[nodiscard]] constexpr const InputWords& of(Input id) const { return inputs[static_cast<std::size_t>(id)]; }
    [[nodiscard]] constexpr bool in_order() const {
        for (std::size_t i = 0; i < inputs.size(); ++i)
            if (inputs[i].id != static_cast<Input>(i) || inputs[i].says.empty()) return false;
        return true;
    }
};

}  // namespace guywright
