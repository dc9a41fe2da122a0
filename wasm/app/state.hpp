#pragma once
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "engine/verdict/evaluate.hpp"
#include "wasm/app/advisor.hpp"
#include "wasm/app/command.hpp"
#include "wasm/app/history.hpp"
#include "wasm/app/practice.hpp"
#include "wasm/app/practice_progress.hpp"
#include "wasm/app/shelf.hpp"
#include "wasm/app/signatures.hpp"
#include "wasm/app/speech.hpp"
#include "wasm/scene/view.hpp"
#include "wasm/widgets/theme_table.hpp"

namespace guywright::app {

/// Exact entry of one number, in the unit shown.
struct Keypad {
    std::string path;
    std::string typed;
    std::string fault;  ///< why the last try was not taken
};

/// The list of kept plans, where it is shown.
struct PlansScreen {
    std::size_t page = 0;  ///< counts on for ever; the list takes what is left over
    std::string chosen;    ///< id of the plan whose keys are shown; empty: the list
};

/// Everything the app knows. Only apply() changes it.
struct State {
    Plan plan;
    Evaluation evaluation;              ///< always of `plan`
    std::unique_ptr<ErrorSweep> sweep;  ///< of `plan`, while measuring error is still being looked at
    std::unique_ptr<Advisor> advisor;   ///< of `plan`, once it was asked something
    AdviceShown advice_shown;
    std::string check_code;  ///< always of `plan`; empty while there is no verdict
    History history;
    std::optional<Plan> before_gesture;  ///< set from the first change of a gesture until the finger is up
    Step step = Step::Edge;
    std::size_t item = 0;    ///< an item of the page shown; past the end: the last page
    std::string wanted_id;   ///< an item to be found on the step, instead of `item`
    std::string open_group;  ///< the group of the step that shows also what few need
    std::string open_parts;  ///< the strength whose list of published parts is open
    bool menu_open = false;
    std::size_t menu_page = 0;  ///< counts on for ever; the menu takes what is left over
    std::optional<PlansScreen> plans_screen;
    Shelf shelf;
    unsigned document = 1;  ///< counts the plans that were in hand in this session
    bool begins = true;     ///< the plan has not been given to be kept yet
    bool untouched = true;  ///< the plan is an example, or new, and nobody has changed it
    std::optional<Keypad> keypad;
    std::string message;       ///< something the person has to read and close
    std::string last_touched;  ///< path whose part of the scene is lit up
    Speech speech;
    widgets::ThemeName theme = widgets::ThemeName::Sun;
    scene::Camera camera;
    scene::View view = scene::View::Free;
    bool site_large = false;  ///< the picture has the place of the sliders, too
    std::size_t shown_case = k_holding;
    std::optional<Lock> lock;  ///< while there is one, nothing but what opens it is carried out
    Device device;
    bool settings_changed = false;  ///< language, units or light, by the person: to be kept on the device
    std::optional<Page> page_wanted;
    std::vector<Signatures> signatures;  ///< that stand on this device, for whatever plan
    std::vector<std::string> fallen;     ///< ids of those that a change has just taken away
    bool open_wanted = false, about_wanted = false, text_wanted = false;
    std::vector<Save> saves;
    std::vector<ShelfRequest> shelf_requests;
    std::optional<Practice> practice;  ///< while there is one, `plan` is nobody's rig
    Progress progress;                 ///< in practice
    bool progress_changed = false;     ///< to be kept on the device
    std::optional<TextWish> text_wish;
    std::optional<std::pair<std::string, std::string>> download;  ///< title of a plan, text of its file
};

/// The person's own plan, in hand or set aside.
inline const Plan& own_plan(const State& s) { return s.practice ? s.practice->own.plan : s.plan; }

/// What may be seen of the evaluation: of a site that is still to be predicted, no forces and no checks.
inline const Evaluation& seen(const State& s) { return is_blind(s.practice) ? s.practice->unseen : s.evaluation; }

/// A text of the app as a screen shows it.
inline std::string said(const State& s, const Said& text) { return std::string(say(s.speech, text)); }
inline std::string said(const State& s, const Said& text, std::initializer_list<Fill> fills) { return say(s.speech, text, fills); }

}  // namespace guywright::app
