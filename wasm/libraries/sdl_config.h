/* What SDL2 is built with here: one window, one WebGL surface, pointer and keyboard events, a clock. Nothing else. */
#ifndef SDL_config_h_
#define SDL_config_h_
#include "SDL_platform.h"
#include "SDL_config_emscripten.h"

#define SDL_LEAN_AND_MEAN 1

#define SDL_AUDIO_DISABLED 1
#undef SDL_AUDIO_DRIVER_DISK
#undef SDL_AUDIO_DRIVER_DUMMY
#undef SDL_AUDIO_DRIVER_EMSCRIPTEN

#define SDL_JOYSTICK_DISABLED 1
#undef SDL_JOYSTICK_EMSCRIPTEN

#define SDL_SENSOR_DISABLED 1
#undef SDL_SENSOR_DUMMY

#define SDL_POWER_DISABLED 1
#undef SDL_POWER_EMSCRIPTEN

#define SDL_LOADSO_DUMMY 1
#undef SDL_LOADSO_DLOPEN

#define SDL_RENDER_DISABLED 1
#undef SDL_VIDEO_RENDER_OGL_ES2

/* No virtual file system is linked in. */
#define SDL_FILESYSTEM_DISABLED 1
#undef SDL_FILESYSTEM_EMSCRIPTEN
#undef HAVE_STDIO_H

/* Signals do not reach a page. */
#define NO_SDL_SIGNAL_HANDLERS 1
#endif
