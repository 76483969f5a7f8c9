// Bytes as a file without a name, and what the harnesses demand of results.
#pragma once

#include "engine/outcome.h"
#include "tests/fuzz/harnesses.h"

#include <cstdlib>
#include <string>
#include <string_view>
#include <sys/mman.h>
#include <unistd.h>

namespace stoneproof::fuzz {

inline void must(bool holds) {
  if (!holds) std::abort();
}

/// A file without a name that holds the bytes, as long as this lives.
class MemoryFile {
public:
  explicit MemoryFile(Bytes bytes) : descriptor_(::memfd_create("bytes", MFD_CLOEXEC)) {
    must(descriptor_ >= 0 && ::write(descriptor_, bytes.data(), bytes.size()) == std::ssize(bytes));
  }
  ~MemoryFile() { ::close(descriptor_); }
  MemoryFile(const MemoryFile &) = delete;
  MemoryFile &operator=(const MemoryFile &) = delete;
  std::string path() const { return "/proc/self/fd/" + std::to_string(descriptor_); }

private:
  int descriptor_;
};

inline void check(const Fault &fault) {
  must(!fault.what.empty() && !fault.where.empty() && !fault.remedy.empty());
}

inline bool starts(Bytes bytes, std::string_view with, std::size_t at = 0) {
  return bytes.size() > at + with.size() &&
         std::string_view(reinterpret_cast<const char *>(bytes.data()) + at, with.size()) == with;
}

} // namespace stoneproof::fuzz
