#include "wasm/scene/stage.hpp"

namespace guywright::scene {
namespace {

constexpr double k_grid_reach_m = 15.0;

ImU32 colour_of(Side side, const Look& look) {
    switch (side) {
        case Side::Ground: return look.ground;
        case Side::Face: return look.face;
        case Side::Bottom:
        case Side::Back:
        case Side::Right:
        case Side::Left: break;
    }
    return mixed(look.face, look.edge, 0.12F);
}

/// Cuts a segment of the x-z plane to the cross-section.
bool cut_to_section(Vec2& a, Vec2& b, const Rock& rock) {
    const Vec2 start = a, d = b - a;
    double from = 0.0, to = 1.0;
    for (const RockSide& side : sides_of(rock)) {
        const Vec2 n{side.outward.x, side.outward.z}, corner{side.corners_m[0].x, side.corners_m[0].z};
        const double rise = glm::dot(d, n), room = glm::dot(corner - start, n);
        if (rise > 1e-12) to = std::min(to, room / rise);
        else if (rise < -1e-12) from = std::max(from, room / rise);
        else if (room < 0.0) return false;
    }
    a = start + from * d;
    b = start + to * d;
    return from < to;
}

/// Slanting strokes over the cut earth.
void hatch_cut(Pen& pen, const Rock& rock, double y_m, const Ink& ink) {
    const auto& s = rock.section;
    const double low_x = std::min({s[0].x, s[1].x, s[2].x, s[3].x}), high_x = std::max({s[0].x, s[1].x, s[2].x, s[3].x});
    const double depth_m = -s[2].y;
    for (double x = std::floor(std::max(low_x, -k_grid_reach_m) - depth_m); x < std::min(high_x, k_grid_reach_m); x += 0.5) {
        Vec2 a{x, -depth_m}, b{x + depth_m, 0.0};
        if (cut_to_section(a, b, rock)) pen.line(detail::at(a, y_m), detail::at(b, y_m), ink);
    }
}

/// Strokes down the face, long and short by turns, as maps show a steep slope.
void hatch_face(Pen& pen, const Rock& rock, const Ink& ink) {
    const Vec2 top = rock.section[1], fall = rock.section[2] - top;
    int count = 0;
    for (double y = std::max(rock.right_y_m, -k_grid_reach_m) + 0.2; y < std::min(rock.left_y_m, k_grid_reach_m); y += 0.3)
        pen.line(detail::at(top + 0.04 * fall, y), detail::at(top + (count++ % 2 ? 0.28 : 0.6) * fall, y), ink);
}

void draw_grid(Pen& pen, const Rock& rock, const Ink& ink) {
    const double low_x = std::max(std::min(rock.section[0].x, rock.section[1].x), -k_grid_reach_m);
    const double high_x = std::min(std::max(rock.section[0].x, rock.section[1].x), k_grid_reach_m);
    const double low_y = std::max(rock.right_y_m, -k_grid_reach_m), high_y = std::min(rock.left_y_m, k_grid_reach_m);
    for (double x = std::ceil(low_x); x <= high_x; x += 1.0) pen.line({x, low_y, 0}, {x, high_y, 0}, ink);
    for (double y = std::ceil(low_y); y <= high_y; y += 1.0) pen.line({low_x, y, 0}, {high_x, y, 0}, ink);
}

/// The strip behind the edge where a person needs a line: slanting strokes of the warning colour.
void draw_edge_zone(Pen& pen, const SiteSize& size, double zone_m, const Ink& ink) {
    zone_m = std::min(zone_m, size.back_m);
    if (!(zone_m > 0.0)) return;
    const double low_y = std::max(size.right_y_m, -k_grid_reach_m), high_y = std::min(size.left_y_m, k_grid_reach_m);
    for (double y = low_y - zone_m; y < high_y; y += 0.4) {
        Vec2 a{-zone_m, y}, b{0.0, y + zone_m};
        if (cut_to_box(a, b, {-zone_m, low_y}, {0.0, high_y})) pen.line({a.x, a.y, 0}, {b.x, b.y, 0}, ink);
    }
    pen.line({-zone_m, size.right_y_m, 0}, {-zone_m, size.left_y_m, 0}, {ink.colour, 1.5F * ink.width_px, 6.0F * ink.width_px});
}

void draw_sides(Scene& scene, const Rock& rock) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const float unit = pen.unit_px();
    const ImU32 line = mixed(look.face, look.edge, 0.45F);
    for (const RockSide& side : sides_of(rock)) {
        if (!faces_eye(side, pen.eye())) continue;
        pen.area(side.corners_m, colour_of(side.side, look));
        if (side.side == Side::Right || side.side == Side::Left) hatch_cut(pen, rock, side.corners_m[0].y, {faded(line, 0.6F), unit});
        if (side.side == Side::Face) hatch_face(pen, rock, {line, 1.2F * unit});
        if (side.side == Side::Ground) draw_grid(pen, rock, {faded(look.edge, 0.22F), unit});
        pen.outline(side.corners_m, {line, unit});
    }
}

void draw_edge_line(Scene& scene, double x_m) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const Vec3 a{x_m, scene.size.right_y_m, 0}, b{x_m, scene.size.left_y_m, 0};
    if (scene.highlight.part == Highlight::Part::Edge) pen.line(a, b, {look.highlight, 11.0F * pen.unit_px()});
    pen.line(a, b, {look.edge, 3.5F * pen.unit_px()});
}

/// A flat arrow over the edge, near the corner of the site that is seen best.
void draw_out_arrow(Scene& scene) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const double to_right = glm::dot(pen.eye().right, Vec3{0, -1, 0}) + (scene.view == View::PlanView ? 1.0 : 0.0);
    const double y = to_right > 0.0 ? scene.size.left_y_m - 0.7 : scene.size.right_y_m + 0.7;
    const double tip_x = scene.plan.edge.opening_m ? std::min(1.1, 0.8 * *scene.plan.edge.opening_m) : 1.1;
    const Vec3 shaft[] = {{-0.5, y - 0.12, 0}, {tip_x - 0.5, y - 0.12, 0}, {tip_x - 0.5, y + 0.12, 0}, {-0.5, y + 0.12, 0}};
    const Vec3 head[] = {{tip_x - 0.5, y - 0.36, 0}, {tip_x, y, 0}, {tip_x - 0.5, y + 0.36, 0}};
    pen.area(shaft, look.text);
    pen.area(head, look.text);
    scene.stage.label_point("OUT", rank::out, look.text, {tip_x + 0.15, y, 0}, 26.0);
}

}  // namespace

void draw_site(Scene& scene) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    for (const Rock& rock : scene.rocks) {
        draw_sides(scene, rock);
        const bool standing = rock.section[0].x < rock.section[1].x;
        const Ink zone{look.hazard, 1.3F * pen.unit_px()};
        const double zone_m = scene.plan.limits.edge_zone_m;
        if (standing && scene.view != View::Elevation) draw_edge_zone(pen, scene.size, zone_m, zone);
        if (standing && scene.view == View::Elevation)
            pen.line({-zone_m, scene.size.right_y_m, 0}, {0, scene.size.right_y_m, 0}, {look.hazard, 7.0F * pen.unit_px()});
        draw_edge_line(scene, rock.section[1].x);
    }
    if (scene.view != View::Elevation) draw_out_arrow(scene);
}

}  // namespace guywright::scene
