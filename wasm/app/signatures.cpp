#include "wasm/app/signatures.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <optional>
#include <utility>

#include "engine/codec/plan_codec.hpp"

namespace guywright::app {
namespace {

using Json = nlohmann::ordered_json;

std::string text_at(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

const Json* list_at(const Json& object, const char* key) {
    if (!object.is_object()) return nullptr;
    const auto found = object.find(key);
    return found != object.end() && found->is_array() ? &*found : nullptr;
}

std::optional<Signatures> read_one(const Json& in) {
    const Json* people = list_at(in, "people");
    if (people == nullptr) return std::nullopt;
    PlanRead read = read_plan(text_at(in, "plan"));
    if (!read.ok()) return std::nullopt;
    Signatures out{text_at(in, "id"), std::move(read.plan), {}};
    for (const Json& p : *people)
        if (p.is_object()) out.people.push_back({text_at(p, "name"), text_at(p, "role"), text_at(p, "time")});
    return out;
}

}  // namespace

std::vector<Signatures> read_signatures(std::string_view json) {
    const Json in = Json::parse(json, nullptr, false);
    std::vector<Signatures> out;
    if (const Json* all = list_at(in, "signed"))
        for (const Json& each : *all)
            if (auto one = read_one(each)) out.push_back(std::move(*one));
    return out;
}

const Signatures* signatures_of(const std::vector<Signatures>& all, const Plan& plan) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Signatures& s) { return s.plan == plan; });
    return found == all.end() ? nullptr : &*found;
}

std::vector<std::string> fall_away(std::vector<Signatures>& all, const Plan& before) {
    std::vector<std::string> ids;
    for (const Signatures& s : all)
        if (s.plan == before) ids.push_back(s.id);
    std::erase_if(all, [&](const Signatures& s) { return s.plan == before; });
    return ids;
}

}  // namespace guywright::app
