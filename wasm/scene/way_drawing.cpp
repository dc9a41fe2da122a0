#include "wasm/scene/stage.hpp"
#include "wasm/scene/way_it_goes.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::scene {
namespace {

std::string words_of(const app::Speech& speech, const WayItGoes& way) {
    if (!way.stands) return std::string(say(speech, words::k_goes));
    if (!way.has_factor || way.capped) return std::string(say(speech, words::k_weakest));
    return say(speech, words::k_goes_at, {{"{n}", app::number(speech, way.factor, 1)}});
}

/// The path as a band that widens into an arrow head.
void draw_band(Scene& scene, const std::vector<Vec3>& path, ImU32 colour) {
    Pen& pen = scene.stage.pen();
    const float unit = pen.unit_px();
    for (const auto& [ink, more_px] : {std::pair{scene.stage.look().plate, 4.0F}, std::pair{colour, 0.0F}})
        for (std::size_t i = 2; i + 1 < path.size(); ++i) pen.line(path[i - 1], path[i], {ink, 6.0F * unit + more_px});
    const auto before = pen.image(path[path.size() - 2]), tip = pen.image(path.back());
    if (before && tip) pen.arrow_head(*tip, *tip - *before, 26.0F * unit, colour);
    for (std::size_t i = 1; i < path.size(); ++i) scene.stage.keep_clear(path[i - 1], path[i]);
}

/// The legs where the band ends.
void draw_fallen(Scene& scene, Vec3 head_m, ImU32 colour) {
    const float unit = scene.stage.pen().unit_px();
    for (const Vec3& foot : scene.rig.feet_m) scene.stage.pen().line(foot, head_m, {faded(colour, 0.7F), 3.0F * unit, 9.0F * unit});
}

void draw_one_way(Scene& scene, const WayItGoes& way, Vec3 toward, bool labelled) {
    const ImU32 colour = scene.stage.look().hazard | IM_COL32_A_MASK;
    const std::vector<Vec3> path = path_of_way(scene.evaluation.model, scene.rig.head_m, toward);
    const auto from = scene.stage.pen().image(path.front()), to = scene.stage.pen().image(path.back());
    constexpr double k_least_px = 22.0;  // seen end on there is nothing to show
    if (!from || !to || path.size() < 4 || glm::length(*to - *from) < k_least_px) return;
    draw_fallen(scene, path.back(), colour);
    draw_band(scene, path, colour);
    if (labelled) scene.stage.label_round({words_of(scene.speech(), way), rank::way, scene.stage.look().text, colour}, *to, 10.0, *to - *from);
}

}  // namespace

void draw_way_it_goes(Scene& scene) {
    if (scene.view != View::Free) return;  // the others are for measuring
    const WayItGoes way = way_it_goes(scene.evaluation, scene.picture.shown);
    if (!way.known || (way.stands && !scene.picture.large)) return;
    draw_one_way(scene, way, way.toward, true);
    if (way.either) draw_one_way(scene, way, -way.toward, false);
}

}  // namespace guywright::scene
