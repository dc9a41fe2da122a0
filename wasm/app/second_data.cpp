#include "wasm/app/second_data.hpp"
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "engine/advice/tuning.hpp"
#include "engine/codec/check_code.hpp"
#include "engine/codec/report.hpp"
#include "engine/verdict/second_check.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/app/json_text.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/words/second.hpp"

namespace guywright::app {
namespace {

constexpr std::size_t k_longest_repeated = 24;  ///< characters of what was typed that a message repeats

/// With as few digits as say it, thousandths at most.
std::string few_digits(const Speech& speech, double v) {
    const double tidy = std::round(v * 1000.0) / 1000.0;
    return short_number(speech, tidy == 0.0 ? 0.0 : tidy);
}

/// One measurement as it is asked for: its words, and how a value of the plan is shown. What no slider has goes by its path and the units of the plan.
class Asked {
public:
    Asked(const Speech& speech, const Plan& plan, std::string path, const Range& range)
        : speech_(speech),
          path_(std::move(path)),
          range_(range),
          input_(find_input(path_)),
          scale_(input_ != nullptr ? scale_of(*input_, speech) : Scale{range.unit, 1.0, 1.0, {}}) {
        label_ = named(plan, std::string(input_ != nullptr ? say(speech, input_->label) : std::string_view(path_)));
    }

    [[nodiscard]] double kept(double shown) const { return scale_.kept(shown); }
    [[nodiscard]] std::string value_text(double kept_value) const { return in_unit(few_digits(speech_, scale_.shown(kept_value))); }
    [[nodiscard]] std::string width_text(double kept_width) const { return in_unit(few_digits(speech_, kept_width * scale_.per_kept)); }
    [[nodiscard]] Json json() const {
        return {{"path", path_},       {"label", label_},      {"how", input_ != nullptr ? how_text(*input_, speech_) : std::string()},
                {"unit", scale_.unit}, {"allowed", allowed()}, {"signed", range_.min < 0.0}};
    }
    [[nodiscard]] const std::string& label() const { return label_; }
    [[nodiscard]] std::string told(const Said& text, const std::string& typed) const {
        return say(speech_, text, {{"{label}", label_}, {"{typed}", printable(typed, k_longest_repeated)}, {"{allowed}", allowed()}});
    }

private:
    [[nodiscard]] std::string in_unit(std::string number) const {
        return input_ != nullptr ? app::with_unit(*input_, speech_, std::move(number)) : guywright::with_unit(std::move(number), scale_.unit);
    }
    [[nodiscard]] std::string allowed() const {
        const AllowedEnds ends =
            input_ != nullptr ? allowed_ends(*input_, speech_, range_) : AllowedEnds{few_digits(speech_, range_.min), few_digits(speech_, range_.max)};
        return say(speech_, words::k_asked_range, {{"{from}", ends.least}, {"{to}", in_unit(ends.most)}});
    }
    [[nodiscard]] std::string named(const Plan& plan, const std::string& what) const {
        const std::size_t i = index_in(path_);
        const auto of = [&](const Said& text, const std::string& name) { return say(speech_, text, {{"{what}", what}, {"{name}", name}}); };
        if (path_.starts_with("guys[") && i < plan.guys.size()) return of(words::k_asked_of_guy, plan.guys[i].name);
        if (path_.starts_with("ropes[") && i < plan.ropes.size()) return of(words::k_asked_of_rope, plan.ropes[i].name);
        return path_.find('[') != std::string::npos && plan.frame.legs.size() > 1 ? of(words::k_asked_of_leg, std::to_string(i + 1)) : what;
    }

    const Speech& speech_;
    std::string path_;
    Range range_;
    const Input* input_;
    Scale scale_;
    std::string label_;
};

struct Entries {
    bool compare = false;
    std::vector<std::pair<std::string, std::string>> typed;  ///< path, text
};

Entries read_entries(std::string_view json) {
    const Json in = Json::parse(json, nullptr, false);
    Entries out;
    if (!in.is_object()) return out;
    out.compare = in.value("compare", Json()) == true;
    if (const auto typed = in.find("typed"); typed != in.end() && typed->is_object())
        for (const auto& [path, text] : typed->items())
            if (text.is_string()) out.typed.emplace_back(path, text.get<std::string>());
    return out;
}

/// What was typed, as readings; and what of it cannot be.
struct Readings {
    std::vector<SecondReading> good;
    Json faults = Json::array();

