#include "engine/advice/change.hpp"
#include "engine/advice/halving.hpp"
#include "engine/plan/find_faults.hpp"
#include "tests/support/near_sound.hpp"
#include "tests/support/within.hpp"

#include <string>

using namespace guywright;

namespace {

Lever lever_for(const Plan& p, Input input, std::size_t subject = 0) {
    for (const Lever& lever : levers_of(p))
        if (lever.input == input && lever.subject == subject) return lever;
    FAIL("no such lever");
    return {};
}

Plan after(const Plan& p, Input input, double by, std::size_t subject = 0) {
    Plan out = p;
    REQUIRE(pull(lever_for(p, input, subject), by, out));
    REQUIRE(find_faults(out).empty());
    return out;
}

Model model_of(const Plan& p) {
    const BuiltModel b = build_model(p);
    REQUIRE(b.faults.empty());
    return b.model;
}

/// Everything that stands on the ground is where it was, to what a plan's digits can say.
void check_ground_same(const Plan& before, const Plan& now) {
    const Model a = model_of(before), b = model_of(now);
    for (std::size_t i = 0; i < a.guys.size(); ++i) CHECK_VEC_WITHIN(b.guys[i].anchor_m, a.guys[i].anchor_m, 2e-6);
    for (std::size_t i = 0; i < a.ropes.size(); ++i) CHECK_VEC_WITHIN(b.ropes[i].haul_m, a.ropes[i].haul_m, 2e-6);
}

}  // namespace

TEST_CASE("levers: leaning or moving the foot with the anchors staying moves no anchor and no haul") {
    Plan p = support::go_plan();
    p.guys[1].anchor_m = Vec3(-5.5, 1.5, 0.1);
    p.guys[2].anchor_height_m = 0.4;
    for (const Input input : {Input::LeanAnchorsStay, Input::FootOutAnchorsStay, Input::FootSideAnchorsStay}) {
        for (const double by : {-0.4, 0.7}) {
            const Plan now = after(p, input, by);
            check_ground_same(p, now);
            CHECK(glm::length(model_of(now).drawn_head_m - model_of(p).drawn_head_m) > 0.01);
        }
    }
}

TEST_CASE("levers: placed anew, anchors given from the plumb point go with it and anchors given by position stay") {
    Plan p = support::go_plan();
    p.guys[1].anchor_m = Vec3(-5.5, 1.5, 0.1);
    const Model a = model_of(p), b = model_of(after(p, Input::FootOutAnew, -0.3));
    CHECK_VEC_WITHIN(b.guys[0].anchor_m - a.guys[0].anchor_m, Vec3(-0.3, 0, 0), 1e-9);
    CHECK(b.guys[1].anchor_m == a.guys[1].anchor_m);
}

TEST_CASE("levers: an anchor given by position turns about the plumb point and moves along its bearing") {
    Plan p = support::go_plan();
    p.guys[0].anchor_m = Vec3(-6.0, -2.0, 0.3);
    const Vec3 head_m = model_of(p).drawn_head_m;
    const auto bearing = [&](const Plan& q) { return bearing_deg_of(*q.guys[0].anchor_m - head_m); };
    const auto away = [&](const Plan& q) { return std::hypot(q.guys[0].anchor_m->x - head_m.x, q.guys[0].anchor_m->y - head_m.y); };
    const Plan turned = after(p, Input::GuyBearing, 12.0), moved = after(p, Input::GuyDistance, -0.8);
    CHECK_WITHIN(bearing(turned), bearing(p) + 12.0, 1e-4);
    CHECK_WITHIN(away(turned), away(p), 1e-5);
    CHECK_WITHIN(bearing(moved), bearing(p), 1e-4);
    CHECK_WITHIN(away(moved), away(p) - 0.8, 1e-5);
    CHECK(moved.guys[0].anchor_m->z == 0.3);
}

TEST_CASE("levers: those for all guys raise what is below and lower nothing") {
    Plan p = support::go_plan();
    p.guys[0].pretension_kN = 0.1;
    p.guys[3].pretension_kN = 0.9;
    const Plan now = after(p, Input::AllPretensions, 0.4);
    CHECK(now.guys[0].pretension_kN == 0.5);
    CHECK(now.guys[1].pretension_kN == 0.5);
    CHECK(now.guys[3].pretension_kN == 0.9);
}

TEST_CASE("levers: what leaves a range cannot be pulled") {
    Plan p = support::go_plan();
    p.guys[0].parts = 9;
    const auto refused = [&](Input input, double by) {
        Plan q = p;
        return !pull(lever_for(p, input), by, q);
    };
    CHECK(refused(Input::Parts, 1.0));
    CHECK(refused(Input::Pretension, -0.5));
    CHECK(refused(Input::GuyInclination, 70.0));
    CHECK(refused(Input::HaulDistance, -9.0));
    CHECK(refused(Input::LeanAnew, 50.0));
    CHECK(refused(Input::HaulHeight, -1.0));  // into the ground
}

