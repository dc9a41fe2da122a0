#include "wasm/app/practice_progress.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace guywright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr unsigned k_most_sites = 1'000'000;

LevelScore read_level(const Json& in) {
    std::array<unsigned, 4> n{};
    if (!in.is_array() || in.size() != n.size()) return {};
    for (std::size_t i = 0; i < n.size(); ++i) {
        if (!in[i].is_number_unsigned() || in[i].get<std::uint64_t>() > k_most_sites) return {};
        n[i] = in[i].get<unsigned>();
    }
    return std::max({n[1], n[2], n[3]}) <= n[0] ? LevelScore{n[0], n[1], n[2], n[3]} : LevelScore{};
}

}  // namespace

std::string progress_json(const Progress& progress) {
    Json levels = Json::array();
    for (const LevelScore& l : progress.levels) levels.push_back({l.sites, l.verdict, l.guy, l.angle});
    return Json{{"levels", std::move(levels)}}.dump();
}

Progress read_progress(std::string_view json) {
    const Json in = Json::parse(json, nullptr, false);
    Progress out;
    if (!in.is_object() || !in.contains("levels") || !in["levels"].is_array()) return out;
    const Json& levels = in["levels"];
    for (std::size_t i = 0; i < std::min(levels.size(), out.levels.size()); ++i) out.levels[i] = read_level(levels[i]);
    return out;
}

}  // namespace guywright::app