    void add(const Asked& asked, const std::string& path, const std::string& typed, const Range& range) {
        const std::optional<double> shown = typed_number(typed);
        const bool empty = typed.find_first_not_of(' ') == std::string::npos;
        if (empty) refuse(path, asked.told(words::k_no_entry, typed));
        else if (!shown) refuse(path, asked.told(words::k_no_number, typed));
        else if (!range.holds(asked.kept(*shown))) refuse(path, asked.told(words::k_out_of_range, typed));
        else good.push_back({path, asked.kept(*shown)});
    }
    void refuse(const std::string& path, std::string message) { faults.push_back({{"path", path}, {"message", std::move(message)}}); }
};

Readings readings_of(const State& s, const Entries& entries) {
    const std::vector<std::string> asked_for = critical_measurements(s.evaluation);
    Readings out;
    for (const auto& [path, typed] : entries.typed) {
        const std::optional<NumberAt> number = number_at(s.plan, path);
        const bool is_asked = std::find(asked_for.begin(), asked_for.end(), path) != asked_for.end();
        if (!number || !is_asked) out.refuse(path, say(s.speech, words::k_not_asked, {{"{label}", path}}));
        else out.add(Asked(s.speech, s.plan, path, number->range), path, typed, number->range);
    }
    return out;
}

Json verdict_json(const Speech& speech, Verdict v) { return {{"key", std::string(k_english.of(v))}, {"text", std::string(language_of(speech).of(v))}}; }

/// The rule that governs the worse of the two plans; nothing where both are GO.
std::string why_not(const State& s, const SecondCheck& c) {
    if (c.worse == Verdict::Go) return {};
    if (s.evaluation.verdict != Verdict::Go) return screens::reason(s);
    const Evaluation& e = c.with_seconds;
    return e.closest.empty() ? std::string() : screens::with_degree_signs(sentence(screens::telling(s), c.seconds, e, e.closest.front()));
}

Json row_json(const State& s, const ReadTwice& r) {
    const Range range = number_at(s.plan, r.path)->range;
    const Asked asked(s.speech, s.plan, r.path, range);
    return {{"path", r.path},
            {"label", asked.label()},
            {"first", asked.value_text(r.first)},
            {"second", asked.value_text(r.second)},
            {"difference", asked.width_text(guywright::detail::apart(r.first, r.second, range.error))},
            {"tolerance", "\u00B1 " + asked.width_text(r.allowed)},
            {"agrees", r.agrees}};
}

Json compared_json(const State& s, const std::vector<SecondReading>& readings) {
    const SecondCheck c = second_check(s.plan, s.evaluation, readings);
    Json out{{"verdict", verdict_json(s.speech, c.worse)},
             {"of_first", verdict_json(s.speech, s.evaluation.verdict)},
             {"of_second", verdict_json(s.speech, c.of_second)}};
    out["why"] = why_not(s, c);
    out["agrees"] = c.agrees();
    out["may_be_signed"] = c.agrees() && c.worse == Verdict::Go;
    for (const char* key : {"rows", "readings"}) out[key] = Json::array();
    for (const ReadTwice& r : c.readings) {
        out["rows"].push_back(row_json(s, r));
        out["readings"].push_back({{"path", r.path}, {"first", r.first}, {"second", r.second}, {"allowed", r.allowed}, {"agrees", r.agrees}});
    }
    return out;
}

}  // namespace

std::string second_json(const State& state) {
    const SheetWords& words = language_of(state.speech).sheet;
    Json out{{"language", language_of(state.speech).code}, {"checking", state.sweep != nullptr}, {"document", state.document}, {"title", state.plan.title}};
    out["text"] = canonical_plan_text(state.plan);
    out["check_code"] = check_code_of(out["text"].get_ref<const std::string&>());
    out["measurements"] = Json::array();
    if (state.evaluation.verdict != Verdict::NotChecked)
        for (const std::string& path : critical_measurements(state.evaluation))
            out["measurements"].push_back(Asked(state.speech, state.plan, path, number_at(state.plan, path)->range).json());
    out["preload"] = {{"title", words.preload}, {"note", words.preload_note}, {"items", words.preload_list}, {"people", {words.rigger, words.officer}}};
    return text_of(out);
}

std::string second_entries_json(const State& state, std::string_view json) {
    const Entries entries = read_entries(json);
    Readings readings = readings_of(state, entries);
    const bool whole =
        readings.faults.empty() && !state.sweep && readings.good.size() == critical_measurements(state.evaluation).size() && !readings.good.empty();
    Json out{{"faults", std::move(readings.faults)}, {"compared", nullptr}};
    if (entries.compare && whole) out["compared"] = compared_json(state, readings.good);
    return text_of(out);
}

std::string report_text(const State& state) {
    const Evaluation& e = state.evaluation;
    return write_report(state.plan, e, e.verdict == Verdict::NotChecked ? Tuning{} : tune(state.plan, e));
}

}  // namespace guywright::app
