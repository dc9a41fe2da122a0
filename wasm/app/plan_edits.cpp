#include "wasm/app/plan_edits.hpp"

#include <algorithm>
#include <cmath>

#include "engine/model/build_model.hpp"
#include "engine/plan/find_faults.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

constexpr double k_first_opening_m = 2.0;
constexpr double k_first_pole_mm = 100.0;
constexpr double k_first_rope_kN = 25.0;

std::string at(std::string_view list, std::size_t index, std::string_view key = "") {
    return std::string(list) + "[" + std::to_string(index) + "]" + std::string(key);
}

Edited refuse(const Speech& speech, const Said& why) { return {std::string(say(speech, why)), {}}; }
Edited no_such(const Speech& speech) { return refuse(speech, words::k_gone); }

Edited too_many(const Speech& speech, const Said& why, std::size_t most) { return {say(speech, why, {{"{most}", std::to_string(most)}}), {}}; }

/// A name nothing on the list bears yet: "guy 4".
template <class T>
std::string free_name(const std::vector<T>& items, const std::string& what) {
    for (std::size_t n = items.size() + 1;; ++n) {
        std::string name = what + " " + std::to_string(n);
        if (std::none_of(items.begin(), items.end(), [&](const T& item) { return item.name == name; })) return name;
    }
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

Vec3 middle_of_feet(const Frame& frame) {
    Vec3 sum{0.0};
    for (const LegPlan& leg : frame.legs) sum += leg.foot_m;
    return sum / static_cast<double>(frame.legs.size());
}

double to_5_cm(double v) { return std::round(v * 20.0) / 20.0; }

/// Feet evenly around the middle: two side by side, three with one at the back. The head is then above them.
void place_feet(Frame& frame, Vec3 middle_m) {
    const std::size_t count = frame.legs.size();
    const double first_deg = count == 2 ? 90.0 : 180.0, away_m = count == 1 ? 0.0 : 0.4 * frame.legs[0].length_m;
    for (std::size_t i = 0; i < count; ++i) {
        const Vec3 foot = middle_m + away_m * along_bearing(radians(first_deg + 360.0 / static_cast<double>(count) * static_cast<double>(i)));
        frame.legs[i].foot_m = {to_5_cm(foot.x), to_5_cm(foot.y), to_5_cm(foot.z)};
    }
}

/// Whether a path is about the first leg or its foot, and not about the first of something else.
bool is_of_first_leg(std::string_view path) {
    if (path.starts_with("frame.hobbles") || !(path.starts_with("frame.") || path.starts_with("feet["))) return false;
    const std::size_t index = path.find('[');
    return index != std::string_view::npos && path.substr(index).starts_with("[0]");
}

/// A leg that joins has the first one's kit, and what was never entered of that is not entered here either.
void mark_new_legs(Plan& plan, std::size_t first_new) {
    const std::vector<std::string> before = plan.not_measured;
    for (std::size_t leg = first_new; leg < plan.frame.legs.size(); ++leg) {
        for (const std::string& path : before) {
            if (!is_of_first_leg(path)) continue;
            const std::size_t index = path.find('[');
            mark_not_measured(plan, path.substr(0, index) + at("", leg) + path.substr(index + 3));
        }
        mark_not_measured(plan, at("frame.leg_length_m", leg));
    }
}

/// Where the frame stands and what is measured from below its head.
void mark_site_not_measured(Plan& plan) {
    for (std::size_t leg = 0; leg < plan.frame.legs.size(); ++leg)
        for (const char* axis : {"[0]", "[1]"}) mark_not_measured(plan, at("frame.foot_m", leg, axis));
    if (plan.frame.kind == FrameKind::Monopod) forget_not_measured(plan, "frame.foot_m[0][1]");  // the line straight out starts at it
    if (plan.frame.kind == FrameKind::Tripod) forget_not_measured(plan, "frame.lean");
    else mark_not_measured(plan, "frame.lean_deg");
    for (std::size_t i = 0; i < plan.guys.size(); ++i)
        if (!plan.guys[i].anchor_m)
            for (const char* key : {".bearing_deg", ".inclination_deg"}) mark_not_measured(plan, at("guys", i, key));
    for (std::size_t i = 0; i < plan.ropes.size(); ++i)
        if (plan.ropes[i].haul)
            for (const char* key : {".haul.bearing_deg", ".haul.distance_m"}) mark_not_measured(plan, at("ropes", i, key));
}

/// Two feet side by side cannot lean along their own line.
void face_the_edge(Frame& frame) {
    if (frame.kind == FrameKind::AFrame && std::abs(std::cos(radians(frame.lean_bearing_deg))) < 0.2) frame.lean_bearing_deg = 0.0;
}

/// Each carries as much as the next, rounded up to whole percents.
void share_evenly(Plan& plan) {
    const double share = std::ceil(100.0 / static_cast<double>(plan.ropes.size())) / 100.0;
    for (RopePlan& rope : plan.ropes) rope.share = share;
    for (std::size_t i = 0; i < plan.ropes.size(); ++i) forget_not_measured(plan, at("ropes", i, ".share"));
}

/// Head and anchor of one guy as drawn; no faults only where both exist.
BuiltModel model_with_only(const Plan& plan, const GuyPlan& guy) {
    Plan alone = plan;
    alone.guys = {guy};
    alone.not_measured.clear();
    BuiltModel built;
    built.faults = find_faults(alone);
    return built.faults.empty() ? build_model(alone) : built;
}

/// An anchor entered the other way is as well known as before.
void carry_over_measured(Plan& plan, std::size_t guy, const std::vector<std::string>& from, const std::vector<std::string>& to) {
    const bool known = std::all_of(from.begin(), from.end(), [&](const std::string& key) { return is_measured(plan, at("guys", guy, key)); });
    for (const std::string& key : from) forget_not_measured(plan, at("guys", guy, key));
    for (const std::string& key : to)
        if (!known) mark_not_measured(plan, at("guys", guy, key));
}

const std::vector<std::string> k_by_bearing{".bearing_deg", ".inclination_deg", ".anchor_height_m"};
const std::vector<std::string> k_by_position{".anchor_m[0]", ".anchor_m[1]", ".anchor_m[2]"};

/// "The anchor cannot be entered that way", and why.
Edited cannot_turn(const Speech& speech, const Said& what, const std::string& name, const std::string& why) {
    return {say(speech, what, {{"{name}", name}}) + why, {}};
}

Edited anchor_to_position(Plan& plan, std::size_t i, const Speech& speech) {
    const BuiltModel built = model_with_only(plan, plan.guys[i]);
    if (!built.faults.empty())
        return cannot_turn(speech, words::k_not_by_position, plan.guys[i].name, "\n\n" + fault_told(language_of(speech), built.faults[0]));
    const Vec3 anchor_m = built.model.guys[0].anchor_m;
    for (const double v : {anchor_m.x, anchor_m.y, anchor_m.z})
        if (!range::coordinate_m.holds(v))
            return cannot_turn(speech, words::k_not_by_position, plan.guys[i].name,
                               " " + say(speech, words::k_too_far, {{"{far}", short_amount(speech, range::coordinate_m.max, "m")}}));
    plan.guys[i].anchor_m = anchor_m;
    carry_over_measured(plan, i, k_by_bearing, k_by_position);
    return {{}, at("guys", i, ".anchor_m[0]")};
}

Edited anchor_to_bearing(Plan& plan, std::size_t i, const Speech& speech) {
    GuyPlan& guy = plan.guys[i];
    const BuiltModel built = model_with_only(plan, guy);
    if (!built.faults.empty()) return cannot_turn(speech, words::k_not_by_bearing, guy.name, "\n\n" + fault_told(language_of(speech), built.faults[0]));
    const Vec3 offset_m = *guy.anchor_m - built.model.drawn_head_m;
    const double inclination_deg = degrees(std::atan2(-offset_m.z, std::hypot(offset_m.x, offset_m.y)));
    if (!range::inclination_deg.holds(inclination_deg)) {
        const Said& why = inclination_deg < range::inclination_deg.min ? words::k_too_high : words::k_under_the_head;
        return cannot_turn(speech, words::k_not_by_bearing, guy.name, " " + std::string(say(speech, why)));
    }
    guy.bearing_deg = bearing_deg_of(offset_m);
    guy.inclination_deg = inclination_deg;
    guy.anchor_height_m = guy.anchor_m->z;
    guy.anchor_m.reset();
    carry_over_measured(plan, i, k_by_position, k_by_bearing);
    return {{}, at("guys", i, ".bearing_deg")};
}

}  // namespace

