#pragma once
#include "engine/codec/sentences.hpp"

namespace guywright {

namespace detail {

inline std::string after(std::string_view heading, std::string text) { return std::string(heading) + " " + std::move(text); }

inline std::string name_in(const Plan& plan, const ExplainStep& step) {
    if (step.lit == SiteLit::RopeSides) return plan.ropes[step.subject].name;
    return step.lit == SiteLit::Guy ? plan.guys[step.subject].name : std::string();
}

}  // namespace detail

/// A step of the explanation as one sentence. `e` is the evaluation that it was made from.
[[nodiscard]] inline std::string sentence(const Telling& t, const Plan& plan, const Evaluation& e, const ExplainStep& step) {
    const PracticeWords& words = t.words.practice;
    if (step.text == SiteText::Rule) return detail::after(words.of(step.text), sentence(t, plan, e, step.rule));
    if (step.text == SiteText::Why) return detail::after(words.of(step.text), std::string(words.of(step.rule.id).why));
    if (step.text == SiteText::Mend) return detail::after(words.of(step.text), std::string(words.of(step.rule.id).mend));
    const bool several = plan.frame.legs.size() > 1;
    const std::string leg = several ? detail::filled(words.leg_of_several, {{"{n}", std::to_string(step.subject + 1)}}) : std::string(words.the_leg);
    return detail::filled(words.of(step.text), {{"{name}", detail::name_in(plan, step)},
                                                {"{leg}", leg},
                                                {"{force}", quantity(t, step.force_N / 1000.0, "kN")},
                                                {"{other}", quantity(t, step.other_N / 1000.0, "kN")},
                                                {"{angle}", quantity(t, step.angle_deg, "deg")}});
}

}  // namespace guywright
