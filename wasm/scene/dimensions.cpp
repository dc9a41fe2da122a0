#include "wasm/scene/stage.hpp"

namespace guywright::scene {

void draw_elevation_dimensions(Scene&) {}
void draw_plan_dimensions(Scene&) {}

}  // namespace guywright::scene