void mark_guy_not_measured(Plan& plan, std::size_t guy) {
    for (const char* key : {".bearing_deg", ".inclination_deg", ".anchor_strength_kN"}) mark_not_measured(plan, at("guys", guy, key));
}

void mark_haul_not_measured(Plan& plan, std::size_t rope) {
    for (const char* key : {".haul.bearing_deg", ".haul.distance_m", ".haul.height_m"}) mark_not_measured(plan, at("ropes", rope, key));
}

Edited edit(Plan& plan, const SetKind& wish, const Speech&) {
    Frame& frame = plan.frame;
    if (frame.kind == wish.kind || frame.legs.empty() || plan.feet.empty()) return {};
    const Vec3 middle_m = middle_of_feet(frame);
    const std::size_t before = frame.legs.size(), now = legs_of(wish.kind);
    frame.kind = wish.kind;
    frame.legs.resize(now, LegPlan(frame.legs[0]));
    plan.feet.resize(now, FootPlan(plan.feet[0]));
    for (std::size_t i = frame.hobbles.size(); i-- > 0;)
        if (std::max(frame.hobbles[i].from, frame.hobbles[i].to) >= static_cast<int>(now)) remove_entry(plan, frame.hobbles, "frame.hobbles", i);
    place_feet(frame, middle_m);
    face_the_edge(frame);
    forget_what_is_gone(plan);
    mark_new_legs(plan, before);
    mark_site_not_measured(plan);
    return {};
}

