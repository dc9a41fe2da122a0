#include "wasm/app/apply.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "engine/codec/check_code.hpp"
#include "engine/plan/numbers.hpp"
#include "wasm/app/advice_edits.hpp"
#include "wasm/app/found_anchors.hpp"
#include "wasm/app/names.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/app/plan_edits.hpp"
#include "wasm/app/practice_steps.hpp"
#include "wasm/app/starters.hpp"
#include "wasm/app/unusable_file.hpp"
#include "wasm/platform/assets.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

constexpr std::size_t k_slice_points = 4;  ///< of the sweep between two looks at the clock: a third of a millisecond on a slow device
constexpr std::size_t k_longest_entry = 9;

void begin_change(State& s) {
    if (!s.before_gesture) s.before_gesture = s.plan;
}

/// False, with nothing changed, where the value is not allowed.
bool set_number(State& s, const std::string& path, double value) {
    if (!may_change(s.practice)) return false;
    Plan changed = s.plan;
    const LessonMover* mover = mover_at(s, path);
    if (lesson_in_hand(s) != nullptr ? mover == nullptr || !move_in_lesson(changed, *mover, value) : !set_measure(changed, path, value)) return false;
    begin_change(s);
    s.plan = std::move(changed);
    mark_measured(s.plan, path);
    s.last_touched = path;
    return true;
}

void take_keypad(State& s) {
    std::string typed = s.keypad->typed;
    std::replace(typed.begin(), typed.end(), '.', language_of(s.speech).decimal_mark);
    s.keypad->fault = enter_shown(s, s.keypad->path, typed);
    if (s.keypad->fault.empty()) s.keypad.reset();
}

/// The reading in hand becomes numbers of the plan. After straight out the bearing itself is still to be taken.
void take_reading(State& s) {
    ReadingInHand& hand = *s.device.reading;
    const auto kind = reading_kind(s.plan, hand.path);
    if (!kind) return s.device.reading.reset();
    Plan changed = s.plan;
    hand.fault = app::take_reading(changed, hand.path, *kind, hand.reader.read(*kind, range::error_deg.max), s.speech);
    if (!hand.fault.empty()) return;
    begin_change(s);
    s.plan = std::move(changed);
    s.last_touched = hand.path;
    hand.reader.forget();
    if (*kind != ReadingKind::StraightOut || hand.path == "edge.compass_out_deg") s.device.reading.reset();
}

/// While the screen is locked only what opens it, and news of the device, come through.
bool passes_lock(const Command& wish) {
    return std::holds_alternative<LookAtLock>(wish) || std::holds_alternative<PressLock>(wish) || std::holds_alternative<AwakeIs>(wish) ||
           std::holds_alternative<DeviceHas>(wish);
}

bool is_mark(char c) { return c == '.' || c == ','; }

void press_key(Keypad& pad, char key) {
    pad.fault.clear();
    std::string& t = pad.typed;
    if (key == '<') {
        if (!t.empty()) t.pop_back();
    } else if (key == '-') {
        if (!t.empty() && t[0] == '-') t.erase(0, 1);
        else t.insert(0, 1, '-');
    } else if (t.size() < k_longest_entry && !(is_mark(key) && std::any_of(t.begin(), t.end(), is_mark))) {
        t += key;
    }
}

/// Gives the plan as it is now to be kept. One that was not kept before goes with all that came before and after it.
void keep(State& s) {
    if (s.practice) return;
    const History& h = s.history;
    Save save{s.document, s.plan.title, h.first(), h.number, h.last(), s.begins, s.untouched, {}};
    if (s.begins) {
        for (std::size_t i = 0; i < h.past.size(); ++i) save.steps.emplace_back(h.first() + i, h.past[i]);
        for (std::size_t i = 0; i < h.future.size(); ++i) save.steps.emplace_back(h.last() - i, h.future[i]);
    }
    save.steps.emplace_back(h.number, canonical_plan_text(s.plan));
    s.begins = false;
    s.saves.push_back(std::move(save));
}

