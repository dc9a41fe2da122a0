#pragma once
#include "wasm/app/app.hpp"

namespace guywright::platform {

/// What the program asks of the device through the page (web/device.js): passed on when it changes, and only then.
class DeviceHost {
public:
    void pass_on(app::App& app);

private:
    bool sensing_ = false, awake_ = false;
};

}  // namespace guywright::platform
