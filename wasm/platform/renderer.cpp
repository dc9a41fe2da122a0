#include "wasm/platform/renderer.hpp"

#include <GLES2/gl2.h>
#include <array>
#include <cstddef>
#include <imgui.h>

namespace guywright::platform {
namespace {

static_assert(sizeof(ImDrawIdx) == 2, "WebGL 1 draws with indices of two bytes");

constexpr GLuint k_position = 0, k_uv = 1, k_colour = 2;

constexpr const char* k_vertex_shader =
    "attribute vec2 position; attribute vec2 uv; attribute vec4 colour;"
    "uniform vec4 to_clip; varying vec2 at; varying vec4 paint;"
    "void main() { at = uv; paint = colour; gl_Position = vec4(position * to_clip.xy + to_clip.zw, 0.0, 1.0); }";

constexpr const char* k_fragment_shader =
    "precision mediump float; uniform sampler2D atlas; varying vec2 at; varying vec4 paint;"
    "void main() { gl_FragColor = vec4(paint.rgb, paint.a * texture2D(atlas, at).a); }";

GLuint compiled(GLenum kind, const char* source) {
    const GLuint shader = glCreateShader(kind);
    glShaderSource(shader, 1, &source, nullptr);
    glCompileShader(shader);
    return shader;
}

const void* offset(std::size_t bytes) { return reinterpret_cast<const void*>(bytes); }

void set_up_state(const ImDrawData& data, int width_px, int height_px) {
    glViewport(0, 0, width_px, height_px);
    glDisable(GL_SCISSOR_TEST);
    glClearColor(0.0F, 0.0F, 0.0F, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    if (data.CmdListsCount > 0) glEnable(GL_SCISSOR_TEST);
}

void describe_vertices() {
    constexpr GLsizei k_stride = sizeof(ImDrawVert);
    for (const GLuint place : {k_position, k_uv, k_colour}) glEnableVertexAttribArray(place);
    glVertexAttribPointer(k_position, 2, GL_FLOAT, GL_FALSE, k_stride, offset(offsetof(ImDrawVert, pos)));
    glVertexAttribPointer(k_uv, 2, GL_FLOAT, GL_FALSE, k_stride, offset(offsetof(ImDrawVert, uv)));
    glVertexAttribPointer(k_colour, 4, GL_UNSIGNED_BYTE, GL_TRUE, k_stride, offset(offsetof(ImDrawVert, col)));
}

void draw_command(const ImDrawCmd& command, const ImVec2& ratio, int height_px) {
    const float left = command.ClipRect.x * ratio.x, top = command.ClipRect.y * ratio.y;
    const float right = command.ClipRect.z * ratio.x, bottom = command.ClipRect.w * ratio.y;
    if (!(right > left && bottom > top)) return;
    glScissor(static_cast<int>(left), static_cast<int>(static_cast<float>(height_px) - bottom), static_cast<int>(right - left), static_cast<int>(bottom - top));
    glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(command.ElemCount), GL_UNSIGNED_SHORT, offset(command.IdxOffset * sizeof(ImDrawIdx)));
}

}  // namespace

void Renderer::make() {
    program_ = glCreateProgram();
    glAttachShader(program_, compiled(GL_VERTEX_SHADER, k_vertex_shader));
    glAttachShader(program_, compiled(GL_FRAGMENT_SHADER, k_fragment_shader));
    glBindAttribLocation(program_, k_position, "position");
    glBindAttribLocation(program_, k_uv, "uv");
    glBindAttribLocation(program_, k_colour, "colour");
    glLinkProgram(program_);
    to_clip_ = glGetUniformLocation(program_, "to_clip");
    glGenBuffers(1, &vertices_);
    glGenBuffers(1, &indices_);
    glGenTextures(1, &atlas_);
    upload_fonts();
}

void Renderer::upload_fonts() {
    unsigned char* alpha = nullptr;
    int width = 0, height = 0;
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&alpha, &width, &height);
    glBindTexture(GL_TEXTURE_2D, atlas_);
    for (const GLenum which : {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER}) glTexParameteri(GL_TEXTURE_2D, which, GL_LINEAR);
    for (const GLenum which : {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T}) glTexParameteri(GL_TEXTURE_2D, which, GL_CLAMP_TO_EDGE);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_ALPHA, width, height, 0, GL_ALPHA, GL_UNSIGNED_BYTE, alpha);
}

void Renderer::draw(const ImDrawData& data) {
    const ImVec2 ratio = data.FramebufferScale;
    const int width_px = static_cast<int>(data.DisplaySize.x * ratio.x), height_px = static_cast<int>(data.DisplaySize.y * ratio.y);
    if (width_px <= 0 || height_px <= 0) return;
    set_up_state(data, width_px, height_px);
    glUseProgram(program_);
    glUniform4f(to_clip_, 2.0F / data.DisplaySize.x, -2.0F / data.DisplaySize.y, -1.0F, 1.0F);
    glBindTexture(GL_TEXTURE_2D, atlas_);
    glBindBuffer(GL_ARRAY_BUFFER, vertices_);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_);
    describe_vertices();
    for (int i = 0; i < data.CmdListsCount; ++i) {
        const ImDrawList& list = *data.CmdLists[i];
        glBufferData(GL_ARRAY_BUFFER, list.VtxBuffer.size_in_bytes(), list.VtxBuffer.Data, GL_STREAM_DRAW);
        glBufferData(GL_ELEMENT_ARRAY_BUFFER, list.IdxBuffer.size_in_bytes(), list.IdxBuffer.Data, GL_STREAM_DRAW);
        for (const ImDrawCmd& command : list.CmdBuffer) draw_command(command, ratio, height_px);
    }
}

}  // namespace guywright::platform
