#pragma once
#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "wasm/app/inputs.hpp"
#include "wasm/screens/items.hpp"
#include "wasm/words/card.hpp"
#include "wasm/screens/key_grid.hpp"

namespace guywright::screens {

/// One of several big keys side by side, of which one is chosen.
struct Choice {
    std::string id, label;
    bool chosen;
    app::Command command;
};

/// What it is and how much, in two columns.
struct Row {
    std::string left, right;
};

/// Gathers the items of one step.
class Builder {
public:
    Builder(const widgets::Ui& ui, const app::State& state, float width, bool all = false) : ui_(ui), state_(state), width_(width), all_(all) {}

    void group(std::string title, std::string id = {});
    /// What follows in the group is for the few who need it, and is left out until they ask: `what` names it on the key.
    void more(std::string what);

    void slide(const std::string& path);  ///< nothing where the plan has no such number
    void choose(std::vector<Choice> choices);
    void toggle(std::string id, std::string label, bool on, app::Command command);
    void action(std::string id, std::string label, app::Command command);
    void keys(std::vector<Key> keys);  ///< a row of them, equally wide
    void text(std::string words, ImFont* app::Fonts::*font);
    void caution(std::string words);
    void rows(const std::vector<Row>& rows, const std::string& heading = {});  ///< close below each other, some of them never parted
    void push(float height_px, std::string id, std::function<void(widgets::Ui&, const widgets::Box&)> draw, std::vector<Spoken> spoken = {});

    [[nodiscard]] const widgets::Ui& ui() const { return ui_; }
    [[nodiscard]] const app::State& state() const { return state_; }
    [[nodiscard]] const Plan& plan() const { return state_.plan; }
    [[nodiscard]] std::string said(const app::Said& text) const { return app::said(state_, text); }
    [[nodiscard]] std::string said(const app::Said& text, std::initializer_list<app::Fill> fills) const { return app::said(state_, text, fills); }
    /// "Guy 2 of 3: left"
    [[nodiscard]] std::string named(std::string what, std::string name) const {
        return said(words::k_named, {{"{what}", std::move(what)}, {"{name}", std::move(name)}});
    }
    [[nodiscard]] float width() const { return width_; }
    [[nodiscard]] StepItems take() { return std::move(out_); }

private:
    void rows_together(std::vector<Row> rows, const std::string& heading);
    /// True where the item is for the few and nobody asked; the key then leads to it.
    bool leave_out(const std::string& id);

    const widgets::Ui& ui_;
    const app::State& state_;
    float width_;
    bool all_;  ///< nothing is left out
    StepItems out_{};
    std::string more_{};  ///< set from more() to the end of the group
};

}  // namespace guywright::screens
