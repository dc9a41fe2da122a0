#include "wasm/app/text_view.hpp"

#include "wasm/app/apply.hpp"
#include "wasm/app/found_anchors.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/app/json_text.hpp"
#include "wasm/app/lesson_told.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/screens/builder.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/screens/reading.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/widgets/verdict_mark.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/menu.hpp"

namespace guywright::app {
namespace {

using screens::Spoken;

constexpr const char* k_right_as_it_stands = "confirm ";
constexpr const char* k_from_device = "take ";

/// A Ui that is never drawn with: items are asked what they say only.
struct Unseen {
    ImDrawList list{ImGui::GetDrawListSharedData()};
    widgets::Mirror mirror;
    widgets::Hand hand;
    widgets::CutTexts cut;
    std::vector<Command> wishes;
    widgets::Ui ui;

    Unseen(const State& s, const Fonts& fonts) : ui{list, fonts, widgets::theme(s.theme), mirror, hand, cut, wishes} {}
};

screens::StepItems everything(const widgets::Ui& ui, const State& s, Step step) {
    constexpr float any_width_px = 400.0F;
    return screens::items_of(ui, s, step, any_width_px, true);
}

std::string colour(ImU32 c) {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", c & 255U, (c >> 8U) & 255U, (c >> 16U) & 255U);
    return text;
}

Json colours(const widgets::Theme& t) {
    return {{"field", colour(t.field)},           {"ink", colour(t.ink)},     {"raised", colour(t.raised)},       {"action", colour(t.action)},
            {"action-ink", colour(t.action_ink)}, {"no-go", colour(t.no_go)}, {"no-go-ink", colour(t.no_go_ink)}, {"go", colour(t.go)}};
}

Json verdict_of(const State& s) {
    const screens::Headline h = screens::headline(s);
    return {{"verdict", h.key},
            {"verdict_shown", h.word},
            {"reason", h.why},
            {"checking", s.sweep != nullptr},
            {"check_code", s.check_code},
            {"locked", s.lock.has_value()},
            {"colours", colours(widgets::theme(s.theme))}};
}

Json key(const std::string& id, const std::string& label, bool enabled = true) {
    return {{"kind", "key"}, {"id", id}, {"label", label}, {"on", nullptr}, {"enabled", enabled}};
}
Json text(const std::string& label, const std::string& value = {}) { return {{"kind", "text"}, {"label", label}, {"value", value}}; }

/// "Allowed 5 to 120 degrees, entered within \u00B1 2\u00B0."
std::string range_of(const State& s, const std::string& path, const Input& input, const Measure& number, const std::string& unit) {
    const AllowedEnds ends = allowed_ends(input, s.speech, range_in_hand(s, path, number.range));
    const std::string error = error_text(input, s.speech, s.plan.tolerances, number.range, number.value), spaced = unit.empty() ? unit : " " + unit;
    if (error.empty()) return said(s, words::k_range, {{"{least}", ends.least}, {"{most}", ends.most}, {"{unit}", spaced}});
    return said(s, words::k_range_within, {{"{least}", ends.least}, {"{most}", ends.most}, {"{unit}", spaced}, {"{error}", error}});
}

Json number_of(const State& s, const std::string& path) {
    const Measure number = *measure_at(s.plan, path);
    const Input& input = *find_input(path);
    const std::string sign(scale_of(input, s.speech).unit), unit = input.unit == "deg" ? said(s, words::k_degrees) : sign;
    const auto kind = reading_kind(s.plan, path);
    const LessonMover* mover = mover_at(s, path);
    return {{"kind", "number"},
            {"id", path},
            {"label", mover != nullptr ? mover_told(s, *mover) : said(s, input.label)},
            {"how", how_text(input, s.speech)},
            {"unit", unit},
            {"value", shown_number(input, s.speech, number.value)},
            {"range", range_of(s, path, input, number, unit)},
            {"measured", is_measured(s.plan, path)},
            {"device", kind && s.device.can(*kind)}};
}

Json entry_of(const State& s, const Spoken& said) {
    if (said.kind == Spoken::Kind::Number) return number_of(s, said.id);
    if (said.kind == Spoken::Kind::Text) return text(said.label, said.value);
    Json entry = key(said.id, said.label);
    if (said.on) entry["on"] = *said.on;
    return entry;
}

Json section_of(const State& s, const screens::StepItems& step, Step of) {
    Json groups = Json::array();
    for (std::size_t g = 0; g < step.groups.size(); ++g) {
        Json entries = Json::array();
        for (const screens::Item& item : step.items)
            for (const Spoken& said : item.spoken)
                if (item.group == g) entries.push_back(entry_of(s, said));
        groups.push_back({{"title", step.groups[g].title}, {"entries", std::move(entries)}});
    }
    return {{"id", screens::key_of(of)}, {"title", screens::title_of(s, of)}, {"groups", std::move(groups)}};
}

/// The steps that stand below one another: those of the plan, the way to advice, and the question asked last.
std::vector<Step> steps_shown(const State& s) {
    if (s.practice) return {s.step};
    std::vector<Step> steps;
    for (int i = 0; i < k_step_count; ++i) steps.push_back(static_cast<Step>(i));
    steps.push_back(Step::Advice);
    if (asked(s.step)) steps.push_back(s.step);
    return steps;
}

Json lock_section(const State& s) {
    const bool first_done = s.lock->first_done();
    const Json entries = {text(said(s, words::k_locked_how)), key("lock 1", said(s, words::k_open_first), !first_done),
                          key("lock 2", said(s, words::k_open_second), first_done)};
    return {{"id", "Locked"}, {"title", said(s, words::k_locked)}, {"groups", {{{"title", ""}, {"entries", entries}}}}};
}

Json reading_section(const State& s) {
    const screens::ReadingWords words = screens::reading_words(s);
    Json entries = Json::array();
    for (const std::string* line : {&words.how, &words.value, &words.state, &words.effect})
        if (!line->empty()) entries.push_back(text(*line));
    entries.push_back(key("reading take", words.take, words.can_take));
    entries.push_back(key("reading cancel", words.cancel));
    return {{"id", "Reading"}, {"title", words.title}, {"groups", {{{"title", ""}, {"entries", entries}}}}};
}

Json plans_section(const State& s) {
    const screens::PlansWords words = screens::plans_words(s);
    Json entries = Json::array();
    for (const std::string& line : words.lines) entries.push_back(text(line));
    for (const screens::Key& k : words.keys) entries.push_back(key(k.id, k.label));
    return {{"id", "Plans"}, {"title", words.title}, {"groups", {{{"title", ""}, {"entries", entries}}}}};
}

/// Of the menu what does something for somebody who reads; the steps all stand below one another anyway.
bool is_for_readers(const std::string& id) { return !id.starts_with("step ") && id != "advice" && id != "close menu" && id != "text"; }

Json keys_of(const State& s) {
    Json keys = Json::array({key("undo", said(s, words::k_undo), !s.history.past.empty())});
    if (s.shown_case < seen(s).outcomes.size())
        keys.push_back(key("case", said(s, words::k_case_shown, {{"{case}", case_name(language_of(s.speech), s.plan, seen(s).outcomes[s.shown_case].setup)}})));
    for (const screens::Key& e : screens::menu_keys(s))
        if (is_for_readers(e.id)) keys.push_back(key(e.id, e.label, e.enabled));
    return keys;
}

/// Keys that stand on no step and in no menu.
std::optional<Command> wish_of_its_own(const std::string& id, double now_s) {
    const auto after = [&](std::string_view beginning) { return id.substr(beginning.size()); };
    if (id == "undo") return Undo{};
    if (id == "case") return NextCase{};
    if (id == "lock 1") return PressLock{Lock::Touched::First, now_s};
    if (id == "lock 2") return PressLock{Lock::Touched::Second, now_s};
    if (id == "reading take") return TakeReading{};
    if (id == "reading cancel") return CloseReading{};
    if (id == "close message") return CloseMessage{};
    if (id.starts_with(k_right_as_it_stands)) return ConfirmShown{{after(k_right_as_it_stands)}};
    if (id.starts_with(k_from_device)) return StartReading{after(k_from_device)};
    return std::nullopt;
}

}  // namespace

std::string verdict_json(const State& s) { return text_of(verdict_of(s)); }

std::string text_json(const State& s, const Fonts& fonts) {
    Unseen unseen(s, fonts);
    Json out = verdict_of(s);
    out["title"] = s.plan.title;
    out["message"] = s.message.empty() ? Json() : Json{{"text", s.message}, {"key", key("close message", said(s, words::k_have_read))}};
    out["notes"] = language_of(s.speech).card.notes;
    Json sections = Json::array();
    if (s.lock) sections.push_back(lock_section(s));
    if (s.device.reading) sections.push_back(reading_section(s));
    if (s.plans_screen) sections.push_back(plans_section(s));
    for (const Step step : steps_shown(s)) sections.push_back(section_of(s, everything(unseen.ui, s, step), step));
    out["sections"] = std::move(sections);
    out["keys"] = keys_of(s);
    return text_of(out);
}

std::optional<Command> wish_of(const std::string& id, const State& s, const Fonts& fonts, double now_s) {
    if (auto wish = wish_of_its_own(id, now_s)) return wish;
    for (screens::Key& e : screens::menu_keys(s))
        if (e.id == id && e.enabled) return std::move(e.command);
    if (s.plans_screen)
        for (screens::Key& k : screens::plans_words(s).keys)
            if (k.id == id) return std::move(k.command);
    Unseen unseen(s, fonts);
    for (const Step step : steps_shown(s))
        for (const screens::Item& item : everything(unseen.ui, s, step).items)
            for (const Spoken& said : item.spoken)
                if (said.id == id && said.command) return said.command;
    return std::nullopt;
}

}  // namespace guywright::app
