// One picture file, open for reading only.
#pragma once

#include "engine/outcome.h"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <span>
#include <vector>

namespace stoneproof {

/// A regular file that is not empty. Reads name their place, so several readers may share one PictureFile,
/// also from several threads.
class PictureFile {
public:
  /// Never waits: a pipe or a device is refused before it is opened. Faults: missing, not readable, not a
  /// regular file, empty.
  static Outcome<PictureFile> open(const std::filesystem::path &path);

  PictureFile(PictureFile &&other) noexcept;
  PictureFile &operator=(PictureFile &&other) noexcept;
  ~PictureFile();

  const std::filesystem::path &path() const { return path_; }
  std::uint64_t size() const { return size_; }
  /// The first bytes of the file, up to 4096: enough for the signature and most headers.
  std::span<const std::uint8_t> head() const { return head_; }
  /// Copies up to `count` bytes from `offset` on; gives how many there were. Fewer than asked for means the
  /// end of the file, or that the disk would not give more.
  std::size_t read_at(std::uint64_t offset, void *to, std::size_t count) const;

private:
  PictureFile(std::filesystem::path path, int descriptor, std::uint64_t size);

  std::filesystem::path path_;
  int descriptor_ = -1;
  std::uint64_t size_ = 0;
  std::vector<std::uint8_t> head_;
};

} // namespace stoneproof
