#include "wasm/app/shelf.hpp"

#include <algorithm>

#include "engine/plan/describe.hpp"
#include "engine/plan/utf8.hpp"
#include "wasm/words/refusals.hpp"

namespace guywright::app {
namespace {

constexpr std::size_t k_room_for_copy = 13;  ///< ", copie 9999"

/// The first `most` characters.
std::string beginning(const std::string& text, std::size_t most) {
    std::size_t at = 0;
    for (std::size_t characters = 0; at < text.size() && characters < most; ++characters) at += std::max<std::size_t>(1, decode_utf8(text, at).bytes);
    return text.substr(0, at);
}

}  // namespace

std::string copy_title(const std::string& title, const std::vector<PlanEntry>& plans, const Speech& speech) {
    const std::string copy(say(speech, words::k_copy));
    const std::string of = beginning(title.substr(0, title.rfind(copy)), k_longest_title - k_room_for_copy) + copy;
    const auto taken = [&](const std::string& t) { return std::any_of(plans.begin(), plans.end(), [&](const PlanEntry& p) { return p.title == t; }); };
    std::string free = of;
    for (int n = 2; taken(free); ++n) free = of + " " + std::to_string(n);
    return free;
}

}  // namespace guywright::app
