#pragma once
#include <cstddef>
#include <memory>
#include <optional>
#include <string>

#include "engine/practice/draw_site.hpp"
#include "engine/practice/explain.hpp"
#include "engine/verdict/evaluate.hpp"
#include "wasm/app/command.hpp"
#include "wasm/app/course.hpp"
#include "wasm/app/history.hpp"
#include "wasm/scene/view.hpp"

namespace guywright::app {

/// What of the answers of advice is looked at.
struct AdviceShown {
    std::size_t guy = 0;         ///< taken in; past the end: the last
    bool holding = false;        ///< else as rigged
    Heading toward{0.0, 20.0};   ///< on the chart of directions
    std::size_t anchor_set = 0;  ///< on the list of the best
};

/// The person's own plan with its history and the place they were at, while the app shows one that is only practised on. What
/// stands in here is never changed, saved or signed.
struct SetAside {
    Plan plan;
    History history;
    bool untouched = true;
    Step step = Step::Edge;
    std::size_t item = 0;
    std::string open_group;
    AdviceShown advice_shown;
    scene::Camera camera;
    scene::View view = scene::View::Free;
    std::size_t shown_case = k_holding;
};

/// How far one has come with the plan practised on.
enum class Practising : unsigned char {
    Choosing,    ///< on none: the plan in hand is what was there last, and is not shown
    Predicting,  ///< it is shown as drawn: no verdict, no forces, no checks
    Answered,    ///< everything of it is shown
    Changing     ///< and its numbers may be changed
};

/// A drawn site, what the trainee said of it and, once that is shown, its answer.
struct SiteInHand {
    std::uint32_t seed = 1;
    int level = k_first_site_level;
    Prediction said{};
    bool said_go = false, said_guy = false;
    std::optional<SiteAnswer> answer{};
    Marks marks{};
    std::vector<ExplainStep> explanation{};
    std::size_t spoken = 0;  ///< the sentence of it that is shown
};

/// Practice: the plan in hand is nobody's rig. It is never kept, signed, shared or printed, and it has no check code.
struct Practice {
    SetAside own;
    Practising stage = Practising::Choosing;
    Plan drawn;                            ///< the plan practised on before anything of it was changed
    SiteInHand site;                       ///< the choice of the next one, and then the one in hand
    std::unique_ptr<SiteDrawing> drawing;  ///< while a site is being drawn
    bool none_found = false;               ///< for that number no site was clear-cut
    Evaluation unseen;                     ///< of it, what may be seen while its answer may not: the model alone
    std::optional<LessonInHand> lesson;    ///< of the course
};

[[nodiscard]] inline bool is_blind(const std::optional<Practice>& p) { return p && p->stage <= Practising::Predicting; }
/// Numbers of the plan in hand may be changed: of one's own plan always.
[[nodiscard]] inline bool may_change(const std::optional<Practice>& p) { return !p || p->stage == Practising::Changing; }

/// Steps that can be gone to as far as one has come.
[[nodiscard]] bool reaches(Practising stage, Step step);

/// What the page calls the number of a site when it asks for it.
inline constexpr const char* k_site_number_path = "practice.site";

/// Whether a wish is carried out while practising: those that look, those of practice itself, those that change numbers where
/// that is allowed. Whatever keeps, hands on or opens a plan is not.
[[nodiscard]] bool passes_practice(const Command& wish, Practising stage);

}  // namespace guywright::app
