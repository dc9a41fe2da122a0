#include "wasm/app/device.hpp"

#include <cmath>

#include "wasm/app/found_anchors.hpp"
#include "wasm/app/inputs.hpp"
#include "wasm/app/not_measured.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

double half_degrees_up(double angle_deg) { return std::ceil(angle_deg * 2.0 - 1e-9) / 2.0; }

double* tolerance_of(Tolerances& t, ReadingKind kind) {
    switch (kind) {
        case ReadingKind::Inclination: return &t.inclination_deg;
        case ReadingKind::LegLean:
        case ReadingKind::PlaneLean: return &t.lean_deg;
        case ReadingKind::Bearing:
        case ReadingKind::StraightOut: return &t.bearing_deg;
    }
    return nullptr;
}

std::string out_of_range(const Input& input, const Speech& speech, double value_deg, const Range& range) {
    return say(speech, words::k_not_possible, {{"{value}", shown_value(input, speech, value_deg)}, {"{allowed}", allowed_text(input, speech, range)}});
}

}  // namespace

Taken taken(Plan& plan, ReadingKind kind, const Reading& reading) {
    const double out_deg = kind == ReadingKind::Bearing ? plan.edge.compass_out_deg.value_or(0.0) : 0.0;
    const double value_deg = std::round(needs_compass(kind) ? around_deg(reading.value_deg - out_deg) : reading.value_deg);
    return {needs_compass(kind) ? around_deg(value_deg) : value_deg + 0.0, tolerance_of(plan.tolerances, kind), half_degrees_up(reading.error_deg)};
}

std::string take_reading(Plan& plan, const std::string& path, ReadingKind kind, const Reading& reading, const Speech& speech) {
    if (reading.status != Reading::Status::Steady) return std::string(say(speech, words::k_hold_still));
    const Taken t = taken(plan, kind, reading);
    if (kind == ReadingKind::StraightOut) {
        plan.edge.compass_out_deg = t.value_deg;
        mark_measured(plan, "edge.compass_out_deg");
    } else {
        const std::optional<Measure> number = measure_at(plan, path);
        const Input* input = find_input(path);
        if (!number || input == nullptr) return std::string(say(speech, words::k_number_gone));
        if (!set_measure(plan, path, t.value_deg)) return out_of_range(*input, speech, t.value_deg, number->range);
        mark_measured(plan, path);
    }
    *t.tolerance_deg = std::max(*t.tolerance_deg, t.error_deg);
    return {};
}

}  // namespace guywright::app
