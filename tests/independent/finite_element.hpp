#pragma once
#include "tests/independent/second_energy.hpp"
#include "tests/support/text_of.hpp"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

// The rig as a general finite-element program sees it: CalculiX, run as the process `ccx` on an input file written here from the
// second writing of the rig. Assembly, geometric stiffness, Newton's method and the reactions are the program's own.
//
// Every leg, guy and rope side is a SPRINGA element with a table of force against elongation. That is the one element whose
// law can be the engine's to the letter: linear in the true elongation, nothing on the side where it does not act, a rest length
// that is not the drawn one, a tension that stays the same. The truss T3D2 of ccx 2.20 will not do: it becomes a solid brick
// behind nonlinear constraints, which converges only while it hardly turns, and its law is linear in Green's strain, 1.5 % off
// at 1 % of strain (both measured).
namespace finite_element {

using second::Member;
using second::Point;
using second::Real;
using second::Rig;

/// Where the head came to rest, and the force that holds each fixed point, as the program printed them: feet, then anchors, then
/// far ends of the rope sides that go to a point.
struct State {
    Point head{};
    std::vector<Point> held_N;
};

/// Both states of one run. Nothing in them is to be used while there is trouble.
struct Answer {
    std::string trouble;
    State rigged, loaded;
};

/// ccx reads at most 20 characters of a number.
inline std::string number(Real value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.12LE", value);
    return text;
}

/// One spring, from the head to a fixed point: force against elongation from the drawn length, at one or more temperatures.
struct Spring {
    struct Row {
        Real force_N, longer_m, temperature;
    };
    Point fixed;
    std::vector<Row> table;
};

/// At temperature 0 every member acts both ways and rests as drawn, so that the first step begins in balance; at 1 it is what it
/// should be. In between ccx mixes the tables. A table ends one length to either side; beyond, the force would stay constant.
inline Spring member_spring(const Member& m, const Point& head) {
    const Real drawn_m = second::distance(m.fixed, head), at_rest_m = m.rest_m - drawn_m, far_N = m.k_N_m * drawn_m;
    return {m.fixed,
            {{-far_N, -drawn_m, 0},
             {0, 0, 0},
             {far_N, drawn_m, 0},
             {m.pushes ? -far_N : 0, at_rest_m - drawn_m, 1},
             {0, at_rest_m, 1},
             {m.pulls ? far_N : 0, at_rest_m + drawn_m, 1}}};
}

/// A rope side: the same force at every length. From temperature 1 to 2 it comes on.
inline Spring rope_spring(const second::RopeSide& s, const Point& head) {
    const Real far_m = second::distance(s.at, head);
    return {s.at, {{0, -far_m, 1}, {0, far_m, 1}, {s.tension_N, -far_m, 2}, {s.tension_N, far_m, 2}}};
}

inline std::vector<Spring> springs_of(const Rig& rig) {
    std::vector<Spring> springs;
    for (const auto* members : {&rig.legs, &rig.guys})
        for (const Member& m : *members) springs.push_back(member_spring(m, rig.head));
    for (const second::RopeSide& s : rig.sides)
        if (!s.hangs_free) springs.push_back(rope_spring(s, rig.head));
    return springs;
}

/// Dead load at the head: the upper halves of the legs and, in the loaded state, ropes that hang free.
inline Point dead_load_N(const Rig& rig, bool loaded) {
    Point load{0, 0, -rig.weight_N};
    for (const second::RopeSide& s : rig.sides)
        for (std::size_t i = 0; i < 3; ++i)
            if (loaded && s.hangs_free) load[i] += s.tension_N * s.at[i];
    return load;
}

inline void write_springs(std::ostream& out, const std::vector<Spring>& springs) {
    for (std::size_t i = 0; i < springs.size(); ++i) {
        const std::size_t id = i + 1, node = i + 2;
        out << "*ELEMENT, TYPE=SPRINGA, ELSET=E" << id << "\n" << id << ", 1, " << node << "\n*SPRING, ELSET=E" << id << ", NONLINEAR\n";
        for (const Spring::Row& row : springs[i].table) out << number(row.force_N) << ", " << number(row.longer_m) << ", " << number(row.temperature) << "\n";
        out << "*BOUNDARY\n" << node << ", 1, 3\n";
    }
}

/// Small increments (the first, of all, the least, the largest), for ccx's Newton method takes whole steps only. It must go on until
/// 1e-8 of the average force is out of balance and the last correction is 1e-6 of the increment's; by default ccx is content
/// with half a percent and one percent. A frequency beyond every count prints the end of the step alone.
inline void write_step(std::ostream& out, const Point& load_N, int temperature) {
    out << "*STEP, NLGEOM, INC=1000\n*STATIC\n0.02, 1., 1.E-5, 0.1\n*CONTROLS, PARAMETERS=FIELD\n1.E-8, 1.E-6\n*CLOAD\n";
    for (std::size_t i = 0; i < 3; ++i) out << "1, " << i + 1 << ", " << number(load_N[i]) << "\n";
    out << "*TEMPERATURE\nALL, " << temperature << ".\n*NODE PRINT, NSET=HEAD, FREQUENCY=9999\nU\n";
    out << "*NODE PRINT, NSET=FIXED, FREQUENCY=9999\nRF\n*END STEP\n";
}

/// Node 1 is the head. Step one: own weight and pretension come on; step two: the ropes.
inline void write_deck(std::ostream& out, const Rig& rig) {
    const std::vector<Spring> springs = springs_of(rig);
    const auto node = [&](std::size_t id, const Point& at) { out << id << ", " << number(at[0]) << ", " << number(at[1]) << ", " << number(at[2]) << "\n"; };
    out << "*NODE, NSET=HEAD\n";
    node(1, rig.head);
    out << "*NODE, NSET=FIXED\n";
    for (std::size_t i = 0; i < springs.size(); ++i) node(i + 2, springs[i].fixed);
    out << "*NSET, NSET=ALL\nHEAD, FIXED\n";
    write_springs(out, springs);
    out << "*INITIAL CONDITIONS, TYPE=TEMPERATURE\nALL, 0.\n";
    write_step(out, dead_load_N(rig, false), 1);
    write_step(out, dead_load_N(rig, true), 2);
}

/// Reads what one step printed: a heading and one row for the head's displacement, a heading and a row for each fixed node.
inline bool read_state(std::istream& in, const Rig& rig, std::size_t fixed_nodes, State& state) {
    std::vector<Point> rows;
    for (std::string line; rows.size() < fixed_nodes + 1 && std::getline(in, line);) {
        std::istringstream words(line);
        std::size_t id = 0;
        Point v{};
        if (!(words >> id >> v[0] >> v[1] >> v[2])) continue;  // a heading or an empty line
        const std::size_t expected = rows.size() + 1;
        if (id != expected) return false;
        rows.push_back(v);
    }
    if (rows.size() != fixed_nodes + 1) return false;
    for (std::size_t i = 0; i < 3; ++i) state.head[i] = rig.head[i] + rows[0][i];
    state.held_N.assign(rows.begin() + 1, rows.end());
    return true;
}

/// A folder of its own for one run, gone afterwards.
struct Scratch {
    std::filesystem::path path;
    Scratch() {
        std::string name = (std::filesystem::temp_directory_path() / "guywright-ccx-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no scratch folder in " + name);
        path = name;
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
};

/// Empty where ccx ran to its end; otherwise what went wrong.
inline std::string run_ccx(const std::filesystem::path& folder) {
    constexpr int k_not_found = 127;
    const int code = std::system(("cd '" + folder.string() + "' && OMP_NUM_THREADS=1 timeout 20 ccx rig >rig.log 2>&1").c_str());
    if (WIFEXITED(code) && WEXITSTATUS(code) == k_not_found) return "ccx is not installed. Debian has it in the package calculix-ccx.";
    const std::string log = support::text_of(folder / "rig.log");
    if (code == 0 && log.find("Job finished") != std::string::npos) return "";
    return "ccx stopped, wait status " + std::to_string(code) + ": ..." + log.substr(log.size() - std::min<std::size_t>(log.size(), 600));
}

/// As rigged, and under the rig's ropes.
inline Answer solve(const Rig& rig) {
    Answer answer;
    const Scratch scratch;
    std::ofstream deck(scratch.path / "rig.inp");
    write_deck(deck, rig);
    deck.close();
    answer.trouble = run_ccx(scratch.path);
    if (!answer.trouble.empty()) return answer;
    std::ifstream printed(scratch.path / "rig.dat");
    const std::size_t fixed_nodes = springs_of(rig).size();
    if (!read_state(printed, rig, fixed_nodes, answer.rigged) || !read_state(printed, rig, fixed_nodes, answer.loaded))
        answer.trouble = "ccx's printed results are not as expected";
    return answer;
}

/// Force along a member as the reaction at its fixed end shows it, N; + pulls.
inline Real pull_N(const Point& fixed, const Point& held_N, const Point& head) {
    return -second::dot(held_N, second::unit({head[0] - fixed[0], head[1] - fixed[1], head[2] - fixed[2]}));
}

/// What is left of all reactions and the dead load, N: nothing where the head is in balance.
inline Real left_N(const Rig& rig, const State& s, bool loaded) {
    Point sum = dead_load_N(rig, loaded);
    for (const Point& held : s.held_N)
        for (std::size_t i = 0; i < 3; ++i) sum[i] += held[i];
    return second::distance(sum, {0, 0, 0});
}

}  // namespace finite_element
