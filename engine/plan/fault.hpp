#pragma once
#include <string>
#include <vector>

namespace guywright {

/// An input that cannot be used, found before anything is computed.
struct InputFault {
    std::string path;     ///< as in the plan file: guys[1].inclination_deg
    std::string value;    ///< what was given
    std::string allowed;  ///< what would be accepted, with its unit
};

using InputFaults = std::vector<InputFault>;

/// "guys[1].inclination_deg is 95; allowed: 2 to 88 deg"
inline std::string to_string(const InputFault& f) { return f.path + " is " + f.value + "; allowed: " + f.allowed; }

}  // namespace guywright
