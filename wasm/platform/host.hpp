#pragma once
#include <string>

/// What the program asks of the page (web/host.js). Each returns at once; answers come through the shell's entry points.
namespace guywright::platform::host {

void frame_drawn();                                                ///< the view model may have changed
void save(const std::string& plan_text);                           ///< keep in the browser's storage
void download(const std::string& name, const std::string& text);  ///< hand the user a file
void pick_file();                                                  ///< let the user choose a plan file
void stop(const char* why);                                        ///< cannot go on: shows the plain-words page

}  // namespace guywright::platform::host
