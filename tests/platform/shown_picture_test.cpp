#include <doctest/doctest.h>

#include <vector>

#include "wasm/platform/shown_picture.hpp"

using guywright::platform::ShownPicture;

namespace {

bool shows_anew(ShownPicture& picture, const std::vector<float>& corners, const std::vector<unsigned short>& order) {
    picture.add(std::span<const float>(corners));
    picture.add(std::span<const unsigned short>(order));
    return picture.replace();
}

}  // namespace

TEST_CASE("shown picture: the first one is drawn, an empty one too, the same again is not") {
    ShownPicture picture;
    CHECK(shows_anew(picture, {}, {}));
    CHECK_FALSE(shows_anew(picture, {}, {}));
    CHECK(shows_anew(picture, {1.0F, 2.0F}, {0, 1}));
    CHECK_FALSE(shows_anew(picture, {1.0F, 2.0F}, {0, 1}));
    CHECK_FALSE(shows_anew(picture, {1.0F, 2.0F}, {0, 1}));
}

TEST_CASE("shown picture: any difference is drawn, and going back from it is another") {
    const std::vector<float> corners{1.0F, 2.0F};
    ShownPicture picture;
    CHECK(shows_anew(picture, corners, {0, 1}));
    CHECK(shows_anew(picture, corners, {1, 0}));
    CHECK(shows_anew(picture, corners, {1, 0, 0}));
    CHECK(shows_anew(picture, {1.0F, 2.0000002F}, {1, 0, 0}));
    CHECK(shows_anew(picture, {1.0F}, {1, 0, 0}));
    CHECK(shows_anew(picture, corners, {0, 1}));
    CHECK_FALSE(shows_anew(picture, corners, {0, 1}));
}

TEST_CASE("shown picture: once forgotten it is drawn again, whatever it is") {
    ShownPicture picture;
    CHECK(shows_anew(picture, {1.0F}, {0}));
    picture.forget();
    CHECK(shows_anew(picture, {1.0F}, {0}));
    CHECK_FALSE(shows_anew(picture, {1.0F}, {0}));
}
