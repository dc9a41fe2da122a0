#pragma once

struct ImDrawData;

namespace guywright::platform {

/// Draws what ImGui has prepared, with WebGL 1. The surface is ours alone, so no state of it is read back: a read makes the
/// browser wait for the picture before, 10 ms and more of each frame where drawing is slow.
class Renderer {
public:
    void make();          ///< program, buffers and fonts; after a lost context anew, with what was lost forgotten
    void upload_fonts();  ///< ImGui's font atlas, baked before
    void draw(const ImDrawData& data);

private:
    unsigned program_ = 0, vertices_ = 0, indices_ = 0, atlas_ = 0;
    int to_clip_ = -1;
};

}  // namespace guywright::platform
