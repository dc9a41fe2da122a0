#include "wasm/platform/device_host.hpp"

#include <emscripten.h>

#include "wasm/widgets/verdict_mark.hpp"

// clang-format off
EM_JS(void, guywright_host_sense, (int on), { Module.host.sense(on !== 0); });
EM_JS(void, guywright_host_keep_awake, (int on), { Module.host.keepAwake(on !== 0); });
EM_JS(void, guywright_host_vibrate, (const char* verdict), { Module.host.vibrate(UTF8ToString(verdict)); });
EM_JS(void, guywright_host_show_about, (), { Module.host.showAbout(); });
EM_JS(void, guywright_host_show_text, (), { Module.host.showText(); });
EM_JS(void, guywright_host_show_page, (const char* name), { Module.host.showPage(UTF8ToString(name)); });
// clang-format on

namespace guywright::platform {
namespace {

const char* page_name(app::Page page) {
    switch (page) {
        case app::Page::ShareCode: return "share";
        case app::Page::ReadCode: return "read";
        case app::Page::RigSheet: return "sheet";
        case app::Page::SecondCheck: return "second";
        case app::Page::Log: return "log";
    }
    return "";
}

}  // namespace

void DeviceHost::pass_on(app::App& app) {
    const app::Device& device = app.device();
    const bool sense = device.reading.has_value();
    const bool awake = device.awake == app::Awake::Asked || device.awake == app::Awake::On;
    if (sense != sensing_) guywright_host_sense(sense ? 1 : 0);
    if (awake != awake_) guywright_host_keep_awake(awake ? 1 : 0);
    sensing_ = sense;
    awake_ = awake;
    if (const auto felt = app.take_felt()) guywright_host_vibrate(widgets::verdict_word(*felt).data());  // a literal: it ends with a zero
    if (app.take_about_request()) guywright_host_show_about();
    if (app.take_text_request()) guywright_host_show_text();
    if (const auto page = app.take_page_request()) guywright_host_show_page(page_name(*page));
}

}  // namespace guywright::platform
