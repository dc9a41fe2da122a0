#include "wasm/scene/stage.hpp"
#include "wasm/words/picture.hpp"

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
    for (const RockSide& side : rock.sides) {
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
void draw_edge_zone(Pen& pen, const SiteSize& size, const Ink& ink) {
    const double zone_m = size.zone_m;
    if (zone_m <= 0.0) return;
    const double low_y = std::max(size.right_y_m, -k_grid_reach_m), high_y = std::min(size.left_y_m, k_grid_reach_m);
    for (double y = low_y - zone_m; y < high_y; y += 0.5) {
        Vec2 a{-zone_m, y}, b{0.0, y + zone_m};
        if (cut_to_box(a, b, {-zone_m, low_y}, {0.0, high_y})) pen.line({a.x, a.y, 0}, {b.x, b.y, 0}, ink);
    }
    pen.line({-zone_m, size.right_y_m, 0}, {-zone_m, size.left_y_m, 0}, {ink.colour | IM_COL32_A_MASK, 1.6F * ink.width_px, 6.0F * ink.width_px});
}

void draw_sides(Scene& scene, const Rock& rock) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const float unit = pen.unit_px();
    const ImU32 line = mixed(look.face, look.edge, 0.45F);
    for (const RockSide& side : rock.sides) {
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
    if (scene.lit(Highlight::Part::Edge)) pen.line(a, b, {look.highlight, 11.0F * pen.unit_px()});
    pen.line(a, b, {look.edge, 3.5F * pen.unit_px()});
}

/// Room along the edge that the arrow needs to itself, to each side.
constexpr double k_arrow_room_m = 0.6;

bool clear_along_edge(const Scene& scene, double y_m) {
    const auto near = [y_m](const Vec3& p) { return std::abs(p.y - y_m) < k_arrow_room_m && p.x > -1.5; };
    for (const GuyLine& g : scene.rig.guys)
        if (g.placed && near(g.anchor_m)) return false;
    for (const RopeLine& r : scene.rig.ropes)
        if (near(r.load_m)) return false;
    return std::none_of(scene.rig.feet_m.begin(), scene.rig.feet_m.end(), near);
}

bool well_inside(const Pen& pen, Vec3 at_m) {
    const auto at = pen.image(at_m);
    const Vec2 margin = 0.08 * (pen.frame().max - pen.frame().min);
    const Vec2 low = pen.frame().min + margin, high = pen.frame().max - margin;
    return at && at->x > low.x && at->x < high.x && at->y > low.y && at->y < high.y;
}

/// Where along the edge the arrow stands: near the end that is nearer to the eye, clear of anchors, in the frame.
std::optional<double> arrow_place_y(Scene& scene, double tip_x_m) {
    const Pen& pen = scene.stage.pen();
    const bool right_first = toward_eye(pen.eye(), {0.0, scene.rig.head_m.y, 0.0}).y < 0.0;
    const double right_m = scene.size.right_y_m + k_arrow_room_m, left_m = scene.size.left_y_m - k_arrow_room_m;
    for (double inward = 0.0; inward <= left_m - right_m; inward += 0.25)
        for (const bool right : {right_first, !right_first}) {
            const double y = right ? right_m + inward : left_m - inward;
            if (clear_along_edge(scene, y) && well_inside(pen, {-0.5, y, 0}) && well_inside(pen, {tip_x_m, y, 0})) return y;
        }
    return std::nullopt;
}

/// An arrow in the plane of `tip - tail` and `across` (unit) with its word.
void draw_out_arrow(Scene& scene, Vec3 tail, Vec3 tip, Vec3 across) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const Vec3 neck = tail + 0.62 * (tip - tail), thin = 0.07 * glm::length(tip - tail) * across, wide = 3.0 * thin;
    pen.area(std::array{tail - thin, neck - thin, neck + thin, tail + thin}, look.text);
    pen.area(std::array{neck - wide, tip, neck + wide}, look.text);
    const auto a = pen.image(tail), b = pen.image(tip);
    if (!a || !b) return;
    for (const double share : {0.1, 0.5, 0.9}) scene.stage.keep_free(tail + share * (tip - tail), 0.15 * glm::length(*b - *a));
    scene.stage.label_round({std::string(say(scene.speech(), words::k_out)), rank::out, look.text}, *b, 5.0, *b - *a);
}

