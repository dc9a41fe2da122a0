// guywright: the engine for desks, scripts and checks.
#include "engine/codec/catalogue_codec.hpp"
#include "engine/codec/french.hpp"
#include "engine/codec/report.hpp"
#include "engine/codec/share_words.hpp"
#include "engine/command_line/card_text.hpp"
#include "engine/plan/catalogue.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace {

using namespace guywright;

enum ExitCode { k_go = 0, k_no_go = 1, k_input_wrong = 2, k_not_computed = 3 };

constexpr std::string_view k_help =
    "guywright check PLAN.json [--json] [--imperial] [--french]\n"
    "guywright catalogue [OWN.json] [--imperial]\n"
    "guywright share PLAN.json\n"
    "guywright unshare CODES.txt [--french]\n"
    "\n"
    "Says whether a guyed leg at an edge will stand: GO, NO-GO or NOT CHECKED, and why.\n"
    "PLAN.json is a guywright-plan file; - reads standard input. The catalogue lists published least\n"
    "strengths with their sources, to start from, and a team's own cords from a guywright-catalogue file;\n"
    "the maker's sheet counts. share writes the plan as the texts of the app's QR codes, one a line; unshare\n"
    "reads them, in any order, and writes the plan.\n"
    "\n"
    "  --json      a report for programs instead of the card for people\n"
    "  --imperial  the card in ft, lb and lbf; plans and reports are always in m, kg and kN\n"
    "  --french    the card in French\n"
    "  --help      this text\n"
    "\n"
    "Exit: 0 GO, 1 NO-GO, 2 the input is wrong (reasons on standard error), 3 not checked: an input is\n"
    "missing or could not be computed.\n"
    "A planning aid. Local codes, the maker's manual and the competent, licensed people on site decide.\n";

void print(std::FILE* to, std::string_view text) { std::fwrite(text.data(), 1, text.size(), to); }

struct Arguments {
    std::string_view command, file;
    bool json = false;
    bool french = false;
    UnitSystem units = UnitSystem::Metric;

    [[nodiscard]] Telling telling() const { return {french ? k_french : k_english, units}; }
};

std::optional<Arguments> parse(int count, char** words) {
    Arguments args;
    for (int i = 1; i < count; ++i) {
        const std::string_view word = words[i];
        if (word == "--json") args.json = true;
        else if (word == "--imperial") args.units = UnitSystem::Imperial;
        else if (word == "--french") args.french = true;
        else if (args.command.empty() && (word == "check" || word == "catalogue" || word == "share" || word == "unshare")) args.command = word;
        else if (!args.command.empty() && args.file.empty() && (word == "-" || !word.starts_with('-'))) args.file = word;
        else return std::nullopt;
    }
    const bool complete = args.command == "catalogue" ? !args.json : !args.command.empty() && !args.file.empty() && (!args.json || args.command == "check");
    return complete ? std::optional(args) : std::nullopt;
}

/// At most one byte more than a plan may have; nothing if the file cannot be read.
std::optional<std::string> read_bytes(std::FILE* file) {
    std::string bytes(k_most_plan_bytes + 1, '\0');
    bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file));
    if (std::ferror(file) != 0) return std::nullopt;
    return bytes;
}

std::optional<std::string> read_file(std::string_view name) {
    if (name == "-") return read_bytes(stdin);
    std::FILE* file = std::fopen(std::string(name).c_str(), "rb");
    if (file == nullptr) return std::nullopt;
    std::optional<std::string> bytes = read_bytes(file);
    std::fclose(file);
    return bytes;
}

std::optional<std::string> read_or_say_why(std::string_view name) {
    std::optional<std::string> bytes = read_file(name);
    if (!bytes) print(stderr, printable(name, 200) + ": " + std::strerror(errno) + "\n");
    return bytes;
}

int report_faults(const InputFaults& faults, std::size_t not_listed, bool json) {
    for (const InputFault& f : faults) print(stderr, to_string(f) + "\n");
    if (not_listed > 0) print(stderr, "and " + std::to_string(not_listed) + " more\n");
    if (json) print(stdout, write_fault_report(faults, not_listed));
    return k_input_wrong;
}

