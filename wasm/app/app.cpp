#include "wasm/app/app.hpp"

#include <imgui.h>

#include <algorithm>
#include <utility>

#include "engine/codec/plan_codec.hpp"
#include "wasm/app/json_text.hpp"
#include "wasm/app/page_data.hpp"
#include "wasm/app/second_data.hpp"
#include "wasm/app/text_view.hpp"
#include "wasm/app/shelf_json.hpp"
#include "wasm/app/starters.hpp"
#include "wasm/screens/items.hpp"
#include "wasm/screens/reasons.hpp"
#include "wasm/screens/screen.hpp"
#include "wasm/screens/site.hpp"
#include "wasm/widgets/verdict_mark.hpp"

namespace guywright::app {
namespace {

Json box_json(const widgets::Box& b, float scale) { return {{"x", b.x * scale}, {"y", b.y * scale}, {"width", b.w * scale}, {"height", b.h * scale}}; }

Json picture_json(const State& s) {
    const scene::Camera& c = s.camera;
    return {{"view", screens::view_name(s.view)},
            {"large", s.site_large},
            {"case", s.shown_case},
            {"cases", seen(s).outcomes.size()},
            {"yaw", c.yaw_deg},
            {"pitch", c.pitch_deg},
            {"zoom", c.zoom},
            {"moved", {c.moved_x, c.moved_y}},
            {"forces", {c.forces_yaw_deg, c.forces_pitch_deg}}};
}

void begin_canvas(const View& view) {
    ImGui::SetNextWindowPos({0.0F, 0.0F});
    ImGui::SetNextWindowSize({view.width_px, view.height_px});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0F, 0.0F});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0F);
    ImGui::Begin("canvas", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground |
                     ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse);
}

std::string_view screen_name(const State& s) {
    if (s.lock) return "Locked";
    if (!s.message.empty()) return "Message";
    if (s.plans_screen) return "Plans";
    if (s.menu_open) return "Menu";
    if (s.keypad) return "Keypad";
    return s.device.reading ? "Reading" : screens::key_of(s.step);
}

void end_canvas() {
    ImGui::End();
    ImGui::PopStyleVar(2);
}

}  // namespace

void App::draw(const View& view, const Fonts& fonts) {
    begin_canvas(view);
    scale_ = view.scale;
    fonts_ = &fonts;
    mirror_.clear();
    cut_.clear();
    std::vector<Command> wishes = std::exchange(waiting_, {});
    widgets::Ui ui{*ImGui::GetWindowDrawList(), fonts, widgets::theme(state_.theme), mirror_, hand_, cut_, wishes};
    screens::draw_screen(ui, state_, view);
    field_ = ui.theme.field;
    focus_ = ui.focus_id;
    end_canvas();
    app::apply(state_, wishes);
    if (!ImGui::IsAnyItemActive()) app::end_gesture(state_);
    wants_frame_ = !wishes.empty() || state_.sweep || ui.goes_on;  // the frame that shows what has just been found, or presses again
    if (state_.practice) return;                                   // a hand would feel the answer
    if (const auto felt = feeler_.look(state_.evaluation.verdict, state_.sweep != nullptr)) felt_ = felt;
}

bool App::is_on_picture(ImVec2 at_px) const {
    // A key on the picture is not the picture.
    const widgets::MirrorEntry* top = nullptr;
    for (const widgets::MirrorEntry& m : mirror_)
        if (at_px.x >= m.box.x && at_px.x < m.box.x + m.box.w && at_px.y >= m.box.y && at_px.y < m.box.y + m.box.h &&
            (m.kind == "button" || m.kind == "slider" || m.id == "scene"))
            if (top == nullptr || top->id == "scene") top = &m;
    return top != nullptr && top->id == "scene";
}

void App::pinch(glm::dvec2 from_px, glm::dvec2 to_px, double factor) {
    for (const widgets::MirrorEntry& m : mirror_)
        if (m.id == "scene") waiting_.push_back(PinchScene{screens::room_of_picture(m.box), from_px, to_px, factor});
}

void App::go_on_computing(double budget_ms) {
    if (is_drawing(state_)) return void(wants_frame_ = go_on_drawing(state_, budget_ms));
    if (state_.sweep) return go_on_checking(state_, budget_ms);
    if (go_on_advising(state_, budget_ms)) wants_frame_ = true;
}

const widgets::MirrorEntry* App::strip() const {
    const auto found = std::find_if(mirror_.begin(), mirror_.end(), [](const widgets::MirrorEntry& m) { return m.id == "strip"; });
    return found == mirror_.end() ? nullptr : &*found;
}

float App::verdict_end_css_px() const { return strip() == nullptr ? 0.0F : (strip()->box.y + strip()->box.h) * scale_; }

