#include "wasm/app/found_anchors.hpp"

#include <charconv>
#include <cmath>

#include "engine/advice/guy_kit.hpp"

namespace guywright::app {
namespace {

constexpr std::string_view k_points = "candidate_anchors_m[";
constexpr Range k_away_m{0.1, 50.0, 0.1, "m", ErrorKind::Distance};

/// Which number of which point a path names.
struct Place {
    std::size_t anchor = 0;
    enum class Axis : unsigned char { Bearing, Distance } axis = Axis::Bearing;
};

std::optional<Place> place_of(const Plan& plan, std::string_view path) {
    if (!path.starts_with(k_points)) return std::nullopt;
    Place place;
    const char* end = path.data() + path.size();
    const auto read = std::from_chars(path.data() + k_points.size(), end, place.anchor);
    const std::string_view rest(read.ptr, static_cast<std::size_t>(end - read.ptr));
    if (read.ec != std::errc() || place.anchor >= plan.candidate_anchors_m.size() || (rest != "][0]" && rest != "][1]")) return std::nullopt;
    place.axis = rest == "][0]" ? Place::Axis::Bearing : Place::Axis::Distance;
    return place;
}

/// From below the head; where the legs do not meet from the middle of the edge.
Vec3 measured_from(const Plan& plan) { return plumb_point(drawn_head_of(plan).value_or(Vec3{0.0})); }

double to_micrometre(double v) { return std::round(v * 1e6) / 1e6; }

}  // namespace

std::optional<Measure> measure_at(const Plan& plan, const std::string& path) {
    if (const auto place = place_of(plan, path)) {
        const Vec3 offset_m = plan.candidate_anchors_m[place->anchor] - measured_from(plan);
        const double away_m = std::hypot(offset_m.x, offset_m.y);
        if (place->axis == Place::Axis::Distance) return Measure{to_micrometre(away_m), k_away_m};
        return Measure{away_m > 0.0 ? to_micrometre(bearing_deg_of(offset_m)) : 0.0, range::bearing_deg};
    }
    return number_at(plan, path);
}

bool set_measure(Plan& plan, const std::string& path, double value) {
    const auto place = place_of(plan, path);
    if (!place) {
        const NumberRef number = find_number(plan, path);
        return number && number.set(value);
    }
    if (!measure_at(plan, path)->range.holds(value)) return false;
    const Vec3 from_m = measured_from(plan);
    Vec3& point_m = plan.candidate_anchors_m[place->anchor];
    const Vec3 offset_m = point_m - from_m;
    const bool turns = place->axis == Place::Axis::Bearing;
    const double bearing_deg = turns ? value : bearing_deg_of(offset_m), away_m = turns ? std::hypot(offset_m.x, offset_m.y) : value;
    const Vec3 to_m = from_m + away_m * along_bearing(radians(bearing_deg));
    if (!range::coordinate_m.holds(to_m.x) || !range::coordinate_m.holds(to_m.y)) return false;
    point_m.x = to_m.x;
    point_m.y = to_m.y;
    return true;
}

}  // namespace guywright::app
