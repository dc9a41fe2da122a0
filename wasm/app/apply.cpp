#include "wasm/app/apply.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "engine/codec/check_code.hpp"
#include "engine/plan/fault_text.hpp"
#include "engine/plan/numbers.hpp"
#include "wasm/app/starters.hpp"
#include "wasm/platform/assets.hpp"
#include "wasm/screens/inputs.hpp"
#include "wasm/screens/items.hpp"

namespace guywright::app {
namespace {

constexpr std::size_t k_most_undos = 200;
constexpr std::size_t k_longest_entry = 9;
constexpr std::size_t k_most_faults_told = 8;

void begin_change(State& s) {
    if (!s.before_gesture) s.before_gesture = s.plan;
}

void mark_measured(State& s, const std::string& path) {
    auto& left = s.plan.not_measured;
    left.erase(std::remove(left.begin(), left.end(), path), left.end());
}

/// False, with nothing changed, where the value is not allowed.
bool set_number(State& s, const std::string& path, double value) {
    const NumberRef number = find_number(s.plan, path);
    if (!number || !number.range.holds(value)) return false;
    begin_change(s);
    find_number(s.plan, path).set(value);
    mark_measured(s, path);
    s.last_touched = path;
    return true;
}

void take_keypad(State& s) {
    Keypad& pad = *s.keypad;
    const screens::Input* input = screens::find_input(pad.path);
    const NumberRef number = find_number(s.plan, pad.path);
    char* end = nullptr;
    const double shown = std::strtod(pad.typed.c_str(), &end);
    if (input == nullptr || !number) return s.keypad.reset();
    if (pad.typed.empty() || *end != '\0') {
        pad.fault = "Type a number first, for example " + screens::shown_number(*input, number.get());
        return;
    }
    if (set_number(s, pad.path, input->sign * shown)) return s.keypad.reset();
    const double a = input->sign * number.range.min, b = input->sign * number.range.max;
    pad.fault = pad.typed + " is not possible here; allowed " + number_text(std::min(a, b)) + " to " + number_text(std::max(a, b)) + " " + std::string(input->unit);
}

void press_key(Keypad& pad, char key) {
    pad.fault.clear();
    std::string& t = pad.typed;
    if (key == '<') {
        if (!t.empty()) t.pop_back();
    } else if (key == '-') {
        if (!t.empty() && t[0] == '-') t.erase(0, 1);
        else t.insert(0, 1, '-');
    } else if (t.size() < k_longest_entry && (key != '.' || t.find('.') == std::string::npos)) {
        t += key;
    }
}

void replace_plan(State& s, Plan plan) {
    begin_change(s);
    s.plan = std::move(plan);
    s.step = Step::Edge;
    s.item = 0;
    s.menu_open = false;
    s.keypad.reset();
    s.last_touched.clear();
    s.camera = {};
    s.shown_case = k_holding;
}

void travel(State& s, std::vector<Plan>& from, std::vector<Plan>& to) {
    if (from.empty()) return;
    to.push_back(s.plan);
    s.plan = std::move(from.back());
    from.pop_back();
    s.keypad.reset();
    s.save_wanted = true;
}

void download_plan(State& s) {
    std::string name;
    for (const char c : s.plan.title) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        const bool capital = c >= 'A' && c <= 'Z';
        name += plain ? c : capital ? static_cast<char>(c - 'A' + 'a') : '-';
    }
    s.download = {(name.empty() ? std::string("plan") : name) + ".guywright.json", write_plan(s.plan)};
    s.menu_open = false;
}

void open_example(State& s) {
    for (const auto& example : assets::examples()) {
        PlanRead read = read_plan(example.text);
        if (read.ok()) return replace_plan(s, std::move(read.plan));
    }
}

struct Applier {
    State& s;

