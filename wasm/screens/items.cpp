#include "wasm/screens/items.hpp"

#include <algorithm>
#include <array>

#include "wasm/screens/advice_items.hpp"
#include "wasm/screens/builder.hpp"
#include "wasm/screens/card_items.hpp"
#include "wasm/screens/lesson_items.hpp"
#include "wasm/screens/name_items.hpp"
#include "wasm/screens/practice_items.hpp"
#include "wasm/screens/standard_items.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/words/items.hpp"
#include "wasm/words/keys.hpp"

namespace guywright::screens {
namespace {

using app::Step;
using namespace std::string_view_literals;

constexpr std::array k_keys{"Edge"sv,       "Frame"sv,  "Rope"sv,       "Guys"sv,   "Feet"sv,    "Margins"sv,    "Card"sv,     "Advice"sv, "Change"sv,
                            "Ties"sv,       "LineUp"sv, "Pretension"sv, "Order"sv,  "Anchors"sv, "Directions"sv, "Practice"sv, "Score"sv,  "Site"sv,
                            "SayVerdict"sv, "SayGuy"sv, "SayAngle"sv,   "Answer"sv, "Why"sv,     "WhatIf"sv,     "Course"sv,   "Lesson"sv};
static_assert(k_keys.size() == static_cast<std::size_t>(Step::Lesson) + 1);
static_assert(words::k_step_titles.size() == app::k_step_count);

/// A strength with what it may be by a standard.
void slide_strength(Builder& b, const std::string& path) {
    b.slide(path);
    add_standard_parts(b, path);
}

/// "Leg 2 of 3"
std::string numbered(const Builder& b, const std::string& what, std::size_t i, std::size_t count) {
    return b.said(words::k_numbered, {{"{what}", what}, {"{n}", std::to_string(i + 1)}, {"{all}", std::to_string(count)}});
}
std::string numbered(const Builder& b, const app::Said& what, std::size_t i, std::size_t count) { return numbered(b, b.said(what), i, count); }

void slide_each(Builder& b, std::initializer_list<std::string_view> patterns, std::size_t index, std::size_t second = 0) {
    for (const std::string_view pattern : patterns) b.slide(app::path_at(pattern, index, second));
}

void edge_items(Builder& b) {
    const bool opening = b.plan().edge.opening_m.has_value();
    b.group(b.said(words::k_edge), "edge");
    b.slide("edge.face_deg");
    b.slide("edge.rope_friction");
    const bool compass = b.plan().edge.compass_out_deg.has_value();
    if (!opening) b.more(b.said(words::k_more_of_edge));
    b.toggle("opening", b.said(words::k_ground_again), opening, app::SetOpening{!opening});
    b.slide("edge.opening_m");
    if (opening && !compass) b.more(b.said(words::k_more_compass));
    b.toggle("compass", b.said(words::k_compass_known), compass, app::SetCompass{!compass});
    b.slide("edge.compass_out_deg");
}

void kind_choice(Builder& b) {
    const FrameKind kind = b.plan().frame.kind;
    const auto key = [&](const char* id, const app::Said& label, FrameKind k) { return Choice{id, b.said(label), kind == k, app::SetKind{k}}; };
    b.choose({key("monopod", words::k_monopod, FrameKind::Monopod), key("A-frame", words::k_a_frame, FrameKind::AFrame),
              key("tripod", words::k_tripod, FrameKind::Tripod)});
}

/// What few need to change of a leg.
void leg_details(Builder& b, std::size_t i) {
    slide_each(b, {"frame.foot_m[#][2]", "frame.leg_mass_kg[#]", "frame.leg_EA_kN[#]"}, i);
    const bool pole = b.plan().frame.legs[i].pole_diameter_mm > 0.0;
    b.toggle("pole " + std::to_string(i), b.said(words::k_pole), pole, app::SetPole{i, !pole});
    if (pole) slide_each(b, {"frame.pole_diameter_mm[#]", "frame.pole_wall_mm[#]", "frame.pole_E_GPa[#]"}, i);
}

void monopod_items(Builder& b) {
    b.group(b.said(words::k_frame), "frame");
    kind_choice(b);
    for (const char* path : {"frame.foot_m[0][0]", "frame.leg_length_m[0]", "frame.lean_deg", "frame.leg_rating_kN[0]"}) b.slide(path);
    b.more(b.said(words::k_more_of_monopod));
    b.slide("frame.foot_m[0][1]");
    b.slide("frame.lean_bearing_deg");
    leg_details(b, 0);
}

void frame_items(Builder& b) {
    const Frame& frame = b.plan().frame;
    if (frame.legs.size() == 1) return monopod_items(b);
    b.group(b.said(words::k_frame), "frame");
    kind_choice(b);
    if (frame.kind == FrameKind::AFrame) {
        b.slide("frame.lean_deg");
        b.more(b.said(words::k_more_of_lean));
        b.slide("frame.lean_bearing_deg");
    }
    for (std::size_t i = 0; i < frame.legs.size(); ++i) {
        b.group(numbered(b, words::k_leg, i, frame.legs.size()), app::path_at("leg[#]", i));
        slide_each(b, {"frame.foot_m[#][0]", "frame.foot_m[#][1]", "frame.leg_length_m[#]", "frame.leg_rating_kN[#]"}, i);
        b.more(b.said(words::k_more_of_leg));
        leg_details(b, i);
    }
}

void rope_details(Builder& b, std::size_t i) {
    const RopePlan& rope = b.plan().ropes[i];
    const std::string number = std::to_string(i);
    b.more(b.said(words::k_more_of_rope));
    b.slide(app::path_at("ropes[#].pulley_efficiency", i));
    for (const char* pattern : {"ropes[#].pulley_strength_kN", "ropes[#].connector_strength_kN"}) slide_strength(b, app::path_at(pattern, i));
    const bool known = rope.strength_kN.has_value();
    b.toggle("rope strength " + number, b.said(words::k_rope_strength_known), known, app::SetRopeStrength{i, !known});
    if (known) {
        slide_strength(b, app::path_at("ropes[#].strength_kN", i));
        b.slide(app::path_at("ropes[#].knot_efficiency", i));
    }
    slide_each(b, {"ropes[#].swing_deg", "ropes[#].outward_deg"}, i);
    add_rope_name(b, i);
    if (b.plan().ropes.size() < k_max_ropes) b.action("add rope " + number, b.said(words::k_add_rope), app::AddRope{});
    if (b.plan().ropes.size() > 1) b.action("remove rope " + number, b.said(words::k_remove_rope, {{"{name}", rope.name}}), app::RemoveRope{i});
}

void rope_items(Builder& b) {
    const std::size_t count = b.plan().ropes.size();
    for (std::size_t i = 0; i < count; ++i) {
        const bool hauled = b.plan().ropes[i].haul.has_value();
        b.group(count == 1 ? b.said(words::k_rope) : b.named(numbered(b, words::k_rope, i, count), b.plan().ropes[i].name), app::path_at("ropes[#]", i));
        b.slide(app::path_at("ropes[#].load_kg", i));
        if (count > 1) b.slide(app::path_at("ropes[#].share", i));
        b.choose({{app::path_at("over pulley #", i), b.said(words::k_over_pulley), hauled, app::SetHaul{i, true}},
                  {app::path_at("tied off #", i), b.said(words::k_tied_off), !hauled, app::SetHaul{i, false}}});
        slide_each(b, {"ropes[#].haul.bearing_deg", "ropes[#].haul.distance_m", "ropes[#].haul.height_m"}, i);
        rope_details(b, i);
    }
}

void one_guy(Builder& b, std::size_t i) {
    const GuyPlan& guy = b.plan().guys[i];
    const std::string number = std::to_string(i);
    b.group(b.named(numbered(b, words::k_guy, i, b.plan().guys.size()), guy.name), app::path_at("guys[#]", i));
    slide_each(b,
               {"guys[#].bearing_deg", "guys[#].inclination_deg", "guys[#].anchor_m[0]", "guys[#].anchor_m[1]", "guys[#].anchor_m[2]",
                "guys[#].anchor_strength_kN", "guys[#].pretension_kN"},
               i);
    b.more(b.said(words::k_more_of_guy));
    add_standard_parts(b, app::path_at("guys[#].anchor_strength_kN", i));
    slide_each(b, {"guys[#].anchor_height_m", "guys[#].parts"}, i);
    slide_strength(b, app::path_at("guys[#].strength_kN", i));
    slide_each(b, {"guys[#].knot_efficiency", "guys[#].EA_kN"}, i);
    const bool by_position = guy.anchor_m.has_value();
    b.choose({{"by bearing " + number, b.said(words::k_by_bearing), !by_position, app::SetAnchorByPosition{i, false}},
              {"by position " + number, b.said(words::k_by_position), by_position, app::SetAnchorByPosition{i, true}}});
    add_guy_name(b, i);
    b.action("remove guy " + number, b.said(words::k_remove_guy, {{"{name}", guy.name}}), app::RemoveGuy{i});
}

void guy_items(Builder& b) {
    const std::size_t count = b.plan().guys.size();
    for (std::size_t i = 0; i < count; ++i) one_guy(b, i);
    b.group(b.said(count == 0 ? words::k_no_guys : words::k_another_guy), "another guy");
    if (count < k_max_guys) b.action("add guy", b.said(words::k_add_guy), app::AddGuy{});
    else b.text(b.said(words::k_eight_guys), &app::Fonts::text);
}

bool are_hobbled(const Frame& frame, int a, int c) {
    return std::any_of(frame.hobbles.begin(), frame.hobbles.end(), [=](const Hobble& h) { return (h.from == a && h.to == c) || (h.from == c && h.to == a); });
}

/// "Tie feet 1 and 2 together"
std::string of_feet(const Builder& b, const app::Said& text, int from, int to) {
    return b.said(text, {{"{a}", std::to_string(std::min(from, to) + 1)}, {"{b}", std::to_string(std::max(from, to) + 1)}});
}

/// Ties from foot to foot.
void hobble_items(Builder& b) {
    const Frame& frame = b.plan().frame;
    const int legs = static_cast<int>(frame.legs.size());
    if (legs < 2) return;
    b.group(b.said(words::k_feet_tied), "hobbles");
    for (std::size_t i = 0; i < frame.hobbles.size(); ++i) {
        const Hobble& h = frame.hobbles[i];
        slide_strength(b, app::path_at("frame.hobbles[#].strength_kN", i));
        b.action("remove hobble " + std::to_string(i), of_feet(b, words::k_untie, h.from, h.to), app::RemoveHobble{i});
    }
    for (int from = 0; from < legs; ++from)
        for (int to = from + 1; to < legs && frame.hobbles.size() < k_max_hobbles; ++to)
            if (!are_hobbled(frame, from, to))
                b.action("add hobble " + std::to_string(from) + std::to_string(to), of_feet(b, words::k_tie_together, from, to), app::AddHobble{from, to});
}

void tie_items(Builder& b, std::size_t foot) {
    const std::size_t count = b.plan().feet[foot].ties.size(), feet = b.plan().feet.size();
    for (std::size_t t = 0; t < count; ++t) {
        const std::string whose = feet > 1 ? b.said(words::k_tie_of_foot, {{"{n}", std::to_string(foot + 1)}}) : b.said(words::k_foot_tie);
        b.group(numbered(b, whose, t, count), app::path_at("tie[#][#]", foot, t));
        b.slide(app::path_at("feet[#].ties[#].bearing_deg", foot, t));
        slide_strength(b, app::path_at("feet[#].ties[#].strength_kN", foot, t));
        b.action("remove tie " + std::to_string(foot) + std::to_string(t), b.said(words::k_remove_tie), app::RemoveFootTie{foot, t});
    }
}

void foot_items(Builder& b) {
    const std::size_t count = b.plan().feet.size();
    for (std::size_t i = 0; i < count; ++i) {
        const std::string number = std::to_string(i);
        const bool held = i < b.plan().frame.legs.size() && b.plan().frame.legs[i].held_down;
        b.group(count == 1 ? b.said(words::k_foot) : numbered(b, words::k_foot, i, count), app::path_at("feet[#]", i));
        b.slide(app::path_at("feet[#].friction", i));
        b.choose({{"can lift " + number, b.said(words::k_foot_can_lift), !held, app::SetHeldDown{i, false}},
                  {"held down " + number, b.said(words::k_foot_is_held), held, app::SetHeldDown{i, true}}});
        b.more(b.said(words::k_more_of_foot));
        b.slide(app::path_at("feet[#].pin_shear_kN", i));
        if (b.plan().feet[i].ties.size() < k_max_foot_ties) b.action("add tie " + number, b.said(words::k_add_tie), app::AddFootTie{i});
        tie_items(b, i);
    }
    hobble_items(b);
}

void margin_items(Builder& b) {
    const bool judged = b.plan().actions.guy_loss_must_hold;
    b.group(b.said(words::k_margins), "margins");
    for (const char* path : {"actions.dynamic_factor", "actions.swing_deg", "actions.outward_deg"}) b.slide(path);
    b.more(b.said(words::k_more_of_margins));
    for (const char* path : {"limits.factor_soft", "limits.factor_metal", "limits.factor_anchor", "limits.arrest_factor_soft", "limits.arrest_factor_metal",
                             "limits.arrest_factor_anchor"})
        b.slide(path);
    b.toggle("guy loss", b.said(words::k_guy_loss), judged, app::SetGuyLossJudged{!judged});
    add_margin_items(b);
}

}  // namespace

std::string_view key_of(Step step) { return k_keys[static_cast<std::size_t>(step)]; }
std::string title_of(const app::State& state, Step step) {
    if (app::is_practice(step)) return practice_title(state, step);
    if (app::is_advice(step)) return std::string(advice_title(state.speech, step));
    return app::said(state, words::k_step_titles[static_cast<std::size_t>(step)]);
}

StepItems items_of(const widgets::Ui& ui, const app::State& state, Step step, float width, bool all) {
    Builder b{ui, state, width, all};
    switch (step) {
        case Step::Edge: edge_items(b); break;
        case Step::Frame: frame_items(b); break;
        case Step::Rope: rope_items(b); break;
        case Step::Guys: guy_items(b); break;
        case Step::Feet: foot_items(b); break;
        case Step::Margins: margin_items(b); break;
        case Step::Card: add_card_items(b); break;
        case Step::Course: add_course_items(b); break;
        case Step::Lesson: add_lesson_items(b, all); break;
        default: app::is_practice(step) ? add_practice_items(b, step) : add_advice_items(b, step); break;
    }
    return b.take();
}

std::size_t item_called(const std::vector<Item>& items, std::string_view id, std::size_t otherwise) {
    for (std::size_t i = 0; i < items.size(); ++i)
        if (items[i].id == id) return i;
    return otherwise;
}

Step step_of(std::string_view path) {
    if (path.starts_with("frame.hobbles")) return Step::Feet;
    if (path.starts_with("candidate_anchor")) return Step::Anchors;
    const std::string_view root = path.substr(0, path.find_first_of(".["));
    if (root == "edge") return Step::Edge;
    if (root == "frame") return Step::Frame;
    if (root == "ropes") return Step::Rope;
    if (root == "guys") return Step::Guys;
    if (root == "feet") return Step::Feet;
    return Step::Margins;
}

}  // namespace guywright::screens
