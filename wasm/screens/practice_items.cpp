#include "wasm/screens/practice_items.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/codec/practice_sentences.hpp"
#include "engine/plan/numbers.hpp"
#include "engine/practice/what_if.hpp"
#include "wasm/app/lesson_told.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/words/card.hpp"
#include "wasm/words/items.hpp"
#include "wasm/words/lessons.hpp"
#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

namespace w = words::practice;
using app::Step;
using widgets::ButtonLook;

const app::SiteInHand& site_of(const Builder& b) { return b.state().practice->site; }
std::string degrees_told(const Builder& b, double deg) { return app::number(b.state().speech, deg, 0) + "\u00B0"; }
std::string verdict_told(const Builder& b, bool go) { return std::string(language_of(b.state().speech).of(go ? Verdict::Go : Verdict::NoGo)); }
std::string level_and_site(const Builder& b) {
    return b.said(w::k_level_and_site, {{"{level}", std::to_string(site_of(b).level)}, {"{seed}", std::to_string(site_of(b).seed)}});
}

void add_levels(Builder& b) {
    const app::SiteInHand& site = site_of(b);
    std::vector<Key> keys;
    for (int level = k_first_site_level; level <= k_last_site_level; ++level)
        keys.push_back({"level " + std::to_string(level), std::to_string(level), app::SetSite{site.seed, level},
                        level == site.level ? ButtonLook::Chosen : ButtonLook::Plain});
    b.text(b.said(w::k_level_words[static_cast<std::size_t>(site.level - k_first_site_level)]), &app::Fonts::strong);
    b.keys(std::move(keys));
}

void choice_items(Builder& b) {
    const app::SiteInHand& site = site_of(b);
    const bool drawing = b.state().practice->drawing != nullptr;
    b.group(b.said(w::k_practice));
    add_levels(b);
    b.keys({{"site before", "\u2212", app::SetSite{site.seed - 1, site.level}, ButtonLook::Plain, site.seed > 1},
            {"site number", b.said(w::k_site_number, {{"{n}", std::to_string(site.seed)}}), app::AskSiteNumber{}},
            {"site after", "+", app::SetSite{site.seed + 1, site.level}, ButtonLook::Plain, site.seed < k_last_site_seed}});
    if (b.state().practice->none_found) b.caution(b.said(w::k_none_found));
    b.keys({{"draw site", b.said(drawing ? w::k_drawing : w::k_draw), app::DrawSite{}, ButtonLook::Action, !drawing}});
    b.keys({{"course", b.said(words::lessons::k_course), app::ShowCourse{}},
            {"progress", b.said(w::k_progress), app::GoTo{Step::Score, 0}},
            {"leave practice", b.said(w::k_leave), app::LeavePractice{}}});
}

void level_score(Builder& b, int level, const app::LevelScore& score) {
    const std::string all = std::to_string(score.sites);
    const auto right = [&](unsigned n) { return b.said(w::k_right_of, {{"{n}", std::to_string(n)}, {"{all}", all}}); };
    b.rows({{b.said(w::k_verdict_asked), right(score.verdict)}, {b.said(w::k_guy_asked), right(score.guy)}, {b.said(w::k_angle_asked), right(score.angle)}},
           b.said(w::k_level, {{"{n}", std::to_string(level)}}) + ": " + say(b.state().speech, w::k_sites_answered, score.sites));
}

void score_items(Builder& b) {
    const app::Progress& progress = b.state().progress;
    b.group(b.said(w::k_progress));
    if (progress.highest() == 0) b.text(b.said(w::k_none_answered), &app::Fonts::text);
    else b.text(b.said(w::k_highest, {{"{n}", std::to_string(progress.highest())}}), &app::Fonts::text);
    for (int level = k_first_site_level; level <= k_last_site_level; ++level) {
        const app::LevelScore& score = progress.levels[static_cast<std::size_t>(level - k_first_site_level)];
        if (score.sites > 0) level_score(b, level, score);
    }
}

