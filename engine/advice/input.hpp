#pragma once
#include <array>
#include <cstddef>
#include <string_view>

namespace guywright {

/// What can be changed on scene. "Stay": anchors and haul keep their places on the ground, whatever the plan measures them
/// from. "Anew": what the plan gives from the plumb point under the head is paced off again from there.
enum class Input : unsigned char {
    Pretension,
    AllPretensions,
    Parts,
    AllParts,
    Cord,
    AllCords,
    LeanAnchorsStay,
    HaulBearing,
    HaulDistance,
    HaulHeight,
    AddFootTie,
    GuyBearing,
    GuyInclination,
    GuyDistance,
    AddGuy,
    Load,
    FootOutAnchorsStay,
    FootSideAnchorsStay,
    LeanAnew,
    FootOutAnew,
    FootSideAnew
};
inline constexpr std::size_t k_input_count = 21;

/// What is the same for every change of one input.
struct InputInfo {
    Input id;
    std::string_view unit;
    double effort;       ///< at the least; about minutes for two people. Common practice, no source
    double more_effort;  ///< for the farthest change in reach
    double down, up;     ///< how far it may be changed, in `unit`. Common practice, no source
    std::size_t steps;   ///< of the search for it, each way; 0: by whole steps of its own
};

/// A buckle turned before parts re-reeved, a foot tied before an anchor moved, an anchor before the foot, and last all anew.
inline constexpr std::array<InputInfo, k_input_count> k_inputs{{
    {Input::Pretension, "kN", 1.0, 1.0, 1.0, 1.5, 15},
    {Input::AllPretensions, "kN", 3.0, 1.0, 0.0, 1.5, 15},
    {Input::Parts, "", 5.0, 1.0, 4.0, 4.0, 0},
    {Input::AllParts, "", 8.0, 1.0, 0.0, 4.0, 0},
    {Input::Cord, "kN", 6.0, 1.0, 0.0, 0.0, 0},
    {Input::AllCords, "kN", 9.0, 1.0, 0.0, 0.0, 0},
    {Input::LeanAnchorsStay, "deg", 10.0, 2.0, 25.0, 25.0, 16},
    {Input::HaulBearing, "deg", 12.0, 1.0, 60.0, 60.0, 12},
    {Input::HaulDistance, "m", 12.0, 1.0, 20.0, 20.0, 16},
    {Input::HaulHeight, "m", 12.5, 1.0, 1.5, 1.5, 8},
    {Input::AddFootTie, "", 14.0, 0.0, 0.0, 0.0, 0},
    {Input::GuyBearing, "deg", 20.0, 2.0, 60.0, 60.0, 20},
    {Input::GuyInclination, "deg", 20.0, 2.0, 25.0, 25.0, 16},
    {Input::GuyDistance, "m", 20.0, 2.0, 5.0, 5.0, 16},
    {Input::AddGuy, "", 25.0, 0.0, 0.0, 0.0, 0},
    {Input::Load, "kg", 30.0, 5.0, 0.0, 0.0, 16},
    {Input::FootOutAnchorsStay, "m", 40.0, 2.0, 2.0, 2.0, 16},
    {Input::FootSideAnchorsStay, "m", 40.0, 2.0, 2.0, 2.0, 12},
    {Input::LeanAnew, "deg", 50.0, 2.0, 25.0, 25.0, 16},
    {Input::FootOutAnew, "m", 55.0, 2.0, 2.0, 2.0, 16},
    {Input::FootSideAnew, "m", 55.0, 2.0, 2.0, 2.0, 12},
}};

constexpr const InputInfo& info(Input id) { return k_inputs[static_cast<std::size_t>(id)]; }

namespace detail {

inline constexpr bool inputs_in_order() {
    for (std::size_t i = 0; i < k_input_count; ++i)
        if (k_inputs[i].id != static_cast<Input>(i)) return false;
    return true;
}
static_assert(inputs_in_order());

}  // namespace detail

/// The load may be cut to this share of it: one carried less, or two trips.
inline constexpr double k_least_load_share = 0.5;

/// Something new, a guy or a foot tie, is tried on every so many degrees of bearing.
inline constexpr double k_compass_step_deg = 15.0;

}  // namespace guywright
