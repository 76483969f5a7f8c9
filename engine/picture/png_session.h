// One libpng reader over a PictureFile. Its errors and longjmps end here.
#pragma once

#include "engine/picture/facts.h"
#include "engine/picture/picture_file.h"

#include <array>
#include <csetjmp>
#include <string>
#include <vector>

#include <png.h>

namespace stoneproof {

/// The chunk that goes first: cICP, iCCP, sRGB, then gAMA and cHRM (PNG, third edition, 4.3).
struct PngColour {
  ColourTag tag = ColourTag::none;
  std::vector<std::uint8_t> icc; ///< of an iCCP chunk that counts; else empty
};

/// Steps run one at a time inside `run`; after one has failed only the message may be read. The file must
/// outlive the session. Warnings of libpng are about chunks that do not touch the pixels and are left out.
class PngSession {
public:
  explicit PngSession(const PictureFile &file);
  ~PngSession();
  PngSession(const PngSession &) = delete;
  PngSession &operator=(const PngSession &) = delete;

  /// Runs a step that calls libpng; false when the library gave up, `error` then says why. A step must own
  /// nothing with a destructor: a longjmp passes over it.
  template <class Step>
  [[gnu::noinline]] bool run(const Step &step) {
    if (!info_ || setjmp(jump_) != 0) return false;
    step(png_, info_);
    return true;
  }

  png_structp png() const { return png_; }
  png_infop info() const { return info_; }
  std::string error() const { return error_.data(); }
  /// What the chunks before the pixels say of the colours, once a step has read them.
  PngColour colour() const;

private:
  static void on_error(png_structp png, png_const_charp message);
  static void on_warning(png_structp, png_const_charp) {}
  static void on_read(png_structp png, png_bytep to, std::size_t count);

  const PictureFile &file_;
  std::uint64_t place_ = 0;
  png_structp png_ = nullptr;
  png_infop info_ = nullptr;
  std::jmp_buf jump_{};
  std::array<char, 128> error_{};
};

} // namespace stoneproof
