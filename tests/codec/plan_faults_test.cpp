#include "engine/codec/fault_told.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/plan_codec.hpp"
#include "tests/support/full_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace guywright;

namespace {

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    const std::size_t at = text.find(what);
    REQUIRE_MESSAGE(at != std::string::npos, what);
    return text.replace(at, what.size(), with);
}

std::string full_text() { return canonical_plan_text(support::full_plan()); }

/// The full plan with one piece of its text changed.
struct Row {
    const char* replace;
    const char* with;
    const char* path;
    const char* part_of_message;
};

void check_row(const Row& row) {
    const PlanRead read = read_plan(replaced(full_text(), row.replace, row.with));
    INFO(row.with, " -> ", row.path);
    REQUIRE(read.faults.size() == 1);
    CHECK(read.faults[0].path == row.path);
    CHECK_MESSAGE(to_string(read.faults[0]).find(row.part_of_message) != std::string::npos, to_string(read.faults[0]));
    CHECK_FALSE(find_faults(read.plan).empty());
    CHECK_MESSAGE(has_words_for(k_french, read.faults[0]), to_string(read.faults[0]));
}

const InputFault* fault_at(const PlanRead& read, const std::string& path) {
    for (const InputFault& f : read.faults)
        if (f.path == path) return &f;
    return nullptr;
}

}  // namespace

