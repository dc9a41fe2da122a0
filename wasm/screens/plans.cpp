#include <algorithm>

#include "wasm/screens/key_grid.hpp"
#include "wasm/screens/parts.hpp"
#include "wasm/words/keys.hpp"
#include "wasm/words/plans.hpp"

// The list of the plans that the device keeps, and what can be done with one of them.
namespace guywright::screens {
namespace {

using app::Keeping;
using app::PlanEntry;
using app::ShelfAct;
using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

std::string keeping_text(const app::State& s) {
    switch (s.shelf.keeping) {
        case Keeping::Unknown: return {};
        case Keeping::Protected: return said(s, words::k_protected);
        case Keeping::MayBeCleared: return said(s, words::k_may_be_cleared);
        case Keeping::Denied: return said(s, words::k_denied);
        case Keeping::Full: return said(s, words::k_full);
    }
    return {};
}

constexpr float k_heading_px = 36.0F, k_after_heading_px = 8.0F;
constexpr float k_lowest_for_heading_px = 300.0F;
constexpr float k_row_margin_px = 10.0F;
constexpr float k_more_key_px = 84.0F;
constexpr float k_two_columns_px = 700.0F;

std::string title_shown(const app::State& s, const std::string& title) { return title.empty() ? said(s, words::k_no_title) : title; }

std::string second_line(const app::State& s, const PlanEntry& plan) {
    if (plan.open) return said(s, words::k_open_now, {{"{when}", plan.changed}});
    return plan.readable ? plan.changed : said(s, words::k_unreadable, {{"{when}", plan.changed}});
}

std::string deleted_text(const app::State& s) {
    if (!s.shelf.has_deleted) return {};
    return said(s, words::k_deleted_last, {{"{title}", title_shown(s, s.shelf.deleted_title)}});
}

float row_height(const Ui& ui, const app::State& s, const PlanEntry& plan, float width) {
    const float text_px = width - k_more_key_px - k_between_keys_px - 2.0F * k_row_margin_px;
    return std::max(widgets::k_target_px, widgets::text_height(ui.fonts.strong, title_shown(s, plan.title), text_px) +
                                              widgets::text_height(ui.fonts.text, second_line(s, plan), text_px) + 2.0F * k_row_margin_px);
}

/// A plan: a wide key that opens it, and a narrow one for all else.
void draw_plan(Ui& ui, const app::State& s, Box row, const PlanEntry& plan, const std::string& index) {
    const Box more = row.cut_right(k_more_key_px, k_between_keys_px);
    if (widgets::button(ui, row, {"plan " + index, "", plan.open ? ButtonLook::Chosen : ButtonLook::Plain})) {
        if (plan.readable) ui.wish(app::AskShelf{ShelfAct::Open, plan.id});
        else ui.wish(app::ChoosePlan{plan.id});
    }
    const ImU32 ink = plan.open != ImGui::IsItemActive() ? ui.theme.field : ui.theme.ink;
    ui.mirror.back().label = title_shown(s, plan.title);
    ui.mirror.back().value = second_line(s, plan);
    const float text_px = row.w - 2.0F * k_row_margin_px;
    const float tall =
        widgets::text_height(ui.fonts.strong, title_shown(s, plan.title), text_px) + widgets::text_height(ui.fonts.text, second_line(s, plan), text_px);
    Box text{row.x + k_row_margin_px, row.y + (row.h - tall) / 2.0F, text_px, tall};
    text.cut_top(widgets::write(ui, ui.fonts.strong, text, title_shown(s, plan.title), ink));
    widgets::write(ui, ui.fonts.text, text, second_line(s, plan), ink);
    if (widgets::button(ui, more, {"plan more " + index, say(s.speech, words::k_more)})) ui.wish(app::ChoosePlan{plan.id});
}

struct Place {
    std::size_t page = 0;
    Box box;
};

/// Where each plan stands: down a column, the next column, the next page.
std::vector<Place> places_of(const Ui& ui, const app::State& s, const Box& box) {
    const std::size_t columns = box.w >= k_two_columns_px ? 2 : 1;
    const float wide = (box.w - static_cast<float>(columns - 1) * widgets::k_gap_px) / static_cast<float>(columns);
    std::vector<Place> places;
    std::size_t column = 0, page = 0;
    float used_px = 0.0F;
    for (const PlanEntry& plan : s.shelf.plans) {
        const float tall = row_height(ui, s, plan, wide);
        if (used_px > 0.0F && used_px + tall > box.h) {
            used_px = 0.0F;
            if (++column == columns) ++page, column = 0;
        }
        places.push_back({page, {box.x + static_cast<float>(column) * (wide + widgets::k_gap_px), box.y + used_px, wide, tall}});
        used_px += tall + k_between_keys_px;
    }
    return places;
}

void draw_heading(Ui& ui, Box& box, std::string_view title, const std::string& aside) {
    if (box.h < k_lowest_for_heading_px) return;
    Box row = box.cut_top(k_heading_px, k_after_heading_px);
    const Box right = row.cut_right(widgets::text_width(ui.fonts.text, aside) + 1.0F, 10.0F);
    write_line(ui, ui.fonts.text, right, aside, ui.theme.ink, widgets::Align::Right);
    ImFont* font = widgets::text_width(ui.fonts.large, title) <= row.w ? ui.fonts.large : ui.fonts.strong;
    write_line(ui, font, row, title, ui.theme.ink);
}

/// Wrapped text at the bottom of what is left.
void write_at_bottom(Ui& ui, Box& box, const std::string& id, const std::string& words) {
    if (words.empty()) return;
    const Box text = box.cut_bottom(widgets::text_height(ui.fonts.text, words, box.w), k_between_keys_px);
    widgets::write(ui, ui.fonts.text, text, words, ui.theme.ink);
    ui.mirror.push_back({id, "text", words, "", text});
}

void draw_list(Ui& ui, const app::State& s, Box box) {
    const app::Shelf& shelf = s.shelf;
    const Box keys = box.cut_bottom(widgets::k_target_px, k_between_keys_px);
    const std::string deleted = deleted_text(s);
    write_at_bottom(ui, box, "keeping", deleted + (deleted.empty() ? "" : " ") + keeping_text(s));
    Box heading = box;
    if (box.h >= k_lowest_for_heading_px) box.cut_top(k_heading_px, k_after_heading_px);
    const std::vector<Place> places = places_of(ui, s, box);
    const std::size_t pages = places.empty() ? 1 : places.back().page + 1, page = s.plans_screen->page % pages;
    draw_heading(ui, heading, say(s.speech, words::k_plans_heading), pages > 1 ? std::to_string(page + 1) + "/" + std::to_string(pages) : "");
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i].page == page) draw_plan(ui, s, places[i].box, shelf.plans[i], std::to_string(i));
    if (places.empty()) widgets::write(ui, ui.fonts.text, box, say(s.speech, words::k_none_kept), ui.theme.ink);
    std::vector<Key> row{{"close plans", said(s, words::k_back_to_plan), app::ClosePlans{}, ButtonLook::Action}};
    if (shelf.has_deleted) row.push_back({"bring back", said(s, words::k_bring_back), app::AskShelf{ShelfAct::BringBack, {}}});
    if (pages > 1) row.push_back({"next plans", said(s, words::k_next_page), app::NextPlansPage{}});
    draw_row(ui, keys, row);
}

