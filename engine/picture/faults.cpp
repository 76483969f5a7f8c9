// The wording of picture faults. Only way in: the functions of faults.h.
// Tested to the byte in tests/engine/picture/files.test.cpp.
#include "engine/picture/faults.h"

#include <cerrno>
#include <fmt/format.h>
#include <sys/stat.h>
#include <system_error>

namespace stoneproof::faults {

namespace {

constexpr std::string_view export_it = "Export the picture as TIFF, or as JPEG at best quality.";
constexpr std::string_view copy_again = "Copy the picture again from where it came, or ask for it again.";

// Megabytes as people count file sizes, rounded up so that "more than the limit" is never shown as equal to
// it.
std::uint64_t megabytes(std::uint64_t bytes) { return bytes / 1'000'000 + (bytes % 1'000'000 ? 1 : 0); }

/// 1000000 as "1,000,000".
std::string grouped(std::int64_t number) {
  std::string digits = fmt::format("{}", number);
  for (std::size_t at = digits.size(); at > 3 && digits[at - 4] != '-';) digits.insert(at -= 3, 1, ',');
  return digits;
}

} // namespace

Fault cannot_open(const std::filesystem::path &file, int error_number) {
  if (error_number == ENOENT || error_number == ENOTDIR)
    return {"there is no such file", file.string(), "Put the picture at this path, or correct the path."};
  if (error_number == EACCES || error_number == EPERM)
    return {"the file may not be read", file.string(), "Give yourself the right to read it."};
  return {fmt::format("the file cannot be read ({})", std::generic_category().message(error_number)),
          file.string(), "Check the disk and the path, then try again."};
}

Fault not_regular(const std::filesystem::path &file, mode_t mode) {
  const std::string_view kind = S_ISDIR(mode)    ? "a folder"
                                : S_ISFIFO(mode) ? "a pipe"
                                : S_ISSOCK(mode) ? "a socket"
                                                 : "a device";
  return {fmt::format("this is {}, not a picture file", kind), file.string(),
          "Name the picture file itself."};
}

Fault empty(const std::filesystem::path &file) {
  return {"the file is empty", file.string(), std::string(copy_again)};
}

Fault other_format(const std::filesystem::path &file, const OtherKind &kind) {
  return {fmt::format("the file is {}, which is not read here", kind.name), file.string(),
          std::string(kind.remedy)};
}

Fault unknown_format(const std::filesystem::path &file) {
  return {"the file is no picture of a known kind, whatever its name says", file.string(),
          std::string(export_it)};
}

Fault broken_header(const std::filesystem::path &file, std::string_view format, std::string_view detail) {
  return {fmt::format("the {} header is broken ({})", format, detail), file.string(),
          std::string(copy_again)};
}

Fault damaged(const std::filesystem::path &file, std::string_view format, std::string_view detail) {
  return {fmt::format("the {} is damaged ({})", format, detail), file.string(), std::string(copy_again)};
}

Fault not_decoded(const std::filesystem::path &file, std::string_view format, std::string_view kind) {
  return {fmt::format("the {} holds {}, which cannot be decoded here", format, kind), file.string(),
          "Export the picture as TIFF with 8 or 16 bits a channel in gray, RGB or CMYK."};
}

Fault too_many_pixels(const std::filesystem::path &file, PixelSize claimed, const PictureLimits &limits) {
  return {fmt::format("the picture claims {} × {} pixels; the limit is {} in all", grouped(claimed.width),
                      grouped(claimed.height), grouped(limits.most_pixels)),
          file.string(), "Check that this size is meant; if it is, save a smaller copy."};
}

Fault too_much_memory(const std::filesystem::path &file, std::uint64_t needed, const PictureLimits &limits) {
  return {fmt::format("decoding the picture needs {} MB of memory; the limit is {} MB", megabytes(needed),
                      limits.most_memory / 1'000'000),
          file.string(), "Save the picture again as a TIFF in strips, or as a baseline JPEG."};
}

Fault too_slow(const std::filesystem::path &file, std::chrono::seconds most) {
  return {fmt::format("decoding the picture takes longer than {} s, the limit", most.count()), file.string(),
          "Save the picture again as TIFF, or allow more time."};
}

Fault too_much_expansion(const std::filesystem::path &file, double expansion, const PictureLimits &limits) {
  return {fmt::format("each byte of the file stands for {:.0f} bytes of pixels; the limit is {:.0f}",
                      expansion, limits.most_expansion),
          file.string(),
          "Check that the picture is meant to be so large and so empty; if it is, save a smaller copy."};
}

Fault part_outside(const std::filesystem::path &file) {
  return {"the part asked for lies outside the picture", file.string(), "Move the crop onto the picture."};
}

Fault changed(const std::filesystem::path &file) {
  return {"the file was changed while it was being checked", file.string(),
          "Wait until the picture is written, then try again."};
}

bool within(PixelSize size, const PictureLimits &limits) {
  return size.width > 0 && size.height > 0 && size.width <= limits.most_pixels / size.height;
}

} // namespace stoneproof::faults
