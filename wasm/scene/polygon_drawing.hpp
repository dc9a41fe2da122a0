#pragma once
#include "wasm/scene/force_polygon.hpp"
#include "wasm/scene/stage.hpp"

namespace guywright::scene {

/// Where the polygon stands and where the list of its forces.
struct PolygonLayout {
    std::vector<ForceRow> rows;
    ImageBox polygon, list;   ///< `list` is empty where there is no room: names then stand at the forces
    std::size_t columns = 0;  ///< of the list
    double row_px = 0.0;
};

PolygonLayout lay_out_polygon(const Type& type, const ImageBox& frame, std::vector<ForceRow> rows, bool large);

/// Of rows that pull.
std::vector<HeadForce> forces_of(std::span<const ForceRow> rows);

void draw_polygon(Stage& stage, const Type& type, const PolygonLayout& layout, const Picture& picture);

}  // namespace guywright::scene
