#pragma once
#include "wasm/app/device_reading.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::widgets {

/// How to hold the device for a reading: a drawing of a few lines, as large as fits.
void draw_hold(Ui& ui, const Box& box, app::ReadingKind kind);

/// The device alone, for a key: leaning, or with the needle of a compass.
void draw_device_sign(Ui& ui, const Box& box, app::ReadingKind kind);

}  // namespace guywright::widgets