Edited edit(Plan& plan, const SetPole& wish, const Speech& speech) {
    if (wish.leg >= plan.frame.legs.size()) return no_such(speech);
    LegPlan& leg = plan.frame.legs[wish.leg];
    for (const char* list : {"frame.pole_diameter_mm", "frame.pole_wall_mm", "frame.pole_E_GPa"}) forget_not_measured(plan, at(list, wish.leg));
    leg.pole_diameter_mm = wish.pole ? k_first_pole_mm : 0.0;
    leg.pole_wall_mm = 0.0;
    if (!wish.pole) return {};
    mark_not_measured(plan, at("frame.pole_diameter_mm", wish.leg));
    return {{}, at("frame.pole_diameter_mm", wish.leg)};
}

Edited edit(Plan& plan, const SetHeldDown& wish, const Speech& speech) {
    if (wish.leg >= plan.frame.legs.size()) return no_such(speech);
    plan.frame.legs[wish.leg].held_down = wish.held;
    return {};
}

Edited edit(Plan& plan, const AddHobble& wish, const Speech& speech) {
    const int legs = static_cast<int>(plan.frame.legs.size());
    if (wish.from < 0 || wish.to < 0 || wish.from >= legs || wish.to >= legs || wish.from == wish.to) return no_such(speech);
    if (plan.frame.hobbles.size() >= k_max_hobbles) return refuse(speech, words::k_feet_tied_already);
    plan.frame.hobbles.push_back({wish.from, wish.to});
    return {{}, at("frame.hobbles", plan.frame.hobbles.size() - 1, ".strength_kN")};
}

Edited edit(Plan& plan, const RemoveHobble& wish, const Speech& speech) {
    return remove_entry(plan, plan.frame.hobbles, "frame.hobbles", wish.hobble) ? Edited{} : no_such(speech);
}

Edited edit(Plan& plan, const SetOpening& wish, const Speech&) {
    plan.edge.opening_m = wish.there ? std::optional(k_first_opening_m) : std::nullopt;
    forget_what_is_gone(plan);
    if (!wish.there) return {};
    mark_not_measured(plan, "edge.opening_m");
    return {{}, "edge.opening_m"};
}

Edited edit(Plan& plan, const SetCompass& wish, const Speech&) {
    plan.edge.compass_out_deg = wish.known ? std::optional(0.0) : std::nullopt;
    forget_what_is_gone(plan);
    if (!wish.known) return {};
    mark_not_measured(plan, "edge.compass_out_deg");
    return {{}, "edge.compass_out_deg"};
}