/// The numbers of a site, each with its slider's name.
void add_numbers(Builder& b) {
    const Plan& plan = b.plan();
    std::string shown;
    std::vector<Row> rows;  // of one guy, rope or foot
    const auto heading = [&](const std::string& path) -> std::string {
        const std::size_t i = app::index_in(path);
        if (path.starts_with("guys[")) return b.said(words::k_force_of_guy, {{"{name}", plan.guys[i].name}});
        if (path.starts_with("ropes[")) return b.said(words::k_rope) + ": " + plan.ropes[i].name;
        if (path.starts_with("feet[")) return b.said(words::k_foot) + (plan.feet.size() > 1 ? " " + std::to_string(i + 1) : "");
        return title_of(b.state(), step_of(path));
    };
    for_each_number(plan, [&](const std::string& path, double value, const Range&) {
        const app::Input* input = app::find_input(path);
        if (input == nullptr || step_of(path) > Step::Margins) return;
        const std::string title = heading(path);
        if (title != shown) b.rows(std::exchange(rows, {}), shown);
        shown = title;
        const bool one_of_legs =
            plan.frame.legs.size() > 1 && path.starts_with("frame.") && path.find('[') != std::string::npos && !path.starts_with("frame.hobbles");
        const std::string label = b.said(input->label) + (one_of_legs ? " " + std::to_string(app::index_in(path) + 1) : "");
        rows.push_back({label, app::shown_value(*input, b.state().speech, value)});
    });
    b.rows(rows, shown);
}

void site_items(Builder& b) {
    const bool answered = !is_blind(b.state().practice);
    b.group(level_and_site(b));
    b.text(b.said(w::k_look_first, {{"{place}", b.plan().title}}), &app::Fonts::text);
    if (answered) b.keys({{"to answer", b.said(w::k_to_answer), app::GoTo{Step::Answer, 0}, ButtonLook::Action}});
    else b.keys({{"predict", b.said(w::k_to_predictions), app::GoTo{Step::SayVerdict, 0}, ButtonLook::Action}});
    b.group(b.said(w::k_numbers));
    add_numbers(b);
}

ButtonLook chosen_if(bool chosen) { return chosen ? ButtonLook::Chosen : ButtonLook::Plain; }

void verdict_items(Builder& b) {
    const app::SiteInHand& site = site_of(b);
    b.group(b.said(w::k_will_it_stand));
    b.text(b.said(w::k_stand_how), &app::Fonts::text);
    b.keys({{"say go", verdict_told(b, true), app::SayGo{true}, chosen_if(site.said_go && site.said.go)},
            {"say no-go", verdict_told(b, false), app::SayGo{false}, chosen_if(site.said_go && !site.said.go)}});
}

void guy_items(Builder& b) {
    const app::SiteInHand& site = site_of(b);
    b.group(b.said(w::k_which_guy));
    b.text(b.said(w::k_guy_how), &app::Fonts::text);
    for (std::size_t i = 0; i < b.plan().guys.size(); i += 2) {
        std::vector<Key> keys;
        for (std::size_t k = i; k < std::min(i + 2, b.plan().guys.size()); ++k)
            keys.push_back({"say guy " + std::to_string(k), b.plan().guys[k].name, app::SayHardest{k}, chosen_if(site.said_guy && site.said.guy == k)});
        b.keys(std::move(keys));
    }
}

void angle_items(Builder& b) {
    const double at_deg = site_of(b).said.angle_deg;
    const app::Said& how = b.plan().frame.kind == FrameKind::Monopod  ? w::k_angle_how_one
                           : b.plan().frame.kind == FrameKind::AFrame ? w::k_angle_how_two
                                                                      : w::k_angle_how_three;
    b.group(b.said(w::k_how_far));
    b.text(b.said(how, {{"{n}", app::number(b.state().speech, k_angle_counts_deg, 0)}}), &app::Fonts::text);
    b.text(degrees_told(b, at_deg), &app::Fonts::large);
    const auto by = [&](const char* id, const char* label, double deg) { return Key{id, label, app::SayAngle{at_deg + deg}}; };
    b.keys({by("angle -10", "\u221210", -10.0), by("angle -1", "\u22121", -1.0), by("angle +1", "+1", 1.0), by("angle +10", "+10", 10.0)});
    const bool ready = site_of(b).said_go && site_of(b).said_guy;
    b.keys({{"show answer", b.said(w::k_show_answer), app::ShowAnswer{}, ButtonLook::Action, ready}});
}

