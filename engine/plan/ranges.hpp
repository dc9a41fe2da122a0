#pragma once
#include <cmath>
#include <string_view>

namespace guywright {

/// Which entry of Tolerances says how well a number can be measured on site.
enum class ErrorKind : unsigned char { None, Bearing, Inclination, Lean, Face, Distance, Load, Pretension };

/// What a number of the plan may be, in the unit of the plan file.
struct Range {
    double min = 0.0, max = 0.0;  ///< both allowed
    double step = 0.0;            ///< the smallest change worth making by hand
    std::string_view unit;
    ErrorKind error = ErrorKind::None;

    /// False for NaN.
    [[nodiscard]] constexpr bool holds(double v) const { return v >= min && v <= max; }
};

namespace range {

inline constexpr Range face_deg{5, 120, 1, "deg", ErrorKind::Face};
inline constexpr Range bearing_deg{0, 360, 1, "deg", ErrorKind::Bearing};
inline constexpr Range exact_bearing_deg{0, 360, 1, "deg"};
inline constexpr Range friction{0, 1.5, 0.05, ""};
inline constexpr Range coordinate_m{-50, 50, 0.05, "m", ErrorKind::Distance};
inline constexpr Range opening_m{0.1, 50, 0.1, "m", ErrorKind::Distance};
inline constexpr Range leg_length_m{0.3, 15, 0.05, "m"};
inline constexpr Range lean_deg{-60, 60, 1, "deg", ErrorKind::Lean};
inline constexpr Range leg_EA_kN{10, 1e6, 100, "kN"};
inline constexpr Range strength_kN{0.1, 1000, 0.5, "kN"};
inline constexpr Range leg_mass_kg{0, 500, 0.5, "kg"};
inline constexpr Range diameter_mm{0, 600, 1, "mm"};
inline constexpr Range wall_mm{0, 300, 0.5, "mm"};
inline constexpr Range modulus_GPa{0.1, 400, 1, "GPa"};
inline constexpr Range leg_index{0, 2, 1, ""};
inline constexpr Range load_kg{1, 2000, 5, "kg", ErrorKind::Load};
inline constexpr Range share{0.01, 1, 0.05, ""};
inline constexpr Range swing_deg{-45, 45, 1, "deg"};
inline constexpr Range outward_deg{0, 60, 1, "deg"};
inline constexpr Range haul_distance_m{0, 200, 0.1, "m", ErrorKind::Distance};
inline constexpr Range height_m{-50, 50, 0.1, "m", ErrorKind::Distance};
inline constexpr Range efficiency{0.3, 1, 0.05, ""};
inline constexpr Range inclination_deg{2, 88, 1, "deg", ErrorKind::Inclination};
inline constexpr Range guy_EA_kN{0.5, 1e5, 1, "kN"};
inline constexpr Range parts{1, 9, 1, ""};
inline constexpr Range knot_efficiency{0.1, 1, 0.05, ""};
inline constexpr Range pretension_kN{0, 50, 0.05, "kN", ErrorKind::Pretension};
inline constexpr Range pin_shear_kN{0, 1000, 0.5, "kN"};
inline constexpr Range dynamic_factor{1, 5, 0.1, ""};
inline constexpr Range action_deg{0, 45, 1, "deg"};
inline constexpr Range error_deg{0, 20, 0.5, "deg"};
inline constexpr Range error_m{0, 2, 0.05, "m"};
inline constexpr Range error_percent{0, 100, 5, "%"};
inline constexpr Range limit_angle_deg{0, 90, 1, "deg"};
inline constexpr Range limit_gap_deg{90, 360, 5, "deg"};
inline constexpr Range limit_m{0, 50, 0.1, "m"};
inline constexpr Range limit_percent{0.1, 25, 0.5, "%"};
inline constexpr Range factor{1, 30, 0.5, ""};

}  // namespace range
}  // namespace guywright
