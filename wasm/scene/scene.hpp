#pragma once
#include <cstddef>
#include <imgui.h>

#include "engine/plan/plan.hpp"
#include "engine/verdict/evaluate.hpp"

namespace guywright::scene {

/// Where a free view is seen from. Yaw is the bearing the viewer looks along, degrees clockwise from above, 0 = out over
/// the edge; pitch is how far down the viewer looks, degrees; zoom multiplies the size that just fits.
struct Camera {
    float yaw_deg = 215, pitch_deg = 18, zoom = 1;
};

/// PlanView: from straight above, out is up. Elevation: from the right, out is to the right. Both without perspective and
/// with angles and lengths written in; they use only the camera's zoom.
enum class View : unsigned char { Free, PlanView, Elevation };

/// What a slider in hand moves, so that it is lit up in the scene while it moves. `index` counts legs for Leg, Foot and
/// FootTies, guys for Guy, ropes for Rope and Haul.
struct Highlight {
    enum class Part : unsigned char { None, Edge, Leg, Lean, Foot, Head, Rope, Haul, Guy, FootTies } part = Part::None;
    std::size_t index = 0;
};

/// Colours of the theme. `text_halo` must carry `text`, `hazard` and `resultant`: every label stands on a halo of it.
struct Look {
    ImU32 ground, face, edge, leg, guy, guy_slack, rope, load, resultant, text, text_halo, hazard, highlight, sky;
};

/// Part of the screen, CSS px.
struct Frame {
    ImVec2 min, max;
};

/// Draws the site and the rig of `plan` into `frame` with the forces of e.outcomes[shown]. Where there is no such outcome,
/// or it was not solved, the geometry alone. Keeps nothing between calls; fits itself to the frame.
void draw(ImDrawList& list, ImFont* label_font, float label_px, const Frame& frame, const Camera& camera, View view,
          const Plan& plan, const Evaluation& e, std::size_t shown, Highlight highlight, const Look& look);

/// Turns the free view by a drag of `drag_px` CSS px, as if the finger held the near side of the site. The pitch stays
/// between just above the ground and nearly straight down.
void turn(Camera& camera, ImVec2 drag_px);

}  // namespace guywright::scene