void compared(Builder& b, const app::Said& asked, bool right, const std::string& said, const std::string& is) {
    b.rows({{b.said(w::k_you_and_true, {{"{said}", said}, {"{true}", is}}), b.said(right ? w::k_right : w::k_wrong)}}, b.said(asked));
}

void add_ways_on(Builder& b) {
    b.keys({{"why", b.said(w::k_why), app::GoTo{Step::Why, 0}, ButtonLook::Action},
            {"what if", b.said(w::k_what_if), app::GoTo{Step::WhatIf, 0}},
            {"next site", b.said(w::k_next_site), app::NextSite{}}});
}

void answer_items(Builder& b) {
    const app::SiteInHand& site = site_of(b);
    b.group(b.said(w::k_answer) + " \u00B7 " + b.said(w::k_practice_sign));
    if (!site.answer) return b.text(b.said(w::k_still_checking), &app::Fonts::text);
    const SiteAnswer& a = *site.answer;
    compared(b, w::k_verdict_asked, site.marks.verdict, verdict_told(b, site.said.go), verdict_told(b, a.verdict == Verdict::Go));
    compared(b, w::k_guy_asked, site.marks.guy, b.plan().guys[site.said.guy].name, b.plan().guys[a.hardest_guy].name);
    compared(b, w::k_angle_asked, site.marks.angle, degrees_told(b, site.said.angle_deg), degrees_told(b, a.angle_deg));
    add_ways_on(b);
    b.text(b.said(w::k_practice_only), &app::Fonts::text);
}

void why_items(Builder& b) {
    const app::State& s = b.state();
    const app::SiteInHand& site = site_of(b);
    if (site.explanation.empty() || s.evaluation.outcomes.empty()) return b.text(b.said(w::k_still_checking), &app::Fonts::text);
    const std::size_t at = std::min(site.spoken, site.explanation.size() - 1), count = site.explanation.size();
    b.group(b.said(w::k_sentence_of, {{"{n}", std::to_string(at + 1)}, {"{all}", std::to_string(count)}}));
    b.text(with_degree_signs(sentence(telling(s), s.plan, s.evaluation, site.explanation[at])), &app::Fonts::text);
    b.keys({{"sentence before", b.said(w::k_sentence_before), app::SpeakOf{at - 1}, ButtonLook::Plain, at > 0},
            {"sentence after", b.said(w::k_sentence_after), app::SpeakOf{at + 1}, ButtonLook::Action, at + 1 < count}});
}

void what_if_items(Builder& b) {
    const app::SiteInHand& site = site_of(b);
    b.group(b.said(w::k_what_if));
    b.text(b.said(w::k_what_if_how), &app::Fonts::text);
    if (!site.answer) return;
    for (const std::string& path : what_if_paths(b.state().practice->drawn, *site.answer)) b.slide(path);
}

}  // namespace

std::string practice_title(const app::State& state, Step step) {
    switch (step) {
        case Step::Score: return said(state, w::k_progress);
        case Step::Site: return said(state, w::k_drawn_site);
        case Step::SayVerdict: return said(state, w::k_will_it_stand);
        case Step::SayGuy: return said(state, w::k_which_guy);
        case Step::SayAngle: return said(state, w::k_how_far);
        case Step::Answer: return said(state, w::k_answer);
        case Step::Why: return said(state, w::k_why);
        case Step::WhatIf: return said(state, w::k_what_if);
        case Step::Course: return said(state, words::lessons::k_course);
        case Step::Lesson:
            return app::lesson_in_hand(state) != nullptr ? app::lesson_title(state.speech, app::lesson_in_hand(state)->id) : said(state, w::k_practice);
        default: return said(state, w::k_practice);
    }
}

void add_practice_items(Builder& b, Step step) {
    switch (step) {
        case Step::Score: return score_items(b);
        case Step::Site: return site_items(b);
        case Step::SayVerdict: return verdict_items(b);
        case Step::SayGuy: return guy_items(b);
        case Step::SayAngle: return angle_items(b);
        case Step::Answer: return answer_items(b);
        case Step::Why: return why_items(b);
        case Step::WhatIf: return what_if_items(b);
        default: return choice_items(b);
    }
}

}  // namespace guywright::screens
