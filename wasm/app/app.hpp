#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "wasm/app/apply.hpp"
#include "wasm/app/practice_steps.hpp"
#include "wasm/app/verdict_feeler.hpp"
#include "wasm/app/view.hpp"
#include "wasm/widgets/mirror.hpp"
#include "wasm/widgets/ui.hpp"

namespace guywright::app {

/// What the device keeps besides plans.
struct Settings {
    Speech speech;
    widgets::ThemeName theme;
};

/// The part of the program that has a plan and shows it. The shell calls it; it never calls the shell.
class App {
public:
    void draw(const View& view, const Fonts& fonts);      ///< one ImGui frame; called only when something changed
    [[nodiscard]] ImU32 field() const { return field_; }  ///< of the frame drawn last: the colour behind all else, that nothing of it fills
    void go_on_computing(double budget_ms);               ///< the sweep over measuring error, then what the open screen asks; after the frame has been drawn
    /// Two fingers, layout px: what was at `from` comes to `to`, `factor` times as large, in the next frame drawn.
    void pinch(glm::dvec2 from_px, glm::dvec2 to_px, double factor);
    [[nodiscard]] bool is_on_picture(ImVec2 at_px) const;  ///< of the frame drawn last
    [[nodiscard]] bool wants_frame() const;                ///< true while something animates, is still being checked or has just been found
    [[nodiscard]] float verdict_end_css_px() const;        ///< where on the page the drawn verdict ends; 0 where none is drawn
    [[nodiscard]] std::string_view verdict_word() const;   ///< as drawn, empty where none is; valid until the next draw()
    [[nodiscard]] bool has_work() const { return is_advising(state_) || is_drawing(state_); }  ///< to be done also while nothing is drawn
    void open_plan(std::string_view text);                                                     ///< a plan file the user chose
    /// A step of the plan that resume() will go on with: back, the nearest first, or on again, the nearest first.
    void take_in_step(bool back, std::string_view plan_text);
    /// A plan kept from last time, with the steps taken in. Its number as a document; 0, with nothing changed, where it cannot be read.
    unsigned resume(std::string_view plan_text, unsigned number, bool untouched);
    void open_copy(std::string_view plan_text);  ///< of a kept plan, as a plan of its own
    void begin_new_plan();
    void set_shelf(std::string_view shelf_json);                  ///< what is kept, for the list
    std::string enter_text(std::string path, std::string value);  ///< why it is refused; empty: taken
    [[nodiscard]] std::string plan_text() const;                  ///< the person's own, also while practising
    [[nodiscard]] std::string state_json() const;  ///< screen, verdict, texts that were cut, focus, widgets with id, label, value and rect in CSS px
    std::vector<Save> take_saves();                ///< what to keep, once per gesture
    std::vector<ShelfRequest> take_shelf_requests();
    std::optional<TextWish> take_text_wish();
    std::optional<std::pair<std::string, std::string>> take_download();  ///< title of a plan, text of its file
    std::optional<Settings> take_settings();                             ///< chosen anew by the person
    std::optional<std::string> take_progress();                          ///< in practice, to be kept
    void set_progress(std::string_view json) { state_.progress = read_progress(json); }
    bool take_open_request();  ///< the app wants a file picker
    bool take_about_request();
    bool take_text_request();
    std::optional<Page> take_page_request();
    [[nodiscard]] std::string share_json() const;  ///< these four: see page_data.hpp
    [[nodiscard]] std::string read_codes_json(std::string_view lines) const;
    [[nodiscard]] std::string look_at_json(std::string_view plan_text) const;
    [[nodiscard]] std::string sheet_json() const;
    [[nodiscard]] std::string second_json() const;  ///< these three: see second_data.hpp
    [[nodiscard]] std::string second_entries_json(std::string_view entries) const;
    [[nodiscard]] std::string report_text() const;
    void set_signatures(std::string_view json) { state_.signatures = read_signatures(json); }  ///< all that stand on this device
    std::vector<std::string> take_fallen() { return std::exchange(state_.fallen, {}); }        ///< signatures that a change has taken away

    void tell(const Command& wish);     ///< news of the device, or a wish of the text view: a gesture of its own
    bool press(const std::string& id);  ///< a key of the text view; false where there is none such
    [[nodiscard]] std::string enter(const std::string& path, const std::string& shown);  ///< why the number was not taken, or nothing
    void cancel_gesture() { app::cancel_gesture(state_); }
    void end_gesture();                              ///< whatever is under way counts as done: the page is going out of sight
    [[nodiscard]] std::string text_json();           ///< verdict, every input and every key, as text; see text_view.hpp
    [[nodiscard]] std::string verdict_json() const;  ///< what of it changes while a finger moves
    [[nodiscard]] const Device& device() const { return state_.device; }
    [[nodiscard]] std::optional<Verdict> take_felt() { return std::exchange(felt_, std::nullopt); }  ///< a new verdict, to be felt

private:
    [[nodiscard]] const widgets::MirrorEntry* strip() const;  ///< the verdict as drawn; null where none is

    State state_ = first_state();
    History kept_history_;  ///< of the plan that is about to be resumed
    widgets::Hand hand_;
    widgets::Mirror mirror_;
    widgets::CutTexts cut_;
    std::vector<Command> waiting_;  ///< wishes from outside the screens
    VerdictFeeler feeler_;
    std::optional<Verdict> felt_;
    const Fonts* fonts_ = nullptr;
    ImU32 field_ = 0;
    std::string focus_;   ///< id of the widget that the keyboard would act on
    float scale_ = 1.0F;  ///< of the frame drawn last
    bool wants_frame_ = false;
};

}  // namespace guywright::app