std::string_view App::verdict_word() const { return strip() == nullptr ? std::string_view() : strip()->label; }

bool App::wants_frame() const { return wants_frame_; }

void App::open_plan(std::string_view text) { app::open_plan(state_, text); }

void App::take_in_step(bool back, std::string_view plan_text) { app::take_in_step(kept_history_, back, std::string(plan_text)); }

unsigned App::resume(std::string_view plan_text, unsigned number, bool untouched) {
    History history = std::exchange(kept_history_, {});
    history.number = std::max<std::size_t>(number, history.past.size());
    return app::resume(state_, plan_text, std::move(history), untouched);
}

void App::open_copy(std::string_view plan_text) { app::open_copy(state_, plan_text); }

void App::begin_new_plan() { app::apply(state_, {LeavePractice{}, NewPlan{}}); }

void App::set_shelf(std::string_view shelf_json) {
    if (auto shelf = read_shelf(shelf_json)) state_.shelf = std::move(*shelf);
}

std::string App::enter_text(std::string path, std::string value) { return app::enter_text(state_, {std::move(path), std::move(value)}); }

std::string App::plan_text() const { return canonical_plan_text(own_plan(state_)); }

std::string App::state_json() const {
    const screens::Headline headline = screens::headline(state_);
    Json widgets = Json::array();
    for (const widgets::MirrorEntry& m : mirror_)
        widgets.push_back({{"id", m.id}, {"kind", m.kind}, {"label", m.label}, {"value", m.value}, {"rect", box_json(m.box, scale_)}});
    const Json out = {{"screen", screen_name(state_)},
                      {"verdict", headline.key},
                      {"reason", headline.why},
                      {"check_code", state_.check_code},
                      {"checking", state_.sweep != nullptr},
                      {"advising", is_advising(state_) || is_drawing(state_)},
                      {"title", state_.plan.title},
                      {"not_measured", state_.plan.not_measured},
                      {"focus", focus_},
                      {"language", language_of(state_.speech).code},
                      {"units", state_.speech.units == UnitSystem::Imperial ? "imperial" : "metric"},
                      {"cut", cut_},
                      {"picture", picture_json(state_)},
                      {"widgets", std::move(widgets)}};
    return text_of(out);
}

std::vector<Save> App::take_saves() { return std::exchange(state_.saves, {}); }

std::vector<ShelfRequest> App::take_shelf_requests() { return std::exchange(state_.shelf_requests, {}); }

std::optional<TextWish> App::take_text_wish() { return std::exchange(state_.text_wish, std::nullopt); }

std::optional<std::pair<std::string, std::string>> App::take_download() { return std::exchange(state_.download, std::nullopt); }

std::optional<Settings> App::take_settings() {
    if (!std::exchange(state_.settings_changed, false)) return std::nullopt;
    return Settings{state_.speech, state_.theme};
}

std::optional<std::string> App::take_progress() {
    if (!std::exchange(state_.progress_changed, false)) return std::nullopt;
    return progress_json(state_.progress);
}

bool App::take_open_request() { return std::exchange(state_.open_wanted, false); }
bool App::take_about_request() { return std::exchange(state_.about_wanted, false); }
bool App::take_text_request() { return std::exchange(state_.text_wanted, false); }
std::optional<Page> App::take_page_request() { return std::exchange(state_.page_wanted, std::nullopt); }

std::string App::share_json() const { return app::share_json(state_); }
std::string App::read_codes_json(std::string_view lines) const { return app::read_codes_json(state_.speech, lines); }
std::string App::look_at_json(std::string_view plan_text) const { return app::look_at_json(state_.speech, plan_text); }
std::string App::sheet_json() const { return app::sheet_json(state_); }
std::string App::second_json() const { return app::second_json(state_); }
std::string App::second_entries_json(std::string_view entries) const { return app::second_entries_json(state_, entries); }
std::string App::report_text() const { return app::report_text(state_); }

void App::end_gesture() { app::end_gesture(state_); }

void App::tell(const Command& wish) {
    app::apply(state_, {wish});
    if (!ImGui::IsAnyItemActive()) end_gesture();
}

bool App::press(const std::string& id) {
    const auto wish = fonts_ == nullptr ? std::nullopt : wish_of(id, state_, *fonts_, ImGui::GetTime());
    if (wish) tell(*wish);
    return wish.has_value();
}

std::string App::enter(const std::string& path, const std::string& shown) {
    std::string fault = enter_shown(state_, path, shown);
    if (!fault.empty()) return fault;
    refresh(state_);
    end_gesture();
    return {};
}

std::string App::text_json() { return fonts_ == nullptr ? std::string("{}") : app::text_json(state_, *fonts_); }
std::string App::verdict_json() const { return app::verdict_json(state_); }

}  // namespace guywright::app
