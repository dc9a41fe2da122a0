#include "wasm/screens/builder.hpp"

#include <algorithm>

#include "engine/plan/numbers.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/widgets/slider.hpp"
#include "wasm/widgets/verdict_mark.hpp"

namespace guywright::screens {
namespace {

using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

/// "± 3°", the tolerance of the plan for a measurement of this kind.
std::string error_text(const Tolerances& t, const Range& range, double value, const app::Input& input) {
    const auto in_unit = [&](double by) { return "\u00B1 " + with_unit(input, number_text(by)); };
    const auto percent = [&](double by) { return value > 0.0 ? "\u00B1 " + number_text(by) + " %" : std::string(); };
    switch (range.error) {
        case ErrorKind::None: return {};
        case ErrorKind::Bearing: return in_unit(t.bearing_deg);
        case ErrorKind::Inclination: return in_unit(t.inclination_deg);
        case ErrorKind::Lean: return in_unit(t.lean_deg);
        case ErrorKind::Face: return in_unit(t.face_deg);
        case ErrorKind::Distance: return in_unit(t.distance_m);
        case ErrorKind::Load: return percent(t.load_percent);
        case ErrorKind::Pretension: return percent(t.pretension_percent);
    }
    return {};
}

}  // namespace

void Builder::group(std::string title, std::string id) {
    out_.groups.push_back({std::move(title), std::move(id), {}, {}});
    more_.clear();
}

void Builder::more(std::string what) { more_ = std::move(what); }

bool Builder::leave_out(const std::string& id) {
    Group& group = out_.groups.back();
    if (more_.empty() || state_.open_group == group.id || state_.wanted_id == id || !app::is_measured(state_.plan, id)) return false;
    if (group.more.empty()) {
        group.more = more_;
        group.more_id = id;
    }
    return true;
}

void Builder::push(float height_px, std::string id, std::function<void(Ui&, const Box&)> draw) {
    if (out_.groups.empty()) group({});
    if (leave_out(id)) return;
    out_.items.push_back({height_px, out_.groups.size() - 1, std::move(id), std::move(draw)});
}

void Builder::slide(const std::string& path) {
    Plan copy = state_.plan;   // the finder hands out writable places
    const NumberRef number = find_number(copy, path);
    const app::Input* input = app::find_input(path);
    if (!number || input == nullptr) return;
    const double value = number.get();
    const widgets::SliderText text{*input, path, value, app::is_measured(state_.plan, path), error_text(state_.plan.tolerances, number.range, value, *input)};
    push(widgets::slider_height(ui_, text, width_), path, [text](Ui& u, const Box& box) { widgets::slider(u, box, text); });
}

void Builder::choose(std::vector<Choice> choices) {
    const std::string id = choices.front().id;
    push(widgets::k_target_px, id, [choices = std::move(choices)](Ui& u, const Box& box) {
        const auto count = static_cast<float>(choices.size());
        const float wide = (box.w - (count - 1.0F) * widgets::k_gap_px) / count;
        Box row = box;
        for (const Choice& c : choices)
            if (widgets::button(u, row.cut_left(wide, widgets::k_gap_px), {c.id, c.label, c.chosen ? ButtonLook::Chosen : ButtonLook::Plain}))
                u.wish(c.command);
    });
}

void Builder::toggle(std::string id, std::string label, bool on, app::Command command) {
    push(widgets::k_target_px, id, [id, label = (on ? "\u2713 " : "") + label, on, command = std::move(command)](Ui& u, const Box& box) {
        if (widgets::button(u, box, {id, label, on ? ButtonLook::Chosen : ButtonLook::Plain})) u.wish(command);
    });
}

void Builder::action(std::string id, std::string label, app::Command command) {
    push(widgets::k_target_px, id, [id, label = std::move(label), command = std::move(command)](Ui& u, const Box& box) {
        if (widgets::button(u, box, {id, label})) u.wish(command);
    });
}

void Builder::text(std::string words, ImFont* app::Fonts::*font) {
    const float height = widgets::text_height(ui_.fonts.*font, words, width_);
    push(height, "text", [words = std::move(words), font](Ui& u, const Box& box) {
        widgets::write(u, u.fonts.*font, box, words, u.theme.ink);
        u.mirror.push_back({"text", "text", words, "", box});
    });
}

void Builder::caution(std::string words) {
    constexpr float mark_px = 40.0F;
    const float height = std::max(36.0F, widgets::text_height(ui_.fonts.text, words, width_ - mark_px));
    push(height, "caution", [words = std::move(words)](Ui& u, const Box& box) {
        widgets::caution_shape(u, {box.x + 15.0F, box.y + 18.0F}, 15.0F);
        widgets::write(u, u.fonts.text, {box.x + mark_px, box.y, box.w - mark_px, box.h}, words, u.theme.ink);
        u.mirror.push_back({"caution", "text", words, "", box});
    });
}

}  // namespace guywright::screens
