#pragma once
#include "engine/codec/check_code.hpp"
#include "engine/codec/share_body.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// A plan as one or several short texts, for QR codes in their alphanumeric mode. A text is k_share_mark and, three signs
// for two bytes, a piece: version, index, total, where there are several the CRC-32 of the whole, a part of the body, CRC-32 of the piece.

namespace guywright {

inline constexpr std::string_view k_share_mark = "GUYW";
/// What a QR code of version 20 holds at error correction M in alphanumeric mode.
inline constexpr std::size_t k_longest_share_text = 970;
inline constexpr std::size_t k_most_share_pieces = 99;

enum class ShareState : unsigned char {
    Whole,    ///< `plan` is the plan
    Waiting,  ///< good so far: other pieces are missing
    Foreign,  ///< not one of ours
    Damaged,  ///< ours, but changed or cut off
    Newer     ///< from a later version of the program
};

/// What the texts come to. All but the last text only help: pieces of another plan among them are passed over.
struct ShareRead {
    ShareState state = ShareState::Foreign;
    std::size_t total = 0;          ///< pieces of the plan that the last text belongs to
    std::vector<std::size_t> have;  ///< which of them there are, from 0, in order
    Plan plan;
};

namespace detail {

/// Signs of the alphanumeric mode of QR codes without those that shells, addresses and line ends swallow.
inline constexpr std::string_view k_share_signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$*-.:";
inline constexpr std::uint32_t k_share_base = k_share_signs.size();
static_assert(k_share_base * k_share_base * k_share_base >= 65536 && k_share_base * k_share_base >= 256);

inline std::uint32_t crc32(std::string_view bytes) {
    std::uint32_t crc = 0xFFFFFFFFu;
    for (const char c : bytes) {
        crc ^= static_cast<unsigned char>(c);
        for (int i = 0; i < 8; ++i) crc = (crc >> 1) ^ ((crc & 1u) != 0 ? 0xEDB88320u : 0u);
    }
    return ~crc;
}

inline std::string four_bytes(std::uint32_t v) {
    std::string out;
    for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>((v >> shift) & 0xFFu);
    return out;
}
inline std::uint32_t byte_at(std::string_view bytes, std::size_t i) { return static_cast<unsigned char>(bytes[i]); }
inline std::uint32_t number_at(std::string_view bytes, std::size_t i) {
    return (byte_at(bytes, i) << 24) | (byte_at(bytes, i + 1) << 16) | (byte_at(bytes, i + 2) << 8) | byte_at(bytes, i + 3);
}

/// Two bytes as three signs, a byte left over as two.
inline std::string in_signs(std::string_view bytes) {
    std::string out;
    for (std::size_t i = 0; i < bytes.size(); i += 2) {
        const bool pair = i + 1 < bytes.size();
        std::uint32_t v = pair ? (byte_at(bytes, i) << 8) | byte_at(bytes, i + 1) : byte_at(bytes, i);
        for (int n = pair ? 3 : 2; n > 0; --n, v /= k_share_base) out += k_share_signs[v % k_share_base];
    }
    return out;
}

inline std::optional<std::string> from_signs(std::string_view signs) {
    std::string out;
    for (std::size_t i = 0; i < signs.size(); i += 3) {
        const std::string_view group = signs.substr(i, 3);
        std::uint32_t v = 0;
        for (std::size_t n = group.size(); n-- > 0;) {
            const std::size_t place = k_share_signs.find(group[n]);
            if (place == std::string_view::npos) return std::nullopt;
            v = v * k_share_base + static_cast<std::uint32_t>(place);
        }
        if (group.size() == 1 || v >= (group.size() == 3 ? 65536u : 256u)) return std::nullopt;
        if (group.size() == 3) out += static_cast<char>(v >> 8);
        out += static_cast<char>(v & 0xFFu);
    }
    return out;
}

inline constexpr std::size_t k_heading_bytes = 3, k_crc_bytes = 4;

struct SharePiece {
    ShareState state = ShareState::Foreign;  ///< Waiting: it is sound
    std::size_t index = 0, total = 1;
    std::uint32_t whole = 0;  ///< CRC-32 of the body, where there are several pieces
    std::string part;

