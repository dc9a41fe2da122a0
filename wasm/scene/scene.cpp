#include "wasm/scene/scene.hpp"

#include "wasm/scene/polygon_drawing.hpp"
#include "wasm/scene/way_it_goes.hpp"

namespace guywright::scene {
namespace {

/// Anchors farther than this do not make the rest small: the picture is cut off by its frame instead.
constexpr double k_fit_reach_m = 8.0;

Vec3 within_reach(Vec3 at_m, Vec3 head_m) {
    const Vec3 d = at_m - plumb_point(head_m);
    const double away_m = glm::length(d);
    return away_m > k_fit_reach_m ? plumb_point(head_m) + (k_fit_reach_m / away_m) * d : at_m;
}

std::vector<Vec3> points_to_fit(const Rig& rig) {
    std::vector<Vec3> points = rig.feet_m;
    points.push_back({0.0, rig.drawn_head_m.y, 0.0});
    points.push_back({1.2, rig.drawn_head_m.y, 0.0});  // some of the drop, where the way out is written
    if (!rig.has_head) return points;
    points.push_back(rig.drawn_head_m);
    for (const GuyLine& g : rig.guys)
        if (g.placed) points.push_back(within_reach(g.anchor_m, rig.drawn_head_m));
    for (const RopeLine& r : rig.ropes) points.push_back(r.load_m + 0.5 * r.load_pull);
    points.insert(points.end(), rig.reached_m.begin(), rig.reached_m.end());
    return points;
}

SiteSize site_size(const Rig& rig, const Edge& edge, double zone_m) {
    constexpr double k_margin_m = 1.2, k_most_m = 60.0, k_deepest_m = 6.0;
    std::vector<Vec3> points = rig.feet_m;
    for (const GuyLine& g : rig.guys)
        if (g.placed) points.push_back(g.anchor_m);
    for (const RopeLine& r : rig.ropes)
        if (r.has_haul) points.push_back(r.haul_m);
    const double beyond_x_m = edge.opening_m.value_or(k_most_m), y_m = rig.drawn_head_m.y;
    SiteSize size{.back_m = 3.0, .right_y_m = y_m - 2.2, .left_y_m = y_m + 2.2, .beyond_m = 1.5, .slope_m = rig.slope_m};
    for (const Vec3& p : points) {
        size.back_m = std::max(size.back_m, k_margin_m - p.x);
        size.right_y_m = std::min(size.right_y_m, p.y - k_margin_m);
        size.left_y_m = std::max(size.left_y_m, p.y + k_margin_m);
        size.beyond_m = std::max(size.beyond_m, p.x - beyond_x_m + k_margin_m);
        if (p.z < -0.1 && p.z > -k_deepest_m) size.slope_m = std::max(size.slope_m, std::min(2.0 * k_deepest_m, std::hypot(p.x, p.z) + 0.5));
    }
    size.zone_m = zone_m > 0.0 ? std::min(zone_m, k_most_m) : 0.0;
    size.back_m = std::min(std::max(size.back_m, size.zone_m + 0.5), k_most_m);
    size.beyond_m = std::min(size.beyond_m, k_most_m);
    size.right_y_m = std::max(size.right_y_m, y_m - k_most_m);
    size.left_y_m = std::min(size.left_y_m, y_m + k_most_m);
    return size;
}

Eye eye_for(const Camera& camera, View view, const Rig& rig, const ImageBox& room) {
    const std::vector<Vec3> points = points_to_fit(rig);
    const double zoom = static_cast<double>(camera.zoom);
    switch (view) {
        case View::Above: return fit_parallel(eye_along(0.0, 90.0), points, room, zoom);
        case View::Side: return fit_parallel(eye_along(270.0, 0.0), points, room, zoom);
        case View::Behind: return fit_parallel(eye_along(0.0, 0.0), points, room, zoom);
        case View::Forces:
        case View::Free: break;
    }
    return fit_perspective(static_cast<double>(camera.yaw_deg), static_cast<double>(camera.pitch_deg), points, room, zoom);
}

/// Lines are smoothed over one device pixel, not one CSS pixel.
class SharpLines {
public:
    explicit SharpLines(ImDrawList& list) : list_(list), before_(list._FringeScale) {
        const float ratio = ImGui::GetIO().DisplayFramebufferScale.x;
        if (ratio > 1.0F) list_._FringeScale = 1.0F / ratio;
    }
    ~SharpLines() { list_._FringeScale = before_; }
    SharpLines(const SharpLines&) = delete;
    SharpLines& operator=(const SharpLines&) = delete;

private:
    ImDrawList& list_;
    float before_;
};

void draw_all(Scene& scene) {
    draw_site(scene);
    draw_rig(scene);
    scene.stage.draw_all();
    if (scene.rig.has_head) draw_forces(scene);
    if (scene.rig.has_head) draw_way_it_goes(scene);
    if (scene.view == View::Side) draw_side_dimensions(scene);
    if (scene.view == View::Behind) draw_behind_dimensions(scene);
    if (scene.view == View::Above) draw_plan_dimensions(scene);
}

ImageBox image_box(const Frame& frame) { return {{frame.min.x, frame.min.y}, {frame.max.x, frame.max.y}}; }

float unit_for(const ImageBox& box) {
    const Vec2 size = box.max - box.min;
    return static_cast<float>(std::clamp(std::min(size.x, size.y) / 420.0, 0.75, 1.4));
}

/// Where the head would go if it went, so that the arrow is in the picture.
void add_ways(Rig& base, const Evaluation& e) {
    const WayItGoes way = way_it_goes(e, k_holding);
    if (!way.known || !base.has_head) return;
    base.reached_m.push_back(path_of_way(e.model, base.head_m, way.toward).back());
    if (way.either) base.reached_m.push_back(path_of_way(e.model, base.head_m, -way.toward).back());
}

/// One fit for all cases: the picture must not jump when the next one is shown.
Eye eye_of_site(const Camera& camera, View view, const Plan& plan, const Evaluation& e, const Picture& picture, const ImageBox& room) {
    Rig base = rig_of(plan, e, k_holding, picture.enlarge);
    if (has_dimensions(view) || picture.enlarge == 1.0) base.reached_m.clear();
    if (view == View::Free && picture.large) add_ways(base, e);
    Eye eye = eye_for(camera, view, base, room);
    apply_moved(eye, camera, room);
    return eye;
}

/// The site with the rig.
int draw_site_view(ImDrawList& list, const Type& type, const Frame& frame, const Camera& camera, View view, const Plan& plan, const Evaluation& e,
                   const Picture& picture, const Look& look) {
    const ImageBox box = image_box(frame);
    Rig rig = rig_of(plan, e, picture.shown, picture.enlarge);
    if (has_dimensions(view)) rig.head_m = rig.drawn_head_m;
    const Edge edge = drawable(plan.edge);
    const SiteSize site = site_size(rig, edge, plan.limits.edge_zone_m);
    const Eye eye = eye_of_site(camera, view, plan, e, picture, room_of(frame, type.size_px));
    const std::vector<Rock> rocks = rocks_of(edge, site, eye);
    Pen pen(list, eye, box, unit_for(box));
    Stage stage(pen, rocks, look);
    for (const Frame& f : picture.covered) stage.keep_free(image_box(f));
    Scene scene{stage, rig, plan, e, edge, site, rocks, view, picture};
    draw_all(scene);
    return stage.draw_labels(type);
}

int draw_polygon_view(ImDrawList& list, const Type& type, const Frame& frame, const Camera& camera, const Plan& plan, const Evaluation& e,
                      const Picture& picture, const Look& look) {
    const PolygonLayout layout = lay_out_polygon(type, image_box(frame), force_rows(picture.speech, plan, e, picture.shown), picture.large);
    const std::vector<HeadForce> forces = forces_of(layout.rows);
    const Eye eye = polygon_eye(forces, camera, layout.polygon, picture.from_head);
    Pen pen(list, eye, image_box(frame), unit_for(image_box(frame)));
    Stage stage(pen, {}, look);
    for (const Frame& f : picture.covered) stage.keep_free(image_box(f));
    stage.keep_free(layout.list);
    draw_polygon(stage, type, layout, picture);
    return stage.draw_labels(type);
}

}  // namespace

ImageBox room_of(const Frame& frame, float label_px) {
    const ImageBox box = image_box(frame);
    const Vec2 size = box.max - box.min, margin{0.06 * size.x + 6.0, 0.05 * size.y + 0.6 * static_cast<double>(label_px)};
    return {box.min + margin, box.max - margin};
}

int draw(ImDrawList& list, ImFont* label_font, float label_px, const Frame& frame, const Camera& camera, View view, const Plan& plan, const Evaluation& e,
         const Picture& picture, const Look& look) {
    const Vec2 size = image_box(frame).max - image_box(frame).min;
    if (!(size.x > 20.0 && size.y > 20.0)) return 0;
    const SharpLines sharp(list);
    list.PushClipRect(frame.min, frame.max, true);
    const Type type{label_font, label_px};
    const int left_out = view == View::Forces ? draw_polygon_view(list, type, frame, camera, plan, e, picture, look)
                                              : draw_site_view(list, type, frame, camera, view, plan, e, picture, look);
    list.PopClipRect();
    return left_out;
}

}  // namespace guywright::scene
