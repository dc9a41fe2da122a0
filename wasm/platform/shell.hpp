#pragma once
#include <SDL_events.h>

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "wasm/app/app.hpp"
#include "wasm/platform/fingers.hpp"
#include "wasm/platform/picture_pace.hpp"
#include "wasm/platform/renderer.hpp"
#include "wasm/platform/device_host.hpp"
#include "wasm/platform/touch_filter.hpp"
#include "wasm/platform/window.hpp"

namespace guywright::platform {

/// Runs the app inside the page: draws a frame only when something changed, and sleeps otherwise.
class Shell {
public:
    void start();  ///< all that is needed to draw; nothing is drawn yet
    void begin();  ///< draws, from what it has been told until now: its first picture is the person's own plan

    void wake();       ///< something changed outside: draw soon
    void wake_anew();  ///< the same, where the surface may have been wiped
    void open_plan(std::string_view text);
    void take_in_step(bool back, std::string_view plan_text) { app_.take_in_step(back, plan_text); }
    unsigned resume(std::string_view plan_text, unsigned number, bool untouched);
    void open_copy(std::string_view plan_text);
    void begin_new_plan();
    void set_shelf(std::string_view shelf_json);
    [[nodiscard]] const std::string& enter_text(std::string path, std::string value);  ///< valid until the next call
    [[nodiscard]] const std::string& plan_text();                                      ///< valid until the next call
    void set_insets_px(float top, float right, float bottom, float left);
    void set_reduced_motion(bool reduced);
    void set_text_size(float times);  ///< as large as usual, that the person has set in the browser
    void tell(const app::Command& wish);
    void tell_held(const app::Held& held);  ///< some ten a second while a reading is in hand
    void press(const std::string& id);
    [[nodiscard]] const std::string& enter(const std::string& path, const std::string& shown);  ///< valid until the next call
    [[nodiscard]] const std::string& text_json();
    [[nodiscard]] const std::string& verdict_json();
    [[nodiscard]] const std::string& share_json();
    [[nodiscard]] const std::string& read_codes_json(std::string_view lines);
    [[nodiscard]] const std::string& look_at_json(std::string_view plan_text);
    [[nodiscard]] const std::string& sheet_json();
    [[nodiscard]] const std::string& second_json();
    [[nodiscard]] const std::string& second_entries_json(std::string_view entries);
    [[nodiscard]] const std::string& report_text();
    [[nodiscard]] const std::string& code_of(std::string_view text);  ///< the check code of a text as it stands
    void set_signatures(std::string_view json);
    void set_progress(std::string_view json);
    void take_touch_away();                         ///< by the device: what the fingers have begun was not meant
    void go_out_of_sight();                         ///< nothing may be lost if the page never comes back
    [[nodiscard]] const std::string& state_json();  ///< valid until the next call
    [[nodiscard]] std::uint32_t frames_drawn() const { return frames_drawn_; }
    /// True where nothing waits to be taken in, computed or drawn.
    [[nodiscard]] bool is_idle() const { return !scheduled_; }

    void context_restored();
    void on_animation_frame(double frame_ms);  ///< by the browser's clock of frames

private:
    void make_imgui();
    void fit_to_screen();
    void take_scale();
    void schedule();
    void take_events();
    void take_event(SDL_Event event);
    void cancel_touch();
    [[nodiscard]] bool is_meant(const SDL_Event& event);
    void to_layout(std::int32_t& x_px, std::int32_t& y_px) const;  ///< from CSS pixels
    void take_finger(const SDL_TouchFingerEvent& finger);
    void let_go_of_pointer();
    void cancel_pointer();  ///< whatever it holds is let go without being pressed
    bool draw();            ///< true where the picture is new
    void pass_on_requests();
    void let_type(const app::TextWish& wish);
    [[nodiscard]] bool has_to_draw() const;

    app::App app_;
    app::View view_;
    app::Fonts fonts_;
    Window window_;
    Fingers fingers_;
    Renderer renderer_;
    PicturePace pace_;
    DeviceHost device_host_;
    TouchFilter touches_;
    float text_size_ = 1.0F;
    std::string answer_;
    std::array<float, 4> insets_css_px_{};  ///< top, right, bottom, left
    std::string state_json_, refusal_, plan_text_;
    std::uint32_t frames_drawn_ = 0;
    int frames_to_draw_ = 0;
    int frames_to_hover_end_ = 0;  ///< 0 = nothing pending
    double asked_in_ms_ = 0.0;     ///< the frame that asked for the next one; 0 = none did
    bool scheduled_ = false;
    bool started_ = false;
    bool begun_ = false;
};

}  // namespace guywright::platform
