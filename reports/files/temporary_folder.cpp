// Makes and removes a folder. The only way in is TemporaryFolder; tested in
// tests/reports/files/temporary_folder.test.cpp.
#include "reports/files/temporary_folder.h"

#include "reports/files/file_fault.h"

#include <cerrno>
#include <cstdlib>
#include <string>
#include <utility>

namespace stoneproof {

Outcome<TemporaryFolder> TemporaryFolder::make(const std::filesystem::path &parent) {
  std::string name = (parent / ".stoneproof-XXXXXX").string();
  if (!mkdtemp(name.data())) return file_fault(errno, name);
  return TemporaryFolder(std::filesystem::path(name));
}

TemporaryFolder::TemporaryFolder(TemporaryFolder &&other) noexcept : path_(std::exchange(other.path_, {})) {}

TemporaryFolder &TemporaryFolder::operator=(TemporaryFolder &&other) noexcept {
  std::swap(path_, other.path_);
  return *this;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
}

Outcome<Done> TemporaryFolder::keep_as(const std::filesystem::path &name) {
  std::error_code error;
  std::filesystem::permissions(path_, std::filesystem::perms(0755), error);
  std::filesystem::rename(path_, name, error);
  if (error) return file_fault(error.value(), name);
  path_.clear();
  return Done{};
}

} // namespace stoneproof
