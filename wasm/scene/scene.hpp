#pragma once
#include <cstddef>
#include <imgui.h>
#include <vector>

#include "engine/plan/plan.hpp"
#include "engine/verdict/evaluate.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/scene/camera.hpp"

namespace guywright::scene {

/// Colours of the theme. `plate` must carry `text`, `hazard` and `resultant`: every label stands on a plate of it.
struct Look {
    ImU32 ground, face, edge, leg, guy, guy_slack, rope, load, resultant, text, plate, hazard, highlight;
};

/// Part of the screen, CSS px.
struct Frame {
    ImVec2 min, max;
};

/// What is asked of the picture besides where it is seen from.
struct Picture {
    std::size_t shown = k_holding;  ///< case, of Evaluation::outcomes
    double enlarge = 1.0;           ///< the head's movement is drawn so many times larger
    bool large = false;             ///< there is room for all words
    Highlight highlight{};
    std::vector<Frame> covered{};  ///< what will lie on the picture, such as keys: no label stands there
    app::Speech speech{};          ///< of labels and dimensions
    bool from_head = false;        ///< of View::Forces: every force begins at the head, instead of tail to tip
    bool unjudged = false;         ///< what breaks a rule is not marked
};

/// Draws the site and the rig of `plan` into `frame` with the forces of the case shown. Where there is no such outcome, or it was
/// not solved, the geometry alone. Keeps nothing between calls; fits itself to the frame. Returns how many dimensions found no room.
int draw(ImDrawList& list, ImFont* label_font, float label_px, const Frame& frame, const Camera& camera, View view, const Plan& plan, const Evaluation& e,
         const Picture& picture, const Look& look);

/// The part of the frame that the site just fills at zoom 1, for camera.hpp.
ImageBox room_of(const Frame& frame, float label_px);

}  // namespace guywright::scene
