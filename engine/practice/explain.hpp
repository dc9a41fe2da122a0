#pragma once
#include "engine/practice/site.hpp"

#include <vector>

namespace guywright {

/// What a step of the explanation says; each is one sentence with its own numbers.
enum class SiteText : unsigned char {
    RopeSides,     ///< force: load side, other: haul side, subject: rope
    RopeTiedOff,   ///< force: load side, subject: rope
    Resultant,     ///< force, angle: off straight down
    OffLeg,        ///< angle; one leg
    OffLegs,       ///< angle; two
    InsideLegs,    ///< angle; three
    OutsideLegs,   ///< angle; three
    AlongLeg,      ///< force: into the leg, other: left across it
    AlongLegs,     ///< the same of two
    IntoLegs,      ///< force: three take all of it
    HardestGuy,    ///< force, other: of it across the legs, angle: off the legs, subject: guy
    HardestOfTwo,  ///< the same of two legs
    SteadyingGuy,  ///< of three: force, other: what it was tightened to, subject: guy
    ChosenGuy,     ///< the trainee's, where another works harder: force, other: of it across the legs, subject: guy
    LegCarries,    ///< force, subject: leg, the one that carries most
    Rule,          ///< rule: the row that decides
    Why,           ///< the same: why it is a rule
    Mend           ///< the same: what would mend it
};
inline constexpr std::size_t k_site_text_count = 18;

/// What a step speaks of, to be lit up.
enum class SiteLit : unsigned char { None, RopeSides, Resultant, Legs, Guy };

struct ExplainStep {
    SiteText text = SiteText::Rule;
    SiteLit lit = SiteLit::None;
    std::size_t subject = 0;
    double force_N = 0.0, other_N = 0.0, angle_deg = 0.0;
    Check rule{};
};

namespace detail {

/// The explanation's numbers, all of the holding case.
class Explaining {
public:
    Explaining(const Plan& plan, const Evaluation& e, const SiteAnswer& answer, const Prediction& said)
        : plan_(plan), e_(e), holding_(e.outcomes[k_holding]), answer_(answer), said_(said) {}

    std::vector<ExplainStep> steps() {
        rope_sides();
        resultant();
        guys();
        legs();
        rule();
        return std::move(out_);
    }

private:
    [[nodiscard]] std::size_t legs_count() const { return e_.model.legs.size(); }
    [[nodiscard]] Vec3 head_m() const { return holding_.equilibrium.head_m; }

    void rope_sides() {
        for (std::size_t i = 0; i < e_.model.ropes.size(); ++i) {
            const RopeState& rope = holding_.setup.ropes[i];
            if (!rope.loaded) continue;
            const SiteText text = e_.model.ropes[i].has_haul ? SiteText::RopeSides : SiteText::RopeTiedOff;
            out_.push_back({.text = text, .lit = SiteLit::RopeSides, .subject = i, .force_N = rope.head_side_N, .other_N = rope.haul_side_N});
        }
    }

    /// Length of the resultant that the legs cannot take: across one leg, across the plane of two.
    [[nodiscard]] double across_N() const {
        const Vec3 pull_N = holding_.resultant_N;
        if (legs_count() == 2) return std::abs(glm::dot(pull_N, plane_of_legs(e_.model, head_m())));
        if (legs_count() == 3) return 0.0;
        const Vec3 along = glm::normalize(e_.model.legs[0].foot_m - head_m());
        return glm::length(pull_N - glm::dot(pull_N, along) * along);
    }

    void resultant() {
        const Vec3 pull_N = holding_.resultant_N;
        const double size_N = glm::length(pull_N), across = across_N(), along = std::sqrt(std::max(0.0, size_N * size_N - across * across));
        out_.push_back(
            {.text = SiteText::Resultant, .lit = SiteLit::Resultant, .force_N = size_N, .angle_deg = degrees(angle_between(pull_N, Vec3{0.0, 0.0, -1.0}))});
        const bool inside = answer_.angle_deg >= 0.0;
        const SiteText off = legs_count() == 1   ? SiteText::OffLeg
                             : legs_count() == 2 ? SiteText::OffLegs
                             : inside            ? SiteText::InsideLegs
                                                 : SiteText::OutsideLegs;
        out_.push_back({.text = off, .lit = SiteLit::Resultant, .angle_deg = std::abs(answer_.angle_deg)});
        if (legs_count() < 3)
            out_.push_back({.text = legs_count() == 1 ? SiteText::AlongLeg : SiteText::AlongLegs, .lit = SiteLit::Legs, .force_N = along, .other_N = across});
        else if (inside) out_.push_back({.text = SiteText::IntoLegs, .lit = SiteLit::Legs, .force_N = size_N});
    }

    ExplainStep guy(SiteText text, std::size_t i) const {
        const double tension_N = holding_.equilibrium.guy_tension_N[i], off_rad = holding_.guy_angle_rad[i];
        return {.text = text, .lit = SiteLit::Guy, .subject = i, .force_N = tension_N, .other_N = tension_N * std::sin(off_rad), .angle_deg = degrees(off_rad)};
    }

    void guys() {
        const std::size_t hardest = answer_.hardest_guy;
        if (legs_count() < 3) out_.push_back(guy(legs_count() == 1 ? SiteText::HardestGuy : SiteText::HardestOfTwo, hardest));
        else
            out_.push_back({.text = SiteText::SteadyingGuy,
                            .lit = SiteLit::Guy,
                            .subject = hardest,
                            .force_N = answer_.hardest_N,
                            .other_N = 1000.0 * plan_.guys[hardest].pretension_kN});
        if (said_.guy != hardest && said_.guy < e_.model.guys.size()) out_.push_back(guy(SiteText::ChosenGuy, said_.guy));
    }

    void legs() {
        std::size_t most = 0;
        for (std::size_t i = 1; i < legs_count(); ++i)
            if (holding_.equilibrium.leg_compression_N[i] > holding_.equilibrium.leg_compression_N[most]) most = i;
        out_.push_back({.text = SiteText::LegCarries, .lit = SiteLit::Legs, .subject = most, .force_N = holding_.equilibrium.leg_compression_N[most]});
    }

    void rule() {
        for (const SiteText text : {SiteText::Rule, SiteText::Why, SiteText::Mend})
            if (text != SiteText::Mend || answer_.verdict == Verdict::NoGo)
                out_.push_back({.text = text, .subject = answer_.governs.subject, .rule = answer_.governs});
    }

    const Plan& plan_;
    const Evaluation& e_;
    const Outcome& holding_;
    const SiteAnswer& answer_;
    const Prediction& said_;
    std::vector<ExplainStep> out_;
};

}  // namespace detail

/// The way from the pulls of the ropes to the verdict, step by step. `answer` is of `e`, and `e` of `plan`.
[[nodiscard]] inline std::vector<ExplainStep> explain(const Plan& plan, const Evaluation& e, const SiteAnswer& answer, const Prediction& said) {
    return detail::Explaining(plan, e, answer, said).steps();
}

}  // namespace guywright