void show_plan(State& s, Plan plan) {
    s.plan = std::move(plan);
    s.step = Step::Edge;
    s.item = 0;
    s.wanted_id.clear();
    s.open_group.clear();
    s.open_parts.clear();
    s.menu_open = false;
    s.keypad.reset();
    s.device.reading.reset();
    s.last_touched.clear();
    s.camera = {};
    s.shown_case = k_holding;
    s.advice_shown = {};
}

/// The plan that the text holds. Without one the person is told why.
std::optional<Plan> usable(State& s, std::string_view text) {
    PlanRead read = read_plan(text);
    if (read.ok()) return std::move(read.plan);
    s.message = unusable_file_told(read, s.speech);
    return std::nullopt;
}

/// Another plan in place of this one, which stays on the list of those kept.
void begin_plan(State& s, Plan plan, bool untouched) {
    end_gesture(s);
    leave_practice(s);
    show_plan(s, std::move(plan));
    s.plans_screen.reset();
    s.history = {};
    ++s.document;
    s.begins = true;
    s.untouched = untouched;
    keep(s);
}

/// The plan is not any more what it was: nor is it what was signed.
void end_signatures(State& s, const Plan& before) {
    if (s.practice) return;
    for (std::string& id : fall_away(s.signatures, before)) s.fallen.push_back(std::move(id));
}

void travel(State& s, Travelled (*step)(History&, Plan&)) {
    end_gesture(s);
    const Plan before = s.plan;
    const Travelled travelled = step(s.history, s.plan);
    if (travelled == Travelled::Unreadable) s.message = say(s.speech, words::k_step_unreadable);
    if (travelled != Travelled::Done) return;
    end_signatures(s, before);
    s.keypad.reset();
    s.device.reading.reset();
    keep(s);
}

/// An example; new_plan() where there is none of that name.
Plan example_plan(std::string_view name, const Speech& speech) {
    for (const auto& example : assets::examples()) {
        if (example.name != name) continue;
        PlanRead read = read_plan(example.text);
        if (!read.ok()) continue;
        name_in_language(read.plan, speech);
        return std::move(read.plan);
    }
    return new_plan(speech);
}

void ask_shelf(State& s, ShelfAct act, std::string id) {
    s.shelf_requests.push_back({act, std::move(id)});
    if (act == ShelfAct::Open) s.plans_screen.reset();
    else if (s.plans_screen && act != ShelfAct::SaveText) s.plans_screen->chosen.clear();
}

/// What was said before is not understood any more, and what was typed was in other units.
void speak_anew(State& s) {
    s.message.clear();
    s.keypad.reset();
    if (s.device.reading) s.device.reading->fault.clear();
}

struct Applier {
    State& s;

