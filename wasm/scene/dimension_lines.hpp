#pragma once
#include "wasm/scene/stage.hpp"

// Dimension lines of the views without perspective.
namespace guywright::scene {

Ink dimension_ink(Stage& stage);
Ink broken(Ink ink);

/// A line with a stroke at each end between a and b, moved by `aside_px` along the unit vector `aside` of the site, with thin lines to
/// where it was measured and its words beside it. Nothing where a and b lie on one another.
void draw_distance(Stage& stage, Vec3 a_m, Vec3 b_m, Vec3 aside, double aside_px, const std::string& words);

/// Points joined by lines.
void draw_path(Pen& pen, const std::vector<Vec3>& points, const Ink& ink);

/// Arc from a to b (unit) with its words outside.
void draw_angle(Stage& stage, Vec3 at_m, Vec3 a, Vec3 b, double radius_m, std::string words);

}  // namespace guywright::scene
