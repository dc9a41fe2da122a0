#include "wasm/screens/advice_items.hpp"

#include <algorithm>
#include <cmath>

#include "engine/codec/change_sentences.hpp"
#include "engine/codec/tuning_sentences.hpp"
#include "wasm/app/advice_edits.hpp"
#include "wasm/screens/key_grid.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/words/advice.hpp"

namespace guywright::screens {
namespace {

using app::Question;
using app::said;
using app::Step;
using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr float k_apply_px = 116.0F;
constexpr float k_number_px = 38.0F;

/// A sentence, and beside it the key that does what it says.
void add_offer(Builder& b, std::string words, std::string below, Key key) {
    const float wide = b.width() - k_apply_px - widgets::k_gap_px;
    const float words_px = widgets::text_height(b.ui().fonts.text, words, wide);
    const float height = std::max(widgets::k_target_px, words_px + (below.empty() ? 0.0F : widgets::text_height(b.ui().fonts.strong, below, wide)));
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "offer", .label = words, .value = below},
                               {Spoken::Kind::Key, key.id, b.named(key.label, words), {}, std::nullopt, key.command}};
    const std::string id = key.id;
    b.push(
        height, id,
        [words = std::move(words), below = std::move(below), key = std::move(key), words_px](Ui& u, const Box& box) {
            Box rest = box;
            const Box place = rest.cut_right(k_apply_px, widgets::k_gap_px);
            if (widgets::button(u, {place.x, place.y, place.w, widgets::k_target_px}, {key.id, key.label, key.look})) u.wish(key.command);
            widgets::write(u, u.fonts.text, rest.cut_top(words_px), words, u.theme.ink);
            if (!below.empty()) widgets::write(u, u.fonts.strong, rest, below, u.theme.ink);
            u.mirror.push_back({"offer", "text", words, below, box});
        },
        std::move(spoken));
}

void add_numbered(Builder& b, std::size_t number, std::string words) {
    const float height = widgets::text_height(b.ui().fonts.text, words, b.width() - k_number_px);
    const std::string label = std::to_string(number) + ".";
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "numbered", .label = label + " " + words}};
    b.push(
        height, "numbered",
        [label, words = std::move(words)](Ui& u, const Box& box) {
            widgets::write(u, u.fonts.strong, {box.x, box.y, k_number_px, box.h}, label, u.theme.ink);
            widgets::write(u, u.fonts.text, {box.x + k_number_px, box.y, box.w - k_number_px, box.h}, words, u.theme.ink);
            u.mirror.push_back({"numbered", "text", label, words, box});
        },
        std::move(spoken));
}

void add_text(Builder& b, std::string words) { b.text(with_degree_signs(std::move(words)), &app::Fonts::text); }

/// Why nothing can be advised yet; true where that is so.
bool add_waiting(Builder& b) {
    const app::State& s = b.state();
    const Evaluation& e = s.evaluation;
    for (const InputFault& f : e.faults) b.caution(fault_told(app::language_of(s.speech), f));
    if (!e.faults.empty()) return true;
    if (!e.not_measured.empty()) {
        const std::string& path = e.not_measured.front();
        add_text(b, said(s, words::advice::k_enter_first));
        b.keys({{"to missing", said(s, words::advice::k_go_to_missing), app::GoToItem{step_of(path), path}, ButtonLook::Action}});
        return true;
    }
    if (answers(s) != nullptr) return false;
    add_text(b, said(s, s.sweep ? words::advice::k_after_check : words::advice::k_looking));
    return true;
}

/// For answers that come all at once.
bool add_looking(Builder& b, Question about) {
    if (add_waiting(b)) return true;
    if (answers(b.state())->done(about)) return false;
    add_text(b, said(b.state(), words::advice::k_looking));
    return true;
}

/// The same for the same advice, wherever on the list it stands.
std::string id_of_advice(const Advice& a) {
    std::string id = "apply change";
    for (const Change& c : a.changes) id += " " + std::to_string(static_cast<int>(c.input)) + "." + std::to_string(c.subject);
    return id;
}

std::string percent(double margin) { return std::to_string(static_cast<int>(std::floor(100.0 * margin))); }

void add_looking_for_change(Builder& b, const SmallestChange& change) {
    const app::State& s = b.state();
    if (change.advice().empty()) return add_text(b, said(s, words::advice::k_looking));
    add_text(b, said(s, words::advice::k_looking_found, {{"{n}", std::to_string(change.advice().size())}}));
}

