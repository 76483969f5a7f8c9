// Compresses a preview into a JPEG in memory. Only ways in: compress and read_small_copy.
// Tested in tests/engine/picture/small_copy.test.cpp.
#include "engine/picture/small_copy.h"

#include "engine/picture/faults.h"

#include <csetjmp>
#include <cstdio>
#include <cstdlib>

#include <jpeglib.h>

namespace stoneproof {

namespace {

// Good enough to see what is meant at proof size.
constexpr int quality = 75;

// libjpeg's compressor into memory of its own; its longjmps end in `write`.
class MemoryJpeg {
public:
  MemoryJpeg() {
    state_.err = jpeg_std_error(&errors_);
    errors_.error_exit = [](j_common_ptr state) {
      std::longjmp(static_cast<MemoryJpeg *>(state->client_data)->jump_, 1);
    };
    errors_.emit_message = [](j_common_ptr, int) {};
    state_.client_data = this;
  }
  MemoryJpeg(const MemoryJpeg &) = delete;
  MemoryJpeg &operator=(const MemoryJpeg &) = delete;
  ~MemoryJpeg() {
    jpeg_destroy_compress(&state_);
    std::free(bytes_);
  }

  bool write(const Preview &preview) {
    if (setjmp(jump_) != 0) return false;
    jpeg_create_compress(&state_);
    jpeg_mem_dest(&state_, &bytes_, &count_);
    state_.image_width = static_cast<JDIMENSION>(preview.width);
    state_.image_height = static_cast<JDIMENSION>(preview.height);
    state_.input_components = 3;
    state_.in_color_space = JCS_RGB;
    jpeg_set_defaults(&state_);
    jpeg_set_quality(&state_, quality, TRUE);
    state_.optimize_coding = TRUE; // a second look at small pictures, for some per cent of the bytes
    jpeg_start_compress(&state_, TRUE);
    while (state_.next_scanline < state_.image_height) {
      // libjpeg takes its rows without const and does not write to them.
      JSAMPROW row = const_cast<JSAMPROW>(preview.rgb.data() +
                                          std::size_t{state_.next_scanline} * state_.image_width * 3);
      jpeg_write_scanlines(&state_, &row, 1);
    }
    jpeg_finish_compress(&state_);
    return true;
  }

  std::vector<std::uint8_t> bytes() const { return {bytes_, bytes_ + count_}; }

private:
  jpeg_compress_struct state_{};
  jpeg_error_mgr errors_{};
  std::jmp_buf jump_{};
  unsigned char *bytes_ = nullptr;
  unsigned long count_ = 0;
};

} // namespace

Outcome<SmallCopy> compress(const Preview &preview, const std::filesystem::path &file) {
  MemoryJpeg jpeg;
  // A side beyond what JPEG can say is the one thing libjpeg refuses here.
  if (!jpeg.write(preview))
    return faults::not_decoded(file, "order", "more pixels a side than a JPEG can hold");
  return SmallCopy{preview.part, preview.width, preview.height, jpeg.bytes()};
}

Outcome<SmallCopy> read_small_copy(const std::filesystem::path &file, const Facts &facts,
                                   const PreviewOrder &order, const PictureLimits &limits) {
  const auto preview = read_preview(file, facts, order, limits);
  if (!preview) return preview.fault();
  return compress(preview.value(), file);
}

} // namespace stoneproof
