#include "wasm/scene/stage.hpp"

#include <algorithm>

namespace guywright::scene {
namespace {

/// Width of a label's coloured bar with its air, as a share of the text size.
constexpr double k_mark_share = 0.45;

}  // namespace

std::string force_text(const app::Speech& speech, double force_N) {
    const ShownUnit unit = shown_unit("kN", speech.units);
    const int decimals = force_N < 9995.0 ? unit.decimals : std::max(0, unit.decimals - 1);
    return with_unit(app::number(speech, kilonewtons(force_N) * unit.per_kept, decimals), unit.name);
}

std::string paced_text(const app::Speech& speech, double length_m) {
    const ShownUnit unit = shown_unit("m", speech.units);
    return with_unit(app::number(speech, length_m * unit.per_kept, 1), unit.name);
}

void Stage::later(Vec3 where_m, std::function<void()> job) { jobs_.push_back({seen_from(pen_.eye(), where_m).z, std::move(job)}); }

/// Where along a..b the view of it changes between `from` and `to`.
double Stage::boundary(Vec3 a_m, Vec3 b_m, double from, double to) const {
    const bool hidden_at_from = is_hidden(a_m + from * (b_m - a_m));
    for (int i = 0; i < 8; ++i) {
        const double middle = 0.5 * (from + to);
        (is_hidden(a_m + middle * (b_m - a_m)) == hidden_at_from ? from : to) = middle;
    }
    return to;
}

void Stage::bar(Vec3 a_m, Vec3 b_m, const Bar& bar) {
    constexpr int k_looks = 24;
    const auto middle_of_look = [](int i) { return (i + 0.5) / k_looks; };
    double start = 0.0;
    bool now = is_hidden(a_m + middle_of_look(0) * (b_m - a_m));
    for (int i = 1; i <= k_looks; ++i) {
        const bool next = i < k_looks ? is_hidden(a_m + middle_of_look(i) * (b_m - a_m)) : !now;
        if (next == now) continue;
        const double end = i < k_looks ? boundary(a_m, b_m, middle_of_look(i - 1), middle_of_look(i)) : 1.0;
        const Vec3 from = a_m + start * (b_m - a_m), to = a_m + end * (b_m - a_m);
        const float thin_px = std::min(bar.ink.width_px, 1.6F * pen_.unit_px());
        if (now && bar.lit) pen_.line(from, to, {faded(look_.highlight, 0.5F), thin_px + 7.0F * pen_.unit_px()});
        if (now) pen_.line(from, to, {faded(bar.ink.colour, 0.75F), thin_px, 4.0F * pen_.unit_px()});
        else visible_bar(from, to, bar);
        start = end;
        now = next;
    }
}

void Stage::visible_bar(Vec3 a_m, Vec3 b_m, const Bar& bar) {
    // The light lies under all of it: a neighbour's piece must not cut it.
    const float glow_px = bar.ink.width_px + 9.0F * pen_.unit_px();
    if (bar.lit) pen_.line(a_m, b_m, {look_.highlight, glow_px});
    const int pieces = bar.ink.dash_px > 0.0F ? 1 : 3;  // a broken line in pieces would lose its beat
    for (int i = 0; i < pieces; ++i) {
        const Vec3 from = a_m + (double(i) / pieces) * (b_m - a_m), to = a_m + (double(i + 1) / pieces) * (b_m - a_m);
        later(0.5 * (from + to), [this, from, to, bar] {
            if (bar.casing != 0) pen_.line(from, to, {bar.casing, bar.ink.width_px + 2.0F * pen_.unit_px()});
            pen_.line(from, to, bar.ink);
        });
    }
}

void Stage::draw_all() {
    std::stable_sort(jobs_.begin(), jobs_.end(), [](const Job& a, const Job& b) { return a.depth_m > b.depth_m; });
    for (const Job& j : jobs_) j.draw();
    jobs_.clear();
}

std::optional<DrawnLine> Stage::in_frame(Vec3 a_m, Vec3 b_m) const {
    ImageLine l = image_of_line(pen_.eye(), a_m, b_m);
    if (!l.visible || !cut_to_box(l.a, l.b, pen_.frame().min, pen_.frame().max)) return std::nullopt;
    return DrawnLine{l.a, l.b};
}

void Stage::label_line(LabelText text, Vec2 a, Vec2 b) {
    const double gap_px = 5.0 * static_cast<double>(pen_.unit_px());
    labels_.push_back({std::move(text), [a, b, gap_px](Vec2 size_px) { return places_along({a, b}, size_px, gap_px); }, DrawnLine{a, b}, {}, 0.0});
}

void Stage::label_line(LabelText text, Vec3 a_m, Vec3 b_m) {
    if (const auto l = in_frame(a_m, b_m)) label_line(std::move(text), l->a, l->b);
}

void Stage::label_round(LabelText text, Vec2 at, double away_px, Vec2 first) {
    const bool near_only = text.rank >= rank::place;  // the name of a place is worth no line across the picture
    const auto places = [at, away_px, first, near_only](Vec2 size_px) {
        std::vector<Vec2> all = places_round(at, size_px, away_px, first);
        if (near_only) all.resize(k_first_led_ring * k_places_each_ring);
        return all;
    };
    labels_.push_back({std::move(text), places, {}, at, away_px});
}

void Stage::label_round(LabelText text, Vec3 at_m, double away_px, Vec2 first) {
    if (const auto at = pen_.image(at_m)) label_round(std::move(text), *at, away_px, first);
}

void Stage::keep_free(Vec3 at_m, double radius_px) {
    if (const auto at = pen_.image(at_m)) taken_.push_back({*at - Vec2{radius_px}, *at + Vec2{radius_px}});
}

void Stage::keep_head_clear(Vec2 tip, Vec2 along, double head_px) {
    const double length = glm::length(along);
    if (!(length > 0.0)) return;
    const Vec2 middle = tip - 0.5 * head_px / length * along, across = 0.5 * head_px / length * Vec2{-along.y, along.x};
    lines_.push_back({middle - across, middle + across});
}

void Stage::keep_clear(Vec2 a, Vec2 b) { lines_.push_back({a, b}); }

void Stage::keep_clear(Vec3 a_m, Vec3 b_m) {
    if (const auto l = in_frame(a_m, b_m)) lines_.push_back(*l);
}

int Stage::draw_labels(const Type& type) {
    const double mark_px = k_mark_share * static_cast<double>(type.size_px);
    std::vector<LabelWish> wishes;
    for (const Label& l : labels_) {
        // A hair of air sideways; the line height has air of its own.
        const Vec2 box_px{type.width(l.text.words) + 6.0 + (l.text.mark != 0 ? mark_px : 0.0), static_cast<double>(type.size_px)};
        wishes.push_back({box_px, l.text.rank, l.places(box_px), l.own});
    }
    const auto places = place_labels(wishes, pen_.frame(), taken_, lines_);
    int left_out = 0;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i]) draw_label(type, labels_[i], *places[i], wishes[i].size_px);
        else left_out += labels_[i].text.rank == rank::dimension ? 1 : 0;
    return left_out;
}

