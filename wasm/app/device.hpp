#pragma once
#include <optional>
#include <string>

#include "wasm/app/device_reading.hpp"
#include "wasm/app/speech.hpp"

namespace guywright::app {

/// One number that is being taken from the device.
struct ReadingInHand {
    std::string path;
    SteadyReader reader{};
    std::string fault{};  ///< why the last try was not taken
};

enum class Awake : unsigned char { Impossible, Off, Asked, On, Refused };

/// What the device can do and is asked to do.
struct Device {
    bool tilt = false, compass = false;  ///< has these sensors, as far as it tells
    Awake awake = Awake::Impossible;     ///< the screen stays on by itself
    bool refused = false;                ///< the browser does not hand over what its sensors say
    std::optional<ReadingInHand> reading{};

    [[nodiscard]] bool can(ReadingKind kind) const { return needs_compass(kind) ? compass : tilt; }
};

struct DeviceHas {
    bool tilt, compass;
};
struct AwakeIs {
    Awake awake;
};
struct ToggleAwake {};
struct StartReading {
    std::string path;
};
struct DeviceIsHeld {
    Held held;
    double now_s;
};
struct DeviceRefuses {};
struct TakeReading {};
struct CloseReading {};

/// The numbers of the plan that a reading becomes: what is stored, and the tolerance that has to grow for it.
struct Taken {
    double value_deg = 0.0;  ///< rounded as it is shown
    double* tolerance_deg = nullptr;
    double error_deg = 0.0;  ///< rounded up to half a degree
};
[[nodiscard]] Taken taken(Plan& plan, ReadingKind kind, const Reading& reading);

/// Stores a steady reading and widens the plan's tolerance where the reading is worse than it; never narrows it. Says why
/// nothing was stored, or nothing.
[[nodiscard]] std::string take_reading(Plan& plan, const std::string& path, ReadingKind kind, const Reading& reading, const Speech& speech = {});

}  // namespace guywright::app
