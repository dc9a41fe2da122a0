#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace guywright::platform {

/// What the surface shows, as the bytes that it was drawn from: a picture that is the same again need not be drawn. While a finger slides
/// two frames of three are: a value moves by whole steps.
class ShownPicture {
public:
    /// Everything that the next picture is drawn from, piece by piece, in the same order each time.
    template <class T>
    void add(std::span<const T> piece) {
        const auto bytes = std::as_bytes(piece);
        next_.insert(next_.end(), bytes.begin(), bytes.end());
    }

    /// Takes what was added as shown, and tells whether it differs from what was.
    bool replace() {
        const bool differs = !known_ || next_ != shown_;
        next_.swap(shown_);
        next_.clear();
        known_ = true;
        return differs;
    }

    /// The surface may show anything.
    void forget() { known_ = false; }

private:
    std::vector<std::byte> next_, shown_;
    bool known_ = false;
};

}  // namespace guywright::platform
