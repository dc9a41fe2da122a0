#pragma once
#include <span>
#include <string>

namespace guywright::platform {

/// What the surface shows, as the bytes that it was drawn from: a picture that is the same again need not be drawn. While a finger slides
/// two frames of three are: a value moves by whole steps.
class ShownPicture {
public:
    /// Everything that the next picture is drawn from, piece by piece, in the same order each time.
    template <class T>
    void add(std::span<const T> piece) {
        next_.append(reinterpret_cast<const char*>(piece.data()), piece.size_bytes());
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
    [[nodiscard]] bool is_known() const { return known_; }

private:
    std::string next_, shown_;  // of bytes: compared a word at a time, which a vector of them is not
    bool known_ = false;
};

}  // namespace guywright::platform
