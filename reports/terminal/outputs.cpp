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

Outputs outputs_of(const fs::path &book, const std::optional<fs::path> &proof,
                   const std::optional<fs::path> &record) {
  return {proof.value_or(beside(book, ".proof.pdf")), record.value_or(beside(book, ".record.json"))};
}

std::optional<Fault> clash(const Outputs &outputs, const std::vector<Input> &inputs) {
  if (same_file(outputs.proof, outputs.record))
    return Fault{"the proof and the record would be the same file", outputs.record.string(),
                 "Give one of them another name."};
  for (const fs::path &output : {outputs.proof, outputs.record})
    for (const Input &input : inputs)
      if (same_file(output, input.file))
        return Fault{fmt::format("this output would replace an input, {}", input.kind), output.string(),
                     "Give the output another name."};
  return std::nullopt;
}

std::vector<Fault> obstacles(const Outputs &outputs) {
  std::vector<Fault> faults;
  for (const fs::path &output : {outputs.proof, outputs.record})
    if (const int error = obstacle(output)) {
      Fault fault = file_fault(error, output);
      if (std::find(faults.begin(), faults.end(), fault) == faults.end()) faults.push_back(std::move(fault));
    }
  return faults;
}

} // namespace stoneproof::terminal