/// Over the edge, flat like something painted on the ground; from the side upright, above the drop.
void draw_out(Scene& scene) {
    const std::optional<double> opening_m = scene.edge.opening_m;
    const Pen& pen = scene.stage.pen();
    const double long_m = std::min(1.4, 90.0 * static_cast<double>(pen.unit_px()) / px_per_m(pen.eye(), {0.0, scene.rig.drawn_head_m.y, 0.0}));
    if (scene.view == View::Side) {
        double clear_x = std::max(0.3, scene.rig.drawn_head_m.x + 0.4);
        for (const Vec3& foot : scene.rig.feet_m) clear_x = std::max(clear_x, 0.5 * (foot.x + scene.rig.drawn_head_m.x) + 0.4);
        const Vec3 tail{clear_x, scene.rig.drawn_head_m.y, std::max(0.6, 0.85 * scene.rig.drawn_head_m.z)};
        return draw_out_arrow(scene, tail, tail + Vec3{std::min(0.9, 0.7 * long_m), 0, 0}, {0, 0, 1});
    }
    const double tip_x = std::min(0.7 * long_m, 0.8 * opening_m.value_or(HUGE_VAL));
    if (const auto y = arrow_place_y(scene, tip_x)) draw_out_arrow(scene, {-0.3 * long_m, *y, 0}, {tip_x, *y, 0}, {0, 1, 0});
}

/// What is what: the edge, the strip behind it, the drop. In the small picture only where dimensions are read.
void name_places(Scene& scene) {
    if (!scene.picture.large) return;
    const Look& look = scene.stage.look();
    const SiteSize& size = scene.size;
    const double y_m = scene.view == View::Side ? size.right_y_m : 0.5 * (scene.rig.drawn_head_m.y + size.left_y_m), zone_m = size.zone_m;
    const Vec3 edge{0.0, y_m, 0.0}, zone{-0.5 * zone_m, y_m, 0.0};
    if (scene.view == View::Side) {
        scene.stage.label_round({std::string(say(scene.speech(), words::k_edge_line)), rank::place, look.text}, edge, 12.0, {1, -0.6});
        if (zone_m > 0.0)
            scene.stage.label_round({with_amount(scene.speech(), words::k_zone, paced_text(scene.speech(), zone_m)), rank::place, look.text}, zone, 8.0,
                                    {0, -1});
        return;
    }
    if (scene.view != View::Behind)
        scene.stage.label_line({std::string(say(scene.speech(), words::k_edge_line)), rank::place, look.text}, edge, Vec3{0.0, size.left_y_m, 0.0});
    if (zone_m > 0.0 && scene.view != View::Behind)
        scene.stage.label_round({with_amount(scene.speech(), words::k_zone, paced_text(scene.speech(), zone_m)), rank::place, look.text}, zone, 0.0, {1, 0});
    if (scene.view == View::Above)
        scene.stage.label_round({std::string(say(scene.speech(), words::k_drop)), rank::place, look.text}, Vec3{0.6, y_m, 0.0}, 0.0, {1, 0});
}

}  // namespace

void draw_site(Scene& scene) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    for (const Rock& rock : scene.rocks) {
        draw_sides(scene, rock);
        const bool standing = rock.section[0].x < rock.section[1].x;
        const Ink zone{faded(look.hazard, 0.6F), 1.3F * pen.unit_px()};
        if (standing && scene.view != View::Side) draw_edge_zone(pen, scene.size, zone);
        if (standing && scene.view == View::Side)
            pen.line({-scene.size.zone_m, scene.size.right_y_m, 0}, {0, scene.size.right_y_m, 0}, {look.hazard, 7.0F * pen.unit_px()});
        draw_edge_line(scene, rock.section[1].x);
    }
    if (scene.view != View::Behind) draw_out(scene);  // there it points away from the eye
    name_places(scene);
}

}  // namespace guywright::scene
