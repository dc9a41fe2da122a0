// Any plan whose numbers lie within their ranges, mostly on the borders: no crash, no NaN in an answer, and never GO without
// one for every case. Now and then a number just outside: that is a fault and nothing is computed.
#include "engine/verdict/evaluate.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <utility>

namespace {

using namespace guywright;

void require(bool kept, const char* what) {
    if (kept) return;
    std::fprintf(stderr, "broken: %s\n", what);
    std::abort();
}

/// The fuzzer's bytes as a stream of choices; zeros once they are used up.
class Choices {
public:
    Choices(const std::uint8_t* data, std::size_t size) : data_(data), left_(size) {}

    std::uint8_t byte() {
        if (left_ == 0) return 0;
        --left_;
        return *data_++;
    }
    std::size_t up_to(std::size_t most) { return byte() % (most + 1); }
    bool yes() { return (byte() & 1) != 0; }
    double share() {
        double sum = 0.0;
        for (int i = 0; i < 4; ++i) sum = (sum + byte()) / 256.0;
        return sum;
    }

private:
    const std::uint8_t* data_;
    std::size_t left_;
};

RopePlan some_rope(Choices& c, std::size_t i) {
    RopePlan r;
    r.name = "rope " + std::to_string(i);
    if (c.yes()) r.haul = Haul{};
    if (c.yes()) r.edge_y_m = 0.0;
    return r;
}

GuyPlan some_guy(Choices& c, std::size_t i) {
    GuyPlan g;
    g.name = "guy " + std::to_string(i);
    g.bearing_deg = 30.0 + 45.0 * static_cast<double>(i);
    if (c.yes()) g.anchor_m = Vec3(-4.0, 2.0 - static_cast<double>(i), 0.0);
    return g;
}

FootPlan some_foot(Choices& c) {
    FootPlan f;
    f.ties.resize(c.up_to(k_max_foot_ties));
    for (std::size_t i = 0; i < f.ties.size(); ++i) f.ties[i].bearing_deg = 60.0 * static_cast<double>(i);
    return f;
}

/// What a plan consists of; its numbers still have their starting values.
Plan some_shape(Choices& c) {
    Plan p;
    constexpr FrameKind kinds[] = {FrameKind::Monopod, FrameKind::Monopod, FrameKind::AFrame, FrameKind::Tripod};
    p.frame.kind = kinds[c.up_to(3)];
    const std::size_t legs = c.byte() == 255 ? c.up_to(3) : legs_of(p.frame.kind);
    p.frame.legs.resize(legs);
    for (std::size_t i = 0; i < legs; ++i) {
        p.frame.legs[i].held_down = c.yes();
        p.frame.legs[i].foot_m = {i == 2 ? -3.2 : -2.0, i == 0 ? 0.6 : -0.6, 0.0};
        p.feet.push_back(some_foot(c));
    }
    const std::size_t ropes = 1 + c.up_to(k_max_ropes - 1), guys = c.up_to(k_max_guys);
    for (std::size_t i = 0; i < ropes; ++i) p.ropes.push_back(some_rope(c, i));
    for (std::size_t i = 0; i < guys; ++i) p.guys.push_back(some_guy(c, i));
    if (c.yes()) p.edge.opening_m = 1.0;
    if (c.byte() == 255) p.not_measured = {"edge.face_deg"};
    return p;
}

/// One number: mostly as it was, or a border, a hair inside it, anywhere between, and seldom a hair outside.
double some_number(Choices& c, double before, const Range& r) {
    switch (c.byte() % 16) {
        case 1: return r.min;
        case 2: return r.max;
        case 3: return std::nextafter(r.min, r.max);
        case 4: return std::nextafter(r.max, r.min);
        case 5: return r.min + r.step;
        case 6: case 7: case 8: case 9: return r.min + (r.max - r.min) * c.share();
        case 10: return c.byte() == 200 ? std::nextafter(r.max, HUGE_VAL) : before;
        case 11: return c.byte() == 200 ? std::nan("") : before;
        default: return before;
    }
}

/// Numbers that are a fault unless they fit others are left alone more often, so that most plans get to be computed.
bool must_fit_others(const std::string& path) { return path.starts_with("limits.") || path.ends_with(".share"); }

bool is_finite(const Outcome& o) {
    double sum = o.applied_force_angle_rad + o.head_shift_m + o.resultant_N.x + o.resultant_N.y + o.resultant_N.z;
    sum += o.equilibrium.min_stiffness_N_m + o.equilibrium.residual_N + o.equilibrium.head_m.x + o.equilibrium.head_m.z;
    for (const double v : o.equilibrium.guy_tension_N) sum += v;
    for (const double v : o.equilibrium.leg_compression_N) sum += v;
    for (const double v : o.guy_angle_rad) sum += v;
    for (const double v : o.pulley_N) sum += v;
    for (const Vec3 v : o.foot_reaction_N) sum += v.x + v.y + v.z;
    return std::isfinite(sum);
}

void check_answer(const Evaluation& e) {
    require((e.verdict == Verdict::NotChecked) == !e.not_measured.empty(), "NOT CHECKED where an input is missing, and only there");
    require(e.outcomes.size() >= 5, "every plan has its cases");
    for (const Outcome& o : e.outcomes) {
        const bool solved = o.equilibrium.status == SolveStatus::Solved;
        require(!solved || is_finite(o), "an answer is finite");
        require(!o.stable || solved, "only an answer is stable");
        require(e.verdict != Verdict::Go || o.stable, "GO only where every case is stable");
    }
    e.checks.for_each([&](const Check& c) {
        require(e.verdict != Verdict::Go || c.status != CheckStatus::Fail, "GO only where no rule is broken");
        require(c.status == CheckStatus::Fail || std::isfinite(c.value), "what is not a number passes nothing");
    });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    Choices choices(data, size);
    Plan plan = some_shape(choices);
    for_each_number(plan, [&](const std::string& path, double& v, const Range& r) {
        if (!must_fit_others(path) || choices.byte() == 100) v = some_number(choices, v, r);
    });
    bool outside = false;
    for_each_number(std::as_const(plan), [&](const std::string&, double v, const Range& r) { outside = outside || !r.holds(v); });
    const Evaluation e = evaluate(plan);
    require(!outside || !e.faults.empty(), "a number outside its range is a fault");
    if (e.faults.empty()) check_answer(e);
    else require(e.verdict == Verdict::NotChecked && e.outcomes.empty(), "with a fault nothing is computed");
    return 0;
}
