/* Dear ImGui's SDL2 backend names these; we build SDL2 without game controllers, and there never is one. */
#include <SDL_gamecontroller.h>

SDL_GameController *SDL_GameControllerOpen(int index) { (void)index; return NULL; }
Uint8 SDL_GameControllerGetButton(SDL_GameController *c, SDL_GameControllerButton b) { (void)c; (void)b; return 0; }
Sint16 SDL_GameControllerGetAxis(SDL_GameController *c, SDL_GameControllerAxis a) { (void)c; (void)a; return 0; }
