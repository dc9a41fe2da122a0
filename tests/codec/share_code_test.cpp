#include "engine/codec/share_code.hpp"
#include "tests/support/full_plan.hpp"
#include "tests/support/random_plan.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <numeric>
#include <string>
#include <vector>

using namespace guywright;

namespace {

using Texts = std::vector<std::string>;

Plan plan_from(const Texts& texts) {
    const ShareRead read = read_share(texts);
    REQUIRE(read.state == ShareState::Whole);
    return read.plan;
}

void check_goes_over(const Plan& plan) {
    REQUIRE(find_faults(plan).empty());
    const Texts texts = share_texts(plan);
    REQUIRE_FALSE(texts.empty());
    const Plan again = plan_from(texts);
    CHECK(canonical_plan_text(again) == canonical_plan_text(plan));
    CHECK(check_code(again) == check_code(plan));
    CHECK(share_texts(again) == texts);
}

/// Six guys and two ropes, every number measured and none like another.
Plan six_guys(bool long_numbers) {
    Plan p = support::full_plan();
    p.title = "Spillway bench, second bay from the left";
    p.note = "Anchor 4 is a boulder; look at it again after rain.";
    const char* names[]{"back left", "back", "back right", "side right", "front", "side left"};
    support::Random r(7);
    p.guys.assign(6, GuyPlan{});
    const double step = long_numbers ? 0.0 : 0.01;
    for (std::size_t i = 0; i < 6; ++i) {
        GuyPlan& g = p.guys[i];
        const auto measured = [&](double low, double high) {
            const double v = r.between(low, high);
            return step > 0.0 ? std::round(v / step) / (1.0 / step) : v;
        };
        g.name = names[i];
        g.bearing_deg = measured(0.0, 359.0);
        g.inclination_deg = measured(20.0, 40.0);
        g.anchor_height_m = measured(-1.0, 1.0);
        g.EA_kN = measured(20.0, 90.0);
        g.strength_kN = measured(9.0, 30.0);
        g.pretension_kN = measured(0.1, 0.9);
        g.anchor_strength_kN = measured(8.0, 20.0);
        g.parts = 1 + static_cast<int>(i % 3);
    }
    return p;
}

Plan largest_plan() {
    Plan p = support::full_plan();
    support::Random r(3);
    p.note.clear();
    for (int i = 0; i < static_cast<int>(k_longest_note); ++i) p.note += static_cast<char>('!' + r.whole(0, 90));
    while (p.guys.size() < k_max_guys) p.guys.push_back(p.guys[2]);
    for (std::size_t i = 0; i < p.guys.size(); ++i) p.guys[i].name = "guy " + std::to_string(i);
    for_each_number(p, [&](const std::string&, double& v, const Range& range) {
        const double other = v * (1.0 - 0.001 * r.between(0.0, 1.0));
        if (range.holds(other)) v = other;
    });
    return p;
}

std::string read_text(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

const std::filesystem::path k_root = GUYWRIGHT_ROOT;

}  // namespace

TEST_CASE("share code: every key comes back as it was, byte for byte") {
    check_goes_over(support::full_plan());
    check_goes_over(support::steep_plan());
    for (const auto& file : std::filesystem::directory_iterator(k_root / "assets/examples")) check_goes_over(read_plan(read_text(file.path())).plan);
}

TEST_CASE("share code: random plans come back byte for byte") {
    int shared = 0;
    for (std::uint64_t i = 0; i < 400; ++i)
        for (const Plan& p : {support::random_monopod(i), support::random_a_frame(i), support::random_tripod(i)}) {
            if (!find_faults(p).empty()) continue;
            ++shared;
            check_goes_over(p);
        }
    CHECK(shared > 1000);
}

TEST_CASE("share code: no number of a plan can be forgotten") {
    const Plan p = support::full_plan();
    const Texts before = share_texts(p);
    Plan q = p;
    int numbers = 0;
    for_each_number(support::full_plan(), [&](const std::string& path, double v, const Range& r) {
        CAPTURE(path);
        const NumberRef number = find_number(q, path);
        REQUIRE(number.set(number.whole != nullptr ? v + 1.0 : std::nextafter(v, v < r.max ? r.max : r.min)));
        ++numbers;
        if (find_faults(q).empty()) {
            CHECK(share_texts(q) != before);
            check_goes_over(q);
        }
        number.set(v);
    });
    CHECK(numbers > 85);
}

TEST_CASE("share code: a plan with six guys and two ropes fits one QR code") {
    const Texts measured = share_texts(six_guys(false)), computed = share_texts(six_guys(true));
    REQUIRE(measured.size() == 1);
    REQUIRE(computed.size() == 1);
    MESSAGE("six guys, two ropes: " << measured[0].size() << " signs; every number with all digits: " << computed[0].size() << " of " << k_longest_share_text);
    CHECK(measured[0].size() <= 600);  // QR version 15 at M: readable from an arm's length
    CHECK(computed[0].size() <= k_longest_share_text);
    check_goes_over(six_guys(false));
    check_goes_over(six_guys(true));
}

TEST_CASE("share code: the signs are those of the alphanumeric mode and survive a shell's blanks") {
    const std::string text = share_texts(six_guys(false)).at(0);
    CHECK(text.find_first_not_of("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$*-.:") == std::string::npos);
    CHECK(read_share(Texts{"  " + text + "\r\n"}).state == ShareState::Whole);
}

TEST_CASE("share code: a large plan is several codes, read in any order") {
    const Plan p = largest_plan();
    Texts texts = share_texts(p);
    REQUIRE(texts.size() > 2);
    for (const std::string& text : texts) CHECK(text.size() <= k_longest_share_text);
    std::rotate(texts.begin(), texts.begin() + 1, texts.end());
    std::swap(texts[0], texts[1]);
    CHECK(canonical_plan_text(plan_from(texts)) == canonical_plan_text(p));
    for (std::size_t n = 1; n < texts.size(); ++n) {
        const ShareRead read = read_share(std::span(texts).first(n));
        CHECK(read.state == ShareState::Waiting);
        CHECK(read.total == texts.size());
        CHECK(read.have.size() == n);
        CHECK(std::is_sorted(read.have.begin(), read.have.end()));
    }
    texts.insert(texts.begin(), texts[2]);  // twice the same
    CHECK(read_share(texts).state == ShareState::Whole);
}

TEST_CASE("share code: pieces of another plan are not mixed in") {
    Plan p = largest_plan();
    const Texts first = share_texts(p);
    p.note[0] = p.note[0] == 'x' ? 'y' : 'x';
    const Texts second = share_texts(p);
    REQUIRE(first.size() == second.size());
    Texts mixed(first.begin(), first.end() - 1);
    mixed.push_back(second.back());
    const ShareRead read = read_share(mixed);
    CHECK(read.state == ShareState::Waiting);
    CHECK(read.have == std::vector<std::size_t>{first.size() - 1});
}

TEST_CASE("share code: every flipped bit and every lost end is refused") {
    const std::string text = share_texts(six_guys(false)).at(0);
    const std::string bytes = detail::from_signs(std::string_view(text).substr(k_share_mark.size())).value();
    for (std::size_t bit = 0; bit < 8 * bytes.size(); ++bit) {
        std::string other = bytes;
        other[bit / 8] = static_cast<char>(other[bit / 8] ^ (1 << (bit % 8)));
        CHECK(read_share(Texts{std::string(k_share_mark) + detail::in_signs(other)}).state == ShareState::Damaged);
    }
    for (std::size_t length = k_share_mark.size(); length < text.size(); ++length)
        CHECK(read_share(Texts{text.substr(0, length)}).state == ShareState::Damaged);
    CHECK(read_share(Texts{text + "0"}).state == ShareState::Damaged);
    CHECK(read_share(Texts{text + std::string(2000, '0')}).state == ShareState::Damaged);
}

TEST_CASE("share code: what is not ours is foreign") {
    for (const char* text : {"", "HELLO", "WIFI:S:camp;;", "guyw", "{\"format\":\"guywright-plan\"}", "\xFF\x00\x01"}) {
        CAPTURE(text);
        CHECK(read_share(Texts{text}).state == ShareState::Foreign);
    }
    CHECK(read_share(Texts{}).state == ShareState::Foreign);
}

TEST_CASE("share code: a later version says so") {
    std::string bytes = detail::from_signs(std::string_view(share_texts(support::steep_plan()).at(0)).substr(k_share_mark.size())).value();
    bytes.resize(bytes.size() - detail::k_crc_bytes);
    bytes[0] = static_cast<char>(k_share_version + 1);
    const std::string text = std::string(k_share_mark) + detail::in_signs(bytes + detail::four_bytes(detail::crc32(bytes)));
    CHECK(read_share(Texts{text}).state == ShareState::Newer);
}

TEST_CASE("share code: a plan with faults has no code, and no code gives a plan with faults") {
    Plan p = support::steep_plan();
    p.edge.face_deg = 200.0;
    CHECK(share_texts(p).empty());
    CHECK(read_share(detail::share_texts_of(detail::share_body(p))).state == ShareState::Damaged);
    p.edge.face_deg = std::nan("");
    CHECK(share_texts(p).empty());
}

TEST_CASE("share code: a key that joined later is left as usual by older codes, and read from newer ones") {
    constexpr std::array since{ShareKey{"guys.pretension_kN", 2}, ShareKey{"limits", 2}};
    const Plan p = support::full_plan();
    const auto older = detail::read_share_body(detail::share_body(p, 1, since), 1, since);
    REQUIRE(older.has_value());
    Plan expected = p;
    for (GuyPlan& g : expected.guys) g.pretension_kN = GuyPlan{}.pretension_kN;
    expected.limits = Limits{};
    CHECK(canonical_plan_text(*older) == canonical_plan_text(expected));
    const auto newer = detail::read_share_body(detail::share_body(p, 2, since), 2, since);
    REQUIRE(newer.has_value());
    CHECK(canonical_plan_text(*newer) == canonical_plan_text(p));
}

TEST_CASE("share code: a code printed by version 1 can be read for ever") {
    // If this fails after a key joined the plan: raise k_share_version and give the key its line in k_share_keys_since. If a
    // default changed: codes leave defaults out, so older codes need the old one.
    const std::string code = read_text(k_root / "tests/plans/shared_by_version_1.txt");
    const PlanRead file = read_plan(read_text(k_root / "tests/plans/shared_by_version_1.json"));
    REQUIRE(file.ok());
    const ShareRead read = read_share(Texts{code});
    REQUIRE(read.state == ShareState::Whole);
    CHECK(canonical_plan_text(read.plan) == canonical_plan_text(file.plan));
    if (k_share_version == 1) CHECK(share_texts(file.plan) == Texts{std::string(detail::without_blanks(code))});
}

TEST_CASE("share code: numbers of every size and sign come back bit for bit") {
    support::Random r(11);
    const auto comes_back = [](double v) {
        detail::BitModels writing, reading;
        detail::BitWriter out;
        detail::ShareValues(out, writing).number(v);
        const std::string bytes = out.finish();
        detail::BitReader in(bytes);
        return detail::ShareValues(in, reading).number(0.0);
    };
    for (const double v : {0.0, 1.0, -1.0, 0.1, 0.1 + 0.2, 1.0 / 3.0, 1e15, 9007199254740991.0, 9007199254740993.0, 1e300, 5e-324, -2.5e-7, 123456.789})
        CHECK(comes_back(v) == v);
    CHECK(std::isnan(comes_back(std::nan(""))));
    for (int i = 0; i < 2000; ++i) {
        const double v = (r.chance(0.5) ? std::round(r.between(-5000.0, 5000.0)) / 100.0 : r.between(-1e4, 1e4));
        CHECK(comes_back(v) == v);
    }
}
