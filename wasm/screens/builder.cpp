#include "wasm/screens/builder.hpp"

#include <algorithm>

#include "wasm/app/found_anchors.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/widgets/slider.hpp"
#include "wasm/widgets/verdict_mark.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr float k_after_heading_px = 4.0F;  ///< between the heading of some rows and the first of them
constexpr float k_below_row_px = 4.0F;      ///< between a row's words and its rule

bool is_one_line(const Ui& ui, const Row& row, float width) {
    return widgets::text_width(ui.fonts.text, row.left) + widgets::text_width(ui.fonts.strong, row.right) + 12.0F <= width;
}

float row_height(const Ui& ui, const Row& row, float width) {
    return widgets::k_line_px + k_below_row_px + (is_one_line(ui, row, width) ? 0.0F : widgets::text_height(ui.fonts.text, row.left, width));
}

void draw_row_of_two(Ui& u, const Box& box, const Row& row) {
    Box rest = box;
    const bool one_line = is_one_line(u, row, box.w);
    rest.cut_bottom(k_below_row_px);
    if (!one_line) widgets::write(u, u.fonts.text, rest.cut_top(widgets::text_height(u.fonts.text, row.left, box.w)), row.left, u.theme.ink);
    write_line(u, u.fonts.strong, rest.cut_right(widgets::text_width(u.fonts.strong, row.right) + 1.0F, 10.0F), row.right, u.theme.ink, widgets::Align::Right);
    if (one_line) write_line(u, u.fonts.text, rest, row.left, u.theme.ink);
    u.draw.AddLine({box.x, box.y + box.h}, {box.x + box.w, box.y + box.h}, u.theme.ink, 1.0F);
    u.mirror.push_back({"force", "text", row.left, row.right, box});
}

}  // namespace

void Builder::group(std::string title, std::string id) {
    out_.groups.push_back({std::move(title), std::move(id), {}, {}});
    more_.clear();
}

void Builder::more(std::string what) { more_ = std::move(what); }

bool Builder::leave_out(const std::string& id) {
    Group& group = out_.groups.back();
    if (all_ || more_.empty() || state_.open_group == group.id || state_.wanted_id == id || !app::is_measured(state_.plan, id)) return false;
    if (group.more.empty()) {
        group.more = more_;
        group.more_id = id;
    }
    return true;
}

void Builder::push(float height_px, std::string id, std::function<void(Ui&, const Box&)> draw, std::vector<Spoken> spoken) {
    if (out_.groups.empty()) group({});
    if (leave_out(id)) return;
    out_.items.push_back({height_px, out_.groups.size() - 1, std::move(id), std::move(draw), std::move(spoken)});
}

void Builder::slide(const std::string& path) {
    const std::optional<app::Measure> number = app::measure_at(state_.plan, path);
    const app::Input* input = app::find_input(path);
    if (!number || input == nullptr) return;
    const double value = number->value;
    widgets::SliderText text{*input,
                             state_.speech,
                             path,
                             value,
                             app::is_measured(state_.plan, path),
                             app::error_text(*input, state_.speech, state_.plan.tolerances, number->range, value)};
    if (state_.practice) {
        const std::optional<app::Measure> drawn = app::measure_at(state_.practice->drawn, path);
        if (drawn) text.drawn = drawn->value;
        text.error =
            drawn ? app::said(state_, words::practice::k_drawn_value, {{"{value}", app::shown_value(*input, state_.speech, drawn->value)}}) : std::string();
    } else if (const auto kind = app::reading_kind(state_.plan, path); kind && state_.device.can(*kind)) text.device = kind;
    push(widgets::slider_height(ui_, text, width_), path, [text](Ui& u, const Box& box) { widgets::slider(u, box, text); },
         {{.kind = Spoken::Kind::Number, .id = path}});
}

void Builder::choose(std::vector<Choice> choices) {
    const std::string id = choices.front().id;
    std::vector<Spoken> spoken;
    for (const Choice& c : choices) spoken.push_back({Spoken::Kind::Key, c.id, c.label, {}, c.chosen, c.command});
    push(
        widgets::k_target_px, id,
        [choices = std::move(choices)](Ui& u, const Box& box) {
            const auto count = static_cast<float>(choices.size());
            const float wide = (box.w - (count - 1.0F) * widgets::k_gap_px) / count;
            Box row = box;
            for (const Choice& c : choices)
                if (widgets::button(u, row.cut_left(wide, widgets::k_gap_px), {c.id, c.label, c.chosen ? ButtonLook::Chosen : ButtonLook::Plain}))
                    u.wish(c.command);
        },
        std::move(spoken));
}

