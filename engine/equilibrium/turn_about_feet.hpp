#pragma once
#include "engine/base/sym3.hpp"
#include "engine/model/model.hpp"

namespace guywright {

/// Where a step leads when the head swings about the feet instead of leaving along the tangent. Each leg changes its length by
/// what the step asks of it to first order and no more: a sideways step of 0.1 m would stretch a 2.5 m leg by 2 mm, which a
/// stiff leg answers with more force than all the ropes, and Newton would creep. One leg: exact; several: one correction
/// along the legs.
inline Vec3 turn_about_feet(const Model& model, Vec3 head_m, Vec3 step_m) {
    const Vec3 tangent_m = head_m + step_m;
    std::array<Vec3, k_max_legs> along{};
    Vec3 miss_m{0.0};
    for (std::size_t i = 0; i < model.legs.size(); ++i) {
        const Vec3 before_m = head_m - model.legs[i].foot_m, after_m = tangent_m - model.legs[i].foot_m;
        const double before = glm::length(before_m), after = glm::length(after_m);
        along[i] = after_m / after;
        miss_m[static_cast<int>(i)] = before + glm::dot(before_m, step_m) / before - after;
    }
    const Sym3 overlap{
        .xx = 1.0, .yy = 1.0, .zz = 1.0, .xy = glm::dot(along[0], along[1]), .xz = glm::dot(along[0], along[2]), .yz = glm::dot(along[1], along[2])};
    Vec3 share_m;
    if (!solve_positive(overlap, miss_m, share_m)) return tangent_m;  // legs in one line
    const Vec3 correction_m = share_m.x * along[0] + share_m.y * along[1] + share_m.z * along[2];
    // a correction longer than the step: legs nearly in one line, or a head at a foot
    return glm::dot(correction_m, correction_m) < glm::dot(step_m, step_m) ? tangent_m + correction_m : tangent_m;
}

}  // namespace guywright
