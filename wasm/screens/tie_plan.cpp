#include <cmath>

#include "engine/codec/tuning_sentences.hpp"
#include "wasm/screens/advice_drawings.hpp"
#include "wasm/screens/advice_items.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/words/advice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::Ui;

constexpr float k_label_px = 24.0F;

/// One guy in the drawing.
struct Ray {
    ImVec2 along{};  ///< unit, on screen
    bool slack = false;
    double change_N = 0.0;  ///< per take-up of 10 mm of the guy chosen
    std::string name, value;
};

ImVec2 at(ImVec2 from, ImVec2 along, float px) { return {from.x + along.x * px, from.y + along.y * px}; }

std::vector<Ray> rays_of(const app::State& s, const app::Advisor& a) {
    const bool holding = s.advice_shown.holding;
    const TieMatrix& ties = holding ? a.tuning().holding : a.tuning().rigged;
    const Model& m = a.evaluation().model;
    const Telling t = telling(s);
    const std::size_t chosen = guy_shown(s);
    std::vector<Ray> rays;
    for (std::size_t i = 0; i < m.guys.size(); ++i) {
        Ray ray;
        const double bearing_rad = radians(bearing_deg_of(m.guys[i].anchor_m - m.drawn_head_m));
        ray.along = {static_cast<float>(std::sin(bearing_rad)), static_cast<float>(-std::cos(bearing_rad))};
        ray.name = a.plan().guys[i].name;
        ray.slack = ties.computed && ties.slack_m[i] > 0.0;
        if (ties.computed) ray.change_N = k_told_take_up_m * ties.change_N_per_m[chosen][i];
        if (ray.slack) ray.value = app::say(s.speech, words::advice::k_slack);
        else if (ties.computed) ray.value = guywright::detail::with_sign(quantity(t, ray.change_N, "N"));
        rays.push_back(std::move(ray));
    }
    return rays;
}

/// A bar along the guy, as long and as wide as the change is large: solid with its head outward where the guy pulls more, hollow with
/// its head inward where it pulls less.
void draw_change(Ui& ui, ImVec2 head, const Ray& ray, float radius_px, double most_N) {
    const auto share = static_cast<float>(most_N > 0.0 ? std::abs(ray.change_N) / most_N : 0.0);
    if (share < 0.01F) return;
    const bool more = ray.change_N > 0.0;
    const float near = 0.2F * radius_px, long_px = (0.12F + 0.4F * share) * radius_px, half = 4.0F + 7.0F * share, tip_px = 8.0F + half;
    const ImVec2 across{-ray.along.y, ray.along.x};
    const float from = more ? near : near + tip_px, to = more ? near + long_px : near + tip_px + long_px;
    const ImVec2 a = at(head, ray.along, from), b = at(head, ray.along, to);
    ui.draw.AddLine(a, b, ui.theme.ink, 2.0F * half);
    if (!more) ui.draw.AddLine(at(a, ray.along, 3.0F), at(b, ray.along, -3.0F), ui.theme.field, 2.0F * half - 6.0F);
    const ImVec2 base = more ? b : a, tip = at(base, ray.along, more ? tip_px : -tip_px);
    ui.draw.AddTriangleFilled(tip, at(base, across, half + 7.0F), at(base, across, -half - 7.0F), ui.theme.ink);
}

void draw_guy(Ui& ui, ImVec2 head, const Ray& ray, float radius_px, bool chosen) {
    const ImVec2 end = at(head, ray.along, radius_px);
    if (ray.slack) dashed_line(ui.draw, head, end, ui.theme.ink, 3.0F);
    else ui.draw.AddLine(head, end, ui.theme.ink, chosen ? 5.0F : 3.0F);
    ui.draw.AddRectFilled({end.x - 8.0F, end.y - 8.0F}, {end.x + 8.0F, end.y + 8.0F}, chosen ? ui.theme.caution : ui.theme.ink);
    ui.draw.AddRect({end.x - 8.0F, end.y - 8.0F}, {end.x + 8.0F, end.y + 8.0F}, ui.theme.ink, 0.0F, 0, 3.0F);
    if (chosen) ui.draw.AddRect({end.x - 15.0F, end.y - 15.0F}, {end.x + 15.0F, end.y + 15.0F}, ui.theme.ink, 0.0F, 0, 3.0F);
}

