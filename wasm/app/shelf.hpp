#pragma once
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "wasm/app/speech.hpp"

namespace guywright::app {

/// One of the plans that the device keeps, as the list shows it.
struct PlanEntry {
    std::string id, title;
    std::string changed;   ///< local date and time
    bool readable = true;  ///< false: set aside, for this program cannot read it
    bool open = false;     ///< the plan in hand
};

enum class Keeping : unsigned char { Unknown, Protected, MayBeCleared, Denied, Full };

/// What the page last told of the plans kept.
struct Shelf {
    std::vector<PlanEntry> plans;  ///< changed last comes first
    std::string deleted_title;     ///< of the plan that can be brought back
    bool has_deleted = false;
    Keeping keeping = Keeping::Unknown;
};

enum class ShelfAct : unsigned char { List, Open, Duplicate, Delete, BringBack, SaveText };
struct ShelfRequest {
    ShelfAct act;
    std::string id;
};

/// What is to be kept after a gesture.
struct Save {
    unsigned document = 0;  ///< which plan of this session
    std::string title;
    std::size_t first = 0, number = 0, last = 0;             ///< steps of the history that exist, and which is the plan
    bool begins = false;                                     ///< a plan that was not kept before
    bool untouched = false;                                  ///< an example or a new plan nobody has changed yet
    std::vector<std::pair<std::size_t, std::string>> steps;  ///< those to be written: number and plan text
};

/// A text of the plan that the person wants to enter.
struct TextWish {
    std::string path, label, value;
};

/// Title for a copy of `title`: one that none of `plans` bears, within the allowed length.
[[nodiscard]] std::string copy_title(const std::string& title, const std::vector<PlanEntry>& plans, const Speech& speech = {});

}  // namespace guywright::app