TEST_CASE("levers: cords come from the published ones, stronger than what is there") {
    Plan p = support::go_plan();
    p.guys[0].strength_kN = 6.0;
    const Lever lever = lever_for(p, Input::Cord);
    REQUIRE(lever.up.size() == 3);
    CHECK(after(p, Input::Cord, lever.up[0]).guys[0].strength_kN == 7.2);
    CHECK(after(p, Input::Cord, lever.up[2]).guys[0].strength_kN == 12.8);
    CHECK(lever.down.empty());
}

TEST_CASE("levers: a tripod does not lean, a rope tied off at the head has no haul to move, a full list takes no more") {
    Plan p = support::go_plan();
    p.ropes[0].haul.reset();
    while (p.guys.size() < k_max_guys) p.guys.push_back(support::guy("g" + std::to_string(p.guys.size()), 10.0, 30.0));
    const auto has = [](const Plan& q, Input input) {
        for (const Lever& lever : levers_of(q))
            if (lever.input == input) return true;
        return false;
    };
    CHECK_FALSE(has(p, Input::HaulBearing));
    CHECK_FALSE(has(p, Input::AddGuy));
    CHECK(has(p, Input::LeanAnchorsStay));
    p.frame.kind = FrameKind::Tripod;
    p.frame.legs.resize(legs_of(p.frame.kind), p.frame.legs[0]);
    p.feet.resize(p.frame.legs.size());
    CHECK_FALSE(has(p, Input::LeanAnchorsStay));
    CHECK_FALSE(has(p, Input::LeanAnew));
}

TEST_CASE("levers: the least effort comes first: buckles, then anchors, then the foot") {
    double last = 0.0;
    std::size_t seen = 0;
    for (const Lever& lever : levers_of(support::go_plan())) {
        CHECK(info(lever.input).effort >= last);
        last = info(lever.input).effort;
        ++seen;
    }
    CHECK(seen > 30);
    const auto most = [](Input input) { return info(input).effort + info(input).more_effort; };
    CHECK(most(Input::AllPretensions) < info(Input::GuyBearing).effort);
    CHECK(most(Input::GuyInclination) < info(Input::AddGuy).effort);
    CHECK(most(Input::Load) < info(Input::FootOutAnchorsStay).effort);
}

TEST_CASE("change: applying it gives the very plan that was tried, undoing it the very plan before") {
    int tried = 0;
    for (std::uint64_t i = 1; i <= 24; ++i) {
        const Plan p = support::random_spoilt(i);
        CAPTURE(i);
        for (const Lever& lever : levers_of(p)) {
            std::vector<double> sizes;
            if (lever.is_choice()) sizes = {0.0, static_cast<double>(lever.choices() - 1)};
            if (!lever.up.empty()) sizes.push_back(lever.up[lever.up.size() / 2]);
            if (!lever.down.empty()) sizes.push_back(-lever.down.front());
            for (const double by : sizes) {
                Plan wanted = p;
                if (!pull(lever, by, wanted)) continue;
                ++tried;
                const Advice advice{{change_of(p, lever, by)}, 0.0, 0.0};
                CHECK(applied(p, advice) == wanted);
                CHECK(undone(wanted, advice) == p);
            }
        }
    }
    CHECK(tried > 500);
}

TEST_CASE("halving: the smallest size that passes within 1 %, rounded up by at most 2 % to few digits") {
    Lever smooth;
    smooth.input = Input::GuyBearing;
    for (const double truth : {0.0123, 0.7, 3.99, 13.37, 41.1}) {
        Halving h(smooth, 0.0, 60.0);
        int asked = 0;
        for (; !h.done(); ++asked) h.tell(h.asks() >= truth);
        CAPTURE(truth);
        CHECK(h.size() >= truth);
        CHECK(h.size() <= truth * 1.03 + 0.006);
        CHECK(asked < 25);
    }
    CHECK(detail::rounded_up(4.137) == 4.15);
    CHECK(detail::rounded_up(0.3) == 0.3);
    CHECK(detail::rounded_up(7.0) == 7.0);
}

TEST_CASE("halving: a rounded size that does not pass is not taken, and whole numbers are not halved") {
    Lever smooth, whole;
    smooth.input = Input::GuyBearing;
    whole.input = Input::Parts;
    Halving narrow(smooth, 0.0, 8.0);
    while (!narrow.done()) narrow.tell(narrow.asks() >= 4.137 && narrow.asks() < 4.149);
    CHECK(narrow.size() >= 4.137);
    CHECK(narrow.size() <= 8.0);
    CHECK(Halving(whole, 1.0, 3.0).done());
}
