#pragma once
#include <string>
#include <string_view>

#include "wasm/app/command.hpp"

// Changes of a plan's make-up. Each keeps what it can, marks what has to be measured anew, and leaves a sound plan sound.
namespace guywright::app {

struct Edited {
    std::string refused{};   ///< why nothing was changed; empty: done
    std::string show{};      ///< the item to look at next, where there is something new
    std::string open{};      ///< the group that shows all it has, where that changes
};

Edited edit(Plan& plan, const SetKind& wish);
Edited edit(Plan& plan, const SetPole& wish);
Edited edit(Plan& plan, const SetHeldDown& wish);
Edited edit(Plan& plan, const AddHobble& wish);
Edited edit(Plan& plan, const RemoveHobble& wish);
Edited edit(Plan& plan, const SetOpening& wish);
Edited edit(Plan& plan, const AddRope& wish);
Edited edit(Plan& plan, const RemoveRope& wish);
Edited edit(Plan& plan, const SetHaul& wish);
Edited edit(Plan& plan, const SetRopeStrength& wish);
Edited edit(Plan& plan, const AddGuy& wish);
Edited edit(Plan& plan, const RemoveGuy& wish);
Edited edit(Plan& plan, const SetAnchorByPosition& wish);
Edited edit(Plan& plan, const AddFootTie& wish);
Edited edit(Plan& plan, const RemoveFootTie& wish);
Edited edit(Plan& plan, const SetGuyLossJudged& wish);
Edited edit(Plan& plan, const SetCompass& wish);
Edited edit(Plan& plan, const SetText& wish);
Edited edit(Plan& plan, const MoveGuy& wish);
Edited edit(Plan& plan, const MoveRope& wish);

/// What only the person on site knows of a guy and of a rope.
void mark_guy_not_measured(Plan& plan, std::size_t guy);
void mark_haul_not_measured(Plan& plan, std::size_t rope);

/// The item with the keys that move a guy or rope. What has moved is shown at it.
[[nodiscard]] std::string order_item(std::string_view list, std::size_t index);

}  // namespace guywright::app
