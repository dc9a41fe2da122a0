#include "engine/codec/catalogue_codec.hpp"
#include "tests/support/within.hpp"

#include <set>

using namespace guywright;

namespace {

Catalogue two_cords() { return {{{"tape 25 mm", 15.0, 60.0, "its label"}, {"old 9 mm", 16.5, 45.0, ""}}}; }

std::string faults_of(const std::string& text) {
    std::string out;
    for (const InputFault& f : read_catalogue(text).faults) out += to_string(f) + "\n";
    return out;
}

std::string with_cords(const std::string& cords) { return R"({"format":"guywright-catalogue","version":1,"cords":[)" + cords + "]}"; }

}  // namespace

TEST_CASE("catalogue: what a team put down comes back as it was") {
    const CatalogueRead read = read_catalogue(write_catalogue(two_cords()));
    REQUIRE(read.ok());
    CHECK(read.catalogue == two_cords());
    CHECK(read_catalogue(write_catalogue({})).catalogue.cords.empty());
}

TEST_CASE("catalogue: each fault is told with place, value and what is allowed, all at once") {
    const std::string faults = faults_of(with_cords(R"({"name":"","strength_kN":0,"EA_kN":30},{"name":"a","strength_kN":9,"EA":3})"));
    for (const char* part : {"cords[0].name", "cords[0].strength_kN", "0.1 to 1000", "cords[1].EA_kN", "missing", "cords[1].EA is not a key"})
        CHECK_MESSAGE(faults.find(part) != std::string::npos, part, " in\n", faults);
    CHECK(faults_of(with_cords(R"({"name":"a","strength_kN":9,"EA_kN":3},{"name":"a","strength_kN":9,"EA_kN":3})")).find("used twice") != std::string::npos);
}

TEST_CASE("catalogue: a plan, an empty file and a newer one are refused by name") {
    CHECK(faults_of(R"({"format":"guywright-plan","version":1})").find("guywright-catalogue") != std::string::npos);
    CHECK(faults_of("").find("a catalogue file") != std::string::npos);
    CHECK(faults_of(R"({"format":"guywright-catalogue","version":2,"cords":[]})").find("older than the catalogue") != std::string::npos);
}

// EN 564: F = d^2 / 5 kN (formula and 4 mm READ in an encyclopaedia citing Schubert 2008).
TEST_CASE("published: cords follow d squared over five, and every row has a source and can be entered in a plan") {
    std::set<std::string_view> names;
    double d_mm = 4.0;
    for (const PublishedPart& part : k_published_parts) {
        CHECK(names.insert(part.name).second);
        CHECK_FALSE(part.source.empty());
        CHECK(range::strength_kN.holds(part.strength_kN));
        if (part.use != PartUse::Cord) continue;
        CHECK_WITHIN(part.strength_kN, d_mm * d_mm / 5.0, 1e-12);
        d_mm += 1.0;
    }
    CHECK(d_mm == 9.0);
}

// US Navy NAVEDTRA 14251, holdfasts in undisturbed loam: 700, 1800 and 4000 lb (READ); never more than the table says.
TEST_CASE("published: pickets hold no more than the manual gives, rounded down") {
    const double lb[] = {700.0, 1800.0, 4000.0};
    std::size_t i = 0;
    for (const PublishedPart& part : k_published_parts) {
        if (part.use != PartUse::Anchor) continue;
        const double kN = lb[i++] * 4.4482216152605e-3;
        CHECK(part.strength_kN <= kN);
        CHECK(part.strength_kN > 0.99 * kN);
    }
    CHECK(i == 3);
}
