#pragma once
#include <array>
#include <string_view>

namespace guywright {

/// Every word of the rig sheet that the card has not. {name} is a guy or rope, {n} a number, {pace} {knot} {tail} {step} lengths, {scale} such as 50.
struct SheetWords {
    std::string_view heading, compass_out;
    std::string_view plan_view, side_view, scale, out_over_edge, edge;
    std::string_view rig, what_column, planned_column, load, lean, face, arrest;
    std::string_view anchors, anchor_column, bearing_column, compass_column, distance_column, paces_column, height_column, inclination_column, haul, pace_note;
    std::string_view cords, cord_column, parts_column, one_part_column, pretension_column, cut_column, hobble, cord_note;
    std::string_view margins, spare_column, check_column;
    std::string_view kit, item_column, count_column, least_column;
    std::string_view leg, pulley, connector, rope, rope_unknown, guy_cord, anchor, foot_tie, foot_pin;
    std::string_view preload, preload_note;
    std::array<std::string_view, 7> preload_list;
    std::string_view rigger, officer, signing;  ///< heads of the two columns of boxes; what stands under a line to sign on
    std::string_view code_note;

    /// No text is missing, apart from none.
    // clang-format off
    [[nodiscard]] constexpr bool complete() const {
        for (const std::string_view text : {heading, compass_out, plan_view, side_view, scale, out_over_edge, edge, rig, what_column, planned_column, load, lean, face, arrest, anchors, anchor_column, bearing_column, compass_column,
                                            distance_column, paces_column, height_column, inclination_column, haul, pace_note, cords, cord_column, parts_column, one_part_column,
                                            pretension_column, cut_column, hobble, cord_note, margins, spare_column, check_column, kit, item_column, count_column, least_column, leg,
                                            pulley, connector, rope, rope_unknown, guy_cord, anchor, foot_tie, foot_pin, preload, preload_note, rigger, officer, signing, code_note})
            if (text.empty()) return false;
        for (const std::string_view text : preload_list)
            if (text.empty()) return false;
        return true;
    }
    // clang-format on
};

}  // namespace guywright
