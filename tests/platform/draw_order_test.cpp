#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/random.hpp"
#include "wasm/platform/draw_order.hpp"

using namespace guywright::platform;

namespace {

/// Rectangles of two triangles, four corners each.
struct Picture {
    std::vector<Corner> corners;
    std::vector<std::uint16_t> triangles;

    void rectangle(float left, float top, float width, float height, bool plain) {
        const auto first = static_cast<std::uint16_t>(corners.size());
        for (const auto& [x, y] : {std::pair{0.0F, 0.0F}, {1.0F, 0.0F}, {1.0F, 1.0F}, {0.0F, 1.0F}})
            corners.push_back({left + x * width, top + y * height, plain});
        for (const int i : {0, 1, 2, 0, 2, 3}) triangles.push_back(static_cast<std::uint16_t>(first + i));
    }
    [[nodiscard]] DrawOrder ordered() const {
        DrawOrder order;
        order.add(0, triangles, [this](std::uint16_t i) { return corners[i]; });
        return order;
    }
    [[nodiscard]] DrawnBox box_of(const std::uint16_t* triangle) const {
        DrawnBox box;
        for (int i = 0; i < 3; ++i) box.take(corners[triangle[i]]);
        return box;
    }
};

/// By the lot: a few large ones, many small ones, plain or letters.
Picture drawn(support::Random& lot) {
    Picture p;
    const int count = static_cast<int>(lot.between(1, 60));
    for (int i = 0; i < count; ++i) {
        const double size = lot.chance(0.15) ? 200.0 : 30.0;
        const auto number = [&](double most) { return static_cast<float>(lot.between(0.0, most)); };
        p.rectangle(number(400), number(400), number(size), number(size), lot.chance(0.5));
    }
    return p;
}

}  // namespace

TEST_CASE("draw order: nothing is lost, nothing comes twice, and no letter is drawn as one of one colour") {
    support::Random lot(11);
    for (int round = 0; round < 300; ++round) {
        const Picture p = drawn(lot);
        const DrawOrder order = p.ordered();
        auto before = p.triangles, after = order.indices();
        std::sort(before.begin(), before.end());
        std::sort(after.begin(), after.end());
        CHECK(before == after);
        std::size_t next = 0;
        for (const DrawOrder::Piece& piece : order.pieces()) {
            CHECK(piece.from == next);
            next += piece.count;
            for (std::size_t i = piece.from; piece.plain && i < next; ++i) CHECK(p.corners[order.indices()[i]].plain);
        }
        CHECK(next == order.indices().size());
    }
}

TEST_CASE("draw order: triangles that meet stay in their order") {
    support::Random lot(12);
    int passed = 0;  // by others, so that the test cannot pass where nothing moves
    for (int round = 0; round < 300; ++round) {
        const Picture p = drawn(lot);
        const std::vector<std::uint16_t> after = p.ordered().indices();
        // In each rectangle the corner that both triangles begin with is the lowest: a triangle's place before is told by its corners.
        const auto place = [](const std::uint16_t* t) { return 10 * t[0] + t[1]; };
        for (std::size_t i = 0; i < after.size(); i += 3)
            for (std::size_t k = i + 3; k < after.size(); k += 3) {
                if (place(&after[i]) < place(&after[k])) continue;
                ++passed;
                CHECK_FALSE(p.box_of(&after[i]).meets(p.box_of(&after[k])));
            }
    }
    CHECK(passed > 1000);
}

TEST_CASE("draw order: keys with their words are two calls, and a sheet over them two more") {
    Picture p;
    for (int i = 0; i < 6; ++i) {
        const float top = 80.0F * static_cast<float>(i);
        p.rectangle(10, top, 300, 72, true);
        p.rectangle(20, top + 20, 100, 18, false);
    }
    CHECK(p.ordered().pieces().size() == 2);
    p.rectangle(0, 0, 390, 800, true);
    p.rectangle(20, 20, 100, 18, false);
    const auto order = p.ordered();
    REQUIRE(order.pieces().size() == 4);
    CHECK(order.pieces()[2].plain);
    CHECK(order.pieces()[2].count == 6);
}

TEST_CASE("draw order: a small mark on letters is drawn with them, not by calls of its own") {
    Picture p;
    for (int i = 0; i < 5; ++i) {
        p.rectangle(20, 20, 100, 18, false);
        p.rectangle(40, 22, 8, 8, true);
    }
    const auto order = p.ordered();
    REQUIRE(order.pieces().size() == 1);
    CHECK_FALSE(order.pieces()[0].plain);
    CHECK(order.indices() == p.triangles);
}

TEST_CASE("draw order: what one clip holds stays with it") {
    Picture p;
    p.rectangle(0, 0, 50, 50, false);
    DrawOrder order;
    const auto corner = [&](std::uint16_t i) { return p.corners[i]; };
    order.add(3, p.triangles, corner);
    order.add(7, p.triangles, corner);
    REQUIRE(order.pieces().size() == 2);
    CHECK(order.pieces()[0].clip == 3);
    CHECK(order.pieces()[1].clip == 7);
    order.clear();
    CHECK(order.pieces().empty());
    CHECK(order.indices().empty());
}