    /// Everything plan_edits.hpp knows.
    template <class Wish>
    requires requires(Plan& plan, const Wish& wish, const Speech& speech) { edit(plan, wish, speech); }
    void operator()(const Wish& wish) const {
        Plan changed = s.plan;
        Edited done = edit(changed, wish, s.speech);
        s.message = done.refused;
        if (!done.refused.empty()) return;
        begin_change(s);
        s.plan = std::move(changed);
        s.last_touched = done.show;
        if (!done.show.empty()) s.wanted_id = std::move(done.show);
        if (!done.open.empty()) s.open_group = std::move(done.open);
    }
    /// Everything practice_steps.hpp knows.
    template <class Wish>
    requires requires(State& state, const Wish& wish) { practise(state, wish); }
    void operator()(const Wish& wish) const { practise(s, wish); }
    void operator()(const SetNumber& c) const { set_number(s, c.path, c.value); }
    void operator()(const ConfirmShown& c) const {
        begin_change(s);
        for (const std::string& path : c.paths) mark_measured(s.plan, path);
    }
    void operator()(const GoTo& c) const {
        if (is_practice(c.step) != s.practice.has_value()) return;
        if (s.practice && !reaches(s.practice->stage, c.step)) return;
        if (s.practice && c.step != s.step) go_in_practice(s, c.step);
        if (c.step != s.step) {
            s.open_group.clear();
            s.open_parts.clear();
        }
        s.step = c.step;
        s.item = c.item;
        s.wanted_id.clear();
        s.menu_open = false;
        s.plans_screen.reset();
        s.site_large = false;
        s.keypad.reset();
        s.device.reading.reset();
        s.last_touched.clear();
    }
    void operator()(const GoToItem& c) const {
        if (is_practice(c.step) != s.practice.has_value()) return;
        (*this)(GoTo{c.step, 0});
        s.wanted_id = c.id;
    }
    void operator()(const ShowMore& c) const {
        s.open_group = c.group;
        s.wanted_id = c.id;
    }
    void operator()(const ShowParts& c) const {
        s.open_parts = s.open_parts == c.path ? std::string() : c.path;
        s.wanted_id = "parts " + c.path;
    }
    void operator()(const Undo&) const { travel(s, go_back); }
    void operator()(const Redo&) const { travel(s, go_on); }
    void operator()(const NewPlan&) const { begin_plan(s, new_plan(s.speech), true); }
    void operator()(const OpenExample& c) const { begin_plan(s, example_plan(c.name, s.speech), true); }
    void operator()(const OpenFile&) const {
        s.open_wanted = true;
        s.menu_open = false;
    }
    void operator()(const SaveFile&) const {
        s.download = {s.plan.title, write_plan(s.plan)};
        s.menu_open = false;
    }
    void operator()(const ToggleMenu&) const {
        s.menu_open = !s.menu_open;
        s.menu_page = 0;
    }
    void operator()(const NextMenuPage&) const { ++s.menu_page; }
    void operator()(const ShowPlans&) const {
        s.menu_open = false;
        s.plans_screen = PlansScreen{};
        ask_shelf(s, ShelfAct::List, {});
    }
    void operator()(const ClosePlans&) const { s.plans_screen.reset(); }
    void operator()(const NextPlansPage&) const {
        if (s.plans_screen) ++s.plans_screen->page;
    }
    void operator()(const ChoosePlan& c) const {
        if (s.plans_screen) s.plans_screen->chosen = c.id;
    }
    void operator()(const AskShelf& c) const { ask_shelf(s, c.act, c.id); }
    void operator()(const AskForText& c) const { s.text_wish = text_wish(s.plan, c.path, s.speech); }
    void operator()(const NextTheme&) const {
        s.theme = static_cast<widgets::ThemeName>((static_cast<int>(s.theme) + 1) % widgets::k_theme_count);
        s.settings_changed = true;
    }
    void operator()(const NextLanguage&) const {
        s.speech.tongue = static_cast<Tongue>((static_cast<int>(s.speech.tongue) + 1) % k_tongue_count);
        s.settings_changed = true;
        speak_anew(s);
        name_what_is_practised_on(s);
    }
    void operator()(const NextUnits&) const {
        s.speech.units = s.speech.units == UnitSystem::Metric ? UnitSystem::Imperial : UnitSystem::Metric;
        s.settings_changed = true;
        speak_anew(s);
    }
    void operator()(const SetSettings& c) const {
        s.speech = c.speech;
        s.theme = c.theme;
        speak_anew(s);
        const bool at_the_start = !s.practice && s.begins && s.untouched && s.document == 1;
        if (at_the_start) s.plan = example_plan(k_first_example, s.speech);
    }
    void operator()(const DragScene& c) const { scene::drag(s.camera, s.view, c.room, c.by_px); }
    void operator()(const PinchScene& c) const { scene::pinch(s.camera, c.room, c.from_px, c.to_px, c.factor); }
    void operator()(const ResetView&) const { scene::reset(s.camera, s.view == scene::View::Free); }
    void operator()(const ToggleLargeSite&) const { s.site_large = !s.site_large; }
    void operator()(const NextView&) const { (*this)(SetView{static_cast<scene::View>((static_cast<int>(s.view) + 1) % scene::k_view_count)}); }
    void operator()(const SetView& c) const {
        s.view = c.view;
        scene::reset(s.camera, false);  // each view begins whole
    }
    void operator()(const NextCase&) const {
        if (!s.evaluation.outcomes.empty()) s.shown_case = (s.shown_case + 1) % s.evaluation.outcomes.size();
    }
    void operator()(const ShowCase& c) const {
        if (!s.evaluation.outcomes.empty()) s.shown_case = std::min(c.index, s.evaluation.outcomes.size() - 1);
    }
    void operator()(const ShowGuy& c) const { s.advice_shown.guy = c.guy; }
    void operator()(const ShowTies& c) const { s.advice_shown.holding = c.holding; }
    void operator()(const LookToward& c) const { s.advice_shown.toward = c.way; }
    void operator()(const ShowAnchorSet& c) const { s.advice_shown.anchor_set = c.place; }
    void operator()(const OpenKeypad& c) const {
        s.keypad = Keypad{c.path, {}, {}};
        s.last_touched = c.path;
    }
    void operator()(const PressKey& c) const {
        if (s.keypad) press_key(*s.keypad, c.key);
    }
    void operator()(const TakeKeypad&) const {
        if (s.keypad) take_keypad(s);
    }
    void operator()(const CloseKeypad&) const { s.keypad.reset(); }
    void operator()(const CloseMessage&) const { s.message.clear(); }
    void operator()(const ShowAbout&) const {
        s.about_wanted = true;
        s.menu_open = false;
    }
    void operator()(const ShowText&) const {
        s.text_wanted = true;
        s.menu_open = false;
    }
    void operator()(const ShowPage& c) const {
        s.page_wanted = c.page;
        s.menu_open = false;
    }
    void operator()(const LockScreen&) const {
        s.lock.emplace();
        s.site_large = false;
        s.menu_open = false;
        s.keypad.reset();
        s.device.reading.reset();
    }
    void operator()(const LookAtLock& c) const {
        if (s.lock) s.lock->look(c.touched, c.now_s);
        if (s.lock && s.lock->open()) s.lock.reset();
    }
    void operator()(const PressLock& c) const {
        if (s.lock) s.lock->press(c.place, c.now_s);
        if (s.lock && s.lock->open()) s.lock.reset();
    }
    void operator()(const ToggleAwake&) const {
        const bool wanted = s.device.awake == Awake::Off || s.device.awake == Awake::Refused;
        if (s.device.awake != Awake::Impossible) s.device.awake = wanted ? Awake::Asked : Awake::Off;
    }
    void operator()(const AwakeIs& c) const { s.device.awake = c.awake; }
    void operator()(const DeviceHas& c) const {
        s.device.tilt = c.tilt;
        s.device.compass = c.compass;
    }
    void operator()(const StartReading& c) const {
        s.device.reading = ReadingInHand{c.path};
        s.keypad.reset();
        s.last_touched = c.path;
    }
    void operator()(const DeviceIsHeld& c) const {
        s.device.refused = false;
        if (s.device.reading) s.device.reading->reader.add(c.held, c.now_s);
    }
    void operator()(const DeviceRefuses&) const { s.device.refused = true; }
    void operator()(const TakeReading&) const {
        if (s.device.reading) take_reading(s);
    }
    void operator()(const CloseReading&) const { s.device.reading.reset(); }
};

}  // namespace

