#include "wasm/app/lesson_told.hpp"

#include <array>
#include <cmath>
#include <deque>

#include "engine/codec/sentences.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/words/lessons.hpp"

namespace guywright::app {
namespace {

namespace words = guywright::words::lessons;

constexpr std::string_view k_degree_sign = "\u00B0";

const LessonInHand& hand_of(const State& s) { return *lesson_in_hand(s); }
const words::LessonWords& words_of(const State& s) { return words::k_lessons[static_cast<std::size_t>(hand_of(s).id)]; }

/// How a reading is shown in the units chosen: shown = SI value * per_SI.
struct ShownReading {
    std::string_view unit;
    double per_SI;
    int decimals;
};
ShownReading shown_reading(const Speech& speech, Readout reading) {
    const ReadoutInfo& about = info(reading);
    const ShownUnit unit = shown_unit(about.unit, speech.units);
    return {unit.name, about.per_SI * unit.per_kept, unit.per_kept != 1.0 ? unit.decimals : about.decimals};
}

/// Of a number as shown.
std::string with_its_unit(const Speech& speech, Readout reading, double shown) {
    const ShownReading as = shown_reading(speech, reading);
    if (reading == Readout::IsGo) return std::string(language_of(speech).of(shown > 0.5 ? Verdict::Go : Verdict::NoGo));
    std::string text = number(speech, shown, as.decimals);
    if (reading == Readout::PulleyTimes) return say(speech, words::k_times, {{"{n}", text}});
    if (as.unit == "deg") return text + std::string(k_degree_sign);
    return guywright::with_unit(std::move(text), as.unit);
}

std::string told(const Speech& speech, Readout reading, std::optional<double> value) { return reading_told(speech, reading, value, false); }

std::string listed(const Speech& speech, const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? std::string(say(speech, words::k_and)) : ", ";
        text += names[i];
    }
    return text;
}

std::string option_told(const State& s, const LessonOption& o) {
    switch (hand_of(s).of().question) {
        case LessonQuestion::SlackGuy:
        case LessonQuestion::FatalGuy: return o.part < s.plan.guys.size() ? s.plan.guys[o.part].name : std::string();
        case LessonQuestion::PulleyTimes: return amount(s.speech, kilonewtons(o.times * s.evaluation.model.ropes[0].weight_N), "kN");
        case LessonQuestion::GoOrNot: return with_its_unit(s.speech, Readout::IsGo, static_cast<double>(o.part));
        case LessonQuestion::None: break;
    }
    return {};
}

std::string right_options(const State& s) {
    std::vector<std::string> names;
    for (const LessonOption& o : hand_of(s).options)
        if (o.right) names.push_back(option_told(s, o));
    return listed(s.speech, names);
}

std::string value_at(const State& s, const LessonMover& mover, double value) {
    const Input* input = find_input(mover.path);
    return input == nullptr ? std::string() : shown_value(*input, s.speech, value);
}

double moved_now(const State& s, const LessonMover& mover) {
    const std::optional<NumberAt> number = number_at(s.plan, mover.path);
    return number ? number->value : mover.from;
}

/// Everything that a text of a lesson may name.
std::string filled_in(const State& s, const Said& text) {
    const LessonInHand& hand = hand_of(s);
    constexpr std::array<std::array<std::string_view, 2>, 4> k_read{{{"{r0}", "{r}"}, {"{s0}", "{s}"}, {"{t0}", "{t}"}, {"{u0}", "{u}"}}};
    constexpr std::array<std::array<std::string_view, 2>, k_most_movers> k_moved{{{"{m0}", "{m}"}, {"{n0}", "{n}"}}};
    std::string out(say(s.speech, text));
    const auto fill = [&](std::string_view mark, const std::string& value) { out = guywright::detail::filled(out, {{mark, value}}); };
    const std::vector<Readout>& readings = hand.of().readings;
    for (std::size_t i = 0; i < readings.size() && i < k_read.size(); ++i) {
        if (i < hand.read_at_start.size()) fill(k_read[i][0], told(s.speech, readings[i], hand.read_at_start[i]));
        fill(k_read[i][1], told(s.speech, readings[i], read(readings[i], s.plan, s.evaluation)));
    }
    const std::vector<LessonMover>& movers = hand.of().movers;
    for (std::size_t i = 0; i < movers.size(); ++i) {
        if (i < hand.moved_at_start.size()) fill(k_moved[i][0], value_at(s, movers[i], hand.moved_at_start[i]));
        fill(k_moved[i][1], value_at(s, movers[i], moved_now(s, movers[i])));
    }
    fill("{names}", right_options(s));
    fill("{load}", shown_value(*find_input("ropes[0].load_kg"), s.speech, s.plan.ropes[0].load_kg));
    if (!s.evaluation.model.ropes.empty()) fill("{weight}", amount(s.speech, kilonewtons(s.evaluation.model.ropes[0].weight_N), "kN"));
    return out;
}

std::string newtons_told(const State& s, double force_N) { return amount(s.speech, force_N, "N"); }

const std::string& guy_name(const LessonInHand& hand, std::size_t guy) { return hand.whole.guys[guy].name; }

/// Why the guy tied last was not the one, against one that was.
std::string wrong_tie_told(const State& s, const NextTie& wrong) {
    const LessonInHand& hand = hand_of(s);
    for (const NextTie& better : hand.next) {
        if (!better.right) continue;
        const std::string name = guy_name(hand, wrong.guy), instead = guy_name(hand, better.guy);
        if (hand.tied.empty()) return say(s.speech, words::k_not_first, {{"{guy}", name}, {"{back}", instead}});
        const auto gap = [&](const NextTie& t) { return number(s.speech, t.gap_deg, 0) + std::string(k_degree_sign); };
        return say(s.speech, words::k_not_next,
                   {{"{guy}", name},
                    {"{hold}", newtons_told(s, wrong.after.hold_N)},
                    {"{gap}", gap(wrong)},
                    {"{better}", instead},
                    {"{hold_better}", newtons_told(s, better.after.hold_N)},
                    {"{gap_better}", gap(better)}});
    }
    return {};
}

}  // namespace

