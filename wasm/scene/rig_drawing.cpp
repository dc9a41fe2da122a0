#include "wasm/scene/stage.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::scene {
namespace {

using Part = Highlight::Part;

/// Thickness tells tension: 2 px slack to 7 px at 4 kN and more, by the square root, so that small ones differ too.
float guy_width_px(double tension_N, float unit_px) {
    const double share = std::clamp(std::sqrt(std::max(0.0, kilonewtons(tension_N)) / 4.0), 0.0, 1.0);
    return unit_px * (2.2F + 4.8F * static_cast<float>(share));
}

/// Circle on the ground, metres.
std::vector<Vec3> ground_circle(Vec3 middle_m, double radius_m) {
    std::vector<Vec3> out;
    for (int i = 0; i < 20; ++i) out.push_back(middle_m + radius_m * along_bearing(2.0 * k_pi * i / 20));
    return out;
}

void draw_foot_ties(Scene& scene, std::size_t leg) {
    if (leg >= scene.plan.feet.size()) return;
    const Look& look = scene.stage.look();
    const float unit = scene.stage.pen().unit_px();
    for (std::size_t i = 0; i < scene.plan.feet[leg].ties.size(); ++i) {
        const FootTie& tie = scene.plan.feet[leg].ties[i];
        const Vec3 foot = scene.rig.feet_m[leg], end = foot + 0.8 * along_bearing(radians(tie.bearing_deg));
        scene.stage.bar(foot, end, {{look.guy, 2.0F * unit}, 0, scene.lit(Part::FootTie, leg, i)});
        scene.stage.bar(end, end + Vec3{0, 0, 0.12}, {{look.guy, 3.5F * unit}, 0, scene.lit(Part::FootTie, leg, i)});
    }
}

void draw_foot(Scene& scene, std::size_t leg) {
    Stage& stage = scene.stage;
    const Look& look = stage.look();
    Pen& pen = stage.pen();
    const bool lit = scene.lit(Part::Foot, leg);
    draw_foot_ties(scene, leg);
    stage.later(scene.rig.feet_m[leg], [&pen, &look, lit, foot = scene.rig.feet_m[leg]] {
        if (lit) pen.area(ground_circle(foot, 0.42), look.highlight);
        pen.area(ground_circle(foot, 0.22), look.edge);
        pen.area(ground_circle(foot, 0.16), look.leg);
        // Seen along the ground a plate has no area left.
        const Vec3 half = 0.2 * pen.eye().right;
        pen.line(foot - half, foot + half, {look.edge, 4.0F * pen.unit_px()});
    });
}

/// Ties from foot to foot.
void draw_hobbles(Scene& scene) {
    const auto& feet = scene.rig.feet_m;
    const Look& look = scene.stage.look();
    for (std::size_t i = 0; i < scene.plan.frame.hobbles.size(); ++i) {
        const Hobble& h = scene.plan.frame.hobbles[i];
        const auto from = static_cast<std::size_t>(h.from), to = static_cast<std::size_t>(h.to);
        if (from >= feet.size() || to >= feet.size()) continue;
        scene.stage.bar(feet[from] + Vec3{0, 0, 0.06}, feet[to] + Vec3{0, 0, 0.06},
                        {{look.guy, 2.5F * scene.stage.pen().unit_px()}, 0, scene.lit(Part::Hobble, i)});
    }
}

void draw_legs(Scene& scene) {
    const Look& look = scene.stage.look();
    const Pen& pen = scene.stage.pen();
    for (std::size_t i = 0; i < scene.rig.feet_m.size(); ++i) {
        const Vec3 foot = scene.rig.feet_m[i], head = scene.rig.head_m;
        const double tube_px = 0.085 * px_per_m(pen.eye(), 0.5 * (foot + head));
        const float width = std::clamp(static_cast<float>(tube_px), 8.0F * pen.unit_px(), 16.0F * pen.unit_px());
        scene.stage.bar(foot, head, {{look.leg, width}, look.edge, scene.lit(Part::Leg, i)});
        scene.stage.keep_clear(foot, head);
    }
}

/// The other place of the head: where it was measured, if it is drawn moved; where it goes, if it is drawn as measured.
void draw_other_legs(Scene& scene) {
    const Rig& rig = scene.rig;
    Pen& pen = scene.stage.pen();
    const bool as_measured = has_dimensions(scene.view);
    const Vec3 other = as_measured ? rig.moved_head_m : rig.drawn_head_m;
    const auto from = pen.image(rig.drawn_head_m), to = pen.image(rig.moved_head_m);
    constexpr double k_seen_px = 5.0;
    if (!from || !to || glm::length(*to - *from) < k_seen_px) return;
    const Ink ink{faded(scene.stage.look().edge, 0.7F), 1.6F * pen.unit_px(), 5.0F * pen.unit_px()};
    for (const Vec3& foot : rig.feet_m) pen.line(foot, other, ink);
    pen.ring(other, 9.0F * pen.unit_px(), {ink.colour, 2.0F * pen.unit_px()});
}

/// Where the guy's anchor stands: a stake in the ground, or a warning shape where there is nothing to hold it.
void draw_anchor(Scene& scene, const GuyLine& guy, bool lit) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const bool marked = guy.hangs && !scene.picture.unjudged;
    scene.stage.later(guy.anchor_m, [&pen, &look, guy, lit, marked] {
        const auto at = pen.image(guy.anchor_m);
        if (!at) return;
        const double r = 5.0 * static_cast<double>(pen.unit_px());
        if (lit) pen.disc(guy.anchor_m, static_cast<float>(2.4 * r), look.highlight);
        if (marked) {
            const double s = 2.3 * r;
            pen.image_area(std::array{*at + Vec2{0, -s}, *at + Vec2{s, 0.8 * s}, *at + Vec2{-s, 0.8 * s}}, look.hazard);
            pen.image_line(*at + Vec2{0, -0.4 * s}, *at + Vec2{0, 0.25 * s}, {look.plate, 2.4F * pen.unit_px()});
            pen.image_line(*at + Vec2{0, 0.42 * s}, *at + Vec2{0, 0.62 * s}, {look.plate, 2.4F * pen.unit_px()});
            return;
        }
        pen.disc(guy.anchor_m, static_cast<float>(r), look.edge);
        pen.disc(guy.anchor_m, static_cast<float>(0.55 * r), look.guy);
    });
}

