#include "engine/checks/hobble_forces.hpp"
#include "tests/support/random.hpp"
#include "tests/support/within.hpp"

using namespace guywright;
using support::Random;

namespace {

using Vectors = Bounded<Vec3, k_max_legs>;
using Numbers = Bounded<double, k_max_legs>;

Vectors vectors(std::initializer_list<Vec3> from) {
    Vectors out;
    for (const Vec3 v : from) out.push_back(v);
    return out;
}
Numbers numbers(std::initializer_list<double> from) {
    Numbers out;
    for (const double v : from) out.push_back(v);
    return out;
}
Hobble hobble(int from, int to) {
    Hobble h;
    h.from = from;
    h.to = to;
    return h;
}

Vec3 sum(const Vectors& v) {
    Vec3 s{0.0};
    for (const Vec3 x : v) s += x;
    return s;
}

bool all_hold(const Vectors& push_N, const Numbers& friction_N) {
    for (std::size_t i = 0; i < push_N.size(); ++i)
        if (glm::length(push_N[i]) > friction_N[i]) return false;
    return true;
}

/// True where some mesh of tensions in three hobbles round a triangle keeps every foot within friction.
bool some_tensions_hold(const Vectors& push_N, const Numbers& friction_N, const Vectors& foot_m, double most_N, int steps) {
    Vec3 d[3];
    for (std::size_t i = 0; i < 3; ++i) {
        d[i] = foot_m[(i + 1) % 3] - foot_m[i];
        d[i] = Vec3(d[i].x, d[i].y, 0) / std::hypot(d[i].x, d[i].y);
    }
    for (int a = 0; a <= steps; ++a)
        for (int b = 0; b <= steps; ++b)
            for (int c = 0; c <= steps; ++c) {
                const double t[3] = {most_N * a / steps, most_N * b / steps, most_N * c / steps};
                Vectors left = push_N;
                for (std::size_t i = 0; i < 3; ++i) {
                    left[i] += t[i] * d[i];
                    left[(i + 1) % 3] -= t[i] * d[i];
                }
                if (all_hold(left, friction_N)) return true;
            }
    return false;
}

}  // namespace

TEST_CASE("hobbles: none are needed while friction holds") {
    const HobbleForces h = share_by_hobbles(vectors({{0, 300, 0}, {0, -300, 0}}), numbers({400, 400}), vectors({{0, 1, 0}, {0, -1, 0}}), {hobble(0, 1)});
    CHECK(h.tension_N[0] == 0.0);
    CHECK(h.push_N[0] == Vec3(0, 300, 0));
}

TEST_CASE("hobbles: two feet that spread are held by what friction leaves, within a thousandth of the friction") {
    const HobbleForces h = share_by_hobbles(vectors({{0, 900, 0}, {0, -900, 0}}), numbers({400, 250}), vectors({{0, 1, 0}, {0, -1, 0}}), {hobble(0, 1)});
    CHECK_WITHIN(h.tension_N[0], 650.0, 0.001 * 400.0);
    CHECK(all_hold(h.push_N, numbers({400, 250})));
}

TEST_CASE("hobbles: a rope cannot push feet apart") {
    const HobbleForces h = share_by_hobbles(vectors({{0, -900, 0}, {0, 900, 0}}), numbers({400, 400}), vectors({{0, 1, 0}, {0, -1, 0}}), {hobble(0, 1)});
    CHECK(h.tension_N[0] == 0.0);
    CHECK_FALSE(all_hold(h.push_N, numbers({400, 400})));
}

TEST_CASE("hobbles: a foot without friction is held by one that has plenty") {
    const HobbleForces h = share_by_hobbles(vectors({{0, 500, 0}, {0, -100, 0}}), numbers({0.0, 2000}), vectors({{0, 1, 0}, {0, -1, 0}}), {hobble(0, 1)});
    CHECK_WITHIN(h.tension_N[0], 500.0, 0.01);
    CHECK_WITHIN(glm::length(h.push_N[0]), 0.0, 0.01);
}

TEST_CASE("hobbles: a symmetric tripod by hand, each side of the triangle takes push / (2 cos 30)") {
    const double far = 1.5;
    Vectors foot_m, push_N;
    for (int i = 0; i < 3; ++i) {
        const Vec3 out = along_bearing(2.0 * k_pi * i / 3.0);
        foot_m.push_back(far * out);
        push_N.push_back(600.0 * out);
    }
    const HobbleForces h = share_by_hobbles(push_N, numbers({60, 60, 60}), foot_m, {hobble(0, 1), hobble(1, 2), hobble(2, 0)});
    for (std::size_t i = 0; i < 3; ++i) CHECK_WITHIN(h.tension_N[i], 540.0 / (2.0 * std::cos(k_pi / 6.0)), 0.2);
    CHECK(all_hold(h.push_N, numbers({60, 60, 60})));
}

