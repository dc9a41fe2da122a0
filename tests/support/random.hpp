#pragma once
#include "engine/base/vec.hpp"
#include "engine/practice/draw.hpp"

#include <cstdint>

namespace support {

/// Real numbers, points and directions by chance, the same on every machine.
class Random : public guywright::Draw {
public:
    using Draw::Draw;

    double between(double low, double high) { return low + (high - low) * (static_cast<double>(bits() >> 11) * 0x1p-53); }
    bool chance(double share) { return between(0.0, 1.0) < share; }
    guywright::Vec3 point(double half_width) {
        const double x = between(-half_width, half_width), y = between(-half_width, half_width);
        return {x, y, between(-half_width, half_width)};
    }
    guywright::Vec3 direction() {
        for (;;) {
            const guywright::Vec3 v = point(1.0);
            const double length = glm::length(v);
            if (length > 0.1 && length <= 1.0) return v / length;
        }
    }
};

}  // namespace support
