#pragma once
#include <array>
#include <cassert>
#include <cstddef>

namespace guywright {

/// A list that never allocates: at most `Capacity` entries, stored in place. The codec refuses a plan that would not fit.
template <class T, std::size_t Capacity>
class Bounded {
public:
    static constexpr std::size_t capacity = Capacity;

    void push_back(const T& value) {
        assert(count_ < Capacity);
        if (count_ < Capacity) items_[count_++] = value;
    }
    void clear() { count_ = 0; }
    void erase(std::size_t at) {
        assert(at < count_);
        for (std::size_t i = at; i + 1 < count_; ++i) items_[i] = items_[i + 1];
        --count_;
    }
    [[nodiscard]] std::size_t size() const { return count_; }
    [[nodiscard]] bool empty() const { return count_ == 0; }
    [[nodiscard]] bool full() const { return count_ == Capacity; }
    T& operator[](std::size_t i) { assert(i < count_); return items_[i]; }
    const T& operator[](std::size_t i) const { assert(i < count_); return items_[i]; }
    T* begin() { return items_.data(); }
    T* end() { return items_.data() + count_; }
    const T* begin() const { return items_.data(); }
    const T* end() const { return items_.data() + count_; }

private:
    std::array<T, Capacity> items_{};
    std::size_t count_ = 0;
};

}  // namespace guywright
