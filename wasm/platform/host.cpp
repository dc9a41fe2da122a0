#include "wasm/platform/host.hpp"

#include <emscripten.h>

// clang-format off
EM_JS(void, guywright_host_frame_drawn, (), { Module.host.frameDrawn(); });
EM_JS(void, guywright_host_save, (const char* text), { Module.host.save(UTF8ToString(text)); });
EM_JS(void, guywright_host_download, (const char* name, const char* text), { Module.host.download(UTF8ToString(name), UTF8ToString(text)); });
EM_JS(void, guywright_host_pick_file, (), { Module.host.pickFile(); });
EM_JS(void, guywright_host_stop, (const char* why), { Module.host.stop(UTF8ToString(why)); });
// clang-format on

namespace guywright::platform::host {

void frame_drawn() { guywright_host_frame_drawn(); }
void save(const std::string& plan_text) { guywright_host_save(plan_text.c_str()); }
void download(const std::string& name, const std::string& text) { guywright_host_download(name.c_str(), text.c_str()); }
void pick_file() { guywright_host_pick_file(); }
void stop(const char* why) { guywright_host_stop(why); }

}  // namespace guywright::platform::host
