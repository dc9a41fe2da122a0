#pragma once
#include "engine/equilibrium/solve.hpp"
#include "engine/model/rope_path.hpp"

namespace guywright {

enum class CaseId : unsigned char {
    Rigged,        ///< own weight and pretension, no rope
    Holding,       ///< the reference: the same tension on both sides, no friction
    Raising,
    Lowering,
    Arrest,
    SwingLeft,
    SwingRight,
    Outward,
    OneRopeTakesAll,
    HaulReleased   ///< a loaded rope runs free of the head; starts from the holding position
};

/// Which way the rope runs, hence which way friction at edge and pulley shifts tension.
enum class Motion : unsigned char { Still, Up, Down };

/// Tensions and directions of one rope in one case.
struct RopeState {
    bool loaded = false;
    RopePath path;
    double head_side_N = 0.0;   ///< load side, between head and edge (or load)
    double haul_side_N = 0.0;   ///< 0: tied off at the head
};

struct Case {
    CaseId id = CaseId::Rigged;
    std::size_t rope = 0;       ///< which rope, for OneRopeTakesAll and HaulReleased
    bool arrest = false;        ///< the arrest safety factors apply: the dynamic factor is in the load
    bool starts_held = false;   ///< the search starts from the holding position
    Bounded<RopeState, k_max_ropes> ropes;
    Pulls pulls;
};

/// Four that always exist or are asked for, three swings and pulls, and two for every rope.
inline constexpr std::size_t k_max_cases = 8 + 2 * k_max_ropes;
using Cases = Bounded<Case, k_max_cases>;

}  // namespace guywright