/// The line on the ground under a guy, from below the head to below the anchor: what is paced out on site.
void draw_ground_trace(Scene& scene, Vec3 to_m) {
    Vec2 a{scene.rig.drawn_head_m.x, scene.rig.drawn_head_m.y}, b{to_m.x, to_m.y};
    const Ink ink{faded(scene.stage.look().edge, 0.4F), 1.4F * scene.stage.pen().unit_px()};
    if (cut_to_box(a, b, {-scene.size.back_m, scene.size.right_y_m}, {0.0, scene.size.left_y_m})) scene.stage.pen().line({a.x, a.y, 0}, {b.x, b.y, 0}, ink);
    if (to_m.z > 0.05) scene.stage.pen().line(to_m, {to_m.x, to_m.y, 0}, {ink.colour, ink.width_px, 3.0F * scene.stage.pen().unit_px()});
}

std::string tension_text(const app::Speech& speech, const GuyLine& guy) {
    if (!guy.has_tension) return {};
    return guy.slack ? std::string(say(speech, words::k_slack)) : force_text(speech, guy.tension_N);
}

std::string name_and_force(const app::Speech& speech, const GuyLine& guy) {
    const std::string force = tension_text(speech, guy);
    return std::string(guy.name) + (force.empty() ? "" : " ") + force;
}

/// A line that goes on beyond the frame ends in an arrow at its border.
void draw_way_out(Scene& scene, Vec3 end_m, ImU32 colour) {
    Pen& pen = scene.stage.pen();
    ImageLine l = image_of_line(pen.eye(), scene.rig.head_m, end_m);
    if (!l.visible) return;
    const Vec2 end = l.b;
    if (!cut_to_box(l.a, l.b, pen.frame().min + 3.0, pen.frame().max - 3.0) || glm::length(end - l.b) < 1.0) return;
    scene.stage.later(end_m, [&pen, l, colour] { pen.arrow_head(l.b, l.b - l.a, 17.0F * pen.unit_px(), colour); });
}

