#pragma once
#include "tests/support/plans.hpp"

namespace support {

/// A plan in which every key of the format appears, also the optional ones, each number different from its default.
inline guywright::Plan full_plan() {
    guywright::Plan p = steep_plan();
    p.note = "second line\nof the note, \"quoted\", é";
    p.edge = {.face_deg = 71.5, .rope_friction = 0.25, .compass_out_deg = 123.0, .opening_m = 6.5};
    p.frame.legs[0].held_down = true;
    guywright::RopePlan second = p.ropes[0];
    second.name = "belay";
    second.share = 0.45;
    second.haul.reset();
    second.edge_y_m = -0.4;
    p.ropes[0].share = 0.55;
    p.ropes.push_back(second);
    p.guys[0].anchor_m = guywright::Vec3{-6.0, 0.1, 0.30000000000000004};
    p.candidate_anchors_m = {{-6.0, 1.5, 0.4}, {-5.0, -1.5, 0.2}};
    p.candidate_anchor_strengths_kN = {12.5, 8.0};
    p.not_measured = {"guys[1].inclination_deg", "frame.foot_m[0][2]"};
    p.tolerances.distance_m = 0.15;
    p.limits.factor_soft = 11.0;
    return p;
}

}  // namespace support
