#pragma once
#include <array>
#include <cstddef>
#include <cstdint>

namespace guywright {

/// Numbers by chance from whole numbers alone (splitmix64): the same on every machine, which <random>'s distributions do not promise.
class Draw {
public:
    explicit Draw(std::uint64_t start) : state_(start) {}

    std::uint64_t bits() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
        return z ^ (z >> 31);
    }
    int whole(int low, int high) { return low + static_cast<int>(bits() % static_cast<std::uint64_t>(high - low + 1)); }
    bool one_in(int n) { return whole(1, n) == 1; }
    /// low, low + step, ... up to high, all in hundredths: the nearest double of a number with two digits.
    double hundredths(int low, int high, int step) { return (low + step * whole(0, (high - low) / step)) / 100.0; }
    double stepped(int low, int high, int step) { return low + step * whole(0, (high - low) / step); }
    template <class T, std::size_t n>
    const T& one_of(const std::array<T, n>& of) {
        return of[static_cast<std::size_t>(whole(0, static_cast<int>(n) - 1))];
    }

private:
    std::uint64_t state_;
};

}  // namespace guywright
