#pragma once
#include <array>
#include <bitset>
#include <cstddef>
#include <string>
#include <string_view>

#include "engine/practice/lesson.hpp"
#include "engine/practice/site.hpp"

namespace guywright::app {

inline constexpr std::size_t k_site_levels = k_last_site_level - k_first_site_level + 1;

using LessonsDone = std::bitset<k_lesson_count>;

/// Of one level: sites answered, and how often each of the three predictions was right.
struct LevelScore {
    unsigned sites = 0, verdict = 0, guy = 0, angle = 0;
    bool operator==(const LevelScore&) const = default;
};

/// What a trainee has answered on this device. Nothing else is counted.
struct Progress {
    std::array<LevelScore, k_site_levels> levels{};
    LessonsDone lessons;  ///< of the course: brought to their goal
    bool operator==(const Progress&) const = default;

    /// The highest level of which a site was answered; 0: none yet.
    [[nodiscard]] int highest() const {
        for (int level = k_last_site_level; level >= k_first_site_level; --level)
            if (levels[static_cast<std::size_t>(level - k_first_site_level)].sites > 0) return level;
        return 0;
    }
    void count(int level, const Marks& marks) {
        LevelScore& l = levels[static_cast<std::size_t>(level - k_first_site_level)];
        ++l.sites;
        l.verdict += marks.verdict ? 1U : 0U;
        l.guy += marks.guy ? 1U : 0U;
        l.angle += marks.angle ? 1U : 0U;
    }
};

/// {"levels": [[sites, verdict, guy, angle]], "lessons": ["resultant", ...]}
[[nodiscard]] std::string progress_json(const Progress& progress);
/// What does not read, or says that more was right than was answered, counts as nothing.
[[nodiscard]] Progress read_progress(std::string_view json);

}  // namespace guywright::app