TEST_CASE("read_plan: each kind of fault names its key, what was found and what is allowed") {
    const std::vector<Row> rows{
        // ranges
        {"\"face_deg\":71.5", "\"face_deg\":3", "edge.face_deg", "is 3; allowed: 5 to 120 deg"},
        {"\"face_deg\":71.5", "\"face_deg\":1e300", "edge.face_deg", "allowed: 5 to 120 deg"},
        {"\"parts\":3", "\"parts\":0", "guys[1].parts", "is 0; allowed: a whole number, 1 to 9"},
        {"\"parts\":3", "\"parts\":1.5", "guys[1].parts", "is 1.5; allowed: a whole number, 1 to 9"},
        {"\"parts\":3", "\"parts\":1e300", "guys[1].parts", "a whole number, 1 to 9"},
        {"\"parts\":3", "\"parts\":123456789012345678901234567890", "guys[1].parts", "123456789012345678901234567890"},
        // types
        {"\"face_deg\":71.5", "\"face_deg\":\"steep\"", "edge.face_deg", "is \"steep\" (text); allowed: a number, 5 to 120 deg"},
        {"\"face_deg\":71.5", "\"face_deg\":null", "edge.face_deg", "is null"},
        {"\"face_deg\":71.5", "\"face_deg\":true", "edge.face_deg", "is true"},
        {"\"face_deg\":71.5", "\"face_deg\":[71.5]", "edge.face_deg", "is a list of 1 entry"},
        {"\"face_deg\":71.5", "\"face_deg\":{}", "edge.face_deg", "is an object"},
        {"\"compass_out_deg\":123", "\"compass_out_deg\":\"north\"", "edge.compass_out_deg", "or null"},
        {"\"title\":\"Spillway bench\"", "\"title\":7", "title", "is 7; allowed: text"},
        {"\"name\":\"right\"", "\"name\":null", "guys[1].name", "allowed: text"},
        {"\"haul\":null", "\"haul\":[]", "ropes[1].haul", "an object or null"},
        {"\"foot_held_down\":[true]", "\"foot_held_down\":[1]", "frame.foot_held_down[0]", "true or false"},
        {"\"foot_held_down\":[true]", "\"foot_held_down\":true", "frame.foot_held_down", "a list of 1 entry"},
        {"\"kind\":\"monopod\"", "\"kind\":\"mast\"", "frame.kind", "is \"mast\"; allowed: \"monopod\", \"a_frame\", \"tripod\""},
        {"\"kind\":\"monopod\"", "\"kind\":1", "frame.kind", "is 1; allowed: \"monopod\""},
        // counts
        {"\"leg_length_m\":[2.7]", "\"leg_length_m\":[2.7,2.7]", "frame.leg_length_m", "a list of 2 entries; allowed: a list of 1 entry"},
        {"\"leg_length_m\":[2.7]", "\"leg_length_m\":[]", "frame.leg_length_m", "a list of 0 entries"},
        {"\"leg_length_m\":[2.7]", "\"leg_length_m\":2.7", "frame.leg_length_m", "one per leg"},
        {"\"foot_m\":[[-1.2,0,0]]", "\"foot_m\":[-1.2,0,0]", "frame.foot_m", "one per leg, each a point [x, y, z]"},
        {"\"foot_m\":[[-1.2,0,0]]", "\"foot_m\":[[-1.2,0]]", "frame.foot_m[0]", "a point [x, y, z]"},
        {"\"foot_m\":[[-1.2,0,0]]", "\"foot_m\":[[-1.2,0,\"low\"]]", "frame.foot_m[0][2]", "-50 to 50 m"},
        {"\"anchor_m\":[-6,", "\"anchor_m\":[0,-6,", "guys[0].anchor_m", "a list of 4 entries"},
        // keys
        {"\"face_deg\":71.5", "\"face_deg\":71.5,\"fase_deg\":70", "edge.fase_deg", "did you mean face_deg?"},
        {"\"face_deg\":71.5", "\"face_deg\":71.5,\"colour\":\"red\"", "edge.colour", "not a key of this format"},
        {"\"face_deg\":71.5", "\"face_deg\":71.5,\"face_deg\":71.5", "edge.face_deg", "given more than once"},
        {"\"face_deg\":71.5,", "", "edge.face_deg", "is missing; allowed: a number, 5 to 120 deg"},
        {"\"anchor_m\"", "\"bearing_deg\":180,\"anchor_m\"", "guys[0].bearing_deg", "given beside anchor_m"},
        {"\"version\":1,", "\"version\":1,\"\":0,", "\"\"", "not a key"},
        // header
        {"\"guywright-plan\"", "\"other\"", "format", "is \"other\" (text); allowed: \"guywright-plan\""},
        {"\"format\":\"guywright-plan\",", "", "format", "is missing; allowed: \"guywright-plan\""},
        {"\"format\":\"guywright-plan\"", "\"format\":1", "format", "is 1"},
        {"\"version\":1,", "\"version\":2,", "version", "is 2; allowed: 1; this program is older than the plan"},
        {"\"version\":1,", "\"version\":0,", "version", "is 0; allowed: 1"},
        {"\"version\":1,", "\"version\":\"1\",", "version", "is \"1\" (text); allowed: 1"},
        {"\"version\":1,", "", "version", "is missing; allowed: 1"},
        // text
        {"Spillway bench", "Spill\\u0000way", "title", "control character"},
        {"Spillway bench", "Spill\\u202Eway", "title", "control character"},
        {"\"name\":\"left\"", "\"name\":\"\"", "guys[2].name", "is empty; allowed: a name"},
        // rules across keys
        {"\"name\":\"left\"", "\"name\":\"right\"", "guys[2].name", "used twice"},
        {"\"guys[1].inclination_deg\"", "\"guys[9].inclination_deg\"", "not_measured[0]", "the path of a number in this plan"},
        {"\"guys[1].inclination_deg\"", "5", "not_measured[0]", "is 5; allowed: text"},
    };
    for (const Row& row : rows) check_row(row);
}

TEST_CASE("read_plan: what is not JSON is told with its key, line and column") {
    const std::vector<Row> rows{
        {"\"face_deg\":71.5", "\"face_deg\":NaN", "edge.face_deg", "found `NaN` at line 1, column"},
        {"\"face_deg\":71.5", "\"face_deg\":nan", "edge.face_deg", "found `nan`"},
        {"\"face_deg\":71.5", "\"face_deg\":Infinity", "edge.face_deg", "found `Infinity`"},
        {"\"face_deg\":71.5", "\"face_deg\":-Infinity", "edge.face_deg", "found `-Infinity`"},
        {"\"face_deg\":71.5", "\"face_deg\":1e999", "edge.face_deg", "found `1e999`"},
        {"\"face_deg\":71.5", "\"face_deg\":-1e999", "edge.face_deg", "found `-1e999`"},
        {"\"face_deg\":71.5", "\"face_deg\":+5", "edge.face_deg", "found `+5`"},
        {"\"face_deg\":71.5", "\"face_deg\":.5", "edge.face_deg", "a number as JSON writes it"},
        {"\"face_deg\":71.5", "\"face_deg\":0x10", "edge", "not JSON"},
        {"\"face_deg\":71.5", "\"face_deg\":", "edge.face_deg", "allowed: a value"},
        {"\"face_deg\":71.5,", "\"face_deg\":71.5", "edge", "found `\"rope_friction\"`"},
        {"\"face_deg\":71.5,", "\"face_deg\":71.5,,", "edge", "a key in double quotes"},
        {"\"face_deg\":71.5", "'face_deg':71.5", "edge", "found `'`"},
        {"[[-1.2,0,0]]", "[[-1.2,0 0]]", "frame.foot_m[0][2]", "a comma or ']'"},
        {"\"title\":\"Spillway", "\"title\":\"\\xSpillway", "title", "not JSON"},
        {"\"title\":\"Spillway", "\"title\":\"\\ud800Spillway", "title", "surrogate"},
        {"\"title\":\"Spillway", "\"title\":\"Spill\nway", "title", "a line break"},
    };
    for (const Row& row : rows) check_row(row);
}

