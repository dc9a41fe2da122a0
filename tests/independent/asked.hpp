#pragma once
#include "engine/cases/build_cases.hpp"
#include "tests/independent/second_energy.hpp"

#include <doctest/doctest.h>

namespace second {

/// A load case under both names: the engine's and that of the second writing.
struct Asked {
    guywright::CaseId id;
    Motion motion;
    double swing_share;  ///< of the plan's swing action, + right
};
inline constexpr Asked k_asked[] = {{guywright::CaseId::Rigged, Motion::None, 0},       {guywright::CaseId::Holding, Motion::Holding, 0},
                                    {guywright::CaseId::Raising, Motion::Raising, 0},   {guywright::CaseId::Lowering, Motion::Lowering, 0},
                                    {guywright::CaseId::Arrest, Motion::Arrest, 0},     {guywright::CaseId::SwingLeft, Motion::Holding, -1},
                                    {guywright::CaseId::SwingRight, Motion::Holding, 1}};

inline Rig rig_asked(const guywright::Plan& p, const Asked& asked) { return rig_of(p, head_of(p), asked.motion, asked.swing_share * p.actions.swing_deg); }

/// The engine's case of that name.
inline guywright::Case case_asked(const guywright::Model& m, const guywright::Plan& p, const Asked& asked) {
    for (const guywright::Case& c : guywright::build_cases(m, p.actions))
        if (c.id == asked.id) return c;
    FAIL("the engine does not have this case");
    return {};
}

inline Point point(guywright::Vec3 v) { return {v.x, v.y, v.z}; }

}  // namespace second
