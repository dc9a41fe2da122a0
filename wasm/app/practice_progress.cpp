#include "wasm/app/practice_progress.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace guywright::app {
namespace {

using Json = nlohmann::ordered_json;

/// In the order of LessonId. What stands in a store is never renamed.
constexpr std::array<std::string_view, k_lesson_count> k_lesson_keys{"resultant", "guy_angle",   "edge_wrap",  "slack",           "redundancy",
                                                                     "foot",      "pulley_load", "pretension", "measuring_error", "order_of_work"};

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

/// Lessons that this version does not know are passed over.
LessonsDone read_lessons(const Json& in) {
    LessonsDone done;
    if (!in.is_array()) return done;
    for (const Json& name : in) {
        const auto at = name.is_string() ? std::find(k_lesson_keys.begin(), k_lesson_keys.end(), name.get<std::string>()) : k_lesson_keys.end();
        if (at != k_lesson_keys.end()) done.set(static_cast<std::size_t>(at - k_lesson_keys.begin()));
    }
    return done;
}

}  // namespace

std::string progress_json(const Progress& progress) {
    Json levels = Json::array();
    for (const LevelScore& l : progress.levels) levels.push_back({l.sites, l.verdict, l.guy, l.angle});
    Json lessons = Json::array();
    for (std::size_t i = 0; i < k_lesson_count; ++i)
        if (progress.lessons.test(i)) lessons.push_back(k_lesson_keys[i]);
    return Json{{"levels", std::move(levels)}, {"lessons", std::move(lessons)}}.dump();
}

Progress read_progress(std::string_view json) {
    const Json in = Json::parse(json, nullptr, false);
    Progress out;
    if (!in.is_object()) return out;
    if (in.contains("lessons")) out.lessons = read_lessons(in["lessons"]);
    if (!in.contains("levels") || !in["levels"].is_array()) return out;
    const Json& levels = in["levels"];
    for (std::size_t i = 0; i < std::min(levels.size(), out.levels.size()); ++i) out.levels[i] = read_level(levels[i]);
    return out;
}

}  // namespace guywright::app