void refresh(State& s) {
    s.advisor.reset();  // advice is for one plan
    s.evaluation = evaluate_as_measured(s.plan);
    const Evaluation& e = s.evaluation;
    const bool computed = e.faults.empty() && !e.outcomes.empty() && e.not_measured.empty();
    s.sweep = computed ? std::make_unique<ErrorSweep>(s.plan, e.checks) : nullptr;
    s.check_code.clear();
    if (s.shown_case >= e.outcomes.size()) s.shown_case = k_holding;
    look_at_lesson(s);
}

std::optional<Question> asked(Step step) {
    if (!is_advice(step) || step == Step::Advice) return std::nullopt;
    return static_cast<Question>(static_cast<int>(step) - static_cast<int>(Step::Change));
}

bool is_advising(const State& s) {
    const auto about = asked(s.step);
    const bool judged = !s.sweep && !s.evaluation.outcomes.empty() && s.evaluation.not_measured.empty();
    return about && judged && !(s.advisor && s.advisor->done(*about));
}

bool go_on_advising(State& s, double budget_ms) {
    using Clock = std::chrono::steady_clock;
    if (!is_advising(s)) return false;
    const auto end = Clock::now() + std::chrono::duration<double, std::milli>(budget_ms);
    if (s.advisor && s.advisor->plan() != s.plan) s.advisor.reset();
    if (!s.advisor) s.advisor = std::make_unique<Advisor>(s.plan, s.evaluation);
    const Question about = *asked(s.step);
    const std::size_t before = s.advisor->news(about);
    do s.advisor->advance(about);
    while (!s.advisor->done(about) && Clock::now() < end);
    return s.advisor->news(about) != before;
}