    [[nodiscard]] bool goes_with(const SharePiece& other) const { return state == ShareState::Waiting && total == other.total && whole == other.whole; }
};

inline std::string piece_text(const SharePiece& piece) {
    std::string bytes{static_cast<char>(k_share_version), static_cast<char>(piece.index), static_cast<char>(piece.total)};
    if (piece.total > 1) bytes += four_bytes(piece.whole);
    bytes += piece.part;
    return std::string(k_share_mark) + in_signs(bytes + four_bytes(crc32(bytes)));
}

inline std::string_view without_blanks(std::string_view text) {
    const auto blank = [](char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t'; };
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    return text;
}

/// The check comes before the version: it stands in the same place in all of them.
inline SharePiece read_piece(std::string_view text) {
    text = without_blanks(text);
    SharePiece piece;
    if (!text.starts_with(k_share_mark)) return piece;
    piece.state = ShareState::Damaged;
    const auto bytes = text.size() <= k_longest_share_text ? from_signs(text.substr(k_share_mark.size())) : std::nullopt;
    if (!bytes || bytes->size() < k_heading_bytes + k_crc_bytes) return piece;
    std::string_view rest(*bytes);
    const std::uint32_t stated = number_at(rest, rest.size() - k_crc_bytes);
    rest.remove_suffix(k_crc_bytes);
    if (crc32(rest) != stated) return piece;
    if (byte_at(rest, 0) > k_share_version) piece.state = ShareState::Newer;
    piece.index = byte_at(rest, 1);
    piece.total = byte_at(rest, 2);
    const bool several = piece.total > 1;
    const bool fits = piece.index < piece.total && piece.total <= k_most_share_pieces && rest.size() >= k_heading_bytes + (several ? k_crc_bytes : 0);
    if (byte_at(rest, 0) != k_share_version || !fits) return piece;
    rest.remove_prefix(k_heading_bytes);
    if (several) piece.whole = number_at(rest, 0);
    piece.part = rest.substr(several ? k_crc_bytes : 0);
    piece.state = ShareState::Waiting;
    return piece;
}

/// Of the longest text that a QR code of the agreed size holds, as bytes of the body.
inline constexpr std::size_t part_bytes(bool several) {
    const std::size_t signs = (k_longest_share_text - k_share_mark.size()) / 3 * 2;
    return signs - k_heading_bytes - k_crc_bytes - (several ? k_crc_bytes : 0);
}

/// Cut into parts of about the same size: the codes are then equally easy to read.
inline std::vector<std::string> share_texts_of(std::string_view body) {
    const std::size_t total = body.size() <= part_bytes(false) ? 1 : (body.size() + part_bytes(true) - 1) / part_bytes(true);
    std::vector<std::string> out;
    if (total > k_most_share_pieces) return out;
    for (std::size_t i = 0; i < total; ++i) {
        const std::size_t from = body.size() * i / total, to = body.size() * (i + 1) / total;
        out.push_back(piece_text({ShareState::Waiting, i, total, total > 1 ? crc32(body) : 0, std::string(body.substr(from, to - from))}));
    }
    return out;
}

/// The body, once every piece is there; else which are.
inline std::optional<std::string> joined_pieces(std::span<const std::string> texts, const SharePiece& last, std::vector<std::size_t>& have) {
    std::vector<std::optional<std::string>> parts(last.total);
    for (const std::string& text : texts)
        if (SharePiece piece = read_piece(text); piece.goes_with(last)) parts[piece.index] = std::move(piece.part);
    std::string body;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (!parts[i]) continue;
        have.push_back(i);
        body += *parts[i];
    }
    return have.size() == parts.size() ? std::optional(std::move(body)) : std::nullopt;
}

}  // namespace detail

/// The plan as texts, each for one QR code, in order. Reading them gives the same plan, digit by digit. Empty for a plan that has
/// faults: it could not be read back.
[[nodiscard]] inline std::vector<std::string> share_texts(const Plan& plan) {
    if (!find_faults(plan).empty()) return {};
    return detail::share_texts_of(detail::share_body(plan));
}

/// What the texts come to, in any order; the last is the one just read.
[[nodiscard]] inline ShareRead read_share(std::span<const std::string> texts) {
    ShareRead read;
    if (texts.empty()) return read;
    const detail::SharePiece last = detail::read_piece(texts.back());
    read.state = last.state;
    if (last.state != ShareState::Waiting) return read;
    read.total = last.total;
    const auto body = detail::joined_pieces(texts, last, read.have);
    if (!body) return read;
    std::optional<Plan> plan;
    if (last.total == 1 || detail::crc32(*body) == last.whole) plan = detail::read_share_body(*body);
    const bool usable = plan && find_faults(*plan).empty();
    read.state = usable ? ShareState::Whole : ShareState::Damaged;
    if (usable) read.plan = std::move(*plan);
    return read;
}

}  // namespace guywright
