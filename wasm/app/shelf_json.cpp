#include "wasm/app/shelf_json.hpp"

#include <array>

#include "wasm/app/json_text.hpp"

namespace guywright::app {
namespace {

Json parsed(std::string_view text) { return Json::parse(text, nullptr, false); }

std::string text_at(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

bool flag_at(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_boolean() && found->get<bool>();
}

Keeping keeping_called(std::string_view name) {
    if (name == "protected") return Keeping::Protected;
    if (name == "may be cleared") return Keeping::MayBeCleared;
    if (name == "denied") return Keeping::Denied;
    return name == "full" ? Keeping::Full : Keeping::Unknown;
}

}  // namespace

std::string save_json(const Save& save) {
    Json steps = Json::array();
    for (const auto& [number, text] : save.steps) steps.push_back({number, text});
    const Json out = {{"document", save.document}, {"title", save.title},   {"first", save.first},         {"number", save.number},
                      {"last", save.last},         {"begins", save.begins}, {"untouched", save.untouched}, {"steps", std::move(steps)}};
    return text_of(out);
}

std::string_view act_name(ShelfAct act) {
    constexpr std::array<std::string_view, 6> names{"list", "open", "duplicate", "delete", "bring back", "save text"};
    return names[static_cast<std::size_t>(act)];
}

std::optional<Shelf> read_shelf(std::string_view json) {
    const Json in = parsed(json);
    const auto plans = in.find("plans");
    if (!in.is_object() || plans == in.end() || !plans->is_array()) return std::nullopt;
    Shelf shelf;
    for (const Json& p : *plans)
        shelf.plans.push_back({text_at(p, "id"), text_at(p, "title"), text_at(p, "changed"), flag_at(p, "readable"), flag_at(p, "open")});
    shelf.has_deleted = in.contains("deleted") && in["deleted"].is_string();
    shelf.deleted_title = text_at(in, "deleted");
    shelf.keeping = keeping_called(text_at(in, "keeping"));
    return shelf;
}

}  // namespace guywright::app
