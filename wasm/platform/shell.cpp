#include "wasm/platform/shell.hpp"

#include <SDL.h>
#include <algorithm>
#include <cfloat>
#include <cmath>
#include <emscripten.h>
#include <emscripten/html5.h>
#include <imgui.h>
#include <imgui_impl_sdl2.h>
#include <imgui_internal.h>

#include "engine/codec/check_code.hpp"
#include "wasm/app/shelf_json.hpp"
#include "wasm/platform/fonts.hpp"
#include "wasm/platform/host.hpp"
#include "wasm/platform/scale.hpp"

namespace guywright::platform {
namespace {

/// ImGui settles hover, layout and scrolling over a few frames after each change.
constexpr int k_frames_after_change = 6;
/// The pointer leaves the screen so many frames after the finger did: at once, ImGui would lose the tap;
/// never, the button would look touched until the next tap.
constexpr int k_frames_from_finger_up_to_hover_end = 3;
/// What a frame may take, of the 16.7 ms between two: the check of measuring error gets what drawing leaves, and always a little.
/// Less where a new picture goes to the browser, which needs time of its own to show it.
constexpr double k_work_ms = 11.0, k_work_beside_picture_ms = 9.0;
/// Of the time without a frame so much counts as holding a key down: a busy page hears later that the finger has gone.
constexpr float k_held_unseen_s = 0.1F;
/// A finger (more so a gloved one) wanders on a tap: about 2.5 mm is still no drag.
constexpr float k_drag_threshold_px = 15.0F;
constexpr float k_double_tap_px = 36.0F;
/// A reading changes numbers, not the layout: one frame shows it, and one more what was found in the first.
constexpr int k_frames_after_reading = 2;

int on_sdl_event(void* shell, SDL_Event* event) {
    // SDL marks the end of each poll with an event of its own: waking for it would draw for ever.
    if (event->type != SDL_POLLSENTINEL) static_cast<Shell*>(shell)->wake();
    return 0;
}

EM_BOOL on_context_lost(int, const void*, void*) { return EM_TRUE; }  // "taken care of": the browser will restore it

EM_BOOL on_context_restored(int, const void*, void* shell) {
    static_cast<Shell*>(shell)->context_restored();
    return EM_TRUE;
}

EM_BOOL on_animation_frame(double frame_ms, void* shell) {
    static_cast<Shell*>(shell)->on_animation_frame(frame_ms);
    return EM_FALSE;
}

}  // namespace

void Shell::start() {
    if (!window_.open()) return host::stop(window_.error());
    make_imgui();
    started_ = true;
    SDL_AddEventWatch(on_sdl_event, this);
    emscripten_set_webglcontextlost_callback("#canvas", this, EM_FALSE, on_context_lost);
    emscripten_set_webglcontextrestored_callback("#canvas", this, EM_FALSE, on_context_restored);
}

void Shell::begin() {
    if (!started_) return;
    begun_ = true;
    SDL_FlushEvents(SDL_FIRSTEVENT, SDL_LASTEVENT);  // nobody can have meant what was not seen
    frames_to_draw_ = k_frames_after_change;
    on_animation_frame(emscripten_get_now());  // at once: there is no frame yet to wait for
}

void Shell::make_imgui() {
    IMGUI_CHECKVERSION();
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.MouseDragThreshold = k_drag_threshold_px;
    io.MouseDoubleClickMaxDist = k_double_tap_px;
    io.ConfigInputTextCursorBlink = false;  // a blinking cursor would draw frames for ever
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    ImGui_ImplSDL2_InitForOpenGL(window_.sdl(), window_.gl_context());
    take_scale();
    fonts_ = bake_fonts(view_.pixel_ratio);
    renderer_.make();
}

void Shell::take_scale() {
    const float width = window_.width_px() - insets_css_px_[1] - insets_css_px_[3], height = window_.height_px() - insets_css_px_[0] - insets_css_px_[2];
    view_.scale = layout_scale(width, height, text_size_);
    view_.pixel_ratio = window_.pixel_ratio() * view_.scale;
}

void Shell::fit_to_screen() {
    const float baked_for = view_.pixel_ratio;
    window_.follow_canvas();
    take_scale();
    if (view_.pixel_ratio == baked_for) return;
    fonts_ = bake_fonts(view_.pixel_ratio);
    renderer_.upload_fonts();
}

void Shell::context_restored() {
    renderer_.make();  // everything that lived in the lost context is gone, the font texture too
    wake();
}

void Shell::wake() {
    frames_to_draw_ = k_frames_after_change;
    schedule();
}

void Shell::wake_anew() {
    renderer_.forget_shown();
    wake();
}

void Shell::schedule() {
    if (scheduled_ || !begun_) return;
    scheduled_ = true;
    emscripten_request_animation_frame(platform::on_animation_frame, this);
}

void Shell::on_animation_frame(double frame_ms) {
    const double start_ms = emscripten_get_now();
    scheduled_ = false;
    if (asked_in_ms_ > 0.0) pace_.frame_came(frame_ms - asked_in_ms_);
    asked_in_ms_ = 0.0;
    take_events();
    fit_to_screen();
    let_go_of_pointer();
    bool new_picture = false;
    if (has_to_draw()) {
        new_picture = draw();
        pass_on_requests();
    }
    const double work_ms = new_picture ? k_work_beside_picture_ms : k_work_ms;
    app_.go_on_computing(std::max(0.0, work_ms - (emscripten_get_now() - start_ms)));
    pace_.frame_went(new_picture, app_.verdict_word());
    if (!has_to_draw() && !app_.has_work()) return;
    schedule();
    asked_in_ms_ = frame_ms;
}

/// Not while something is only computed: that shows nothing, and drawing would take most of its time.
bool Shell::has_to_draw() const {
    const bool input_waits = ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
    return frames_to_draw_ > 0 || input_waits || app_.wants_frame();
}

void Shell::take_events() {
    SDL_Event event;
    while (SDL_PollEvent(&event) != 0) take_event(event);
    if (const auto pinch = fingers_.take(); pinch && !touches_.dropping()) app_.pinch(pinch->from_px, pinch->to_px, pinch->factor);
}

bool Shell::is_meant(const SDL_Event& event) {
    if (event.type == SDL_FINGERDOWN && touches_.down(event.tfinger.fingerId)) cancel_touch();
    if (event.type == SDL_FINGERUP) touches_.up(event.tfinger.fingerId);
    view_.fingers = touches_.fingers();
    const bool pressed = event.type == SDL_MOUSEBUTTONDOWN || event.type == SDL_MOUSEBUTTONUP;
    const bool of_finger = (pressed && event.button.which == SDL_TOUCH_MOUSEID) || (event.type == SDL_MOUSEMOTION && event.motion.which == SDL_TOUCH_MOUSEID);
    return !(of_finger && touches_.dropping());
}

void Shell::take_touch_away() {
    touches_.take_away();
    fingers_.forget();
    cancel_touch();
}

/// What the fingers have begun is taken back, and the pointer lifts where nothing lies.
void Shell::cancel_touch() {
    if (!begun_) return;
    ImGui::ClearActiveID();
    cancel_pointer();
    app_.cancel_gesture();
    wake();
}

void Shell::take_event(SDL_Event event) {
    const bool meant = is_meant(event);
    if (event.type == SDL_FINGERDOWN || event.type == SDL_FINGERMOTION || event.type == SDL_FINGERUP) take_finger(event.tfinger);
    const bool of_pointer = event.type == SDL_MOUSEMOTION || event.type == SDL_MOUSEBUTTONDOWN || event.type == SDL_MOUSEBUTTONUP;
    if (!meant || (of_pointer && fingers_.hold_pointer())) return;
    if (event.type == SDL_MOUSEMOTION) to_layout(event.motion.x, event.motion.y);
    if (event.type == SDL_MOUSEBUTTONDOWN) to_layout(event.button.x, event.button.y);
    // SDL reports no motion for a finger that comes down where it last was, but we have moved the pointer away since.
    if (event.type == SDL_MOUSEBUTTONDOWN) ImGui::GetIO().AddMousePosEvent(static_cast<float>(event.button.x), static_cast<float>(event.button.y));
    ImGui_ImplSDL2_ProcessEvent(&event);
}

void Shell::take_finger(const SDL_TouchFingerEvent& finger) {
    const glm::dvec2 at_px{static_cast<double>(finger.x * view_.width_px), static_cast<double>(finger.y * view_.height_px)};
    if (finger.type == SDL_FINGERDOWN) {
        frames_to_hover_end_ = 0;
        const ImVec2 at{static_cast<float>(at_px.x), static_cast<float>(at_px.y)};
        if (fingers_.down(finger.fingerId, at_px, app_.is_on_picture(at))) cancel_pointer();
    } else if (finger.type == SDL_FINGERUP) {
        frames_to_hover_end_ = k_frames_from_finger_up_to_hover_end;
        fingers_.up(finger.fingerId);
    } else {
        fingers_.move(finger.fingerId, at_px);
    }
}

void Shell::cancel_pointer() {
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    SDL_Event up{};
    up.type = SDL_MOUSEBUTTONUP;
    up.button.button = SDL_BUTTON_LEFT;
    up.button.which = SDL_TOUCH_MOUSEID;
    ImGui_ImplSDL2_ProcessEvent(&up);
}

void Shell::to_layout(Sint32& x_px, Sint32& y_px) const {
    x_px = static_cast<Sint32>(std::lround(static_cast<float>(x_px) / view_.scale));
    y_px = static_cast<Sint32>(std::lround(static_cast<float>(y_px) / view_.scale));
}

void Shell::let_go_of_pointer() {
    if (frames_to_hover_end_ == 0 || --frames_to_hover_end_ > 0) return;
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
}

bool Shell::draw() {
    ImGui_ImplSDL2_NewFrame();
    ImGuiIO& io = ImGui::GetIO();
    if (ImGui::IsAnyItemActive()) io.DeltaTime = std::min(io.DeltaTime, k_held_unseen_s);
    io.DisplaySize = {io.DisplaySize.x / view_.scale, io.DisplaySize.y / view_.scale};
    io.DisplayFramebufferScale = {io.DisplayFramebufferScale.x * view_.scale, io.DisplayFramebufferScale.y * view_.scale};
    ImGui::NewFrame();
    view_.width_px = io.DisplaySize.x;
    view_.height_px = io.DisplaySize.y;
    view_.inset_top_px = insets_css_px_[0] / view_.scale;
    view_.inset_right_px = insets_css_px_[1] / view_.scale;
    view_.inset_bottom_px = insets_css_px_[2] / view_.scale;
    view_.inset_left_px = insets_css_px_[3] / view_.scale;
    app_.draw(view_, fonts_);
    ImGui::Render();
    // The last one before it rests is drawn anyway, so that what stays was drawn whole, whatever has become of the surface in between.
    const bool last = frames_to_draw_ == 1, held_back = !last && renderer_.shows_a_picture() && !pace_.may_show(app_.verdict_word());
    const bool drawn = !held_back && renderer_.draw(*ImGui::GetDrawData(), app_.field(), last);
    if (drawn) window_.show_frame();
    ++frames_drawn_;
    frames_to_draw_ = std::max(held_back ? 1 : 0, frames_to_draw_ - 1);
    return drawn;
}

void Shell::pass_on_requests() {
    for (const std::string& id : app_.take_fallen()) host::signatures_fell(id);
    for (const app::Save& save : app_.take_saves()) host::save(app::save_json(save));
    for (const auto& [act, id] : app_.take_shelf_requests()) host::shelf(app::act_name(act), id);
    if (const auto wish = app_.take_text_wish()) let_type(*wish);
    if (const auto file = app_.take_download()) host::download(file->first, file->second);
    if (const auto settings = app_.take_settings()) host::keep_settings(*settings);
    if (const auto progress = app_.take_progress()) host::keep_progress(*progress);
    if (app_.take_open_request()) host::pick_file();
    device_host_.pass_on(app_);
    host::frame_drawn(app_.verdict_end_css_px());
}

void Shell::let_type(const app::TextWish& wish) {
    SDL_ResetKeyboard();  // the key that asked for this is let go elsewhere: in the page's input
    host::edit_text(wish.path, wish.label, wish.value);
}

void Shell::open_plan(std::string_view text) {
    app_.open_plan(text);
    wake();
}

unsigned Shell::resume(std::string_view plan_text, unsigned number, bool untouched) {
    wake();
    return app_.resume(plan_text, number, untouched);
}

void Shell::open_copy(std::string_view plan_text) {
    app_.open_copy(plan_text);
    wake();
}

void Shell::begin_new_plan() {
    app_.begin_new_plan();
    wake();
}

void Shell::set_shelf(std::string_view shelf_json) {
    app_.set_shelf(shelf_json);
    wake();
}

const std::string& Shell::enter_text(std::string path, std::string value) {
    refusal_ = app_.enter_text(std::move(path), std::move(value));
    wake();
    return refusal_;
}

const std::string& Shell::plan_text() {
    plan_text_ = app_.plan_text();
    return plan_text_;
}

void Shell::set_insets_px(float top, float right, float bottom, float left) {
    insets_css_px_ = {top, right, bottom, left};
    wake_anew();  // SDL has sized the surface with the screen, to the same size too, and that may wipe it
}

void Shell::set_reduced_motion(bool reduced) {
    view_.reduced_motion = reduced;
    wake();
}

void Shell::set_text_size(float times) {
    text_size_ = times;
    wake();
}

void Shell::tell(const app::Command& wish) {
    app_.tell(wish);
    wake();
}

void Shell::tell_held(const app::Held& held) {
    app_.tell(app::DeviceIsHeld{held, emscripten_get_now() / 1000.0});
    frames_to_draw_ = std::max(frames_to_draw_, k_frames_after_reading);
    schedule();
}

void Shell::press(const std::string& id) {
    app_.press(id);
    wake();
}

const std::string& Shell::enter(const std::string& path, const std::string& shown) {
    answer_ = app_.enter(path, shown);
    wake();
    return answer_;
}

const std::string& Shell::text_json() { return answer_ = app_.text_json(); }
const std::string& Shell::verdict_json() { return answer_ = app_.verdict_json(); }
const std::string& Shell::share_json() { return answer_ = app_.share_json(); }
const std::string& Shell::read_codes_json(std::string_view lines) { return answer_ = app_.read_codes_json(lines); }
const std::string& Shell::look_at_json(std::string_view plan_text) { return answer_ = app_.look_at_json(plan_text); }
const std::string& Shell::sheet_json() { return answer_ = app_.sheet_json(); }
const std::string& Shell::second_json() { return answer_ = app_.second_json(); }
const std::string& Shell::second_entries_json(std::string_view entries) { return answer_ = app_.second_entries_json(entries); }
const std::string& Shell::report_text() { return answer_ = app_.report_text(); }
const std::string& Shell::code_of(std::string_view text) { return answer_ = check_code_of(text); }

void Shell::set_signatures(std::string_view json) {
    app_.set_signatures(json);
    wake();
}

void Shell::set_progress(std::string_view json) {
    app_.set_progress(json);
    wake();
}

void Shell::go_out_of_sight() {
    if (!begun_) return;
    touches_.forget();
    view_.fingers = 0;
    app_.end_gesture();  // before letting go of it, so that it counts
    cancel_touch();
    pass_on_requests();  // no frame comes while nobody looks
}

const std::string& Shell::state_json() {
    state_json_ = app_.state_json();
    return state_json_;
}

}  // namespace guywright::platform
