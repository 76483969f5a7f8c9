// Writes beside the target and renames. The only way in is replace_file(); tested in
// tests/reports/files/replace_file.test.cpp.
#include "reports/files/replace_file.h"

#include "reports/files/descriptor_buffer.h"
#include "reports/files/file_fault.h"

#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <string>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace stoneproof {
namespace {

/// A new file that is gone again unless it was kept.
class NewFile {
public:
  /// Creates a file of a name that nothing in the folder has. The name is short and not made from the
  /// target's, so that a target of the greatest length still works.
  explicit NewFile(const std::filesystem::path &folder) {
    for (int number = 0; number < 1000 && descriptor_ < 0; ++number) {
      path_ = folder / (".stoneproof-" + std::to_string(getpid()) + "-" + std::to_string(number) + ".part");
      descriptor_ = open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
      if (descriptor_ < 0 && errno != EEXIST) break;
    }
    error_ = descriptor_ < 0 ? errno : 0;
    created_ = descriptor_ >= 0;
  }
  NewFile(const NewFile &) = delete;
  NewFile &operator=(const NewFile &) = delete;
  ~NewFile() {
    if (descriptor_ >= 0) close(descriptor_);
    if (created_) unlink(path_.c_str());
  }

  int error() const { return error_; }
  int descriptor() const { return descriptor_; }

  /// Brings the content to the disk and gives the file its name. Gives the errno of what failed, or 0.
  int keep_as(const std::filesystem::path &target) {
    // Some file systems know no fsync (EINVAL); there the close below is all there is.
    if (fsync(descriptor_) != 0 && errno != EINVAL) return errno;
    if (close(std::exchange(descriptor_, -1)) != 0) return errno;
    if (rename(path_.c_str(), target.c_str()) != 0) return errno;
    created_ = false;
    return 0;
  }

private:
  std::filesystem::path path_;
  int descriptor_ = -1;
  int error_ = 0;
  bool created_ = false;
};

/// A rename would put a plain file in the place of a device, and fails late on a folder.
int refusal_of(const std::filesystem::path &target) {
  struct stat found;
  if (stat(target.c_str(), &found) != 0) return errno == ENOENT ? 0 : errno;
  if (S_ISDIR(found.st_mode)) return EISDIR;
  return S_ISREG(found.st_mode) ? 0 : ENODEV;
}

} // namespace

std::filesystem::path folder_of(const std::filesystem::path &target) {
  return target.has_parent_path() ? target.parent_path() : std::filesystem::path(".");
}

Outcome<Done> replace_file(const std::filesystem::path &target, const ContentWriter &write) {
  if (target.empty()) return file_fault(EINVAL, target);
  if (const int error = refusal_of(target)) return file_fault(error, target);
  NewFile file(folder_of(target));
  if (file.error() != 0) return file_fault(file.error(), target);

  DescriptorBuffer buffer(file.descriptor());
  std::ostream stream(&buffer);
  Outcome<Done> written = write(stream);
  const bool flushed = buffer.pubsync() == 0;
  // A full disk is the cause, whatever the writer made of it.
  if (!flushed || buffer.error() != 0) return file_fault(buffer.error(), target);
  if (!written) return written;
  if (!stream)
    return file_fault(EIO, target); // no write failed, but the writer asked for what a file cannot do
  if (const int error = file.keep_as(target)) return file_fault(error, target);
  return Done{};
}

Outcome<Done> replace_file(const std::filesystem::path &target, std::string_view content) {
  return replace_file(target, [content](std::ostream &stream) -> Outcome<Done> {
    stream.write(content.data(), static_cast<std::streamsize>(content.size()));
    return Done{};
  });
}

} // namespace stoneproof
