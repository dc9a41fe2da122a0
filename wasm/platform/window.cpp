#include "wasm/platform/window.hpp"

#include <SDL.h>
#include <cmath>
#include <emscripten/html5.h>

namespace guywright::platform {
namespace {

constexpr const char* k_canvas = "#canvas";

void ask_for_plain_webgl1() {
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_ES);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 2);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 0);
    // Everything is drawn back to front by ImGui, which smooths its own edges.
    SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 0);
    SDL_GL_SetAttribute(SDL_GL_STENCIL_SIZE, 0);
    SDL_GL_SetAttribute(SDL_GL_ALPHA_SIZE, 0);
    SDL_GL_SetAttribute(SDL_GL_MULTISAMPLEBUFFERS, 0);
}

}  // namespace

bool Window::open() {
    // Without this SDL takes the keys of the whole page, and an HTML input stays empty. Before the window is made.
    SDL_SetHint(SDL_HINT_EMSCRIPTEN_KEYBOARD_ELEMENT, k_canvas);
    if (SDL_Init(SDL_INIT_VIDEO) != 0) return false;
    ask_for_plain_webgl1();
    window_ = SDL_CreateWindow("Guywright", 0, 0, 320, 480, SDL_WINDOW_OPENGL | SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
    if (window_ == nullptr) return false;
    context_ = SDL_GL_CreateContext(window_);
    if (context_ == nullptr) return false;
    follow_canvas();
    return true;
}

const char* Window::error() const { return SDL_GetError(); }

bool Window::follow_canvas() {
    double css_width = 0.0, css_height = 0.0;
    emscripten_get_element_css_size(k_canvas, &css_width, &css_height);
    const int width_px = static_cast<int>(css_width), height_px = static_cast<int>(css_height);
    const auto ratio = static_cast<float>(emscripten_get_device_pixel_ratio());
    if (width_px == width_px_ && height_px == height_px_ && std::fabs(ratio - pixel_ratio_) < 1e-4F) return false;
    width_px_ = width_px;
    height_px_ = height_px;
    pixel_ratio_ = ratio;
    SDL_SetWindowSize(window_, width_px, height_px);  // sizes the drawing buffer at the present pixel ratio, too
    return true;
}

void Window::show_frame() const { SDL_GL_SwapWindow(window_); }

}  // namespace guywright::platform
