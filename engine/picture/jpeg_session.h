// One libjpeg decompressor over a PictureFile. Its errors and longjmps end here.
#pragma once

#include "engine/picture/deadline.h"
#include "engine/picture/facts.h"
#include "engine/picture/picture_file.h"

#include <array>
#include <csetjmp>
#include <cstdint>
#include <cstdio>
#include <optional>
#include <string>
#include <vector>

#include <jpeglib.h>
// After jpeglib.h, whose settings move the numbers of the messages.
#include <jerror.h>

namespace stoneproof {

/// Steps run one at a time inside `run`; after one has failed only the messages may be read. The file must
/// outlive the session.
class JpegSession {
public:
  /// Where a picture comes in many scans, decoding it gives up after `most_time`.
  explicit JpegSession(const PictureFile &file, std::chrono::seconds most_time = PictureLimits().most_time);
  ~JpegSession();
  JpegSession(const JpegSession &) = delete;
  JpegSession &operator=(const JpegSession &) = delete;

  /// Runs a step that calls libjpeg; false when the library gave up, `error` then says why. A step must own
  /// nothing with a destructor: a longjmp passes over it.
  template <class Step>
  [[gnu::noinline]] bool run(const Step &step) {
    if (setjmp(jump_) != 0) return false;
    step(&state_);
    return true;
  }

  /// Counts the time that decoding may take from now on; to be called once memory for it is there.
  void start_clock(std::chrono::seconds most_time);

  jpeg_decompress_struct &state() { return state_; }
  std::string error() const { return error_.data(); }
  /// What libjpeg cannot decode though it is sound, in words that complete "the JPEG holds ..."; none: the
  /// last error was another.
  std::optional<std::string> obstacle() const;
  /// The ICC profile, once a step has read a header whose APP2 segments were kept; empty: none, or its
  /// segments do not fit together.
  std::vector<std::uint8_t> icc();
  /// The first warning that means lost or wrong pixels, or empty. Harmless and left out: stray bytes between
  /// segments (cameras pad their files), an unknown JFIF version, an unknown Adobe transform code, a profile
  /// in pieces that do not fit together.
  std::string damage() const { return damage_.data(); }
  bool is_damaged() const { return damage_[0] != '\0'; }

private:
  using Text = std::array<char, JMSG_LENGTH_MAX>;
  static JpegSession &of(j_common_ptr state) { return *static_cast<JpegSession *>(state->client_data); }
  static void on_error(j_common_ptr state);
  static void on_message(j_common_ptr state, int level);
  static void on_progress(j_common_ptr state);
  static boolean fill(j_decompress_ptr state);
  static void skip(j_decompress_ptr state, long count);

  const PictureFile &file_;
  Deadline deadline_;
  bool gave_up_ = false;     ///< on too many scans
  std::uint64_t offset_ = 0; ///< of the first byte not yet handed to libjpeg
  jpeg_decompress_struct state_{};
  jpeg_error_mgr errors_{};
  jpeg_source_mgr source_{};
  jpeg_progress_mgr progress_{};
  std::jmp_buf jump_{};
  Text error_{}, damage_{};
  std::array<JOCTET, 16 * 1024> buffer_;
};

} // namespace stoneproof
