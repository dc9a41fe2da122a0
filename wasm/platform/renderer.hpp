#pragma once
#include "wasm/platform/draw_order.hpp"
#include "wasm/platform/shown_picture.hpp"

struct ImDrawData;
struct ImDrawList;
struct ImVec2;

namespace guywright::platform {

/// Shaders in WebGL, and where they take what brings layout px onto the surface.
struct Program {
    unsigned id = 0;
    int to_clip = -1;
};

/// Draws what ImGui has prepared, with WebGL 1. The surface is ours alone, so no state of it is read back: a read makes the
/// browser wait for the picture before, 10 ms and more of each frame where drawing is slow.
class Renderer {
public:
    void make();          ///< programs, buffers and fonts; after a lost context anew, with what was lost forgotten
    void upload_fonts();  ///< ImGui's font atlas, baked before
    /// On a field of that colour, packed as ImGui does. False, with nothing drawn, where the surface shows just that already and it
    /// need not be drawn `anyway`.
    bool draw(const ImDrawData& data, unsigned field, bool anyway);
    void forget_shown() { shown_.forget(); }  ///< the surface may show anything
    [[nodiscard]] bool shows_a_picture() const { return shown_.is_known(); }

private:
    bool is_new(const ImDrawData& data, unsigned field);
    void draw_all(const ImDrawData& data, unsigned field);
    void draw_list(const ImDrawList& list, const ImVec2& ratio, int height_px);

    Program letters_, plain_;
    unsigned vertices_ = 0, indices_ = 0, atlas_ = 0;
    DrawOrder order_;
    ShownPicture shown_;
};

}  // namespace guywright::platform
