#include "wasm/platform/host.hpp"

#include <emscripten.h>

// clang-format off
EM_JS(void, guywright_host_frame_drawn, (float verdict_end), { Module.host.frameDrawn(verdict_end); });
EM_JS(void, guywright_host_save, (const char* json), { Module.host.save(UTF8ToString(json)); });
EM_JS(void, guywright_host_signatures_fell, (const char* id), { Module.host.signaturesFell(UTF8ToString(id)); });
EM_JS(void, guywright_host_shelf, (const char* act, const char* id), { Module.host.shelf(UTF8ToString(act), UTF8ToString(id)); });
EM_JS(void, guywright_host_edit_text, (const char* path, const char* label, const char* value), {
    Module.host.editText(UTF8ToString(path), UTF8ToString(label), UTF8ToString(value));
});
EM_JS(void, guywright_host_download, (const char* title, const char* text), { Module.host.download(UTF8ToString(title), UTF8ToString(text)); });
EM_JS(void, guywright_host_keep_settings, (const char* language, const char* units, int theme), {
    Module.host.keepSettings({ language: UTF8ToString(language), units: UTF8ToString(units), theme });
});
EM_JS(void, guywright_host_keep_progress, (const char* json), { Module.host.keepProgress(UTF8ToString(json)); });
EM_JS(void, guywright_host_pick_file, (), { Module.host.pickFile(); });
EM_JS(void, guywright_host_stop, (const char* why), { Module.host.stop(UTF8ToString(why)); });
// clang-format on

namespace guywright::platform::host {

void frame_drawn(float verdict_end_css_px) { guywright_host_frame_drawn(verdict_end_css_px); }
void save(const std::string& save_json) { guywright_host_save(save_json.c_str()); }
void signatures_fell(const std::string& id) { guywright_host_signatures_fell(id.c_str()); }
void shelf(std::string_view act, const std::string& plan_id) { guywright_host_shelf(std::string(act).c_str(), plan_id.c_str()); }
void edit_text(const std::string& path, const std::string& label, const std::string& value) {
    guywright_host_edit_text(path.c_str(), label.c_str(), value.c_str());
}
void download(const std::string& title, const std::string& text) { guywright_host_download(title.c_str(), text.c_str()); }
void keep_settings(const app::Settings& settings) {
    const char* units = settings.speech.units == UnitSystem::Imperial ? "imperial" : "metric";
    guywright_host_keep_settings(std::string(app::language_of(settings.speech).code).c_str(), units, static_cast<int>(settings.theme));
}
void keep_progress(const std::string& json) { guywright_host_keep_progress(json.c_str()); }
void pick_file() { guywright_host_pick_file(); }
void stop(const char* why) { guywright_host_stop(why); }

}  // namespace guywright::platform::host
