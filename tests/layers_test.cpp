#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

// Data flows one way. No file of the engine includes one from a layer further on.

namespace {

namespace fs = std::filesystem;

const std::vector<std::string> k_layers{"base",    "plan",    "model",  "equilibrium", "cases", "checks",
                                        "margins", "verdict", "advice", "practice",    "codec", "command_line"};

const fs::path k_engine = fs::path(GUYWRIGHT_ROOT) / "engine";

struct Include {
    fs::path file;
    std::string layer;   ///< of the file
    std::string target;  ///< what stands between the quotes or brackets
};

bool is_source(const fs::path& p) { return p.extension() == ".hpp" || p.extension() == ".cpp"; }

void read_includes(const fs::path& file, std::vector<Include>& out) {
    std::ifstream in(file);
    REQUIRE(in.good());
    const std::string layer = fs::relative(file, k_engine).begin()->string();
    for (std::string line; std::getline(in, line);) {
        const std::size_t hash = line.find_first_not_of(" \t");
        if (hash == std::string::npos || line.compare(hash, 1, "#") != 0 || line.find("include") == std::string::npos) continue;
        const std::size_t open = line.find_first_of("\"<");
        if (open == std::string::npos) continue;
        const std::size_t close = line.find_first_of("\">", open + 1);
        out.push_back({file, layer, line.substr(open + 1, close - open - 1)});
    }
}

std::vector<Include> engine_includes() {
    std::vector<Include> out;
    for (const auto& entry : fs::recursive_directory_iterator(k_engine))
        if (entry.is_regular_file() && is_source(entry.path())) read_includes(entry.path(), out);
    return out;
}

long rank(const std::string& layer) {
    const auto at = std::find(k_layers.begin(), k_layers.end(), layer);
    return at == k_layers.end() ? -1 : at - k_layers.begin();
}

/// "" for what is not ours.
std::string layer_of(const std::string& target) {
    if (target.rfind("engine/", 0) != 0) return "";
    return target.substr(7, target.find('/', 7) - 7);
}

bool is_foreign(std::string_view target) {
    for (const char* word : {"SDL", "imgui", "ImGui", "nlohmann", "emscripten", "doctest", "nlopt", "GLES", "wasm/", "tests/"})
        if (target.find(word) != std::string_view::npos) return true;
    return false;
}

}  // namespace

TEST_CASE("layers: every folder of the engine is in the agreed order") {
    for (const auto& entry : fs::directory_iterator(k_engine)) {
        CAPTURE(entry.path().string());
        CHECK(entry.is_directory());
        CHECK(rank(entry.path().filename().string()) >= 0);
    }
}

TEST_CASE("layers: no include points to a layer further on") {
    int seen = 0;
    for (const Include& i : engine_includes()) {
        const std::string target_layer = layer_of(i.target);
        if (target_layer.empty()) continue;
        ++seen;
        CAPTURE(i.file.string());
        CAPTURE(i.target);
        CHECK(rank(target_layer) >= 0);
        CHECK(rank(target_layer) <= rank(i.layer));
        CHECK(fs::exists(k_engine.parent_path() / i.target));
    }
    CHECK(seen > 40);
}

TEST_CASE("layers: the engine knows no screen, no browser and no test; JSON only in the codec") {
    for (const Include& i : engine_includes()) {
        CAPTURE(i.file.string());
        CAPTURE(i.target);
        const bool json_at_home = i.layer == "codec" && i.target.find("nlohmann") != std::string::npos;
        if (!json_at_home) CHECK_FALSE(is_foreign(i.target));
    }
}

TEST_CASE("layers: our own headers are named from the top of the project, never by a path beside") {
    for (const Include& i : engine_includes()) {
        CAPTURE(i.file.string());
        CAPTURE(i.target);
        CHECK(i.target.find("..") == std::string::npos);
        if (i.target.ends_with(".hpp") && i.target.find("glm/") == std::string::npos && i.target.find("nlohmann/") == std::string::npos)
            CHECK(i.target.rfind("engine/", 0) == 0);
    }
}

TEST_CASE("layers: odr.cpp includes every header, so that each is compiled into two units") {
    std::ifstream in(fs::path(GUYWRIGHT_ROOT) / "tests/odr.cpp");
    REQUIRE(in.good());
    const std::string odr((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    // the app's texts, too: of two with one name in two headers the linker would take one for both
    for (const char* folder : {"engine", "wasm/words"})
        for (const auto& entry : fs::recursive_directory_iterator(fs::path(GUYWRIGHT_ROOT) / folder)) {
            if (entry.path().extension() != ".hpp") continue;
            const std::string name = fs::relative(entry.path(), GUYWRIGHT_ROOT).generic_string();
            CAPTURE(name);
            CHECK(odr.find('"' + name + '"') != std::string::npos);
        }
}
