#pragma once
#include "engine/equilibrium/solve.hpp"
#include "engine/model/rope_path.hpp"

namespace guywright {

enum class CaseId : unsigned char {
    Rigged,   ///< own weight and pretension, no rope
    Holding,  ///< the reference: the same tension on both sides, no friction
    Raising,
    Lowering,
    HeldHigh,  ///< after raising: the edge still holds the load side up at the head, the haul side eased
    HeldLow,   ///< after lowering: the mirror of it
    Arrest,
    ArrestRunning,  ///< the rope runs out over head and edge as it is caught
    ArrestSwingLeft,
    ArrestSwingRight,
    SwingLeft,
    SwingRight,
    Outward,
    OneRopeTakesAll,
    HaulReleased,  ///< a loaded rope runs free of the head; starts from the holding position
    GuyLost        ///< holding, and one guy is gone; starts from the holding position
};
inline constexpr std::size_t k_case_count = 16;

/// Which way the rope runs, hence which way friction at edge and pulley shifts tension.
enum class Motion : unsigned char { Still, Up, Down, UpThenEased, DownThenTaken };

/// Tensions and directions of one rope in one case.
struct RopeState {
    bool loaded = false;
    RopePath path;
    double head_side_N = 0.0;  ///< load side, between head and edge (or load)
    double haul_side_N = 0.0;  ///< 0: tied off at the head
};

struct Case {
    CaseId id = CaseId::Rigged;
    std::size_t part = 0;      ///< which rope, for OneRopeTakesAll and HaulReleased; which guy, for GuyLost
    bool arrest = false;       ///< the arrest safety factors apply: the dynamic factor is in the load
    bool starts_held = false;  ///< the search starts from the holding position
    Bounded<RopeState, k_max_ropes> ropes;
    Pulls pulls;
};

/// Eight that always exist, five swings and pulls, and two for every rope.
inline constexpr std::size_t k_max_cases = 13 + 2 * k_max_ropes;
using Cases = Bounded<Case, k_max_cases>;

}  // namespace guywright
