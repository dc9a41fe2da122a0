#include <emscripten.h>

#include "engine/codec/plan_codec.hpp"
#include "wasm/platform/shell.hpp"

namespace app = guywright::app;

namespace {

/// One for the page's whole life: the entry points below are plain C functions and have no other way to it.
guywright::platform::Shell& shell() {
    static guywright::platform::Shell instance;
    return instance;
}

}  // namespace

// What the page calls (web/boot.js, outside.js, keeping.js, pages.js). Lengths in CSS pixels, text in UTF-8.
extern "C" {

EMSCRIPTEN_KEEPALIVE void guywright_begin() { shell().begin(); }
EMSCRIPTEN_KEEPALIVE void guywright_wake() { shell().wake_anew(); }
/// French or English, imperial or metric, and the light as kept by guywright_host_keep_settings.
EMSCRIPTEN_KEEPALIVE void guywright_set_settings(int french, int imperial, int theme) {
    const app::Speech speech{french != 0 ? app::Tongue::French : app::Tongue::English,
                             imperial != 0 ? guywright::UnitSystem::Imperial : guywright::UnitSystem::Metric};
    const bool known = theme >= 0 && theme < guywright::widgets::k_theme_count;
    shell().tell(app::SetSettings{speech, known ? static_cast<guywright::widgets::ThemeName>(theme) : guywright::widgets::ThemeName::Sun});
}
EMSCRIPTEN_KEEPALIVE void guywright_open_plan(const char* bytes, unsigned count) { shell().open_plan({bytes, count}); }
EMSCRIPTEN_KEEPALIVE void guywright_take_in_step(const char* bytes, unsigned count, int back) { shell().take_in_step(back != 0, {bytes, count}); }
EMSCRIPTEN_KEEPALIVE unsigned guywright_resume(const char* bytes, unsigned count, unsigned number, int untouched) {
    return shell().resume({bytes, count}, number, untouched != 0);
}
EMSCRIPTEN_KEEPALIVE void guywright_open_copy(const char* bytes, unsigned count) { shell().open_copy({bytes, count}); }
EMSCRIPTEN_KEEPALIVE void guywright_begin_new_plan() { shell().begin_new_plan(); }
EMSCRIPTEN_KEEPALIVE int guywright_can_read(const char* bytes, unsigned count) { return guywright::read_plan({bytes, count}).ok() ? 1 : 0; }
EMSCRIPTEN_KEEPALIVE void guywright_set_shelf(const char* bytes, unsigned count) { shell().set_shelf({bytes, count}); }
EMSCRIPTEN_KEEPALIVE const char* guywright_enter_text(const char* path, const char* value) { return shell().enter_text(path, value).c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_plan() { return shell().plan_text().c_str(); }
EMSCRIPTEN_KEEPALIVE void guywright_set_insets(float top, float right, float bottom, float left) { shell().set_insets_px(top, right, bottom, left); }
EMSCRIPTEN_KEEPALIVE void guywright_set_reduced_motion(int reduced) { shell().set_reduced_motion(reduced != 0); }
EMSCRIPTEN_KEEPALIVE void guywright_set_text_size(float times) { shell().set_text_size(times); }
EMSCRIPTEN_KEEPALIVE void guywright_cancel_touch() { shell().take_touch_away(); }
EMSCRIPTEN_KEEPALIVE void guywright_go_out_of_sight() { shell().go_out_of_sight(); }

// The text view.
EMSCRIPTEN_KEEPALIVE const char* guywright_text() { return shell().text_json().c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_verdict() { return shell().verdict_json().c_str(); }
EMSCRIPTEN_KEEPALIVE void guywright_press(const char* id) { shell().press(id); }
EMSCRIPTEN_KEEPALIVE const char* guywright_enter(const char* path, const char* shown) { return shell().enter(path, shown).c_str(); }

// The pages beside the drawing: share code, reading one, rig sheet. What they get is described in wasm/app/page_data.hpp.
EMSCRIPTEN_KEEPALIVE const char* guywright_share() { return shell().share_json().c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_read_codes(const char* bytes, unsigned count) { return shell().read_codes_json({bytes, count}).c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_look_at(const char* bytes, unsigned count) { return shell().look_at_json({bytes, count}).c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_sheet() { return shell().sheet_json().c_str(); }

// The second check, the signatures and their log: wasm/app/second_data.hpp, signatures.hpp.
EMSCRIPTEN_KEEPALIVE const char* guywright_second() { return shell().second_json().c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_second_entries(const char* bytes, unsigned count) { return shell().second_entries_json({bytes, count}).c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_report() { return shell().report_text().c_str(); }
EMSCRIPTEN_KEEPALIVE const char* guywright_code_of(const char* bytes, unsigned count) { return shell().code_of({bytes, count}).c_str(); }
EMSCRIPTEN_KEEPALIVE void guywright_set_signatures(const char* bytes, unsigned count) { shell().set_signatures({bytes, count}); }

/// What was answered in practice, as kept by guywright_host_keep_progress.
EMSCRIPTEN_KEEPALIVE void guywright_set_progress(const char* bytes, unsigned count) { shell().set_progress({bytes, count}); }

// The device. Angles in degrees, NaN for what it does not tell.
EMSCRIPTEN_KEEPALIVE void guywright_device_has(int tilt, int compass) { shell().tell(app::DeviceHas{tilt != 0, compass != 0}); }
EMSCRIPTEN_KEEPALIVE void guywright_device_refuses() { shell().tell(app::DeviceRefuses{}); }
EMSCRIPTEN_KEEPALIVE void guywright_awake_is(int awake) { shell().tell(app::AwakeIs{static_cast<app::Awake>(awake)}); }
EMSCRIPTEN_KEEPALIVE void guywright_device_is_held(double alpha_deg, double beta_deg, double gamma_deg, int absolute, double compass_deg,
                                                   double compass_error_deg, int screen_turn_deg, int taller_than_wide) {
    shell().tell_held({alpha_deg, beta_deg, gamma_deg, absolute != 0, compass_deg, compass_error_deg, screen_turn_deg, taller_than_wide != 0});
}

EMSCRIPTEN_KEEPALIVE const char* guywright_state() { return shell().state_json().c_str(); }
EMSCRIPTEN_KEEPALIVE int guywright_is_idle() { return shell().is_idle() ? 1 : 0; }
EMSCRIPTEN_KEEPALIVE unsigned guywright_frames_drawn() { return shell().frames_drawn(); }

}  // extern "C"

int main() {
    shell().start();
    return 0;
}
