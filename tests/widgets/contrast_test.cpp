#include "wasm/widgets/theme_table.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <string>

// Contrast by relative luminance: Web Content Accessibility Guidelines 2.2, "relative luminance" and "contrast ratio" of the
// glossary; 7:1 is success criterion 1.4.6, 3:1 for what is no text 1.4.11 (MEMORY).
using namespace guywright::widgets;

namespace {

constexpr double k_text_contrast = 7.0, k_mark_contrast = 3.0;

double linear(unsigned byte) {
    const double c = byte / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Rgb c) { return 0.2126 * linear((c >> 16U) & 255U) + 0.7152 * linear((c >> 8U) & 255U) + 0.0722 * linear(c & 255U); }

double contrast(Rgb a, Rgb b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

/// `over` at `alpha` of 255 on `under`, mixed as a screen does.
Rgb mixed(Rgb over, Rgb under, unsigned alpha) {
    Rgb out = 0;
    for (const unsigned shift : {16U, 8U, 0U}) {
        const unsigned a = (over >> shift) & 255U, b = (under >> shift) & 255U;
        out |= ((a * alpha + b * (255U - alpha) + 127U) / 255U) << shift;
    }
    return out;
}

constexpr ThemeName k_all[]{ThemeName::Sun, ThemeName::Dim, ThemeName::Night};

}  // namespace

TEST_CASE("contrast: the measure itself") {
    CHECK(contrast(0x000000, 0xFFFFFF) == doctest::Approx(21.0));
    CHECK(contrast(0x777777, 0xFFFFFF) == doctest::Approx(4.48).epsilon(0.01));
    CHECK(contrast(0xFF0000, 0xFFFFFF) == doctest::Approx(4.0).epsilon(0.01));
}

TEST_CASE("contrast: all text at least 7:1 in sun, dim and red night; marks at least 3:1") {
    for (const ThemeName name : k_all) {
        const Colours& c = colours(name);
        CAPTURE(static_cast<int>(name));
        for (const Pair& p : k_text_pairs) CHECK_MESSAGE(contrast(c.*p.front, c.*p.back) >= k_text_contrast, p.what);
        for (const Pair& p : k_mark_pairs) CHECK_MESSAGE(contrast(c.*p.front, c.*p.back) >= k_mark_contrast, p.what);
    }
}

TEST_CASE("contrast: a label in the scene at least 7:1 on its plate, whatever lies under it") {
    for (const ThemeName name : k_all) {
        const Colours& c = colours(name);
        const SceneColours& s = c.scene;
        CAPTURE(static_cast<int>(name));
        for (const auto text : k_scene_texts) {
            CHECK_MESSAGE(contrast(s.*text, mixed(s.plate, c.field, s.plate_alpha)) >= k_text_contrast, "on the field");
            for (const auto under : k_under_scene_texts) {
                CAPTURE(s.*under);
                CHECK(contrast(s.*text, mixed(s.plate, s.*under, s.plate_alpha)) >= k_text_contrast);
            }
        }
    }
}

TEST_CASE("contrast: the verdicts differ by polarity, so that a screen without colour tells them apart") {
    for (const ThemeName name : k_all) {
        const Colours& c = colours(name);
        CHECK(contrast(c.no_go, c.field) >= k_text_contrast);  // NO-GO is solid, GO and NOT CHECKED are open field
    }
}

TEST_CASE("contrast: the scene writes its labels with no colour that is not measured here") {
    namespace fs = std::filesystem;
    const std::regex label("label_(?:line|round)\\(\\{.*?rank::[a-z]+, ([a-z_.()]+)");
    int seen = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(GUYWRIGHT_ROOT) / "wasm/scene")) {
        std::ifstream in(entry.path());
        for (std::string line; std::getline(in, line);) {
            std::smatch found;
            if (!std::regex_search(line, found, label)) continue;
            ++seen;
            const std::string colour = found[1];
            CHECK_MESSAGE((colour.ends_with("look.text") || colour.ends_with("look().text") || colour.ends_with("resultant")), entry.path().filename().string(),
                          ": ", line);
        }
    }
    CHECK(seen > 10);
}

TEST_CASE("contrast: the screens write with no colour that is not measured here") {
    const std::set<std::string> fronts{"ink", "field", "action_ink", "no_go_ink", "caution_ink"};
    namespace fs = std::filesystem;
    const std::regex colour("theme\\.([a-z_]+)");
    int seen = 0;
    for (const char* folder : {"wasm/screens", "wasm/widgets"})
        for (const auto& entry : fs::directory_iterator(fs::path(GUYWRIGHT_ROOT) / folder)) {
            std::ifstream in(entry.path());
            for (std::string line; std::getline(in, line);) {
                if (line.find("write(") == std::string::npos && line.find("write_line(") == std::string::npos) continue;
                for (auto at = std::sregex_iterator(line.begin(), line.end(), colour); at != std::sregex_iterator(); ++at) {
                    ++seen;
                    CHECK_MESSAGE(fronts.contains((*at)[1].str()), entry.path().filename().string(), ": ", line);
                }
            }
        }
    CHECK(seen > 20);
}
