#include <emscripten.h>

#include "wasm/platform/shell.hpp"

namespace {

/// One for the page's whole life: the entry points below are plain C functions and have no other way to it.
guywright::platform::Shell& shell() {
    static guywright::platform::Shell instance;
    return instance;
}

}  // namespace

// What web/host.js calls. Lengths in CSS pixels, text in UTF-8.
extern "C" {

EMSCRIPTEN_KEEPALIVE void guywright_wake() { shell().wake(); }
EMSCRIPTEN_KEEPALIVE void guywright_open_plan(const char* bytes, unsigned count) { shell().open_plan({bytes, count}); }
EMSCRIPTEN_KEEPALIVE void guywright_set_insets(float top, float right, float bottom, float left) {
    shell().set_insets_px(top, right, bottom, left);
}
EMSCRIPTEN_KEEPALIVE void guywright_set_reduced_motion(int reduced) { shell().set_reduced_motion(reduced != 0); }
EMSCRIPTEN_KEEPALIVE const char* guywright_state() { return shell().state_json().c_str(); }
EMSCRIPTEN_KEEPALIVE unsigned guywright_frames_drawn() { return shell().frames_drawn(); }

}  // extern "C"

int main() {
    shell().start();
    return 0;
}
