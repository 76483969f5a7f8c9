// A folder of our own for files that nobody keeps.
#pragma once

#include "engine/outcome.h"

#include <filesystem>

namespace stoneproof {

/// Made when it is asked for, removed with all that is in it when it goes out of scope. Movable.
class TemporaryFolder {
public:
  /// A new empty folder in `parent` that only its maker can look into. Fault: it cannot be made.
  static Outcome<TemporaryFolder> make(const std::filesystem::path &parent);
  TemporaryFolder(TemporaryFolder &&other) noexcept;
  TemporaryFolder &operator=(TemporaryFolder &&other) noexcept;
  ~TemporaryFolder();

  const std::filesystem::path &path() const { return path_; }
  /// Gives it another name, and keeps it. Fault: it cannot be renamed; then it is still temporary.
  Outcome<Done> keep_as(const std::filesystem::path &name);

private:
  explicit TemporaryFolder(std::filesystem::path path) : path_(std::move(path)) {}

  std::filesystem::path path_; ///< empty: there is none to remove
};

} // namespace stoneproof
