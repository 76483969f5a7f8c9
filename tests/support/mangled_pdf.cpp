#include "tests/support/mangled_pdf.h"

#include <algorithm>
#include <random>

namespace stoneproof::test {

namespace {

class Mangler {
public:
  Mangler(std::string pdf, std::uint64_t seed) : pdf_(std::move(pdf)), random_(seed) {}

  std::string mangled() {
    constexpr Change changes[] = {&Mangler::flip,          &Mangler::cut_out,     &Mangler::cut_off,
                                  &Mangler::put_in,        &Mangler::doubled,     &Mangler::change_number,
                                  &Mangler::change_number, &Mangler::swap_objects};
    for (std::size_t left = 1 + below(4); left > 0 && !pdf_.empty(); --left)
      (this->*changes[below(std::size(changes))])();
    return std::move(pdf_);
  }

private:
  using Change = void (Mangler::*)();

  // The library's distributions differ from one to another.
  std::size_t below(std::size_t end) { return end == 0 ? 0 : static_cast<std::size_t>(random_() % end); }
  std::size_t place() { return below(pdf_.size()); }

  void flip() {
    for (std::size_t left = 1 + below(8); left > 0; --left) pdf_[place()] = static_cast<char>(random_());
  }
  void cut_out() {
    const std::size_t at = place();
    pdf_.erase(at, 1 + below(pdf_.size() / 20 + 1));
  }
  void cut_off() { pdf_.resize(pdf_.size() - below(pdf_.size() / 2)); }
  void put_in() {
    std::string bytes(1 + below(100), '\0');
    for (char &byte : bytes) byte = static_cast<char>(random_());
    pdf_.insert(place(), bytes);
  }
  void doubled() { pdf_.insert(place(), pdf_.substr(place(), 1 + below(2'000))); }

  void change_number() {
    constexpr const char *numbers[] = {
        "0",          "-1",          "1",          "255",        "65536",
        "2147483648", "-2147483648", "4294967295", "1000000000", "99999999999999999999",
        "0.0000001",  "7 0 R"};
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    const auto from = std::find_if(pdf_.begin() + static_cast<std::ptrdiff_t>(place()), pdf_.end(), digit);
    const auto to = std::find_if_not(from, pdf_.end(), digit);
    // Mostly as long as before, so that what stands behind it is still where the tables say.
    std::string number(static_cast<std::size_t>(to - from), below(2) == 0 ? '9' : '0');
    if (below(2) == 0)
      for (char &c : number) c = static_cast<char>('0' + below(10));
    if (below(4) == 0) number = numbers[below(std::size(numbers))];
    pdf_.replace(from, to, number);
  }

  void swap_objects() {
    const std::size_t first = object_from(place()), second = object_from(place());
    const std::size_t end = pdf_.find("endobj", std::min(first, second));
    if (first == second || end == std::string::npos || end > std::max(first, second)) return;
    const std::size_t low = std::min(first, second), high = std::max(first, second);
    const std::string one = pdf_.substr(low, end - low);
    const std::size_t high_end = std::min(pdf_.find("endobj", high), pdf_.size());
    const std::string other = pdf_.substr(high, high_end - high);
    pdf_.replace(high, other.size(), one);
    pdf_.replace(low, one.size(), other);
  }
  std::size_t object_from(std::size_t at) const {
    const std::size_t found = pdf_.find(" obj", at);
    return found == std::string::npos ? 0 : found + 4;
  }

  std::string pdf_;
  std::mt19937_64 random_;
};

} // namespace

std::string mangled(std::string pdf, std::uint64_t seed) { return Mangler(std::move(pdf), seed).mangled(); }

} // namespace stoneproof::test