void change_items(Builder& b) {
    const app::State& s = b.state();
    b.group(said(s, words::advice::k_would_go));
    if (!s.sweep && s.evaluation.verdict == Verdict::Go) return add_text(b, said(s, words::advice::k_is_go));
    if (add_waiting(b)) return;
    const app::Advisor& a = *answers(s);
    const SmallestChange* change = a.change();
    if (change == nullptr) return add_text(b, said(s, words::advice::k_looking));
    if (!change->done()) add_looking_for_change(b, *change);
    else if (!change->advice().empty()) add_text(b, said(s, words::advice::k_least_effort));
    bool first = true;
    for (const Advice& advice : change->advice()) {
        const std::string spare = percent(advice.margin);
        add_offer(b, with_degree_signs(sentence(telling(s), a.plan(), advice)),
                  spare == "0" ? said(s, words::advice::k_hardly_to_spare) : said(s, words::advice::k_to_spare, {{"{n}", spare}}),
                  {id_of_advice(advice), said(s, words::advice::k_apply), app::TakeAdvice{advice}, first ? ButtonLook::Action : ButtonLook::Plain});
        first = false;
    }
    if (const OutOfReach* o = change->out_of_reach()) b.caution(with_degree_signs(sentence(telling(s), *o)));
}

void ties_items(Builder& b) {
    const app::State& s = b.state();
    b.group(said(s, words::advice::k_ties));
    if (add_looking(b, Question::Ties)) return;
    const app::Advisor& a = *answers(s);
    if (a.plan().guys.empty()) return add_text(b, said(s, words::advice::k_no_guys));
    const bool holding = s.advice_shown.holding;
    const std::size_t guy = guy_shown(s), next = (guy + 1) % a.plan().guys.size();
    b.keys({{"ties rigged", said(s, words::advice::k_as_rigged), app::ShowTies{false}, holding ? ButtonLook::Plain : ButtonLook::Chosen},
            {"ties holding", said(s, words::advice::k_loaded), app::ShowTies{true}, holding ? ButtonLook::Chosen : ButtonLook::Plain},
            {"next guy", said(s, words::advice::k_next_guy), app::ShowGuy{next}}});
    const Telling t = telling(s);
    const Sentences sentences =
        tie_sentences({t, a.plan(), a.evaluation(), a.tuning()}, holding ? a.tuning().holding : a.tuning().rigged, holding ? k_holding : k_rigged);
    add_text(b, sentences[std::min(guy, sentences.size() - 1)]);
}

std::string from_to(const app::State& s, double from_deg, double to_deg) {
    const Telling t = telling(s);
    return with_degree_signs(said(s, words::advice::k_from_to, {{"{from}", quantity(t, from_deg, "deg")}, {"{to}", quantity(t, to_deg, "deg")}}));
}

void order_steps(Builder& b, const app::Advisor& a) {
    const app::State& s = b.state();
    const Telling t = telling(s);
    const guywright::detail::TuningView v{t, a.plan(), a.evaluation(), a.tuning()};
    b.group(said(s, words::advice::k_steps_one_by_one));
    std::vector<Row> rows;
    for (const TakeUpStep& step : a.tuning().order.steps)
        rows.push_back({std::to_string(rows.size() + 1) + ". " +
                            said(s, step.take_up_m < 0.0 ? words::advice::k_pays_out : words::advice::k_takes_in, {{"{name}", v.guy(step.guy)}}),
                        v.way_told(std::abs(step.take_up_m))});
    b.rows(rows);
}

/// What of each guy is taken in or paid out in all, and how much of its cord runs through the hand for it.
void take_ups(Builder& b, const app::Advisor& a) {
    const app::State& s = b.state();
    const Telling t = telling(s);
    const guywright::detail::TuningView v{t, a.plan(), a.evaluation(), a.tuning()};
    const LineUp& l = a.tuning().line_up;
    std::vector<Row> rows;
    for (std::size_t i = 0; i < l.take_up_m.size(); ++i) {
        const double way_m = std::abs(l.take_up_m[i]);
        const int parts = a.plan().guys[i].parts;
        std::string way = v.way_told(way_m);
        if (parts > 1) way = said(s, words::advice::k_way_and_cord, {{"{way}", way}, {"{cord}", v.way_told(parts * way_m)}});
        rows.push_back({said(s, l.take_up_m[i] < 0.0 ? words::advice::k_pays_out : words::advice::k_takes_in, {{"{name}", v.guy(i)}}), std::move(way)});
    }
    b.rows(rows);
}

