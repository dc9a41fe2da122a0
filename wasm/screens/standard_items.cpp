#include "wasm/screens/standard_items.hpp"

#include <array>

#include "wasm/app/found_anchors.hpp"
#include "wasm/words/standards.hpp"

namespace guywright::screens {
namespace {

struct Fitting {
    std::string_view pattern;
    std::array<PartUse, 2> uses;
};

/// What may be chosen for which strength: ties are of cord or rope.
constexpr std::array k_fitting{
    Fitting{"guys[#].strength_kN", {PartUse::Cord, PartUse::Rope}},
    Fitting{"feet[#].ties[#].strength_kN", {PartUse::Cord, PartUse::Rope}},
    Fitting{"frame.hobbles[#].strength_kN", {PartUse::Cord, PartUse::Rope}},
    Fitting{"ropes[#].strength_kN", {PartUse::Rope, PartUse::Rope}},
    Fitting{"ropes[#].pulley_strength_kN", {PartUse::Pulley, PartUse::Pulley}},
    Fitting{"ropes[#].connector_strength_kN", {PartUse::Connector, PartUse::Connector}},
    Fitting{"guys[#].anchor_strength_kN", {PartUse::Anchor, PartUse::Anchor}},
};

bool fits(PartUse use, std::string_view pattern) {
    for (const Fitting& f : k_fitting)
        if (f.pattern == pattern) return use == f.uses[0] || use == f.uses[1];
    return false;
}

}  // namespace

void add_standard_parts(Builder& b, const std::string& path) {
    const std::optional<app::Measure> number = app::measure_at(b.plan(), path);
    const app::Input* input = app::find_input(path);
    if (!number || input == nullptr) return;
    const bool open = b.state().open_parts == path;
    b.action("parts " + path, open ? b.said(words::k_parts_close) : b.said(words::k_parts, {{"{what}", b.said(input->label)}}), app::ShowParts{path});
    if (!open) return;
    b.text(b.said(words::k_parts_how), &app::Fonts::text);
    for (std::size_t i = 0; i < k_published_parts.size(); ++i) {
        const PublishedPart& part = k_published_parts[i];
        if (!fits(part.use, input->pattern)) continue;
        const std::string strength = app::shown_value(*input, b.state().speech, part.strength_kN);
        const std::string label =
            b.said(words::k_part, {{"{name}", b.said(words::k_part_names[i])}, {"{strength}", strength}, {"{standard}", std::string(part.standard)}});
        b.toggle("part " + std::to_string(i) + " " + path, label, number->value == part.strength_kN, app::SetNumber{path, part.strength_kN});
    }
}

}  // namespace guywright::screens