void draw_guy(Scene& scene, std::size_t i) {
    const GuyLine& guy = scene.rig.guys[i];
    if (!guy.placed) return;
    const Look& look = scene.stage.look();
    const float unit = scene.stage.pen().unit_px();
    const bool lit = scene.lit(Part::Guy, i), anchor_lit = lit || scene.lit(Part::Anchors);
    Ink ink{guy.slack ? look.guy_slack : look.guy, guy_width_px(guy.tension_N, unit), guy.slack ? 7.0F * unit : 0.0F};
    draw_ground_trace(scene, guy.anchor_m);
    scene.stage.bar(guy.anchor_m, scene.rig.head_m, {ink, guy.slack ? 0 : faded(look.plate, 0.8F), lit});
    scene.stage.keep_clear(guy.anchor_m, scene.rig.head_m);
    draw_anchor(scene, guy, anchor_lit);
    scene.stage.keep_free(guy.anchor_m, 5.0 * static_cast<double>(unit));
    draw_way_out(scene, guy.anchor_m, ink.colour);
    // With dimensions the name stands at the anchor, beside what sets it out; forces have views of their own.
    std::string text = !has_dimensions(scene.view) ? name_and_force(scene.speech(), guy) : guy.slack ? tension_text(scene.speech(), guy) : std::string();
    if (!text.empty()) scene.stage.label_line({std::move(text), rank::tension, look.text, ink.colour}, guy.anchor_m, scene.rig.head_m);
}

/// An arrow on a rope, a little way from the head, along its pull on it.
void draw_pull_arrow(Scene& scene, Vec3 from_m, Vec3 to_m, double at_share, ImU32 colour) {
    Pen& pen = scene.stage.pen();
    const Vec3 tip = from_m + at_share * (to_m - from_m);
    scene.stage.later(tip, [&pen, from_m, tip, colour] {
        const auto a = pen.image(from_m), b = pen.image(tip);
        const float size_px = 18.0F * pen.unit_px();
        if (a && b && glm::length(*b - *a) > static_cast<double>(size_px)) pen.arrow_head(*b, *b - *a, size_px, colour);
    });
}

void draw_load(Scene& scene, const RopeLine& rope, bool lit);

void draw_haul(Scene& scene, const RopeLine& rope, const Bar& bar) {
    Pen& pen = scene.stage.pen();
    const ImU32 colour = bar.ink.colour, inside = scene.stage.look().plate;
    const Vec3 head = scene.rig.head_m, end = rope.haul_m;
    draw_ground_trace(scene, end);
    scene.stage.bar(head, end, bar);
    scene.stage.keep_clear(head, end);
    draw_way_out(scene, end, colour);
    scene.stage.later(end, [&pen, end, colour, inside] {
        pen.disc(end, 6.0F * pen.unit_px(), colour);
        pen.disc(end, 3.0F * pen.unit_px(), inside);
    });
    if (rope.pulls) draw_pull_arrow(scene, head, end, std::min(0.6, 1.6 / glm::length(end - head)), colour);
    if (has_dimensions(scene.view)) return;
    std::string text(say(scene.speech(), words::k_haul));
    if (rope.pulls) text += " " + force_text(scene.speech(), rope.haul_side_N);
    scene.stage.label_line({text, rank::side, scene.stage.look().text, colour}, end, head);
}

void draw_rope(Scene& scene, const RopeLine& rope) {
    const Look& look = scene.stage.look();
    const float unit = scene.stage.pen().unit_px();
    const Vec3 head = scene.rig.head_m;
    const Ink ink{look.rope, (rope.pulls ? 3.2F : 1.8F) * unit};
    const Bar load_side{ink, faded(look.plate, 0.8F), scene.lit(Part::Rope, rope.index)};
    const Vec3 first = rope.over_edge ? rope.edge_m : rope.load_m;
    scene.stage.bar(head, first, load_side);
    scene.stage.keep_clear(head, first);
    if (rope.over_edge) scene.stage.bar(first, rope.load_m, load_side);
    if (rope.over_edge) scene.stage.keep_clear(first, rope.load_m);
    if (rope.pulls) draw_pull_arrow(scene, head, first, rope.over_edge ? 0.6 : 0.4, look.rope);
    if (!rope.same_load) draw_load(scene, rope, load_side.lit);
    if (rope.has_haul) draw_haul(scene, rope, {ink, load_side.casing, scene.lit(Part::Haul, rope.index)});
}

