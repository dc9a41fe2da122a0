#pragma once

namespace guywright {

/// Out-of-balance force allowed at "Solved", as a share of the largest force in the model. Round-off of a stiff leg
/// (EA 1e6 kN, positions of a few metres) is near 1e-10 of it; 1e-6 would already be felt in the fourth digit of a slack guy.
inline constexpr double k_residual_share = 1e-9;

/// Rounding of a position as a share of its distance from the origin, with room for a sum of a few: times the stiffest member's
/// stiffness it is the out-of-balance force that no step can remove. Less, and a light rig on a very stiff leg never converges.
inline constexpr double k_position_rounding = 1e-15;

/// First trust radius as a share of the shortest leg: about as far as a head moves. A solve takes 3.4 to 4 steps on average, of
/// which 0.1 to 0.6 are cut short here and twice as many at 0.01; more gains little, and a long first step may leap over the
/// place where a head would come to rest. Of 4 000 random rigs none has another verdict at 0.04 than at 0.01.
inline constexpr double k_first_radius_share = 0.02;

/// Newton steps before the solver gives up. A rig that stands needs 2 to 4, one that falls up to 15; random rigs with slack guys up to 40.
inline constexpr int k_max_iterations = 200;

/// A guy hanging looser than this is slack, and a foot higher than this has lifted, metres. A tenth of a millimetre
/// cannot be seen on site; below it the answer would hang on the leg's own shortening and on round-off.
inline constexpr double k_slack_m = 1e-4;

/// Smallest stiffness counted as holding, as a share of the largest. Below it the eigenvalue is round-off.
inline constexpr double k_stiffness_share = 1e-11;

/// Head movement that counts as fallen, as a share of the shortest leg: the search is stopped there.
inline constexpr double k_collapse_share = 0.25;

/// Two points nearer than this cannot give a direction, metres.
inline constexpr double k_same_point_m = 1e-3;

/// Two guys whose anchors are no farther apart hang on one anchor, metres: what one bolt, sling or picket takes. Larger, and
/// neighbours at a row of pickets would be added up.
inline constexpr double k_same_anchor_m = 0.1;

/// Largest rope-tension factor looked at when the load is increased until the leg falls.
inline constexpr double k_collapse_factor_cap = 20.0;

}  // namespace guywright
