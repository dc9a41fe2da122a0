#include "wasm/app/app.hpp"

#include <imgui.h>

namespace guywright::app {
namespace {

constexpr float k_gap_px = 16.0F;
constexpr float k_target_px = 96.0F;

template <class R>
bool button(const char* label, R& rect, float width_px) {
    const bool pressed = ImGui::Button(label, {width_px, k_target_px});
    const ImVec2 from = ImGui::GetItemRectMin(), size = ImGui::GetItemRectSize();
    rect = {from.x, from.y, size.x, size.y};
    return pressed;
}

template <class R>
std::string widget(const char* id, const char* label, const std::string& value, const R& r) {
    return std::string(R"({"id":")") + id + R"(","label":")" + label + R"(","value":")" + value + R"(","rect":{"x":)" +
           std::to_string(r.x) + R"(,"y":)" + std::to_string(r.y) + R"(,"width":)" + std::to_string(r.width) +
           R"(,"height":)" + std::to_string(r.height) + "}}";
}

}  // namespace

void App::draw(const View& view, const Fonts& fonts) {
    ImGui::SetNextWindowPos({view.inset_left_px, view.inset_top_px});
    ImGui::SetNextWindowSize({view.width_px - view.inset_left_px - view.inset_right_px,
                              view.height_px - view.inset_top_px - view.inset_bottom_px});
    ImGui::Begin("main", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
    const float width_px = ImGui::GetContentRegionAvail().x;
    ImGui::PushFont(fonts.huge);
    ImGui::TextUnformatted("NOT CHECKED");
    ImGui::PopFont();
    ImGui::PushFont(fonts.large);
    ImGui::Text("Taps: %d", taps_);
    if (button("Tap", tap_rect_, width_px)) {
        ++taps_;
        save_wanted_ = true;
    }
    ImGui::Dummy({0.0F, k_gap_px});
    if (button("Open a plan", open_rect_, width_px)) open_wanted_ = true;
    ImGui::PopFont();
    ImGui::TextWrapped("%s", opened_.c_str());
    ImGui::End();
}

bool App::wants_frame() const { return false; }

void App::open_plan(std::string_view text) {
    opened_ = std::to_string(text.size()) + " characters opened";
    if (text.substr(0, 5) == "taps=") taps_ = std::atoi(std::string(text.substr(5)).c_str());
}

std::string App::state_json() const {
    return R"({"screen":"start","verdict":"NOT CHECKED","opened":")" + opened_ + R"(","widgets":[)" +
           widget("tap", "Tap", std::to_string(taps_), tap_rect_) + "," + widget("open", "Open a plan", "", open_rect_) + "]}";
}

std::optional<std::string> App::take_save() {
    if (!std::exchange(save_wanted_, false)) return std::nullopt;
    return "taps=" + std::to_string(taps_);
}

std::optional<std::pair<std::string, std::string>> App::take_download() { return std::nullopt; }

bool App::take_open_request() { return std::exchange(open_wanted_, false); }

}  // namespace guywright::app
