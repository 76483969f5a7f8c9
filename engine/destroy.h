// Gives a C library's objects to std::unique_ptr: Destroy<their_destroy_function> is the deleter.
#pragma once

namespace stoneproof {

template <auto destroy>
struct Destroy {
  template <class T>
  void operator()(T *object) const {
    destroy(object);
  }
};

} // namespace stoneproof