void line_up_items(Builder& b) {
    const app::State& s = b.state();
    b.group(said(s, words::advice::k_line_up));
    if (add_looking(b, Question::LineUp)) return;
    const app::Advisor& a = *answers(s);
    const Telling t = telling(s);
    const LineUp& l = a.tuning().line_up;
    const Sentences sentences = line_up_sentences({t, a.plan(), a.evaluation(), a.tuning()});
    add_text(b, sentences.front());
    if (l.take_up_m.empty()) {
        for (std::size_t i = 1; i < sentences.size(); ++i) add_text(b, sentences[i]);
        return;
    }
    std::vector<Row> rows{{said(s, words::advice::k_lean), from_to(s, l.before.deg, l.after.deg)}};
    if (l.stands_before) rows.push_back({said(s, words::advice::k_off_leg), from_to(s, degrees(l.angle_before_rad), degrees(l.angle_after_rad))});
    b.rows(rows);
    b.keys({{"apply lean", said(s, words::advice::k_apply_lean), app::TakeLean{l.before, l.after}, ButtonLook::Action}});
    if (l.status == LineUpStatus::Stopped) add_text(b, sentences[1]);
    take_ups(b, a);
    if (a.tuning().order.status == OrderStatus::Found) order_steps(b, a);
    else add_text(b, sentences.back());
}

/// What they are, and the key that puts them into the plan.
void add_pretensions(Builder& b, const Plan& plan, std::vector<double> wanted_kN) {
    const app::State& s = b.state();
    const bool kept =
        std::equal(wanted_kN.begin(), wanted_kN.end(), plan.guys.begin(), [](double wanted, const GuyPlan& g) { return g.pretension_kN == wanted; });
    b.text(said(s, words::advice::k_no_guy_slack), &app::Fonts::strong);
    if (kept) add_text(b, said(s, words::advice::k_pretension_kept));
    else b.keys({{"apply pretension", said(s, words::advice::k_apply_pretension), app::TakePretensions{std::move(wanted_kN)}, ButtonLook::Action}});
}

void pretension_items(Builder& b) {
    const app::State& s = b.state();
    b.group(said(s, words::advice::k_pretension));
    if (add_looking(b, Question::Pretension)) return;
    const app::Advisor& a = *answers(s);
    const Telling t = telling(s);
    const LeastPretension& least = a.tuning().least_pretension;
    if (least.status == PretensionStatus::NoGuys) return add_text(b, said(s, words::advice::k_no_guys));
    if (least.status == PretensionStatus::Found) add_pretensions(b, a.plan(), app::as_entered_kN(least));
    for (std::string& each : pretension_sentences({t, a.plan(), a.evaluation(), a.tuning()})) add_text(b, std::move(each));
}

void order_items(Builder& b) {
    const app::State& s = b.state();
    b.group(said(s, words::advice::k_order));
    if (add_looking(b, Question::Order)) return;
    const app::Advisor& a = *answers(s);
    const Telling t = telling(s);
    const guywright::detail::TuningView v{t, a.plan(), a.evaluation(), a.tuning()};
    const Sequence& sequence = a.tuning().sequence;
    b.group(said(s, words::advice::k_up));
    if (sequence.front_tie_missing) b.caution(std::string(v.of(TuningText::FrontTieMissing)));
    std::size_t number = 0;
    for (std::string& each : sequence_sentences(v, sequence.up)) add_numbered(b, ++number, with_degree_signs(std::move(each)));
    b.group(said(s, words::advice::k_down));
    number = 0;
    for (std::string& each : sequence_sentences(v, sequence.down)) add_numbered(b, ++number, with_degree_signs(std::move(each)));
}

/// Sentence, and below it the keys that show and take the choice.
void add_anchor_set(Builder& b, const AnchorSet& set, std::size_t place) {
    const app::State& s = b.state();
    std::string told = with_degree_signs(sentence(telling(s), set));
    std::vector<GuyPlan> guys = set.plan.guys;
    for (std::size_t i = 0; i < guys.size(); ++i) guys[i].name = said(s, words::advice::k_anchor_name, {{"{n}", std::to_string(set.anchors[i] + 1)}});
    const std::string number = std::to_string(place);
    const bool shown = place == s.advice_shown.anchor_set;
    const Key show{"show anchors " + number, said(s, words::advice::k_show_set), app::ShowAnchorSet{place}, shown ? ButtonLook::Chosen : ButtonLook::Plain};
    const Key take{"take anchors " + number, said(s, words::advice::k_use_set), app::TakeAnchors{std::move(guys)},
                   place == 0 && set.verdict == Verdict::Go ? ButtonLook::Action : ButtonLook::Plain};
    const float words_px = widgets::text_height(b.ui().fonts.text, told, b.width());
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "offer", .label = told},
                               {Spoken::Kind::Key, show.id, b.named(show.label, told), {}, shown, show.command},
                               {Spoken::Kind::Key, take.id, b.named(take.label, told), {}, std::nullopt, take.command}};
    b.push(
        words_px + 8.0F + widgets::k_target_px, show.id,
        [told = std::move(told), words_px, show, take](Ui& u, const Box& box) {
            Box rest = box;
            widgets::write(u, u.fonts.text, rest.cut_top(words_px, 8.0F), told, u.theme.ink);
            u.mirror.push_back({"offer", "text", told, "", box});
            draw_row(u, rest, {show, take});
        },
        std::move(spoken));
}

