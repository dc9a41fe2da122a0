#pragma once
#include <cstddef>

// How the picture is looked at and what of it is lit up: data alone, for those who draw nothing.
namespace guywright::scene {

/// Where the picture is seen from. Yaw is the bearing the viewer looks along, degrees clockwise from above, 0 = out over the
/// edge; pitch is how far down the viewer looks, degrees. The forces' own turn starts square to the plane they lie in.
struct Camera {
    float yaw_deg = 215, pitch_deg = 18;
    float zoom = 1;                  ///< times the size that just fits
    float moved_x = 0, moved_y = 0;  ///< by two fingers: shares of the picture's smaller side, right and down
    float forces_yaw_deg = 0, forces_pitch_deg = 0;
    bool operator==(const Camera&) const = default;
};

/// Above: straight down, out is up. Side: from the right, out is to the right. Behind: looking out, left is left. These three
/// have no perspective, show the rig as measured and have angles and lengths written in. Forces: at the head, tail to tip.
enum class View : unsigned char { Free, Above, Side, Behind, Forces };
inline constexpr int k_view_count = 5;

/// True where the rig stands as measured, with its dimensions.
inline constexpr bool has_dimensions(View view) { return view == View::Above || view == View::Side || view == View::Behind; }

/// What a slider in hand moves, so that it is lit up in the scene while it moves. `index` counts legs for Leg, Foot and
/// FootTie, guys for Guy, ropes for Rope and Haul, hobbles for Hobble; `second` the ties of a foot. AllRopes to Anchors light up
/// all of a kind, for what is judged or loaded by one number for all; RopeSides both sides of one rope, Resultant their sum.
struct Highlight {
    enum class Part : unsigned char {
        None,
        Edge,
        Leg,
        Lean,
        Foot,
        Head,
        Rope,
        Haul,
        Guy,
        FootTie,
        Hobble,
        AllRopes,
        Cord,
        Metal,
        Anchors,
        RopeSides,
        Resultant
    } part = Part::None;
    std::size_t index = 0, second = 0;
};

/// True if that part is lit up by the highlight.
inline constexpr bool lights(const Highlight& h, Highlight::Part part, std::size_t index, std::size_t second = 0) {
    using Part = Highlight::Part;
    switch (h.part) {
        case Part::None: return false;
        case Part::AllRopes: return part == Part::Rope;
        case Part::RopeSides: return (part == Part::Rope || part == Part::Haul) && index == h.index;
        case Part::Cord: return part == Part::Guy || part == Part::Rope || part == Part::Haul || part == Part::Hobble || part == Part::FootTie;
        case Part::Metal: return part == Part::Leg || part == Part::Head;
        case Part::Lean: return part == Part::Leg;
        case Part::FootTie: return part == h.part && index == h.index && second == h.second;
        default: return part == h.part && index == h.index;
    }
}

}  // namespace guywright::scene
