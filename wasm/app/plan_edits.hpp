#pragma once
#include <string>
#include <string_view>

#include "wasm/app/command.hpp"
#include "wasm/app/speech.hpp"

// Changes of a plan's make-up; what is refused, and what is new, is told and named in the language of `speech`. Each keeps what it can, marks what has to be measured anew, and leaves a sound plan sound.
namespace guywright::app {

struct Edited {
    std::string refused{};  ///< why nothing was changed; empty: done
    std::string show{};     ///< the item to look at next, where there is something new
    std::string open{};     ///< the group that shows all it has, where that changes
};

Edited edit(Plan& plan, const SetKind& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetPole& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetHeldDown& wish, const Speech& speech = {});
Edited edit(Plan& plan, const AddHobble& wish, const Speech& speech = {});
Edited edit(Plan& plan, const RemoveHobble& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetOpening& wish, const Speech& speech = {});
Edited edit(Plan& plan, const AddRope& wish, const Speech& speech = {});
Edited edit(Plan& plan, const RemoveRope& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetHaul& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetRopeStrength& wish, const Speech& speech = {});
Edited edit(Plan& plan, const AddGuy& wish, const Speech& speech = {});
Edited edit(Plan& plan, const RemoveGuy& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetAnchorByPosition& wish, const Speech& speech = {});
Edited edit(Plan& plan, const AddFootTie& wish, const Speech& speech = {});
Edited edit(Plan& plan, const RemoveFootTie& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetGuyLossJudged& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetCompass& wish, const Speech& speech = {});
Edited edit(Plan& plan, const SetText& wish, const Speech& speech = {});
Edited edit(Plan& plan, const MoveGuy& wish, const Speech& speech = {});
Edited edit(Plan& plan, const MoveRope& wish, const Speech& speech = {});

/// What only the person on site knows of a guy and of a rope.
void mark_guy_not_measured(Plan& plan, std::size_t guy);
void mark_haul_not_measured(Plan& plan, std::size_t rope);

/// The item with the keys that move a guy or rope. What has moved is shown at it.
[[nodiscard]] std::string order_item(std::string_view list, std::size_t index);

}  // namespace guywright::app
