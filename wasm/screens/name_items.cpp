#include "wasm/screens/name_items.hpp"

#include "wasm/app/inputs.hpp"
#include "wasm/app/plan_edits.hpp"
#include "wasm/screens/key_grid.hpp"
#include "wasm/words/items.hpp"

namespace guywright::screens {
namespace {

/// Both keys always stand there, so that neither moves under the finger at an end of the list.
void add_move_keys(Builder& b, const char* list, std::size_t index, std::size_t count, app::Command up, app::Command down) {
    if (count < 2) return;
    const std::string which = std::string(list) + " " + std::to_string(index);
    const std::vector<Key> keys{{"move up " + which, b.said(words::k_up), std::move(up), widgets::ButtonLook::Plain, index > 0},
                                {"move down " + which, b.said(words::k_down), std::move(down), widgets::ButtonLook::Plain, index + 1 < count}};
    std::vector<Spoken> spoken;
    for (const Key& key : keys)
        if (key.enabled) spoken.push_back({Spoken::Kind::Key, key.id, key.label, {}, std::nullopt, key.command});
    b.push(
        widgets::k_target_px, app::order_item(list, index), [keys](widgets::Ui& u, const widgets::Box& box) { draw_row(u, box, keys); }, std::move(spoken));
}

}  // namespace

void add_guy_name(Builder& b, std::size_t guy) {
    b.action("name guy " + std::to_string(guy), b.said(words::k_name_guy), app::AskForText{app::path_at("guys[#].name", guy)});
    add_move_keys(b, "guys", guy, b.plan().guys.size(), app::MoveGuy{guy, true}, app::MoveGuy{guy, false});
}

void add_rope_name(Builder& b, std::size_t rope) {
    b.action("name rope " + std::to_string(rope), b.said(words::k_name_rope), app::AskForText{app::path_at("ropes[#].name", rope)});
    add_move_keys(b, "ropes", rope, b.plan().ropes.size(), app::MoveRope{rope, true}, app::MoveRope{rope, false});
}

}  // namespace guywright::screens