void label_guy(Ui& ui, const app::State& s, ImVec2 head, const Ray& ray, float radius_px, bool chosen, const Box& box) {
    const float wide = std::max(widgets::text_width(ui.fonts.text, ray.name), widgets::text_width(ui.fonts.strong, ray.value)) / 2.0F;
    const ImVec2 end = at(head, ray.along, radius_px);
    const float lines = chosen ? 3.0F : 2.0F;
    const ImVec2 middle{end.x + ray.along.x * (wide + 22.0F), end.y + ray.along.y * (0.5F * lines * k_label_px + 20.0F)};
    float y = middle.y - 0.5F * (lines - 1.0F) * k_label_px;
    const float low = box.y + 14.0F, high = box.y + box.h - 14.0F - (lines - 1.0F) * k_label_px;
    y = std::clamp(y, low, std::max(low, high));
    const auto line = [&](ImFont* font, const std::string& words) {
        write_label(ui, font, {middle.x, y}, words, box);
        y += k_label_px;
    };
    line(ui.fonts.text, ray.name);
    if (chosen) line(ui.fonts.text, std::string(app::say(s.speech, words::advice::k_take_in)));
    line(ui.fonts.strong, ray.value);
}

/// The guy that lies nearest to where the finger is.
std::size_t nearest(const std::vector<Ray>& rays, ImVec2 head, ImVec2 finger) {
    std::size_t best = 0;
    float most = -HUGE_VALF;
    for (std::size_t i = 0; i < rays.size(); ++i) {
        const float along = rays[i].along.x * (finger.x - head.x) + rays[i].along.y * (finger.y - head.y);
        if (along > most) best = i;
        most = std::max(most, along);
    }
    return best;
}

void touch_plan(Ui& ui, const Box& box, const std::vector<Ray>& rays, ImVec2 head, std::size_t chosen) {
    const bool by_finger = ImGui::GetIO().MouseReleased[0];
    const bool pressed = widgets::touch(ui, box, "ties");
    if (pressed) ui.wish(app::ShowGuy{by_finger ? nearest(rays, head, ImGui::GetIO().MousePos) : (chosen + 1) % rays.size()});
    if (const int steps = widgets::arrow_pressed(); steps != 0) ui.wish(app::ShowGuy{(chosen + (steps > 0 ? 1 : rays.size() - 1)) % rays.size()});
}

}  // namespace

void draw_tie_plan(Ui& ui, const app::State& s, const app::Advisor& a, const Box& box) {
    const std::vector<Ray> rays = rays_of(s, a);
    const std::size_t chosen = guy_shown(s);
    const ImVec2 head = box.centre();
    const float radius_px = std::max(40.0F, std::min(box.w / 2.0F - 76.0F, box.h / 2.0F - 62.0F));
    double most_N = 0.0;
    for (const Ray& ray : rays) most_N = std::max(most_N, std::abs(ray.change_N));
    touch_plan(ui, box, rays, head, chosen);
    draw_out_mark(ui, s, box);
    for (std::size_t i = 0; i < rays.size(); ++i) draw_guy(ui, head, rays[i], radius_px, i == chosen);
    for (const Ray& ray : rays) draw_change(ui, head, ray, radius_px, most_N);
    ui.draw.AddCircleFilled(head, 11.0F, ui.theme.field);
    ui.draw.AddCircle(head, 11.0F, ui.theme.ink, 0, 4.0F);
    std::string told;
    for (std::size_t i = 0; i < rays.size(); ++i) {
        label_guy(ui, s, head, rays[i], radius_px, i == chosen, box.inner(6.0F));
        told += (told.empty() ? "" : ", ") + rays[i].name + " " + rays[i].value;
    }
    ui.mirror.push_back({"ties", "image", rays[chosen].name, told, box});
}

}  // namespace guywright::screens
