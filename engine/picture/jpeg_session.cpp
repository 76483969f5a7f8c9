// Feeds libjpeg from a PictureFile and keeps what it says. Only way in: JpegSession.
// Tested through facts and previews in tests/engine/picture/.
#include "engine/picture/jpeg_session.h"

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace stoneproof {

namespace {

// A progressive file may hold any number of scans, each of which costs a pass over the whole picture;
// encoders write about ten. libjpeg-turbo's own advice on hostile files is to stop at some hundreds.
constexpr int most_scans = 500;

} // namespace

JpegSession::JpegSession(const PictureFile &file, std::chrono::seconds most_time)
    : file_(file), deadline_(most_time) {
  state_.err = jpeg_std_error(&errors_);
  errors_.error_exit = on_error;
  errors_.emit_message = on_message;
  state_.client_data = this;
  run([](j_decompress_ptr state) { jpeg_create_decompress(state); });
  state_.client_data = this;

  source_.next_input_byte = file.head().data();
  source_.bytes_in_buffer = file.head().size();
  offset_ = file.head().size();
  source_.init_source = [](j_decompress_ptr) {};
  source_.term_source = [](j_decompress_ptr) {};
  source_.resync_to_restart = jpeg_resync_to_restart;
  source_.fill_input_buffer = fill;
  source_.skip_input_data = skip;
  state_.src = &source_;
  progress_.progress_monitor = on_progress;
  state_.progress = &progress_;
}

JpegSession::~JpegSession() { jpeg_destroy_decompress(&state_); }

void JpegSession::on_error(j_common_ptr state) {
  JpegSession &session = of(state);
  (*state->err->format_message)(state, session.error_.data());
  std::longjmp(session.jump_, 1);
}

void JpegSession::on_message(j_common_ptr state, int level) {
  if (level >= 0) return;
  switch (state->err->msg_code) {
  case JWRN_EXTRANEOUS_DATA:
  case JWRN_JFIF_MAJOR:
  case JWRN_ADOBE_XFORM:
  case JWRN_BOGUS_ICC: return;
  default: break;
  }
  JpegSession &session = of(state);
  if (!session.is_damaged()) (*state->err->format_message)(state, session.damage_.data());
}

void JpegSession::on_progress(j_common_ptr state) {
  JpegSession &session = of(state);
  const bool late = session.deadline_.passed();
  if (session.state_.input_scan_number <= most_scans && !late) return;
  session.gave_up_ = true;
  std::snprintf(session.error_.data(), session.error_.size(),
                late ? "more scans than there is time for" : "more than %d scans", most_scans);
  std::longjmp(session.jump_, 1);
}

void JpegSession::start_clock(std::chrono::seconds most_time) { deadline_ = Deadline(most_time); }

std::optional<std::string> JpegSession::obstacle() const {
  if (gave_up_) return error();
  switch (errors_.msg_code) {
  case JERR_BAD_PRECISION: return "samples of more than 8 bits";
  case JERR_SOF_UNSUPPORTED: return "pixels packed by a rare process, such as lossless JPEG";
  case JERR_ARITH_NOTIMPL: return "pixels packed by arithmetic coding";
  case JERR_FRACT_SAMPLE_NOTIMPL:
  case JERR_CCIR601_NOTIMPL: return "colour channels of unusual sizes";
  case JERR_CONVERSION_NOTIMPL:
  case JERR_NOTIMPL: return "an unusual colour model";
  default: return std::nullopt;
  }
}

std::vector<std::uint8_t> JpegSession::icc() {
  JOCTET *bytes = nullptr;
  unsigned count = 0;
  JOCTET **to = &bytes;
  unsigned *length = &count;
  const bool sound = run([=](j_decompress_ptr state) { jpeg_read_icc_profile(state, to, length); });
  const std::unique_ptr<JOCTET, decltype(&std::free)> profile(bytes, std::free);
  if (!sound || !bytes) return {};
  return {bytes, bytes + count};
}

boolean JpegSession::fill(j_decompress_ptr state) {
  JpegSession &session = *static_cast<JpegSession *>(state->client_data);
  const std::size_t got =
      session.file_.read_at(session.offset_, session.buffer_.data(), session.buffer_.size());
  session.offset_ += got;
  session.source_.next_input_byte = session.buffer_.data();
  session.source_.bytes_in_buffer = got;
  if (got == 0) {
    WARNMS(state, JWRN_JPEG_EOF);
    session.buffer_[0] = 0xFF; // an end-of-image marker, so that the decoder stops
    session.buffer_[1] = JPEG_EOI;
    session.source_.bytes_in_buffer = 2;
  }
  return TRUE;
}

void JpegSession::skip(j_decompress_ptr state, long count) {
  JpegSession &session = *static_cast<JpegSession *>(state->client_data);
  if (count <= 0) return;
  jpeg_source_mgr &source = session.source_;
  const auto wanted = static_cast<std::size_t>(count);
  if (wanted <= source.bytes_in_buffer) {
    source.next_input_byte += wanted;
    source.bytes_in_buffer -= wanted;
    return;
  }
  session.offset_ += wanted - source.bytes_in_buffer;
  source.bytes_in_buffer = 0;
}

} // namespace stoneproof
