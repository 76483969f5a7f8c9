// What a step gives back: a value, or a Fault that says what went wrong, where, and what to do about it.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace stoneproof {

/// An error as a value. Each part is worded once, by the code that found it; printing joins the parts.
struct Fault {
  std::string what;   ///< the fault in plain words, e.g. "the file is empty"
  std::string where;  ///< a path, or path:line:column
  std::string remedy; ///< what a person can do, one imperative sentence

  friend bool operator==(const Fault &, const Fault &) = default;
};

/// A value of T or a Fault, never both. Reading the wrong one throws std::bad_variant_access: a bug in the
/// caller.
template <class T>
class [[nodiscard]] Outcome {
public:
  Outcome(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  Outcome(Fault fault) : state_(std::in_place_index<1>, std::move(fault)) {}

  explicit operator bool() const { return state_.index() == 0; }
  const T &value() const & { return std::get<0>(state_); }
  T &value() & { return std::get<0>(state_); }
  T &&value() && { return std::get<0>(std::move(state_)); }
  const Fault &fault() const { return std::get<1>(state_); }

private:
  std::variant<T, Fault> state_;
};

/// The value of a step that gives nothing but success.
struct Done {
  friend bool operator==(Done, Done) = default;
};

} // namespace stoneproof
