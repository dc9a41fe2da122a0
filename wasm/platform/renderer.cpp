#include "wasm/platform/renderer.hpp"

#include <GLES2/gl2.h>
#include <cstddef>
#include <imgui.h>
#include <span>

namespace guywright::platform {
namespace {

static_assert(sizeof(ImDrawIdx) == 2, "WebGL 1 draws with indices of two bytes");

constexpr GLuint k_position = 0, k_uv = 1, k_colour = 2;

constexpr const char* k_vertex_shader =
    "attribute vec2 position; attribute vec2 uv; attribute vec4 colour;"
    "uniform vec4 to_clip; varying vec2 at; varying vec4 paint;"
    "void main() { at = uv; paint = colour; gl_Position = vec4(position * to_clip.xy + to_clip.zw, 0.0, 1.0); }";

constexpr const char* k_letters_shader =
    "precision mediump float; uniform sampler2D atlas; varying vec2 at; varying vec4 paint;"
    "void main() { gl_FragColor = vec4(paint.rgb, paint.a * texture2D(atlas, at).a); }";

/// Without a graphics chip a frame mostly waits for the atlas to be looked up: what is of one colour goes without.
constexpr const char* k_plain_shader =
    "precision mediump float; varying vec4 paint;"
    "void main() { gl_FragColor = paint; }";

GLuint compiled(GLenum kind, const char* source) {
    const GLuint shader = glCreateShader(kind);
    glShaderSource(shader, 1, &source, nullptr);
    glCompileShader(shader);
    return shader;
}

Program linked(const char* fragment_shader) {
    const GLuint program = glCreateProgram();
    glAttachShader(program, compiled(GL_VERTEX_SHADER, k_vertex_shader));
    glAttachShader(program, compiled(GL_FRAGMENT_SHADER, fragment_shader));
    glBindAttribLocation(program, k_position, "position");
    glBindAttribLocation(program, k_uv, "uv");
    glBindAttribLocation(program, k_colour, "colour");
    glLinkProgram(program);
    return {program, glGetUniformLocation(program, "to_clip")};
}

const void* offset(std::size_t bytes) { return reinterpret_cast<const void*>(bytes); }

void set_up_state(int width_px, int height_px, unsigned field) {
    const ImVec4 colour = ImGui::ColorConvertU32ToFloat4(field);
    glViewport(0, 0, width_px, height_px);
    glDisable(GL_SCISSOR_TEST);
    glClearColor(colour.x, colour.y, colour.z, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
    glEnable(GL_SCISSOR_TEST);
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
}

void set_to_clip(const Program& program, const ImVec2& size) {
    glUseProgram(program.id);
    glUniform4f(program.to_clip, 2.0F / size.x, -2.0F / size.y, -1.0F, 1.0F);
}

void describe_vertices() {
    constexpr GLsizei k_stride = sizeof(ImDrawVert);
    for (const GLuint place : {k_position, k_uv, k_colour}) glEnableVertexAttribArray(place);
    glVertexAttribPointer(k_position, 2, GL_FLOAT, GL_FALSE, k_stride, offset(offsetof(ImDrawVert, pos)));
    glVertexAttribPointer(k_uv, 2, GL_FLOAT, GL_FALSE, k_stride, offset(offsetof(ImDrawVert, uv)));
    glVertexAttribPointer(k_colour, 4, GL_UNSIGNED_BYTE, GL_TRUE, k_stride, offset(offsetof(ImDrawVert, col)));
}

/// False where nothing of the command is seen.
bool set_scissor(const ImDrawCmd& command, const ImVec2& ratio, int height_px) {
    const float left = command.ClipRect.x * ratio.x, top = command.ClipRect.y * ratio.y;
    const float right = command.ClipRect.z * ratio.x, bottom = command.ClipRect.w * ratio.y;
    if (!(right > left && bottom > top)) return false;
    glScissor(static_cast<int>(left), static_cast<int>(static_cast<float>(height_px) - bottom), static_cast<int>(right - left), static_cast<int>(bottom - top));
    return true;
}

}  // namespace

void Renderer::make() {
    letters_ = linked(k_letters_shader);
    plain_ = linked(k_plain_shader);
    glGenBuffers(1, &vertices_);
    glGenBuffers(1, &indices_);
    glGenTextures(1, &atlas_);
    upload_fonts();
}

void Renderer::upload_fonts() {
    unsigned char* alpha = nullptr;
    int width = 0, height = 0;
    forget_shown();
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&alpha, &width, &height);
    glBindTexture(GL_TEXTURE_2D, atlas_);
    for (const GLenum which : {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER}) glTexParameteri(GL_TEXTURE_2D, which, GL_LINEAR);
    for (const GLenum which : {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T}) glTexParameteri(GL_TEXTURE_2D, which, GL_CLAMP_TO_EDGE);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_ALPHA, width, height, 0, GL_ALPHA, GL_UNSIGNED_BYTE, alpha);
}

