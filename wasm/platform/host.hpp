#pragma once
#include <string>

#include "wasm/app/app.hpp"
#include <string_view>

/// What the program asks of the page (the `host` of web/boot.js). Each returns at once; answers come through the shell's entry points.
namespace guywright::platform::host {

void frame_drawn(float verdict_end_css_px);                                                   ///< the view model may have changed, and where the verdict ends
void save(const std::string& save_json);                                                      ///< keep in the browser's storage
void shelf(std::string_view act, const std::string& plan_id);                                 ///< do something with the plans kept
void signatures_fell(const std::string& id);                                                  ///< entry of the log whose plan was changed
void edit_text(const std::string& path, const std::string& label, const std::string& value);  ///< let the person type it
void download(const std::string& title, const std::string& text);                             ///< hand the user the file of a plan
void keep_settings(const app::Settings& settings);                                            ///< language, units, light
void keep_progress(const std::string& json);                                                  ///< what was answered in practice
void pick_file();                                                                             ///< let the user choose a plan file
void stop(const char* why);                                                                   ///< cannot go on: shows the plain-words page

}  // namespace guywright::platform::host
