#include "wasm/app/device_reading.hpp"

#include <algorithm>

namespace guywright::app {
namespace {

constexpr double k_window_s = 2.0;
constexpr double k_shortest_s = 1.5;  ///< less is no average
constexpr std::size_t k_fewest = 8;

bool fits(std::string_view path, std::string_view beginning, std::string_view end) { return path.starts_with(beginning) && path.ends_with(end); }

double tilt_deg(ReadingKind kind, const Vec3& up, const Vec3& edge) {
    switch (kind) {
        case ReadingKind::Inclination: return guy_inclination_deg(up, edge);
        case ReadingKind::LegLean: return leg_lean_deg(up, edge);
        default: return plane_lean_deg(up);
    }
}

Reading::Status steadiness(double spread_deg, double most_deg) { return spread_deg <= most_deg ? Reading::Status::Steady : Reading::Status::Moving; }

}  // namespace

std::optional<ReadingKind> reading_kind(const Plan& plan, std::string_view path) {
    if (path == "edge.compass_out_deg") return ReadingKind::StraightOut;
    if (fits(path, "guys[", ".inclination_deg")) return ReadingKind::Inclination;
    const FrameKind frame = plan.frame.kind;
    if (path == "frame.lean_deg" && frame != FrameKind::Tripod) return frame == FrameKind::Monopod ? ReadingKind::LegLean : ReadingKind::PlaneLean;
    const bool bearing = fits(path, "guys[", ".bearing_deg") || fits(path, "ropes[", ".haul.bearing_deg") || fits(path, "feet[", ".bearing_deg") ||
                         fits(path, "candidate_anchors_m[", "][0]");  // of an anchor found: its bearing (found_anchors.hpp)
    if (!bearing) return std::nullopt;
    return plan.edge.compass_out_deg ? ReadingKind::Bearing : ReadingKind::StraightOut;
}

void SteadyReader::add(const Held& held, double now_s) {
    std::erase_if(samples_, [=](const Sample& s) { return now_s - s.at_s > k_window_s || s.at_s > now_s; });
    samples_.push_back({held, now_s});
}

std::optional<Held> SteadyReader::last() const {
    if (samples_.empty()) return std::nullopt;
    return samples_.back().held;
}

Reading SteadyReader::read(ReadingKind kind, double largest_error_deg) const {
    const bool heading = needs_compass(kind);
    const bool told = std::all_of(samples_.begin(), samples_.end(), [=](const Sample& s) { return heading ? tells_heading(s.held) : tells_tilt(s.held); });
    const bool enough = samples_.size() >= k_fewest && samples_.back().at_s - samples_.front().at_s >= k_shortest_s;
    if (!told || !enough) return {};
    Reading r = heading ? read_heading() : read_tilt(kind);
    if (r.status == Reading::Status::Steady && !(r.error_deg <= largest_error_deg)) r.status = Reading::Status::Inaccurate;
    return r;
}

Vec3 SteadyReader::mean_up() const {
    Vec3 sum{};
    for (const Sample& s : samples_) sum += up_in_device(s.held);
    return glm::normalize(sum);
}

Reading SteadyReader::read_tilt(ReadingKind kind) const {
    const Vec3 up = mean_up(), edge = long_edge(samples_.back().held);
    Reading r;
    r.value_deg = tilt_deg(kind, up, edge);
    // As directions and not as numbers: near upright a lean may jump from plus to minus without any movement.
    for (const Sample& s : samples_) r.spread_deg = std::max(r.spread_deg, degrees(angle_between(up_in_device(s.held), up)));
    r.error_deg = std::max(k_tilt_error_deg, 2.0 * r.spread_deg);
    r.status = kind == ReadingKind::LegLean && faces_aside(up, edge) ? Reading::Status::TurnScreen : steadiness(r.spread_deg, k_tilt_spread_deg);
    return r;
}

double SteadyReader::mean_heading_deg() const {
    double east = 0.0, north = 0.0;
    for (const Sample& s : samples_) {
        east += std::sin(radians(heading_deg(s.held)));
        north += std::cos(radians(heading_deg(s.held)));
    }
    return around_deg(degrees(std::atan2(east, north)));
}

Reading SteadyReader::read_heading() const {
    const Held& now = samples_.back().held;
    Reading r;
    r.value_deg = mean_heading_deg();
    r.told_error_deg = now.compass_error_deg;
    for (const Sample& s : samples_) r.spread_deg = std::max(r.spread_deg, std::abs(turn_deg(r.value_deg, heading_deg(s.held))));
    const double told_deg = std::isfinite(now.compass_error_deg) ? now.compass_error_deg : 0.0;
    r.error_deg = std::sqrt(2.0) * std::max({k_heading_error_deg, told_deg, 2.0 * r.spread_deg});
    const bool steep = tells_tilt(now) && std::abs(above_horizontal_deg(up_in_device(now), picture_up(now))) > k_steepest_heading_deg;
    r.status = steep ? Reading::Status::HoldFlatter : told_deg < 0.0 ? Reading::Status::Inaccurate : steadiness(r.spread_deg, k_heading_spread_deg);
    return r;
}

}  // namespace guywright::app
