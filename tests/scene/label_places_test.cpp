#include "tests/support/random.hpp"
#include "tests/support/within.hpp"
#include "wasm/scene/label_places.hpp"

using namespace guywright;
using namespace guywright::scene;

namespace {

constexpr ImageBox k_frame{{0, 0}, {300, 200}};

LabelWish wish(int rank, std::vector<Vec2> places) { return {{80, 20}, rank, std::move(places), {}}; }

}  // namespace

TEST_CASE("labels: the more important one gets the place, the other its next one or none") {
    const std::vector<LabelWish> both{wish(5, {{150, 100}, {150, 150}}), wish(1, {{150, 100}})};
    const auto at = place_labels(both, k_frame, {}, {});
    REQUIRE(at[1].has_value());
    CHECK(*at[1] == Vec2(150, 100));
    REQUIRE(at[0].has_value());
    CHECK(*at[0] == Vec2(150, 150));
    const auto less = place_labels(std::vector<LabelWish>{wish(5, {{150, 100}}), wish(1, {{150, 105}})}, k_frame, {}, {});
    CHECK(less[1].has_value());
    CHECK_FALSE(less[0].has_value());
}

TEST_CASE("labels: a place that sticks out a little is moved in, one far outside is not used") {
    const auto at = place_labels(std::vector<LabelWish>{wish(0, {{35, 100}}), wish(0, {{-60, 20}})}, k_frame, {}, {});
    REQUIRE(at[0].has_value());
    CHECK(*at[0] == Vec2(40, 100));
    CHECK_FALSE(at[1].has_value());
}

TEST_CASE("labels: nothing is written over a taken box, and off a line rather than on it") {
    const std::vector<LabelWish> one{wish(0, {{150, 100}, {150, 160}})};
    const auto off_box = place_labels(one, k_frame, {{{140, 95}, {160, 105}}}, {});
    REQUIRE(off_box[0].has_value());
    CHECK(*off_box[0] == Vec2(150, 160));
    const std::vector<DrawnLine> lines{{{0, 100}, {300, 100}}};
    const auto off_line = place_labels(one, k_frame, {}, lines);
    REQUIRE(off_line[0].has_value());
    CHECK(*off_line[0] == Vec2(150, 160));
    const auto on_line = place_labels(std::vector<LabelWish>{wish(0, {{150, 100}})}, k_frame, {}, lines);
    CHECK(on_line[0].has_value());
}

TEST_CASE("labels: one that speaks of a line does not stand where it would be read as another line's") {
    const DrawnLine own{{0, 100}, {300, 100}}, other{{0, 75}, {300, 75}};
    LabelWish w = wish(0, {{150, 60}, {150, 87}, {150, 115}});  // beyond the other, between the two, on the free side
    w.own = own;
    const auto at = place_labels(std::vector<LabelWish>{w}, k_frame, {}, std::array{own, other});
    REQUIRE(at[0].has_value());
    CHECK(*at[0] == Vec2(150, 115));
    const std::array lines{own, other};
    CHECK(detail::cut_off({150, 60}, own, lines));  // then a leader is drawn
    CHECK_FALSE(detail::cut_off({150, 87}, own, lines));
}

TEST_CASE("labels: a frame too small for any label gets none") {
    CHECK_FALSE(place_labels(std::vector<LabelWish>{wish(0, {{20, 10}})}, {{0, 0}, {40, 40}}, {}, {})[0].has_value());
}

TEST_CASE("labels: never over each other, never out of the frame") {
    support::Random random(11);
    for (int round = 0; round < 40; ++round) {
        std::vector<LabelWish> wishes;
        for (int i = 0; i < 14; ++i) {
            const Vec2 size{random.between(20, 120), 20}, at{random.between(-30, 330), random.between(-30, 230)};
            wishes.push_back({size, random.whole(0, 5), places_round(at, size, 8.0, {1, 0}), {}});
        }
        const auto places = place_labels(wishes, k_frame, {}, {});
        for (std::size_t i = 0; i < places.size(); ++i) {
            if (!places[i]) continue;
            const ImageBox a{*places[i] - 0.5 * wishes[i].size_px, *places[i] + 0.5 * wishes[i].size_px};
            CHECK(a.min.x >= k_frame.min.x);
            CHECK(a.min.y >= k_frame.min.y);
            CHECK(a.max.x <= k_frame.max.x);
            CHECK(a.max.y <= k_frame.max.y);
            for (std::size_t j = 0; j < i; ++j) {
                if (!places[j]) continue;
                const ImageBox b{*places[j] - 0.5 * wishes[j].size_px, *places[j] + 0.5 * wishes[j].size_px};
                CHECK_FALSE(detail::overlap(a, b));
            }
        }
    }
}

TEST_CASE("places along a line: the first ones are clear of it, above it") {
    for (const DrawnLine line : {DrawnLine{{0, 0}, {200, 150}}, DrawnLine{{200, 0}, {0, 150}}, DrawnLine{{0, 80}, {200, 80}}}) {
        const std::vector<Vec2> places = places_along(line, {80, 20}, 4.0);
        Vec2 a = line.a, b = line.b;
        CHECK_FALSE(cut_to_box(a, b, places[0] - Vec2{40, 10}, places[0] + Vec2{40, 10}));
        CHECK(places[0].y < 0.5 * (line.a.y + line.b.y));
    }
    for (const Vec2 p : places_along({{50, 50}, {50, 50}}, {80, 20}, 4.0)) CHECK(std::isfinite(p.x + p.y));
}
