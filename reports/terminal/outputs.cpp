// Names and checks the outputs; nothing is written here. The only ways in are the functions of outputs.h;
// tested in tests/reports/terminal.
#include "reports/terminal/outputs.h"

#include "reports/files/file_fault.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace stoneproof::terminal {

namespace fs = std::filesystem;

namespace {

fs::path beside(const fs::path &book, const char *ending) {
  fs::path name = book.stem();
  name += ending;
  return book.parent_path() / name;
}

/// The path without links and detours as far as it exists; empty where that cannot be told.
fs::path real_path(const fs::path &path) {
  std::error_code fault;
  const fs::path whole = fs::absolute(path, fault); // so that a bare name and ./name compare
  const fs::path real = fault ? fs::path() : fs::weakly_canonical(whole, fault);
  return fault ? fs::path() : real;
}

bool same_file(const fs::path &a, const fs::path &b) {
  std::error_code fault;
  if (fs::equivalent(a, b, fault) && !fault) return true;
  const fs::path real = real_path(a);
  return !real.empty() && real == real_path(b);
}

/// The errno that writing would meet, as far as it shows beforehand; 0: none.
int obstacle(const fs::path &target) {
  struct stat found;
  if (target.empty()) return EINVAL;
  if (stat(folder_of(target).c_str(), &found) != 0) return errno;
  if (!S_ISDIR(found.st_mode)) return ENOTDIR;
  if (access(folder_of(target).c_str(), W_OK | X_OK) != 0) return errno;
  if (stat(target.c_str(), &found) != 0) return errno == ENOENT ? 0 : errno;
  if (S_ISDIR(found.st_mode)) return EISDIR;
  return S_ISREG(found.st_mode) ? 0 : ENODEV;
}

} // namespace

fs::path output_of(const fs::path &book, const char *ending, const std::optional<fs::path> &asked) {
  return asked.value_or(beside(book, ending));
}

std::optional<Fault> clash(const std::vector<Output> &outputs, const std::vector<Input> &inputs) {
  for (std::size_t i = 0; i < outputs.size(); ++i)
    for (std::size_t j = i + 1; j < outputs.size(); ++j)
      if (same_file(outputs[i].file, outputs[j].file))
        return Fault{fmt::format("{} and {} would be the same file", outputs[i].kind, outputs[j].kind),
                     outputs[j].file.string(), "Give one of them another name."};
  for (const Output &output : outputs)
    for (const Input &input : inputs)
      if (same_file(output.file, input.file))
        return Fault{fmt::format("this output would replace an input, {}", input.kind), output.file.string(),
                     "Give the output another name."};
  return std::nullopt;
}

std::vector<Fault> obstacles(const std::vector<Output> &outputs) {
  std::vector<Fault> faults;
  for (const Output &output : outputs)
    if (const int error = obstacle(output.file)) {
      Fault fault = file_fault(error, output.file);
      if (std::find(faults.begin(), faults.end(), fault) == faults.end()) faults.push_back(std::move(fault));
    }
  return faults;
}

} // namespace stoneproof::terminal
