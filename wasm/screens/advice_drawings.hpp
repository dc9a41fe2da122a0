#pragma once
#include "wasm/app/state.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::screens {

/// Head and guys from above, out is up: what taking in one guy does to all of them. A tap chooses the guy.
void draw_tie_plan(widgets::Ui& ui, const app::State& state, const app::Advisor& answers, const widgets::Box& box);

/// Legs and the force on them seen along the edge, or from behind where the head goes more sideways: dashed as they stand, solid lined up.
void draw_line_up(widgets::Ui& ui, const app::State& state, const app::Advisor& answers, const widgets::Box& box);

/// Directions of pull around straight down, out is up: where the rig keeps, with guys, cases and their sector. A touch looks there.
void draw_direction_chart(widgets::Ui& ui, const app::State& state, const DirectionMap& map, const widgets::Box& box);

/// The anchors found from above, out is up, to scale, with the guys of the choice that is shown.
void draw_anchor_plan(widgets::Ui& ui, const app::State& state, const widgets::Box& box);

/// Text centred at a place, moved so that it stays within `within`, on a ground of its own. Returns the room it takes.
widgets::Box write_label(widgets::Ui& ui, ImFont* font, ImVec2 middle, const std::string& words, const widgets::Box& within);

/// A line in dashes.
void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 colour, float width_px);

/// "out" with its arrow, in the box's upper left corner.
void draw_out_mark(widgets::Ui& ui, const app::State& state, const widgets::Box& box);

}  // namespace guywright::screens
