#pragma once
#include "engine/advice/screen.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace guywright {

/// A direction from the head, as on a polar chart: bearing (degrees clockwise from above, 0 straight out) and degrees off
/// straight down, 0 to 180.
struct Heading {
    double bearing_deg = 0.0;
    double off_down_deg = 0.0;
};

inline Heading heading_of(Vec3 way) { return {bearing_deg_of(way), degrees(angle_between(way, {0.0, 0.0, -1.0}))}; }
/// Unit vector, site frame.
inline Vec3 way_of(const Heading& h) {
    return std::sin(radians(h.off_down_deg)) * along_bearing(radians(h.bearing_deg)) - Vec3{0.0, 0.0, std::cos(radians(h.off_down_deg))};
}

/// What the map says of one direction of pull.
struct MapCell {
    double margin = k_broken_margin;  ///< least margin of what is judged, not below -1
    CheckId id = CheckId::Solved;     ///< the rule that has it
    std::size_t subject = 0;
};

/// A pull that a case really has.
struct CasePull {
    std::size_t case_index = 0;  ///< in Evaluation::outcomes
    Heading heading;
    double size_N = 0.0;
};

/// The least part of the chart that holds every case: clockwise from one bearing to the other, between two angles off down.
struct WorkingSector {
    double from_bearing_deg = 0.0, to_bearing_deg = 0.0;
    double least_off_deg = 0.0, most_off_deg = 0.0;
};

/// A piece of the line between GO and NO-GO.
struct MapLine {
    Heading from, to;
};

/// How much the rig has to spare when the ropes' holding resultant, its size kept, pulls at the head in any direction of the
/// lower hemisphere. Judged as measured and with the static factors: that the head stays up and near its place, legs, guys,
/// anchors and feet; not ropes, pulleys and connectors, which do not know of the direction, and not the trade's rules of angle.
/// Each direction is one full equilibrium from where the head rests as rigged. Works in slices.
class DirectionMap {
public:
    /// Rings stand evenly off straight down, the last at 90 degrees; ring 0 is straight down itself. `e` must hold outcomes of
    /// `plan`; both are copied as far as needed.
    DirectionMap(const Plan& plan, const Evaluation& e, std::size_t rings = 24, std::size_t bearings = 72)
        : plan_(plan), model_(e.model), rings_(rings), bearings_(bearings), cells_(rings * bearings + 1) {
        model_.ropes.clear();
        read_cases(e);
        const Equilibrium& rigged = e.outcomes[k_rigged].equilibrium;
        if (!is_stable(rigged)) {
            for (MapCell& c : cells_) c.id = CheckId::Standing;
            next_ = cells_.size();
        }
        rigged_m_ = rigged.status == SolveStatus::Solved ? rigged.head_m : model_.drawn_head_m;
    }

    [[nodiscard]] bool done() const { return next_ == cells_.size(); }
    /// Goes on by at most `count` directions.
    void advance(std::size_t count) {
        const Start start(model_, rigged_m_);
        for (; count > 0 && !done(); --count, ++next_) cells_[next_] = judge(start, heading_at(next_));
    }

    [[nodiscard]] std::size_t rings() const { return rings_; }
    [[nodiscard]] std::size_t bearings() const { return bearings_; }
    [[nodiscard]] double load_N() const { return load_N_; }
    /// `ring` 0 to rings(); `bearing` any number of steps.
    [[nodiscard]] const MapCell& cell(std::size_t ring, std::size_t bearing) const { return cells_[index(ring, bearing)]; }
    [[nodiscard]] Heading heading(std::size_t ring, std::size_t bearing) const {
        return {360.0 * static_cast<double>(bearing) / static_cast<double>(bearings_), 90.0 * static_cast<double>(ring) / static_cast<double>(rings_)};
    }
    [[nodiscard]] const std::vector<CasePull>& cases() const { return cases_; }
    [[nodiscard]] WorkingSector working_sector() const;
    /// Where each guy goes from the head, in the plan's order.
    [[nodiscard]] std::vector<Heading> guys() const {
        std::vector<Heading> out;
        for (const Guy& g : model_.guys) out.push_back(heading_of(g.anchor_m - rigged_m_));
        return out;
    }
    /// The line of no margin, once done, as pieces in no order.
    [[nodiscard]] std::vector<MapLine> go_line() const;

private:
    [[nodiscard]] std::size_t index(std::size_t ring, std::size_t bearing) const { return ring == 0 ? 0 : (ring - 1) * bearings_ + bearing % bearings_ + 1; }
    [[nodiscard]] Heading heading_at(std::size_t i) const { return i == 0 ? heading(0, 0) : heading((i - 1) / bearings_ + 1, (i - 1) % bearings_); }

