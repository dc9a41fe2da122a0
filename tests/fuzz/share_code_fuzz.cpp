// Any bytes, as texts of codes and as the body behind the checks: reading neither crashes nor lets a fault through, and what it
// accepts is the same plan when shared and read again.
#include "engine/codec/share_code.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

namespace {

void require(bool kept, const char* what) {
    if (kept) return;
    std::fprintf(stderr, "broken: %s\n", what);
    std::abort();
}

void check_accepted(const guywright::Plan& plan) {
    require(guywright::find_faults(plan).empty(), "an accepted plan has no fault");
    const std::vector<std::string> texts = guywright::share_texts(plan);
    require(!texts.empty(), "an accepted plan can be shared");
    const guywright::ShareRead again = guywright::read_share(texts);
    require(again.state == guywright::ShareState::Whole, "what was shared can be read");
    require(guywright::canonical_plan_text(again.plan) == guywright::canonical_plan_text(plan), "it is the same plan");
}

std::vector<std::string> lines_of(std::string_view bytes) {
    std::vector<std::string> lines(1);
    for (const char c : bytes) {
        if (c == '\n') lines.emplace_back();
        else lines.back() += c;
    }
    return lines;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const guywright::ShareRead read = guywright::read_share(lines_of(bytes));
    if (read.state == guywright::ShareState::Whole) check_accepted(read.plan);
    else require(!guywright::find_faults(read.plan).empty(), "a refused code leaves no plan that could be judged");
    // Behind the checks: damage that they let through must still do no harm.
    const auto plan = guywright::detail::read_share_body(bytes);
    if (plan && guywright::find_faults(*plan).empty()) check_accepted(*plan);
    // A plan file as a seed: what is in it goes through the code.
    if (const guywright::PlanRead file = guywright::read_plan(bytes); file.ok()) check_accepted(file.plan);
    return 0;
}
