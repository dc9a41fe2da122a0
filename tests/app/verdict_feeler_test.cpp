#include "wasm/app/verdict_feeler.hpp"

#include <doctest/doctest.h>

using namespace guywright;
using guywright::app::VerdictFeeler;

TEST_CASE("VerdictFeeler: a change is felt once, the start and the checking are not") {
    VerdictFeeler feeler;
    CHECK_FALSE(feeler.look(Verdict::NotChecked, true).has_value());
    CHECK_FALSE(feeler.look(Verdict::Go, false).has_value());
    CHECK_FALSE(feeler.look(Verdict::NotChecked, true).has_value());  // a slider moves
    CHECK_FALSE(feeler.look(Verdict::Go, false).has_value());
    CHECK(feeler.look(Verdict::NoGo, true) == Verdict::NoGo);  // broken as measured: at once
    CHECK_FALSE(feeler.look(Verdict::NoGo, false).has_value());
    CHECK(feeler.look(Verdict::NotChecked, false) == Verdict::NotChecked);
    CHECK(feeler.look(Verdict::Go, false) == Verdict::Go);
}
