#pragma once
#include "engine/codec/bit_models.hpp"

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <string>
#include <string_view>

namespace guywright::detail {

/// Stands for "null" or "left out" among the numbers of a share code; a plan holds no NaN.
inline constexpr double k_nothing = std::numeric_limits<double>::quiet_NaN();

/// A number as few decimal digits: v = whole / 10^decimals exactly as a division rounds it. decimals < 0: there is no such pair.
struct ShortDecimal {
    std::uint64_t whole = 0;
    int decimals = -1;
};

inline constexpr int k_most_decimals = 15;
inline constexpr std::array<double, k_most_decimals + 1> k_tens{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

/// Of a size without its sign.
inline ShortDecimal short_decimal(double size) {
    constexpr double exact_end = 9007199254740992.0;  // whole numbers below 2^53 are doubles: the division has one answer everywhere
    for (int d = 0; d <= k_most_decimals; ++d) {
        const double whole = std::round(size * k_tens[static_cast<std::size_t>(d)]);
        if (!(whole < exact_end)) return {};
        if (whole / k_tens[static_cast<std::size_t>(d)] == size) return {static_cast<std::uint64_t>(whole), d};
    }
    return {};
}

/// Codes values over a BitWriter or a BitReader: each function takes the value to be written and returns the value that is
/// then known, so that one order of calls serves both ways.
template <class Bits>
class ShareValues {
public:
    ShareValues(Bits& bits, BitModels& models) : bits_(bits), models_(models) {}

    bool flag(std::uint32_t about, bool value) { return learnt(models_.of(k_flag ^ (about << 4)), value); }

    /// Below 2^width.
    std::uint32_t symbol(std::uint32_t about, int width, std::uint32_t value) {
        std::uint32_t so_far = 1;
        for (int i = width - 1; i >= 0; --i)
            so_far = (so_far << 1) | static_cast<std::uint32_t>(learnt(models_.of(k_symbol ^ (about << 12) ^ (so_far << 4)), ((value >> i) & 1u) != 0));
        return so_far - (1u << width);
    }

    /// Any size: how many bits it has, then those below the first.
    std::uint64_t whole(std::uint32_t about, std::uint64_t value) {
        const std::uint32_t width = symbol(about, 7, static_cast<std::uint32_t>(std::bit_width(value)));
        if (width < 2) return width;
        if (width > 64) return 0;
        std::uint64_t out = 1;
        for (std::uint32_t i = width - 1; i-- > 0;) out = (out << 1) | static_cast<std::uint64_t>(plain(((value >> i) & 1u) != 0));
        return out;
    }

    /// Every double but a NaN comes back as it was, -0 as 0; k_nothing as a NaN.
    double number(double v) {
        const bool nothing = flag(k_is_nothing, std::isnan(v));
        if (nothing) return k_nothing;
        const ShortDecimal pair = short_decimal(std::abs(v));
        const std::uint32_t way = symbol(k_way, 5, pair.decimals < 0 ? k_as_bits : static_cast<std::uint32_t>(pair.decimals));
        if (way > k_most_decimals) return as_bits(v);
        const double size = static_cast<double>(whole(k_digits + way, pair.whole)) / k_tens[way];
        return size != 0.0 && flag(k_negative, v < 0.0) ? -size : size;
    }

    /// At most `most` bytes; a longer one is read as nothing.
    std::string text(const std::string& t, std::size_t most) {
        const std::uint64_t length = whole(k_length, t.size());
        std::string out;
        if (length > most) return out;
        for (std::size_t i = 0; i < length && !bits_.ran_out(); ++i) out += static_cast<char>(letter(out, i < t.size() ? static_cast<unsigned char>(t[i]) : 0));
        return out;
    }

private:
    enum Kind : std::uint32_t { k_flag = 1, k_symbol = 2, k_letter = 3 };
    enum About : std::uint32_t { k_is_nothing = 0x10000, k_negative, k_way, k_length, k_digits };
    static constexpr std::uint32_t k_as_bits = k_most_decimals + 1;
    static constexpr int k_orders = 4;  ///< a letter is guessed from up to three before it

    bool learnt(BitModel& model, bool value) {
        const bool bit = bits_.bit(model.chance(), value);
        model.learn(bit);
        return bit;
    }
    bool plain(bool value) { return bits_.bit(BitModel::k_whole / 2, value); }
    double as_bits(double v) {
        std::uint64_t bits = 0, coded = 0;  // copied: the browser's library has no std::bit_cast
        std::memcpy(&bits, &v, sizeof bits);
        for (int i = 63; i >= 0; --i) coded = (coded << 1) | static_cast<std::uint64_t>(plain(((bits >> i) & 1u) != 0));
        std::memcpy(&v, &coded, sizeof v);
        return v;
    }

    unsigned char letter(const std::string& before, unsigned value) {
        std::uint32_t context[k_orders] = {};
        for (std::size_t n = 1; n < k_orders; ++n) {
            const unsigned char last = before.size() >= n ? static_cast<unsigned char>(before[before.size() - n]) : 0;
            context[n] = (context[n - 1] + last + 1u) * 0x2C1B3C6Du;
        }
        std::uint32_t so_far = 1;
        for (int i = 7; i >= 0; --i) so_far = (so_far << 1) | static_cast<std::uint32_t>(letter_bit(context, so_far, ((value >> i) & 1u) != 0));
        return static_cast<unsigned char>(so_far & 0xFFu);
    }

    /// The guesses of all orders together: one that has seen its letters counts four times the next shorter.
    bool letter_bit(const std::uint32_t (&context)[k_orders], std::uint32_t so_far, bool value) {
        BitModel* models[k_orders];
        std::uint32_t sum = 0, weights = 0;
        for (std::uint32_t n = 0; n < k_orders; ++n) {
            models[n] = &models_.of(k_letter ^ (n << 2) ^ ((context[n] + so_far * 0x9E3779B1u) << 4));
            const std::uint32_t weight = n > 0 && models[n]->fresh() ? 0 : 1u << (2 * n);
            sum += weight * models[n]->chance();
            weights += weight;
        }
        const bool bit = bits_.bit(sum / weights, value);
        for (BitModel* model : models) model->learn(bit);
        return bit;
    }

    Bits& bits_;
    BitModels& models_;
};

}  // namespace guywright::detail
