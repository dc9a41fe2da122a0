#pragma once
#include "engine/codec/sheet_labels.hpp"
#include "engine/codec/sheet_tables.hpp"

#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace guywright::detail {

struct PaperLine {
    std::string_view kind;  ///< edge, face, ground, leg, guy, rope, haul, dimension, extension
    PaperPoint from, to;
};
struct PaperDot {
    std::string_view kind;  ///< head, foot, anchor
    PaperPoint at;
};

/// The rig to scale, ready to be drawn.
struct PaperDrawing {
    PaperPoint size_mm{};
    int scale = 1;  ///< 1 : scale
    std::vector<PaperLine> lines;
    std::vector<PaperDot> dots;
    std::vector<PaperText> texts;
};

inline constexpr std::array k_paper_scales{10, 20, 25, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000};
inline constexpr PaperPoint k_label_room_mm{16.0, 11.0};  ///< kept free on every side, for labels and dimensions

/// Which way the rig is looked at.
enum class PaperView : unsigned char { Above, Side };

/// Metres of the site as they lie on paper: from above the edge runs across and out is up; from the side out is to the right.
inline PaperPoint on_paper_m(PaperView view, Vec3 p) { return view == PaperView::Above ? PaperPoint{-p.y, p.x} : PaperPoint{p.x, p.z}; }

/// Draws one view of a rig. Everything is kept in metres until the scale is known.
class PaperDrawer {
public:
    PaperDrawer(const CardView& v, PaperView view, PaperPoint size_mm) : v_(v), m_(v.e.model), view_(view), labels_({{0.0, 0.0}, size_mm}) {
        out_.size_mm = size_mm;
    }

    [[nodiscard]] PaperDrawing draw() {
        choose_scale();
        site();
        for (const Rope& rope : m_.ropes) draw_rope(rope);
        for (const Guy& guy : m_.guys) line("guy", {guy.anchor_m, m_.drawn_head_m});
        for (const Leg& leg : m_.legs) line("leg", {leg.foot_m, m_.drawn_head_m});
        dots();
        if (view_ == PaperView::Above) dimensions_above();
        else dimensions_beside();
        label_dimensions();
        label_anchors();
        if (view_ == PaperView::Above) label_site();
        out_.texts = labels_.placed();
        return std::move(out_);
    }

private:
    [[nodiscard]] PaperPoint mm(Vec3 p) const { return 0.5 * out_.size_mm + (on_paper_m(view_, p) - middle_m_) * (1000.0 / out_.scale); }

    void choose_scale() {
        const PaperPoint head = on_paper_m(view_, m_.drawn_head_m);
        PaperBox around{head, head};
        around.take_in(on_paper_m(view_, {0.0, m_.drawn_head_m.y, 0.0}));
        for (const Leg& leg : m_.legs) around.take_in(on_paper_m(view_, leg.foot_m));
        for (const Guy& guy : m_.guys) around.take_in(on_paper_m(view_, guy.anchor_m));
        middle_m_ = 0.5 * (around.low + around.high);
        const PaperPoint room_mm = out_.size_mm - 2.0 * k_label_room_mm, size_m = around.high - around.low;
        out_.scale = k_paper_scales.back();
        for (auto s = k_paper_scales.rbegin(); s != k_paper_scales.rend(); ++s)
            if (size_m.x * 1000.0 / *s <= room_mm.x && size_m.y * 1000.0 / *s <= room_mm.y) out_.scale = *s;
    }

    /// A line in metres; what leaves the paper is cut off there.
    void line(std::string_view kind, std::initializer_list<Vec3> points) {
        const std::vector<Vec3> all(points);
        for (std::size_t i = 0; i + 1 < all.size(); ++i) {
            PaperPoint a = mm(all[i]), b = mm(all[i + 1]);
            if (cut_to({{0.0, 0.0}, out_.size_mm}, a, b)) add(kind, a, b);
        }
    }
    void add(std::string_view kind, PaperPoint a, PaperPoint b) {
        out_.lines.push_back({kind, a, b});
        labels_.keep_off(a, b);
    }

    void site() {
        constexpr double far_m = 1000.0;  // past every paper: clipped there
        const double face_rad = radians(v_.plan.edge.face_deg);
        if (view_ == PaperView::Above) {
            line("edge", {{0.0, far_m, 0.0}, {0.0, -far_m, 0.0}});
            if (v_.plan.edge.opening_m) line("edge", {{*v_.plan.edge.opening_m, far_m, 0.0}, {*v_.plan.edge.opening_m, -far_m, 0.0}});
            return;
        }
        line("ground", {{-far_m, 0.0, 0.0}, {0.0, 0.0, 0.0}});
        line("face", {{0.0, 0.0, 0.0}, {far_m * std::cos(face_rad), 0.0, -far_m * std::sin(face_rad)}});
        if (v_.plan.edge.opening_m) line("ground", {{*v_.plan.edge.opening_m, 0.0, 0.0}, {far_m, 0.0, 0.0}});
    }

