#pragma once
#include "engine/cases/build_cases.hpp"

namespace guywright {

/// What raising over the edge costs: tension above the edge for each newton below it, by the capstan equation.
struct EdgeSaving {
    double as_rigged = 1.0;  ///< over the head, with the turn that is left at the edge
    double on_ground = 1.0;  ///< were the rope to lie flat on the ground and turn over the bare edge
};

/// Of one rope that still touches the edge or is clear of it, held or raised without swing.
inline EdgeSaving edge_saving(const Model& m, const Rope& rope) {
    const RopePath path = rope_path(m, rope, 0.0, 0.0);
    return {edge_factor(m.edge_friction, path.wrap_rad), edge_factor(m.edge_friction, fall_rad(m.face_rad, rope.outward_rad))};
}

}  // namespace guywright
