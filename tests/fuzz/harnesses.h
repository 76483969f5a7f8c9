// What the fuzzers run, one function for each family of formats; the ordinary tests replay files through the
// same functions.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace stoneproof::fuzz {

using Bytes = std::span<const std::uint8_t>;

/// Each reads the bytes as a file: its facts, its rows, a preview. Bytes of another family are passed over.
/// Aborts where a value does not hold together; what else must not happen, the sanitizers see.
void jpeg(Bytes bytes);
void tiff(Bytes bytes);
void png(Bytes bytes);
void gif(Bytes bytes);
void webp(Bytes bytes);
void heif(Bytes bytes);
/// Reads the bytes as an ICC profile.
void icc(Bytes bytes);
/// Reads the bytes as a PDF: its pages, their layout, the samples of its pictures.
void pdf(Bytes bytes);
/// Reads the bytes as a content stream, and as a font's map of characters.
void content(Bytes bytes);
/// Decodes the bytes by a filter of PDF; the first four name it and its parameters.
void filter(Bytes bytes);

struct Harness {
  std::string_view family;
  void (*run)(Bytes);
};
inline constexpr Harness harnesses[] = {{"jpeg", jpeg},       {"tiff", tiff},    {"png", png}, {"gif", gif},
                                        {"webp", webp},       {"heif", heif},    {"icc", icc}, {"pdf", pdf},
                                        {"content", content}, {"filter", filter}};

} // namespace stoneproof::fuzz