bool Renderer::draw(const ImDrawData& data, unsigned field, bool anyway) {
    if (!is_new(data, field) && !anyway) return false;
    draw_all(data, field);
    return true;
}

bool Renderer::is_new(const ImDrawData& data, unsigned field) {
    const auto number = [this](const auto& value) { shown_.add(std::span(&value, 1)); };
    number(data.DisplaySize);
    number(data.FramebufferScale);
    number(field);
    for (int i = 0; i < data.CmdListsCount; ++i) {
        const ImDrawList& list = *data.CmdLists[i];
        shown_.add(std::span<const ImDrawVert>(list.VtxBuffer.Data, list.VtxBuffer.size()));
        shown_.add(std::span<const ImDrawIdx>(list.IdxBuffer.Data, list.IdxBuffer.size()));
        for (const ImDrawCmd& command : list.CmdBuffer) {
            number(command.ClipRect);
            number(command.ElemCount);
        }
    }
    return shown_.replace();
}

void Renderer::draw_all(const ImDrawData& data, unsigned field) {
    const ImVec2 ratio = data.FramebufferScale;
    const int width_px = static_cast<int>(data.DisplaySize.x * ratio.x), height_px = static_cast<int>(data.DisplaySize.y * ratio.y);
    if (width_px <= 0 || height_px <= 0) return;
    set_up_state(width_px, height_px, field);
    for (const Program& program : {plain_, letters_}) set_to_clip(program, data.DisplaySize);
    glBindTexture(GL_TEXTURE_2D, atlas_);
    glBindBuffer(GL_ARRAY_BUFFER, vertices_);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_);
    describe_vertices();
    for (int i = 0; i < data.CmdListsCount; ++i) draw_list(*data.CmdLists[i], ratio, height_px);
}

void Renderer::draw_list(const ImDrawList& list, const ImVec2& ratio, int height_px) {
    const ImVec2 white = ImGui::GetIO().Fonts->TexUvWhitePixel;
    const auto corner = [&](ImDrawIdx index) {
        const ImDrawVert& v = list.VtxBuffer[index];
        return Corner{v.pos.x, v.pos.y, v.uv.x == white.x && v.uv.y == white.y};
    };
    order_.clear();
    for (int i = 0; i < list.CmdBuffer.Size; ++i) order_.add(i, {list.IdxBuffer.Data + list.CmdBuffer[i].IdxOffset, list.CmdBuffer[i].ElemCount}, corner);
    glBufferData(GL_ARRAY_BUFFER, list.VtxBuffer.size_in_bytes(), list.VtxBuffer.Data, GL_STREAM_DRAW);
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(order_.indices().size() * sizeof(ImDrawIdx)), order_.indices().data(), GL_STREAM_DRAW);
    for (const DrawOrder::Piece& piece : order_.pieces()) {
        if (!set_scissor(list.CmdBuffer[piece.clip], ratio, height_px)) continue;
        glUseProgram(piece.plain ? plain_.id : letters_.id);
        glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(piece.count), GL_UNSIGNED_SHORT, offset(piece.from * sizeof(ImDrawIdx)));
    }
}

}  // namespace guywright::platform
