#pragma once
#include <cstdlib>

namespace support {

/// How many of something a test looks at: few in every run, all of them where GUYWRIGHT_LONG is set in the environment.
inline int few_or_all(int few, int all) { return std::getenv("GUYWRIGHT_LONG") != nullptr ? all : few; }

}  // namespace support
