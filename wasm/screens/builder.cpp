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
    widgets::SliderText text{*input, state_.speech, path, value, app::is_measured(state_.plan, path),
                             app::error_text(*input, state_.speech, state_.plan.tolerances, number->range, value)};
    if (state_.practice) {
        const std::optional<app::Measure> drawn = app::measure_at(state_.practice->drawn, path);
        if (drawn) text.drawn = drawn->value;
        text.error = drawn ? app::said(state_, words::practice::k_drawn_value, {{"{value}", app::shown_value(*input, state_.speech, drawn->value)}}) : std::string();
    } else if (const auto kind = app::reading_kind(state_.plan, path); kind && state_.device.can(*kind)) text.device = kind;
    push(widgets::slider_height(ui_, text, width_), path, [text](Ui& u, const Box& box) { widgets::slider(u, box, text); },
         {{.kind = Spoken::Kind::Number, .id = path}});
}

void Builder::choose(std::vector<Choice> choices) {
    const std::string id = choices.front().id;
    std::vector<Spoken> spoken;
    for (const Choice& c : choices) spoken.push_back({Spoken::Kind::Key, c.id, c.label, {}, c.chosen, c.command});
    push(widgets::k_target_px, id, [choices = std::move(choices)](Ui& u, const Box& box) {
        const auto count = static_cast<float>(choices.size());
        const float wide = (box.w - (count - 1.0F) * widgets::k_gap_px) / count;
        Box row = box;
        for (const Choice& c : choices)
            if (widgets::button(u, row.cut_left(wide, widgets::k_gap_px), {c.id, c.label, c.chosen ? ButtonLook::Chosen : ButtonLook::Plain}))
                u.wish(c.command);
    }, std::move(spoken));
}

void Builder::toggle(std::string id, std::string label, bool on, app::Command command) {
    std::vector<Spoken> spoken{{Spoken::Kind::Key, id, label, {}, on, command}};
    push(widgets::k_target_px, id, [id, label = (on ? "\u2713 " : "") + label, on, command = std::move(command)](Ui& u, const Box& box) {
        if (widgets::button(u, box, {id, label, on ? ButtonLook::Chosen : ButtonLook::Plain})) u.wish(command);
    }, std::move(spoken));
}

void Builder::action(std::string id, std::string label, app::Command command) {
    std::vector<Spoken> spoken{{Spoken::Kind::Key, id, label, {}, std::nullopt, command}};
    push(widgets::k_target_px, id, [id, label = std::move(label), command = std::move(command)](Ui& u, const Box& box) {
        if (widgets::button(u, box, {id, label})) u.wish(command);
    }, std::move(spoken));
}

void Builder::keys(std::vector<Key> keys) {
    std::vector<Spoken> spoken;
    for (const Key& k : keys)
        if (k.enabled) spoken.push_back({Spoken::Kind::Key, k.id, k.label, {}, k.look == ButtonLook::Chosen ? std::optional(true) : std::nullopt, k.command});
    const std::string id = keys.front().id;
    push(widgets::k_target_px, id, [keys = std::move(keys)](Ui& u, const Box& box) { draw_row(u, box, keys); }, std::move(spoken));
}

void Builder::text(std::string words, ImFont* app::Fonts::*font) {
    const float height = widgets::text_height(ui_.fonts.*font, words, width_);
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "text", .label = words}};
    push(height, "text", [words = std::move(words), font](Ui& u, const Box& box) {
        widgets::write(u, u.fonts.*font, box, words, u.theme.ink);
        u.mirror.push_back({"text", "text", words, "", box});
    }, std::move(spoken));
}

void Builder::caution(std::string words) {
    constexpr float mark_px = 40.0F;
    const float height = std::max(36.0F, widgets::text_height(ui_.fonts.text, words, width_ - mark_px));
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "caution", .label = words}};
    push(height, "caution", [words = std::move(words)](Ui& u, const Box& box) {
        widgets::caution_shape(u, {box.x + 15.0F, box.y + 18.0F}, 15.0F);
        widgets::write(u, u.fonts.text, {box.x + mark_px, box.y, box.w - mark_px, box.h}, words, u.theme.ink);
        u.mirror.push_back({"caution", "text", words, "", box});
    }, std::move(spoken));
}

void Builder::row(std::string left, std::string right) {
    const bool one_line = widgets::text_width(ui_.fonts.text, left) + widgets::text_width(ui_.fonts.strong, right) + 12.0F <= width_;
    const float left_px = one_line ? widgets::k_line_px : widgets::text_height(ui_.fonts.text, left, width_);
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "force", .label = left, .value = right}};
    push(left_px + (one_line ? 4.0F : widgets::k_line_px + 4.0F), "force", [left = std::move(left), right = std::move(right), one_line, left_px](Ui& u, const Box& box) {
        Box rest = box;
        if (!one_line) widgets::write(u, u.fonts.text, rest.cut_top(left_px), left, u.theme.ink);
        write_line(u, u.fonts.strong, rest.cut_right(widgets::text_width(u.fonts.strong, right) + 1.0F, 10.0F), right, u.theme.ink, widgets::Align::Right);
        if (one_line) write_line(u, u.fonts.text, rest, left, u.theme.ink);
        u.draw.AddLine({box.x, box.y + box.h}, {box.x + box.w, box.y + box.h}, u.theme.ink, 1.0F);
        u.mirror.push_back({"force", "text", left, right, box});
    }, std::move(spoken));
}

}  // namespace guywright::screens
