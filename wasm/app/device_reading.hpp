#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "engine/plan/plan.hpp"
#include "wasm/app/device_angles.hpp"

namespace guywright::app {

/// What a device can measure of a plan.
enum class ReadingKind : unsigned char { Inclination, LegLean, PlaneLean, Bearing, StraightOut };

/// What of a path can be taken from the device; none where nothing can. A bearing needs the compass bearing of straight out
/// first: while the plan has none, that is what is taken.
[[nodiscard]] std::optional<ReadingKind> reading_kind(const Plan& plan, std::string_view path);

[[nodiscard]] inline bool needs_compass(ReadingKind kind) { return kind == ReadingKind::Bearing || kind == ReadingKind::StraightOut; }

/// A device's own error of an angle to gravity where nobody has turned it end for end on a level: published means go to 2 deg
/// along the screen, and to 6 deg across it, which is why the long edge is used.
inline constexpr double k_tilt_error_deg = 3.0;
/// Of one heading: two make a bearing, and together they are the 10 deg that the plan starts with.
inline constexpr double k_heading_error_deg = 7.0;
/// Nobody holds a device stiller than this for long; a larger spread is a hand that moves.
inline constexpr double k_tilt_spread_deg = 2.0;
inline constexpr double k_heading_spread_deg = 8.0;
/// A compass held steeper than this does not say where its edge points.
inline constexpr double k_steepest_heading_deg = 40.0;

struct Reading {
    enum class Status : unsigned char { Waiting, Moving, HoldFlatter, TurnScreen, Inaccurate, Steady };
    Status status = Status::Waiting;
    double value_deg = 0.0;              ///< of the plan's number; of StraightOut and Bearing the heading itself
    double spread_deg = 0.0;             ///< farthest of the last readings from their mean
    double error_deg = 0.0;              ///< half-width that the value is good for, never below the device's own
    double told_error_deg = k_not_told;  ///< of the compass, as the device tells it
    [[nodiscard]] bool shows_value() const { return status == Status::Moving || status == Status::Steady || status == Status::Inaccurate; }
};

/// Averages over the last two seconds.
class SteadyReader {
public:
    void add(const Held& held, double now_s);
    void forget() { samples_.clear(); }
    /// `largest_error_deg`: a plan holds none larger.
    [[nodiscard]] Reading read(ReadingKind kind, double largest_error_deg) const;
    /// How the device was held last; none before the first event.
    [[nodiscard]] std::optional<Held> last() const;

private:
    struct Sample {
        Held held;
        double at_s = 0.0;
    };
    [[nodiscard]] Vec3 mean_up() const;
    [[nodiscard]] double mean_heading_deg() const;
    [[nodiscard]] Reading read_tilt(ReadingKind kind) const;
    [[nodiscard]] Reading read_heading() const;

    std::vector<Sample> samples_;  ///< oldest first
};

}  // namespace guywright::app
