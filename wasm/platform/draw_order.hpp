#pragma once
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <vector>

namespace guywright::platform {

/// Where a triangle has a corner, in layout px, and whether it is of one colour there: plain, of no letter.
struct Corner {
    float x, y;
    bool plain;
};

/// Upright box around what was taken into it, layout px.
struct DrawnBox {
    float left = std::numeric_limits<float>::max(), top = left, right = -left, bottom = -left;

    void take(const Corner& c) {
        left = std::min(left, c.x);
        top = std::min(top, c.y);
        right = std::max(right, c.x);
        bottom = std::max(bottom, c.y);
    }
    [[nodiscard]] bool meets(const DrawnBox& b) const { return left < b.right && b.left < right && top < b.bottom && b.top < bottom; }
    [[nodiscard]] float area() const { return (right - left) * (bottom - top); }
};

/// Triangles, sorted into few pieces, each either plain or with letters: every piece is a call, and calls cost more than most of what they
/// draw. A triangle passes others only where it does not meet them, so that the picture stays the same.
class DrawOrder {
public:
    struct Piece {
        std::size_t from, count;  ///< in `indices()`
        int clip;                 ///< as it was added with
        bool plain;
    };

    void clear() {
        indices_.clear();
        pieces_.clear();
    }

    /// Puts behind what is there what one clip holds: three indices a triangle, `corner(index)` gives the `Corner`.
    template <class CornerOf>
    void add(int clip, std::span<const std::uint16_t> triangles, const CornerOf& corner) {
        clip_ = clip;
        for (auto left = triangles; left.size() >= 3;) {
            const Run run = first_run(left, corner);
            place(run);
            left = left.subspan(run.triangles.size());
        }
        write();
    }

    [[nodiscard]] const std::vector<std::uint16_t>& indices() const { return indices_; }
    [[nodiscard]] const std::vector<Piece>& pieces() const { return pieces_; }

private:
    /// Triangles of one kind that follow each other.
    struct Run {
        std::span<const std::uint16_t> triangles;
        DrawnBox box;
        bool plain = false;
    };

    template <class CornerOf>
    static Run first_run(std::span<const std::uint16_t> triangles, const CornerOf& corner) {
        Run run;
        std::size_t size = 0;
        for (; size + 3 <= triangles.size(); size += 3) {
            const std::array corners{corner(triangles[size]), corner(triangles[size + 1]), corner(triangles[size + 2])};
            const bool plain = std::all_of(corners.begin(), corners.end(), [](const Corner& c) { return c.plain; });
            if (size == 0) run.plain = plain;
            if (plain != run.plain) break;
            for (const Corner& c : corners) run.box.take(c);
        }
        run.triangles = triangles.first(size);
        return run;
    }

    /// Up to here, in square layout px, what is plain costs less among the letters than a call of its own.
    static constexpr float k_small_px2 = 4000.0F;

    void place(const Run& run) {
        if (run.plain && meets_letters(run.box) && run.box.area() > k_small_px2) write();
        if (run.plain && !meets_letters(run.box)) {
            plain_.insert(plain_.end(), run.triangles.begin(), run.triangles.end());
            return;
        }
        letters_.insert(letters_.end(), run.triangles.begin(), run.triangles.end());
        boxes_of_letters_.push_back(run.box);
    }

    [[nodiscard]] bool meets_letters(const DrawnBox& box) const {
        return std::any_of(boxes_of_letters_.begin(), boxes_of_letters_.end(), [&](const DrawnBox& b) { return b.meets(box); });
    }

    void write() {
        write(plain_, true);
        write(letters_, false);
        boxes_of_letters_.clear();
    }

    void write(std::vector<std::uint16_t>& waiting, bool plain) {
        if (waiting.empty()) return;
        pieces_.push_back({indices_.size(), waiting.size(), clip_, plain});
        indices_.insert(indices_.end(), waiting.begin(), waiting.end());
        waiting.clear();
    }

    std::vector<std::uint16_t> indices_, plain_, letters_;
    std::vector<Piece> pieces_;
    std::vector<DrawnBox> boxes_of_letters_;
    int clip_ = 0;
};

}  // namespace guywright::platform