TEST_CASE("read_plan: line and column count lines and characters, not bytes") {
    const PlanRead read = read_plan("{\n  \"h\xC3\xB6he\": NaN}");
    REQUIRE(read.faults.size() == 1);
    CHECK(to_string(read.faults[0]).find("line 2, column 11") != std::string::npos);
}

TEST_CASE("read_plan: documents that are no plan at all") {
    struct Document {
        std::string text;
        const char* part;
    };
    const Document documents[]{
        {"", "plan is empty"},
        {"  \n", "the end of the file"},
        {"null", "plan is null; allowed: an object"},
        {"[]", "plan is a list of 0 entries; allowed: an object"},
        {"\"text\"", "allowed: an object"},
        {"{", "the end of the file"},
        {"{}", "format is missing"},
        {full_text() + "7", "nothing after the last }"},
        {full_text() + full_text(), "nothing after the last }"},
        {full_text().substr(0, 700), "the end of the file"},
        {full_text() + std::string(1, '\0') + "{}", "a control character"},
        {std::string("\x89PNG\r\n\x1A\n\0\0", 10), "not UTF-8 at line 1, column 1"},
        {"{\"title\":\"\xFF\"}", "not UTF-8 at line 1, column 11"},
        {"\xFF\xFE{\0}\0", "not UTF-8"},
    };
    for (const Document& d : documents) {
        const PlanRead read = read_plan(d.text);
        INFO(d.part);
        REQUIRE_FALSE(read.faults.empty());
        CHECK_MESSAGE(to_string(read.faults[0]).find(d.part) != std::string::npos, to_string(read.faults[0]));
    }
}

TEST_CASE("read_plan: all faults at once") {
    std::string text = replaced(full_text(), "\"face_deg\":71.5", "\"face_deg\":300");
    text = replaced(text, "\"rope_friction\":0.25", "\"rope_friktion\":0.25");
    text = replaced(text, "\"name\":\"left\"", "\"name\":5");
    text = replaced(text, "\"leg_length_m\":[2.7]", "\"leg_length_m\":[null]");
    text = replaced(text, "\"dynamic_factor\":2", "\"dynamic_factor\":0.5");
    const PlanRead read = read_plan(text);
    CHECK(read.faults.size() == 6);
    for (const char* path : {"edge.face_deg", "edge.rope_friction", "edge.rope_friktion", "guys[2].name", "frame.leg_length_m[0]", "actions.dynamic_factor"}) {
        INFO(path);
        CHECK(fault_at(read, path) != nullptr);
    }
}

TEST_CASE("read_plan: one fault does not make others out of itself") {
    // a kind that cannot be read does not change how many feet are expected
    Plan p = support::steep_plan();
    p.frame.kind = FrameKind::AFrame;
    p.frame.legs.resize(2);
    p.feet.resize(2);
    const PlanRead kind = read_plan(replaced(canonical_plan_text(p), "\"a_frame\"", "\"bipod\""));
    REQUIRE(kind.faults.size() == 1);
    CHECK(kind.faults[0].path == "frame.kind");
    // two names that cannot be read are not the same name
    std::string text = replaced(full_text(), "\"name\":\"left\"", "\"name\":5");
    text = replaced(text, "\"name\":\"right\"", "\"name\":5");
    CHECK(read_plan(text).faults.size() == 2);
    // a list that is not a list is not an empty one
    const PlanRead list = read_plan(replaced(full_text(), "\"feet\":[", "\"feet\":7,\"food\":["));
    CHECK(list.faults.size() == 2);
}