int exit_code(Verdict v) {
    switch (v) {
        case Verdict::Go: return k_go;
        case Verdict::NoGo: return k_no_go;
        case Verdict::NotChecked: return k_not_computed;
    }
    return k_not_computed;
}

int check(const Arguments& args) {
    const std::optional<std::string> bytes = read_or_say_why(args.file);
    if (!bytes) return k_input_wrong;
    const PlanRead read = read_plan(*bytes);
    if (!read.ok()) return report_faults(read.faults, read.faults_not_listed, args.json);
    const Evaluation e = evaluate(read.plan);
    if (!e.faults.empty()) return report_faults(e.faults, 0, args.json);
    const Tuning tuning = e.verdict == Verdict::NotChecked ? Tuning{} : tune(read.plan, e);
    const Counsel counsel = counsel_for(read.plan, e);
    print(stdout, args.json ? write_report(read.plan, e, tuning, counsel) : card_text(args.telling(), read.plan, e, tuning, counsel));
    // A verdict that nobody could read must not look like GO to a script.
    if (std::fflush(stdout) != 0 || std::ferror(stdout) != 0) return k_not_computed;
    return exit_code(e.verdict);
}

void print_row(const Telling& telling, std::string_view name, double strength_kN, std::string_view source) {
    print(stdout, padded_right(name, 26) + padded_left(quantity(telling, strength_kN, "kN"), 10) + "  " + printable(source, 200) + "\n");
}

/// Published parts, then the team's own.
int list_catalogue(const Arguments& args) {
    CatalogueRead own;
    if (!args.file.empty()) {
        const std::optional<std::string> bytes = read_or_say_why(args.file);
        if (!bytes) return k_input_wrong;
        own = read_catalogue(*bytes);
        if (!own.ok()) return report_faults(own.faults, 0, false);
    }
    for (const PublishedPart& part : k_published_parts) print_row(args.telling(), part.name, part.strength_kN, part.source);
    for (const OwnCord& cord : own.catalogue.cords) print_row(args.telling(), cord.name, cord.strength_kN, cord.source);
    return std::fflush(stdout) == 0 ? k_go : k_not_computed;
}

/// One line a code.
int share(const Arguments& args) {
    const std::optional<std::string> bytes = read_or_say_why(args.file);
    if (!bytes) return k_input_wrong;
    const PlanRead read = read_plan(*bytes);
    if (!read.ok()) return report_faults(read.faults, read.faults_not_listed, false);
    for (const std::string& text : share_texts(read.plan)) print(stdout, text + "\n");
    return std::fflush(stdout) == 0 ? k_go : k_not_computed;
}

std::vector<std::string> words_in(std::string_view text) {
    std::vector<std::string> words;
    bool inside = false;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
        if (!blank && !inside) words.emplace_back();
        if (!blank) words.back() += c;
        inside = !blank;
    }
    return words;
}

int unshare(const Arguments& args) {
    const std::optional<std::string> bytes = read_or_say_why(args.file);
    if (!bytes) return k_input_wrong;
    const ShareRead read = read_share(words_in(*bytes));
    if (read.state != ShareState::Whole) {
        print(stderr, share_message(args.french ? k_french_share : k_english_share, read) + "\n");
        return k_input_wrong;
    }
    print(stdout, write_plan(read.plan));
    return std::fflush(stdout) == 0 ? k_go : k_not_computed;
}

}  // namespace

int main(int count, char** words) {
    if (count == 2 && (std::string_view(words[1]) == "--help" || std::string_view(words[1]) == "-h")) {
        print(stdout, k_help);
        return k_go;
    }
    const std::optional<Arguments> args = parse(count, words);
    if (!args) {
        print(stderr, k_help);
        return k_input_wrong;
    }
    if (args->command == "catalogue") return list_catalogue(*args);
    if (args->command == "share") return share(*args);
    return args->command == "unshare" ? unshare(*args) : check(*args);
}
