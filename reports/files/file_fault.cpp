// Words for the system's refusals. The only way in is file_fault(); tested in
// tests/reports/files/replace_file.test.cpp.
#include "reports/files/file_fault.h"

#include <cerrno>
#include <system_error>

namespace stoneproof {

Fault file_fault(int error, const std::filesystem::path &target) {
  const std::string file = target.string(), folder = folder_of(target).string();
  switch (error) {
  case ENOENT: return {"the folder does not exist", folder, "Create it, or write somewhere else."};
  case ENOTDIR: return {"this is not a folder", folder, "Write to a folder."};
  case EACCES:
  case EPERM:
    return {"the folder may not be written to", folder, "Change its permissions, or write somewhere else."};
  case EROFS: return {"the folder is on a read-only disk", folder, "Write somewhere else."};
  case ENOSPC:
  case EDQUOT: return {"the disk is full", file, "Make room, or write to another disk."};
  case EFBIG:
    return {"the file grew larger than the system allows", file,
            "Raise the limit on file size (ulimit -f), or write to another disk."};
  case EISDIR: return {"a folder of this name is in the way", file, "Give the output another name."};
  case ENODEV: return {"this is a device or a pipe, not a plain file", file, "Give the output another name."};
  case ENAMETOOLONG: return {"the file name is too long", file, "Give the output a shorter name."};
  case EINVAL: return {"the output has no name", file, "Give the output a name."};
  default:
    return {"the file cannot be written (" + std::generic_category().message(error) + ")", file,
            "Write somewhere else."};
  }
}

} // namespace stoneproof
