#pragma once

struct SDL_Window;

namespace guywright::platform {

/// The canvas of the page as an SDL window with a WebGL 1 surface. CSS owns its size; we follow.
class Window {
public:
    /// False when the browser gives no WebGL; `error()` then says why.
    [[nodiscard]] bool open();
    [[nodiscard]] const char* error() const;

    /// Takes over the canvas' present size and the screen's present pixel ratio. True when either has changed.
    bool follow_canvas();

    [[nodiscard]] SDL_Window* sdl() const { return window_; }
    [[nodiscard]] void* gl_context() const { return context_; }
    [[nodiscard]] float pixel_ratio() const { return pixel_ratio_; }
    [[nodiscard]] float width_px() const { return static_cast<float>(width_px_); }
    [[nodiscard]] float height_px() const { return static_cast<float>(height_px_); }
    void show_frame() const;

private:
    SDL_Window* window_ = nullptr;
    void* context_ = nullptr;
    int width_px_ = 0, height_px_ = 0;
    float pixel_ratio_ = 1.0F;
};

}  // namespace guywright::platform