std::vector<Key> keys_for(const app::State& s, const PlanEntry& plan) {
    std::vector<Key> keys;
    if (plan.readable) keys.push_back({"open plan", said(s, words::k_open_plan), app::AskShelf{ShelfAct::Open, plan.id}, ButtonLook::Action});
    if (plan.readable) keys.push_back({"duplicate plan", said(s, words::k_duplicate), app::AskShelf{ShelfAct::Duplicate, plan.id}});
    if (plan.open) keys.push_back({"name plan", said(s, words::k_name_plan), app::AskForText{"title"}});
    keys.push_back({"save plan", said(s, words::k_save_its_file), app::AskShelf{ShelfAct::SaveText, plan.id}});
    keys.push_back({"delete plan", said(s, words::k_delete_plan), app::AskShelf{ShelfAct::Delete, plan.id}});
    return keys;
}

void draw_chosen(Ui& ui, const app::State& s, const PlanEntry& plan, Box box) {
    draw_row(ui, box.cut_bottom(widgets::k_target_px, k_between_keys_px), {{"back to plans", said(s, words::k_back_to_list), app::ChoosePlan{}}});
    ImFont* font =
        box.h < k_lowest_for_heading_px || widgets::text_width(ui.fonts.large, title_shown(s, plan.title)) > box.w ? ui.fonts.strong : ui.fonts.large;
    const Box title = box.cut_top(widgets::text_height(font, title_shown(s, plan.title), box.w), 4.0F);
    widgets::write(ui, font, title, title_shown(s, plan.title), ui.theme.ink);
    ui.mirror.push_back({"title", "heading", title_shown(s, plan.title), second_line(s, plan), title});
    const std::string words = plan.readable ? second_line(s, plan) : plan.changed + ". " + said(s, words::k_why_unreadable);
    widgets::write(ui, ui.fonts.text, box.cut_top(widgets::text_height(ui.fonts.text, words, box.w), k_between_keys_px), words, ui.theme.ink);
    const std::vector<Key> keys = keys_for(s, plan);
    draw_grid(ui, box, keys, grid_for(box, keys.size()));
}