    void operator()(const SetNumber& c) const { set_number(s, c.path, c.value); }
    void operator()(const ConfirmShown& c) const {
        begin_change(s);
        for (const std::string& path : c.paths) mark_measured(s, path);
    }
    void operator()(const SetHaul& c) const {
        if (c.rope >= s.plan.ropes.size() || s.plan.ropes[c.rope].haul.has_value() == c.hauled) return;
        begin_change(s);
        s.plan.ropes[c.rope].haul = c.hauled ? std::optional<Haul>(Haul{}) : std::nullopt;
        const std::string haul = "ropes[" + std::to_string(c.rope) + "].haul.";
        std::erase_if(s.plan.not_measured, [&](const std::string& path) { return path.starts_with(haul); });
        if (c.hauled)
            for (const char* key : {"bearing_deg", "distance_m", "height_m"}) s.plan.not_measured.push_back(haul + key);
    }
    void operator()(const AddGuy&) const {
        begin_change(s);
        add_guy(s.plan);
        s.last_touched = "guys[" + std::to_string(s.plan.guys.size() - 1) + "].bearing_deg";
    }
    void operator()(const RemoveGuy& c) const {
        begin_change(s);
        remove_guy(s.plan, c.guy);
        s.last_touched.clear();
    }
    void operator()(const AddFootTie& c) const {
        if (c.foot >= s.plan.feet.size() || s.plan.feet[c.foot].ties.size() >= k_max_foot_ties) return;
        begin_change(s);
        s.plan.feet[c.foot].ties.push_back({});
    }
    void operator()(const RemoveFootTie& c) const {
        if (c.foot >= s.plan.feet.size() || c.tie >= s.plan.feet[c.foot].ties.size()) return;
        begin_change(s);
        auto& ties = s.plan.feet[c.foot].ties;
        ties.erase(ties.begin() + static_cast<std::ptrdiff_t>(c.tie));
    }
    void operator()(const GoTo& c) const {
        s.step = c.step;
        s.item = c.item;
        s.wanted_path.clear();
        s.menu_open = false;
        s.keypad.reset();
        s.last_touched.clear();
    }
    void operator()(const GoToPath& c) const {
        (*this)(GoTo{screens::step_of(c.path), 0});
        s.wanted_path = c.path;
    }
    void operator()(const Undo&) const { travel(s, s.history.past, s.history.future); }
    void operator()(const Redo&) const { travel(s, s.history.future, s.history.past); }
    void operator()(const NewPlan&) const { replace_plan(s, new_plan()); }
    void operator()(const OpenExample&) const { open_example(s); }
    void operator()(const OpenFile&) const { s.open_wanted = true; s.menu_open = false; }
    void operator()(const SaveFile&) const { download_plan(s); }
    void operator()(const ToggleMenu&) const { s.menu_open = !s.menu_open; }
    void operator()(const NextTheme&) const {
        s.theme = static_cast<widgets::ThemeName>((static_cast<int>(s.theme) + 1) % widgets::k_theme_count);
    }
    void operator()(const TurnScene& c) const { scene::turn(s.camera, {c.dx_px, c.dy_px}); }
    void operator()(const ZoomScene& c) const { s.camera.zoom = std::clamp(s.camera.zoom * c.factor, 0.4F, 4.0F); }
    void operator()(const NextView&) const { s.view = static_cast<scene::View>((static_cast<int>(s.view) + 1) % 3); }
    void operator()(const NextCase&) const {
        if (!s.evaluation.outcomes.empty()) s.shown_case = (s.shown_case + 1) % s.evaluation.outcomes.size();
    }
    void operator()(const OpenKeypad& c) const { s.keypad = Keypad{c.path, {}, {}}; s.last_touched = c.path; }
    void operator()(const PressKey& c) const { if (s.keypad) press_key(*s.keypad, c.key); }
    void operator()(const TakeKeypad&) const { if (s.keypad) take_keypad(s); }
    void operator()(const CloseKeypad&) const { s.keypad.reset(); }
    void operator()(const CloseMessage&) const { s.message.clear(); }
};

std::string faults_message(const PlanRead& read) {
    std::string text = "This file cannot be used. Your plan is as it was.\n";
    const std::size_t told = std::min(read.faults.size(), k_most_faults_told);
    for (std::size_t i = 0; i < told; ++i) text += "\n\u00B7 " + to_string(read.faults[i]);
    const std::size_t more = read.faults.size() - told + read.faults_not_listed;
    if (more > 0) text += "\n\u00B7 and " + std::to_string(more) + " more";
    return text;
}

}  // namespace

void refresh(State& s) {
    s.evaluation = evaluate(s.plan);
    s.check_code = s.evaluation.verdict == Verdict::NotChecked ? std::string() : check_code(s.plan);
    if (s.shown_case >= s.evaluation.outcomes.size()) s.shown_case = k_holding;
}

void apply(State& s, const Command& command) {
    std::visit(Applier{s}, command);
    refresh(s);
}

void end_gesture(State& s) {
    if (!s.before_gesture) return;
    s.history.past.push_back(std::move(*s.before_gesture));
    s.before_gesture.reset();
    s.history.future.clear();
    if (s.history.past.size() > k_most_undos) s.history.past.erase(s.history.past.begin());
    s.save_wanted = true;
}

void open_plan(State& s, std::string_view text) {
    PlanRead read = read_plan(text);
    if (!read.ok()) {
        s.message = faults_message(read);
        return;
    }
    replace_plan(s, std::move(read.plan));
    end_gesture(s);
    refresh(s);
}

State first_state() {
    State s;
    s.plan = new_plan();
    open_example(s);
    s.before_gesture.reset();   // nothing was there before
    refresh(s);
    return s;
}

}  // namespace guywright::app