void add_best_anchors(Builder& b) {
    const app::State& s = b.state();
    if (add_waiting(b)) return;
    if (!answers(s)->done(Question::Anchors)) add_text(b, said(s, words::advice::k_looking));
    const std::vector<const AnchorSet*> sets = anchor_sets(s);
    for (std::size_t i = 0; i < sets.size(); ++i) add_anchor_set(b, *sets[i], i);
}

void one_anchor(Builder& b, std::size_t i) {
    const app::State& s = b.state();
    const std::string number = std::to_string(i + 1), count = std::to_string(b.plan().candidate_anchors_m.size());
    b.group(said(s, words::advice::k_one_anchor, {{"{n}", number}, {"{count}", count}}), app::path_at("found[#]", i));
    for (std::size_t axis = 0; axis < 3; ++axis) b.slide(app::path_at("candidate_anchors_m[#][#]", i, axis));
    b.slide(app::path_at("candidate_anchor_strengths_kN[#]", i));
    b.action("remove anchor " + std::to_string(i), said(s, words::advice::k_remove_anchor, {{"{n}", number}}), app::RemoveFoundAnchor{i});
}

void anchor_items(Builder& b) {
    const app::State& s = b.state();
    const std::size_t count = b.plan().candidate_anchors_m.size();
    const std::string most = std::to_string(k_max_candidate_anchors);
    b.group(said(s, words::advice::k_anchors));
    if (count == 0) add_text(b, said(s, words::advice::k_none_found, {{"{n}", most}}));
    else if (count < 3) add_text(b, said(s, words::advice::k_too_few));
    if (count < k_max_candidate_anchors) b.action("add anchor", said(s, words::advice::k_add_anchor), app::AddFoundAnchor{});
    if (count > 0 && b.plan().candidate_anchor_strengths_kN.empty())
        b.action("grade anchors", said(s, words::advice::k_enter_strengths), app::GradeFoundAnchors{});
    if (count >= 3) add_best_anchors(b);
    for (std::size_t i = 0; i < count; ++i) one_anchor(b, i);
}

/// The heading turned and tilted, within the chart.
Heading moved(const Heading& from, double turn_deg, double tilt_deg) {
    return {wrapped_deg(from.bearing_deg + turn_deg), std::clamp(from.off_down_deg + tilt_deg, 0.0, 90.0)};
}

void direction_items(Builder& b) {
    const app::State& s = b.state();
    constexpr double k_turn_deg = 5.0, k_tilt_deg = 5.0;
    b.group(said(s, words::advice::k_directions));
    if (add_looking(b, Question::Directions)) return;
    const Heading at = s.advice_shown.toward;
    b.keys({{"turn left", said(s, words::advice::k_turn_left), app::LookToward{moved(at, -k_turn_deg, 0.0)}},
            {"turn right", said(s, words::advice::k_turn_right), app::LookToward{moved(at, k_turn_deg, 0.0)}},
            {"steeper", said(s, words::advice::k_steeper), app::LookToward{moved(at, 0.0, -k_tilt_deg)}},
            {"flatter", said(s, words::advice::k_flatter), app::LookToward{moved(at, 0.0, k_tilt_deg)}}});
    b.text(direction_words(s, *answers(s)->directions(), at), &app::Fonts::strong);
    add_text(b, said(s, words::advice::k_map_how));
}

constexpr std::array k_questions{Step::Change, Step::Ties, Step::LineUp, Step::Pretension, Step::Order, Step::Anchors, Step::Directions};