void Builder::toggle(std::string id, std::string label, bool on, app::Command command) {
    std::vector<Spoken> spoken{{Spoken::Kind::Key, id, label, {}, on, command}};
    push(
        widgets::k_target_px, id,
        [id, label = (on ? "\u2713 " : "") + label, on, command = std::move(command)](Ui& u, const Box& box) {
            if (widgets::button(u, box, {id, label, on ? ButtonLook::Chosen : ButtonLook::Plain})) u.wish(command);
        },
        std::move(spoken));
}

void Builder::action(std::string id, std::string label, app::Command command) {
    std::vector<Spoken> spoken{{Spoken::Kind::Key, id, label, {}, std::nullopt, command}};
    push(
        widgets::k_target_px, id,
        [id, label = std::move(label), command = std::move(command)](Ui& u, const Box& box) {
            if (widgets::button(u, box, {id, label})) u.wish(command);
        },
        std::move(spoken));
}

void Builder::keys(std::vector<Key> keys) {
    std::vector<Spoken> spoken;
    for (const Key& k : keys)
        if (k.enabled) spoken.push_back({Spoken::Kind::Key, k.id, k.label, {}, k.look == ButtonLook::Chosen ? std::optional(true) : std::nullopt, k.command});
    const std::string id = keys.front().id;
    push(
        widgets::k_target_px, id, [keys = std::move(keys)](Ui& u, const Box& box) { draw_row(u, box, keys); }, std::move(spoken));
}

void Builder::text(std::string words, ImFont* app::Fonts::*font) {
    const float height = widgets::text_height(ui_.fonts.*font, words, width_);
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "text", .label = words}};
    push(
        height, "text",
        [words = std::move(words), font](Ui& u, const Box& box) {
            widgets::write(u, u.fonts.*font, box, words, u.theme.ink);
            u.mirror.push_back({"text", "text", words, "", box});
        },
        std::move(spoken));
}

void Builder::caution(std::string words) {
    constexpr float mark_px = 40.0F;
    const float height = std::max(36.0F, widgets::text_height(ui_.fonts.text, words, width_ - mark_px));
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "caution", .label = words}};
    push(
        height, "caution",
        [words = std::move(words)](Ui& u, const Box& box) {
            widgets::caution_shape(u, {box.x + 15.0F, box.y + 18.0F}, 15.0F);
            widgets::write(u, u.fonts.text, {box.x + mark_px, box.y, box.w - mark_px, box.h}, words, u.theme.ink);
            u.mirror.push_back({"caution", "text", words, "", box});
        },
        std::move(spoken));
}

void Builder::rows(const std::vector<Row>& rows, const std::string& heading) {
    constexpr std::size_t k_most_together = 4;  // they stand on one page of the lowest screen
    for (std::size_t at = 0; at < rows.size(); at += k_most_together) {
        const auto first = rows.begin() + static_cast<std::ptrdiff_t>(at);
        rows_together({first, first + static_cast<std::ptrdiff_t>(std::min(k_most_together, rows.size() - at))}, heading);
    }
}

void Builder::rows_together(std::vector<Row> rows, const std::string& heading) {
    std::vector<float> heights_px;
    float height_px = heading.empty() ? 0.0F : widgets::text_height(ui_.fonts.strong, heading, width_) + k_after_heading_px;
    std::vector<Spoken> spoken;
    if (!heading.empty()) spoken.push_back({.kind = Spoken::Kind::Text, .id = "text", .label = heading});
    for (const Row& row : rows) {
        heights_px.push_back(row_height(ui_, row, width_));
        height_px += heights_px.back();
        spoken.push_back({.kind = Spoken::Kind::Text, .id = "force", .label = row.left, .value = row.right});
    }
    push(
        height_px, "force",
        [rows = std::move(rows), heights_px = std::move(heights_px), heading](Ui& u, const Box& box) {
            Box rest = box;
            if (!heading.empty()) {
                const Box title = rest.cut_top(widgets::write(u, u.fonts.strong, box, heading, u.theme.ink), k_after_heading_px);
                u.mirror.push_back({"text", "text", heading, "", title});
            }
            for (std::size_t i = 0; i < rows.size(); ++i) draw_row_of_two(u, rest.cut_top(heights_px[i]), rows[i]);
        },
        std::move(spoken));
}

}  // namespace guywright::screens