    void label_site() {
        labels_.add(std::string(v_.words.sheet.edge), {4.0, std::clamp(mm({0.0, 0.0, 0.0}).y, 2.0, out_.size_mm.y - 2.0)}, {0.3, 1.0});
        labels_.add("\u2191 " + std::string(v_.words.sheet.out_over_edge), {0.5 * out_.size_mm.x + 2.0, out_.size_mm.y - 2.0}, {1.0, -0.5});
    }

    void draw_rope(const Rope& rope) {
        constexpr double far_m = 1000.0;
        const RopePath path = rope_path(m_, rope, 0.0, 0.0);
        const Vec3 head_m = m_.drawn_head_m;
        if (path.clear_of_edge) line("rope", {head_m, head_m + far_m * path.below_edge});
        else line("rope", {head_m, path.edge_point_m, path.edge_point_m + far_m * path.below_edge});
        if (rope.has_haul) line("haul", {head_m, rope.haul_m});
    }

    void dot(std::string_view kind, Vec3 p) {
        constexpr double half_mm = 1.2;
        out_.dots.push_back({kind, mm(p)});
        labels_.keep_free(mm(p), half_mm);
    }
    void dots() {
        for (const Guy& guy : m_.guys) dot("anchor", guy.anchor_m);
        for (const Leg& leg : m_.legs) dot("foot", leg.foot_m);
        dot("head", m_.drawn_head_m);
    }

    /// From `a` to `b`, drawn `off` away from both, with what it measures.
    void dimension(PaperPoint a, PaperPoint b, PaperPoint off, double length_m) {
        constexpr double shortest_mm = 1.0;
        if (glm::length(b - a) < shortest_mm) return;
        const PaperPoint over = off * 1.15;
        add("extension", a, a + over);
        add("extension", b, b + over);
        add("dimension", a + off, b + off);
        waiting_.push_back({quantity(v_.telling, std::abs(length_m), "m"), 0.5 * (a + b) + off, off});
    }
    /// Once every line is there to be kept off.
    void label_dimensions() {
        for (const Waiting& w : waiting_) labels_.add(w.text, w.by, w.away);
    }

    [[nodiscard]] const Leg& nearest_foot() const {
        const Leg* nearest = &m_.legs[0];
        for (const Leg& leg : m_.legs)
            if (std::abs(leg.foot_m.x) < std::abs(nearest->foot_m.x)) nearest = &leg;
        return *nearest;
    }
    void dimensions_above() {
        const Vec3 foot_m = nearest_foot().foot_m, head_m = m_.drawn_head_m;
        dimension(mm({foot_m.x, foot_m.y, 0.0}), mm({0.0, foot_m.y, 0.0}), {6.0, 0.0}, foot_m.x);
        dimension(mm({head_m.x, head_m.y, 0.0}), mm({0.0, head_m.y, 0.0}), {-6.0, 0.0}, head_m.x);
        if (m_.legs.size() == 2) {
            const Vec3 a = m_.legs[0].foot_m, b = m_.legs[1].foot_m;
            const PaperPoint way = mm(b) - mm(a);
            dimension(mm(a), mm(b), 5.0 * PaperPoint{-way.y, way.x} / std::max(glm::length(way), 1.0) * (way.x > 0.0 ? -1.0 : 1.0), glm::length(b - a));
        }
    }
    void dimensions_beside() {
        const Vec3 foot_m = nearest_foot().foot_m, head_m = m_.drawn_head_m;
        dimension(mm({foot_m.x, 0.0, 0.0}), mm({0.0, 0.0, 0.0}), {0.0, -6.0}, foot_m.x);
        dimension(mm({0.0, 0.0, head_m.z}), mm({head_m.x, 0.0, head_m.z}), {0.0, 5.0}, head_m.x);
        dimension(mm({head_m.x, 0.0, 0.0}), mm({head_m.x, 0.0, head_m.z}), {9.0, 0.0}, head_m.z);
    }

    void label_anchors() {
        for (std::size_t i = 0; i < m_.guys.size(); ++i) {
            const Vec3 at_m = m_.guys[i].anchor_m;
            const GroundPlace place = place_from(m_.drawn_head_m, at_m);
            std::string text = std::to_string(i + 1);
            if (view_ == PaperView::Above)
                text += "  " + std::to_string(static_cast<int>(std::round(place.bearing_deg + 360.0)) % 360) + "\u00B0 " +
                        quantity(v_.telling, place.distance_m, "m");
            labels_.add(std::move(text), mm(at_m), mm(at_m) - mm(m_.drawn_head_m));
        }
    }

    struct Waiting {
        std::string text;
        PaperPoint by, away;
    };

    const CardView& v_;
    const Model& m_;
    PaperView view_;
    LabelPlaces labels_;
    PaperDrawing out_;
    std::vector<Waiting> waiting_;
    PaperPoint middle_m_{};
};

}  // namespace guywright::detail
