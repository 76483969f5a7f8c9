// Opens a picture file so that nothing can hang or be changed by it.
// Only way in: PictureFile. Tested in tests/engine/picture/files.test.cpp.
#include "engine/picture/picture_file.h"

#include "engine/picture/faults.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace stoneproof {

namespace {

constexpr std::size_t head_bytes = 4096;

} // namespace

Outcome<PictureFile> PictureFile::open(const std::filesystem::path &path) {
  struct stat before {};
  if (::stat(path.c_str(), &before) != 0) return faults::cannot_open(path, errno);
  if (!S_ISREG(before.st_mode)) return faults::not_regular(path, before.st_mode);
  // O_NONBLOCK: should the file be swapped for a pipe between the two calls, opening it still does not wait.
  const int descriptor = ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
  if (descriptor < 0) return faults::cannot_open(path, errno);
  struct stat now {};
  const bool known = ::fstat(descriptor, &now) == 0;
  PictureFile file(path, descriptor, known ? static_cast<std::uint64_t>(now.st_size) : 0);
  if (known && !S_ISREG(now.st_mode)) return faults::not_regular(path, now.st_mode);
  if (file.size_ == 0) return faults::empty(path);
  std::vector<std::uint8_t> head(head_bytes);
  head.resize(file.read_at(0, head.data(), head.size()));
  file.head_ = std::move(head);
  if (file.head_.empty()) return faults::cannot_open(path, EIO);
  return file;
}

PictureFile::PictureFile(std::filesystem::path path, int descriptor, std::uint64_t size)
    : path_(std::move(path)), descriptor_(descriptor), size_(size) {}

PictureFile::PictureFile(PictureFile &&other) noexcept
    : path_(std::move(other.path_)), descriptor_(std::exchange(other.descriptor_, -1)), size_(other.size_),
      head_(std::move(other.head_)) {}

PictureFile &PictureFile::operator=(PictureFile &&other) noexcept {
  std::swap(path_, other.path_);
  std::swap(descriptor_, other.descriptor_);
  std::swap(size_, other.size_);
  std::swap(head_, other.head_);
  return *this;
}

PictureFile::~PictureFile() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

std::size_t PictureFile::read_at(std::uint64_t offset, void *to, std::size_t count) const {
  if (offset >= size_ || count == 0) return 0;
  if (offset + count <= head_.size()) {
    std::memcpy(to, head_.data() + offset, count);
    return count;
  }
  std::size_t done = 0;
  while (done < count) {
    const auto got = ::pread(descriptor_, static_cast<std::uint8_t *>(to) + done, count - done,
                             static_cast<off_t>(offset + done));
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) break;
    done += static_cast<std::size_t>(got);
  }
  return done;
}

} // namespace stoneproof