/// Corners of a block that hangs from the rope's end: four above, four below.
std::array<Vec3, 8> load_corners(const RopeLine& rope) {
    const Vec3 down = rope.load_pull, side = glm::normalize(glm::cross(down, Vec3{1, 0, 0.01})), out = glm::cross(side, down);
    constexpr double k_half_m = 0.22, k_tall_m = 0.55;
    std::array<Vec3, 8> c{};
    for (std::size_t i = 0; i < 8; ++i) {
        const double s = (i & 1U) ? k_half_m : -k_half_m, o = (i & 2U) ? 2.0 * k_half_m : 0.0, d = (i & 4U) ? k_tall_m : 0.0;
        c[i] = rope.load_m + s * side + (out.x + out.z > 0.0 ? o : -o) * out + d * down;
    }
    return c;
}

void draw_load(Scene& scene, const RopeLine& rope, bool lit) {
    static constexpr std::array<std::array<std::size_t, 4>, 6> k_sides{{{0, 1, 3, 2}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 3, 7, 6}, {0, 2, 6, 4}, {1, 3, 7, 5}}};
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const std::array<Vec3, 8> c = load_corners(rope);
    const Vec3 middle = middle_of(c);
    const bool behind_rock = scene.stage.is_hidden(middle);
    scene.stage.later(middle, [&pen, &look, c, middle, lit, behind_rock] {
        const float unit = pen.unit_px();
        for (const auto& s : k_sides) {
            const std::array<Vec3, 4> side{c[s[0]], c[s[1]], c[s[2]], c[s[3]]};
            const Vec3 away = middle_of(side) - middle;
            if (glm::dot(away, toward_eye(pen.eye(), middle_of(side))) <= 0.0) continue;
            if (!behind_rock) pen.area(side, mixed(look.load, look.edge, std::abs(away.z) > 0.1 ? 0.0F : 0.15F));
            pen.outline(side, {lit ? look.highlight : look.edge, (lit ? 3.0F : 1.4F) * unit, behind_rock ? 4.0F * unit : 0.0F});
        }
    });
    const double half_px = 0.4 * px_per_m(pen.eye(), middle);
    scene.stage.keep_free(middle, 0.6 * half_px);
    scene.stage.label_round({app::amount(scene.speech(), rope.load_kg, "kg"), rank::load, look.text}, middle, half_px, {1, 0});
}

void draw_head(Scene& scene) {
    Pen& pen = scene.stage.pen();
    const Look& look = scene.stage.look();
    const bool lit = scene.lit(Part::Head);
    const Vec3 head = scene.rig.head_m;
    scene.stage.keep_free(head, 8.0 * static_cast<double>(pen.unit_px()));
    // A little nearer than the rest that meets here.
    scene.stage.later(head + 0.3 * toward_eye(pen.eye(), head), [&pen, &look, head, lit] {
        const float unit = pen.unit_px();
        if (lit) pen.disc(head, 17.0F * unit, look.highlight);
        pen.disc(head, 9.0F * unit, look.edge);
        pen.disc(head, 7.0F * unit, look.leg);
        pen.disc(head, 3.0F * unit, look.edge);
    });
}

}  // namespace

void draw_rig(Scene& scene) {
    for (std::size_t i = 0; i < scene.rig.feet_m.size(); ++i) draw_foot(scene, i);
    draw_hobbles(scene);
    if (!scene.rig.has_head) return;
    draw_other_legs(scene);
    draw_legs(scene);
    for (std::size_t i = 0; i < scene.rig.guys.size(); ++i) draw_guy(scene, i);
    for (const RopeLine& rope : scene.rig.ropes) draw_rope(scene, rope);
    draw_head(scene);
}

}  // namespace guywright::scene