Edited edit(Plan& plan, const AddRope&, const Speech& speech) {
    if (plan.ropes.size() >= k_max_ropes) return too_many(speech, words::k_most_ropes, k_max_ropes);
    RopePlan rope = plan.ropes.empty() ? RopePlan{} : plan.ropes.back();
    rope.name = free_name(plan.ropes, std::string(say(speech, words::k_new_rope)));
    plan.ropes.push_back(std::move(rope));
    share_evenly(plan);
    const std::size_t last = plan.ropes.size() - 1;
    mark_not_measured(plan, at("ropes", last, ".load_kg"));
    if (plan.ropes[last].haul) mark_haul_not_measured(plan, last);
    if (plan.ropes[last].strength_kN) mark_not_measured(plan, at("ropes", last, ".strength_kN"));
    return {{}, at("ropes", last, ".load_kg")};
}

Edited edit(Plan& plan, const RemoveRope& wish, const Speech& speech) {
    if (plan.ropes.size() < 2) return refuse(speech, words::k_one_rope);
    if (!remove_entry(plan, plan.ropes, "ropes", wish.rope)) return no_such(speech);
    share_evenly(plan);
    return {};
}

Edited edit(Plan& plan, const SetHaul& wish, const Speech& speech) {
    if (wish.rope >= plan.ropes.size()) return no_such(speech);
    auto& haul = plan.ropes[wish.rope].haul;
    if (haul.has_value() == wish.hauled) return {};
    haul = wish.hauled ? std::optional(Haul{}) : std::nullopt;
    forget_what_is_gone(plan);
    if (wish.hauled) mark_haul_not_measured(plan, wish.rope);
    return {};
}

Edited edit(Plan& plan, const SetRopeStrength& wish, const Speech& speech) {
    if (wish.rope >= plan.ropes.size()) return no_such(speech);
    plan.ropes[wish.rope].strength_kN = wish.known ? std::optional(k_first_rope_kN) : std::nullopt;
    forget_what_is_gone(plan);
    if (!wish.known) return {};
    mark_not_measured(plan, at("ropes", wish.rope, ".strength_kN"));
    return {{}, at("ropes", wish.rope, ".strength_kN")};
}

Edited edit(Plan& plan, const AddGuy&, const Speech& speech) {
    if (plan.guys.size() >= k_max_guys) return too_many(speech, words::k_most_guys, k_max_guys);
    GuyPlan g = plan.guys.empty() ? GuyPlan{} : plan.guys.back();
    g.name = free_name(plan.guys, std::string(say(speech, words::k_new_guy)));
    g.anchor_m.reset();
    g.bearing_deg = widest_gap_middle_deg(plan);
    plan.guys.push_back(std::move(g));
    const std::size_t last = plan.guys.size() - 1;
    mark_guy_not_measured(plan, last);
    if (plan.guys[last].anchor_height_m != 0.0) mark_not_measured(plan, at("guys", last, ".anchor_height_m"));  // the height of another anchor
    return {{}, at("guys", last, ".bearing_deg")};
}

Edited edit(Plan& plan, const RemoveGuy& wish, const Speech& speech) { return remove_entry(plan, plan.guys, "guys", wish.guy) ? Edited{} : no_such(speech); }

Edited edit(Plan& plan, const SetAnchorByPosition& wish, const Speech& speech) {
    if (wish.guy >= plan.guys.size()) return no_such(speech);
    if (plan.guys[wish.guy].anchor_m.has_value() == wish.by_position) return {};
    return wish.by_position ? anchor_to_position(plan, wish.guy, speech) : anchor_to_bearing(plan, wish.guy, speech);
}

Edited edit(Plan& plan, const AddFootTie& wish, const Speech& speech) {
    if (wish.foot >= plan.feet.size()) return no_such(speech);
    auto& ties = plan.feet[wish.foot].ties;
    if (ties.size() >= k_max_foot_ties) return too_many(speech, words::k_most_ties, k_max_foot_ties);
    ties.push_back({});
    const std::string path = at("feet", wish.foot, at(".ties", ties.size() - 1, ".bearing_deg"));
    mark_not_measured(plan, path);
    return {{}, path};
}

Edited edit(Plan& plan, const RemoveFootTie& wish, const Speech& speech) {
    if (wish.foot >= plan.feet.size()) return no_such(speech);
    return remove_entry(plan, plan.feet[wish.foot].ties, at("feet", wish.foot, ".ties"), wish.tie) ? Edited{} : no_such(speech);
}

Edited edit(Plan& plan, const SetGuyLossJudged& wish, const Speech&) {
    plan.actions.guy_loss_must_hold = wish.judged;
    return {};
}

}  // namespace guywright::app
