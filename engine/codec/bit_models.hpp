#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Arithmetic coding of single bits, each with a guess that learns from those before it. Whole numbers only: every machine
// makes the same bytes. What is here is part of the share code's format: a change makes older codes unreadable.

namespace guywright::detail {

/// How likely the next bit of its kind is set. The first bits seen move it far, later ones less.
class BitModel {
public:
    static constexpr std::uint32_t k_whole = 65536;

    [[nodiscard]] std::uint32_t chance() const { return chance_; }  ///< of 65536; never 0, never all
    [[nodiscard]] bool fresh() const { return seen_ == 0; }

    void learn(bool bit) {
        const int target = bit ? static_cast<int>(k_whole) - k_doubt : k_doubt;
        chance_ = static_cast<std::uint16_t>(chance_ + (target - chance_) * 2 / (2 * seen_ + 3));
        if (seen_ < k_slowest) ++seen_;
    }

private:
    static constexpr int k_doubt = 96;    ///< nothing is ever certain: a surprise costs ten bits, not an arithmetic fault
    static constexpr int k_slowest = 24;  ///< no guess rests on more than the last few dozen bits

    std::uint16_t chance_ = k_whole / 2;
    std::uint8_t seen_ = 0;
};

/// The range of numbers that the bits so far have narrowed down, split at a guess.
struct Span {
    std::uint32_t low = 0, high = 0xFFFFFFFFu;

    [[nodiscard]] std::uint32_t split(std::uint32_t chance) const {
        return low + static_cast<std::uint32_t>((static_cast<std::uint64_t>(high - low) * chance) / BitModel::k_whole);
    }
    void take(bool bit, std::uint32_t middle) {
        if (bit) high = middle;
        else low = middle + 1;
    }
    [[nodiscard]] bool byte_settled() const { return ((low ^ high) >> 24) == 0; }
    void shift() {
        low <<= 8;
        high = (high << 8) | 0xFFu;
    }
};

/// Writes bits; one of the two ends that ShareWalk runs over.
class BitWriter {
public:
    static constexpr bool k_reads = false;

    bool bit(std::uint32_t chance, bool value) {
        span_.take(value, span_.split(chance));
        for (; span_.byte_settled(); span_.shift()) put();
        return value;
    }
    [[nodiscard]] bool ran_out() const { return false; }

    /// The bytes, ended so that zeros may follow.
    [[nodiscard]] std::string finish() {
        span_.low = ((span_.low >> 24) + 1) << 24;
        put();
        return std::move(bytes_);
    }

private:
    void put() { bytes_ += static_cast<char>(span_.low >> 24); }

    Span span_;
    std::string bytes_;
};

/// Reads what BitWriter wrote. Past the end it reads zeros and says so.
class BitReader {
public:
    static constexpr bool k_reads = true;

    explicit BitReader(std::string_view bytes) : bytes_(bytes) {
        for (int i = 0; i < 4; ++i) take_byte();
    }

    bool bit(std::uint32_t chance, bool) {
        const std::uint32_t middle = span_.split(chance);
        const bool value = at_ <= middle;
        span_.take(value, middle);
        for (; span_.byte_settled(); span_.shift()) take_byte();
        return value;
    }
    /// More was read than the four bytes that the last bit may look ahead.
    [[nodiscard]] bool ran_out() const { return next_ > bytes_.size() + 4; }

private:
    void take_byte() {
        const unsigned char byte = next_ < bytes_.size() ? static_cast<unsigned char>(bytes_[next_]) : 0;
        ++next_;
        at_ = (at_ << 8) | byte;
    }

    std::string_view bytes_;
    std::size_t next_ = 0;
    Span span_;
    std::uint32_t at_ = 0;
};

/// The guesses of one code, each found by what it is about.
class BitModels {
public:
    [[nodiscard]] BitModel& of(std::uint32_t what) { return models_[(what * 2654435761u) >> (32 - k_index_bits)]; }

private:
    static constexpr unsigned k_index_bits = 16;  // two kinds that share a guess cost bits, no more

    std::vector<BitModel> models_ = std::vector<BitModel>(std::size_t{1} << k_index_bits);
};

}  // namespace guywright::detail
