// Every key and every number of a plan, spoilt one at a time: the reader must refuse it and name exactly that path.
#include "engine/codec/fault_told.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/plan_codec.hpp"
#include "tests/support/full_plan.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include <functional>
#include <set>
#include <string>

using namespace guywright;

namespace {

using Json = nlohmann::ordered_json;

/// Calls `f(path, parent object, key)` for every key of every object of the document.
void each_key(Json& node, const std::string& path, const std::function<void(const std::string&, Json&, const std::string&)>& f) {
    if (node.is_array())
        for (std::size_t i = 0; i < node.size(); ++i) each_key(node[i], path + "[" + std::to_string(i) + "]", f);
    if (!node.is_object()) return;
    std::vector<std::string> keys;
    for (const auto& entry : node.items()) keys.push_back(entry.key());
    for (const std::string& key : keys) {
        const std::string inner = path.empty() ? key : path + "." + key;
        each_key(node[key], inner, f);
        f(inner, node, key);
    }
}

/// Calls `f(path, number)` for every number of the document but the version.
void each_number(Json& node, const std::string& path, const std::function<void(const std::string&, Json&)>& f) {
    if (node.is_number() && path != "version") f(path, node);
    if (node.is_array())
        for (std::size_t i = 0; i < node.size(); ++i) each_number(node[i], path + "[" + std::to_string(i) + "]", f);
    if (!node.is_object()) return;
    for (auto& entry : node.items()) each_number(entry.value(), path.empty() ? entry.key() : path + "." + entry.key(), f);
}

/// The full plan without its list of paths that are not measured: they would be right to complain when a key goes.
Json document() {
    Plan p = support::full_plan();
    p.not_measured.clear();
    return Json::parse(write_plan(p), nullptr, false);
}

void refuses_naming(const std::string& path, const std::string& text) {
    const PlanRead read = read_plan(text);
    INFO(path);
    REQUIRE(read.faults.size() == 1);
    CHECK(read.faults[0].path == path);
    CHECK_FALSE(read.faults[0].value.empty());
    CHECK_FALSE(read.faults[0].allowed.empty());
    CHECK_MESSAGE(has_words_for(k_french, read.faults[0]), to_string(read.faults[0]));
}

bool may_be_left_out(const std::string& path) {
    static const std::set<std::string> optional{"note",
                                                "tolerances",
                                                "limits",
                                                "candidate_anchor_strengths_kN",
                                                "edge.opening_m",
                                                "frame.foot_held_down",
                                                "frame.pole_diameter_mm",
                                                "frame.pole_wall_mm",
                                                "frame.pole_E_GPa",
                                                "frame.hobbles",
                                                "actions.guy_loss_must_hold"};
    const bool of_rope = path.starts_with("ropes[") && (path.ends_with(".strength_kN") || path.ends_with(".knot_efficiency"));
    return of_rope || optional.contains(path) || path.starts_with("tolerances.") || path.starts_with("limits.");
}

bool may_be_null(const std::string& path) { return path == "edge.compass_out_deg" || path == "edge.opening_m" || path.ends_with(".edge_y_m"); }

}  // namespace

TEST_CASE("read_plan: each key removed is missed by name, or may be left out") {
    Json whole = document();
    int refused = 0, accepted = 0;
    each_key(whole, "", [&](const std::string& path, Json& parent, const std::string& key) {
        const Json kept = parent;
        parent.erase(key);
        if (path == "guys[0].anchor_m") {
            // then the three keys it stands for are missing
            CHECK(read_plan(whole.dump()).faults.size() == 3);
        } else if (path == "candidate_anchors_m") {
            // may be left out, but then their strengths belong to nothing
            refuses_naming("candidate_anchor_strengths_kN", whole.dump());
        } else if (may_be_left_out(path)) {
            INFO(path);
            CHECK(read_plan(whole.dump()).ok());
            ++accepted;
        } else {
            refuses_naming(path, whole.dump());
            ++refused;
        }
        parent = kept;
    });
    CHECK(refused > 75);
    CHECK(accepted > 25);
}

TEST_CASE("read_plan: each key renamed is unknown by name") {
    Json whole = document();
    each_key(whole, "", [&](const std::string& path, Json& parent, const std::string& key) {
        const Json kept = parent;
        parent[key + "_"] = parent[key];
        refuses_naming(path + "_", whole.dump());
        parent = kept;
    });
}

TEST_CASE("read_plan: each number spoilt is refused by name") {
    Json whole = document();
    Plan plan = support::full_plan();
    int numbers = 0;
    each_number(whole, "", [&](const std::string& path, Json& number) {
        const NumberRef ref = find_number(plan, path);
        REQUIRE_MESSAGE(ref, path);
        const Json kept = number;
        number = ref.range.max * (1.0 + 1e-12) + 1e-9;
        refuses_naming(path, whole.dump());
        number = ref.range.min - 1e-9;
        refuses_naming(path, whole.dump());
        number = "12";
        refuses_naming(path, whole.dump());
        number = true;
        refuses_naming(path, whole.dump());
        number = nullptr;
        if (may_be_null(path)) CHECK(read_plan(whole.dump()).ok());
        else refuses_naming(path, whole.dump());
        for (const std::string literal : {"NaN", "-Infinity", "1e999"}) {
            number = "@";
            std::string text = whole.dump();
            refuses_naming(path, text.replace(text.find("\"@\""), 3, literal));
        }
        number = kept;
        ++numbers;
    });
    CHECK(numbers > 85);
}
