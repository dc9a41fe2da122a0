#pragma once
#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace guywright::app {

enum class Step : unsigned char { Edge, Frame, Rope, Guys, Feet, Margins, Card };
inline constexpr int k_step_count = 7;

// What a screen may wish for. apply() is the one place that carries wishes out, after all drawing.

struct SetNumber { std::string path; double value; };       ///< plan unit; out of range is refused with a message
struct ConfirmShown { std::vector<std::string> paths; };    ///< starting values that are right as they stand
struct SetHaul { std::size_t rope; bool hauled; };
struct AddGuy {};
struct RemoveGuy { std::size_t guy; };
struct AddFootTie { std::size_t foot; };
struct RemoveFootTie { std::size_t foot, tie; };
struct GoTo { Step step; std::size_t item; };               ///< shows the page on which the item stands
struct GoToPath { std::string path; };                      ///< shows the slider of this number
struct Undo {};
struct Redo {};
struct NewPlan {};
struct OpenExample {};
struct OpenFile {};
struct SaveFile {};
struct ToggleMenu {};
struct NextTheme {};
struct TurnScene { float dx_px, dy_px; };
struct ZoomScene { float factor; };
struct NextView {};
struct NextCase {};
struct OpenKeypad { std::string path; };
struct PressKey { char key; };                              ///< digits, '.', '-', '<' deletes
struct TakeKeypad {};
struct CloseKeypad {};
struct CloseMessage {};

using Command = std::variant<SetNumber, ConfirmShown, SetHaul, AddGuy, RemoveGuy, AddFootTie, RemoveFootTie, GoTo, GoToPath, Undo, Redo, NewPlan,
                             OpenExample, OpenFile, SaveFile, ToggleMenu, NextTheme, TurnScene, ZoomScene, NextView, NextCase,
                             OpenKeypad, PressKey, TakeKeypad, CloseKeypad, CloseMessage>;

}  // namespace guywright::app