TEST_CASE("read_plan: a plan of another kind or version is not searched for more") {
    CHECK(read_plan(R"({"format":"something","colour":1})").faults.size() == 1);
    CHECK(read_plan(R"({"format":"guywright-plan","version":7,"new_key":1})").faults.size() == 1);
}

TEST_CASE("read_plan: a failed read leaves nothing that could be judged") {
    const PlanRead read = read_plan(replaced(full_text(), "\"dynamic_factor\":2", "\"dynamic_factor\":99"));
    REQUIRE_FALSE(read.ok());
    CHECK(read.plan.guys.empty());
    CHECK_FALSE(find_faults(read.plan).empty());
    CHECK_MESSAGE(has_words_for(k_french, read.faults[0]), to_string(read.faults[0]));
}

TEST_CASE("read_plan: hostile documents are bounded") {
    SUBCASE("too long") {
        const PlanRead read = read_plan(std::string(k_most_plan_bytes + 1, ' '));
        REQUIRE(read.faults.size() == 1);
        CHECK(to_string(read.faults[0]) == "plan is 262145 bytes long; allowed: at most 262144 bytes");
    }
    SUBCASE("just short enough is looked at") {
        const std::string text = full_text();
        CHECK(read_plan(text + std::string(k_most_plan_bytes - text.size(), ' ')).ok());
    }
    SUBCASE("nested without end") {
        for (const char* bracket : {"[", "{\"a\":"}) {
            std::string text;
            while (text.size() < 100000) text += bracket;
            const PlanRead read = read_plan(text);
            REQUIRE(read.faults.size() == 1);
            CHECK(to_string(read.faults[0]).find("nested too deep; allowed: at most 16 levels") != std::string::npos);
        }
    }
    SUBCASE("nested in a key of the plan") {
        const PlanRead read = read_plan(replaced(full_text(), "71.5", std::string(1000, '[') + std::string(1000, ']')));
        REQUIRE(read.faults.size() == 1);
        CHECK(read.faults[0].path.starts_with("edge.face_deg[0]"));
    }
    SUBCASE("a list of very many guys") {
        std::string guys = "{}";
        for (int i = 0; i < 80000; ++i) guys += ",{}";
        const PlanRead read = read_plan(replaced(full_text(), "\"guys\":[", "\"guys\":[" + guys + ","));
        const InputFault* fault = fault_at(read, "guys");
        REQUIRE(fault != nullptr);
        CHECK(to_string(*fault) == "guys is a list of 80004 entries; allowed: a list of 0 to 8 entries");
    }
    SUBCASE("very many unknown keys: the first hundred are listed, the rest counted") {
        std::string keys;
        for (int i = 0; i < 15000; ++i) keys += "\"k" + std::to_string(i) + "\":0,";
        const PlanRead read = read_plan(replaced(full_text(), "\"title\"", keys + "\"title\""));
        CHECK(read.faults.size() == 100);
        CHECK(read.faults_not_listed == 14900);
    }
    SUBCASE("very many equal keys") {
        std::string keys;
        for (int i = 0; i < 40000; ++i) keys += "\"a\":0,";
        const PlanRead read = read_plan(replaced(full_text(), "\"title\"", keys + "\"title\""));
        REQUIRE_FALSE(read.ok());
        CHECK(read.faults[0].path == "a");
    }
    SUBCASE("long keys and values are cut and cleaned in the message") {
        const std::string junk = std::string(50000, 'x');
        const PlanRead key = read_plan(replaced(full_text(), "\"title\"", "\"" + junk + "\\u001b[2J\":0,\"title\""));
        REQUIRE(key.faults.size() == 1);
        CHECK(to_string(key.faults[0]).size() < 200);
        const PlanRead value = read_plan(replaced(full_text(), "71.5", "\"\\u001b[2J\\u0007" + junk + "\""));
        REQUIRE(value.faults.size() == 1);
        CHECK(value.faults[0].value.starts_with("\"?[2J?xxx"));
        CHECK(value.faults[0].value.size() < 60);
        const PlanRead number = read_plan(replaced(full_text(), "\"parts\":3", "\"parts\":0." + std::string(50000, '1')));
        REQUIRE(number.faults.size() == 1);
        CHECK(number.faults[0].value.size() < 60);
    }
}
