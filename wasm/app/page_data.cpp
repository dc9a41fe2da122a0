#include "wasm/app/page_data.hpp"
#include <algorithm>
#include <utility>
#include <vector>

#include "engine/advice/tuning.hpp"
#include "engine/codec/rig_sheet.hpp"
#include "engine/codec/share_words.hpp"
#include "wasm/app/json_text.hpp"
#include "wasm/app/unusable_file.hpp"
#include "wasm/screens/reasons.hpp"

namespace guywright::app {
namespace {

const ShareWords& share_words(const Speech& speech) { return speech.tongue == Tongue::French ? k_french_share : k_english_share; }

std::string_view name_of(ShareState state) {
    switch (state) {
        case ShareState::Whole: return "whole";
        case ShareState::Waiting: return "waiting";
        case ShareState::Foreign: return "foreign";
        case ShareState::Damaged: return "damaged";
        case ShareState::Newer: return "newer";
    }
    return "";
}

std::vector<std::string> lines_in(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

void add_plan(Json& out, const Plan& plan) {
    out["title"] = plan.title;
    out["check_code"] = check_code(plan);
    out["plan"] = write_plan(plan);
}

}  // namespace

std::string share_json(const State& state) {
    Json out{{"language", language_of(state.speech).code},
             {"verdict", language_of(state.speech).of(state.evaluation.verdict)},
             {"checking", state.sweep != nullptr}};
    add_plan(out, state.plan);
    out["codes"] = share_texts(state.plan);
    return text_of(out);
}

std::string read_codes_json(const Speech& speech, std::string_view lines) {
    const ShareRead read = read_share(lines_in(lines));
    Json out{{"language", language_of(speech).code},
             {"state", name_of(read.state)},
             {"message", share_message(share_words(speech), read)},
             {"have", read.have},
             {"total", read.total}};
    if (read.state == ShareState::Whole) add_plan(out, read.plan);
    return text_of(out);
}

std::string look_at_json(const Speech& speech, std::string_view plan_text) {
    const PlanRead read = read_plan(plan_text);
    Json out{{"language", language_of(speech).code},
             {"state", read.ok() ? "whole" : "damaged"},
             {"message", read.ok() ? "" : unusable_file_told(read, speech)},
             {"have", Json::array()},
             {"total", 0}};
    if (read.ok()) add_plan(out, read.plan);
    return text_of(out);
}

std::string sheet_json(const State& state) {
    const Evaluation& e = state.evaluation;
    const Tuning tuning = e.verdict == Verdict::NotChecked ? Tuning{} : tune(state.plan, e);
    Json out = rig_sheet(screens::telling(state), state.plan, e, tuning);
    out["language"] = language_of(state.speech).code;
    out["checking"] = state.sweep != nullptr;
    out["codes"] = share_texts(state.plan);
    return screens::with_degree_signs(text_of(out));
}

}  // namespace guywright::app
