#include "wasm/platform/scale.hpp"

#include <doctest/doctest.h>

using guywright::platform::layout_scale;

TEST_CASE("layout_scale: usual screens at the usual text size") {
    CHECK(layout_scale(390, 844, 1) == 1.0F);
    CHECK(layout_scale(844, 390, 1) == 1.0F);
    CHECK(layout_scale(360, 640, 1) == 1.0F);
    CHECK(layout_scale(800, 1280, 1) == 1.25F);
    CHECK(layout_scale(1920, 1080, 1) == 1.25F);
}

TEST_CASE("layout_scale: larger text as far as there is room, never smaller than usual for it") {
    CHECK(layout_scale(1920, 1080, 2) == 2.5F);
    CHECK(layout_scale(390, 844, 2) > 1.05F);
    CHECK(390 / layout_scale(390, 844, 2) >= 359.9F);
    CHECK(layout_scale(800, 1280, 2) > 2.0F);
    CHECK(layout_scale(390, 844, 0.5F) == 1.0F);
    CHECK(layout_scale(390, 844, 20) == layout_scale(390, 844, 2));
}

TEST_CASE("layout_scale: on little room everything becomes smaller instead of leaving the screen") {
    for (const auto& [w, h] : {std::pair{360.0F, 300.0F}, {195.0F, 422.0F}, {320.0F, 256.0F}, {422.0F, 195.0F}, {240.0F, 700.0F}}) {
        const float s = layout_scale(w, h, 1);
        CHECK(s < 1.0F);
        CHECK(((w / s >= 359.9F && h / s >= 583.9F) || (w / s >= 759.9F && h / s >= 373.9F)));
    }
}
