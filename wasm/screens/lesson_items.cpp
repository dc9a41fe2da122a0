#include "wasm/screens/lesson_items.hpp"

#include <algorithm>

#include "wasm/app/lesson_told.hpp"
#include "wasm/widgets/slider.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/lessons.hpp"

namespace guywright::screens {
namespace {

using app::LessonInHand;
using app::ReadingTold;
using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;
namespace words = guywright::words::lessons;

constexpr float k_room_px = 8.0F;         ///< between the frame of what is read and its words
constexpr std::size_t k_most_beside = 2;  ///< further readings below the first

std::string with_mark(const ReadingTold& r) { return r.kept ? "\u2713 " + r.goal : r.goal; }

std::string below_of(const std::vector<ReadingTold>& readings) {
    std::string text;
    for (std::size_t i = 1; i < readings.size() && i <= k_most_beside; ++i) {
        text += (text.empty() ? "" : "   ") + readings[i].name + " " + readings[i].value;
        if (!readings[i].goal.empty()) text += " (" + with_mark(readings[i]) + ")";
    }
    return text;
}

/// What is read, as large as it fits, with its goal; what else is read below.
struct ReadoutBox {
    ReadingTold first;
    std::string below;
    float below_px = 0.0F;

    [[nodiscard]] float height() const { return 2.0F * k_room_px + 2.0F * widgets::k_line_px + below_px; }
};

ReadoutBox readout_of(const Ui& ui, const app::State& s, float width) {
    const LessonInHand& hand = *app::lesson_in_hand(s);
    ReadoutBox r;
    if (hand.id == LessonId::OrderOfWork) {
        r.first = app::standing_told(s);
        return r;
    }
    const std::vector<ReadingTold> readings = app::readings_told(s);
    if (readings.empty()) return r;
    r.first = readings.front();
    r.below = below_of(readings);
    if (!r.below.empty()) r.below_px = widgets::text_height(ui.fonts.text, r.below, width - 2.0F * k_room_px);
    return r;
}

/// The face in which the value stands beside its name.
ImFont* face_for(const Ui& ui, const std::string& value, float room) {
    const bool plain = std::all_of(value.begin(), value.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80U; }) || value.ends_with("\u00B0");
    return plain && widgets::text_width(ui.fonts.huge, value) <= room ? ui.fonts.huge : ui.fonts.large;
}

void draw_readout(Ui& u, const Box& box, const ReadoutBox& r) {
    u.draw.AddRect(box.min(), box.max(), u.theme.ink, 8.0F, 0, r.first.kept ? 5.0F : 2.0F);
    Box inside = box.inner(k_room_px);
    Box top = inside.cut_top(2.0F * widgets::k_line_px);
    ImFont* face = face_for(u, r.first.value, inside.w * 0.5F);
    const float wide = widgets::text_width(face, r.first.value) + 2.0F;
    write_line(u, face, top.cut_right(wide, 8.0F), r.first.value, u.theme.ink, widgets::Align::Right);
    write_line(u, u.fonts.strong, top.cut_top(widgets::k_line_px), r.first.name, u.theme.ink);
    write_line(u, u.fonts.text, top, with_mark(r.first), u.theme.ink);
    if (!r.below.empty()) widgets::write(u, u.fonts.text, inside, r.below, u.theme.ink);
    u.mirror.push_back({"readout", "text", r.first.name, r.first.value, box});
    u.mirror.push_back({"goal", "text", r.first.goal, r.first.kept ? "reached" : "", box});
}

void add_readout(Builder& b) {
    const ReadoutBox r = readout_of(b.ui(), b.state(), b.width());
    std::vector<Spoken> spoken{{.kind = Spoken::Kind::Text, .id = "readout", .label = r.first.name, .value = r.first.value},
                               {.kind = Spoken::Kind::Text, .id = "goal", .label = with_mark(r.first)}};
    if (!r.below.empty()) spoken.push_back({.kind = Spoken::Kind::Text, .id = "below", .label = r.below});
    b.push(
        r.height(), "readout", [r](Ui& u, const Box& box) { draw_readout(u, box, r); }, std::move(spoken));
}

/// What the lesson says: first what it is about, in the end what came out. The room is that of the longer one, so that nothing jumps.
void add_sentence(Builder& b, const std::string& before, const std::string& after, bool reached) {
    ImFont* font = b.ui().fonts.text;
    const float height = std::max(widgets::text_height(font, before, b.width()), widgets::text_height(font, after, b.width()));
    const std::string words = reached ? after : before;
    b.push(height, "sentence",
           [words](Ui& u, const Box& box) {
               widgets::write(u, u.fonts.text, box, words, u.theme.ink);
               u.mirror.push_back({"sentence", "text", words, "", box});
           },
           {{.kind = Spoken::Kind::Text, .id = "sentence", .label = words}});
}

void slide(Builder& b, const LessonMover& mover) {
    const std::string path(mover.path);
    const app::Input* input = app::find_input(path);
    const std::optional<NumberAt> number = number_at(b.plan(), path);
    if (input == nullptr || !number) return;
    widgets::SliderText text{*input, b.state().speech, path, number->value, true, {}};
    text.label = app::mover_told(b.state(), mover);
    text.ends = app::range_in_hand(b.state(), path, number->range);
    text.brief = true;
    b.push(widgets::slider_height(b.ui(), text, b.width()), path, [text](Ui& u, const Box& box) { widgets::slider(u, box, text); },
           {{.kind = Spoken::Kind::Number, .id = path}});
}

/// Keys in rows of at most three.
void add_in_rows(Builder& b, const std::vector<Key>& keys) {
    constexpr std::size_t k_most_in_row = 3;
    const std::size_t rows = (keys.size() + k_most_in_row - 1) / k_most_in_row;
    for (std::size_t row = 0, at = 0; row < rows; ++row) {
        const std::size_t count = (keys.size() - at + rows - row - 1) / (rows - row);
        b.keys({keys.begin() + static_cast<std::ptrdiff_t>(at), keys.begin() + static_cast<std::ptrdiff_t>(at + count)});
        at += count;
    }
}

void question_items(Builder& b) {
    b.text(app::question_told(b.state()), &app::Fonts::text);
    std::vector<Key> keys;
    const std::vector<std::string> options = app::options_told(b.state());
    for (std::size_t i = 0; i < options.size(); ++i) keys.push_back({"answer " + std::to_string(i), options[i], app::AnswerLesson{i}});
    add_in_rows(b, keys);
}

void order_items(Builder& b, const LessonInHand& hand) {
    add_readout(b);
    add_sentence(b, app::order_told(b.state()), hand.reached ? app::closing_told(b.state()) : std::string(), hand.reached);
    if (hand.wrong) {
        b.keys({{"take off", b.said(words::k_take_off, {{"{guy}", hand.whole.guys[hand.wrong->guy].name}}), app::TakeOffGuy{}, ButtonLook::Action}});
        return;
    }
    std::vector<Key> keys;
    for (const NextTie& tie : hand.next)
        keys.push_back({"tie guy " + std::to_string(tie.guy), b.said(words::k_tie, {{"{guy}", hand.whole.guys[tie.guy].name}}), app::TieGuy{tie.guy}});
    add_in_rows(b, keys);
}

void moving_items(Builder& b, const LessonInHand& hand) {
    add_readout(b);
    add_sentence(b, app::idea_told(b.state()), app::closing_told(b.state()), hand.reached);
    if (hand.of().choices > 1)
        b.choose({{"rig 0", b.said(words::k_three_guys), hand.choice == 0, app::ChooseRig{0}},
                  {"rig 1", b.said(words::k_four_guys), hand.choice == 1, app::ChooseRig{1}}});
    for (const LessonMover& mover : hand.of().movers) slide(b, mover);
}

}  // namespace