void Stage::draw_label(const Type& type, const Label& label, Vec2 middle, Vec2 box_px) {
    const float size_px = type.size_px;
    const LabelText& text = label.text;
    if (label.own && detail::cut_off(middle, *label.own, lines_)) {
        const Vec2 end = detail::nearest_on(*label.own, middle), start = glm::clamp(end, middle - 0.5 * box_px, middle + 0.5 * box_px);
        pen_.image_line(start, end, {look_.plate, 4.0F * pen_.unit_px()});
        pen_.image_line(start, end, {text.colour, 1.5F * pen_.unit_px()});
    }
    if (label.point && needs_leader(middle, box_px, *label.point, label.away_px)) {
        const Vec2 start = glm::clamp(*label.point, middle - 0.5 * box_px, middle + 0.5 * box_px);
        pen_.image_line(start, *label.point, {text.colour, 1.3F * pen_.unit_px()});
    }
    pen_.plate({middle - 0.5 * box_px, middle + 0.5 * box_px}, look_.plate);
    if (text.mark != 0) {
        const double left = middle.x - 0.5 * box_px.x + 0.3 * k_mark_share * static_cast<double>(size_px), half = 0.38 * box_px.y;
        pen_.image_line({left, middle.y - half}, {left, middle.y + half}, {text.mark, 0.22F * size_px});
        middle.x += 0.5 * k_mark_share * static_cast<double>(size_px);
    }
    pen_.text(type.font, size_px, middle, text.words.c_str(), text.colour);
}

std::vector<Vec3> arc(Vec3 at_m, Vec3 a, Vec3 b, double radius_m) {
    const double angle = angle_between(a, b);
    const Vec3 across = glm::length(glm::cross(a, b)) > 1e-9 ? glm::normalize(b - glm::dot(a, b) * a) : Vec3{0.0};
    std::vector<Vec3> out;
    constexpr int k_parts = 16;
    for (int i = 0; i <= k_parts; ++i) {
        const double turn = angle * i / k_parts;
        out.push_back(at_m + radius_m * (std::cos(turn) * a + std::sin(turn) * across));
    }
    return out;
}

}  // namespace guywright::scene
