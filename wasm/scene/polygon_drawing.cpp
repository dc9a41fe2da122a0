#include "wasm/scene/polygon_drawing.hpp"
#include "wasm/words/picture.hpp"

namespace guywright::scene {
namespace {

constexpr double k_gap_px = 22.0;     // between columns
constexpr double k_letter_px = 40.0;  // bar and letter before a name
constexpr double k_margin_px = 24.0;  // round the polygon
constexpr double k_least_px = 110.0;  // of the polygon's room: below that the list goes

ImU32 colour_of(const ForceRow& row, const Look& look) {
    switch (row.force.kind) {
        case HeadForce::Kind::LoadSide:
        case HeadForce::Kind::HaulSide: return look.rope;
        case HeadForce::Kind::Weight: return look.load;
        case HeadForce::Kind::Guy: return row.letter.empty() ? look.guy_slack : look.guy;
        case HeadForce::Kind::Leg: return look.leg;
        case HeadForce::Kind::RopesTogether: return look.resultant;
    }
    return look.text;
}

double column_width(const Type& type, std::span<const ForceRow> rows) {
    double wide = 0.0;
    for (const ForceRow& row : rows) wide = std::max(wide, k_letter_px + type.width(row.name) + 16.0 + type.width(row.amount));
    return wide;
}

/// The list below the polygon, in as many columns as fit.
void list_below(PolygonLayout& l, const ImageBox& frame, double column_px) {
    const double wide = frame.max.x - frame.min.x - 16.0;
    l.columns = std::max<std::size_t>(1, static_cast<std::size_t>((wide + k_gap_px) / (column_px + k_gap_px)));
    const auto lines = static_cast<double>((l.rows.size() + l.columns - 1) / l.columns);
    l.list = {{frame.min.x + 8.0, frame.max.y - 6.0 - lines * l.row_px}, {frame.max.x - 8.0, frame.max.y - 6.0}};
    l.polygon.max.y = l.list.min.y - 8.0;
}

/// The list to the left of the polygon, in one column.
void list_beside(PolygonLayout& l, const ImageBox& frame, double column_px) {
    l.columns = 1;
    l.list = {frame.min + 10.0, {frame.min.x + 10.0 + column_px, frame.min.y + 10.0 + static_cast<double>(l.rows.size()) * l.row_px}};
    l.polygon.min.x = l.list.max.x + 12.0;
}

/// Smaller side of what is left for the polygon.
double room_px(const PolygonLayout& l) {
    const Vec2 size = l.polygon.max - l.polygon.min;
    return std::min(size.x, size.y) - 2.0 * k_margin_px;
}

void write(Stage& stage, const Type& type, Vec2 left_middle, const std::string& words, ImU32 colour) {
    stage.pen().text(type.font, type.size_px, {left_middle.x + 0.5 * type.width(words), left_middle.y}, words.c_str(), colour);
}

void draw_row(Stage& stage, const Type& type, const ForceRow& row, Vec2 left_middle, double wide_px) {
    const Look& look = stage.look();
    stage.pen().image_line(left_middle + Vec2{4.0, -8.0}, left_middle + Vec2{4.0, 8.0}, {colour_of(row, look), 6.0F});
    write(stage, type, left_middle + Vec2{15.0, 0.0}, row.letter, look.text);
    write(stage, type, left_middle + Vec2{k_letter_px - 8.0, 0.0}, row.name, look.text);
    write(stage, type, {left_middle.x + wide_px - type.width(row.amount), left_middle.y}, row.amount, look.text);
}

void draw_list(Stage& stage, const Type& type, const PolygonLayout& l) {
    if (l.columns == 0) return;
    const double whole_px = l.list.max.x - l.list.min.x, columns = static_cast<double>(l.columns);
    const double wide_px = (whole_px - (columns - 1.0) * k_gap_px) / columns;
    const std::size_t lines = (l.rows.size() + l.columns - 1) / l.columns;
    for (std::size_t i = 0; i < l.rows.size(); ++i) {
        const double x = l.list.min.x + static_cast<double>(i / lines) * (wide_px + k_gap_px);
        draw_row(stage, type, l.rows[i], {x, l.list.min.y + (static_cast<double>(i % lines) + 0.5) * l.row_px}, wide_px);
    }
}

/// A vector with its head at its end; the line stops inside the head.
void draw_vector(Stage& stage, Vec3 from, Vec3 to, ImU32 colour, float width_px, ImU32 casing) {
    Pen& pen = stage.pen();
    const auto a = pen.image(from), b = pen.image(to);
    if (!a || !b) return;
    const double length_px = glm::length(*b - *a);
    const double head_px = std::min(20.0 * static_cast<double>(pen.unit_px()), 0.6 * length_px);
    const Vec2 neck = *b - (length_px > 0.0 ? 0.8 * head_px / length_px : 0.0) * (*b - *a);
    if (casing != 0) pen.image_line(*a, neck, {casing, width_px + 3.0F * pen.unit_px()});
    pen.image_line(*a, neck, {colour, width_px});
    pen.arrow_head(*b, *b - *a, static_cast<float>(head_px), colour);
    stage.keep_head_clear(*b, *b - *a, head_px);
    stage.keep_clear(*a, *b);
}

/// Lit up as the part of the rig that pulls is.
ImU32 casing_of(const HeadForce& f, const Picture& picture, const Look& look) {
    using Kind = HeadForce::Kind;
    using Part = Highlight::Part;
    const Part part = f.kind == Kind::LoadSide   ? Part::Rope
                      : f.kind == Kind::HaulSide ? Part::Haul
                      : f.kind == Kind::Guy      ? Part::Guy
                      : f.kind == Kind::Leg      ? Part::Leg
                                                 : Part::None;
    if (lights(picture.highlight, part, f.index)) return look.highlight;
    return f.kind == Kind::Leg || f.kind == Kind::Weight ? look.edge : 0;
}

/// From the first tail to where the ropes end: what they do together.
void draw_resultant(Stage& stage, const std::vector<Vec3>& corners, std::size_t end, const ForceRow& row, bool listed, bool lit) {
    Pen& pen = stage.pen();
    const auto a = pen.image(corners[0]), b = pen.image(corners[end]);
    if (row.force.kind != HeadForce::Kind::RopesTogether || !a || !b) return;
    if (lit) pen.image_line(*a, *b, {stage.look().highlight, 9.0F * pen.unit_px()});
    pen.image_line(*a, *b, {stage.look().resultant, 3.0F * pen.unit_px(), 9.0F * pen.unit_px()});
    pen.arrow_head(*b, *b - *a, 16.0F * pen.unit_px(), stage.look().resultant);
    stage.keep_clear(*a, *b);
    stage.label_line({listed ? row.letter : row.name + " " + row.amount, rank::resultant, stage.look().resultant}, *a, *b);
}

void draw_scale_bar(Stage& stage, const app::Speech& speech, const PolygonLayout& l) {
    Pen& pen = stage.pen();
    const ShownUnit unit = shown_unit("kN", speech.units);
    const double px_per_unit = pen.eye().scale_px / unit.per_kept, most_px = std::min(130.0, 0.4 * (l.polygon.max.x - l.polygon.min.x));
    const double long_units = scale_bar(px_per_unit, most_px);
    // Below on the right a polygon is seldom: the leg ends it on the left, below the head.
    const Vec2 right = l.polygon.max, left = right - Vec2{long_units * px_per_unit, 0.0};
    const Ink ink{stage.look().text, 2.5F};
    pen.image_line(left, right, ink);
    for (const Vec2 end : {left, right}) pen.image_line(end - Vec2{0, 6}, end + Vec2{0, 6}, ink);
    stage.keep_free(ImageBox{left - Vec2{0, 7}, right + Vec2{0, 7}});
    const std::string length = with_unit(app::number(speech, long_units, long_units < 0.1 ? 2 : long_units < 1.0 ? 1 : 0), unit.name);
    stage.label_round({length, rank::dimension, stage.look().text}, 0.5 * (left + right), 8.0, {0, -1});
}

void label_force(Stage& stage, const ForceRow& row, bool listed, Vec3 from, Vec3 to) {
    const std::string words = listed ? row.letter : row.name + " " + row.amount;
    stage.label_line({words, rank::tension, stage.look().text, listed ? 0 : colour_of(row, stage.look())}, from, to);
}

}  // namespace

std::vector<HeadForce> forces_of(std::span<const ForceRow> rows) {
    std::vector<HeadForce> out;
    for (const ForceRow& row : rows)
        if (!row.letter.empty() && row.force.kind != HeadForce::Kind::RopesTogether) out.push_back(row.force);
    return out;
}

PolygonLayout lay_out_polygon(const Type& type, const ImageBox& frame, std::vector<ForceRow> rows, bool large) {
    PolygonLayout l{std::move(rows), frame, {}, 0, 1.35 * static_cast<double>(type.size_px)};
    if (large && !l.rows.empty()) {
        const double column_px = column_width(type, l.rows);
        PolygonLayout beside = l, below = l;
        list_beside(beside, frame, column_px);
        list_below(below, frame, column_px);
        const double beside_px = beside.list.max.y < frame.max.y ? room_px(beside) : 0.0, below_px = room_px(below);
        if (std::max(beside_px, below_px) >= k_least_px) l = beside_px > below_px ? beside : below;
    }
    l.polygon.min += Vec2{k_margin_px};
    l.polygon.max -= Vec2{k_margin_px};
    return l;
}

void draw_polygon(Stage& stage, const Type& type, const PolygonLayout& l, const Picture& picture) {
    const Look& look = stage.look();
    const std::vector<HeadForce> forces = forces_of(l.rows);
    const ImageBox& frame = stage.pen().frame();
    if (forces.empty())
        return stage.pen().text(type.font, type.size_px, 0.5 * (frame.min + frame.max), say(picture.speech, words::k_no_forces).data(),
                                look.text);  // a literal: it ends with a zero
    const std::vector<Vec3> corners = polygon_of(forces);
    const float width_px = 4.5F * stage.pen().unit_px();
    for (std::size_t i = 0; i < forces.size(); ++i) {
        const Vec3 from = picture.from_head ? corners[0] : corners[i], to = from + forces[i].force_N / 1000.0;
        draw_vector(stage, from, to, colour_of(l.rows[i], look), width_px, casing_of(forces[i], picture, look));
        label_force(stage, l.rows[i], l.columns > 0, from, to);
    }
    draw_resultant(stage, corners, end_of_ropes(forces), l.rows.back(), l.columns > 0, lights(picture.highlight, Highlight::Part::Resultant, 0));
    draw_scale_bar(stage, picture.speech, l);
    draw_list(stage, type, l);
    stage.pen().ring(corners[0], 9.0F * stage.pen().unit_px(), {look.edge, 2.5F * stage.pen().unit_px()});
}

}  // namespace guywright::scene
