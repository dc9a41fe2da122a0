#include "wasm/screens/items.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "engine/plan/numbers.hpp"
#include "wasm/screens/card_items.hpp"
#include "wasm/widgets/slider.hpp"

namespace guywright::screens {
namespace {

using app::Step;
using widgets::Box;
using widgets::Ui;

constexpr std::array<std::string_view, app::k_step_count> k_titles{"Edge", "Frame", "Rope", "Guys", "Feet", "Margins", "Card"};

bool is_measured(const Plan& plan, std::string_view path) {
    return std::find(plan.not_measured.begin(), plan.not_measured.end(), path) == plan.not_measured.end();
}

/// Gathers the items of one step.
struct Builder {
    const Ui& ui;
    const app::State& state;
    float width;
    std::vector<Item> items{};

    void slide(std::string path) {
        Plan copy = state.plan;   // the finder hands out writable places
        const NumberRef number = find_number(copy, path);
        const Input* input = find_input(path);
        if (!number || input == nullptr) return;
        const widgets::SliderText text{*input, {}, number.get(), is_measured(state.plan, path), {}};
        const float height = widgets::slider_height(ui, text, width);
        items.push_back({height, false, path, [text, path](Ui& u, const Box& box) {
                             widgets::SliderText t = text;
                             t.path = path;
                             widgets::slider(u, box, t);
                         }});
    }
    void heading(std::string text, bool starts_group) {
        items.push_back({36.0F, starts_group, {}, [text](Ui& u, const Box& box) { write_line(u, u.fonts.large, box, text, u.theme.ink); }});
    }
    void action(std::string id, std::string label, app::Command command, bool enabled = true) {
        items.push_back({widgets::k_target_px, false, {}, [=](Ui& u, const Box& box) {
                             if (widgets::button(u, box, {id, label, widgets::ButtonLook::Plain, enabled})) u.wish(command);
                         }});
    }
};

/// Two big halves, the present one filled.
void choose_haul(Builder& b, std::size_t rope, bool hauled) {
    b.items.push_back({widgets::k_target_px, false, {}, [rope, hauled](Ui& u, const Box& box) {
                           using widgets::ButtonLook;
                           Box row = box;
                           const Box left = row.cut_left((row.w - widgets::k_gap_px) / 2.0F, widgets::k_gap_px);
                           if (widgets::button(u, left, {"over pulley", "Over the head pulley", hauled ? ButtonLook::Chosen : ButtonLook::Plain}))
                               u.wish(app::SetHaul{rope, true});
                           if (widgets::button(u, row, {"tied off", "Tied off at the head", hauled ? ButtonLook::Plain : ButtonLook::Chosen}))
                               u.wish(app::SetHaul{rope, false});
                       }});
}

void edge_items(Builder& b) {
    b.slide("edge.face_deg");
    b.slide("edge.rope_friction");
}

void frame_items(Builder& b) {
    for (std::size_t i = 0; i < b.state.plan.frame.legs.size(); ++i) {
        b.slide(path_at("frame.foot_m[#][0]", i));
        b.slide(path_at("frame.leg_length_m[#]", i));
    }
    b.slide("frame.lean_deg");
    b.slide("frame.lean_bearing_deg");
    for (std::size_t i = 0; i < b.state.plan.frame.legs.size(); ++i)
        for (const char* pattern : {"frame.leg_rating_kN[#]", "frame.leg_mass_kg[#]", "frame.leg_EA_kN[#]", "frame.foot_m[#][1]", "frame.foot_m[#][2]"})
            b.slide(path_at(pattern, i));
}

void rope_items(Builder& b) {
    for (std::size_t i = 0; i < b.state.plan.ropes.size(); ++i) {
        const RopePlan& rope = b.state.plan.ropes[i];
        if (b.state.plan.ropes.size() > 1) b.heading("Rope: " + rope.name, true);
        b.slide(path_at("ropes[#].load_kg", i));
        choose_haul(b, i, rope.haul.has_value());
        for (const char* pattern : {"ropes[#].haul.bearing_deg", "ropes[#].haul.distance_m", "ropes[#].haul.height_m",
                                    "ropes[#].pulley_efficiency", "ropes[#].pulley_strength_kN", "ropes[#].connector_strength_kN",
                                    "ropes[#].swing_deg", "ropes[#].outward_deg"})
            b.slide(path_at(pattern, i));
    }
}

void guy_items(Builder& b) {
    const std::size_t count = b.state.plan.guys.size();
    for (std::size_t i = 0; i < count; ++i) {
        const GuyPlan& guy = b.state.plan.guys[i];
        const std::string place = "Guy " + std::to_string(i + 1) + " of " + std::to_string(count) + ": " + guy.name;
        b.heading(place, true);
        for (const char* pattern : {"guys[#].bearing_deg", "guys[#].inclination_deg", "guys[#].anchor_m[0]", "guys[#].anchor_m[1]",
                                    "guys[#].anchor_m[2]", "guys[#].pretension_kN", "guys[#].anchor_strength_kN", "guys[#].parts",
                                    "guys[#].strength_kN", "guys[#].knot_efficiency", "guys[#].EA_kN", "guys[#].anchor_height_m"})
            b.slide(path_at(pattern, i));
        b.action("remove guy " + std::to_string(i), "Remove guy " + guy.name, app::RemoveGuy{i});
    }
    if (count < k_max_guys) b.action("add guy", "Add a guy", app::AddGuy{});
}

void foot_items(Builder& b) {
    for (std::size_t i = 0; i < b.state.plan.feet.size(); ++i) {
        b.slide(path_at("feet[#].friction", i));
        b.slide(path_at("feet[#].pin_shear_kN", i));
        const std::vector<FootTie>& ties = b.state.plan.feet[i].ties;
        for (std::size_t t = 0; t < ties.size(); ++t) {
            b.heading("Foot tie " + std::to_string(t + 1) + " of " + std::to_string(ties.size()), true);
            b.slide(path_at("feet[#].ties[#].bearing_deg", i, t));
            b.slide(path_at("feet[#].ties[#].strength_kN", i, t));
            b.action("remove tie " + std::to_string(t), "Remove this foot tie", app::RemoveFootTie{i, t});
        }
        if (ties.size() < k_max_foot_ties) b.action("add tie", "Add a foot tie", app::AddFootTie{i});
    }
}

void margin_items(Builder& b) {
    for (const char* path : {"actions.dynamic_factor", "actions.swing_deg", "actions.outward_deg", "limits.factor_soft",
                             "limits.factor_metal", "limits.factor_anchor"})
        b.slide(path);
    add_margin_items(b.items, b.ui, b.state, b.width);
}

}  // namespace

std::string_view title_of(Step step) { return k_titles[static_cast<std::size_t>(step)]; }

std::vector<Item> items_of(const Ui& ui, const app::State& state, Step step, float width) {
    Builder b{ui, state, width};
    switch (step) {
        case Step::Edge: edge_items(b); break;
        case Step::Frame: frame_items(b); break;
        case Step::Rope: rope_items(b); break;
        case Step::Guys: guy_items(b); break;
        case Step::Feet: foot_items(b); break;
        case Step::Margins: margin_items(b); break;
        case Step::Card: add_card_items(b.items, ui, state, width); break;
    }
    return std::move(b.items);
}

std::size_t item_with_path(const std::vector<Item>& items, std::string_view path) {
    for (std::size_t i = 0; i < items.size(); ++i)
        if (items[i].path == path) return i;
    return 0;
}

Step step_of(std::string_view path) {
    const std::string_view root = path.substr(0, path.find_first_of(".["));
    if (root == "edge") return Step::Edge;
    if (root == "frame") return Step::Frame;
    if (root == "ropes") return Step::Rope;
    if (root == "guys") return Step::Guys;
    if (root == "feet") return Step::Feet;
    return Step::Margins;
}

}  // namespace guywright::screens
