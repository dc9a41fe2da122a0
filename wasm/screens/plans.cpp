#include <algorithm>

#include "wasm/screens/key_grid.hpp"
#include "wasm/screens/parts.hpp"

// The list of the plans that the device keeps, and what can be done with one of them.
namespace guywright::screens {
namespace {

using app::Keeping;
using app::PlanEntry;
using app::ShelfAct;
using widgets::Box;
using widgets::ButtonLook;
using widgets::Ui;

constexpr const char* k_heading = "Plans kept on this device";
constexpr const char* k_none_kept = "No plan is kept yet. A plan is kept from its first change on.";
constexpr const char* k_no_title = "No name";
constexpr const char* k_open_now = "Open now, ";
constexpr const char* k_unreadable = "Cannot be read, ";
constexpr const char* k_why_unreadable =
    "This version of the app cannot read this plan: it is damaged, or from a newer version. It is kept as it is. Its text can be saved as a file.";
constexpr const char* k_more = "More";
constexpr const char* k_more_of = "More of ";
constexpr const char* k_back = "Back to the plan";
constexpr const char* k_back_to_list = "Back to the list";
constexpr const char* k_bring_back = "Bring back";
constexpr const char* k_next_page = "Next page";
constexpr const char* k_deleted = "Deleted last: ";
constexpr const char* k_open = "Open this plan";
constexpr const char* k_duplicate = "Duplicate";
constexpr const char* k_name = "Name this plan";
constexpr const char* k_save = "Save its file";
constexpr const char* k_delete = "Delete";

std::string_view keeping_text(Keeping keeping) {
    switch (keeping) {
        case Keeping::Unknown: return "";
        case Keeping::Protected: return "The browser has promised not to clear these plans.";
        case Keeping::MayBeCleared: return "The browser may clear these plans when space runs short or the app is long unused: save a file of what matters.";
        case Keeping::Denied: return "This browser keeps nothing: these plans are gone when the app closes. Save them as files.";
        case Keeping::Full: return "The storage is full and the last changes are not kept: save them as a file, and make space.";
    }
    return "";
}

constexpr float k_heading_px = 36.0F, k_after_heading_px = 8.0F;
constexpr float k_lowest_for_heading_px = 420.0F;
constexpr float k_row_margin_px = 10.0F;
constexpr float k_more_key_px = 84.0F;
constexpr float k_two_columns_px = 700.0F;

std::string title_shown(const PlanEntry& plan) { return plan.title.empty() ? k_no_title : plan.title; }

std::string second_line(const PlanEntry& plan) { return (plan.open ? k_open_now : plan.readable ? "" : k_unreadable) + plan.changed; }

std::string deleted_text(const app::Shelf& shelf) {
    if (!shelf.has_deleted) return {};
    return k_deleted + (shelf.deleted_title.empty() ? k_no_title : shelf.deleted_title) + ".";
}

float row_height(const Ui& ui, const PlanEntry& plan, float width) {
    const float text_px = width - k_more_key_px - k_between_keys_px - 2.0F * k_row_margin_px;
    return std::max(widgets::k_target_px,
                    widgets::text_height(ui.fonts.strong, title_shown(plan), text_px) + widgets::text_height(ui.fonts.text, second_line(plan), text_px) + 2.0F * k_row_margin_px);
}

/// A plan: a wide key that opens it, and a narrow one for all else.
void draw_plan(Ui& ui, Box row, const PlanEntry& plan, const std::string& index) {
    const Box more = row.cut_right(k_more_key_px, k_between_keys_px);
    if (widgets::button(ui, row, {"plan " + index, "", plan.open ? ButtonLook::Chosen : ButtonLook::Plain})) {
        if (plan.readable) ui.wish(app::AskShelf{ShelfAct::Open, plan.id});
        else ui.wish(app::ChoosePlan{plan.id});
    }
    const ImU32 ink = plan.open != ImGui::IsItemActive() ? ui.theme.field : ui.theme.ink;
    ui.mirror.back().label = title_shown(plan);
    ui.mirror.back().value = second_line(plan);
    const float text_px = row.w - 2.0F * k_row_margin_px;
    const float tall = widgets::text_height(ui.fonts.strong, title_shown(plan), text_px) + widgets::text_height(ui.fonts.text, second_line(plan), text_px);
    Box text{row.x + k_row_margin_px, row.y + (row.h - tall) / 2.0F, text_px, tall};
    text.cut_top(widgets::write(ui, ui.fonts.strong, text, title_shown(plan), ink));
    widgets::write(ui, ui.fonts.text, text, second_line(plan), ink);
    if (widgets::button(ui, more, {"plan more " + index, k_more})) ui.wish(app::ChoosePlan{plan.id});
}

struct Place {
    std::size_t page = 0;
    Box box;
};

/// Where each plan stands: down a column, the next column, the next page.
std::vector<Place> places_of(const Ui& ui, const std::vector<PlanEntry>& plans, const Box& box) {
    const std::size_t columns = box.w >= k_two_columns_px ? 2 : 1;
    const float wide = (box.w - static_cast<float>(columns - 1) * widgets::k_gap_px) / static_cast<float>(columns);
    std::vector<Place> places;
    std::size_t column = 0, page = 0;
    float used_px = 0.0F;
    for (const PlanEntry& plan : plans) {
        const float tall = row_height(ui, plan, wide);
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

void draw_list(Ui& ui, const app::State& state, Box box) {
    const app::Shelf& shelf = state.shelf;
    const Box keys = box.cut_bottom(widgets::k_target_px, k_between_keys_px);
    const std::string deleted = deleted_text(shelf);
    write_at_bottom(ui, box, "keeping", deleted + (deleted.empty() ? "" : " ") + std::string(keeping_text(shelf.keeping)));
    Box heading = box;
    if (box.h >= k_lowest_for_heading_px) box.cut_top(k_heading_px, k_after_heading_px);
    const std::vector<Place> places = places_of(ui, shelf.plans, box);
    const std::size_t pages = places.empty() ? 1 : places.back().page + 1, page = state.plans_screen->page % pages;
    draw_heading(ui, heading, k_heading, pages > 1 ? std::to_string(page + 1) + "/" + std::to_string(pages) : "");
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i].page == page) draw_plan(ui, places[i].box, shelf.plans[i], std::to_string(i));
    if (places.empty()) widgets::write(ui, ui.fonts.text, box, k_none_kept, ui.theme.ink);
    std::vector<Key> row{{"close plans", k_back, app::ClosePlans{}, ButtonLook::Action}};
    if (shelf.has_deleted) row.push_back({"bring back", k_bring_back, app::AskShelf{ShelfAct::BringBack, {}}});
    if (pages > 1) row.push_back({"next plans", k_next_page, app::NextPlansPage{}});
    draw_row(ui, keys, row);
}

std::vector<Key> keys_for(const PlanEntry& plan) {
    std::vector<Key> keys;
    if (plan.readable) keys.push_back({"open plan", k_open, app::AskShelf{ShelfAct::Open, plan.id}, ButtonLook::Action});
    if (plan.readable) keys.push_back({"duplicate plan", k_duplicate, app::AskShelf{ShelfAct::Duplicate, plan.id}});
    if (plan.open) keys.push_back({"name plan", k_name, app::AskForText{"title"}});
    keys.push_back({"save plan", k_save, app::AskShelf{ShelfAct::SaveText, plan.id}});
    keys.push_back({"delete plan", k_delete, app::AskShelf{ShelfAct::Delete, plan.id}});
    return keys;
}

void draw_chosen(Ui& ui, const PlanEntry& plan, Box box) {
    draw_row(ui, box.cut_bottom(widgets::k_target_px, k_between_keys_px), {{"back to plans", k_back_to_list, app::ChoosePlan{}}});
    ImFont* font = box.h < k_lowest_for_heading_px || widgets::text_width(ui.fonts.large, title_shown(plan)) > box.w ? ui.fonts.strong : ui.fonts.large;
    const Box title = box.cut_top(widgets::text_height(font, title_shown(plan), box.w), 4.0F);
    widgets::write(ui, font, title, title_shown(plan), ui.theme.ink);
    ui.mirror.push_back({"title", "heading", title_shown(plan), second_line(plan), title});
    const std::string words = plan.readable ? second_line(plan) : plan.changed + ". " + k_why_unreadable;
    widgets::write(ui, ui.fonts.text, box.cut_top(widgets::text_height(ui.fonts.text, words, box.w), k_between_keys_px), words, ui.theme.ink);
    const std::vector<Key> keys = keys_for(plan);
    draw_grid(ui, box, keys, grid_for(box, keys.size()));
}

std::vector<Key> all_keys(const app::Shelf& shelf) {
    std::vector<Key> keys;
    for (std::size_t i = 0; i < shelf.plans.size(); ++i) {
        const PlanEntry& plan = shelf.plans[i];
        const std::string index = std::to_string(i), title = title_shown(plan);
        if (plan.readable) keys.push_back({"plan " + index, title + ". " + second_line(plan), app::AskShelf{ShelfAct::Open, plan.id}});
        keys.push_back({"plan more " + index, k_more_of + title, app::ChoosePlan{plan.id}});
    }
    if (shelf.has_deleted) keys.push_back({"bring back", k_bring_back, app::AskShelf{ShelfAct::BringBack, {}}});
    keys.push_back({"close plans", k_back, app::ClosePlans{}});
    return keys;
}

}  // namespace

PlansWords plans_words(const app::State& state) {
    for (const PlanEntry& plan : state.shelf.plans) {
        if (plan.id != state.plans_screen->chosen) continue;
        PlansWords words{title_shown(plan), {second_line(plan)}, keys_for(plan)};
        if (!plan.readable) words.lines.emplace_back(k_why_unreadable);
        words.keys.push_back({"back to plans", k_back_to_list, app::ChoosePlan{}});
        return words;
    }
    PlansWords words{k_heading, {}, all_keys(state.shelf)};
    for (std::string line : {deleted_text(state.shelf), std::string(keeping_text(state.shelf.keeping)), std::string(state.shelf.plans.empty() ? k_none_kept : "")})
        if (!line.empty()) words.lines.push_back(std::move(line));
    return words;
}

void draw_plans(Ui& ui, const app::State& state, Box box) {
    for (const PlanEntry& plan : state.shelf.plans)
        if (plan.id == state.plans_screen->chosen) return draw_chosen(ui, plan, box);
    draw_list(ui, state, box);
}

}  // namespace guywright::screens