void add_course_items(Builder& b) {
    const app::LessonsDone& done = b.state().progress.lessons;
    b.group(b.said(words::k_course));
    b.text(
        b.said(words::k_course_about) + " " + b.said(words::k_done_count, {{"{n}", std::to_string(done.count())}, {"{all}", std::to_string(k_lesson_count)}}),
        &app::Fonts::text);
    constexpr float k_wide_px = 700.0F;
    const std::size_t columns = b.width() >= k_wide_px ? 5 : 2;
    std::vector<Key> row;
    std::size_t first_open = 0;
    while (first_open < k_lesson_count && done.test(first_open)) ++first_open;
    for (std::size_t i = 0; i < k_lesson_count; ++i) {
        const auto id = static_cast<LessonId>(i);
        const std::string title = std::to_string(i + 1) + "  " + app::lesson_title(b.state().speech, id);
        row.push_back({"lesson " + std::to_string(i + 1), done.test(i) ? "\u2713 " + title : title, app::OpenLesson{id},
                       i == first_open ? ButtonLook::Action : ButtonLook::Plain});
        if (row.size() < columns && i + 1 < k_lesson_count) continue;
        b.keys(std::move(row));
        row.clear();
    }
}

std::vector<Key> lesson_ways(const app::State& s) {
    const LessonInHand& hand = *app::lesson_in_hand(s);
    const std::size_t next = static_cast<std::size_t>(hand.id) + 1;
    std::vector<Key> keys{{"course", said(s, words::k_list), app::ShowCourse{}}, {"again", said(s, words::k_again), app::OpenLesson{hand.id}}};
    const ButtonLook look = hand.reached ? ButtonLook::Action : ButtonLook::Plain;
    if (next < k_lesson_count) keys.push_back({"next lesson", said(s, words::k_next_lesson), app::OpenLesson{static_cast<LessonId>(next)}, look});
    else keys.push_back({"next lesson", said(s, words::k_course), app::ShowCourse{}, look});
    return keys;
}

void add_lesson_items(Builder& b, bool all) {
    const LessonInHand* hand = app::lesson_in_hand(b.state());
    if (hand == nullptr) return;
    b.group(std::to_string(static_cast<int>(hand->id) + 1) + "  " + app::lesson_title(b.state().speech, hand->id));
    if (hand->asks()) question_items(b);
    else if (hand->id == LessonId::OrderOfWork) order_items(b, *hand);
    else moving_items(b, *hand);
    if (all) b.keys(lesson_ways(b.state()));
}

std::string lesson_line(const app::State& s) {
    const LessonInHand& hand = *app::lesson_in_hand(s);
    if (hand.asks()) return app::question_told(s);
    const std::vector<ReadingTold> readings = hand.id == LessonId::OrderOfWork ? std::vector{app::standing_told(s)} : app::readings_told(s);
    return readings.empty() ? std::string() : readings[0].name + " " + readings[0].value + ". " + with_mark(readings[0]);
}

}  // namespace guywright::screens
