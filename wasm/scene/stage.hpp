#pragma once
#include <functional>
#include <string>

#include "wasm/scene/label_places.hpp"
#include "wasm/scene/pen.hpp"
#include "wasm/scene/rig.hpp"
#include "wasm/scene/scene.hpp"

namespace guywright::scene {

/// A straight part of the rig.
struct Bar {
    Ink ink;
    ImU32 casing = 0;  ///< colour of a thin border that sets it off from what lies behind; 0: none
    bool lit = false;  ///< the slider in hand moves it
};

/// What a label says. Rank: what a rigger reads first is placed first.
struct LabelText {
    std::string words;
    int rank = 0;
    ImU32 colour = 0;
    ImU32 mark = 0;  ///< colour of the line it speaks of, shown as a bar before it; 0: none
};

namespace rank {
inline constexpr int dimension = 0, angle = 1, tension = 2, resultant = 3, way = 4, load = 5, out = 6, side = 7, place = 8;
}

/// The face that labels are set in.
struct Type {
    ImFont* font = nullptr;
    float size_px = 18.0F;

    [[nodiscard]] double width(const std::string& words) const { return static_cast<double>(font->CalcTextSizeA(size_px, FLT_MAX, 0.0F, words.c_str()).x); }
};

/// What is drawn once everything is known: the rig from far to near, then the labels.
class Stage {
public:
    Stage(Pen& pen, std::span<const Rock> rocks, const Look& look) : pen_(pen), rocks_(rocks), look_(look) {}

    /// Draws later, among the rest by its distance from the eye. Behind rock it becomes a thin broken line, at once.
    void bar(Vec3 a_m, Vec3 b_m, const Bar& bar);
    void later(Vec3 where_m, std::function<void()> job);
    void draw_all();

    /// Beside a line of the image, or of the site as far as it is in the frame.
    void label_line(LabelText text, Vec2 a, Vec2 b);
    void label_line(LabelText text, Vec3 a_m, Vec3 b_m);
    /// Round a point, `away_px` from it, if possible in the direction `first` of the image.
    void label_round(LabelText text, Vec2 at, double away_px, Vec2 first);
    void label_round(LabelText text, Vec3 at_m, double away_px, Vec2 first);
    /// Labels keep off this point, or rather off this line.
    void keep_free(Vec3 at_m, double radius_px);
    void keep_head_clear(Vec2 tip, Vec2 along, double head_px);  ///< head of an arrow: rather off it than without room
    void keep_clear(Vec2 a, Vec2 b);
    void keep_clear(Vec3 a_m, Vec3 b_m);
    void keep_free(const ImageBox& box) { taken_.push_back(box); }
    /// Returns how many dimensions found no room.
    int draw_labels(const Type& type);

    [[nodiscard]] bool is_hidden(Vec3 at_m) const { return hidden(rocks_, at_m, pen_.eye()); }
    [[nodiscard]] Pen& pen() { return pen_; }
    [[nodiscard]] const Look& look() const { return look_; }

private:
    struct Job {
        double depth_m;
        std::function<void()> draw;
    };
    struct Label {
        LabelText text;
        std::function<std::vector<Vec2>(Vec2 size_px)> places;
        std::optional<DrawnLine> own;
        std::optional<Vec2> point;  ///< what it stands round
        double away_px = 0.0;
    };
    [[nodiscard]] double boundary(Vec3 a_m, Vec3 b_m, double from, double to) const;
    [[nodiscard]] std::optional<DrawnLine> in_frame(Vec3 a_m, Vec3 b_m) const;
    void draw_label(const Type& type, const Label& label, Vec2 middle, Vec2 box_px);
    void visible_bar(Vec3 a_m, Vec3 b_m, const Bar& bar);

    Pen& pen_;
    std::span<const Rock> rocks_;
    const Look& look_;
    std::vector<Job> jobs_;
    std::vector<Label> labels_;
    std::vector<ImageBox> taken_;
    std::vector<DrawnLine> lines_;
};

/// All that the drawing functions look at.
struct Scene {
    Stage& stage;
    const Rig& rig;
    const Plan& plan;
    const Evaluation& evaluation;
    const Edge& edge;  ///< of the plan, drawable
    const SiteSize& size;
    std::span<const Rock> rocks;
    View view;
    const Picture& picture;

    [[nodiscard]] const app::Speech& speech() const { return picture.speech; }
    [[nodiscard]] bool lit(Highlight::Part part, std::size_t index = 0, std::size_t second = 0) const { return lights(picture.highlight, part, index, second); }
};

void draw_site(Scene& scene);
void draw_rig(Scene& scene);
void draw_forces(Scene& scene);
void draw_way_it_goes(Scene& scene);
void draw_side_dimensions(Scene& scene);
void draw_behind_dimensions(Scene& scene);
void draw_plan_dimensions(Scene& scene);

/// "0.38 kN", "85 lbf".
std::string force_text(const app::Speech& speech, double force_N);
inline std::string degree_text(double value_deg) { return fixed_text(value_deg, 0) + "\xC2\xB0"; }
/// "4.25 m", "13.94 ft".
inline std::string length_text(const app::Speech& speech, double length_m) { return app::amount(speech, length_m, "m"); }
/// With one decimal, as it is paced out.
std::string paced_text(const app::Speech& speech, double length_m);
/// A text with one such in it.
inline std::string with_amount(const app::Speech& speech, const app::Said& said, std::string amount) { return say(speech, said, {{"{d}", std::move(amount)}}); }

/// Points of the arc round `at_m` from the unit vector a to b, the shorter way.
std::vector<Vec3> arc(Vec3 at_m, Vec3 a, Vec3 b, double radius_m);

}  // namespace guywright::scene