std::vector<Key> all_keys(const app::State& s) {
    const app::Shelf& shelf = s.shelf;
    std::vector<Key> keys;
    for (std::size_t i = 0; i < shelf.plans.size(); ++i) {
        const PlanEntry& plan = shelf.plans[i];
        const std::string index = std::to_string(i), title = title_shown(s, plan.title);
        if (plan.readable) keys.push_back({"plan " + index, title + ". " + second_line(s, plan), app::AskShelf{ShelfAct::Open, plan.id}});
        keys.push_back({"plan more " + index, said(s, words::k_more_of_plan, {{"{title}", title}}), app::ChoosePlan{plan.id}});
    }
    if (shelf.has_deleted) keys.push_back({"bring back", said(s, words::k_bring_back), app::AskShelf{ShelfAct::BringBack, {}}});
    keys.push_back({"close plans", said(s, words::k_back_to_plan), app::ClosePlans{}});
    return keys;
}

}  // namespace

PlansWords plans_words(const app::State& s) {
    for (const PlanEntry& plan : s.shelf.plans) {
        if (plan.id != s.plans_screen->chosen) continue;
        PlansWords words{title_shown(s, plan.title), {second_line(s, plan)}, keys_for(s, plan)};
        if (!plan.readable) words.lines.push_back(said(s, words::k_why_unreadable));
        words.keys.push_back({"back to plans", said(s, words::k_back_to_list), app::ChoosePlan{}});
        return words;
    }
    PlansWords words{said(s, words::k_plans_heading), {}, all_keys(s)};
    for (std::string line : {deleted_text(s), keeping_text(s), s.shelf.plans.empty() ? said(s, words::k_none_kept) : std::string()})
        if (!line.empty()) words.lines.push_back(std::move(line));
    return words;
}

void draw_plans(Ui& ui, const app::State& state, Box box) {
    for (const PlanEntry& plan : state.shelf.plans)
        if (plan.id == state.plans_screen->chosen) return draw_chosen(ui, state, plan, box);
    draw_list(ui, state, box);
}

}  // namespace guywright::screens