    void read_cases(const Evaluation& e) {
        for (std::size_t i = 0; i < e.outcomes.size(); ++i) {
            const Outcome& o = e.outcomes[i];
            const Vec3 head_m = o.equilibrium.status == SolveStatus::Solved ? o.equilibrium.head_m : e.model.drawn_head_m;
            const Vec3 sum_N = sum_of_pulls_N(o.setup.pulls, head_m);
            if (!(glm::length(sum_N) > 0.0)) continue;
            cases_.push_back({i, heading_of(sum_N), glm::length(sum_N)});
            if (i == k_holding) load_N_ = glm::length(sum_N);
        }
    }

    MapCell judge(const Start& start, const Heading& h) {
        Case pull;
        pull.id = CaseId::Holding;
        pull.pulls.push_back({load_N_, false, way_of(h)});
        table_.clear();
        check_forces(table_, plan_, model_, solve_case(start, pull), k_no_case);
        MapCell cell;
        double least = HUGE_VAL;
        table_.for_each([&](const Check& c) {
            const double margin = margin_of(c);
            if (!(margin < least)) return;
            least = margin;
            cell = {std::max(margin, k_broken_margin), c.id, c.subject};
        });
        return cell;
    }

    Plan plan_;
    Model model_;
    std::size_t rings_, bearings_;
    std::vector<MapCell> cells_;
    std::vector<CasePull> cases_;
    Vec3 rigged_m_{};
    double load_N_ = 0.0;
    CheckTable table_;
    std::size_t next_ = 0;
};

/// Pulls this close to straight down, degrees, lie on no bearing.
inline constexpr double k_no_bearing_deg = 0.5;

inline WorkingSector DirectionMap::working_sector() const {
    WorkingSector sector{0.0, 0.0, 180.0, 0.0};
    std::vector<double> bearings;
    for (const CasePull& c : cases_) {
        sector.least_off_deg = std::min(sector.least_off_deg, c.heading.off_down_deg);
        sector.most_off_deg = std::max(sector.most_off_deg, c.heading.off_down_deg);
        if (c.heading.off_down_deg > k_no_bearing_deg) bearings.push_back(c.heading.bearing_deg);
    }
    if (cases_.empty()) return {};
    if (bearings.empty()) return sector;
    std::sort(bearings.begin(), bearings.end());
    double widest_deg = bearings.front() + 360.0 - bearings.back();  // the gap without a case is what is left out
    sector.from_bearing_deg = bearings.front();
    sector.to_bearing_deg = bearings.back();
    for (std::size_t i = 1; i < bearings.size(); ++i) {
        if (!(bearings[i] - bearings[i - 1] > widest_deg)) continue;
        widest_deg = bearings[i] - bearings[i - 1];
        sector.from_bearing_deg = bearings[i];
        sector.to_bearing_deg = bearings[i - 1];
    }
    return sector;
}

namespace detail {

/// A corner of one field of the grid.
struct MapCorner {
    Heading heading;
    double margin;
};

/// Where the margin is 0 on the side between two corners, one kept and one broken.
inline Heading crossing(const MapCorner& a, const MapCorner& b) {
    const double share = a.margin / (a.margin - b.margin);
    return {a.heading.bearing_deg + share * (b.heading.bearing_deg - a.heading.bearing_deg),
            a.heading.off_down_deg + share * (b.heading.off_down_deg - a.heading.off_down_deg)};
}

/// Adds the parts of the line that run through the field with these corners, in order round it.
inline void add_lines_through(const std::array<MapCorner, 4>& corners, std::vector<MapLine>& out) {
    Bounded<Heading, 4> ends;
    for (std::size_t i = 0; i < 4; ++i) {
        const MapCorner &from = corners[i], &to = corners[(i + 1) % 4];
        if ((from.margin >= 0.0) != (to.margin >= 0.0)) ends.push_back(crossing(from, to));
    }
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2) out.push_back({ends[i], ends[i + 1]});
}

}  // namespace detail

inline std::vector<MapLine> DirectionMap::go_line() const {
    std::vector<MapLine> out;
    for (std::size_t r = 0; r < rings_; ++r)
        for (std::size_t b = 0; b < bearings_; ++b) {
            const auto corner = [&](std::size_t ring, std::size_t bearing) { return detail::MapCorner{heading(ring, bearing), cell(ring, bearing).margin}; };
            detail::add_lines_through({{corner(r, b), corner(r + 1, b), corner(r + 1, b + 1), corner(r, b + 1)}}, out);
        }
    return out;
}

}  // namespace guywright
