#pragma once
#include "engine/plan/find_faults.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

// Plans made of a fuzzer's bytes, for what computes with them.
namespace fuzzed {

using namespace guywright;

inline void require(bool kept, const char* what) {
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

/// 0 to 255 from the input as a whole: what a run does with it that costs much time. A byte of its own would be kept by mutation, and
/// a fuzzer likes what costs much.
inline std::uint8_t lot(const std::uint8_t* data, std::size_t size) {
    std::uint32_t hash = 2166136261U;  // FNV-1a
    for (std::size_t i = 0; i < size; ++i) hash = (hash ^ data[i]) * 16777619U;
    return static_cast<std::uint8_t>(hash >> 24U);
}

inline RopePlan some_rope(Choices& c, std::size_t i) {
    RopePlan r;
    r.name = "rope " + std::to_string(i);
    if (c.yes()) r.haul = Haul{};
    if (c.yes()) r.edge_y_m = 0.0;
    return r;
}

inline GuyPlan some_guy(Choices& c, std::size_t i) {
    GuyPlan g;
    g.name = "guy " + std::to_string(i);
    g.bearing_deg = 30.0 + 45.0 * static_cast<double>(i);
    if (c.yes()) g.anchor_m = Vec3(-4.0, 2.0 - static_cast<double>(i), 0.0);
    return g;
}

inline FootPlan some_foot(Choices& c) {
    FootPlan f;
    f.ties.resize(c.up_to(k_max_foot_ties));
    for (std::size_t i = 0; i < f.ties.size(); ++i) f.ties[i].bearing_deg = 60.0 * static_cast<double>(i);
    return f;
}

/// What a plan consists of; its numbers still have their starting values.
inline Plan some_shape(Choices& c) {
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
    const std::size_t anchors = c.up_to(k_max_candidate_anchors);
    for (std::size_t i = 0; i < anchors; ++i) p.candidate_anchors_m.emplace_back(-5.0, 6.0 - static_cast<double>(i), 0.0);
    if (c.yes()) p.candidate_anchor_strengths_kN.assign(anchors, 10.0);
    if (c.yes()) p.edge.opening_m = 1.0;
    if (c.byte() == 255) p.not_measured = {"edge.face_deg"};
    return p;
}

/// One number: mostly as it was, or a border, a hair inside it, anywhere between, and seldom a hair outside.
inline double some_number(Choices& c, double before, const Range& r) {
    switch (c.byte() % 16) {
        case 1: return r.min;
        case 2: return r.max;
        case 3: return std::nextafter(r.min, r.max);
        case 4: return std::nextafter(r.max, r.min);
        case 5: return r.min + r.step;
        case 6:
        case 7:
        case 8:
        case 9: return r.min + (r.max - r.min) * c.share();
        case 10: return c.byte() == 200 ? std::nextafter(r.max, HUGE_VAL) : before;
        case 11: return c.byte() == 200 ? std::nan("") : before;
        default: return before;
    }
}

/// Numbers that are a fault unless they fit others are left alone more often, so that most plans get to be computed.
inline bool must_fit_others(const std::string& path) { return path.starts_with("limits.") || path.ends_with(".share"); }

/// Its numbers may be outside their ranges.
inline Plan some_plan(Choices& choices) {
    Plan plan = some_shape(choices);
    for_each_number(plan, [&](const std::string& path, double& v, const Range& r) {
        if (!must_fit_others(path) || choices.byte() == 100) v = some_number(choices, v, r);
    });
    return plan;
}

}  // namespace fuzzed
