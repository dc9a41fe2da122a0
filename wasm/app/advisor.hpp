#pragma once
#include <memory>
#include <optional>

#include "engine/advice/counsel.hpp"
#include "engine/advice/tuning.hpp"

namespace guywright::app {

/// What can be asked once there is a verdict; each is computed by itself.
enum class Question : unsigned char { Change, Ties, LineUp, Pretension, Order, Anchors, Directions };

/// Answers questions about one plan, in slices so that a screen can draw in between. Whoever changes the plan throws it away.
class Advisor {
public:
    /// `e`: the finished evaluation of `plan`.
    Advisor(const Plan& plan, const Evaluation& e) : plan_(plan), e_(e) {}
    // searches point into plan and evaluation
    Advisor(const Advisor&) = delete;
    Advisor& operator=(const Advisor&) = delete;

    [[nodiscard]] const Plan& plan() const { return plan_; }
    [[nodiscard]] const Evaluation& evaluation() const { return e_; }

    /// One slice: well under a millisecond native, but for line-up and order of work, which take one at most.
    void advance(Question about);
    [[nodiscard]] bool done(Question about) const;
    /// Grows whenever there is more to show of an answer.
    [[nodiscard]] std::size_t news(Question about) const;

    // Null until asked; what was found so far while not done.
    [[nodiscard]] const SmallestChange* change() const { return change_.get(); }
    [[nodiscard]] const AnchorChoice* anchors() const { return anchors_.get(); }
    [[nodiscard]] const DirectionMap* directions() const { return directions_.get(); }
    /// Its parts are computed where done() says so.
    [[nodiscard]] const Tuning& tuning() const { return tuning_; }

private:
    void advance_line_up();
    void advance_pretension();

    Plan plan_;
    Evaluation e_;
    std::unique_ptr<SmallestChange> change_;
    std::unique_ptr<AnchorChoice> anchors_;
    std::unique_ptr<DirectionMap> directions_;
    Tuning tuning_;
    std::unique_ptr<LineUpOrderSearch> order_search_;
    std::unique_ptr<PretensionSearch> pretension_search_;
    bool ties_done_ = false, line_up_found_ = false, line_up_done_ = false, pretension_done_ = false;
};

}  // namespace guywright::app