std::string lesson_title(const Speech& speech, LessonId id) { return std::string(say(speech, words::k_lessons[static_cast<std::size_t>(id)].title)); }

std::string reading_told(const Speech& speech, Readout reading, std::optional<double> value, bool checking) {
    if (!value) return std::string(say(speech, checking ? words::k_checking : words::k_falls));
    return with_its_unit(speech, reading, *value * shown_reading(speech, reading).per_SI);
}

std::string goal_told(const Speech& speech, const LessonGoal& goal, double limit) {
    const ShownReading as = shown_reading(speech, goal.reading);
    if (goal.reading == Readout::IsGo) return say(speech, words::k_goal, {{"{limit}", with_its_unit(speech, goal.reading, limit)}});
    const double tens = std::pow(10.0, as.decimals), dust = 1e-6;
    // the last value that still counts, cut to what is shown
    const double last = goal.at_most ? std::floor((limit + half_digit(goal.reading)) * as.per_SI * tens - dust) / tens
                                     : std::ceil((limit - half_digit(goal.reading)) * as.per_SI * tens + dust) / tens;
    const bool none = goal.at_most && last == 0.0;
    return say(speech, none ? words::k_goal : goal.at_most ? words::k_or_less : words::k_or_more, {{"{limit}", with_its_unit(speech, goal.reading, last)}});
}

std::vector<ReadingTold> readings_told(const State& s) {
    std::vector<ReadingTold> out;
    const LessonInHand* hand = lesson_in_hand(s);
    if (hand == nullptr || hand->asks()) return out;
    const Lesson& l = hand->of();
    for (const Readout reading : l.readings) {
        const std::optional<double> value = read(reading, s.plan, s.evaluation);
        const bool of_verdict = reading == Readout::IsGo || reading == Readout::LeastSpare;
        ReadingTold told{std::string(say(s.speech, words::k_readouts[static_cast<std::size_t>(reading)])),
                         reading_told(s.speech, reading, value, of_verdict && s.sweep != nullptr),
                         {}};
        for (std::size_t i = 0; i < l.goals.size() && i < hand->limits.size(); ++i) {
            if (l.goals[i].reading != reading) continue;
            told.goal = goal_told(s.speech, l.goals[i], hand->limits[i]);
            told.kept = is_kept(l.goals[i], hand->limits[i], value);
        }
        out.push_back(std::move(told));
    }
    return out;
}

std::string idea_told(const State& s) {
    const LessonInHand& hand = hand_of(s);
    std::string text = filled_in(s, words_of(s).idea);
    if (!hand.answered || *hand.answered >= hand.options.size()) return text;
    const Said& judged = hand.options[*hand.answered].right ? words::k_right : words::k_wrong;
    return say(s.speech, judged, {{"{names}", right_options(s)}}) + " " + text;
}

std::string closing_told(const State& s) {
    const LessonInHand& hand = hand_of(s);
    if (hand.id != LessonId::OrderOfWork) return filled_in(s, words_of(s).closing);
    return say(s.speech, words_of(s).closing, {{"{r}", std::to_string(hand.by_itself_after)}, {"{s}", newtons_told(s, hand.most_held_N)}});
}

std::string question_told(const State& s) {
    switch (hand_of(s).of().question) {
        case LessonQuestion::SlackGuy: return filled_in(s, words::k_ask_slack);
        case LessonQuestion::FatalGuy: return filled_in(s, words::k_ask_fatal);
        case LessonQuestion::PulleyTimes: return filled_in(s, words::k_ask_times);
        case LessonQuestion::GoOrNot: return filled_in(s, words::k_ask_go);
        case LessonQuestion::None: break;
    }
    return {};
}

std::vector<std::string> options_told(const State& s) {
    std::vector<std::string> out;
    for (const LessonOption& o : options_of(hand_of(s).of().question, s.plan, s.evaluation)) out.push_back(option_told(s, o));
    return out;
}

std::string mover_told(const State& s, const LessonMover& mover) {
    const Input* input = find_input(mover.path);
    const std::string what = input == nullptr ? std::string() : said(s, input->label);
    if (mover.all_guys) return said(s, words::k_all_guys, {{"{what}", what}});
    const std::size_t guy = index_in(mover.path);
    if (!mover.path.starts_with("guys") || guy >= s.plan.guys.size()) return what;
    return said(s, words::k_of_guy, {{"{guy}", s.plan.guys[guy].name}, {"{what}", what}});
}

ReadingTold standing_told(const State& s) {
    const Standing& standing = hand_of(s).standing;
    ReadingTold told{said(s, words::k_to_hold), newtons_told(s, standing.by_itself ? 0.0 : standing.hold_N), said(s, words::k_nothing_left)};
    if (standing.by_itself) told.name = said(s, words::k_by_itself);
    told.kept = hand_of(s).reached;
    return told;
}

std::string order_told(const State& s) {
    const LessonInHand& hand = hand_of(s);
    if (hand.wrong) return wrong_tie_told(s, *hand.wrong);
    if (hand.tied.empty()) return filled_in(s, words_of(s).idea);
    return said(s, words::k_is_on, {{"{guy}", guy_name(hand, hand.tied[hand.tied.size() - 1])}});
}

}  // namespace guywright::app
