#pragma once
#include <cassert>
#include <cstddef>
#include <memory>
#include <type_traits>

namespace guywright {

/// A list that never allocates: at most `Capacity` entries, stored in place. The codec refuses a plan that would not fit.
/// Room that is not used is neither set nor copied: the solver makes and copies some of these for every case of every point.
template <class T, std::size_t Capacity>
class Bounded {
    static_assert(std::is_trivially_destructible_v<T>, "entries are never destroyed");

public:
    static constexpr std::size_t capacity = Capacity;

    Bounded() {}
    Bounded(const Bounded& other) { append(other); }
    Bounded& operator=(const Bounded& other) {
        if (this == &other) return *this;
        count_ = 0;
        append(other);
        return *this;
    }

    void push_back(const T& value) {
        assert(count_ < Capacity);
        if (count_ < Capacity) std::construct_at(items_ + count_++, value);
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
    T& operator[](std::size_t i) {
        assert(i < count_);
        return items_[i];
    }
    const T& operator[](std::size_t i) const {
        assert(i < count_);
        return items_[i];
    }
    T* begin() { return items_; }
    T* end() { return items_ + count_; }
    const T* begin() const { return items_; }
    const T* end() const { return items_ + count_; }

private:
    void append(const Bounded& other) {
        for (const T& value : other) std::construct_at(items_ + count_++, value);
    }

    union {
        T items_[Capacity];
    };
    std::size_t count_ = 0;
};

}  // namespace guywright
