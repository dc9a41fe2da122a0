// Draws the scene of invented rigs into PNG files, for looking at: preview FOLDER [NAME...]. Built by preview.sh.
// The pictures come from the same draw list that the browser gets, filled in by a small rasteriser.
#include <imgui.h>

#include <cstdint>
#include <cstdio>
#include <cstring>
#include <string>

#include "engine/verdict/evaluate.hpp"
#include "tests/support/plans.hpp"
#include "wasm/scene/head_movement.hpp"
#include "wasm/scene/scene.hpp"

namespace {

using namespace guywright;

// --- pixels ------------------------------------------------------------------------------------------------------------

struct Picture {
    int width = 0, height = 0;
    std::vector<float> rgb;
    Picture(int w, int h) : width(w), height(h), rgb(static_cast<std::size_t>(w) * h * 3, 0.0F) {}
};

struct Texture {
    unsigned char* alpha = nullptr;
    int width = 0, height = 0;
    float sample(float u, float v) const {
        const float x = u * width - 0.5F, y = v * height - 0.5F;
        const int x0 = static_cast<int>(std::floor(x)), y0 = static_cast<int>(std::floor(y));
        const float fx = x - x0, fy = y - y0;
        const auto at = [&](int i, int j) { return alpha[std::clamp(j, 0, height - 1) * width + std::clamp(i, 0, width - 1)] / 255.0F; };
        return (1 - fy) * ((1 - fx) * at(x0, y0) + fx * at(x0 + 1, y0)) + fy * ((1 - fx) * at(x0, y0 + 1) + fx * at(x0 + 1, y0 + 1));
    }
};

float turn_of(ImVec2 a, ImVec2 b, ImVec2 c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

// A pixel on the shared border of two triangles belongs to one of them, as on a graphics chip.
bool owns_border(ImVec2 a, ImVec2 b) { return (a.y == b.y && b.x < a.x) || b.y < a.y; }

void fill(Picture& p, const Texture& t, const ImVec4& clip, ImDrawVert a, ImDrawVert b, ImDrawVert c, float ratio) {
    for (ImDrawVert* v : {&a, &b, &c}) v->pos = {v->pos.x * ratio, v->pos.y * ratio};
    float area = turn_of(a.pos, b.pos, c.pos);
    if (area == 0.0F) return;
    if (area < 0.0F) {
        std::swap(b, c);
        area = -area;
    }
    const int x0 = std::max({0, static_cast<int>(std::floor(std::min({a.pos.x, b.pos.x, c.pos.x}))), static_cast<int>(clip.x * ratio)});
    const int y0 = std::max({0, static_cast<int>(std::floor(std::min({a.pos.y, b.pos.y, c.pos.y}))), static_cast<int>(clip.y * ratio)});
    const int x1 = std::min({p.width, static_cast<int>(std::ceil(std::max({a.pos.x, b.pos.x, c.pos.x}))), static_cast<int>(clip.z * ratio)});
    const int y1 = std::min({p.height, static_cast<int>(std::ceil(std::max({a.pos.y, b.pos.y, c.pos.y}))), static_cast<int>(clip.w * ratio)});
    const ImVec4 ca = ImGui::ColorConvertU32ToFloat4(a.col), cb = ImGui::ColorConvertU32ToFloat4(b.col), cc = ImGui::ColorConvertU32ToFloat4(c.col);
    for (int y = y0; y < y1; ++y)
        for (int x = x0; x < x1; ++x) {
            const ImVec2 at{x + 0.5F, y + 0.5F};
            const float wa = turn_of(b.pos, c.pos, at), wb = turn_of(c.pos, a.pos, at), wc = turn_of(a.pos, b.pos, at);
            const auto outside = [](float w, ImVec2 from, ImVec2 to) { return w < 0.0F || (w == 0.0F && !owns_border(from, to)); };
            if (outside(wa, b.pos, c.pos) || outside(wb, c.pos, a.pos) || outside(wc, a.pos, b.pos)) continue;
            const float i = wa / area, j = wb / area, k = wc / area;
            const float alpha = (i * ca.w + j * cb.w + k * cc.w) * t.sample(i * a.uv.x + j * b.uv.x + k * c.uv.x, i * a.uv.y + j * b.uv.y + k * c.uv.y);
            float* pixel = &p.rgb[(static_cast<std::size_t>(y) * p.width + x) * 3];
            const float colour[] = {i * ca.x + j * cb.x + k * cc.x, i * ca.y + j * cb.y + k * cc.y, i * ca.z + j * cb.z + k * cc.z};
            for (int n = 0; n < 3; ++n) pixel[n] += alpha * (colour[n] - pixel[n]);
        }
}

void paint(Picture& p, const Texture& t, const ImDrawList& list, float ratio) {
    for (const ImDrawCmd& cmd : list.CmdBuffer)
        for (unsigned i = 0; i + 2 < cmd.ElemCount; i += 3) {
            const auto vertex = [&](unsigned n) { return list.VtxBuffer[cmd.VtxOffset + list.IdxBuffer[static_cast<int>(cmd.IdxOffset + i + n)]]; };
            fill(p, t, cmd.ClipRect, vertex(0), vertex(1), vertex(2), ratio);
        }
}

// --- PNG, stored without compression ---------------------------------------------------------------------------------------

using Bytes = std::vector<unsigned char>;

void add32(Bytes& out, std::uint32_t v) {
    for (int s = 24; s >= 0; s -= 8) out.push_back(static_cast<unsigned char>(v >> s));
}

std::uint32_t crc_of(const unsigned char* data, std::size_t size) {
    std::uint32_t crc = 0xFFFFFFFFU;
    for (std::size_t i = 0; i < size; ++i) {
        crc ^= data[i];
        for (int k = 0; k < 8; ++k) crc = (crc >> 1) ^ (0xEDB88320U & (0U - (crc & 1U)));
    }
    return ~crc;
}

void add_chunk(Bytes& out, const char* type, const Bytes& body) {
    add32(out, static_cast<std::uint32_t>(body.size()));
    const std::size_t start = out.size();
    out.insert(out.end(), type, type + 4);
    out.insert(out.end(), body.begin(), body.end());
    add32(out, crc_of(&out[start], out.size() - start));
}

Bytes stored(const Bytes& raw) {
    Bytes out{0x78, 0x01};
    for (std::size_t at = 0; at < raw.size(); at += 65535) {
        const std::size_t n = std::min<std::size_t>(65535, raw.size() - at);
        out.push_back(at + n == raw.size());
        for (const std::size_t v : {n, ~n}) {
            out.push_back(v & 255U);
            out.push_back((v >> 8) & 255U);
        }
        out.insert(out.end(), raw.begin() + static_cast<long>(at), raw.begin() + static_cast<long>(at + n));
    }
    std::uint32_t a = 1, b = 0;
    for (const unsigned char c : raw) {
        a = (a + c) % 65521;
        b = (b + a) % 65521;
    }
    add32(out, (b << 16) | a);
    return out;
}

void write_png(const Picture& p, const std::string& path) {
    Bytes raw;
    for (int y = 0; y < p.height; ++y) {
        raw.push_back(0);
        for (int i = 0; i < 3 * p.width; ++i)
            raw.push_back(static_cast<unsigned char>(std::lround(255.0F * std::clamp(p.rgb[static_cast<std::size_t>(y) * 3 * p.width + i], 0.0F, 1.0F))));
    }
    Bytes head, out{0x89, 'P', 'N', 'G', 13, 10, 26, 10};
    add32(head, static_cast<std::uint32_t>(p.width));
    add32(head, static_cast<std::uint32_t>(p.height));
    for (const int v : {8, 2, 0, 0, 0}) head.push_back(static_cast<unsigned char>(v));
    add_chunk(out, "IHDR", head);
    add_chunk(out, "IDAT", stored(raw));
    add_chunk(out, "IEND", {});
    if (FILE* f = std::fopen(path.c_str(), "wb")) {
        std::fwrite(out.data(), 1, out.size(), f);
        std::fclose(f);
    }
}

// --- looks -----------------------------------------------------------------------------------------------------------------

scene::Look sun() {
    return {.ground = IM_COL32(232, 222, 196, 255),
            .face = IM_COL32(190, 170, 136, 255),
            .edge = IM_COL32(26, 20, 10, 255),
            .leg = IM_COL32(255, 204, 51, 255),
            .guy = IM_COL32(0, 70, 140, 255),
            .guy_slack = IM_COL32(150, 20, 0, 255),
            .rope = IM_COL32(110, 20, 110, 255),
            .load = IM_COL32(150, 160, 170, 255),
            .resultant = IM_COL32(155, 28, 0, 255),
            .text = IM_COL32(0, 0, 0, 255),
            .plate = IM_COL32(255, 255, 255, 255),
            .hazard = IM_COL32(190, 70, 0, 255),
            .highlight = IM_COL32(0, 220, 235, 255)};
}

scene::Look dim() {
    return {.ground = IM_COL32(62, 58, 48, 255),
            .face = IM_COL32(40, 36, 30, 255),
            .edge = IM_COL32(205, 195, 175, 255),
            .leg = IM_COL32(255, 204, 51, 255),
            .guy = IM_COL32(110, 190, 255, 255),
            .guy_slack = IM_COL32(255, 140, 110, 255),
            .rope = IM_COL32(230, 160, 240, 255),
            .load = IM_COL32(120, 130, 140, 255),
            .resultant = IM_COL32(255, 150, 110, 255),
            .text = IM_COL32(245, 245, 240, 255),
            .plate = IM_COL32(0, 0, 0, 255),
            .hazard = IM_COL32(255, 176, 0, 255),
            .highlight = IM_COL32(0, 150, 160, 255)};
}

scene::Look night() {
    const auto red = [](int v, int rest) { return IM_COL32(v, rest, rest / 2, 255); };
    return {.ground = red(48, 4),
            .face = red(28, 2),
            .edge = red(190, 30),
            .leg = red(255, 70),
            .guy = red(235, 50),
            .guy_slack = red(200, 40),
            .rope = red(210, 45),
            .load = red(110, 15),
            .resultant = red(255, 80),
            .text = red(255, 60),
            .plate = red(0, 0),
            .hazard = red(150, 20),
            .highlight = red(120, 10)};
}

// --- rigs --------------------------------------------------------------------------------------------------------------------

using support::guy;

Plan sound() { return support::usual_plan(); }

Plan upright() {
    Plan p = sound();
    p.frame.lean_deg = 0;
    p.guys = {guy("back", 180, 40), guy("right", 70, 40), guy("left", 290, 40)};
    return p;
}

Plan four() {
    Plan p = sound();
    p.guys = {guy("back right", 150, 32), guy("back left", 210, 32), guy("right", 75, 30), guy("left", 285, 30)};
    p.ropes[0].haul->bearing_deg = 200;
    p.ropes[0].haul->distance_m = 4;
    return p;
}

Plan slope(double face_deg) {
    Plan p = sound();
    p.edge.face_deg = face_deg;
    return p;
}

Plan shaft() {
    Plan p = sound();
    p.edge.opening_m = 2.5;
    p.guys.push_back(guy("across", 0, 40));
    p.guys.back().anchor_m = Vec3{4.2, 0.3, 0};
    return p;
}

Plan slack() {
    Plan p = sound();
    p.guys[1].pretension_kN = p.guys[2].pretension_kN = 0;
    p.guys.push_back(guy("front", 20, 35));
    return p;
}

Plan far_anchor() {
    Plan p = sound();
    p.guys[0].anchor_m = Vec3{-14, 2, 0.5};
    p.ropes[0].haul->bearing_deg = 120;
    p.ropes[0].haul->distance_m = 25;
    return p;
}

LegPlan leg(Vec3 foot_m, double length_m) {
    LegPlan l;
    l.foot_m = foot_m;
    l.length_m = length_m;
    return l;
}

Plan a_frame() {
    Plan p = sound();
    p.frame.kind = FrameKind::AFrame;
    p.frame.legs = {leg({-1.8, -0.9, 0}, 2.7), leg({-1.8, 0.9, 0}, 2.7)};
    p.frame.hobbles = {{0, 1, 9.8}};
    p.feet.resize(2);
    p.guys = {guy("back", 180, 30, 3), guy("front", 0, 30, 3)};
    p.guys[1].anchor_m = Vec3{0.4, 0, -0.4};
    p.edge.face_deg = 60;
    return p;
}

Plan tripod() {
    Plan p = sound();
    p.frame.kind = FrameKind::Tripod;
    p.frame.legs = {leg({-0.9, -0.8, 0}, 2.6), leg({-0.9, 0.8, 0}, 2.6), leg({2.2, 0, 0}, 2.9)};
    p.frame.hobbles = {{0, 1, 9.8}, {1, 2, 9.8}, {2, 0, 9.8}};
    p.edge.opening_m = 1.8;
    p.feet.resize(3);
    p.guys.clear();
    return p;
}

Plan not_ready() {
    Plan p = sound();
    p.guys.clear();
    p.feet[0].ties.clear();
    p.edge.face_deg = 130;  // out of range: no answer
    return p;
}

struct Shot {
    const char* name;
    Plan plan;
    scene::View view = scene::View::Free;
    scene::Camera camera = {};
    scene::Highlight highlight = {};
    std::size_t shown = k_holding;
    scene::Look look = sun();
};

std::vector<Shot> shots() {
    using scene::View;
    using Part = scene::Highlight::Part;
    return {{"sound", sound()},
            {"usual_plan", sound(), View::Above},
            {"sound_side", sound(), View::Side},
            {"sound_from_behind", sound(), View::Free, {20, 25, 1}},
            {"sound_right", sound(), View::Free, {275, 12, 1}},
            {"sound_top", sound(), View::Free, {330, 60, 1}},
            {"sound_zoom", sound(), View::Free, {215, 18, 2.5}},
            {"sound_dim", sound(), View::Free, {235, 22, 1}, {Part::Guy, 0}, k_holding, dim()},
            {"sound_night", sound(), View::Free, {235, 22, 1}, {Part::Lean, 0}, k_holding, night()},
            {"sound_rigged", sound(), View::Free, {}, {Part::Foot, 0}, k_rigged},
            {"sound_arrest", sound(), View::Free, {}, {Part::Rope, 0}, 4},
            {"sound_swing", sound(), View::Free, {}, {Part::Haul, 0}, 5},
            {"upright", upright(), View::Free, {}, {Part::Edge, 0}},
            {"upright_side", upright(), View::Side, {}, {Part::Head, 0}},
            {"upright_plan", upright(), View::Above, {}, {Part::Guy, 1}},
            {"four", four(), View::Free, {}, {Part::FootTie, 0}},
            {"four_plan", four(), View::Above},
            {"four_side", four(), View::Side},
            {"slope60", slope(60)},
            {"slope60_side", slope(60), View::Side},
            {"slope30_side", slope(30), View::Side},
            {"over110", slope(110)},
            {"over110_side", slope(110), View::Side},
            {"shaft", shaft()},
            {"shaft_behind", shaft(), View::Free, {30, 30, 1}},
            {"shaft_side", shaft(), View::Side},
            {"shaft_plan", shaft(), View::Above},
            {"slack", slack()},
            {"slack_plan", slack(), View::Above},
            {"far", far_anchor()},
            {"far_plan", far_anchor(), View::Above},
            {"far_side", far_anchor(), View::Side},
            {"a_frame", a_frame()},
            {"a_frame_side", a_frame(), View::Side},
            {"a_frame_plan", a_frame(), View::Above},
            {"tripod", tripod(), View::Free, {235, 25, 1}},
            {"tripod_side", tripod(), View::Side},
            {"tripod_plan", tripod(), View::Above},
            {"sound_behind", sound(), View::Behind},
            {"four_behind", four(), View::Behind},
            {"a_frame_behind", a_frame(), View::Behind},
            {"sound_forces", sound(), View::Forces},
            {"four_forces", four(), View::Forces},
            {"slack_forces", slack(), View::Forces},
            {"a_frame_forces", a_frame(), View::Forces},
            {"tripod_forces", tripod(), View::Forces},
            {"sound_forces_turned", sound(), View::Forces, {.forces_yaw_deg = 40, .forces_pitch_deg = 25}},
            {"sound_rigged_forces", sound(), View::Forces, {}, {}, k_rigged},
            {"not_ready", not_ready()},
            {"not_ready_side", not_ready(), View::Side}};
}

struct Size {
    int width, height;
    float ratio;
};
constexpr Size k_sizes[] = {{300, 200, 2}, {390, 260, 2}, {390, 470, 2}, {800, 560, 1}, {760, 700, 1}, {1200, 1100, 1}};

void shoot(const Shot& shot, const Size& size, const Texture& texture, ImFont* font, const std::string& folder) {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplayFramebufferScale = {size.ratio, size.ratio};
    ImDrawList list(ImGui::GetDrawListSharedData());
    list._ResetForNewFrame();
    list.PushTextureID(io.Fonts->TexID);
    list.PushClipRect({0, 0}, {static_cast<float>(size.width), static_cast<float>(size.height)});
    const Evaluation e = evaluate(shot.plan);
    const scene::Frame frame{{0, 0}, {static_cast<float>(size.width), static_cast<float>(size.height)}};
    // A picture as large as this has the screen to itself.
    const bool large = size.height > 400;
    const double enlarge = large ? scene::enlargement(e) : 1.0;
    const scene::Picture asked{shot.shown, enlarge, large, shot.highlight, {}, {}};
    list.AddRectFilled(frame.min, frame.max, shot.look.plate);  // each theme writes on plates of its field
    const int left_out = scene::draw(list, font, 18.0F, frame, shot.camera, shot.view, shot.plan, e, asked, shot.look);
    Picture picture(static_cast<int>(size.width * size.ratio), static_cast<int>(size.height * size.ratio));
    paint(picture, texture, list, size.ratio);
    const std::string path = folder + "/" + shot.name + "_" + std::to_string(size.width) + "x" + std::to_string(size.height) + ".png";
    write_png(picture, path);
    std::printf("%s: %d vertices, %d labels left out\n", path.c_str(), list.VtxBuffer.Size, left_out);
}

Bytes read_file(const char* path) {
    Bytes out;
    if (FILE* f = std::fopen(path, "rb")) {
        for (int c = std::fgetc(f); c != EOF; c = std::fgetc(f)) out.push_back(static_cast<unsigned char>(c));
        std::fclose(f);
    }
    return out;
}

ImFont* bake(Bytes& face, float size_px) {
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    config.OversampleH = 1;
    config.PixelSnapH = true;
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(face.data(), static_cast<int>(face.size()), size_px, &config);
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 3) return std::puts("preview FONT FOLDER [NAME or WIDTHxHEIGHT...]"), 2;
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    Bytes face = read_file(argv[1]);
    ImFont* fonts[] = {bake(face, 18.0F), bake(face, 36.0F)};  // for one and for two device pixels per CSS pixel
    Texture texture;
    io.Fonts->GetTexDataAsAlpha8(&texture.alpha, &texture.width, &texture.height);
    io.DisplaySize = {1200, 1100};
    ImGui::NewFrame();
    const auto wanted = [&](const std::string& name) {
        if (argc == 3) return true;
        for (int i = 3; i < argc; ++i)
            if (name == argv[i]) return true;
        return false;
    };
    for (const Shot& shot : shots())
        for (const Size& size : k_sizes) {
            const std::string dimensions = std::to_string(size.width) + "x" + std::to_string(size.height);
            if (wanted(shot.name) || wanted(dimensions) || wanted(std::string(shot.name) + "_" + dimensions))
                shoot(shot, size, texture, fonts[size.ratio > 1.0F], argv[2]);
        }
    ImGui::EndFrame();
    ImGui::DestroyContext();
    return 0;
}
