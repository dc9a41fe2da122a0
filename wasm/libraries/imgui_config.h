// Dear ImGui as the app uses it. Seen by the library and by every file that includes imgui.h: both must agree.
#pragma once
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_OBSOLETE_KEYIO
#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEFAULT_SHELL_FUNCTIONS
// Our font holds Basic Latin, Latin-1 and a few signs: 16 bits are enough.
// The scene draws more than 65536 vertices in no frame, and WebGL 1 has no 32-bit index without an extension.
#define ImDrawIdx unsigned short
