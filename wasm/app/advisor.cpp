#include "wasm/app/advisor.hpp"

namespace guywright::app {
namespace {

constexpr std::size_t k_points_a_slice = 2;  ///< each a solve of every case, of one that falls up to a quarter of a millisecond
constexpr std::size_t k_directions_a_slice = 32;

/// The first slice makes the search, every other goes on with it.
template <class Search, class... From>
void advance_search(std::unique_ptr<Search>& search, std::size_t by, const From&... from) {
    if (search) search->advance(by);
    else search = std::make_unique<Search>(from...);
}

template <class Search>
bool is_done(const std::unique_ptr<Search>& search) {
    return search && search->done();
}

}  // namespace

void Advisor::advance_line_up() {
    if (!line_up_found_) {
        tuning_.line_up = find_line_up(plan_, e_.model);
        line_up_found_ = true;
        line_up_done_ = tuning_.line_up.take_up_m.empty();  // nowhere to go, in no order
        return;
    }
    if (!order_search_) order_search_ = std::make_unique<LineUpOrderSearch>(plan_, e_.model, tuning_.line_up);
    else if (!order_search_->done()) order_search_->advance();
    if (!order_search_->done()) return;
    tuning_.order = order_search_->order();
    line_up_done_ = true;
}

void Advisor::advance_pretension() {
    if (!pretension_search_) pretension_search_ = std::make_unique<PretensionSearch>(plan_);
    else if (!pretension_search_->done()) pretension_search_->advance();
    if (!pretension_search_->done()) return;
    tuning_.least_pretension = pretension_search_->answer();
    pretension_done_ = true;
}

void Advisor::advance(Question about) {
    if (done(about)) return;
    switch (about) {
        case Question::Change: return advance_search(change_, k_points_a_slice, plan_);
        case Question::Anchors: return advance_search(anchors_, k_points_a_slice, plan_);
        case Question::Directions: return advance_search(directions_, k_directions_a_slice, plan_, e_);
        case Question::LineUp: return advance_line_up();
        case Question::Pretension: return advance_pretension();
        case Question::Order: tuning_.sequence = find_sequence(plan_, e_.model); return;
        case Question::Ties: break;
    }
    tuning_.rigged = tie_matrix(e_.model, e_.outcomes[k_rigged].equilibrium);
    tuning_.holding = tie_matrix(e_.model, e_.outcomes[k_holding].equilibrium);
    ties_done_ = true;
}

bool Advisor::done(Question about) const {
    switch (about) {
        case Question::Change: return is_done(change_);
        case Question::Ties: return ties_done_;
        case Question::LineUp: return line_up_done_;
        case Question::Pretension: return pretension_done_;
        case Question::Order: return tuning_.sequence.computed;
        case Question::Anchors: return is_done(anchors_);
        case Question::Directions: return is_done(directions_);
    }
    return true;
}

std::size_t Advisor::news(Question about) const {
    const std::size_t finished = done(about) ? 1 : 0;
    if (about == Question::Change && change_) return finished + change_->advice().size();
    if (about == Question::LineUp) return finished + (line_up_found_ ? 1 : 0);
    // how the best are ranked may change with each one judged
    if (about == Question::Anchors && anchors_) return finished + anchors_->judged();
    return finished;
}

}  // namespace guywright::app