/// A key for every question.
void hub_items(Builder& b) {
    const app::State& s = b.state();
    b.group(said(s, words::advice::k_advice));
    const bool no_go = s.evaluation.verdict == Verdict::NoGo;
    const std::size_t columns = b.width() >= 340.0F ? 2 : 1;
    for (std::size_t i = 0; i < k_questions.size(); i += columns) {
        std::vector<Key> keys;
        for (std::size_t k = i; k < std::min(i + columns, k_questions.size()); ++k) {
            const Step step = k_questions[k];
            keys.push_back({"ask " + std::string(key_of(step)), std::string(advice_title(s.speech, step)), app::GoTo{step, 0},
                            step == Step::Change && no_go ? ButtonLook::Action : ButtonLook::Plain});
        }
        b.keys(std::move(keys));
    }
}

}  // namespace

std::string_view advice_title(const app::Speech& speech, Step step) {
    const auto title = [&](const app::Said& words) { return app::say(speech, words); };
    switch (step) {
        case Step::Change: return title(words::advice::k_would_go);
        case Step::Ties: return title(words::advice::k_ties);
        case Step::LineUp: return title(words::advice::k_line_up);
        case Step::Pretension: return title(words::advice::k_pretension);
        case Step::Order: return title(words::advice::k_order);
        case Step::Anchors: return title(words::advice::k_anchors);
        case Step::Directions: return title(words::advice::k_directions);
        default: return title(words::advice::k_advice);
    }
}

Key way_to_advice(const app::State& s) { return {"advice", said(s, words::advice::k_advice), app::GoTo{Step::Advice, 0}}; }

void add_ways_to_advice(Builder& b) {
    const app::State& s = b.state();
    std::vector<Key> keys;
    if (s.evaluation.verdict == Verdict::NoGo)
        keys.push_back({"ask Change", said(s, words::advice::k_would_go), app::GoTo{Step::Change, 0}, ButtonLook::Action});
    keys.push_back(way_to_advice(s));
    b.keys(std::move(keys));
}

void add_advice_items(Builder& b, Step step) {
    switch (step) {
        case Step::Change: return change_items(b);
        case Step::Ties: return ties_items(b);
        case Step::LineUp: return line_up_items(b);
        case Step::Pretension: return pretension_items(b);
        case Step::Order: return order_items(b);
        case Step::Anchors: return anchor_items(b);
        case Step::Directions: return direction_items(b);
        default: return hub_items(b);
    }
}

const app::Advisor* answers(const app::State& s) { return s.advisor && s.advisor->plan() == s.plan ? s.advisor.get() : nullptr; }

std::size_t guy_shown(const app::State& s) { return s.plan.guys.empty() ? 0 : std::min(s.advice_shown.guy, s.plan.guys.size() - 1); }

std::vector<const AnchorSet*> anchor_sets(const app::State& s) {
    std::vector<const AnchorSet*> sets;
    const AnchorChoice* choice = answers(s) == nullptr ? nullptr : answers(s)->anchors();
    if (choice == nullptr) return sets;
    for (const auto* best : {&choice->best_three(), &choice->best_four()})
        for (std::size_t i = 0; i < std::min(best->size(), AnchorChoice::k_told); ++i) sets.push_back(&(*best)[i]);
    std::stable_sort(sets.begin(), sets.end(), [](const AnchorSet* a, const AnchorSet* b) { return a->margin > b->margin; });
    return sets;
}

std::string direction_words(const app::State& s, const DirectionMap& map, const Heading& way) {
    const Telling t = telling(s);
    const auto ring = static_cast<std::size_t>(std::lround(way.off_down_deg / 90.0 * static_cast<double>(map.rings())));
    const auto bearing = static_cast<std::size_t>(std::lround(way.bearing_deg / 360.0 * static_cast<double>(map.bearings())));
    const MapCell& cell = map.cell(ring, bearing);
    const Heading at = map.heading(ring, bearing);
    Check row;
    row.id = cell.id;
    row.subject = cell.subject;
    const std::string name = subject_name(t.words, s.plan, row);
    const std::string what = std::string(t.words.of(cell.id).what) + (name.empty() ? "" : " " + name);
    const std::string state =
        said(s, cell.margin < 0.0 ? words::advice::k_breaks : words::advice::k_keeps, {{"{margin}", percent(cell.margin)}, {"{what}", what}});
    return with_degree_signs(
        said(s, ring == 0 ? words::advice::k_straight_down : words::advice::k_toward,
             {{"{bearing}", quantity(t, wrapped_deg(at.bearing_deg), "deg")}, {"{off}", quantity(t, at.off_down_deg, "deg")}, {"{state}", state}}));
}

}  // namespace guywright::screens
