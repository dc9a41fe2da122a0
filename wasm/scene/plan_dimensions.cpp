#include "wasm/scene/dimension_lines.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::scene {
namespace {

struct Bearing {
    double deg = 0.0;
    std::size_t guy = 0;
};

std::vector<Bearing> bearings_in_order(const Rig& rig) {
    std::vector<Bearing> out;
    for (std::size_t i = 0; i < rig.guys.size(); ++i)
        if (rig.guys[i].placed) out.push_back({bearing_deg_of(rig.guys[i].anchor_m - rig.drawn_head_m), i});
    std::sort(out.begin(), out.end(), [](const Bearing& a, const Bearing& b) { return a.deg < b.deg; });
    return out;
}

/// "back 180° 4.3 m" at a point, as it is paced out: from the point below the head.
void label_paced(Scene& scene, std::string_view name, Vec3 at_m, ImU32 mark) {
    const Pen& pen = scene.stage.pen();
    const Vec3 d = at_m - scene.rig.drawn_head_m;
    const double whole_deg = std::fmod(std::round(bearing_deg_of(d)), 360.0);  // 359.7 reads as 0
    const LabelText text{std::string(name) + " " + degree_text(whole_deg) + " " + paced_text(scene.speech(), std::hypot(d.x, d.y)), rank::dimension,
                         scene.stage.look().text, mark};
    const auto at = pen.image(at_m);
    const bool inside = at && at->x > pen.frame().min.x && at->x < pen.frame().max.x && at->y > pen.frame().min.y && at->y < pen.frame().max.y;
    if (inside) scene.stage.label_round(text, *at, 10.0, Vec2{-d.y, -d.x});
    else scene.stage.label_line(text, at_m, scene.rig.head_m);
}

void draw_gap(Scene& scene, double from_deg, double gap_deg, double radius_m) {
    Pen& pen = scene.stage.pen();
    const Limits& limits = scene.plan.limits;
    const Look& look = scene.stage.look();
    const bool too_wide = !scene.picture.unjudged && scene.plan.frame.kind == FrameKind::Monopod && gap_deg >= limits.bearing_gap_max_deg;
    const Ink ink{too_wide ? look.hazard : look.text, (too_wide ? 4.0F : 1.6F) * pen.unit_px()};
    const Vec3 middle = plumb_point(scene.rig.drawn_head_m);
    constexpr int k_parts = 24;
    std::vector<Vec3> points;
    const double clear_deg = std::min(6.0, 0.2 * gap_deg);  // so that neighbouring arcs stay apart
    for (int i = 0; i <= k_parts; ++i)
        points.push_back(middle + radius_m * along_bearing(radians(from_deg + clear_deg + (gap_deg - 2.0 * clear_deg) * i / k_parts)));
    draw_path(pen, points, ink);
    const Vec3 way = along_bearing(radians(from_deg + 0.5 * gap_deg));
    scene.stage.label_round({degree_text(gap_deg), rank::angle, scene.stage.look().text, ink.colour}, middle + radius_m * way, 4.0, Vec2{-way.y, -way.x});
}

void draw_gaps(Scene& scene) {
    const std::vector<Bearing> bearings = bearings_in_order(scene.rig);
    const double radius_m = 44.0 * static_cast<double>(scene.stage.pen().unit_px()) / px_per_m(scene.stage.pen().eye(), scene.rig.head_m);
    for (std::size_t i = 0; i < bearings.size(); ++i) {
        const double next_deg = i + 1 < bearings.size() ? bearings[i + 1].deg : bearings[0].deg + 360.0;
        draw_gap(scene, bearings[i].deg, next_deg - bearings[i].deg, radius_m);
    }
}

/// How far feet and head stand back from the edge.
void draw_back_distances(Scene& scene) {
    constexpr double k_aside_px = 92.0;   // clear of the arcs of the gaps
    constexpr double k_inward_px = 30.0;  // of one foot of several, where the legs are not
    const Vec3 head = plumb_point(scene.rig.drawn_head_m);
    draw_distance(scene.stage, head, {0.0, head.y, 0.0}, {0, -1, 0}, k_aside_px,
                  with_amount(scene.speech(), words::k_head_at, length_text(scene.speech(), std::abs(head.x))));
    const auto& feet = scene.rig.feet_m;
    for (std::size_t i = 0; i < feet.size(); ++i) {
        const bool as_far_as_before = i > 0 && std::abs(feet[i].x - feet[i - 1].x) < 0.02;
        if (as_far_as_before) continue;
        const Vec3 foot = plumb_point(feet[i]);
        const Vec3 aside{0.0, feet.size() > 1 && foot.y > head.y ? -1.0 : 1.0, 0.0};
        draw_distance(scene.stage, foot, {0.0, foot.y, 0.0}, aside, feet.size() > 1 ? k_inward_px : k_aside_px,
                      with_amount(scene.speech(), words::k_foot_at, length_text(scene.speech(), std::abs(foot.x))));
    }
}

}  // namespace

void draw_plan_dimensions(Scene& scene) {
    if (!scene.rig.has_head) return;
    const Look& look = scene.stage.look();
    for (const GuyLine& guy : scene.rig.guys)
        if (guy.placed) label_paced(scene, guy.name, guy.anchor_m, guy.slack ? look.guy_slack : look.guy);
    if (scene.picture.large) {
        draw_back_distances(scene);
        for (const RopeLine& rope : scene.rig.ropes)
            if (rope.has_haul) label_paced(scene, say(scene.speech(), words::k_haul), rope.haul_m, look.rope);
    }
    draw_gaps(scene);
}

}  // namespace guywright::scene
