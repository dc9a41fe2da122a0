#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "wasm/app/apply.hpp"
#include "wasm/app/view.hpp"
#include "wasm/widgets/mirror.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::app {

/// The part of the program that has a plan and shows it. The shell calls it; it never calls the shell.
class App {
public:
    void draw(const View& view, const Fonts& fonts);  ///< one ImGui frame; called only when something changed
    void go_on_checking(double budget_ms);            ///< the sweep over measuring error, after the frame has been drawn
    /// Two fingers, layout px: what was at `from` comes to `to`, `factor` times as large, in the next frame drawn.
    void pinch(glm::dvec2 from_px, glm::dvec2 to_px, double factor);
    [[nodiscard]] bool is_on_picture(ImVec2 at_px) const;  ///< of the frame drawn last
    [[nodiscard]] bool wants_frame() const;           ///< true while something animates or is still computed
    void open_plan(std::string_view text);            ///< a plan file the user chose, or the one kept from last time
    [[nodiscard]] std::string state_json() const;     ///< screen, verdict, texts that were cut, focus, widgets with id, label, value and rect in CSS px
    std::optional<std::string> take_save();           ///< plan text to keep, once per gesture
    std::optional<std::pair<std::string, std::string>> take_download();  ///< file name, text
    bool take_open_request();                                            ///< the app wants a file picker

private:
    State state_ = first_state();
    widgets::Hand hand_;
    widgets::Mirror mirror_;
    widgets::CutTexts cut_;
    std::vector<Command> waiting_;   ///< wishes from outside the screens
    std::string focus_;    ///< id of the widget that the keyboard would act on
    float scale_ = 1.0F;  ///< of the frame drawn last
    bool wants_frame_ = false;
};

}  // namespace guywright::app