TEST_CASE("hobbles: three between the same two feet share evenly") {
    const HobbleForces h = share_by_hobbles(vectors({{0, 900, 0}, {0, -900, 0}}), numbers({300, 300}), vectors({{0, 1, 0}, {0, -1, 0}}),
                                            {hobble(0, 1), hobble(1, 0), hobble(0, 1)});
    for (std::size_t i = 0; i < 3; ++i) CHECK_WITHIN(h.tension_N[i], 200.0, 0.5);
    CHECK(all_hold(h.push_N, numbers({300, 300})));
}

TEST_CASE("hobbles: what is left of friction, by hand") {
    const Vectors foot_m = vectors({{0, 1, 0}, {0, -1, 0}, {2, 0, 0}});
    // all push 200 ahead in all, their friction is 500; feet 0 and 1 have the one hobble between them, foot 2 none
    CHECK_WITHIN(hobbled_friction_spare(vectors({{100, 50, 0}, {80, -50, 0}, {20, 0, 0}}), numbers({200, 200, 100}), foot_m, {hobble(0, 1)}), 0.5, 1e-12);
    CHECK_WITHIN(hobbled_friction_spare(vectors({{0, 50, 0}, {0, -50, 0}, {20, 0, 0}}), numbers({200, 200, 25}), foot_m, {hobble(0, 1)}), 0.2, 1e-12);
    CHECK_WITHIN(hobbled_friction_spare(vectors({{0, 900, 0}, {0, -900, 0}, {0, 0, 0}}), numbers({200, 200, 25}), foot_m, {hobble(0, 1)}), 1.0, 1e-12);
    CHECK(hobbled_friction_spare(vectors({{250, 0, 0}, {0, 0, 0}, {0, 0, 0}}), numbers({200, 200, 100}), foot_m, {hobble(0, 1)}) < 0.0);
    CHECK(hobbled_friction_spare(vectors({{0, 0, 0}, {0, 0, 0}, {1, 0, 0}}), numbers({200, 200, 0}), foot_m, {hobble(0, 1)}) == -1.0);
}

TEST_CASE("hobbles: their order does not matter") {
    const Vectors foot_m = vectors({{1.2, 0, 0}, {-0.6, 1, 0}, {-0.5, -1.1, 0}}), push_N = vectors({{700, 50, 0}, {-300, 500, 0}, {-200, -600, 0}});
    const Numbers friction_N = numbers({200, 300, 100});
    const HobbleForces a = share_by_hobbles(push_N, friction_N, foot_m, {hobble(0, 1), hobble(1, 2), hobble(2, 0)});
    const HobbleForces b = share_by_hobbles(push_N, friction_N, foot_m, {hobble(0, 2), hobble(1, 0), hobble(2, 1)});
    CHECK_WITHIN(b.tension_N[0], a.tension_N[2], 1e-6);
    CHECK_WITHIN(b.tension_N[1], a.tension_N[0], 1e-6);
    CHECK_WITHIN(b.tension_N[2], a.tension_N[1], 1e-6);
    CHECK(a.tension_N[0] > 50.0);
}

TEST_CASE("hobbles: they only pass force from foot to foot, and wherever some tensions hold theirs do") {
    Random r(71);
    int held = 0, open = 0;
    for (int i = 0; i < 150; ++i) {
        Vectors foot_m, push_N;
        Numbers friction_N;
        for (int k = 0; k < 3; ++k) {
            const Vec3 out = along_bearing(2.0 * k_pi * (k + r.between(-0.2, 0.2)) / 3.0);
            foot_m.push_back(r.between(0.6, 1.6) * out);
            push_N.push_back(r.between(0, 900) * out + r.between(-250, 250) * Vec3(out.y, -out.x, 0));
            friction_N.push_back(r.between(50, 500));
        }
        const HobbleForces h = share_by_hobbles(push_N, friction_N, foot_m, {hobble(0, 1), hobble(1, 2), hobble(2, 0)});
        CAPTURE(i);
        for (const double t_N : h.tension_N) CHECK(t_N >= 0.0);
        CHECK_VEC_WITHIN(sum(h.push_N), sum(push_N), 1e-6);
        const bool holds = all_hold(h.push_N, friction_N);
        if (holds) CHECK(hobbled_friction_spare(push_N, friction_N, foot_m, {hobble(0, 1), hobble(1, 2), hobble(2, 0)}) >= 0.0);
        (holds ? held : open) += 1;
        // with a little less friction, so that a hair's breadth decides nothing
        Numbers less_N;
        for (const double f_N : friction_N) less_N.push_back(0.98 * f_N);
        if (!holds) CHECK_FALSE(some_tensions_hold(push_N, less_N, foot_m, 1500.0, 40));
    }
    CHECK(held > 40);
    CHECK(open > 20);
}
