#pragma once
#include "engine/base/vec.hpp"

#include <cstdint>

namespace support {

/// splitmix64: the same numbers on every machine, which <random>'s distributions do not promise.
class Random {
public:
    explicit Random(std::uint64_t start) : state_(start) {}

    std::uint64_t bits() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
        return z ^ (z >> 31);
    }
    double between(double low, double high) { return low + (high - low) * (static_cast<double>(bits() >> 11) * 0x1p-53); }
    int whole(int low, int high) { return low + static_cast<int>(bits() % static_cast<std::uint64_t>(high - low + 1)); }
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

private:
    std::uint64_t state_;
};

}  // namespace support
