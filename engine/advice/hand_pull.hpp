#pragma once

namespace guywright {

/// What each sheave of a tackle adds to the load it lifts, as a share (US Navy and Army rigging manuals, MEMORY). For pulleys; a cord
/// round bare metal loses several times as much.
inline constexpr double k_sheave_friction = 0.1;

/// Steady pull of one person on a cord, newtons (common practice, no source).
inline constexpr double k_typical_hand_pull_N = 250.0;

/// Pull on the cord of a tackle that moves `load`, in the load's unit: the manuals' rule, a tenth of the load more for each sheave,
/// divided by the parts.
constexpr double tackle_pull(double load, int sheaves, int parts) { return load * (1.0 + k_sheave_friction * sheaves) / parts; }

/// Pull by hand, newtons, that brings a guy of `parts` to `tension_N`: a turn for every part, as in the manuals' example; a single
/// part is pulled round its anchor.
constexpr double hand_pull_N(double tension_N, int parts) { return tackle_pull(tension_N, parts, parts); }

}  // namespace guywright
