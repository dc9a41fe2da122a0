#pragma once

struct ImDrawCmd;
struct ImDrawData;
struct ImDrawList;

namespace guywright::platform {

/// Draws what ImGui has prepared, with WebGL 1. The surface is ours alone, so no state of it is read back: a read makes the
/// browser wait for the picture before, 10 ms and more of each frame where drawing is slow.
class Renderer {
public:
    void make();                                        ///< programs, buffers and fonts; after a lost context anew, with what was lost forgotten
    void upload_fonts();                                ///< ImGui's font atlas, baked before
    void draw(const ImDrawData& data, unsigned field);  ///< on a field of that colour, packed as ImGui does

private:
    void draw_command(const ImDrawList& list, const ImDrawCmd& command) const;

    unsigned letters_ = 0, plain_ = 0, vertices_ = 0, indices_ = 0, atlas_ = 0;
};

}  // namespace guywright::platform
