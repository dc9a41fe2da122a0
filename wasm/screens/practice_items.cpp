#include "wasm/screens/practice_items.hpp"

#include "wasm/words/practice.hpp"

namespace guywright::screens {
namespace {

using widgets::ButtonLook;

void choice_items(Builder& b) {
    b.group(b.said(words::practice::k_practice));
    b.text(b.said(words::practice::k_no_rig), &app::Fonts::text);
    b.keys({{"leave practice", b.said(words::practice::k_leave), app::LeavePractice{}, ButtonLook::Action}});
}

}  // namespace

std::string practice_title(const app::State& state, app::Step) { return said(state, words::practice::k_practice); }

void add_practice_items(Builder& b, app::Step) { choice_items(b); }

}  // namespace guywright::screens
