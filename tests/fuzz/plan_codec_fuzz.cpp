// Any bytes: the reader neither crashes nor lets a fault through, and what it accepts is written and read back to the same bytes.
#include "engine/codec/check_code.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace {

void require(bool kept, const char* what) {
    if (kept) return;
    std::fprintf(stderr, "broken: %s\n", what);
    std::abort();
}

void check_refused(const guywright::PlanRead& read) {
    require(read.faults.size() <= 100, "at most 100 faults are listed");
    require(!guywright::find_faults(read.plan).empty(), "a refused plan cannot be judged");
    for (const guywright::InputFault& f : read.faults) {
        require(!f.path.empty() && !f.value.empty() && !f.allowed.empty(), "a fault has its three parts");
        const guywright::TextFacts facts = guywright::look_at(to_string(f));
        require(facts.utf8 && !facts.control && !facts.line_feed, "a message is one clean line");
        require(facts.characters < 1500, "a message is short");
    }
}

void check_accepted(const guywright::Plan& plan) {
    require(guywright::find_faults(plan).empty(), "an accepted plan has no fault");
    const std::string text = guywright::write_plan(plan);
    const guywright::PlanRead again = guywright::read_plan(text);
    require(again.ok(), "what was written can be read");
    require(guywright::write_plan(again.plan) == text, "writing again changes no byte");
    require(guywright::check_code(again.plan) == guywright::check_code(plan), "the check code stays");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const guywright::PlanRead read = guywright::read_plan({reinterpret_cast<const char*>(data), size});
    if (read.ok()) check_accepted(read.plan);
    else check_refused(read);
    return 0;
}
