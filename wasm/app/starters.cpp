#include "wasm/app/starters.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace guywright::app {
namespace {

std::string guy_path(std::size_t guy, std::string_view key) {
    return "guys[" + std::to_string(guy) + "]." + std::string(key);
}

/// What can differ from guy to guy and only the person on site knows.
constexpr std::array<std::string_view, 3> k_measured_per_guy{"bearing_deg", "inclination_deg", "anchor_strength_kN"};

void mark_guy_not_measured(Plan& plan, std::size_t guy) {
    for (std::string_view key : k_measured_per_guy) plan.not_measured.push_back(guy_path(guy, key));
}

GuyPlan guy_at(std::string name, double bearing_deg) {
    GuyPlan g;
    g.name = std::move(name);
    g.bearing_deg = bearing_deg;
    return g;
}

/// Middle of the widest gap between the guys' bearings, whole degrees.
double widest_gap_middle_deg(const Plan& plan) {
    std::vector<double> bearings;
    for (const GuyPlan& g : plan.guys)
        if (!g.anchor_m) bearings.push_back(g.bearing_deg);
    if (bearings.empty()) return 180.0;
    std::sort(bearings.begin(), bearings.end());
    bearings.push_back(bearings.front() + 360.0);
    std::size_t widest = 0;
    for (std::size_t i = 0; i + 1 < bearings.size(); ++i)
        if (bearings[i + 1] - bearings[i] > bearings[widest + 1] - bearings[widest]) widest = i;
    return std::fmod(std::round((bearings[widest] + bearings[widest + 1]) / 2.0), 360.0);
}

/// A name no guy bears yet.
std::string free_name(const Plan& plan) {
    for (std::size_t n = plan.guys.size() + 1;; ++n) {
        std::string name = "guy " + std::to_string(n);
        if (std::none_of(plan.guys.begin(), plan.guys.end(), [&](const GuyPlan& g) { return g.name == name; })) return name;
    }
}

}  // namespace

Plan new_plan() {
    Plan plan;
    plan.title = "New rig";
    plan.ropes.push_back({});
    plan.ropes[0].haul = Haul{};
    plan.guys = {guy_at("back", 180.0), guy_at("right", 70.0), guy_at("left", 290.0)};
    plan.feet.push_back({});
    plan.feet[0].ties = {{.bearing_deg = 0.0}, {.bearing_deg = 180.0}};
    plan.not_measured = {"edge.face_deg", "frame.foot_m[0][0]", "frame.leg_length_m[0]", "frame.lean_deg", "frame.leg_rating_kN[0]",
                         "ropes[0].load_kg", "ropes[0].haul.bearing_deg", "ropes[0].haul.distance_m", "ropes[0].haul.height_m"};
    for (std::size_t i = 0; i < plan.guys.size(); ++i) mark_guy_not_measured(plan, i);
    return plan;
}

void add_guy(Plan& plan) {
    if (plan.guys.size() >= k_max_guys) return;
    GuyPlan g = plan.guys.empty() ? GuyPlan{} : plan.guys.back();
    g.name = free_name(plan);
    g.anchor_m.reset();
    g.bearing_deg = widest_gap_middle_deg(plan);
    plan.guys.push_back(g);
    mark_guy_not_measured(plan, plan.guys.size() - 1);
}

void remove_guy(Plan& plan, std::size_t guy) {
    if (guy >= plan.guys.size()) return;
    plan.guys.erase(plan.guys.begin() + static_cast<std::ptrdiff_t>(guy));
    std::vector<std::string> kept;
    for (const std::string& path : plan.not_measured) {
        if (path.rfind(guy_path(guy, ""), 0) == 0) continue;
        std::string moved = path;
        for (std::size_t later = guy + 1; later <= plan.guys.size(); ++later)
            if (const std::string prefix = guy_path(later, ""); path.rfind(prefix, 0) == 0)
                moved = guy_path(later - 1, path.substr(prefix.size()));
        kept.push_back(std::move(moved));
    }
    plan.not_measured = std::move(kept);
}

}  // namespace guywright::app