void go_on_checking(State& s, double budget_ms) {
    using Clock = std::chrono::steady_clock;
    if (!s.sweep) return;
    const auto end = Clock::now() + std::chrono::duration<double, std::milli>(budget_ms);
    do s.sweep->advance(k_slice_points);
    while (!s.sweep->done() && Clock::now() < end);
    if (!s.sweep->done()) return;
    take_in(s.evaluation, *s.sweep);
    s.sweep.reset();
    settle_answer(s);
    s.check_code = s.practice || s.evaluation.verdict == Verdict::NotChecked ? std::string() : check_code(s.plan);
    look_at_lesson(s);
}

void apply(State& s, const std::vector<Command>& wishes) {
    if (wishes.empty()) return;
    const Plan before = s.plan;
    const bool practised = s.practice.has_value();
    for (const Command& wish : wishes)
        if ((!s.lock || passes_lock(wish)) && (!s.practice || passes_practice(wish, s.practice->stage))) std::visit(Applier{s}, wish);
    if (s.plan != before || s.practice.has_value() != practised) refresh(s);  // there and back, it has its check code again
}

void end_gesture(State& s) {
    if (!s.before_gesture) return;
    const Plan before = std::move(*s.before_gesture);
    s.before_gesture.reset();
    if (before == s.plan) return;  // there and back: nothing to undo
    end_signatures(s, before);
    if (lesson_in_hand(s) != nullptr) return look_at_lesson(s);  // begun anew, not undone
    remember(s.history, before);
    if (!s.practice) s.untouched = false;
    keep(s);
}

void cancel_gesture(State& s) {
    if (!s.before_gesture) return;
    s.plan = std::move(*s.before_gesture);
    s.before_gesture.reset();
    refresh(s);
}

std::string enter_shown(State& s, const std::string& path, const std::string& text) {
    const Input* input = find_input(path);
    const std::optional<Measure> number = measure_at(s.plan, path);
    if (input == nullptr || !number) return std::string(say(s.speech, words::k_number_gone));
    if (s.lock) return std::string(say(s.speech, words::k_is_locked));
    const auto shown = typed_number(text);
    if (!shown) return say(s.speech, words::k_type_first, {{"{number}", shown_number(*input, s.speech, number->value)}});
    if (set_number(s, path, scale_of(*input, s.speech).kept(*shown))) return {};
    return say(s.speech, words::k_not_possible, {{"{value}", text}, {"{allowed}", allowed_text(*input, s.speech, range_in_hand(s, path, number->range))}});
}

void open_plan(State& s, std::string_view text) {
    if (std::optional<Plan> plan = usable(s, text)) {
        begin_plan(s, std::move(*plan), false);
        refresh(s);
    }
}

unsigned resume(State& s, std::string_view text, History history, bool untouched) {
    PlanRead read = read_plan(text);
    if (!read.ok()) return 0;
    end_gesture(s);
    leave_practice(s);
    show_plan(s, std::move(read.plan));
    s.history = std::move(history);
    s.begins = false;
    s.untouched = untouched;
    refresh(s);
    return ++s.document;
}

void open_copy(State& s, std::string_view text) {
    if (std::optional<Plan> plan = usable(s, text)) {
        plan->title = copy_title(plan->title, s.shelf.plans, s.speech);
        begin_plan(s, std::move(*plan), false);
        refresh(s);
    }
}

std::string enter_text(State& s, const SetText& wish) {
    if (s.lock) return std::string(say(s.speech, words::k_is_locked));
    if (wish.path == k_site_number_path) return enter_site_number(s, wish.value);
    end_gesture(s);
    apply(s, {wish});
    end_gesture(s);
    return std::exchange(s.message, std::string());
}

State first_state() {
    State s;
    s.plan = example_plan(k_first_example, s.speech);  // kept with its first change
    refresh(s);
    return s;
}

}  // namespace guywright::app
